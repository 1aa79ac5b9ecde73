//! A session added to a plan: the batches that results speak for, and one that tells the day.

use trials::desirability::together;
use trials::plan::by_lot;
use trials::verdict::Good;

use crate::experiment::Experiment;
use crate::experiment::batches::{Batch, From};
use crate::experiment::design::{batch, days};
use crate::experiment::reading::Read;
use crate::experiment::reading::joined::wishes;
use crate::experiment::results::{self, Reading};
use crate::experiment::space::Space;

/// From so many batches on, one of a session makes the best mix once more: with two a half of the
/// session would go into it.
const WITH_ONE_AGAIN: usize = 3;

/// The batches there are, and so many more on a day of their own, in an order drawn by lot. Of
/// three and more one is the best of those that were made, made again: only a mix that was made
/// before tells what the day does. None is added before results speak for any.
pub fn with_more(
    experiment: &Experiment,
    batches: &[Batch],
    readings: &[Reading],
    found: &Read,
    count: usize,
) -> Vec<Batch> {
    let space = Space::of(experiment);
    let mut all = batches.to_vec();
    if found.next.better.is_empty() {
        return all;
    }
    let day = days(batches) + 1;
    let again = match count >= WITH_ONE_AGAIN {
        true => best_made(experiment, batches, readings, found),
        false => None,
    };
    let fresh = count - usize::from(again.is_some());
    let better = found.next.better.iter().take(fresh);
    let better = better.map(|one| batch(&space, &one.point, 0, day, From::Next));
    let again = again.map(|at| Batch {
        day,
        from: From::Next,
        weighed: None,
        ..batches[at].clone()
    });
    let session: Vec<Batch> = better.chain(again).collect();
    for at in by_lot(session.len(), experiment.seed.wrapping_add(day as u64)) {
        all.push(Batch {
            number: all.len() + 1,
            ..session[at].clone()
        });
    }
    all
}

/// The place of the batch whose mix came out best on the mean of all that were made of it.
fn best_made(
    experiment: &Experiment,
    batches: &[Batch],
    readings: &[Reading],
    found: &Read,
) -> Option<usize> {
    let of_mix = |at: usize, response: usize| {
        let all = results::of_response(readings, response, batches.len());
        let same = |other: &usize| {
            let (one, other) = (&batches[at], &batches[*other]);
            one.amounts == other.amounts && one.settings == other.settings
        };
        let own = (0..batches.len()).filter(same);
        let own: Vec<f64> = own.filter_map(|other| all[other]).collect();
        (!own.is_empty()).then(|| own.iter().sum::<f64>() / own.len() as f64)
    };
    let worth = |at: usize| -> Option<f64> {
        let each = (0..experiment.responses.len()).map(|response| of_mix(at, response));
        let each: Vec<f64> = each.collect::<Option<_>>()?;
        match (experiment.responses.as_slice(), each.as_slice()) {
            ([one], [mean]) if one.good_end() == Some(Good::High) => Some(*mean),
            ([one], [mean]) if one.good_end() == Some(Good::Low) => Some(-*mean),
            _ => Some(together(&wishes(experiment, &found.responses)?, &each)),
        }
    };
    let worths = (0..batches.len()).filter_map(|at| Some((at, worth(at)?)));
    let best = worths.reduce(|best, one| if one.1 > best.1 { one } else { best });
    best.map(|(at, _)| at)
}
