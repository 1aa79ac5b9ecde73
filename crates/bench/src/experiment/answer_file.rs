//! What results say as one JSON object, for other programs.

use serde::Serialize;
use trials::fit::Prediction;

use crate::experiment::batches::Batch;
use crate::experiment::reading::{Fitted, Read, ResponseRead, Unnamed};
use crate::experiment::space::Space;
use crate::experiment::{Counted, Experiment, Response, Shape};

/// The whole.
#[derive(Debug, Serialize)]
pub struct AnswerFile {
    name: String,
    amounts_in: &'static str,
    batches: usize,
    open: Vec<usize>,
    responses: Vec<ResponseAnswer>,
    joined: Option<JoinedAnswer>,
    next: Vec<NextAnswer>,
    teaches_most: Option<MixAnswer>,
}

#[derive(Debug, Serialize)]
struct ResponseAnswer {
    name: String,
    unit: String,
    results: Vec<(usize, f64)>,
    noise_of_repeats: Option<NoiseAnswer>,
    unread: Option<String>,
    fit: Option<FitAnswer>,
}

#[derive(Debug, Serialize)]
struct NoiseAnswer {
    deviation: f64,
    low: f64,
    high: f64,
    degrees: usize,
}

#[derive(Debug, Serialize)]
struct FitAnswer {
    shape: &'static str,
    days: usize,
    noise: Option<f64>,
    degrees: usize,
    taken_up: Option<f64>,
    foretold: Option<f64>,
    chance_of_flat: Option<f64>,
    chance_of_lack: Option<f64>,
    coefficients: Vec<CoefficientAnswer>,
    effects: Vec<EffectAnswer>,
    winner: Option<MixAnswer>,
    leading: Option<MixAnswer>,
    expected: Option<ExpectedAnswer>,
    as_good: Option<f64>,
    unnamed: Option<&'static str>,
    odd_batch: Option<usize>,
}

#[derive(Debug, Serialize)]
struct CoefficientAnswer {
    term: String,
    value: f64,
    error: Option<f64>,
    low: Option<f64>,
    high: Option<f64>,
}

#[derive(Debug, Serialize)]
struct EffectAnswer {
    name: String,
    change: f64,
    within: Option<f64>,
}

#[derive(Clone, Debug, Serialize)]
struct MixAnswer {
    amounts: Vec<(String, f64)>,
    settings: Vec<(String, f64)>,
}

#[derive(Debug, Serialize)]
struct ExpectedAnswer {
    value: f64,
    mean: Option<(f64, f64)>,
    batch: Option<(f64, f64)>,
}

#[derive(Debug, Serialize)]
struct JoinedAnswer {
    mix: Option<MixAnswer>,
    together: Option<f64>,
    each: Vec<(String, ExpectedAnswer, f64)>,
    limits_from_results: Vec<String>,
}

#[derive(Debug, Serialize)]
struct NextAnswer {
    mix: MixAnswer,
    expected: Vec<(String, f64, f64)>,
    improvement: f64,
}

impl AnswerFile {
    /// The answer of an experiment. Coefficients are those of coded values: −1 and 1 at the ends of
    /// what changes for itself, shares above the low ends of what changes together.
    pub fn of(experiment: &Experiment, batches: &[Batch], read: &Read) -> AnswerFile {
        let space = Space::of(experiment);
        let mix = |point: &[f64]| mix(experiment, &space, point);
        let name = |at: usize| experiment.responses[at].name.clone();
        let each = experiment.responses.iter().zip(&read.responses);
        AnswerFile {
            name: experiment.name.clone(),
            amounts_in: match experiment.counted {
                Counted::Parts => "parts",
                Counted::Percent => "percent",
            },
            batches: batches.len(),
            open: read.open.clone(),
            responses: each
                .map(|(response, one)| of_response(response, batches, one, &mix))
                .collect(),
            joined: read.joined.as_ref().map(|one| JoinedAnswer {
                mix: one.best.as_ref().map(|best| mix(&best.point)),
                together: one.best.as_ref().map(|best| best.together),
                each: one.best.as_ref().map_or_else(Vec::new, |best| {
                    let each = best.each.iter().enumerate();
                    each.map(|(at, (expected, met))| (name(at), of_expected(expected), *met))
                        .collect()
                }),
                limits_from_results: one.taken_from_results.clone(),
            }),
            next: read
                .next
                .better
                .iter()
                .map(|one| NextAnswer {
                    mix: mix(&one.point),
                    expected: one
                        .expected
                        .iter()
                        .enumerate()
                        .map(|(at, (mean, deviation))| (name(at), *mean, *deviation))
                        .collect(),
                    improvement: one.improvement,
                })
                .collect(),
            teaches_most: read.next.teaches.as_ref().map(|point| mix(point)),
        }
    }

