//! Several responses as one: how far each meets the wish, and all of them together.
//!
//! Derringer and Suich, Journal of Quality Technology 12 (1980) 214, from memory; held in the tests
//! to the optimum they printed.

use thiserror::Error;

/// What is wished of one response.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wish {
    /// The more the better: worthless up to the first, no better beyond the second.
    More {
        /// Worthless up to here.
        worthless: f64,
        /// Good from here.
        good: f64,
    },
    /// The less the better: good up to the first, worthless from the second.
    Less {
        /// Good up to here.
        good: f64,
        /// Worthless from here.
        worthless: f64,
    },
    /// As near to a value as may be.
    Near {
        /// Worthless up to here.
        low: f64,
        /// Best here.
        target: f64,
        /// Worthless from here.
        high: f64,
    },
}

/// A wish and how sharply it is meant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// The wish.
    pub wish: Wish,
    /// 1 for a straight rise; above 1 only what is near to good counts, below 1 the half-way
    /// counts nearly whole.
    pub sharpness: f64,
    /// How much it counts beside the other wishes.
    pub weight: f64,
}

/// Why a wish cannot be judged.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum WishError {
    /// Ends the wrong way round or not numbers.
    #[error("the limits {low} and {high} of a wish do not rise: put the smaller one first")]
    LimitsDoNotRise {
        /// The lower one as typed.
        low: f64,
        /// The upper one as typed.
        high: f64,
    },
    /// A weight or sharpness that is none.
    #[error("{0} is no weight: use a number above 0")]
    NoWeight(
        /// The weight or sharpness.
        f64,
    ),
}

/// Checks the limits and weights of a wish.
///
/// # Errors
/// When the limits do not rise, or a weight is not above nought.
pub fn checked(wanted: &Wanted) -> Result<(), WishError> {
    let steps = match wanted.wish {
        Wish::More { worthless, good } => vec![(worthless, good)],
        Wish::Less { good, worthless } => vec![(good, worthless)],
        Wish::Near { low, target, high } => vec![(low, target), (target, high)],
    };
    for (low, high) in steps {
        if !(low < high && low.is_finite() && high.is_finite()) {
            return Err(WishError::LimitsDoNotRise { low, high });
        }
    }
    for weight in [wanted.sharpness, wanted.weight] {
        if !(weight > 0.0 && weight.is_finite()) {
            return Err(WishError::NoWeight(weight));
        }
    }
    Ok(())
}

/// How far a response meets the wish: 0 worthless, 1 as good as it needs to be.
pub fn met(wanted: &Wanted, response: f64) -> f64 {
    let straight = match wanted.wish {
        Wish::More { worthless, good } => (response - worthless) / (good - worthless),
        Wish::Less { good, worthless } => (worthless - response) / (worthless - good),
        Wish::Near { low, target, .. } if response < target => (response - low) / (target - low),
        Wish::Near { target, high, .. } => (high - response) / (high - target),
    };
    straight.clamp(0.0, 1.0).powf(wanted.sharpness)
}

/// How far all responses meet their wishes together: the weighted geometric mean, so that one
/// worthless response makes the whole worthless.
pub fn together(wanted: &[Wanted], responses: &[f64]) -> f64 {
    let weights: f64 = wanted.iter().map(|one| one.weight).sum();
    let each = wanted.iter().zip(responses);
    let product: f64 = each
        .map(|(one, response)| met(one, *response).powf(one.weight / weights))
        .product();
    product
}
