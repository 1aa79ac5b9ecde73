//! What is believed of a response everywhere, from few batches: a mean and how sure it is.
//!
//! A Gaussian process: responses at points that lie near each other are alike, and how near is near
//! is learnt from the batches. Two shapes of likeness are known. A smooth one, exp(−r²/2), lets the
//! response bend as it will; a polynomial one makes it the Bayesian linear model of given terms.
//! The mean of all responses is learnt too and its doubt is counted (Rasmussen and Williams,
//! Gaussian Processes for Machine Learning 2.2 and 2.7, from memory).

use nalgebra::{Cholesky, DMatrix, DVector, Dyn};
use thiserror::Error;

use crate::model::Model;

/// How responses at two points are taken to be alike.
#[derive(Clone, Debug, PartialEq)]
pub enum Likeness {
    /// The response bends as it will, at its own pace along each variable.
    Smooth,
    /// The response is a sum of these terms, each of a coefficient that may be as large as any.
    Terms(Model),
}

/// What is believed of a response.
#[derive(Clone, Debug)]
pub struct Belief {
    /// The batches it rests on.
    pub points: Vec<Vec<f64>>,
    /// Their responses.
    pub responses: Vec<f64>,
    /// Standard deviation of one batch.
    pub noise: f64,
    /// How far the response itself strays from its mean.
    pub swing: f64,
    /// For a smooth likeness: how far one has to go along each variable to find another response,
    /// as a share of its span. Far above one, the variable does nothing.
    pub reaches: Vec<f64>,
    likeness: Likeness,
    spans: Vec<(f64, f64)>,
    mean: f64,
    solved: DVector<f64>,
    root: Cholesky<f64, Dyn>,
    ones: DVector<f64>,
}

/// What is believed at one point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Believed {
    /// The response expected.
    pub mean: f64,
    /// Standard deviation of the response, without the noise of a batch.
    pub deviation: f64,
}

/// Why nothing is believed.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum BeliefError {
    /// Too few batches.
    #[error("{0} results are too few to learn from: make {FEWEST} batches at least")]
    TooFew(
        /// How many there are.
        usize,
    ),
    /// A batch without its numbers.
    #[error("batch {0} has no usable result or not one number for each variable: enter it again")]
    Broken(
        /// The batch, counted from one.
        usize,
    ),
    /// All results alike.
    #[error("all results are the same, so nothing is learnt from them: measure finer")]
    AllAlike,
}

/// Fewest batches that a belief is formed from: with three, a mean, a swing and a noise are told
/// apart at all.
pub const FEWEST: usize = 3;

/// The range of each variable over points, as which near and far are counted.
pub fn spans(points: &[Vec<f64>]) -> Vec<(f64, f64)> {
    let variables = points.first().map_or(0, Vec::len);
    let span = |at: usize| {
        let values = || points.iter().filter_map(|one| one.get(at).copied());
        (
            values().fold(f64::INFINITY, f64::min),
            values().fold(f64::NEG_INFINITY, f64::max),
        )
    };
    (0..variables).map(span).collect()
}

/// Forms a belief from batches. `spans` are those of the whole region, from [`spans`].
///
/// # Errors
/// When there are too few results, or they say nothing.
pub fn belief(
    likeness: &Likeness,
    points: &[Vec<f64>],
    responses: &[f64],
    spans: &[(f64, f64)],
) -> Result<Belief, BeliefError> {
    sound(points, responses, spans.len())?;
    let measured = DVector::from_column_slice(responses);
    let places: Vec<Vec<f64>> = points.iter().map(|one| placed(one, spans)).collect();
    let paces = match likeness {
        Likeness::Smooth => spans.len(),
        Likeness::Terms(_) => 0,
    };
    let weigh = |pace: &[f64]| {
        let prepared = prepared(likeness, &places, &measured, pace);
        prepared.map_or(f64::NEG_INFINITY, |one| one.worth + usual(pace))
    };
    let pace = climbed(paces, weigh);
    let found = prepared(likeness, &places, &measured, &pace).ok_or(BeliefError::AllAlike)?;
    let (reaches, noise) = pace.split_at(paces);
    let swing = found.variance.sqrt();
    Ok(Belief {
        points: points.to_vec(),
        responses: responses.to_vec(),
        noise: swing * (noise[0] / 2.0).exp(),
        swing,
        reaches: reaches.iter().map(|pace| pace.exp()).collect(),
        likeness: likeness.clone(),
        spans: spans.to_vec(),
        mean: found.mean,
        solved: found.solved,
        root: found.root,
        ones: found.ones,
    })
}

