//! What repeats say: how large the noise is, and whether a model misses more than noise.

use thiserror::Error;

use crate::chance::{chi_squared_below, upper_f};
use crate::fit::{Fit, fit, groups};
use crate::model::{Model, Term, on_day, with_days};

/// The noise of runs that were made alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Noise {
    /// Standard deviation of one run.
    pub deviation: f64,
    /// Low end of the interval that holds the true deviation 19 times in 20.
    pub low: f64,
    /// High end of it.
    pub high: f64,
    /// How many runs were made beyond the first at their point.
    pub degrees: usize,
}

/// Whether a model misses more than the noise of its repeats.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LackOfFit {
    /// Variance of the misses of the model over variance of the repeats.
    pub ratio: f64,
    /// Different points less terms.
    pub degrees_of_misses: usize,
    /// Runs beyond the first at their point.
    pub degrees_of_repeats: usize,
    /// How often noise alone gives such a ratio; below 0.05 the model is the wrong shape.
    pub chance: f64,
}

/// Why lack of fit is not judged.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum LackOfFitError {
    /// No point was run twice.
    #[error(
        "no run was repeated, so misses of the model and noise cannot be told apart: \
         repeat two or three runs"
    )]
    NothingRepeated,
    /// As many terms as different points.
    #[error(
        "there are as many terms as different runs, so the model passes through all of them: \
         make runs at new points"
    )]
    NoPointLeft,
    /// All repeats gave the same.
    #[error("all repeats gave the same reading: read the instrument one digit finer")]
    RepeatsAlike,
}

/// The noise of runs at the same point, from all points that were repeated; nothing if none was.
pub fn noise(points: &[Vec<f64>], responses: &[f64]) -> Option<Noise> {
    let (squares, degrees) = within_points(points, responses);
    (degrees > 0).then(|| Noise::of(squares, degrees))
}

/// Judges whether a model misses more than the noise of the repeats among its runs.
///
/// The classical F test of lack of fit; the published case it is held to stands in the tests.
///
/// # Errors
/// When the runs leave nothing to judge by.
pub fn lack_of_fit(
    fit: &Fit,
    points: &[Vec<f64>],
    responses: &[f64],
) -> Result<LackOfFit, LackOfFitError> {
    judged(fit, within_points(points, responses))
}

/// The noise of runs at the same point where days differ: what is left when each point has a level
/// of its own and each day a shift of its own; nothing if that leaves no run to spare.
pub fn noise_within_days(
    points: &[Vec<f64>],
    day_of: &[usize],
    days: usize,
    responses: &[f64],
) -> Option<Noise> {
    let (squares, degrees) = beyond_days(points, day_of, days, responses);
    (degrees > 0).then(|| Noise::of(squares, degrees))
}

/// The same judgement as [`lack_of_fit`] for a fit with days, by [`noise_within_days`]: a point
/// that is repeated on another day counts as repeated.
///
/// # Errors
/// When the runs leave nothing to judge by.
pub fn lack_of_fit_within_days(
    fit: &Fit,
    points: &[Vec<f64>],
    day_of: &[usize],
    days: usize,
    responses: &[f64],
) -> Result<LackOfFit, LackOfFitError> {
    judged(fit, beyond_days(points, day_of, days, responses))
}

fn judged(
    fit: &Fit,
    (squares, degrees_of_repeats): (f64, usize),
) -> Result<LackOfFit, LackOfFitError> {
    if degrees_of_repeats == 0 {
        return Err(LackOfFitError::NothingRepeated);
    }
    let degrees_of_misses = fit.degrees.saturating_sub(degrees_of_repeats);
    if degrees_of_misses == 0 {
        return Err(LackOfFitError::NoPointLeft);
    }
    if squares <= 0.0 {
        return Err(LackOfFitError::RepeatsAlike);
    }
    let left: f64 = fit.left.iter().map(|one| one * one).sum();
    let misses = (left - squares).max(0.0) / degrees_of_misses as f64;
    let ratio = misses / (squares / degrees_of_repeats as f64);
    Ok(LackOfFit {
        ratio,
        degrees_of_misses,
        degrees_of_repeats,
        chance: upper_f(ratio, degrees_of_misses, degrees_of_repeats),
    })
}

impl Noise {
    /// The noise whose squares add up to this over so many degrees of freedom.
    pub(crate) fn of(squares: f64, degrees: usize) -> Noise {
        Noise {
            deviation: (squares / degrees as f64).sqrt(),
            low: (squares / chi_squared_below(0.975, degrees)).sqrt(),
            high: (squares / chi_squared_below(0.025, degrees)).sqrt(),
            degrees,
        }
    }
}

/// Squares about a level of each point and a shift of each day, and how many degrees of freedom
/// they have; none where points and days cannot be told apart.
fn beyond_days(
    points: &[Vec<f64>],
    day_of: &[usize],
    days: usize,
    responses: &[f64],
) -> (f64, usize) {
    if days < 2 {
        return within_points(points, responses);
    }
    let groups = groups(points);
    let level = |run: usize| {
        let own = groups
            .iter()
            .map(|group| f64::from(u8::from(group.contains(&run))));
        on_day(&own.collect::<Vec<_>>(), day_of[run], days)
    };
    let levels: Vec<Vec<f64>> = (0..points.len()).map(level).collect();
    let term = |at: usize| Term { factors: vec![at] };
    let model = Model {
        variables: (1..=groups.len()).map(|at| format!("point {at}")).collect(),
        terms: (0..groups.len()).map(term).collect(),
    };
    let found = fit(&with_days(&model, days), &levels, responses);
    found.map_or((0.0, 0), |one| {
        (one.left.iter().map(|left| left * left).sum(), one.degrees)
    })
}

/// Squares about the mean of each point, and how many degrees of freedom they have.
fn within_points(points: &[Vec<f64>], responses: &[f64]) -> (f64, usize) {
    let mut all = (0.0, 0);
    for group in groups(points) {
        let values: Vec<f64> = group.iter().map(|run| responses[*run]).collect();
        let (squares, degrees) = about_mean(&values);
        all = (all.0 + squares, all.1 + degrees);
    }
    all
}

/// Squares about the mean, and their degrees of freedom.
pub(crate) fn about_mean(values: &[f64]) -> (f64, usize) {
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let squares = values.iter().map(|one| (one - mean).powi(2)).sum();
    (squares, values.len().saturating_sub(1))
}
