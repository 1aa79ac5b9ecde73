//! What one pour does to a heap, worked out and written into its book.

use job::amount::Amount;
use job::solved_kept::HeatOfPour;
use job::words::said::Said;
use measure::band::Band;
use measure::matter::Mass;
use sand::heap::balance::{Pour, Renewal, after_pour, clay_wanted, pours_left, renewed};
use sand::heap::holds::Heap;

use crate::book::file::{HeapFile, begun, bounds, entered};
use crate::book::heat::{BY_LAW, by_freezing, by_law};
use crate::book::state::{left_after, now_after};
use crate::given::{Given, GivenError};
use crate::told::Told;
use crate::trouble::BenchError;

/// The key under which the freezing of the mould that was poured is given.
pub const FREEZE: &str = "freeze";

/// What is asked for beside the heat.
const BESIDE_HEAT: [&str; 10] = [
    "day",
    "core_sand",
    "core_binder",
    "parting",
    "crust_out",
    "heap_out",
    "sand",
    "clay",
    "organic",
    "water",
];

/// Most pours looked ahead.
const AHEAD: u32 = 200;

/// What is asked for, where the freezing of the mould was followed and where it was not.
pub fn keys(was_followed: bool) -> Vec<&'static str> {
    let heat: &[&str] = if was_followed { &[FREEZE] } else { &BY_LAW };
    [&BESIDE_HEAT[..], heat].concat()
}

/// A pour worked out.
#[derive(Clone, Debug)]
pub struct Poured {
    /// What is told.
    pub told: Told,
    /// The book with this pour in it.
    pub book: String,
}

/// Works a pour out after all those of the book, whose text is `text`; the heat by what was
/// followed in its mould, or by a law where nothing was.
///
/// # Errors
///
/// What is missing or not understood, what a law says no to, and a book that does not add up.
pub fn poured(
    file: &HeapFile,
    text: &str,
    given: &Given,
    followed: Option<&HeatOfPour>,
) -> Result<Poured, BenchError> {
    let before = now_after(file)?;
    let day = given.text("day").ok_or(GivenError::Missing {
        key: "day",
        what: "the day, like day=2026-05-03",
    })?;
    let mut told = Told::new(
        Said::new("bench-pour-head")
            .with("name", file.name.as_str())
            .with("day", day),
    );
    let pour = of_heat(file, &before, given, followed, &mut told)?;
    let renewal = renewal(given)?;
    let after = after_pour(&before, &pour)?;
    let end = renewed(&after.heap, &pour, &renewal)?;
    told.amount(
        "bench-clay-killed",
        kg(before.live_clay - after.heap.live_clay),
    );
    told.amount(
        "bench-organic-burnt",
        kg(before.organic - after.heap.organic + pour.core_binder),
    );
    told.amount("bench-steam", kg(after.gone.steam));
    told.amount("bench-thrown-out", kg(end.gone.thrown));
    advice(&mut told, file, &end.heap, &pour, &renewal)?;
    Ok(Poured {
        told,
        book: entered(text, day, &pour, &renewal),
    })
}

/// What the heat of a pour did.
fn of_heat(
    file: &HeapFile,
    heap: &Heap,
    given: &Given,
    followed: Option<&HeatOfPour>,
    told: &mut Told,
) -> Result<Pour, BenchError> {
    let heated = match followed {
        Some(followed) => by_freezing(file.clay, heap.total(), followed, told)?,
        None => by_law(file.clay, heap.total(), given, told)?,
    };
    told.share("bench-clay-burnt", heated.clay);
    told.share("bench-organic-share", heated.organic);
    let mass = |key: &str| Ok::<_, GivenError>(given.find_mass(key)?.unwrap_or(Mass::ZERO));
    Ok(Pour {
        clay_burnt: heated.clay.likely(),
        organic_burnt: heated.organic.likely(),
        dried: heated.dried.likely(),
        ash: sand::heap::balance::ASH_OF_SUGAR,
        broken: 0.0,
        core_sand: mass("core_sand")?,
        core_binder: mass("core_binder")?,
        parting: mass("parting")?,
    })
}

fn renewal(given: &Given) -> Result<Renewal, GivenError> {
    let mass = |key: &str| Ok::<_, GivenError>(given.find_mass(key)?.unwrap_or(Mass::ZERO));
    Ok(Renewal {
        crust_out: given.percent("crust_out")?.unwrap_or(0.0),
        heap_out: given.percent("heap_out")?.unwrap_or(0.0),
        sand: mass("sand")?,
        fines_of_sand: 0.0,
        clay: mass("clay")?,
        organic: mass("organic")?,
        water: mass("water")?,
    })
}

/// The top-up, and how many such pours are left.
fn advice(
    told: &mut Told,
    file: &HeapFile,
    heap: &Heap,
    pour: &Pour,
    renewal: &Renewal,
) -> Result<(), BenchError> {
    let start = begun(file)?;
    let wanted = start.live_clay / start.dry();
    told.amount(
        "bench-top-up",
        kg(clay_wanted(heap.dry(), heap.live_clay, wanted)),
    );
    let left = pours_left(heap, pour, renewal, &bounds(file)?, AHEAD)?;
    left_after(told, left, AHEAD);
    if pour.core_sand > Mass::ZERO {
        told.caution(Said::new("bench-silicate-out"));
    }
    told.caution(Said::new("bench-silica"));
    Ok(())
}

fn kg(mass: Mass) -> Amount {
    Amount::Mass(Band::exact(mass))
}
