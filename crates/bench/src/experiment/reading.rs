//! What the results of an experiment say, response by response and together.
//!
//! The shape of a response is settled by which batches were measured and never by what they gave:
//! the one that bends most of those they can teach with a batch to spare. So the test by which a
//! winner is named errs as often as it says, and no oftener.

use thiserror::Error;
use trials::alias::Alias;
use trials::best::{best, chance_of_flat_within_days};
use trials::chance::within;
use trials::fit::{Fit, FitError, Prediction, fit};
use trials::model::{on_day, on_mean_day, with_days};
use trials::region::RegionError;
use trials::repeats::{
    LackOfFit, LackOfFitError, Noise, lack_of_fit_within_days, noise_within_days,
};

use crate::experiment::batches::Batch;
use crate::experiment::design::{ends, hidden};
use crate::experiment::reading::joined::{Joined, joined};
use crate::experiment::reading::next::{Suggested, next};
use crate::experiment::reading::odd::{Odd, odd};
use crate::experiment::results::{self, Reading};
use crate::experiment::space::{Of, Space};
use crate::experiment::{Experiment, Response, Shape};

mod days;
pub mod joined;
pub mod next;
pub mod odd;

/// What results say.
#[derive(Clone, Debug)]
pub struct Read {
    /// Each response, in the order of the experiment.
    pub responses: Vec<ResponseRead>,
    /// All responses together, where there are several and all can be read.
    pub joined: Option<Joined>,
    /// What to make next.
    pub next: Suggested,
    /// Batches that lack a result.
    pub open: Vec<usize>,
}

/// What the results of one response say.
#[derive(Clone, Debug)]
pub struct ResponseRead {
    /// Batches measured, by their place.
    pub measured: Vec<usize>,
    /// Their results.
    pub results: Vec<f64>,
    /// Noise from batch to batch by repeats of the same mix, where some were measured.
    pub repeats: Option<Noise>,
    /// The response over the whole range.
    pub fitted: Result<Fitted, Unread>,
}

/// A response over the whole range.
#[derive(Clone, Debug)]
pub struct Fitted {
    /// How far it bends.
    pub shape: Shape,
    /// The fit; its points are those of the space, then the days.
    pub fit: Fit,
    /// How many days the measured batches took.
    pub days: usize,
    /// Whether the shape misses more than noise.
    pub lack: Result<LackOfFit, LackOfFitError>,
    /// How often chance alone makes as much of a difference between mixes.
    pub chance_of_flat: Option<f64>,
    /// What each thing that changes does.
    pub effects: Vec<Effect>,
    /// How the later days differ from the first, each called by its number.
    pub days_apart: Vec<Effect>,
    /// What hides behind the terms.
    pub hidden: Vec<Alias>,
    /// The best mix, shown or not; nothing where a range is wanted or nothing is known.
    pub best: Option<BestMix>,
    /// Why no winner is named; nothing if one is.
    pub unnamed: Option<Unnamed>,
    /// The batch that lies furthest off, where it lies further than chance puts one.
    pub odd: Option<Odd>,
}

/// What something does to a response, from one end of what was tried to the other.
#[derive(Clone, Debug, PartialEq)]
pub struct Effect {
    /// What changes.
    pub name: String,
    /// By how much the response changes.
    pub change: f64,
    /// To either side, 19 times in 20; nothing without batches to spare.
    pub within: Option<f64>,
}

/// The best mix by a fit.
#[derive(Clone, Debug, PartialEq)]
pub struct BestMix {
    /// Where.
    pub point: Vec<f64>,
    /// What it would give.
    pub expected: Prediction,
    /// The share of the known range that cannot be told from it.
    pub as_good: f64,
}

/// Why no winner is named.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unnamed {
    /// Chance alone does as much, this often.
    Chance(f64),
    /// There are no batches to spare.
    NoneToSpare,
    /// The shape misses more than noise; chance does so this often.
    WrongShape(f64),
    /// The noise is smaller than the step of the instrument can show.
    StepTooCoarse,
    /// The middle of a range is wanted, not an end.
    RangeWanted,
    /// Nothing of the range is known well enough.
    NothingKnown,
}

