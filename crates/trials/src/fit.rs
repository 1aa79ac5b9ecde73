//! Least squares: what each term is worth, how sure that is, and what a new point would give.
//!
//! The columns are brought to one length and the equations solved by an orthogonal triangle, since
//! the terms of a narrow mixture region are nearly alike and normal equations lose all digits.

use nalgebra::{DMatrix, DVector};
use thiserror::Error;

use crate::chance::{two_sided, upper_f, within};
use crate::model::{Model, Term};
use crate::rank::{Indistinct, indistinct, matrix};

/// What one term is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Coefficient {
    /// The term.
    pub term: Term,
    /// The term as it is written.
    pub name: String,
    /// Its coefficient, in units of the response.
    pub value: f64,
    /// How sure it is; nothing when there are no more runs than terms.
    pub sure: Option<Sure>,
}

/// How sure a coefficient is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sure {
    /// Standard error.
    pub error: f64,
    /// Low end of the interval that holds the true value 19 times in 20.
    pub low: f64,
    /// High end of it.
    pub high: f64,
    /// How often chance alone gives a coefficient as large, were the true one nought.
    pub chance: f64,
}

/// A response fitted by a model.
#[derive(Clone, Debug)]
pub struct Fit {
    /// The model.
    pub model: Model,
    /// The coefficients in the order of its terms.
    pub coefficients: Vec<Coefficient>,
    /// Runs less terms: what is left to judge the noise by.
    pub degrees: usize,
    /// Standard deviation of what the model leaves over; nothing without degrees.
    pub noise: Option<f64>,
    /// Share of the squares about the mean that the model takes up; nothing if all responses are
    /// alike.
    pub taken_up: Option<f64>,
    /// The same share for runs foretold from the others, one after the other (by PRESS).
    pub foretold: Option<f64>,
    /// How often chance alone takes up as much, were the response flat.
    pub chance_of_flat: Option<f64>,
    /// The response by the model, run by run.
    pub fitted: Vec<f64>,
    /// Measured less fitted, run by run.
    pub left: Vec<f64>,
    /// How far each run alone pulls the fit to itself, 0 to 1.
    pub leverages: Vec<f64>,
    pub(crate) spread: DMatrix<f64>,
}

/// What a point would give.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prediction {
    /// The response by the model.
    pub value: f64,
    /// The interval of the mean of many batches at this point, 19 times in 20.
    pub mean: Option<(f64, f64)>,
    /// The interval of one more batch at this point, 19 times in 20.
    pub batch: Option<(f64, f64)>,
    /// Variance of the prediction over variance of the noise.
    pub leverage: f64,
    /// Whether the point lies beyond what the runs teach: its leverage is larger than that of any
    /// run (the test for hidden extrapolation of Montgomery, Peck and Vining, from memory).
    pub unknown: bool,
}

/// Why runs are not fitted.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum FitError {
    /// A run has no response, or a response no run.
    #[error("{runs} runs but {responses} responses: leave out the runs that were not measured")]
    Uneven {
        /// How many runs.
        runs: usize,
        /// How many responses.
        responses: usize,
    },
    /// A run does not have one number for each variable.
    #[error("run {run} has {has} numbers where the model has {wants} variables")]
    Row {
        /// The run, counted from one.
        run: usize,
        /// How many numbers it has.
        has: usize,
        /// How many it should have.
        wants: usize,
    },
    /// A number that is none.
    #[error("run {run} holds something that is not a number: weigh or measure it again")]
    NotANumber {
        /// The run, counted from one.
        run: usize,
    },
    /// Too few runs.
    #[error(
        "{runs} runs cannot teach {terms} terms: make {} more, or ask for a simpler model",
        terms - runs
    )]
    FewerRunsThanTerms {
        /// How many runs.
        runs: usize,
        /// How many terms.
        terms: usize,
    },
    /// Enough runs, but too few that differ.
    #[error(
        "{runs} runs hold only {different} different ones, too few for {terms} terms: \
         make {} new ones, or ask for a simpler model",
        terms - different
    )]
    FewerDifferentThanTerms {
        /// How many runs.
        runs: usize,
        /// How many of them differ.
        different: usize,
        /// How many terms.
        terms: usize,
    },
    /// A factor that never varied.
    #[error(
        "{name} was {value} in every run, so nothing can be said about it: \
         leave it out of the model, or make runs with another value"
    )]
    NeverVaried {
        /// The variable.
        name: String,
        /// Its only value.
        value: f64,
    },
    /// Terms that only ever moved together.
    #[error(
        "{} moved only together with {}, so they cannot be told apart: \
         leave one of them out, or make runs in which they differ",
        .0.term, listed(.0)
    )]
    NotToldApart(
        /// The term and what makes it up.
        Indistinct,
    ),
}

