//! What a casting will weigh, from its volume or from the weight of its pattern.

use measure::length::Volume;
use measure::matter::{Density, Mass};
use measure::source::Law;

/// Mass of a casting from its volume: m = ρ V.
pub const CASTING_MASS: Law = Law {
    name: "metal::casting_mass::casting_mass",
    formula: "m = ρ V",
    range: "any sound casting",
    sources: &["metal-mass-by-volume"],
};

/// Mass of a casting from the mass of a solid pattern of the same volume.
pub const PATTERN_MASS: Law = Law {
    name: "metal::casting_mass::pattern_mass",
    formula: "m = m_pattern ρ_metal / ρ_pattern",
    range: "a solid pattern of one material, without core prints, its base taken off the scale",
    sources: &["resin-pattern-page", "wax-weighing-page"],
};

/// Metal for a casting and the button or sprue on it.
pub const WITH_BUTTON: Law = Law {
    name: "metal::casting_mass::with_button",
    formula: "m = m_casting (1 + a)",
    range: "a, the allowance, from what the shop leaves above the casting",
    sources: &["wax-tree-page"],
};

/// What a casting of this volume weighs. Law: [`CASTING_MASS`].
pub fn casting_mass(volume: Volume, density: Density) -> Mass {
    density * volume
}

/// What the metal weighs that fills the room of a pattern. Law: [`PATTERN_MASS`].
pub fn pattern_mass(pattern: Mass, pattern_density: Density, metal_density: Density) -> Mass {
    pattern * (metal_density / pattern_density)
}

/// Metal for a casting and its button, the allowance as a share of the casting: 0.1 for 10 %.
/// Law: [`WITH_BUTTON`].
pub fn with_button(casting: Mass, allowance: f64) -> Mass {
    casting * (1.0 + allowance)
}