/// Why a response is not read.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum Unread {
    /// No results.
    #[error("no results yet: enter them with `oddside experiment enter`")]
    NoResults,
    /// All results alike.
    #[error("all results are the same, so nothing is learnt from them: measure finer")]
    AllAlike,
    /// Something never changed in the batches measured.
    #[error(
        "{name} was {value} in every batch measured, so nothing can be said about it: measure \
         batches with another value"
    )]
    NeverVaried {
        /// What it is.
        name: String,
        /// Its only value.
        value: String,
    },
    /// The batches cannot teach even a plane.
    #[error(transparent)]
    Fit(FitError),
}

/// How often a winner may be named wrongly, and a shape be called wrong.
const WRONG: f64 = 0.05;

/// Reads the results of an experiment, and picks so many batches to make next.
///
/// # Errors
///
/// When the shares of the experiment leave no room.
pub fn read(
    experiment: &Experiment,
    batches: &[Batch],
    readings: &[Reading],
    more: usize,
) -> Result<Read, RegionError> {
    let space = Space::of(experiment);
    let everywhere = space.everywhere()?;
    let count = experiment.responses.len();
    let responses: Vec<ResponseRead> = (0..count)
        .map(|at| {
            let results = results::of_response(readings, at, batches.len());
            of_response(
                &experiment.responses[at],
                &space,
                batches,
                &results,
                &everywhere,
            )
        })
        .collect();
    let open =
        (0..batches.len()).filter(|at| responses.iter().any(|one| !one.measured.contains(at)));
    Ok(Read {
        open: open.map(|at| batches[at].number).collect(),
        joined: joined(experiment, &responses, &everywhere),
        next: next(experiment, &space, batches, &responses, &everywhere, more)?,
        responses,
    })
}

fn of_response(
    response: &Response,
    space: &Space,
    batches: &[Batch],
    results: &[Option<f64>],
    everywhere: &[Vec<f64>],
) -> ResponseRead {
    let measured: Vec<usize> = (0..batches.len())
        .filter(|at| results[*at].is_some())
        .collect();
    let results: Vec<f64> = results.iter().flatten().copied().collect();
    let points: Vec<Vec<f64>> = measured
        .iter()
        .map(|at| space.point(&batches[*at]))
        .collect();
    let planned: Vec<Vec<f64>> = measured
        .iter()
        .map(|at| space.planned(&batches[*at]))
        .collect();
    let (day_of, known_days) = days_of(batches, &measured);
    let days = known_days.len().max(1);
    let on_days: Vec<Vec<f64>> = points
        .iter()
        .zip(&day_of)
        .map(|(point, day)| on_day(point, *day, days))
        .collect();
    ResponseRead {
        repeats: noise_within_days(&planned, &day_of, days, &results),
        fitted: shaped(space, &on_days, &results, days)
            .map(|(shape, fit)| Fitted {
                shape,
                days,
                lack: lack_of_fit_within_days(&fit, &planned, &day_of, days, &results),
                chance_of_flat: chance_of_flat_within_days(&fit, &day_of, days, &results)
                    .ok()
                    .flatten(),
                effects: effects(space, &points, &fit, days),
                days_apart: days_apart(&fit, &known_days),
                hidden: hidden(space, &fit.model, &on_days).unwrap_or_default(),
                best: None,
                unnamed: None,
                odd: odd(&fit, batches, &measured, &results),
                fit,
            })
            .map(|fitted| named(response, fitted, everywhere)),
        measured,
        results,
    }
}

/// The day of each measured batch, counted from nought without gaps, and the days themselves.
pub(super) fn days_of(batches: &[Batch], measured: &[usize]) -> (Vec<usize>, Vec<usize>) {
    let mut known: Vec<usize> = measured.iter().map(|at| batches[*at].day).collect();
    known.sort_unstable();
    known.dedup();
    let place = |at: &usize| {
        known
            .iter()
            .position(|day| *day == batches[*at].day)
            .unwrap_or(0)
    };
    (measured.iter().map(place).collect(), known)
}

/// The fit of the shape that bends most of those that leave a batch to spare; failing that, a plane
/// through all of them.
fn shaped(
    space: &Space,
    points: &[Vec<f64>],
    results: &[f64],
    days: usize,
) -> Result<(Shape, Fit), Unread> {
    let Some(first) = results.first() else {
        return Err(Unread::NoResults);
    };
    if results.len() > 1 && results.iter().all(|one| one == first) {
        return Err(Unread::AllAlike);
    }
    for shape in [Shape::Bent, Shape::Twisted, Shape::Plane] {
        let found = fit(&with_days(&space.model(shape), days), points, results);
        if let Some(found) = found.ok().filter(|found| found.degrees > 0) {
            return Ok((shape, found));
        }
    }
    let plane = fit(
        &with_days(&space.model(Shape::Plane), days),
        points,
        results,
    );
    plane
        .map(|found| (Shape::Plane, found))
        .map_err(|error| never_varied(space, points, error))
}

