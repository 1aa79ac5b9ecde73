//! What patterns are made of, and how heavy it is.

use std::sync::LazyLock;

use measure::band::Band;
use measure::length::Volume;
use measure::matter::{Density, Mass};
use measure::source::Law;
use measure::text::ranged::Ranged;
use serde::Deserialize;

/// Volume of a solid thing from its weight.
pub const VOLUME_BY_WEIGHT: Law = Law {
    name: "pattern::material::volume_by_weight",
    formula: "V = m / ρ",
    range: "solid all through and of one material: no hollow, no print with a filling of ribs",
    sources: &["resin-pattern-page"],
};

/// What a pattern or an original is made of.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Its name.
    pub name: String,
    /// Other words for it.
    pub also: Vec<String>,
    /// Density, dry and solid.
    pub density: Band<Density>,
    /// Key of the source.
    pub source: String,
}

/// Volume of what weighs so much. Law: [`VOLUME_BY_WEIGHT`].
pub fn volume_by_weight(mass: Mass, density: Density) -> Volume {
    Volume::filled_by(mass, density)
}

/// The material of a name, or nothing.
pub fn named(name: &str) -> Option<&'static Material> {
    let wanted = name.trim().to_lowercase();
    let is_it = |material: &&Material| material.name == wanted || material.also.contains(&wanted);
    all().iter().find(is_it)
}

/// Every material of the built-in table.
pub fn all() -> &'static [Material] {
    &TABLE
}

/// Reads a table of materials.
///
/// # Errors
///
/// What the table says wrongly, with its place.
pub fn read(text: &str) -> Result<Vec<Material>, toml::de::Error> {
    let typed: TableText = toml::from_str(text)?;
    let meant = |row: MaterialText| Material {
        name: row.name,
        also: row.also,
        density: row.density.band,
        source: row.source,
    };
    Ok(typed.material.into_iter().map(meant).collect())
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/materials.toml");

static TABLE: LazyLock<Vec<Material>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    material: Vec<MaterialText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MaterialText {
    name: String,
    #[serde(default)]
    also: Vec<String>,
    density: Ranged<Density>,
    source: String,
}
