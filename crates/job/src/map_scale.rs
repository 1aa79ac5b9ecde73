//! How a map is drawn: from where to where, and at which values its lines stand.

use pattern::vector::Vector;

/// From where to where a map goes, and the values of its lines.
#[derive(Clone, Debug, PartialEq)]
pub struct MapScale {
    /// The lowest value.
    pub low: f64,
    /// The highest.
    pub high: f64,
    /// The lines, the lowest first.
    pub lines: Vec<f64>,
    /// Sign of the unit.
    pub unit: &'static str,
    /// Whether there are values beyond the highest.
    pub beyond: bool,
}

/// A place with its value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Where, mm in the mould's axes.
    pub at_mm: Vector,
    /// The value there.
    pub value: f64,
}

impl MapScale {
    /// A scale from nought, with lines at round values.
    pub fn from_nought(high: f64, unit: &'static str) -> MapScale {
        let step = round_step(high);
        let lines = (1..)
            .map(|number| f64::from(number) * step)
            .take_while(|line| *line < high - CLOSE * step);
        MapScale {
            low: 0.0,
            high,
            lines: lines.collect(),
            unit,
            beyond: false,
        }
    }
}

/// A line nearer to the highest value than this share of a step is left out: their numbers would
/// run into each other below the tones.
const CLOSE: f64 = 0.2;

/// Most lines of a map: with more the tones of neighbours look alike in print.
const MOST_LINES: f64 = 7.0;

/// The least of 1, 2, 2.5 and 5 times a power of ten that leaves no more lines than wanted; for a
/// map without any height one line above it.
fn round_step(high: f64) -> f64 {
    let least = high / (MOST_LINES + 1.0);
    if !least.is_finite() || least < 1e-9 {
        return 1.0;
    }
    let power = 10f64.powf(least.log10().floor());
    let steps = [1.0, 2.0, 2.5, 5.0, 10.0].map(|times| times * power);
    steps
        .into_iter()
        .find(|step| *step >= least * (1.0 - 1e-9))
        .unwrap_or(10.0 * power)
}