/// A value that never varied, in the founder's own unit.
fn never_varied(space: &Space, points: &[Vec<f64>], error: FitError) -> Unread {
    let FitError::NeverVaried { name, .. } = &error else {
        return Unread::Fit(error);
    };
    let Some(at) = space.names().iter().position(|one| one == name) else {
        return Unread::Fit(error);
    };
    let point = &points[0];
    let value = match at.checked_sub(space.shares()) {
        Some(axis) => {
            let axis = &space.axes[axis];
            if let Of::Choice(..) = axis.of {
                let value = if point[at] > 0.0 { "taken" } else { "left out" };
                let (name, value) = (name.clone(), value.to_owned());
                return Unread::NeverVaried { name, value };
            }
            let number = measure::text::rounded(axis.in_unit(point[at]), 4);
            format!("{number} {}", axis.unit).trim_end().to_owned()
        }
        None => {
            let amounts = space.amounts(point);
            let part = space.mixture.as_ref().map_or(0, |own| own.parts[at]);
            format!("{} %", measure::text::rounded(amounts[part], 4))
        }
    };
    let name = name.clone();
    Unread::NeverVaried { name, value }
}

fn effects(space: &Space, points: &[Vec<f64>], fit: &Fit, days: usize) -> Vec<Effect> {
    let each = ends(space, points).into_iter();
    each.map(|(name, low, high)| {
        let (low, high) = (on_mean_day(&low, days), on_mean_day(&high, days));
        let half = |noise: f64| {
            noise
                * within(1.0 - WRONG, fit.degrees)
                * fit.leverage_of_difference(&low, &high).sqrt()
        };
        Effect {
            name,
            change: fit.at(&high).value - fit.at(&low).value,
            within: fit.noise.map(half),
        }
    })
    .collect()
}

fn days_apart(fit: &Fit, days: &[usize]) -> Vec<Effect> {
    let later = fit.coefficients.iter().rev().take(days.len() - 1).rev();
    later
        .zip(&days[1..])
        .map(|(one, day)| Effect {
            name: day.to_string(),
            change: one.value,
            within: one.sure.map(|sure| sure.high - one.value),
        })
        .collect()
}

/// Names the best mix, or says why not.
fn named(response: &Response, mut fitted: Fitted, everywhere: &[Vec<f64>]) -> Fitted {
    let on_days: Vec<Vec<f64>> = everywhere
        .iter()
        .map(|one| on_mean_day(one, fitted.days))
        .collect();
    let Some(good) = response.good_end() else {
        fitted.unnamed = Some(Unnamed::RangeWanted);
        return fitted;
    };
    let found = best(&fitted.fit, &on_days, good);
    let known = found.as_ref().map_or(0, |one| on_days.len() - one.unknown);
    fitted.best = found.map(|one| BestMix {
        point: everywhere[one.at].clone(),
        expected: one.expected,
        as_good: (one.as_good.len() + 1) as f64 / known.max(1) as f64,
    });
    fitted.unnamed = unnamed(response, &fitted);
    fitted
}

fn unnamed(response: &Response, fitted: &Fitted) -> Option<Unnamed> {
    let Some(noise) = fitted.fit.noise else {
        return Some(Unnamed::NoneToSpare);
    };
    if fitted.best.is_none() {
        return Some(Unnamed::NothingKnown);
    }
    // What is rounded to a step strays by step/√12 even where nothing else does.
    if noise < response.step / 12.0_f64.sqrt() {
        return Some(Unnamed::StepTooCoarse);
    }
    if let Ok(lack) = &fitted.lack
        && lack.chance < WRONG
    {
        return Some(Unnamed::WrongShape(lack.chance));
    }
    match fitted.chance_of_flat {
        Some(chance) if chance <= WRONG => None,
        Some(chance) => Some(Unnamed::Chance(chance)),
        None => Some(Unnamed::NoneToSpare),
    }
}
