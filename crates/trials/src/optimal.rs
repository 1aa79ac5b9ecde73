//! Choosing the batches that teach a model most: exchange for the largest determinant.
//!
//! The determinant of X'X grows as the coefficients get surer together. A chosen point is exchanged
//! for a candidate as long as that multiplies the determinant by more than one: the factor is
//! (1 + d(x))(1 − d(z)) + d(x,z)² (Fedorov, Theory of Optimal Experiments, from memory). Candidates
//! are first turned into even columns, which changes no factor and keeps narrow regions exact.

use nalgebra::{DMatrix, DVector};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use thiserror::Error;

use crate::model::Model;
use crate::rank::{Indistinct, indistinct, matrix};

/// Why no points are chosen.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum OptimalError {
    /// Fewer runs than terms.
    #[error(
        "{runs} different batches cannot teach {terms} terms: \
         allow {terms}, or ask for a simpler model"
    )]
    FewerRunsThanTerms {
        /// Runs allowed.
        runs: usize,
        /// Terms of the model.
        terms: usize,
    },
    /// More runs than are worth planning.
    #[error("{0} batches are too many to plan at once: plan {MOST_RUNS} at most")]
    TooManyRuns(
        /// Runs asked for.
        usize,
    ),
    /// Candidates that cannot teach the model, however many.
    #[error("no choice of these mixes tells {} from the other terms: widen the bounds", .0.term)]
    NotToldApart(
        /// The first term that is not told apart.
        Indistinct,
    ),
    /// A candidate that does not fit the model.
    #[error("candidate {at} has {has} numbers where the model has {wants} variables")]
    Row {
        /// The candidate, counted from one.
        at: usize,
        /// How many numbers it has.
        has: usize,
        /// How many it should have.
        wants: usize,
    },
}

/// How often the exchange begins anew from other points, at least and at most. With eight starts a
/// plan of twelve runs for five settings ended short of the best one, which is reached with twenty;
/// forty cost nothing where points are few, and five keep a plan out of a thousand points below a
/// second.
const STARTS: (usize, usize) = (5, 40);

/// Most runs of a plan; a season has fewer, and the exchange takes seconds beyond.
pub const MOST_RUNS: usize = 100;

/// Work, in products, after which no further start is made.
const WORK: usize = 400_000_000;

/// Rounds after which a start is taken as it is. Plans settle in under ten; rounding could make two
/// plans of like worth follow each other for ever.
const MOST_ROUNDS: usize = 100;

/// A gain that is only rounding.
const GAIN: f64 = 1e-9;

/// Stands in for what is not yet known, so that the first points of a plan can be exchanged too.
const FAINT: f64 = 1e-6;

/// The places, among candidates, of so many points that teach a model most; a point may be chosen
/// more than once. The same seed gives the same choice.
///
/// # Errors
/// When no choice of so many can teach the model.
pub fn chosen(
    model: &Model,
    candidates: &[Vec<f64>],
    runs: usize,
    seed: u64,
) -> Result<Vec<usize>, OptimalError> {
    chosen_beside(model, &[], candidates, runs, seed)
}

/// The places, among candidates, of so many points that teach a model most together with points
/// that are made already: a second session, or the next batch.
///
/// # Errors
/// When no choice of so many can teach the model together with those made.
pub fn chosen_beside(
    model: &Model,
    made: &[Vec<f64>],
    candidates: &[Vec<f64>],
    runs: usize,
    seed: u64,
) -> Result<Vec<usize>, OptimalError> {
    let all = [candidates, made].concat();
    teachable(model, &all, runs + made.len())?;
    let rows = even_rows(model, &all);
    let kept: Vec<usize> = (candidates.len()..all.len()).collect();
    let mut die = ChaCha8Rng::seed_from_u64(seed);
    let mut best: Option<(f64, Vec<usize>)> = None;
    for _ in 0..starts(runs + made.len(), candidates.len(), model.terms.len()) {
        let start = (0..runs).map(|_| die.random_range(0..candidates.len()));
        let mut plan: Vec<usize> = start.chain(kept.iter().copied()).collect();
        exchange(&rows, &mut plan, runs, candidates.len());
        plan.sort_unstable();
        let worth = log_determinant(&rows, &plan);
        if best.as_ref().is_none_or(|(known, _)| worth > known + GAIN) {
            best = Some((worth, plan));
        }
    }
    let plan = best.map_or_else(Vec::new, |(_, plan)| plan);
    Ok(plan.into_iter().take(runs).collect())
}

/// Which of the points already chosen to repeat: those that a further batch teaches most about, no
/// point a second time before all had their turn.
pub fn repeats(model: &Model, points: &[Vec<f64>], count: usize) -> Vec<usize> {
    let rows = even_rows(model, points);
    let mut plan: Vec<usize> = (0..points.len()).collect();
    let mut found: Vec<usize> = Vec::new();
    for _ in 0..count {
        let known = variances(&rows, &inverse(&rows, &plan));
        let times = |at: usize| found.iter().filter(|one| **one == at).count();
        let fewest = (0..points.len()).map(times).min().unwrap_or(0);
        let open = (0..points.len()).rev().filter(|at| times(*at) == fewest);
        let worth = |one: &usize, other: &usize| known.each[*one].total_cmp(&known.each[*other]);
        let Some(next) = open.max_by(worth) else {
            break;
        };
        found.push(next);
        plan.push(next);
    }
    found
}

/// How much of the runs of one plan another would need for the same determinant: 0.8 says that the
/// plan judged teaches with ten runs what the other teaches with eight.
pub fn efficiency(model: &Model, judged: &[Vec<f64>], against: &[Vec<f64>]) -> f64 {
    let rows = even_rows(model, &[judged, against].concat());
    let mean = |places: Vec<usize>| {
        let runs = places.len() as f64;
        log_of_plain(&rows, &places) / model.terms.len() as f64 - runs.ln()
    };
    let split = judged.len();
    (mean((0..split).collect()) - mean((split..split + against.len()).collect())).exp()
}

