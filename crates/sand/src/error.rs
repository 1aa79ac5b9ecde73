//! How far a figure may be off, by the steps of the instruments it was read from.

use measure::source::Law;

/// Uncertainty of a product of powers.
pub const PRODUCT_RULE: Law = Law {
    name: "sand::error::product_rule",
    formula: "u / y = √ Σ (e_i u_i / x_i)²",
    range: "y a product of powers of what was read, each with its own error, all small",
    sources: &["gum-2008", "eurachem-quam"],
};

/// One reading in a product.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Its error as a share of itself.
    pub share: f64,
    /// The power in which it stands: 1 and −1 for times and over, 2 for a square.
    pub power: f64,
}

/// Error of a product as a share of it. Law: [`PRODUCT_RULE`].
pub fn product_rule(readings: &[Reading]) -> f64 {
    let squares = readings.iter().map(|one| (one.power * one.share).powi(2));
    squares.sum::<f64>().sqrt()
}
