//! The causes that can be named.

use serde::Deserialize;

/// A cause of a fault.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cause {
    /// The word by which it is known.
    pub id: String,
    /// The class of defects in which it mostly shows.
    pub class: Class,
    /// What it is, in a line.
    pub meaning: String,
}

/// The seven international classes of defects (`defect-classes`).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
pub enum Class {
    /// Metallic projections.
    A,
    /// Cavities.
    B,
    /// Discontinuities.
    C,
    /// Defective surface.
    D,
    /// Incomplete casting.
    E,
    /// Incorrect dimensions or shape.
    F,
    /// Inclusions or structural anomalies.
    G,
}

/// Every cause, in the order of the table.
///
/// # Errors
///
/// A table that is not sound.
pub fn causes() -> Result<Vec<Cause>, toml::de::Error> {
    let table: Table = toml::from_str(include_str!("../../data/causes.toml"))?;
    Ok(table.cause)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    cause: Vec<Cause>,
}
