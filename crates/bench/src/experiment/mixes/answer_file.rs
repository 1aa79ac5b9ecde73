//! What the results of named mixes say as one JSON object, for other programs.

use serde::Serialize;
use trials::verdict::Verdict;

use crate::experiment::batches::Batch;
use crate::experiment::mixes::reading::{Compared, Next, ResponseCompared};
use crate::experiment::mixes::{Mix, Mixes};
use crate::experiment::{Counted, Experiment, Response};

/// The whole.
#[derive(Debug, Serialize)]
pub struct ComparedFile {
    name: String,
    amounts_in: &'static str,
    mixes: Vec<MixAnswer>,
    batches: usize,
    open: Vec<usize>,
    responses: Vec<ResponseAnswer>,
    /// Mix and the share of all wishes that its means meet, where there are several responses.
    all_wishes: Vec<(String, f64)>,
    /// Mixes to make again.
    again: Vec<String>,
    /// How often each of them in all.
    in_all: Option<usize>,
}

#[derive(Debug, Serialize)]
struct MixAnswer {
    name: String,
    amounts: Vec<(String, f64)>,
    /// Each setting, in words.
    settings: Vec<(String, String)>,
}

#[derive(Debug, Serialize)]
struct ResponseAnswer {
    name: String,
    unit: String,
    /// Number of the batch, its mix, its result.
    results: Vec<(usize, String, f64)>,
    winner: Option<String>,
    /// Why the mixes could not be compared at all.
    unjudged: Option<String>,
    verdict: Option<VerdictAnswer>,
}

#[derive(Debug, Serialize)]
struct VerdictAnswer {
    leading: String,
    not_told_apart: Vec<String>,
    noise: f64,
    degrees: usize,
    chance: f64,
    chance_of_alike: f64,
    /// Mix, mean, half width of its interval.
    means: Vec<(String, f64, f64)>,
    /// The other mix, the lead over it, half width of its interval.
    leads: Vec<(String, f64, f64)>,
}

fn settings_of(experiment: &Experiment, mix: &Mix) -> Vec<(String, String)> {
    let settings = experiment.settings.iter().zip(&mix.settings);
    let shown = settings.map(|(one, value)| (one.name.clone(), one.shown(*value)));
    shown.collect()
}

impl ComparedFile {
    /// The answer of an experiment of named mixes. Intervals hold 19 times in 20.
    pub fn of(
        experiment: &Experiment,
        mixes: &Mixes,
        batches: &[Batch],
        found: &Compared,
    ) -> ComparedFile {
        let name = |mix: usize| mixes.each[mix].name.clone();
        let part_names = || experiment.parts.iter().map(|part| part.name.clone());
        let each = experiment.responses.iter().zip(&found.responses);
        let (again, in_all) = match &found.next {
            Next::Again { mixes, in_all } => {
                (mixes.iter().map(|mix| name(*mix)).collect(), *in_all)
            }
            Next::Measure | Next::Nothing => (Vec::new(), None),
        };
        ComparedFile {
            name: experiment.name.clone(),
            amounts_in: match experiment.counted {
                Counted::Parts => "parts",
                Counted::Percent => "percent",
            },
            mixes: mixes
                .each
                .iter()
                .map(|mix| MixAnswer {
                    name: mix.name.clone(),
                    amounts: part_names().zip(mix.amounts.iter().copied()).collect(),
                    settings: settings_of(experiment, mix),
                })
                .collect(),
            batches: batches.len(),
            open: found.open.clone(),
            all_wishes: found
                .joined
                .iter()
                .flat_map(|one| &one.mixes)
                .enumerate()
                .map(|(mix, (share, _))| (name(mix), *share))
                .collect(),
            responses: each
                .map(|(response, one)| of_response(response, mixes, batches, one))
                .collect(),
            again,
            in_all,
        }
    }

    /// Its text.
    pub fn text(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default() + "\n"
    }
}

fn of_response(
    response: &Response,
    mixes: &Mixes,
    batches: &[Batch],
    read: &ResponseCompared,
) -> ResponseAnswer {
    let name = |mix: usize| mixes.each[mix].name.clone();
    let each = read.measured.iter().zip(&read.results);
    let results = each.filter_map(|(at, value)| {
        let batch = &batches[*at];
        Some((batch.number, name(batch.mix?), *value))
    });
    ResponseAnswer {
        name: response.name.clone(),
        unit: response.unit.clone(),
        results: results.collect(),
        winner: read.winner.map(name),
        unjudged: read.judged.as_ref().err().map(ToString::to_string),
        verdict: read.judged.as_ref().ok().map(|one| of_verdict(mixes, one)),
    }
}

fn of_verdict(mixes: &Mixes, found: &Verdict) -> VerdictAnswer {
    let name = |mix: usize| mixes.each[mix].name.clone();
    let means = found.means.iter().zip(&found.around).enumerate();
    VerdictAnswer {
        leading: name(found.leading),
        not_told_apart: found.not_told_apart.iter().map(|mix| name(*mix)).collect(),
        noise: found.noise,
        degrees: found.degrees,
        chance: found.chance,
        chance_of_alike: found.chance_of_alike,
        means: means
            .map(|(mix, (mean, around))| (name(mix), *mean, *around))
            .collect(),
        leads: found
            .leads
            .iter()
            .map(|lead| (name(lead.over), lead.by, lead.within))
            .collect(),
    }
}
