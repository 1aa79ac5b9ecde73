//! Padding: thickening a section towards its feeder, so that each part feeds the one before it.

use measure::length::Length;
use measure::source::Law;

/// Thickness at the feeder of a section that tapers towards it.
pub const PADDING: Law = Law {
    name: "mould::feeding::padding::padded_thickness",
    formula: "s_f = s 1.1^(l / r)",
    range: "each reach r of a feeder wants a tenth more modulus than the one beyond it; guidance",
    sources: &["wlodawer-1966"],
};

/// Modulus of one part over that of the next it feeds (`wlodawer-1966`, from memory).
pub const STEP: f64 = 1.1;

/// Thickness to be had at the feeder, from the thickness at the far end. Law: [`PADDING`].
pub fn padded_thickness(far_end: Length, length: Length, reach: Length) -> Length {
    far_end * STEP.powf(length / reach)
}
