//! A sum of two parts of which each may be off by a factor of its own: what is believed of both
//! factors after the sum was measured where the parts stand to each other in different ways.
//!
//! The logarithms of the factors are believed to be normal beforehand, the scatter of a measurement
//! is known as in [`crate::conjugate`]. No closed form exists; the belief is worked out on a grid,
//! whose step is told to be small against it by the tests.

use crate::conjugate::WORTH_OF_A_SCATTER;

/// Two parts as they were foretold, and their sum as it was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parts {
    /// The first part.
    pub first: f64,
    /// The second part.
    pub second: f64,
    /// The sum.
    pub measured: f64,
}

/// What is believed beforehand: how far the logarithm of each factor is spread round nought, and
/// how far one measurement scatters, as a logarithm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Before {
    /// Spread of the first factor.
    pub first: f64,
    /// Spread of the second factor.
    pub second: f64,
    /// Scatter of a measurement.
    pub scatter: f64,
}

/// A factor as it is believed to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factor {
    /// Low, middle and high: between the ends it lies in the share of cases asked for.
    pub ends: [f64; 3],
    /// Spread of its logarithm over that beforehand: near one where nothing was learned of it.
    pub narrower: f64,
}

/// Points of the grid to either side of nought.
const REACH: usize = 100;
/// How many spreads the grid reaches to either side.
const SPREADS: f64 = 4.0;

/// The two factors after these measurements, with ends that hold in this share of all cases.
pub fn factors(before: &Before, seen: &[Parts], holds: f64) -> [Factor; 2] {
    let points = 2 * REACH + 1;
    let at =
        |spread: f64, place: usize| spread * SPREADS * (place as f64 - REACH as f64) / REACH as f64;
    let degrees = WORTH_OF_A_SCATTER + seen.len() as f64;
    let ease = |a: f64, b: f64| -> f64 {
        let (one, other) = (a.exp(), b.exp());
        let off = seen.iter().map(|parts| {
            let foretold = one * parts.first + other * parts.second;
            (parts.measured / foretold).ln().powi(2)
        });
        let sum = WORTH_OF_A_SCATTER * before.scatter.powi(2) + off.sum::<f64>();
        let prior = (a / before.first).powi(2) + (b / before.second).powi(2);
        -0.5 * prior - 0.5 * degrees * sum.ln()
    };
    let mut logs = vec![0.0; points * points];
    for a in 0..points {
        for b in 0..points {
            logs[a * points + b] = ease(at(before.first, a), at(before.second, b));
        }
    }
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weights: Vec<f64> = logs.iter().map(|log| (log - most).exp()).collect();
    let first: Vec<f64> = (0..points)
        .map(|a| weights[a * points..(a + 1) * points].iter().sum())
        .collect();
    let second: Vec<f64> = (0..points)
        .map(|b| (0..points).map(|a| weights[a * points + b]).sum())
        .collect();
    [(before.first, first), (before.second, second)].map(|(spread, weights)| {
        let places: Vec<f64> = (0..points).map(|place| at(spread, place)).collect();
        factor(&places, &weights, spread, holds)
    })
}

fn factor(places: &[f64], weights: &[f64], spread: f64, holds: f64) -> Factor {
    let all: f64 = weights.iter().sum();
    let each = || places.iter().zip(weights);
    let mean = each().map(|(place, weight)| place * weight).sum::<f64>() / all;
    let square = each().map(|(place, weight)| (place - mean).powi(2) * weight);
    let within = (square.sum::<f64>() / all).sqrt();
    let below = |share: f64| -> f64 {
        let mut passed = 0.0;
        for (two, weight) in places.windows(2).zip(weights.windows(2)) {
            // Between two points the weight goes in a straight line.
            let here = f64::midpoint(weight[0], weight[1]) / all;
            if passed + here >= share {
                return two[0] + (two[1] - two[0]) * (share - passed) / here;
            }
            passed += here;
        }
        places.last().copied().unwrap_or(0.0)
    };
    let out = (1.0 - holds) / 2.0;
    Factor {
        ends: [out, 0.5, 1.0 - out].map(|share| below(share).exp()),
        narrower: within / spread,
    }
}
