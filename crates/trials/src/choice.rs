//! Which terms of a model the runs speak for.

use crate::fit::{Fit, FitError, fit};
use crate::model::{Model, Term};

/// A model from which every term was dropped that the runs do not speak for.
#[derive(Clone, Debug)]
pub struct Reduced {
    /// The fit with the terms that stayed.
    pub fit: Fit,
    /// The terms dropped, the most doubtful first, each with how often chance gives it.
    pub dropped: Vec<(String, f64)>,
}

/// Drops terms one at a time, the most doubtful first, until chance gives every droppable term
/// that is left less often than `limit`. A term that is part of one that stays, stays with it; the
/// constant and the terms of one variable alone are never dropped.
///
/// The errors of what is left are then somewhat too small, because the same runs chose it.
///
/// # Errors
/// When the runs cannot teach the whole model.
pub fn reduced(
    model: &Model,
    points: &[Vec<f64>],
    responses: &[f64],
    limit: f64,
) -> Result<Reduced, FitError> {
    let mut dropped = Vec::new();
    let mut found = fit(model, points, responses)?;
    while let Some((at, chance)) = most_doubtful(&found).filter(|(_, chance)| *chance > limit) {
        let mut smaller = found.model.clone();
        let term = smaller.terms.remove(at);
        dropped.push((smaller.name(&term), chance));
        found = fit(&smaller, points, responses)?;
    }
    Ok(Reduced {
        fit: found,
        dropped,
    })
}

/// The model of several that foretells best what it was not shown: the smallest square of runs
/// foretold from the others. Models that the runs cannot teach are passed over; nothing if that
/// leaves none, or none with a run to spare.
pub fn best_foretelling(models: &[Model], points: &[Vec<f64>], responses: &[f64]) -> Option<Fit> {
    let fits = models
        .iter()
        .filter_map(|model| fit(model, points, responses).ok());
    let judged = fits.filter_map(|one| Some((one.foretold?, one)));
    let best = judged.max_by(|(one, _), (other, _)| one.total_cmp(other));
    best.map(|(_, fit)| fit)
}

fn most_doubtful(fit: &Fit) -> Option<(usize, f64)> {
    let terms = &fit.model.terms;
    let droppable =
        |term: &Term| term.factors.len() > 1 && !terms.iter().any(|other| term.is_part_of(other));
    let doubts = fit.coefficients.iter().enumerate();
    let doubts = doubts.filter(|(_, one)| droppable(&one.term));
    let doubts = doubts.filter_map(|(at, one)| Some((at, one.sure?.chance)));
    doubts.max_by(|one, other| one.1.total_cmp(&other.1))
}
