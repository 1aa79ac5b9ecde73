//! Two rules of thumb for feeders, to be held beside the rules of modulus and volume.

use measure::length::{Length, Volume};
use measure::source::Law;

/// Three times what the casting shrinks.
pub const THRICE_THE_SHRINKAGE: Law = Law {
    name: "mould::feeding::shop_rules::thrice_the_shrinkage",
    formula: "V_f = 3 β V_c",
    range: "a least volume; it takes a third of the feeder for usable, sand gives up a seventh",
    sources: &["riser-notes-3202"],
};

/// Feeder by the circle that fits into the section.
pub const INSCRIBED_CIRCLE: Law = Law {
    name: "mould::feeding::shop_rules::diameter_by_circle",
    formula: "D = f d",
    range: "d the largest circle in the section, f 1.5 to 3, height one and a half diameters; \
            steel plant notes",
    sources: &["plant-risering-notes"],
};

/// Volume by three times the shrinkage. Law: [`THRICE_THE_SHRINKAGE`].
pub fn thrice_the_shrinkage(casting: Volume, demand: f64) -> Volume {
    casting * (3.0 * demand)
}

/// Diameter by the inscribed circle. Law: [`INSCRIBED_CIRCLE`].
pub fn diameter_by_circle(inscribed: Length, factor: f64) -> Length {
    inscribed * factor
}

/// The factors in use, least and most.
pub const CIRCLE_FACTORS: [f64; 2] = [1.5, 3.0];
