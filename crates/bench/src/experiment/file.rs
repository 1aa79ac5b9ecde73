//! `experiment.toml`: an experiment in the founder's words, as typed.

use std::collections::BTreeMap;

use measure::matter::Mass;
use measure::share::Share;
use measure::text::Typed;
use serde::Deserialize;

/// The commented experiment that a new folder starts with.
pub const STARTER: &str = include_str!("../../data/experiment.toml");

/// Name of the file in an experiment's folder.
pub const EXPERIMENT_FILE: &str = "experiment.toml";

/// An experiment as typed.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExperimentFile {
    pub(super) name: String,
    pub(super) seed: u64,
    pub(super) batch: Typed<Mass>,
    pub(super) basis: Option<String>,
    pub(super) scale_step: Option<Typed<Mass>>,
    pub(super) batches: Option<usize>,
    #[serde(default)]
    pub(super) repeats: usize,
    #[serde(default = "one")]
    pub(super) days: usize,
    pub(super) times: Option<usize>,
    pub(super) aim: Option<String>,
    pub(super) shape: Option<String>,
    #[serde(default)]
    pub(super) mix: Vec<MixFile>,
    #[serde(default)]
    pub(super) part: Vec<PartFile>,
    #[serde(default)]
    pub(super) setting: Vec<SettingFile>,
    #[serde(default)]
    pub(super) response: Vec<ResponseFile>,
    pub(super) later: Option<LaterFile>,
}

/// Something that goes into the mix.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct PartFile {
    pub(super) name: String,
    pub(super) amount: Option<Amount>,
    #[serde(default)]
    pub(super) is_water: bool,
    pub(super) moisture: Option<Share>,
    #[serde(default)]
    pub(super) later: bool,
    pub(super) steps: Option<String>,
}

/// A mix with a name, to be compared with others.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct MixFile {
    pub(super) name: String,
    #[serde(default)]
    pub(super) amounts: BTreeMap<String, Amount>,
    #[serde(default)]
    pub(super) settings: BTreeMap<String, Amount>,
}

/// An amount: `100`, `"12 to 24"`, `"70 to 85 %"`.
#[derive(Clone, Debug, Deserialize)]
#[serde(
    untagged,
    expecting = "a number or a range in quotes, like 100, \"12 to 24\" or \"70 to 85 %\""
)]
pub(super) enum Amount {
    /// A number.
    Number(f64),
    /// A number or a range, perhaps in per cent.
    Text(String),
}

/// Something that is done with the mix.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SettingFile {
    pub(super) name: String,
    pub(super) range: Option<String>,
    #[serde(default)]
    pub(super) unit: String,
    pub(super) choices: Option<Vec<String>>,
    pub(super) steps: Option<String>,
}

/// Something that is measured on a batch.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ResponseFile {
    pub(super) name: String,
    #[serde(default)]
    pub(super) unit: String,
    pub(super) want: String,
    pub(super) worthless: Option<f64>,
    pub(super) good: Option<f64>,
    pub(super) step: Option<f64>,
    pub(super) weight: Option<f64>,
}

/// The second session, in which parts marked as later come in.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct LaterFile {
    pub(super) batches: usize,
    #[serde(default)]
    pub(super) repeats: usize,
}

fn one() -> usize {
    1
}
