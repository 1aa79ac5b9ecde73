//! A day in the shop as a file of `checks/scenarios` tells it.

use std::collections::BTreeMap;

use checks::repository::files;
use serde::Deserialize;

/// A scenario: what is asked of the product, and what it has to answer.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scenario {
    /// Its number and title.
    pub name: String,
    /// The folder of the job, from the root; nothing where no mould is planned.
    pub job: Option<String>,
    /// A mesh looked at, from the root.
    pub mesh: Option<String>,
    /// Figures, each with its range.
    pub quantity: Vec<Quantity>,
    /// What has to be told.
    pub warn: Vec<Warning>,
    /// What may not be told.
    #[serde(default)]
    pub never: Vec<Never>,
}

/// A figure with the range in which it has to lie.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Quantity {
    /// What it is.
    pub what: String,
    /// Name of the figure of the plan, or of the answer of the ask.
    #[serde(default)]
    pub figure: String,
    /// Name of the choice of the plan, in the place of a figure.
    pub choice: Option<String>,
    /// The reckoner asked, in the place of the plan.
    pub ask: Option<String>,
    /// What it is given; `{figure}` stands for the figure of the plan with its range, `{figure |
    /// likely}` for its likely value.
    #[serde(default)]
    pub given: BTreeMap<String, String>,
    /// The range: "3.9 to 4.7 kg".
    pub expected: Option<String>,
    /// Words that have to be chosen or answered, in the place of a range.
    pub words: Option<String>,
    /// How the range is known: "c" worked out by hand, "m" from memory of handbooks, or both.
    pub mark: String,
    /// Why the likely value lies outside although the band overlaps.
    pub explained: Option<String>,
    /// Whether even the band lies outside: the founder's rule does not hold for this case.
    #[serde(default)]
    pub beyond: bool,
    /// Where the product says the same: words that have to be in its answer.
    #[serde(default)]
    pub says: Vec<String>,
}

/// Something that has to be told.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Warning {
    /// What it is about.
    pub about: String,
    /// The remark of the plan that tells it.
    pub code: Option<String>,
    /// Words that have to be there: in that remark, in the plan, or in the answer of the ask.
    #[serde(default)]
    pub says: Vec<String>,
    /// The reckoner asked, in the place of the plan.
    pub ask: Option<String>,
    /// What it is given.
    #[serde(default)]
    pub given: BTreeMap<String, String>,
    /// Whether it stands on every pour sheet, whatever the job.
    #[serde(default)]
    pub on_every_sheet: bool,
}

/// Words that may not be told.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Never {
    /// What would be wrong with them.
    pub about: String,
    /// The words.
    pub says: String,
}

/// Every scenario, in the order of their files.
pub fn read_all() -> Result<Vec<Scenario>, String> {
    let files = files("checks/scenarios", &[".toml"]).map_err(|fault| fault.to_string())?;
    let read = |file: &checks::repository::File| {
        toml::from_str(&file.text).map_err(|fault| format!("{}: {fault}", file.path))
    };
    files.iter().map(read).collect()
}
