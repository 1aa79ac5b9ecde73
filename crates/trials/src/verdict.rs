//! Whether one of several mixes is truly the best, or only looks so.

use thiserror::Error;

use crate::chance::{two_sided, upper_f, within};
use crate::fit::{Fit, FitError, fit};
use crate::model::{Bend, Model, Term, on_day, on_mean_day, surface, with_days};

/// One measured batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Which mix, counted from nought.
    pub mix: usize,
    /// On which day, counted from nought; all nought where days do not matter.
    pub day: usize,
    /// The response.
    pub response: f64,
}

/// Which end of the response is the good one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Good {
    /// More is better.
    High,
    /// Less is better.
    Low,
}

/// What the batches say.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdict {
    /// The mix that is better than every other; nothing if that is not shown.
    pub winner: Option<usize>,
    /// The mix that looks best, shown or not.
    pub leading: usize,
    /// Every mix that cannot be told from the leading one, itself left out.
    pub not_told_apart: Vec<usize>,
    /// Mean of each mix, freed of the days: what it gives on the mean of all days.
    pub means: Vec<f64>,
    /// How far each mean may be off to either side, 19 times in 20.
    pub around: Vec<f64>,
    /// How the leading mix stands to every other, in the order of the mixes.
    pub leads: Vec<Lead>,
    /// Standard deviation of one batch.
    pub noise: f64,
    /// Batches less mixes less days.
    pub degrees: usize,
    /// How often chance alone parts the leading mix from its nearest rival as far.
    pub chance: f64,
    /// How often chance alone makes the mixes differ as much as they do, were all alike.
    pub chance_of_alike: f64,
    /// Repeats a mix that would show the lead to be real, if it is as large as it looks; nothing
    /// where it is shown already or where the leading two gave the same.
    pub repeats_to_show: Option<usize>,
}

/// How the leading mix stands to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lead {
    /// The other mix.
    pub over: usize,
    /// Mean of the leading mix less that of the other.
    pub by: f64,
    /// How far that may be off to either side, 19 times in 20.
    pub within: f64,
    /// How often chance alone parts two equal mixes as far.
    pub chance: f64,
}

/// Why no verdict is given.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum VerdictError {
    /// Fewer than two mixes.
    #[error("there is one mix only, so there is nothing to compare it with: mix another")]
    OneMix,
    /// A mix without a batch.
    #[error("mix {0} has no result: leave it out or measure it")]
    NoResult(
        /// The mix, counted from one.
        usize,
    ),
    /// No repeats.
    #[error("no mix was repeated, so chance cannot be told from difference: make each mix again")]
    NothingRepeated,
    /// All repeats alike.
    #[error(
        "every repeat gave the same reading: read the instrument finer, \
         or tell the size of its step"
    )]
    RepeatsAlike,
    /// Each mix was made on its own days.
    #[error(
        "mixes and days changed together, so they cannot be told apart: \
         make one of the mixes again on the other days"
    )]
    DaysHideMixes,
    /// Readings that are none.
    #[error(transparent)]
    Batches(#[from] FitError),
}

/// How often a winner may be named wrongly.
const WRONG: f64 = 0.05;

/// Most repeats a mix that are asked for; beyond, the difference is too small to matter here.
const MOST_REPEATS: usize = 50;

/// Judges mixes by their batches.
///
/// A winner is named when the leading mix beats every other by Student's test at 1 in 20, with the
/// noise of all repeats. No allowance for the number of mixes is needed: among equals the gap
/// between the two best only gets smaller the more there are (Gutmann and Maymin, Annals of
/// Statistics 15 (1987) 456, from memory). Noise is never taken below that of the instrument's
/// step, step/√12, since repeats that read alike are not without noise.
///
/// # Errors
/// When nothing was repeated, or the batches cannot be compared.
pub fn verdict(batches: &[Measured], good: Good, step: f64) -> Result<Verdict, VerdictError> {
    let mixes = batches.iter().map(|one| one.mix + 1).max().unwrap_or(0);
    if mixes < 2 {
        return Err(VerdictError::OneMix);
    }
    let days = batches.iter().map(|one| one.day + 1).max().unwrap_or(1);
    let missing = (0..mixes).find(|mix| batches.iter().all(|one| one.mix != *mix));
    if let Some(mix) = missing {
        return Err(VerdictError::NoResult(mix + 1));
    }
    if batches.len() < mixes + days {
        return Err(VerdictError::NothingRepeated);
    }
    let found = compared(batches, mixes, days)?;
    let own = found.noise.ok_or(VerdictError::NothingRepeated)?;
    let noise = own.max(step.max(0.0) / 12.0_f64.sqrt());
    let readings = batches.iter().map(|one| one.response.abs());
    let size = readings.fold(0.0, f64::max);
    if noise <= size * 1e-12 {
        return Err(VerdictError::RepeatsAlike);
    }
    Ok(judged(&found, batches, mixes, noise, good))
}

