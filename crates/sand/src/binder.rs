//! Binder in grams: liquids weighed by their density, silicate told by its solids.

use measure::length::Volume;
use measure::matter::{Density, Mass};
use measure::source::Law;

/// Share of a liquid binder on the sand, from what was poured in.
pub const LIQUID_SHARE: Law = Law {
    name: "sand::binder::liquid_share",
    formula: "b = V ρ / m",
    range: "of the dry sand by mass",
    sources: &["core-making-page"],
};

/// Binder for so much sand.
pub const BINDER_FOR_SAND: Law = Law {
    name: "sand::binder::binder_for_sand",
    formula: "m_binder = b m",
    range: "b of the dry sand by mass",
    sources: &["common-practice"],
};

/// Solids of a liquid silicate from the two oxides on its bottle.
pub const SILICATE_SOLIDS: Law = Law {
    name: "sand::binder::silicate_solids",
    formula: "S = x_soda + x_silica",
    range: "sodium silicate in water; doses of different bottles compare by solids alone",
    sources: &["silicate-grades-page"],
};

/// Solids that a dose of liquid silicate leaves on the sand.
pub const SOLIDS_ON_SAND: Law = Law {
    name: "sand::binder::solids_on_sand",
    formula: "b_solid = b S",
    range: "of the dry sand by mass",
    sources: &["silicate-grades-page"],
};

/// Carbon dioxide that turns all soda of a silicate into carbonate.
pub const CARBON_DIOXIDE: Law = Law {
    name: "sand::binder::carbon_dioxide",
    formula: "m_gas = m_liquid x_soda 44.01 / 61.98",
    range: "what is bound; two to ten times as much is blown through, from memory",
    sources: &["silicate-grades-page", "shop-handbook-figures"],
};

/// Share of a liquid binder on the sand. Law: [`LIQUID_SHARE`].
pub fn liquid_share(binder: Volume, density: Density, sand: Mass) -> f64 {
    density * binder / sand
}

/// Binder for so much sand. Law: [`BINDER_FOR_SAND`].
pub fn binder_for_sand(share: f64, sand: Mass) -> Mass {
    sand * share
}

/// Solids of a liquid silicate, a share of the liquid. Law: [`SILICATE_SOLIDS`].
pub fn silicate_solids(soda: f64, silica: f64) -> f64 {
    soda + silica
}

/// Solids that a dose leaves on the sand. Law: [`SOLIDS_ON_SAND`].
pub fn solids_on_sand(liquid_share: f64, solids: f64) -> f64 {
    liquid_share * solids
}

/// Carbon dioxide bound by a liquid silicate. Law: [`CARBON_DIOXIDE`].
pub fn carbon_dioxide(liquid: Mass, soda: f64) -> Mass {
    liquid * (soda * 44.01 / 61.98)
}
