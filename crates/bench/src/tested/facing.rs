//! Fine sand against the pattern: how much, how it is laid, and what it does to the breath.

use job::amount::Amount;
use job::words::said::Said;
use measure::band::Band;
use measure::length::{Length, Volume};
use measure::matter::Mass;
use measure::text::rounded;
use reckon::answer::Outcome;
use reckon::ask::Ask;
use reckon::worked::work_out;
use sand::grain::openness;
use sand::permeability::two_layers;

use crate::given::{Given, GivenError};
use crate::told::{Figure, Told, Value};
use crate::trouble::{BenchError, Refused};

/// What is asked for; the first seven as the law of facing sand asks for them.
pub const KEYS: [&str; 10] = [
    "thickness",
    "block",
    "sides",
    "area",
    "edges",
    "corners",
    "sand_density",
    "heap_grain",
    "facing_grain",
    "backing",
];

/// How thick a face is laid where nothing else is said: 10 to 25 mm is usual for hand moulding
/// (`common-practice`). Thinner, the heap shows through; thicker, fine sand chokes the mould.
const USUAL: (&str, f64) = ("12 mm", 12.0);

/// What to do, in order.
const STEPS: [&str; 4] = [
    "bench-facing-step-riddle",
    "bench-facing-step-press",
    "bench-facing-step-back",
    "bench-facing-step-vent",
];

/// Air between rammed grains where only their size is known: as on the card of a sand.
const VOIDS: f64 = 0.38;

/// Sand behind a face where nothing is said, mm: the wall of an ordinary small flask.
const BACKING_MM: f64 = 50.0;

/// Tells how much facing sand a pattern takes and how it is laid.
///
/// # Errors
///
/// What the law of facing sand says no to, and a face that is coarser than the heap.
pub fn facing_sand(given: &Given) -> Result<Told, BenchError> {
    let typed = KEYS[..7]
        .iter()
        .filter_map(|key| Some((*key, given.text(key)?)));
    let ask = Ask::new("facing").give("thickness", USUAL.0);
    let ask = typed.fold(ask, |ask, (key, text)| ask.give(key, text));
    let worked = work_out(&ask).map_err(|fault| Refused::Law(fault.to_string()))?;
    let thick = given.find("thickness")?.unwrap_or(Length::from_mm(USUAL.1));
    let mut told = Told::new(Said::new("bench-facing-head"));
    told.amount("bench-facing-thick", Amount::Length(Band::exact(thick)));
    for (id, name) in FIGURES {
        let found = worked.answers.iter().find(|figure| figure.name == name);
        if let Some(Outcome::Figure { ends, .. }) = found.map(|figure| &figure.outcome) {
            let [low, likely, high] = *ends;
            told.figures.push(figure(id, Band::new(low, likely, high)));
        }
    }
    breath(&mut told, given, thick)?;
    for step in STEPS {
        told.step(Said::new(step));
    }
    told.note(Said::new("bench-facing-finish"));
    told.caution(Said::new("bench-silica"));
    Ok(told)
}

/// Figures with their names in the law.
const FIGURES: [(&str, &str); 3] = [
    ("bench-facing-volume", "volume"),
    ("bench-facing-laid", "mass"),
    (READY, "to have ready"),
];

const READY: &str = "bench-facing-ready";

/// A figure of the law, which comes in units of the SI.
fn figure(id: &'static str, ends: Band<f64>) -> Figure {
    let amount = match id {
        "bench-facing-volume" => Amount::Volume(ends.map(Volume::from_m3)),
        _ => Amount::Mass(ends.map(Mass::from_kg)),
    };
    let mut figure = Figure::new(id, Value::Amount(amount));
    figure.weighed_out = id == READY;
    figure
}

/// What a finer face costs in breath, where both grains are known.
fn breath(told: &mut Told, given: &Given, thick: Length) -> Result<(), BenchError> {
    let (heap, face) = match (given.find("heap_grain")?, given.find("facing_grain")?) {
        (Some(heap), Some(face)) => (size(heap, "heap_grain")?, size(face, "facing_grain")?),
        (None, None) => {
            told.note(Said::new("bench-facing-grain"));
            return Ok(());
        }
        _ => {
            let key = if given.has("heap_grain") {
                "facing_grain"
            } else {
                "heap_grain"
            };
            let what = "the mean grain of heap and face go together, as their cards tell them";
            return Err(GivenError::Missing { key, what }.into());
        }
    };
    if face > heap {
        return Err(Refused::FaceCoarser.into());
    }
    let backing = given.find("backing")?;
    let backing = size(backing.unwrap_or(Length::from_mm(BACKING_MM)), "backing")?;
    let (fine, coarse) = (openness(face, VOIDS), openness(heap, VOIDS));
    let both = two_layers((thick, fine), (backing, coarse));
    told.share("bench-facing-open", Band::exact(fine / coarse));
    told.share("bench-facing-both", Band::exact(both / coarse));
    let percent = rounded((both / coarse * 100.0).round(), 3);
    told.caution(Said::new("bench-facing-closes").with("left", format!("{percent} %")));
    Ok(())
}

fn size(length: Length, key: &'static str) -> Result<Length, BenchError> {
    match length > Length::ZERO {
        true => Ok(length),
        false => Err(Refused::NoSize(key).into()),
    }
}
