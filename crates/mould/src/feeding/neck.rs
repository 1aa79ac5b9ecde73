//! The neck between casting and feeder: open as long as the feeder is wanted, and no longer.

use measure::band::Band;
use measure::length::Length;
use measure::source::Law;

/// Diameter of a round neck.
pub const NECK: Law = Law {
    name: "mould::feeding::neck::round_neck",
    formula: "d = 4 k M",
    range: "casting : neck : feeder as 1 : 1.1 : 1.2; grey iron 0.6 to 0.9, so that the swelling \
            iron is shut in; a neck shorter than half its width is kept hot from both ends and may \
            be a little smaller",
    sources: &["wlodawer-1966"],
};

/// Width of a flat neck of given thickness.
pub const FLAT_NECK: Law = Law {
    name: "mould::feeding::neck::flat_neck",
    formula: "w = 2 k M s / (s − 2 k M)",
    range: "s above twice the modulus wanted, else no width is enough",
    sources: &["wlodawer-1966"],
};

/// Modulus of neck over that of the section, for metals that only shrink.
pub fn neck_margin() -> Band<f64> {
    Band::exact(1.1)
}

/// Modulus of neck over that of the section for grey iron, which shuts early on purpose
/// (from memory, `wlodawer-1966`).
pub fn iron_neck_margin() -> Band<f64> {
    Band::new(0.6, 0.75, 0.9)
}

/// Diameter of a round neck, or side of a square one. Law: [`NECK`].
pub fn round_neck(section: Length, margin: f64) -> Length {
    section * (4.0 * margin)
}

/// Width of a flat neck, or nothing where it is too thin to stay open. Law: [`FLAT_NECK`].
pub fn flat_neck(section: Length, margin: f64, thickness: Length) -> Option<Length> {
    let twice = section * (2.0 * margin);
    (thickness > twice).then(|| thickness * (twice / (thickness - twice)))
}
