//! How much of a heap one pour has made too hot: by what was followed in the mould, or by a law of
//! one face where nothing was followed.

use job::amount::Amount;
use job::solved_kept::HeatOfPour;
use job::words::said::Said;
use measure::band::Band;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use measure::text::Written;
use pour::hot_sand::HotSand;
use reckon::answer::Outcome;
use reckon::ask::Ask;
use reckon::worked::work_out;
use sand::heap::balance::burnt_share;

use crate::book::file::ClayKind;
use crate::given::{Given, GivenError};
use crate::told::Told;
use crate::trouble::{BenchError, Refused};

/// What the law asks for; the freezing of a mould knows all of it.
pub const BY_LAW: [&str; 5] = ["metal", "section", "poured", "sand_mass", "faces"];

/// Parts of a heap that got too hot, as shares of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heated {
    /// Hotter than its clay bears.
    pub clay: Band<f64>,
    /// Hotter than its organic binder bears.
    pub organic: Band<f64>,
    /// Dried out.
    pub dried: Band<f64>,
}

/// Rammed sand: `shop-handbook-figures`.
const RAMMED: Density = Density::from_g_per_cm3(1.6);

/// Sugar and oil begin to go at the first and are gone at the second, °C (`sand-death-memory`).
const ORGANIC_DIES_C: [f64; 2] = [200.0, 300.0];

/// Water boils, °C.
const DRIES_C: [f64; 2] = [100.0, 100.0];

/// By what was followed in the mould.
///
/// # Errors
///
/// A freezing that was not followed until the mould is opened.
pub fn by_freezing(
    clay: ClayKind,
    heap: Mass,
    followed: &HeatOfPour,
    told: &mut Told,
) -> Result<Heated, BenchError> {
    let refused = || Refused::NotFollowedToTheEnd {
        job: followed.job.clone(),
    };
    let sand = followed.hot_sand.as_ref().filter(|sand| sand.is_whole());
    let sand = sand.ok_or_else(refused)?;
    told.note(Said::new("bench-by-freezing").with("job", followed.job.as_str()));
    told.amount("bench-crust", Amount::Length(depth(sand, dies_c(clay))));
    let share = |marks_c: [f64; 2]| {
        over_marks(marks_c, |mark| {
            let volume = Volume::from_mm3(sand.of_mould_mm3(mark));
            (RAMMED * volume / heap).min(1.0)
        })
    };
    Ok(Heated {
        clay: share(dies_c(clay)),
        organic: share(ORGANIC_DIES_C),
        dried: share(DRIES_C),
    })
}

/// By the law of a flat face, from what was given.
///
/// # Errors
///
/// What is missing or not understood, and what the law says no to.
pub fn by_law(
    clay: ClayKind,
    heap: Mass,
    given: &Given,
    told: &mut Told,
) -> Result<Heated, BenchError> {
    let what = "all faces of metal against sand, like faces='600 cm2'";
    let faces: Area = given.get("faces", what)?;
    let share = |depth: Band<Length>| depth.map(|depth| burnt_share(faces, depth, RAMMED, heap));
    let depths = [dies_c(clay), ORGANIC_DIES_C, DRIES_C].map(|marks| depth_over(given, marks));
    let [crust, organic, dried] = depths;
    let crust = crust?;
    told.amount("bench-crust", Amount::Length(crust));
    Ok(Heated {
        clay: share(crust).map(|share| share.min(1.0)),
        organic: share(organic?).map(|share| share.min(1.0)),
        dried: share(dried?).map(|share| share.min(1.0)),
    })
}

/// Where a clay begins to die and where it is dead, °C: `sand-death-memory`.
fn dies_c(clay: ClayKind) -> [f64; 2] {
    match clay {
        ClayKind::SodiumBentonite => [600.0, 650.0],
        ClayKind::CalciumBentonite => [320.0, 450.0],
        ClayKind::Other => [500.0, 600.0],
    }
}

/// Depths over the range of a mark, to a twentieth of a millimetre: cells are no finer than that.
fn depth(sand: &HotSand, marks_c: [f64; 2]) -> Band<Length> {
    over_marks(marks_c, |mark| {
        Length::from_mm((sand.depth_mm(mark) * 20.0).round() / 20.0)
    })
}

/// A figure that falls as the mark rises, over the range of a mark.
fn over_marks<T: Copy + PartialOrd>([low, high]: [f64; 2], of: impl Fn(f64) -> T) -> Band<T> {
    Band::new(of(high), of((low + high) / 2.0), of(low))
}

/// Depth of sand that was hotter than a mark, by the law of that name.
fn depth_over(given: &Given, [low, high]: [f64; 2]) -> Result<Band<Length>, BenchError> {
    let wanted = [
        ("metal", "what was poured, like metal=aluminium"),
        (
            "section",
            "the heaviest section as a modulus or a body, like section='8 mm'",
        ),
        ("poured", "all metal in the mould, like poured='5.9 kg'"),
        ("sand_mass", "sand in the flask, like sand_mass='40 kg'"),
    ];
    let mark = if low < high {
        format!("{low} to {high} C")
    } else {
        format!("{low} C")
    };
    let mut ask = Ask::new("burnt-sand").give("mark", &mark);
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
