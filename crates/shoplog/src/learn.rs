//! What the log teaches about this shop: figures of its own in place of those of books, each with
//! what it was before and the entries it rests on.
//!
//! A book's figure is a belief about a shop one knows nothing of: its middle, how far shops are
//! spread round it, how far one casting is off from the next. Measurements move it by the exact
//! rule of [`trials::conjugate`]. Nothing is put to use before the founder has accepted it.

pub mod accepted;
pub mod apart;
pub mod seen;
pub mod told;

use trials::conjugate::MeanBelief;

use crate::error::LogError;
use crate::learn::seen::{Seen, castings_by_alloy, loss_by_alloy, ratios, strengths};
use crate::log::Log;

/// What is learned.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Of {
    /// How much a metal contracts, along one direction of the drawing or over all of them.
    Contraction {
        /// The metal.
        alloy: String,
        /// The direction; nothing for all together.
        along: Option<String>,
    },
    /// What part of the charge is lost in melting a metal.
    Loss {
        /// The metal.
        alloy: String,
    },
    /// Freezing as it was over freezing as planned: sand and its contact with the metal together.
    Freezing,
    /// Drying as it was over drying as planned.
    Drying,
    /// Fuel as planned over fuel as burnt: the furnace's efficiency over that of the plan.
    Efficiency,
    /// Filling as planned over filling as it was: the speed in the gates over that of the plan.
    Filling,
    /// Green strength of the sand on good days.
    Strength,
}

/// On which scale a belief is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scale {
    /// As it is, per cent.
    Percent,
    /// The logarithm of a factor.
    Factor,
    /// The logarithm of kilopascals.
    Kilopascal,
}

/// What was learned of one thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Lesson {
    /// Of what.
    pub of: Of,
    /// On which scale.
    pub scale: Scale,
    /// Before.
    pub before: MeanBelief,
    /// After.
    pub after: MeanBelief,
    /// The numbers of the entries it rests on.
    pub rests_on: Vec<i64>,
}

/// The share of cases in which an interval holds.
pub const HOLDS: f64 = 0.9;

/// Fewest measurements for a suggestion. Two that agree by chance move a figure for years; with
/// five a founder of ten castings a year waits until autumn.
pub const FEWEST: usize = 3;

/// Half the width of nine tenths of a normal curve, in standard deviations.
const NINE_TENTHS: f64 = 1.644_853_626_951_472_2;

/// How far one casting is off from the next, of a length in per cent: a scatter of 0.3 % on any
/// size is called normal (from memory).
const SCATTER_OF_CONTRACTION: f64 = 0.3;
/// How far one melt's loss is off from the next, per cent of the charge. Judgement: scales and
/// skimming by hand.
const SCATTER_OF_LOSS: f64 = 1.5;
/// How far one timing is off from the next, as the logarithm of a factor. Judgement: a wire, a
/// kitchen clock and the weather.
const SCATTER_OF_TIMES: f64 = 0.15;
/// How far shops are spread where the plan tells no band, as the logarithm of a factor: published
/// forms of evaporation differ by a quarter in still air.
const SPREAD_OF_TIMES: f64 = 0.25;
/// Discharge of gates and sprues, published from 0.73 to 0.90 (from memory).
const DISCHARGE: (f64, f64) = (0.73, 0.90);
/// Green strength of sand moulded by hand, published from 35 to 140 kPa (from memory).
const STRENGTH: (f64, f64) = (35.0, 140.0);
/// How far one test of green strength is off from the next, as the logarithm of a factor.
/// Judgement.
const SCATTER_OF_STRENGTH: f64 = 0.15;

impl Lesson {
    /// Low, likely and high of what is believed now, in per cent, as a factor or in kPa.
    pub fn now(&self) -> [f64; 3] {
        self.shown(&self.after)
    }

    /// The same before anything was measured.
    pub fn was(&self) -> [f64; 3] {
        self.shown(&self.before)
    }

    /// Whether it is worth a suggestion: enough measured, and surer than the book.
    pub fn suggests(&self) -> bool {
        let narrower = self.after.around(HOLDS) < self.before.around(HOLDS);
        self.rests_on.len() >= FEWEST && narrower
    }

    fn shown(&self, belief: &MeanBelief) -> [f64; 3] {
        let around = belief.around(HOLDS);
        let ends = [belief.mean - around, belief.mean, belief.mean + around];
        match self.scale {
            Scale::Percent => ends,
            Scale::Factor | Scale::Kilopascal => ends.map(f64::exp),
        }
    }
}

/// Everything that the log teaches, in a fixed order.
///
/// # Errors
///
/// What the file says.
pub fn lessons(log: &Log) -> Result<Vec<Lesson>, LogError> {
    let mut found = Vec::new();
    for (alloy, along, seen) in castings_by_alloy(log)? {
        let of = Of::Contraction { alloy, along };
        found.extend(in_percent(of, &seen, SCATTER_OF_CONTRACTION));
    }
    for (alloy, seen) in loss_by_alloy(log)? {
        found.extend(in_percent(Of::Loss { alloy }, &seen, SCATTER_OF_LOSS));
    }
    let discharge = (DISCHARGE.1 / DISCHARGE.0).ln() / (2.0 * NINE_TENTHS);
    for (of, spread) in [
        (Of::Freezing, SPREAD_OF_TIMES),
        (Of::Filling, discharge),
        (Of::Drying, SPREAD_OF_TIMES),
        (Of::Efficiency, SPREAD_OF_TIMES),
    ] {
        let seen = ratios(log, &of)?;
        let spread = match (&of, seen.band) {
            (Of::Filling, _) | (_, None) => spread,
            (_, Some([low, _, high])) => (high / low).ln() / (2.0 * NINE_TENTHS),
        };
        let before = MeanBelief::before(0.0, spread, SCATTER_OF_TIMES);
        found.extend(lesson(of, Scale::Factor, before, &seen));
    }
    let (low, high) = (STRENGTH.0.ln(), STRENGTH.1.ln());
    let spread = (high - low) / (2.0 * NINE_TENTHS);
    let before = MeanBelief::before(f64::midpoint(low, high), spread, SCATTER_OF_STRENGTH);
    found.extend(lesson(
        Of::Strength,
        Scale::Kilopascal,
        before,
        &strengths(log)?,
    ));
    Ok(found)
}

/// A lesson in per cent; none without a band of the plan, since nothing is known beforehand then.
fn in_percent(of: Of, seen: &Seen, scatter: f64) -> Option<Lesson> {
    let [low, likely, high] = seen.band?;
    let spread = (high - low) / (2.0 * NINE_TENTHS);
    // A founder's own figure has no width, and is then believed to a fifth of the scatter.
    let before = MeanBelief::before(likely, spread.max(scatter / 5.0), scatter);
    lesson(of, Scale::Percent, before, seen)
}

fn lesson(of: Of, scale: Scale, before: MeanBelief, seen: &Seen) -> Option<Lesson> {
    let measured: Vec<f64> = match scale {
        Scale::Percent => seen.values.iter().map(|(_, value)| *value).collect(),
        _ => seen.values.iter().map(|(_, value)| value.ln()).collect(),
    };
    (!measured.is_empty()).then(|| Lesson {
        of,
        scale,
        before,
        after: before.after(&measured),
        rests_on: seen.values.iter().map(|(number, _)| *number).collect(),
    })
}
