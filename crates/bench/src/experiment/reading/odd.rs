//! A batch that lies further from the others than chance puts one.

use trials::chance::two_sided;
use trials::fit::Fit;

use crate::experiment::batches::Batch;

/// How often some batch may be called odd wrongly.
const WRONG: f64 = 0.05;

/// A batch far off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Odd {
    /// Its number.
    pub batch: usize,
    /// What it gave.
    pub measured: f64,
    /// What the others foretell.
    pub foretold: f64,
}

/// The batch whose distance from what the others foretell is largest, if chance puts none of so
/// many there more than once in 20 (the outlier test of Bonferroni on deleted residuals, from
/// memory).
pub(super) fn odd(
    fit: &Fit,
    batches: &[Batch],
    measured: &[usize],
    results: &[f64],
) -> Option<Odd> {
    let noise = fit.noise?;
    let degrees = fit.degrees.checked_sub(1).filter(|degrees| *degrees > 0)?;
    let squares = noise * noise * fit.degrees as f64;
    let runs = measured.len();
    let mut found: Option<(f64, Odd)> = None;
    for at in 0..runs {
        let (left, leverage) = (fit.left[at], fit.leverages[at]);
        if leverage > 1.0 - 1e-9 {
            continue;
        }
        let without = (squares - left * left / (1.0 - leverage)).max(0.0) / degrees as f64;
        let t = left / (without * (1.0 - leverage)).sqrt();
        let chance = two_sided(t, degrees) * runs as f64;
        let odd = Odd {
            batch: batches[measured[at]].number,
            measured: results[at],
            foretold: results[at] - left / (1.0 - leverage),
        };
        if chance < WRONG && found.as_ref().is_none_or(|(known, _)| chance < *known) {
            found = Some((chance, odd));
        }
    }
    found.map(|(_, odd)| odd)
}