/// Every mix is a variable of its own, and so is every day but the first.
fn compared(batches: &[Measured], mixes: usize, days: usize) -> Result<Fit, VerdictError> {
    let model = Model {
        variables: (1..=mixes).map(|mix| format!("mix {mix}")).collect(),
        terms: (0..mixes).map(|mix| Term { factors: vec![mix] }).collect(),
    };
    let point = |one: &Measured| on_day(&of_mix(one.mix, mixes), one.day, days);
    let points: Vec<Vec<f64>> = batches.iter().map(point).collect();
    let responses: Vec<f64> = batches.iter().map(|one| one.response).collect();
    fit(&with_days(&model, days), &points, &responses).map_err(|refused| match refused {
        FitError::NotToldApart(_)
        | FitError::FewerDifferentThanTerms { .. }
        | FitError::NeverVaried { .. } => VerdictError::DaysHideMixes,
        other => VerdictError::Batches(other),
    })
}

fn judged(fit: &Fit, batches: &[Measured], mixes: usize, noise: f64, good: Good) -> Verdict {
    let days = fit.model.terms.len() - mixes + 1;
    let points: Vec<Vec<f64>> = (0..mixes)
        .map(|mix| on_mean_day(&of_mix(mix, mixes), days))
        .collect();
    let expected: Vec<_> = points.iter().map(|point| fit.at(point)).collect();
    let means: Vec<f64> = expected.iter().map(|one| one.value).collect();
    let sign = if good == Good::High { 1.0 } else { -1.0 };
    let better = |a: &usize, b: &usize| (sign * means[*a]).total_cmp(&(sign * means[*b]));
    let leading = (0..mixes).rev().max_by(better).unwrap_or(0);
    let half = noise * within(1.0 - WRONG, fit.degrees);
    let lead = |over: usize| {
        let by = means[leading] - means[over];
        let apart = fit.leverage_of_difference(&points[leading], &points[over]);
        Lead {
            over,
            by,
            within: half * apart.sqrt(),
            chance: two_sided(by / (noise * apart.sqrt()), fit.degrees),
        }
    };
    let rivals = (0..mixes).filter(|rival| *rival != leading);
    let leads: Vec<Lead> = rivals.map(lead).collect();
    let untold = leads.iter().filter(|lead| lead.chance > WRONG);
    let not_told_apart: Vec<usize> = untold.map(|lead| lead.over).collect();
    let closest = leads.iter().map(|lead| lead.by.abs());
    let closest = closest.fold(f64::INFINITY, f64::min);
    let winner = not_told_apart.is_empty().then_some(leading);
    Verdict {
        repeats_to_show: winner.map_or_else(|| repeats_to_show(closest / noise, mixes), |_| None),
        winner,
        leading,
        not_told_apart,
        chance_of_alike: alike(fit, batches, mixes, noise),
        around: expected
            .iter()
            .map(|one| half * one.leverage.sqrt())
            .collect(),
        means,
        noise,
        degrees: fit.degrees,
        chance: leads.iter().map(|lead| lead.chance).fold(0.0, f64::max),
        leads,
    }
}

/// A mix as a point: 1 for itself, 0 for every other.
fn of_mix(mix: usize, mixes: usize) -> Vec<f64> {
    (0..mixes)
        .map(|other| f64::from(u8::from(other == mix)))
        .collect()
}

/// The F test of all mixes against one mean, freed of the days.
fn alike(fit: &Fit, batches: &[Measured], mixes: usize, noise: f64) -> f64 {
    let days = fit.model.terms.len() - mixes + 1;
    let flat = surface(&[], Bend::Flat);
    let points: Vec<Vec<f64>> = batches
        .iter()
        .map(|one| on_day(&[], one.day, days))
        .collect();
    let responses: Vec<f64> = batches.iter().map(|one| one.response).collect();
    let without = fit_left(&with_days(&flat, days), &points, &responses);
    let with: f64 = fit.left.iter().map(|one| one * one).sum();
    let ratio = (without - with).max(0.0) / (mixes - 1) as f64 / (noise * noise);
    upper_f(ratio, mixes - 1, fit.degrees)
}

fn fit_left(model: &Model, points: &[Vec<f64>], responses: &[f64]) -> f64 {
    fit(model, points, responses).map_or(0.0, |one| one.left.iter().map(|left| left * left).sum())
}

/// The smallest number of repeats at which a lead of so many deviations passes the test.
fn repeats_to_show(lead: f64, mixes: usize) -> Option<usize> {
    (2..=MOST_REPEATS).find(|repeats| {
        let t = lead / (2.0 / *repeats as f64).sqrt();
        two_sided(t, mixes * (repeats - 1)) <= WRONG
    })
}
