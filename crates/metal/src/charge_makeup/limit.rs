//! A limit of a target: the least and the most it takes of something.

use crate::charge_makeup::measured::Measured;

/// A limit. One of its ends may be open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// Of what.
    pub of: Measured,
    /// The least, in parts of one.
    pub low: Option<f64>,
    /// The most, in parts of one.
    pub high: Option<f64>,
}

/// Which end of a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// The least.
    Low,
    /// The most.
    High,
}

/// A share this close to a limit stands on it: below what any laboratory tells apart.
const ON_IT: f64 = 1e-9;

impl Limit {
    /// Whether a share keeps to it.
    pub fn holds(&self, share: f64) -> bool {
        self.low.is_none_or(|low| share >= low - ON_IT)
            && self.high.is_none_or(|high| share <= high + ON_IT)
    }

    /// The end on a side, where there is one.
    pub fn end(&self, side: Side) -> Option<f64> {
        match side {
            Side::Low => self.low,
            Side::High => self.high,
        }
    }

    /// The ends there are, each with its side.
    pub fn ends(&self) -> impl Iterator<Item = (Side, f64)> {
        let at = |side: Side| self.end(side).map(|end| (side, end));
        at(Side::Low).into_iter().chain(at(Side::High))
    }

    /// Half of what lies between its ends; half of the only end where one is open.
    pub fn half_width(&self) -> f64 {
        match (self.low, self.high) {
            (Some(low), Some(high)) => (high - low) / 2.0,
            (Some(end), None) | (None, Some(end)) => end / 2.0,
            (None, None) => 0.0,
        }
    }
}
