//! How long a batch is mulled, by which way, and whether it has had enough.

use job::amount::Amount;
use job::words::said::Said;
use measure::flow::Duration;
use measure::text::rounded;
use sand::mulling::{WAYS, Way, minutes, still_grows};

use crate::given::{Given, GivenError};
use crate::tested::gauge::deviation;
use crate::tested::readings::{ReadingsFile, named};
use crate::told::Told;
use crate::trouble::{BenchError, Refused};

/// What is asked for; all of it may be left out.
pub const KEYS: [&str; 4] = ["test", "before", "after", "noise"];

/// Tells how a batch is mulled, and with two tests ten minutes apart whether to go on.
///
/// The two are told apart by the noise of one test: as typed, or as repeats in the book show it.
///
/// # Errors
///
/// One test of the two, figures that are none, and no noise known.
pub fn mulling(given: &Given, book: &ReadingsFile) -> Result<Told, BenchError> {
    let mut told = Told::new(Said::new("bench-mull-head"));
    for way in WAYS {
        let time = minutes(way).map(Duration::from_min);
        told.amount(id(way), Amount::Duration(time));
    }
    for step in STEPS {
        told.step(Said::new(step));
    }
    enough(&mut told, given, book)?;
    told.note(Said::new("bench-mull-common-practice"));
    told.caution(Said::new("bench-mull-hands"));
    told.caution(Said::new("bench-silica"));
    Ok(told)
}

/// The minutes of every way in one line.
pub fn minutes_told() -> Said {
    let between = |way: Way| {
        let band = minutes(way);
        format!("{:.0}–{:.0} min", band.low(), band.high())
    };
    Said::new("bench-mull-minutes")
        .with("hand", between(Way::Hand))
        .with("mixer", between(Way::Mixer))
        .with("muller", between(Way::Muller))
}

/// What to do, in order.
const STEPS: [&str; 5] = [
    "bench-mull-step-dry",
    "bench-mull-step-water",
    "bench-mull-step-press",
    "bench-mull-step-test",
    "bench-mull-step-rest",
];

fn id(way: Way) -> &'static str {
    match way {
        Way::Hand => "bench-mull-by-hand",
        Way::Mixer => "bench-mull-by-mixer",
        Way::Muller => "bench-mull-by-muller",
    }
}

fn enough(told: &mut Told, given: &Given, book: &ReadingsFile) -> Result<(), BenchError> {
    let (before, after) = match (given.number("before")?, given.number("after")?) {
        (Some(before), Some(after)) => (before, after),
        (None, None) => return Ok(()),
        _ => {
            let what = "before= and after= go together: one test, and the same ten minutes later";
            let key = if given.has("before") {
                "after"
            } else {
                "before"
            };
            return Err(GivenError::Missing { key, what }.into());
        }
    };
    let noise = noise(given, book)?;
    let id = match still_grows(before, after, noise) {
        true => "bench-mull-on",
        false => "bench-mull-enough",
    };
    let gain = rounded(after - before, 3);
    let sure = rounded(std::f64::consts::SQRT_2 * noise, 3);
    told.note(Said::new(id).with("gain", gain).with("sure", sure));
    Ok(())
}

/// How far one test alone is off.
fn noise(given: &Given, book: &ReadingsFile) -> Result<f64, BenchError> {
    if let Some(noise) = given.number("noise")? {
        return match noise > 0.0 {
            true => Ok(noise),
            false => Err(Refused::NoNoise.into()),
        };
    }
    let test = given.text("test").ok_or(GivenError::Missing {
        key: "noise",
        what: "how far one test alone is off: noise=, or test= with repeats of it in the book",
    })?;
    let found = deviation(named(test)?, book).filter(|found| *found > 0.0);
    found.ok_or_else(|| Refused::NothingRepeated(test.to_owned()).into())
}