impl Belief {
    /// What is believed at a point.
    pub fn at(&self, point: &[f64]) -> Believed {
        let place = placed(point, &self.spans);
        let alike = self.points.iter().map(|one| {
            let other = placed(one, &self.spans);
            self.alike(&place, &other)
        });
        let alike = DVector::from_iterator(self.points.len(), alike);
        let turned = self.root.solve(&alike);
        let doubt_of_mean = (1.0 - self.ones.dot(&alike)).powi(2) / self.ones.sum();
        let left = self.alike(&place, &place) - turned.dot(&alike) + doubt_of_mean;
        Believed {
            mean: self.mean + self.solved.dot(&alike),
            deviation: self.swing * left.max(0.0).sqrt(),
        }
    }

    /// The same belief with one more batch, as if its result were what is expected: what is left in
    /// doubt after a batch does not depend on its result. Nothing else is learnt anew.
    pub fn supposing(&self, point: &[f64]) -> Belief {
        let mut more = self.clone();
        more.points.push(point.to_vec());
        more.responses.push(self.at(point).mean);
        let places: Vec<Vec<f64>> = more
            .points
            .iter()
            .map(|one| placed(one, &self.spans))
            .collect();
        let reaches = self.reaches.iter().map(|reach| reach.ln());
        let noise = 2.0 * (self.noise / self.swing).ln();
        let pace: Vec<f64> = reaches.chain([noise]).collect();
        let measured = DVector::from_column_slice(&more.responses);
        if let Some(found) = prepared(&self.likeness, &places, &measured, &pace) {
            more.mean = found.mean;
            more.solved = found.solved;
            more.root = found.root;
            more.ones = found.ones;
        }
        more
    }

    fn alike(&self, one: &[f64], other: &[f64]) -> f64 {
        alike(&self.likeness, &self.reaches, one, other)
    }
}

fn sound(points: &[Vec<f64>], responses: &[f64], variables: usize) -> Result<(), BeliefError> {
    if points.len() != responses.len() {
        return Err(BeliefError::Broken(points.len().min(responses.len()) + 1));
    }
    if points.len() < FEWEST {
        return Err(BeliefError::TooFew(points.len()));
    }
    let whole = |(point, response): (&Vec<f64>, &f64)| {
        point.len() == variables && response.is_finite() && point.iter().all(|one| one.is_finite())
    };
    if let Some(at) = points.iter().zip(responses).position(|one| !whole(one)) {
        return Err(BeliefError::Broken(at + 1));
    }
    match responses.iter().all(|one| *one == responses[0]) {
        true => Err(BeliefError::AllAlike),
        false => Ok(()),
    }
}

/// A point with each variable from −1 to 1 over its span.
fn placed(point: &[f64], spans: &[(f64, f64)]) -> Vec<f64> {
    let each = point.iter().zip(spans);
    each.map(|(value, (low, high))| match high > low {
        true => (2.0 * value - low - high) / (high - low),
        false => 0.0,
    })
    .collect()
}