    /// Its text.
    pub fn text(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default() + "\n"
    }
}

fn mix(experiment: &Experiment, space: &Space, point: &[f64]) -> MixAnswer {
    let parts = experiment.parts.iter().map(|one| one.name.clone());
    let settings = experiment.settings.iter().map(|one| one.name.clone());
    MixAnswer {
        amounts: parts.zip(space.amounts(point)).collect(),
        settings: settings.zip(space.settings(point)).collect(),
    }
}

fn of_response(
    response: &Response,
    batches: &[Batch],
    read: &ResponseRead,
    mix: &dyn Fn(&[f64]) -> MixAnswer,
) -> ResponseAnswer {
    let numbers = read.measured.iter().map(|at| batches[*at].number);
    ResponseAnswer {
        name: response.name.clone(),
        unit: response.unit.clone(),
        results: numbers.zip(read.results.iter().copied()).collect(),
        noise_of_repeats: read.repeats.map(|noise| NoiseAnswer {
            deviation: noise.deviation,
            low: noise.low,
            high: noise.high,
            degrees: noise.degrees,
        }),
        unread: read.fitted.as_ref().err().map(ToString::to_string),
        fit: read.fitted.as_ref().ok().map(|fitted| of_fit(fitted, mix)),
    }
}

fn of_fit(fitted: &Fitted, mix: &dyn Fn(&[f64]) -> MixAnswer) -> FitAnswer {
    let best = fitted.best.as_ref();
    let leading = best.map(|best| mix(&best.point));
    let coefficients = fitted.fit.coefficients.iter().map(|one| CoefficientAnswer {
        term: one.name.clone(),
        value: one.value,
        error: one.sure.map(|sure| sure.error),
        low: one.sure.map(|sure| sure.low),
        high: one.sure.map(|sure| sure.high),
    });
    let effects = fitted.effects.iter().map(|one| EffectAnswer {
        name: one.name.clone(),
        change: one.change,
        within: one.within,
    });
    FitAnswer {
        shape: match fitted.shape {
            Shape::Plane => "plane",
            Shape::Twisted => "twisted",
            Shape::Bent => "bent",
        },
        days: fitted.days,
        noise: fitted.fit.noise,
        degrees: fitted.fit.degrees,
        taken_up: fitted.fit.taken_up,
        foretold: fitted.fit.foretold,
        chance_of_flat: fitted.chance_of_flat,
        chance_of_lack: fitted.lack.as_ref().ok().map(|lack| lack.chance),
        coefficients: coefficients.collect(),
        effects: effects.collect(),
        winner: leading.clone().filter(|_| fitted.unnamed.is_none()),
        leading,
        expected: best.map(|best| of_expected(&best.expected)),
        as_good: best.map(|best| best.as_good),
        unnamed: fitted.unnamed.map(why),
        odd_batch: fitted.odd.map(|odd| odd.batch),
    }
}

fn of_expected(expected: &Prediction) -> ExpectedAnswer {
    ExpectedAnswer {
        value: expected.value,
        mean: expected.mean,
        batch: expected.batch,
    }
}

fn why(unnamed: Unnamed) -> &'static str {
    match unnamed {
        Unnamed::Chance(_) => "chance",
        Unnamed::NoneToSpare => "none to spare",
        Unnamed::WrongShape(_) => "wrong shape",
        Unnamed::StepTooCoarse => "step too coarse",
        Unnamed::RangeWanted => "range wanted",
        Unnamed::NothingKnown => "nothing known",
    }
}
