//! What to make next: the batch most likely to be better, and the one that teaches most.

use trials::belief::{Belief, Likeness, belief, spans};
use trials::next::{best_believed, next_batches, next_for_all};
use trials::optimal::chosen_beside;
use trials::region::RegionError;

use crate::experiment::batches::Batch;
use crate::experiment::reading::days::taken_off;
use crate::experiment::reading::joined::wishes;
use crate::experiment::reading::{Fitted, ResponseRead};
use crate::experiment::space::Space;
use crate::experiment::{Experiment, Shape};

/// What to make next.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Suggested {
    /// The batches most likely to be better than the best so far, most promising first; none
    /// before there are results enough.
    pub better: Vec<Better>,
    /// The mix that is believed to be the best by all batches so far, made or not; for a single
    /// response with a good end.
    pub believed: Option<Better>,
    /// The mix whose batch makes the whole surface surest.
    pub teaches: Option<Vec<f64>>,
}

/// A batch that may be better.
#[derive(Clone, Debug, PartialEq)]
pub struct Better {
    /// The mix.
    pub point: Vec<f64>,
    /// What each response is expected to be, and how far it may stray (one deviation).
    pub expected: Vec<(f64, f64)>,
    /// How much better than the best so far it is expected to be, worse counted as nothing: in the
    /// unit of a single response, as a share of all wishes met where there are several.
    pub improvement: f64,
}

/// Picks so many batches.
///
/// # Errors
///
/// When the shares leave no room.
pub fn next(
    experiment: &Experiment,
    space: &Space,
    batches: &[Batch],
    responses: &[ResponseRead],
    everywhere: &[Vec<f64>],
    count: usize,
) -> Result<Suggested, RegionError> {
    let shared = shared(responses);
    let points: Vec<Vec<f64>> = shared.iter().map(|at| space.point(&batches[*at])).collect();
    let spans = spans(everywhere);
    let beliefs: Option<Vec<Belief>> = responses
        .iter()
        .map(|one| {
            let results = taken_off(space, one, batches, &shared);
            belief(&Likeness::Smooth, &points, &results, &spans).ok()
        })
        .collect();
    let believed = beliefs
        .as_ref()
        .and_then(|beliefs| believed(experiment, beliefs, everywhere));
    let better = beliefs.map_or_else(Vec::new, |beliefs| {
        better(experiment, responses, &beliefs, everywhere, count)
    });
    Ok(Suggested {
        better,
        believed,
        teaches: teaches(experiment, space, &points, responses)?,
    })
}

fn better(
    experiment: &Experiment,
    responses: &[ResponseRead],
    beliefs: &[Belief],
    everywhere: &[Vec<f64>],
    count: usize,
) -> Vec<Better> {
    let ends = experiment.responses.first().and_then(|one| one.good_end());
    if let (Some(good), [one]) = (ends, beliefs) {
        let found = next_batches(one, everywhere, good, count).into_iter();
        return found
            .map(|next| Better {
                expected: vec![(next.believed.mean, next.believed.deviation)],
                improvement: next.improvement,
                point: next.point,
            })
            .collect();
    }
    let Some(wanted) = wishes(experiment, responses) else {
        return Vec::new();
    };
    let thinned = thinned(everywhere, beliefs.len());
    let found = next_for_all(beliefs, &wanted, &thinned, count, experiment.seed).into_iter();
    found
        .map(|next| Better {
            expected: next
                .believed
                .iter()
                .map(|one| (one.mean, one.deviation))
                .collect(),
            improvement: next.improvement,
            point: next.point,
        })
        .collect()
}

fn believed(
    experiment: &Experiment,
    beliefs: &[Belief],
    everywhere: &[Vec<f64>],
) -> Option<Better> {
    let ([response], [belief]) = (experiment.responses.as_slice(), beliefs) else {
        return None;
    };
    let (point, found) = best_believed(belief, everywhere, response.good_end()?)?;
    Some(Better {
        point,
        expected: vec![(found.mean, found.deviation)],
        improvement: 0.0,
    })
}

/// Most points at which draws of several responses are made: each takes some hundred times as long
/// as one response alone.
const MOST_DRAWN_AT: usize = 3_000;

/// Points spread over all of them by steps of the golden section: an even step would pass over one
/// of two choices, which follow each other.
fn thinned(everywhere: &[Vec<f64>], responses: usize) -> Vec<Vec<f64>> {
    let count = MOST_DRAWN_AT / responses.max(1);
    if everywhere.len() <= count {
        return everywhere.to_vec();
    }
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    let place = |at: usize| ((at as f64 * golden).fract() * everywhere.len() as f64) as usize;
    (0..count).map(|at| everywhere[place(at)].clone()).collect()
}

/// Batches for which every response was measured.
fn shared(responses: &[ResponseRead]) -> Vec<usize> {
    let Some((first, rest)) = responses.split_first() else {
        return Vec::new();
    };
    let in_all = |at: &&usize| rest.iter().all(|one| one.measured.contains(at));
    first.measured.iter().filter(in_all).copied().collect()
}

fn teaches(
    experiment: &Experiment,
    space: &Space,
    made: &[Vec<f64>],
    responses: &[ResponseRead],
) -> Result<Option<Vec<f64>>, RegionError> {
    let candidates = space.candidates(experiment.aim, true)?;
    let shape = |fitted: &Fitted| fitted.shape;
    let found = responses
        .iter()
        .find_map(|one| one.fitted.as_ref().ok())
        .map(shape);
    let model = space.model(found.unwrap_or(Shape::Plane));
    let chosen = chosen_beside(&model, made, &candidates, 1, experiment.seed).ok();
    Ok(chosen.and_then(|places| places.first().map(|at| candidates[*at].clone())))
}
