//! Where a fitted surface of settings has no slope, and whether that is a summit worth going to.

use nalgebra::{DMatrix, DVector, SymmetricEigen};
use thiserror::Error;

use crate::fit::Fit;

/// The point of a surface without slope.
#[derive(Clone, Debug, PartialEq)]
pub struct Summit {
    /// Where it lies, in the coding of the settings.
    pub point: Vec<f64>,
    /// The response there.
    pub value: f64,
    /// How the surface bends along its own axes, strongest bend downwards first.
    pub bends: Vec<f64>,
    /// What it is.
    pub kind: SummitKind,
    /// Whether it lies beyond the settings that were tried: then it is a direction to try, and no
    /// place to go to.
    pub beyond: bool,
}

/// What a point without slope is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SummitKind {
    /// The most the response gets.
    Top,
    /// The least it gets.
    Bottom,
    /// Up one way, down another.
    Saddle,
    /// Hardly any bend along one way: many settings serve as well.
    Ridge,
}

/// Why no point without slope is told.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum SummitError {
    /// No squares in the model.
    #[error("the model has no squares of the settings, so no summit: fit a bent surface")]
    NotBent,
    /// The surface is level along some way.
    #[error(
        "the surface does not bend along some way, so it has no single summit: \
         add runs between the extremes"
    )]
    Level,
}

/// A bend weaker than this share of the strongest makes a ridge. Of the published cases in the
/// tests, one with 0.02 is called a rising ridge by its authors, and one with 0.65 is a summit.
const RIDGE: f64 = 0.1;

/// The point without slope of a surface of the first `settings` variables, −B⁻¹b/2 (NIST/SEMATECH
/// e-Handbook 5.5.3.1, from memory). Days and other variables are left where the constant has them.
///
/// # Errors
/// When the surface does not bend.
pub fn summit(fit: &Fit, settings: usize, points: &[Vec<f64>]) -> Result<Summit, SummitError> {
    let mut slope = DVector::zeros(settings);
    let mut bend = DMatrix::zeros(settings, settings);
    let mut value = 0.0;
    for one in &fit.coefficients {
        match one.term.factors.as_slice() {
            [] => value = one.value,
            [a] if *a < settings => slope[*a] = one.value,
            [a, b] if *b < settings => {
                bend[(*a, *b)] += one.value / 2.0;
                bend[(*b, *a)] += one.value / 2.0;
            }
            _ => {}
        }
    }
    if bend.iter().all(|one| *one == 0.0) {
        return Err(SummitError::NotBent);
    }
    let solved = bend.clone().lu().solve(&(&slope * -0.5));
    let point = solved.ok_or(SummitError::Level)?;
    let mut bends: Vec<f64> = SymmetricEigen::new(bend)
        .eigenvalues
        .iter()
        .copied()
        .collect();
    bends.sort_by(f64::total_cmp);
    Ok(Summit {
        value: value + slope.dot(&point) / 2.0,
        kind: kind(&bends),
        beyond: beyond(point.as_slice(), points),
        point: point.iter().copied().collect(),
        bends,
    })
}

fn kind(bends: &[f64]) -> SummitKind {
    let strength = |one: &f64| one.abs();
    let strongest = bends.iter().map(strength).fold(0.0, f64::max);
    if bends.iter().any(|one| one.abs() < RIDGE * strongest) {
        return SummitKind::Ridge;
    }
    match (
        bends.iter().all(|one| *one < 0.0),
        bends.iter().all(|one| *one > 0.0),
    ) {
        (true, _) => SummitKind::Top,
        (_, true) => SummitKind::Bottom,
        _ => SummitKind::Saddle,
    }
}

fn beyond(point: &[f64], points: &[Vec<f64>]) -> bool {
    point.iter().enumerate().any(|(at, value)| {
        let tried = || points.iter().map(|one| one[at]);
        let low = tried().fold(f64::INFINITY, f64::min);
        let high = tried().fold(f64::NEG_INFINITY, f64::max);
        *value < low || *value > high
    })
}
