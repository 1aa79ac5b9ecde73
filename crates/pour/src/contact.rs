//! How well metal touches the sand: what passes between them for each kelvin.

use std::sync::LazyLock;

use measure::band::Band;
use metal::alloy::Family;
use serde::Deserialize;

/// The contact of a family of metals with sand.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ContactRow {
    /// The family, as files have it.
    pub name: String,
    low: f64,
    likely: f64,
    high: f64,
    /// Keys of the sources.
    pub source: Vec<String>,
}

impl ContactRow {
    /// The band, W/(m² K).
    pub fn w_m2k(&self) -> Band<f64> {
        Band::new(self.low, self.likely, self.high)
    }
}

/// Every row of the table.
pub fn contact_rows() -> &'static [ContactRow] {
    &TABLE.metal
}

/// The row of a family, if the table has it.
pub fn contact(family: Family) -> Option<&'static ContactRow> {
    TABLE.metal.iter().find(|row| row.name == family.word())
}

/// The row of metal on a chill.
pub fn chill_contact() -> Option<&'static ContactRow> {
    TABLE.chill.as_ref()
}

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    metal: Vec<ContactRow>,
    chill: Option<ContactRow>,
}

static TABLE: LazyLock<Table> =
    LazyLock::new(|| toml::from_str(include_str!("../data/contact.toml")).unwrap_or_default());
