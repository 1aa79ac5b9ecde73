//! Sand that hangs in the cope, and sand that spans the flask.

use measure::length::Length;
use measure::matter::{Density, Pressure};
use measure::source::Law;

/// Tension at the root of a hanging block of sand.
pub const HANGING: Law = Law {
    name: "mould::hanging::hanging",
    formula: "σ = ρ g d max(2, 3 d / w)",
    range: "upright block, d deep and w wide the narrow way; lifted with a jerk of once its weight, \
            or turned on its edge",
    sources: &["beam-statics", "common-practice"],
};

/// Crushing of sand that spans the flask as a flat arch.
pub const COPE_ARCH: Law = Law {
    name: "mould::hanging::cope_arch",
    formula: "σ = 0.75 ρ g B² / t",
    range: "B the narrower inside width, t the depth of the cope; walls that grip",
    sources: &["beam-statics", "common-practice"],
};

/// Grip of the walls under a flat arch.
pub const COPE_GRIP: Law = Law {
    name: "mould::hanging::cope_grip",
    formula: "f = 2.67 t / B",
    range: "friction wanted of the flask walls; sand on plain wood or iron has about half",
    sources: &["beam-statics", "common-practice"],
};

/// Weights with which sand pulls when a cope is lifted: its own, and once as much for the jerk.
const WITH_JERK: f64 = 2.0;

/// Friction of sand on a plain wall (common practice, no source).
pub const PLAIN_WALL_GRIPS: f64 = 0.5;

/// Inside width beyond which copes are barred whatever the sum says (common practice).
pub const BARS_BEYOND: Length = Length::from_mm(350.0);

/// Tension at the root. Law: [`HANGING`].
pub fn hanging(sand: Density, depth: Length, width: Length) -> Pressure {
    let on_edge = 3.0 * (depth / width);
    Pressure::under(sand, depth) * WITH_JERK.max(on_edge)
}

/// Crushing at the crown. Law: [`COPE_ARCH`].
pub fn cope_arch(sand: Density, width: Length, depth: Length) -> Pressure {
    Pressure::under(sand, width) * (0.75 * (width / depth))
}

/// Friction wanted at the walls: half the weight over the thrust, (t B / 2) / (3/16 B²). Law:
/// [`COPE_GRIP`].
pub fn cope_grip(width: Length, depth: Length) -> f64 {
    8.0 / 3.0 * (depth / width)
}