/// How alike two responses are, as a share of the variance of one. Reaches are shares of the span,
/// which is two here.
fn alike(likeness: &Likeness, reaches: &[f64], one: &[f64], other: &[f64]) -> f64 {
    match likeness {
        Likeness::Smooth => {
            let apart = one.iter().zip(other).zip(reaches);
            let square: f64 = apart
                .map(|((a, b), reach)| ((a - b) / (2.0 * reach)).powi(2))
                .sum();
            (-square / 2.0).exp()
        }
        Likeness::Terms(model) => {
            let (one, other) = (model.row(one), model.row(other));
            let products = one.iter().zip(&other).map(|(a, b)| a * b);
            products.sum::<f64>() / one.len().max(1) as f64
        }
    }
}

/// A belief for given paces (logarithms of the reaches, then of noise over swing, squared), and how
/// well it explains the results.
struct Prepared {
    worth: f64,
    mean: f64,
    variance: f64,
    solved: DVector<f64>,
    root: Cholesky<f64, Dyn>,
    ones: DVector<f64>,
}

fn prepared(
    likeness: &Likeness,
    places: &[Vec<f64>],
    measured: &DVector<f64>,
    pace: &[f64],
) -> Option<Prepared> {
    let count = places.len();
    let (reaches, noise) = pace.split_at(pace.len() - 1);
    let reaches: Vec<f64> = reaches.iter().map(|one| one.exp()).collect();
    let mut whole = DMatrix::zeros(count, count);
    for row in 0..count {
        for column in 0..=row {
            whole[(row, column)] = alike(likeness, &reaches, &places[row], &places[column]);
        }
        whole[(row, row)] += noise[0].exp();
    }
    let root = whole.cholesky()?;
    let ones = root.solve(&DVector::from_element(count, 1.0));
    let mean = ones.dot(measured) / ones.sum();
    let off = measured.map(|one| one - mean);
    let solved = root.solve(&off);
    let variance = solved.dot(&off) / (count - 1) as f64;
    let roots: f64 = root.l_dirty().diagonal().map(f64::ln).sum();
    let worth = -0.5 * (count - 1) as f64 * variance.ln() - roots - 0.5 * ones.sum().ln();
    (variance > 0.0 && worth.is_finite()).then_some(Prepared {
        worth,
        mean,
        variance,
        solved,
        root,
        ones,
    })
}

/// What is usual before anything is measured, as a logarithm of odds: a response turns within about
/// its span, two or three times more or less, and its noise is about a fifth of its swing, five
/// times more or less. Tighter, and the batches cannot overrule it; looser, and with ten batches a
/// variable is now and then taken to do nothing, or all noise to be response.
fn usual(pace: &[f64]) -> f64 {
    let (reaches, noise) = pace.split_at(pace.len() - 1);
    let off = |value: f64, middle: f64, spread: f64| -0.5 * ((value - middle) / spread).powi(2);
    let reaches: f64 = reaches.iter().map(|one| off(*one, 0.0, 0.8)).sum();
    reaches + off(noise[0], 2.0 * 0.2_f64.ln(), 3.0)
}

/// Climbs from two starts, a quick and a slow response, by steps along one pace at a time that are
/// halved until they no longer matter.
fn climbed(paces: usize, weigh: impl Fn(&[f64]) -> f64) -> Vec<f64> {
    let mut best: Option<(f64, Vec<f64>)> = None;
    for start in [-0.7, 0.5] {
        let mut pace = vec![start; paces];
        pace.push(-3.0);
        let mut worth = weigh(&pace);
        let mut step = 0.8;
        while step > 0.05 {
            let before = worth;
            for at in 0..pace.len() {
                for way in [step, -step] {
                    pace[at] += way;
                    let found = weigh(&pace);
                    match found > worth {
                        true => worth = found,
                        false => pace[at] -= way,
                    }
                }
            }
            if worth <= before {
                step /= 2.0;
            }
        }
        if best.as_ref().is_none_or(|(known, _)| worth > *known) {
            best = Some((worth, pace));
        }
    }
    best.map_or_else(Vec::new, |(_, pace)| pace)
}
