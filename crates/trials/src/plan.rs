//! A plan of batches: which, how often, on which day, in which order.

use nalgebra::DMatrix;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use thiserror::Error;

use crate::model::{Model, on_day, with_days};
use crate::optimal::{OptimalError, chosen, least_efficiency, repeats};
use crate::rank::matrix;

/// How many batches, and how they are spread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Extent {
    /// All batches, repeats among them.
    pub runs: usize,
    /// How many of them repeat another one.
    pub repeats: usize,
    /// Over how many days they are made.
    pub days: usize,
    /// Draws the order; the same seed gives the same plan.
    pub seed: u64,
}

/// One batch to make.
#[derive(Clone, Debug, PartialEq)]
pub struct Batch {
    /// The day, counted from nought.
    pub day: usize,
    /// The mix and its settings, without the day.
    pub point: Vec<f64>,
}

/// Batches in the order in which they are made.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The batches.
    pub batches: Vec<Batch>,
    /// The least share of the best plan's teaching that this one has, run for run.
    pub least_efficiency: f64,
}

/// Why there is no plan.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum PlanError {
    /// Too few batches for the repeats asked for.
    #[error("of {runs} batches {repeats} cannot repeat another: ask for fewer repeats")]
    TooManyRepeats {
        /// All batches.
        runs: usize,
        /// Repeats among them.
        repeats: usize,
    },
    /// More days than batches, or none.
    #[error("{runs} batches cannot be spread over {days} days: take one to {runs} days")]
    Days {
        /// All batches.
        runs: usize,
        /// Days asked for.
        days: usize,
    },
    /// The model cannot be taught.
    #[error(transparent)]
    Optimal(#[from] OptimalError),
}

/// Plans batches that teach a model most, out of candidates, with repeats to know the noise by.
///
/// # Errors
/// When the batches are too few, or the candidates cannot teach the model.
pub fn plan(model: &Model, candidates: &[Vec<f64>], extent: Extent) -> Result<Plan, PlanError> {
    let Extent { runs, days, .. } = extent;
    let again = extent.repeats;
    if again >= runs {
        let repeats = again;
        return Err(PlanError::TooManyRepeats { runs, repeats });
    }
    if days == 0 || days > runs {
        return Err(PlanError::Days { runs, days });
    }
    let first = chosen(model, candidates, runs - again, extent.seed)?;
    let mut points: Vec<Vec<f64>> = first.iter().map(|at| candidates[*at].clone()).collect();
    for at in repeats(model, &points, again) {
        points.push(points[at].clone());
    }
    let least_efficiency = least_efficiency(model, &points, candidates);
    Ok(Plan {
        batches: spread(model, points, days, extent.seed),
        least_efficiency,
    })
}

/// Spreads points over days of like length so that the days hide as little of the model as can be,
/// and draws the order within each day.
pub fn spread(model: &Model, points: Vec<Vec<f64>>, days: usize, seed: u64) -> Vec<Batch> {
    let order = by_lot(points.len(), seed);
    let mut day_of = vec![0; points.len()];
    for (turn, at) in order.iter().enumerate() {
        day_of[*at] = turn % days.max(1);
    }
    part_days(model, &points, &mut day_of, days);
    let batches = order.into_iter().map(|at| Batch {
        day: day_of[at],
        point: points[at].clone(),
    });
    let mut batches: Vec<Batch> = batches.collect();
    batches.sort_by_key(|batch| batch.day);
    batches
}

/// The places of so many things in an order drawn by lot, the same for the same seed.
pub fn by_lot(count: usize, seed: u64) -> Vec<usize> {
    let mut die = ChaCha8Rng::seed_from_u64(seed);
    let mut order: Vec<usize> = (0..count).collect();
    for at in (1..order.len()).rev() {
        order.swap(at, die.random_range(0..=at));
    }
    order
}

/// Exchanges the days of two points as long as that makes the model with its days surer.
fn part_days(model: &Model, points: &[Vec<f64>], day_of: &mut [usize], days: usize) {
    if days < 2 {
        return;
    }
    let wider = with_days(model, days);
    let mut best = sureness(&wider, points, day_of, days);
    let mut moved = true;
    while moved {
        moved = false;
        for one in 0..points.len() {
            for other in one + 1..points.len() {
                if day_of[one] == day_of[other] {
                    continue;
                }
                day_of.swap(one, other);
                let found = sureness(&wider, points, day_of, days);
                match found > best + 1e-9 {
                    true => (best, moved) = (found, true),
                    false => day_of.swap(one, other),
                }
            }
        }
    }
}

/// The logarithm of the determinant, with a faint floor for what cannot be known at all.
fn sureness(wider: &Model, points: &[Vec<f64>], day_of: &[usize], days: usize) -> f64 {
    let rows = points.iter().zip(day_of);
    let rows: Vec<Vec<f64>> = rows.map(|(point, day)| on_day(point, *day, days)).collect();
    let whole = matrix(wider, &rows);
    let terms = whole.ncols();
    let sum = whole.transpose() * &whole + DMatrix::identity(terms, terms) * 1e-9;
    let roots = sum
        .cholesky()
        .map(|one| one.l().diagonal().map(f64::ln).sum());
    roots.unwrap_or(f64::NEG_INFINITY)
}
