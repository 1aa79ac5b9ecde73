//! `batches.toml`: the batches of an experiment, in the order in which they are made.
//!
//! Written by the plan and added to by later sessions. Amounts stand in it as the founder counts
//! them, so that a batch stays what it was when ranges are widened afterwards.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use serde::Deserialize;

use crate::experiment::trouble::BatchesError;
use crate::experiment::{Counted, Experiment};

/// Name of the file in an experiment's folder.
pub const BATCHES_FILE: &str = "batches.toml";

/// One batch.
#[derive(Clone, Debug, PartialEq)]
pub struct Batch {
    /// Its number, from 1, in the order of making.
    pub number: usize,
    /// The day or session, from 1.
    pub day: usize,
    /// Where it comes from.
    pub from: From,
    /// Place of its mix, where named mixes are compared.
    pub mix: Option<usize>,
    /// The amount of each part as planned, in parts or per cent.
    pub amounts: Vec<f64>,
    /// The amount of each part as it was weighed, counted likewise; nothing where it was made as
    /// planned. It stands in the results and not in this file.
    pub weighed: Option<Vec<f64>>,
    /// The value of each setting; of choices the place of the one taken, from nought.
    pub settings: Vec<f64>,
}

impl Batch {
    /// The amount of each part as it was made.
    pub fn made(&self) -> &[f64] {
        self.weighed.as_deref().unwrap_or(&self.amounts)
    }
}

/// Where a batch comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum From {
    /// The first plan.
    Plan,
    /// The second session.
    Later,
    /// A batch added because the results so far speak for it.
    Next,
}

/// The file as typed.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BatchesFile {
    #[serde(default)]
    batch: Vec<BatchFile>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct BatchFile {
    number: usize,
    day: usize,
    from: From,
    mix: Option<String>,
    #[serde(default)]
    amounts: BTreeMap<String, f64>,
    #[serde(default)]
    settings: BTreeMap<String, f64>,
}

/// Digits of an amount that are kept, as a factor: a tenth of a gram in a tonne of parts.
const KEPT: f64 = 1e4;

/// An amount as it is written, so that what is planned and what is read back are the same.
pub fn kept(amount: f64) -> f64 {
    (amount * KEPT).round() / KEPT
}

impl BatchesFile {
    /// The batches of an experiment.
    ///
    /// # Errors
    ///
    /// When file and experiment do not know the same parts and settings.
    pub fn meant(&self, experiment: &Experiment) -> Result<Vec<Batch>, BatchesError> {
        let parts: Vec<&str> = experiment
            .parts
            .iter()
            .map(|one| one.name.as_str())
            .collect();
        let settings = experiment.settings.iter();
        let settings: Vec<&str> = settings.map(|one| one.name.as_str()).collect();
        let mut found = Vec::new();
        for (at, one) in self.batch.iter().enumerate() {
            if one.number != at + 1 || one.day == 0 {
                return Err(BatchesError::Number(one.number));
            }
            found.push(Batch {
                number: one.number,
                day: one.day,
                from: one.from,
                mix: mix(experiment, one)?,
                amounts: in_order(one.number, &parts, &one.amounts)?,
                weighed: None,
                settings: in_order(one.number, &settings, &one.settings)?,
            });
        }
        Ok(found)
    }
}

/// The text of the file.
pub fn text(experiment: &Experiment, batches: &[Batch]) -> String {
    let counted = match experiment.counted {
        Counted::Parts => "in parts by mass",
        Counted::Percent => "in per cent of the whole mix by mass",
    };
    let mut text = format!(
        "# Batches of \"{}\", in the order in which they are made. Written by the plan; amounts are\n\
         # {counted}. Make them in this order: it was drawn by lot.\n",
        experiment.name.replace('\n', " ")
    );
    for batch in batches {
        let from = match batch.from {
            From::Plan => "plan",
            From::Later => "later",
            From::Next => "next",
        };
        let parts = experiment.parts.iter().map(|one| one.name.as_str());
        let settings = experiment.settings.iter().map(|one| one.name.as_str());
        let amounts = table(parts.zip(&batch.amounts));
        let mix = experiment.mix_of(batch).map_or_else(String::new, |mix| {
            format!("mix = {}\n", toml::Value::String(mix.name.clone()))
        });
        // Writing into a text does not fail.
        let _ = write!(
            text,
            "\n[[batch]]\nnumber = {}\nday = {}\nfrom = \"{from}\"\n{mix}amounts = {amounts}\n",
            batch.number, batch.day
        );
        if !batch.settings.is_empty() {
            let settings = table(settings.zip(&batch.settings));
            let _ = writeln!(text, "settings = {settings}");
        }
    }
    text
}

/// The place of the mix that a batch names.
fn mix(experiment: &Experiment, typed: &BatchFile) -> Result<Option<usize>, BatchesError> {
    let batch = typed.number;
    match (&experiment.mixes, &typed.mix) {
        (None, None) => Ok(None),
        (None, Some(_)) => Err(BatchesError::MixInRanges(batch)),
        (Some(_), None) => Err(BatchesError::NoMix(batch)),
        (Some(mixes), Some(name)) => {
            let place = mixes.each.iter().position(|mix| mix.name == *name);
            let name = name.clone();
            place
                .map(Some)
                .ok_or(BatchesError::UnknownMix { batch, name })
        }
    }
}

fn table<'a>(rows: impl Iterator<Item = (&'a str, &'a f64)>) -> String {
    let rows = rows.map(|(name, value)| {
        let name = toml::Value::String(name.to_owned());
        format!("{name} = {:?}", kept(*value))
    });
    format!("{{ {} }}", rows.collect::<Vec<_>>().join(", "))
}

fn in_order(
    batch: usize,
    names: &[&str],
    given: &BTreeMap<String, f64>,
) -> Result<Vec<f64>, BatchesError> {
    if let Some(name) = given.keys().find(|name| !names.contains(&name.as_str())) {
        let name = name.clone();
        return Err(BatchesError::Unknown { batch, name });
    }
    let value = |name: &&str| {
        let found = given.get(*name).filter(|value| value.is_finite()).copied();
        found.ok_or_else(|| BatchesError::Missing {
            batch,
            name: (*name).to_owned(),
        })
    };
    names.iter().map(value).collect()
}
