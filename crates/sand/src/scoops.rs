//! Parts, scoops and grams: a recipe by volume is none until each scoop has been weighed.

use measure::matter::{Density, Mass};
use measure::source::Law;

/// Share of clay by mass in a mix given in parts by volume.
pub const SHARE_BY_MASS: Law = Law {
    name: "sand::scoops::share_by_mass",
    formula: "c = n_clay ρ_clay / (n_sand ρ_sand + n_clay ρ_clay)",
    range: "parts by volume of dry stuff, each struck off level; densities as scooped",
    sources: &["common-practice"],
};

/// Scoops that weigh so much.
pub const SCOOPS: Law = Law {
    name: "sand::scoops::scoops",
    formula: "n = m / m_scoop",
    range: "the scoop weighed once, full and struck off, with the same stuff",
    sources: &["common-practice"],
};

/// Clay as a share of the whole dry mix by mass, from parts by volume. Law: [`SHARE_BY_MASS`].
pub fn share_by_mass(
    sand_parts: f64,
    clay_parts: f64,
    sand_loose: Density,
    clay_loose: Density,
) -> f64 {
    let sand = sand_loose * sand_parts;
    let clay = clay_loose * clay_parts;
    clay / (sand + clay)
}

/// How many scoops weigh so much. Law: [`SCOOPS`].
pub fn scoops(mass: Mass, scoop: Mass) -> f64 {
    mass / scoop
}
