//! After shake-out: weighing for a hidden hollow, and heating a casting again to soften,
//! strengthen or quiet it.

use std::sync::LazyLock;

use measure::flow::Duration;
use measure::heat::Temperature;
use measure::length::Length;
use measure::length::Volume;
use measure::matter::{Density, Mass};
use measure::source::Law;
use serde::Deserialize;

use crate::alloy::{Alloy, Family};
use crate::figure::{Figure, FigureError, FigureText};

/// Share of a casting that is hollow where no eye sees it.
pub const HIDDEN_HOLLOW: Law = Law {
    name: "metal::after::hidden_hollow",
    formula: "v = 1 − m / (ρ V)",
    range: "V by the water it pushes aside, runners sawn off; below the doubt of ρ and V it \
            tells nothing, and it says nothing of where",
    sources: &["common-practice"],
};

/// How long a casting is held at heat.
pub const HOLD_TIME: Law = Law {
    name: "metal::after::hold_time",
    formula: "t = greater of t_least and u d",
    range: "counted from when the thickest place is at heat, not the furnace",
    sources: &["common-practice"],
};

/// A heat treatment.
#[derive(Clone, Debug, PartialEq)]
pub struct Treatment {
    /// The name it is asked for by: "stress-relief-iron".
    pub name: String,
    /// The metal it is for.
    pub family: Family,
    /// The one alloy it is for, where it is not for the whole family.
    pub alloy: Option<String>,
    /// What it does, and for what.
    pub purpose: String,
    /// The temperature.
    pub heat: Figure<Temperature>,
    /// Time at heat for each 25 mm of the thickest place.
    pub each_inch: Figure<Duration>,
    /// Least time at heat.
    pub least: Figure<Duration>,
    /// How to warm, cool and go on.
    pub then: String,
    /// What hurts or spoils.
    pub caution: String,
}

/// Every heat treatment of the built-in table.
pub fn treatments() -> &'static [Treatment] {
    &TABLE
}

/// The heat treatment of a name.
pub fn treatment(name: &str) -> Option<&'static Treatment> {
    treatments().iter().find(|treatment| treatment.name == name)
}

impl Treatment {
    /// Whether it is for this alloy.
    pub fn is_for(&self, alloy: &Alloy) -> bool {
        let named = self.alloy.as_ref();
        alloy.family == self.family && named.is_none_or(|name| *name == alloy.name)
    }
}

/// Reads a table of heat treatments.
///
/// # Errors
///
/// Where it is no such table, or a figure in it is wrong.
pub fn read(text: &str) -> Result<Vec<Treatment>, TreatmentFault> {
    let typed: TableText = toml::from_str(text)?;
    let rows = typed.treatment.into_iter().map(TreatmentText::meant);
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Why the table of heat treatments could not be read.
#[derive(Debug, thiserror::Error)]
pub enum TreatmentFault {
    /// Not such a table.
    #[error("treatments.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// One of the figures is wrong.
    #[error("treatments.toml: {0}")]
    Figure(#[from] FigureError),
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/treatments.toml");

/// Share of the casting's volume that is hollow; below nought where the density or the volume
/// was taken wrong. Law: [`HIDDEN_HOLLOW`].
pub fn hidden_hollow(weighed: Mass, volume: Volume, solid: Density) -> f64 {
    1.0 - weighed / (solid * volume)
}

/// Time at heat for a casting as thick as this; `each_inch` for 25 mm. Law: [`HOLD_TIME`].
pub fn hold_time(thickest: Length, each_inch: Duration, least: Duration) -> Duration {
    let by_thickness = each_inch * (thickest.as_mm() / 25.0);
    if by_thickness > least {
        by_thickness
    } else {
        least
    }
}

static TABLE: LazyLock<Vec<Treatment>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    treatment: Vec<TreatmentText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TreatmentText {
    name: String,
    family: Family,
    alloy: Option<String>,
    purpose: String,
    heat: FigureText,
    each_inch: FigureText,
    least: FigureText,
    then: String,
    caution: String,
}

impl TreatmentText {
    fn meant(self) -> Result<Treatment, FigureError> {
        Ok(Treatment {
            name: self.name,
            family: self.family,
            alloy: self.alloy,
            purpose: self.purpose,
            heat: self.heat.quantity("heat")?,
            each_inch: self.each_inch.quantity("each_inch")?,
            least: self.least.quantity("least")?,
            then: self.then,
            caution: self.caution,
        })
    }
}