/// Fits a model to runs.
///
/// # Errors
/// When the runs cannot teach every term of the model.
pub fn fit(model: &Model, points: &[Vec<f64>], responses: &[f64]) -> Result<Fit, FitError> {
    whole(model, points, responses)?;
    told_apart(model, points)?;
    let rows = matrix(model, points);
    let measured = DVector::from_column_slice(responses);
    let lengths: Vec<f64> = rows.column_iter().map(|column| column.norm()).collect();
    let mut even = rows.clone();
    for (at, long) in lengths.iter().enumerate() {
        even.column_mut(at).unscale_mut(*long);
    }
    let qr = even.qr();
    let triangle = qr.r();
    let turned = qr.q().transpose() * &measured;
    let unknown = || FitError::NotToldApart(Indistinct::of_all(model));
    let solved = triangle.solve_upper_triangular(&turned);
    let mut values = solved.ok_or_else(unknown)?;
    let one = DMatrix::identity(lengths.len(), lengths.len());
    let inverse = triangle.solve_upper_triangular(&one).ok_or_else(unknown)?;
    let mut spread = &inverse * inverse.transpose();
    for (at, long) in lengths.iter().enumerate() {
        values[at] /= long;
        spread.row_mut(at).unscale_mut(*long);
        spread.column_mut(at).unscale_mut(*long);
    }
    Ok(told(model, &rows, &measured, &values, spread))
}

impl Fit {
    /// What a point would give.
    pub fn at(&self, point: &[f64]) -> Prediction {
        let row = DVector::from_vec(self.model.row(point));
        let terms = row.iter().zip(&self.coefficients);
        let value: f64 = terms.map(|(term, worth)| term * worth.value).sum();
        let leverage = (&self.spread * &row).dot(&row);
        let most = self
            .leverages
            .iter()
            .fold(0.0_f64, |top, one| top.max(*one));
        let around = |variance: f64| {
            let half = self.noise? * variance.sqrt() * within(0.95, self.degrees);
            Some((value - half, value + half))
        };
        Prediction {
            value,
            mean: around(leverage),
            batch: around(1.0 + leverage),
            leverage,
            unknown: leverage > most * (1.0 + 1e-9),
        }
    }

    /// Variance of the difference between two points over variance of the noise.
    pub fn leverage_of_difference(&self, one: &[f64], other: &[f64]) -> f64 {
        let apart = self.model.row(one).into_iter().zip(self.model.row(other));
        let apart = DVector::from_iterator(self.model.terms.len(), apart.map(|(a, b)| a - b));
        (&self.spread * &apart).dot(&apart).max(0.0)
    }

    /// The coefficients alone.
    pub fn values(&self) -> Vec<f64> {
        self.coefficients.iter().map(|one| one.value).collect()
    }
}

fn whole(model: &Model, points: &[Vec<f64>], responses: &[f64]) -> Result<(), FitError> {
    let (runs, wants) = (points.len(), model.variables.len());
    if runs != responses.len() {
        let responses = responses.len();
        return Err(FitError::Uneven { runs, responses });
    }
    for (at, (point, response)) in points.iter().zip(responses).enumerate() {
        let (run, has) = (at + 1, point.len());
        if has != wants {
            return Err(FitError::Row { run, has, wants });
        }
        if !response.is_finite() || point.iter().any(|number| !number.is_finite()) {
            return Err(FitError::NotANumber { run });
        }
    }
    Ok(())
}

