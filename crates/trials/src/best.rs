//! The best point by a fitted model, and whether the runs show that it is better at all.

use crate::chance::{upper_f, within};
use crate::fit::{Fit, FitError, Prediction};
use crate::model::{Bend, on_day, surface, with_days};
use crate::verdict::Good;

/// The best of many points by a fit.
#[derive(Clone, Debug, PartialEq)]
pub struct Best {
    /// Its place among the points asked about.
    pub at: usize,
    /// What it would give.
    pub expected: Prediction,
    /// Whether the runs show that the response depends on the mix at all. If not, the best point is
    /// where chance put it, and is no winner.
    pub shown: bool,
    /// Places of the points that the runs cannot tell from the best one, itself left out.
    pub as_good: Vec<usize>,
    /// Points left out because they lie beyond what the runs teach.
    pub unknown: usize,
}

/// How often chance alone makes a response differ as much as it does beyond its days, were it the
/// same at every point: the F test of the whole fit against the means of the days. Nothing without
/// runs to spare. The days are the last `days` − 1 variables of the fit's model.
///
/// # Errors
/// When the runs cannot even tell the days apart.
pub fn chance_of_flat_within_days(
    fit: &Fit,
    day_of: &[usize],
    days: usize,
    responses: &[f64],
) -> Result<Option<f64>, FitError> {
    let flat = with_days(&surface(&[], Bend::Flat), days);
    let points: Vec<Vec<f64>> = day_of.iter().map(|day| on_day(&[], *day, days)).collect();
    let plain = crate::fit::fit(&flat, &points, responses)?;
    let squares = |left: &[f64]| left.iter().map(|one| one * one).sum::<f64>();
    let (more, less) = (squares(&plain.left), squares(&fit.left));
    let taken = plain.degrees.saturating_sub(fit.degrees);
    if fit.degrees == 0 || taken == 0 || more <= 0.0 {
        return Ok(None);
    }
    let ratio = (more - less).max(0.0) / taken as f64 / (less / fit.degrees as f64);
    Ok(Some(upper_f(ratio, taken, fit.degrees)))
}

/// A flat response is taken for a sloping one this often.
const WRONG: f64 = 0.05;

/// Finds the best of many points by a fit, among those that the runs teach something about; nothing
/// if there is none, or if there were no more runs than terms.
///
/// Whether it is shown to be better is the F test of the whole model against one mean at 1 in 20.
/// Points are told from the best by the difference of both and its own error, one at a time.
pub fn best(fit: &Fit, points: &[Vec<f64>], good: Good) -> Option<Best> {
    let noise = fit.noise?;
    let judged: Vec<Prediction> = points.iter().map(|point| fit.at(point)).collect();
    let sign = match good {
        Good::High => 1.0,
        Good::Low => -1.0,
    };
    let known = (0..points.len()).filter(|at| !judged[*at].unknown);
    let better = |one: usize, other: usize| sign * judged[one].value > sign * judged[other].value;
    let at = known
        .clone()
        .reduce(|best, one| if better(one, best) { one } else { best })?;
    let half = within(1.0 - WRONG, fit.degrees) * noise;
    let alike = |one: &usize| {
        let apart = fit
            .leverage_of_difference(&points[at], &points[*one])
            .sqrt();
        (judged[at].value - judged[*one].value).abs() <= half * apart
    };
    Some(Best {
        at,
        expected: judged[at],
        shown: fit.chance_of_flat.is_some_and(|chance| chance <= WRONG),
        as_good: known.filter(|one| *one != at).filter(alike).collect(),
        unknown: judged.iter().filter(|one| one.unknown).count(),
    })
}