/// The least that the efficiency of a plan can be against the best plan of any weights over these
/// candidates: exp(1 − d/p), d the largest variance of a candidate times the runs (from the
/// equivalence theorem of Kiefer and Wolfowitz; the bound from memory).
pub fn least_efficiency(model: &Model, plan: &[Vec<f64>], candidates: &[Vec<f64>]) -> f64 {
    let most = largest_variance(model, plan, candidates);
    (1.0 - most / model.terms.len() as f64).exp()
}

/// The largest variance of the response by the model at any candidate, times the runs, over that of
/// the noise. For the best plan it is the number of terms.
pub fn largest_variance(model: &Model, plan: &[Vec<f64>], candidates: &[Vec<f64>]) -> f64 {
    let rows = even_rows(model, &[plan, candidates].concat());
    let places: Vec<usize> = (0..plan.len()).collect();
    let Some(inverse) = plain(&rows, &places).cholesky().map(|one| one.inverse()) else {
        return f64::INFINITY;
    };
    let candidates = rows.rows(plan.len(), candidates.len()).into_owned();
    variances(&candidates, &inverse).each.max() * plan.len() as f64
}

fn starts(runs: usize, candidates: usize, terms: usize) -> usize {
    let work = runs * runs * candidates * terms;
    (WORK / work.max(1)).clamp(STARTS.0, STARTS.1)
}

fn teachable(model: &Model, candidates: &[Vec<f64>], runs: usize) -> Result<(), OptimalError> {
    let (terms, wants) = (model.terms.len(), model.variables.len());
    if runs < terms {
        return Err(OptimalError::FewerRunsThanTerms { runs, terms });
    }
    if runs > MOST_RUNS {
        return Err(OptimalError::TooManyRuns(runs));
    }
    let odd = candidates.iter().position(|one| one.len() != wants);
    if let Some(at) = odd {
        let has = candidates[at].len();
        return Err(OptimalError::Row {
            at: at + 1,
            has,
            wants,
        });
    }
    let first = indistinct(model, candidates).into_iter().next();
    first.map_or(Ok(()), |term| Err(OptimalError::NotToldApart(term)))
}

/// The terms of each point, turned so that over all points they are even and of one length.
fn even_rows(model: &Model, points: &[Vec<f64>]) -> DMatrix<f64> {
    let whole = matrix(model, points);
    let lengths: Vec<f64> = whole
        .column_iter()
        .map(|one| one.norm().max(1e-300))
        .collect();
    let mut even = whole;
    for (at, long) in lengths.iter().enumerate() {
        even.column_mut(at).unscale_mut(*long);
    }
    let count = (points.len() as f64).sqrt();
    match even.nrows() >= even.ncols() {
        true => even.qr().q() * count,
        false => even * count,
    }
}

/// Exchanges the first `free` points of a plan for the first `candidates` rows.
fn exchange(rows: &DMatrix<f64>, plan: &mut [usize], free: usize, candidates: usize) {
    let mut known = variances(rows, &inverse(rows, plan));
    let mut unmoved = 0;
    for _ in 0..MOST_ROUNDS {
        if unmoved >= free {
            return;
        }
        for place in 0..free {
            let shared = rows * known.turned.row(plan[place]).transpose();
            let less = 1.0 - shared[plan[place]];
            let factor = |at: usize| (1.0 + known.each[at]) * less + shared[at].powi(2);
            let factors = (0..candidates).map(|at| (at, factor(at)));
            let best = factors.reduce(|best, one| if one.1 > best.1 { one } else { best });
            match best.filter(|(_, factor)| *factor > 1.0 + GAIN) {
                Some((at, _)) => {
                    plan[place] = at;
                    known = variances(rows, &inverse(rows, plan));
                    unmoved = 0;
                }
                None => unmoved += 1,
            }
        }
    }
}

/// The variance d(x) of every candidate, and its terms times the inverse.
struct Variances {
    turned: DMatrix<f64>,
    each: DVector<f64>,
}

fn variances(rows: &DMatrix<f64>, inverse: &DMatrix<f64>) -> Variances {
    let turned = rows * inverse;
    let each = turned.component_mul(rows).column_sum();
    Variances { turned, each }
}

fn plain(rows: &DMatrix<f64>, plan: &[usize]) -> DMatrix<f64> {
    let chosen = rows.select_rows(plan);
    chosen.transpose() * chosen
}

fn faint(rows: &DMatrix<f64>, plan: &[usize]) -> DMatrix<f64> {
    let sum = plain(rows, plan);
    let terms = sum.nrows();
    sum + DMatrix::identity(terms, terms) * FAINT
}

fn inverse(rows: &DMatrix<f64>, plan: &[usize]) -> DMatrix<f64> {
    let sum = faint(rows, plan);
    let zeros = DMatrix::zeros(sum.nrows(), sum.nrows());
    sum.cholesky().map_or(zeros, |one| one.inverse())
}

fn log_determinant(rows: &DMatrix<f64>, plan: &[usize]) -> f64 {
    log_of(faint(rows, plan))
}

fn log_of_plain(rows: &DMatrix<f64>, plan: &[usize]) -> f64 {
    log_of(plain(rows, plan))
}

fn log_of(sum: DMatrix<f64>) -> f64 {
    let roots = sum
        .cholesky()
        .map(|one| one.l().diagonal().map(f64::ln).sum());
    roots.map_or(f64::NEG_INFINITY, |half: f64| 2.0 * half)
}