fn told_apart(model: &Model, points: &[Vec<f64>]) -> Result<(), FitError> {
    let (runs, terms) = (points.len(), model.terms.len().max(1));
    if runs < terms {
        return Err(FitError::FewerRunsThanTerms { runs, terms });
    }
    for (at, name) in model.variables.iter().enumerate() {
        let value = points[0][at];
        let asked = model.terms.iter().any(|term| term.factors.contains(&at));
        if asked && points.iter().all(|point| point[at] == value) {
            let name = name.clone();
            return Err(FitError::NeverVaried { name, value });
        }
    }
    let different = groups(points).len();
    if different < terms {
        return Err(FitError::FewerDifferentThanTerms {
            runs,
            different,
            terms,
        });
    }
    let first = indistinct(model, points).into_iter().next();
    first.map_or(Ok(()), |term| Err(FitError::NotToldApart(term)))
}

/// The runs at one and the same point, point by point in the order in which they first come.
pub(crate) fn groups(points: &[Vec<f64>]) -> Vec<Vec<usize>> {
    let mut found: Vec<Vec<usize>> = Vec::new();
    for (run, point) in points.iter().enumerate() {
        let same = |group: &&mut Vec<usize>| alike(&points[group[0]], point);
        match found.iter_mut().find(same) {
            Some(group) => group.push(run),
            None => found.push(vec![run]),
        }
    }
    found
}

/// Whether two points are the same but for rounding.
fn alike(one: &[f64], other: &[f64]) -> bool {
    one.iter().zip(other).all(|(a, b)| (a - b).abs() <= 1e-9)
}

fn told(
    model: &Model,
    rows: &DMatrix<f64>,
    measured: &DVector<f64>,
    values: &DVector<f64>,
    spread: DMatrix<f64>,
) -> Fit {
    let (runs, terms) = rows.shape();
    let degrees = runs - terms;
    let fitted = rows * values;
    let left = measured - &fitted;
    let leverages: Vec<f64> = rows
        .row_iter()
        .map(|row| (row * &spread).dot(&row))
        .collect();
    let squares = left.norm_squared();
    let noise = (degrees > 0).then(|| (squares / degrees as f64).sqrt());
    let about_mean = measured.map(|one| one - measured.mean()).norm_squared();
    let share = |lost: f64| (about_mean > 0.0).then(|| 1.0 - lost / about_mean);
    let lost = left.iter().zip(&leverages);
    let lost: f64 = lost.map(|(left, h)| (left / (1.0 - h)).powi(2)).sum();
    let sure = |at: usize| Some(surety(values[at], noise?, spread[(at, at)], degrees));
    let coefficients = model
        .terms
        .iter()
        .enumerate()
        .map(|(at, term)| Coefficient {
            term: term.clone(),
            name: model.name(term),
            value: values[at],
            sure: sure(at),
        });
    Fit {
        model: model.clone(),
        coefficients: coefficients.collect(),
        degrees,
        noise,
        taken_up: share(squares),
        foretold: share(lost).filter(|found| degrees > 0 && found.is_finite()),
        chance_of_flat: flat(about_mean, squares, terms, degrees),
        fitted: fitted.iter().copied().collect(),
        left: left.iter().copied().collect(),
        leverages,
        spread,
    }
}

fn surety(value: f64, noise: f64, spread: f64, degrees: usize) -> Sure {
    let error = noise * spread.sqrt();
    let half = error * within(0.95, degrees);
    Sure {
        error,
        low: value - half,
        high: value + half,
        chance: two_sided(value / error, degrees),
    }
}

/// The F test of the whole model against one mean; shares hold the mean without a constant.
fn flat(about_mean: f64, squares: f64, terms: usize, degrees: usize) -> Option<f64> {
    if degrees == 0 || terms < 2 || about_mean <= 0.0 {
        return None;
    }
    let taken = (about_mean - squares) / (terms - 1) as f64;
    let noise = squares / degrees as f64;
    Some(upper_f(taken / noise, terms - 1, degrees))
}

fn listed(made: &Indistinct) -> String {
    match made.from.is_empty() {
        true => "nothing (it was nought in every run)".to_owned(),
        false => {
            let names: Vec<&str> = made.from.iter().map(|(name, _)| name.as_str()).collect();
            names.join(", ")
        }
    }
}

impl Indistinct {
    /// What is said when the triangle breaks down although each column seemed told apart.
    fn of_all(model: &Model) -> Indistinct {
        let names = model.terms.iter().map(|term| (model.name(term), 1.0));
        Indistinct {
            term: "one of the terms".to_owned(),
            from: names.collect(),
        }
    }
}
