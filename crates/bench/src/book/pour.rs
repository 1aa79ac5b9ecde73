//! What one pour does to a heap, worked out and written into its book.

use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::length::{Area, Length};
use measure::matter::{Density, Mass};
use measure::text::Written;
use reckon::answer::Outcome;
use reckon::ask::Ask;
use reckon::worked::work_out;
use sand::heap::balance::{
    Pour, Renewal, after_pour, burnt_share, clay_wanted, pours_left, renewed,
};
use sand::heap::holds::Heap;

use crate::book::file::{ClayKind, HeapFile, begun, bounds, entered};
use crate::book::state::{left_after, now_after};
use crate::given::{Given, GivenError};
use crate::told::Told;
use crate::trouble::{BenchError, Refused};

/// What is asked for.
pub const KEYS: [&str; 15] = [
    "day",
    "metal",
    "section",
    "poured",
    "sand_mass",
    "faces",
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

/// Rammed sand: `shop-handbook-figures`.
const RAMMED: Density = Density::from_g_per_cm3(1.6);

/// A pour worked out.
#[derive(Clone, Debug)]
pub struct Poured {
    /// What is told.
    pub told: Told,
    /// The book with this pour in it.
    pub book: String,
}

/// Works a pour out after all those of the book, whose text is `text`.
///
/// # Errors
///
/// What is missing or not understood, what a law says no to, and a book that does not add up.
pub fn poured(file: &HeapFile, text: &str, given: &Given) -> Result<Poured, BenchError> {
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
    let pour = of_heat(file, &before, given, &mut told)?;
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

/// What the heat of a pour did, by the depths it burnt.
fn of_heat(
    file: &HeapFile,
    heap: &Heap,
    given: &Given,
    told: &mut Told,
) -> Result<Pour, BenchError> {
    let what = "all faces of metal against sand, like faces='600 cm2'";
    let faces: Area = given.get("faces", what)?;
    let mut share_over = |mark: &str, id: Option<&'static str>| {
        let depth = depth_over(given, mark)?;
        if let Some(id) = id {
            told.amount(id, Amount::Length(depth));
        }
        let share = depth.map(|depth| burnt_share(faces, depth, RAMMED, heap.total()).min(1.0));
        Ok::<_, BenchError>(share)
    };
    let clay = share_over(mark_of(file.clay), Some("bench-crust"))?;
    let organic = share_over("200 to 300 C", None)?;
    let dried = share_over("100 C", None)?;
    told.share("bench-clay-burnt", clay);
    told.share("bench-organic-share", organic);
    let mass = |key: &str| Ok::<_, GivenError>(given.find_mass(key)?.unwrap_or(Mass::ZERO));
    Ok(Pour {
        clay_burnt: clay.likely(),
        organic_burnt: organic.likely(),
        dried: dried.likely(),
        ash: sand::heap::balance::ASH_OF_SUGAR,
        broken: 0.0,
        core_sand: mass("core_sand")?,
        core_binder: mass("core_binder")?,
        parting: mass("parting")?,
    })
}

/// Depth of sand that was hotter than a mark, by the law of that name.
fn depth_over(given: &Given, mark: &str) -> Result<Band<Length>, BenchError> {
    let wanted = [
        ("metal", "what was poured, like metal=aluminium"),
        (
            "section",
            "the heaviest section as a modulus or a body, like section='8 mm'",
        ),
        ("poured", "all metal in the mould, like poured='5.9 kg'"),
        ("sand_mass", "sand in the flask, like sand_mass='40 kg'"),
    ];
    let mut ask = Ask::new("burnt-sand").give("mark", mark);
    for (key, what) in wanted {
        let text = given.text(key).ok_or(GivenError::Missing { key, what })?;
        ask = ask.give(key, text);
    }
    let worked = work_out(&ask).map_err(|fault| Refused::Law(fault.to_string()))?;
    match worked.answers.first().map(|figure| &figure.outcome) {
        Some(Outcome::Figure { ends, .. }) => {
            let [low, likely, high] = ends.map(Length::from_si);
            Ok(Band::new(low, likely, high))
        }
        _ => Err(Refused::Law("burnt-sand gives no depth".to_owned()).into()),
    }
}

/// Where a clay dies: `sand-death-memory`.
fn mark_of(clay: ClayKind) -> &'static str {
    match clay {
        ClayKind::SodiumBentonite => "600 to 650 C",
        ClayKind::CalciumBentonite => "320 to 450 C",
        ClayKind::Other => "500 to 600 C",
    }
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
