//! What the results say of named mixes: one of them is better, or none is shown to be.

use trials::desirability::{Wanted, met, together};
use trials::verdict::{Good, Measured, Verdict, VerdictError, verdict};

use crate::experiment::batches::Batch;
use crate::experiment::mixes::Mixes;
use crate::experiment::reading::days_of;
use crate::experiment::reading::joined::limits_from_results;
use crate::experiment::results::{self, Reading};
use crate::experiment::{Experiment, Response};

/// What results say.
#[derive(Clone, Debug)]
pub struct Compared {
    /// Each response, in the order of the experiment.
    pub responses: Vec<ResponseCompared>,
    /// How far the mean of each mix meets all wishes together, where there are several responses
    /// and all are judged.
    pub joined: Option<Joined>,
    /// Batches that lack a result.
    pub open: Vec<usize>,
    /// What to make next.
    pub next: Next,
}

/// All wishes met by each mix.
#[derive(Clone, Debug, PartialEq)]
pub struct Joined {
    /// Each mix: all wishes together, 0 to 1, then each response by itself.
    pub mixes: Vec<(f64, Vec<f64>)>,
    /// Responses whose limits were taken from their worst and best result.
    pub taken_from_results: Vec<String>,
}

/// What the results of one response say.
#[derive(Clone, Debug)]
pub struct ResponseCompared {
    /// Batches measured, by their place.
    pub measured: Vec<usize>,
    /// Their results.
    pub results: Vec<f64>,
    /// How many batches of each mix were measured.
    pub counts: Vec<usize>,
    /// How the mixes compare.
    pub judged: Result<Verdict, VerdictError>,
    /// The mix that is shown to be better than every other.
    pub winner: Option<usize>,
}

/// What to make next.
#[derive(Clone, Debug, PartialEq)]
pub enum Next {
    /// The batches that lack a result.
    Measure,
    /// Nothing: every response that has a good end names its winner.
    Nothing,
    /// These mixes again.
    Again {
        /// The mixes, by their place: all that some response still may name.
        mixes: Vec<usize>,
        /// How often each has to be made in all until the leads show, if they are as large as they
        /// look; nothing where some lead is too small or nothing is known of it.
        in_all: Option<usize>,
    },
}

/// Reads the results of an experiment of named mixes.
///
/// A winner is named only where [`trials::verdict::verdict`] names it. It compares each response by
/// itself; with several of them each errs as often as it says. Looked at again after every further
/// batch, it errs oftener than 1 in 20, as every test does.
pub fn compared(
    experiment: &Experiment,
    mixes: &Mixes,
    batches: &[Batch],
    readings: &[Reading],
) -> Compared {
    let each = experiment.responses.iter().enumerate();
    let responses: Vec<ResponseCompared> = each
        .map(|(at, response)| {
            let results = results::of_response(readings, at, batches.len());
            of_response(response, mixes, batches, &results)
        })
        .collect();
    let open =
        (0..batches.len()).filter(|at| responses.iter().any(|one| !one.measured.contains(at)));
    let open: Vec<usize> = open.map(|at| batches[at].number).collect();
    Compared {
        joined: joined(experiment, mixes, &responses),
        next: match open.is_empty() {
            true => next(experiment, mixes, &responses),
            false => Next::Measure,
        },
        responses,
        open,
    }
}

/// Joins the means; they know no noise, so that no winner comes of it.
fn joined(
    experiment: &Experiment,
    mixes: &Mixes,
    responses: &[ResponseCompared],
) -> Option<Joined> {
    if responses.len() < 2 {
        return None;
    }
    let each = experiment.responses.iter().zip(responses);
    let wanted = each.map(|(one, read)| one.wanted(&read.results));
    let wanted: Vec<Wanted> = wanted.collect::<Option<_>>()?;
    let judged = responses.iter().map(|one| one.judged.as_ref().ok());
    let judged: Vec<&Verdict> = judged.collect::<Option<_>>()?;
    let of_mix = |mix: usize| {
        let means: Vec<f64> = judged.iter().map(|one| one.means[mix]).collect();
        let each = wanted.iter().zip(&means);
        let each = each.map(|(wish, mean)| met(wish, *mean)).collect();
        (together(&wanted, &means), each)
    };
    Some(Joined {
        mixes: (0..mixes.each.len()).map(of_mix).collect(),
        taken_from_results: limits_from_results(experiment),
    })
}

fn of_response(
    response: &Response,
    mixes: &Mixes,
    batches: &[Batch],
    results: &[Option<f64>],
) -> ResponseCompared {
    let measured: Vec<usize> = (0..batches.len())
        .filter(|at| results[*at].is_some())
        .collect();
    let results: Vec<f64> = results.iter().flatten().copied().collect();
    let (day_of, _) = days_of(batches, &measured);
    let made = measured.iter().zip(&day_of).zip(&results);
    let made = made.filter_map(|((at, day), response)| {
        Some(Measured {
            mix: batches[*at].mix?,
            day: *day,
            response: *response,
        })
    });
    let made: Vec<Measured> = made.collect();
    let count = |mix: usize| made.iter().filter(|one| one.mix == mix).count();
    let counts: Vec<usize> = (0..mixes.each.len()).map(count).collect();
    let good = response.good_end();
    let judged = match counts.iter().position(|count| *count == 0) {
        Some(mix) => Err(VerdictError::NoResult(mix + 1)),
        None => verdict(&made, good.unwrap_or(Good::High), response.step),
    };
    let winner = judged.as_ref().ok().and_then(|one| one.winner);
    ResponseCompared {
        measured,
        results,
        counts,
        judged,
        winner: winner.filter(|_| good.is_some()),
    }
}

fn next(experiment: &Experiment, mixes: &Mixes, responses: &[ResponseCompared]) -> Next {
    let mut again = vec![false; mixes.each.len()];
    let mut in_all = Some(0);
    let each = experiment.responses.iter().zip(responses);
    for (_, one) in each.filter(|(wish, one)| wish.good_end().is_some() && one.winner.is_none()) {
        let needed = match &one.judged {
            Ok(found) => {
                again[found.leading] = true;
                for mix in &found.not_told_apart {
                    again[*mix] = true;
                }
                let most = one.counts.iter().copied().max().unwrap_or(0);
                found.repeats_to_show.map(|repeats| repeats.max(most + 1))
            }
            Err(_) => {
                again.fill(true);
                None
            }
        };
        in_all = in_all.and_then(|known: usize| needed.map(|needed| known.max(needed)));
    }
    let mixes: Vec<usize> = (0..again.len()).filter(|mix| again[*mix]).collect();
    match mixes.is_empty() {
        true => Next::Nothing,
        false => Next::Again { mixes, in_all },
    }
}
