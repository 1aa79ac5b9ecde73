//! Several responses as one: the mix that meets all wishes best.

use trials::desirability::{Wanted, met, together};
use trials::fit::Prediction;
use trials::model::on_mean_day;

use crate::experiment::Experiment;
use crate::experiment::reading::{Fitted, ResponseRead};

/// The mix that meets all wishes best.
#[derive(Clone, Debug, PartialEq)]
pub struct Joined {
    /// Where; nothing if no mix that is known meets all wishes at all.
    pub best: Option<Met>,
    /// Responses whose limits were taken from their worst and best result.
    pub taken_from_results: Vec<String>,
}

/// How far a mix meets all wishes.
#[derive(Clone, Debug, PartialEq)]
pub struct Met {
    /// The mix.
    pub point: Vec<f64>,
    /// All wishes together, 0 to 1.
    pub together: f64,
    /// What each response is expected to be there, and how far that meets its wish.
    pub each: Vec<(Prediction, f64)>,
}

/// Joins all responses; nothing if there is one alone or one that cannot be read.
pub fn joined(
    experiment: &Experiment,
    responses: &[ResponseRead],
    everywhere: &[Vec<f64>],
) -> Option<Joined> {
    if responses.len() < 2 {
        return None;
    }
    let fits: Vec<&Fitted> = responses
        .iter()
        .map(|one| one.fitted.as_ref().ok())
        .collect::<Option<_>>()?;
    let wanted = wishes(experiment, responses)?;
    let mut best: Option<Met> = None;
    for point in everywhere {
        let expected: Vec<Prediction> = fits
            .iter()
            .map(|one| one.fit.at(&on_mean_day(point, one.days)))
            .collect();
        if expected.iter().any(|one| one.unknown) {
            continue;
        }
        let values: Vec<f64> = expected.iter().map(|one| one.value).collect();
        let all = together(&wanted, &values);
        if all > best.as_ref().map_or(0.0, |known| known.together) {
            let each = expected.iter().zip(&wanted);
            best = Some(Met {
                point: point.clone(),
                together: all,
                each: each
                    .map(|(one, wish)| (*one, met(wish, one.value)))
                    .collect(),
            });
        }
    }
    Some(Joined {
        best,
        taken_from_results: limits_from_results(experiment),
    })
}

/// Responses for whose wish no limits were typed.
pub(in crate::experiment) fn limits_from_results(experiment: &Experiment) -> Vec<String> {
    let left_out = experiment
        .responses
        .iter()
        .filter(|one| one.good_end().is_some() && (one.worthless.is_none() || one.good.is_none()));
    left_out.map(|one| one.name.clone()).collect()
}

/// The wish for each response; nothing if one has no limits and no results to take them from.
pub fn wishes(experiment: &Experiment, responses: &[ResponseRead]) -> Option<Vec<Wanted>> {
    let each = experiment.responses.iter().zip(responses);
    each.map(|(one, read)| one.wanted(&read.results)).collect()
}
