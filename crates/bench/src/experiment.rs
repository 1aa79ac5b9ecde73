//! An experiment on a heap as meant: what goes in, what is done with it, what is measured.
//!
//! The flow is: [`Experiment`] (checked) → [`space::Space`] (its points) → [`design::planned`]
//! (batches) → [`results`] (what came out) → [`reading::read`] (what that says). An experiment of
//! named mixes has no space: [`mixes`] plans and reads it.

use measure::matter::Mass;
use trials::desirability::{Wanted, Wish};
use trials::verdict::Good;

use crate::experiment::mixes::Mixes;

pub mod answer_file;
pub mod batches;
pub mod chart;
pub mod design;
pub mod entry;
pub mod file;
mod meant;
pub mod mixes;
pub mod more;
pub mod opened;
pub mod picture;
pub mod reading;
pub mod results;
pub mod results_told;
pub mod session;
pub mod space;
pub mod told;
pub mod trouble;
pub mod weighing;
pub mod weighings;

/// An experiment, complete and checked.
#[derive(Clone, Debug, PartialEq)]
pub struct Experiment {
    /// What it is called.
    pub name: String,
    /// Draws the order; the same seed gives the same plan.
    pub seed: u64,
    /// Mass of one batch, water included.
    pub batch: Mass,
    /// How parts are counted.
    pub basis: Basis,
    /// What the scale tells apart.
    pub scale_step: Mass,
    /// All batches of the first plan, repeats among them.
    pub batches: usize,
    /// How many of them repeat another.
    pub repeats: usize,
    /// Over how many days they are made.
    pub days: usize,
    /// The second session, where there is one.
    pub later: Option<Later>,
    /// What the plan is for.
    pub aim: Aim,
    /// How far the response is taken to bend; left out, as far as the batches can teach.
    pub shape: Option<Shape>,
    /// Whether amounts are parts or per cent of the whole.
    pub counted: Counted,
    /// The named mixes, where these are compared instead of ranges tried.
    pub mixes: Option<Mixes>,
    /// What goes in.
    pub parts: Vec<Part>,
    /// What is done with it.
    pub settings: Vec<Setting>,
    /// What is measured.
    pub responses: Vec<Response>,
}

/// How parts are counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// Each part without the water it holds; all water counts as water.
    Dry,
    /// As weighed.
    AsItLies,
}

/// What a plan is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aim {
    /// To find the best mix: it starts half way in from the ends, and goes on from there.
    Best,
    /// To know the whole range evenly.
    Learn,
}

/// How far a response is taken to bend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// Each thing for itself.
    Plane,
    /// And every two together.
    Twisted,
    /// And each with a bend.
    Bent,
}

/// What amounts count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counted {
    /// Parts by mass beside each other.
    Parts,
    /// Per cent of the whole mix by mass.
    Percent,
}

/// A second session, in which more comes in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Later {
    /// Its batches, repeats among them.
    pub batches: usize,
    /// How many of them repeat another.
    pub repeats: usize,
}

/// Something that goes into the mix.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What it is called.
    pub name: String,
    /// Least amount, in parts or per cent.
    pub low: f64,
    /// Largest amount; the same where it does not change.
    pub high: f64,
    /// Whether it is the water.
    pub is_water: bool,
    /// Water it holds as it lies, a share of its wet mass.
    pub moisture: f64,
    /// Whether it comes in only in the second session.
    pub later: bool,
    /// Whether it is tried in even factors and fitted by the logarithm of its ratio to the parts
    /// that never change.
    pub by_factors: bool,
}

/// Something that is done with the mix.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// What it is called.
    pub name: String,
    /// Low end; 0 for the first of some choices.
    pub low: f64,
    /// High end; the place of the last of some choices, from nought.
    pub high: f64,
    /// Its unit.
    pub unit: String,
    /// Two to six ways to do it, where it is no number.
    pub choices: Option<Vec<String>>,
    /// Whether it is tried in even factors and fitted by its logarithm.
    pub by_factors: bool,
}

/// Something that is measured on a batch.
#[derive(Clone, Debug, PartialEq)]
pub struct Response {
    /// What it is called.
    pub name: String,
    /// Its unit.
    pub unit: String,
    /// What is wished of it.
    pub want: Want,
    /// Worthless from here, for joining with others.
    pub worthless: Option<f64>,
    /// Good from here, for joining with others.
    pub good: Option<f64>,
    /// What the instrument tells apart; nought where it is not known.
    pub step: f64,
    /// How much it counts beside the others.
    pub weight: f64,
}

/// What is wished of a response.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Want {
    /// More.
    High,
    /// Less.
    Low,
    /// Between two values, best in their middle.
    Within(f64, f64),
}

impl Part {
    /// Whether it changes from batch to batch.
    pub fn varies(&self) -> bool {
        self.high > self.low
    }
}

impl Setting {
    /// A value of it in words.
    pub fn shown(&self, value: f64) -> String {
        match &self.choices {
            Some(ways) => {
                let last = ways.len().saturating_sub(1);
                let place = value.round().clamp(0.0, last as f64) as usize;
                ways.get(place).cloned().unwrap_or_default()
            }
            None => with_unit(value, &self.unit),
        }
    }
}

impl Response {
    /// Which end is the good one; nothing where a range is wanted.
    pub fn good_end(&self) -> Option<Good> {
        match self.want {
            Want::High => Some(Good::High),
            Want::Low => Some(Good::Low),
            Want::Within(..) => None,
        }
    }

    /// The wish for joining. Where limits are left out, the worst and the best result so far stand
    /// in for them; nothing if these are the same.
    pub fn wanted(&self, results: &[f64]) -> Option<Wanted> {
        let least = results.iter().copied().fold(f64::INFINITY, f64::min);
        let most = results.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let wish = match self.want {
            Want::High => Wish::More {
                worthless: self.worthless.unwrap_or(least),
                good: self.good.unwrap_or(most),
            },
            Want::Low => Wish::Less {
                good: self.good.unwrap_or(least),
                worthless: self.worthless.unwrap_or(most),
            },
            Want::Within(low, high) => Wish::Near {
                low,
                target: (low + high) / 2.0,
                high,
            },
        };
        let wanted = Wanted {
            wish,
            sharpness: 1.0,
            weight: self.weight,
        };
        trials::desirability::checked(&wanted)
            .is_ok()
            .then_some(wanted)
    }

    /// A value of it with its unit.
    pub fn shown(&self, value: f64) -> String {
        with_unit(value, &self.unit)
    }
}

/// A number of three figures with its unit.
fn with_unit(value: f64, unit: &str) -> String {
    let number = measure::text::rounded(value, 3);
    match unit {
        "" => number,
        unit => format!("{number} {unit}"),
    }
}
