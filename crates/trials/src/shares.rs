//! What is believed of a share after counting, and of a share of which it is not sure which of
//! several counts it goes by: exact, by the conjugate belief of the textbooks (beta, from half a
//! hit and half a miss; Jeffreys' rule, from memory).

use statrs::distribution::{Beta, ContinuousCDF};

use crate::exact::Count;

/// A belief about a share: as if so many hits and misses had been counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShareBelief {
    /// Hits.
    pub hits: f64,
    /// Misses.
    pub misses: f64,
}

/// What a belief is worth before anything was counted, on either side. At one, no hit in three is
/// told as one in five; at nought, as none for ever.
const BEFORE: f64 = 0.5;

/// Halvings in which a share is found: to twelve places.
const HALVINGS: usize = 40;

impl ShareBelief {
    /// After this count.
    pub fn after(count: Count) -> ShareBelief {
        ShareBelief {
            hits: BEFORE + count.hits as f64,
            misses: BEFORE + count.of.saturating_sub(count.hits) as f64,
        }
    }

    /// The share that is expected.
    pub fn mean(&self) -> f64 {
        self.hits / (self.hits + self.misses)
    }

    /// How likely the share is below this one.
    pub fn below(&self, share: f64) -> f64 {
        let found = Beta::new(self.hits, self.misses);
        found.map_or(f64::NAN, |beta| beta.cdf(share.clamp(0.0, 1.0)))
    }
}

/// Beliefs of which one holds, each with how likely that is; the likelihoods add up to one.
pub type Either<'a> = &'a [(f64, ShareBelief)];

/// The share that is expected where it is not sure which belief holds.
pub fn mean_of(either: Either<'_>) -> f64 {
    let parts = either.iter().map(|(likely, belief)| likely * belief.mean());
    parts.sum()
}

/// The share that is not passed in this part of all cases, where it is not sure which belief holds.
pub fn at(either: Either<'_>, part: f64) -> f64 {
    let below = |share: f64| -> f64 {
        let parts = either
            .iter()
            .map(|(likely, belief)| likely * belief.below(share));
        parts.sum()
    };
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        match below(middle) < part {
            true => low = middle,
            false => high = middle,
        }
    }
    f64::midpoint(low, high)
}
