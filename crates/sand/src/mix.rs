//! A mix by weights, scaled to the sand that is wanted.

use measure::matter::Mass;
use measure::source::Law;
use thiserror::Error;

/// What a mix given by weights is multiplied by for another amount.
pub const SCALE: Law = Law {
    name: "sand::mix::scale",
    formula: "k = m_wanted / Σ m",
    range: "every part weighed; liquids too",
    sources: &["common-practice"],
};

/// Why a mix cannot be scaled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum MixError {
    /// No parts, or none that weighs anything.
    #[error("the mix weighs nothing: give the grams of each part")]
    Empty,
}

/// What each part of a mix is multiplied by for `wanted` in all. Law: [`SCALE`].
pub fn scale(parts: &[Mass], wanted: Mass) -> Result<f64, MixError> {
    let total = parts.iter().fold(Mass::ZERO, |sum, part| sum + *part);
    match total > Mass::ZERO {
        true => Ok(wanted / total),
        false => Err(MixError::Empty),
    }
}
