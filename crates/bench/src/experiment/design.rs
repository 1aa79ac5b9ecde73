//! Which batches to make, and what they can and cannot tell apart.

use trials::alias::{Alias, aliases};
use trials::belief::spans;
use trials::chance::within;
use trials::fit::{FitError, fit};
use trials::model::{Model, on_day, on_mean_day, with_days};
use trials::optimal::OptimalError::FewerRunsThanTerms;
use trials::optimal::{chosen_beside, efficiency, repeats};
use trials::plan::{self, Extent, PlanError, spread};
use trials::region::unattainable;

use crate::experiment::batches::{Batch, From, kept};
use crate::experiment::space::{Of, Space};
use crate::experiment::trouble::ExperimentError;
use crate::experiment::{Aim, Experiment, Later, Shape};

/// A plan: its batches, and what they can teach.
#[derive(Clone, Debug)]
pub struct Planned {
    /// The batches in the order of making.
    pub batches: Vec<Batch>,
    /// What they teach.
    pub teaches: Teaches,
}

/// What batches can and cannot teach.
#[derive(Clone, Debug)]
pub struct Teaches {
    /// How far the response may bend.
    pub shape: Shape,
    /// How many coefficients are learnt, differences of days among them.
    pub terms: usize,
    /// Different mixes.
    pub different: usize,
    /// All batches.
    pub batches: usize,
    /// Batches to spare, from which the noise is known.
    pub degrees: usize,
    /// The share of the teaching of the best plan of as many batches that this one has, were no
    /// batch bound to a session or to repeat another; above 1 where batches went on beyond the
    /// mixes of a first plan.
    pub efficiency: f64,
    /// For each thing that changes, the smallest change of the response from its low to its high
    /// end that shows, in noises of one batch.
    pub shows: Vec<(String, f64)>,
    /// What was left out and hides behind what is learnt.
    pub hidden: Vec<Alias>,
    /// Bounds that the others keep from being reached: the part, its bound, what can be reached.
    pub unattainable: Vec<(String, f64, f64)>,
}

/// A left-out term that adds less than this part of itself to a coefficient hides nothing worth
/// telling: its own effect is seldom larger than those that are learnt.
const WORTH_TELLING: f64 = 0.25;

/// Plans the batches of an experiment.
///
/// # Errors
///
/// When the batches are too few, or ranges leave no room.
pub fn planned(experiment: &Experiment) -> Result<Planned, ExperimentError> {
    let space = Space::of(experiment);
    let candidates = space.candidates(experiment.aim, false);
    let candidates = candidates.map_err(ExperimentError::Percent)?;
    let extent = Extent {
        runs: experiment.batches,
        repeats: experiment.repeats,
        days: experiment.days,
        seed: experiment.seed,
    };
    let (shape, first) = first_plan(experiment, &space, &candidates, extent)
        .map_err(|error| in_batches(experiment, error))?;
    let mut batches: Vec<Batch> = Vec::new();
    for one in first.batches {
        let from = From::Plan;
        batches.push(batch(
            &space,
            &one.point,
            batches.len() + 1,
            one.day + 1,
            from,
        ));
    }
    if let Some(later) = experiment.later {
        add_later(experiment, &space, shape, later, &mut batches)?;
    }
    let teaches = teaches(experiment, &space, shape, &batches)?;
    Ok(Planned { batches, teaches })
}

/// A plan of too few batches, by the keys that say how many.
fn in_batches(experiment: &Experiment, error: ExperimentError) -> ExperimentError {
    let ExperimentError::Plan(PlanError::Optimal(FewerRunsThanTerms { runs, terms })) = error
    else {
        return error;
    };
    let (shape, plainer) = match experiment.shape.unwrap_or(Shape::Plane) {
        Shape::Bent => ("a bent shape", ", or shape = \"twisted\" or \"plane\""),
        Shape::Twisted => ("a twisted shape", ", or shape = \"plane\""),
        Shape::Plane => ("a plane", ", or hold a part still"),
    };
    ExperimentError::FewerThanTerms {
        batches: experiment.batches,
        repeats: experiment.repeats,
        different: runs,
        shape,
        terms,
        plainer,
    }
}

/// A batch at a point.
pub fn batch(space: &Space, point: &[f64], number: usize, day: usize, from: From) -> Batch {
    Batch {
        number,
        day,
        from,
        mix: None,
        amounts: space.amounts(point).into_iter().map(kept).collect(),
        weighed: None,
        settings: space.settings(point).into_iter().map(kept).collect(),
    }
}

/// What batches of an experiment can teach, for a shape of the response.
///
/// # Errors
///
/// When they cannot teach that shape.
pub fn teaches(
    experiment: &Experiment,
    space: &Space,
    shape: Shape,
    batches: &[Batch],
) -> Result<Teaches, ExperimentError> {
    let points: Vec<Vec<f64>> = batches.iter().map(|one| space.point(one)).collect();
    let days = days(batches);
    let plain = space.model(shape);
    let model = with_days(&plain, days);
    let on_days: Vec<Vec<f64>> = points
        .iter()
        .zip(batches)
        .map(|(point, batch)| on_day(point, batch.day - 1, days))
        .collect();
    // Any responses do: only how sure the terms are is asked.
    let ramp: Vec<f64> = (0..points.len()).map(|at| at as f64).collect();
    let found = fit(&model, &on_days, &ramp)?;
    let candidates = space.candidates(experiment.aim, true);
    let candidates = candidates.map_err(ExperimentError::Percent)?;
    let freest = chosen_beside(&plain, &[], &candidates, points.len(), experiment.seed);
    let freest = freest.map_err(PlanError::from)?;
    let freest: Vec<Vec<f64>> = freest
        .into_iter()
        .map(|at| candidates[at].clone())
        .collect();
    let half = within(0.95, found.degrees);
    let shows = ends(space, &points).into_iter().map(|(name, low, high)| {
        let (low, high) = (on_mean_day(&low, days), on_mean_day(&high, days));
        let apart = found.leverage_of_difference(&low, &high).sqrt();
        (name, half * apart)
    });
    let shows = match found.degrees {
        0 => Vec::new(),
        _ => shows.collect(),
    };
    let mut different = points.clone();
    different.sort_by(|one, other| one.partial_cmp(other).unwrap_or(std::cmp::Ordering::Equal));
    different.dedup();
    Ok(Teaches {
        shape,
        terms: model.terms.len(),
        different: different.len(),
        batches: batches.len(),
        degrees: found.degrees,
        efficiency: efficiency(&plain, &points, &freest),
        shows,
        hidden: hidden(space, &model, &on_days)?,
        unattainable: out_of_reach(space),
    })
}

/// How many days or sessions batches take.
pub fn days(batches: &[Batch]) -> usize {
    batches.iter().map(|one| one.day).max().unwrap_or(1)
}

/// From one end to the other of what batches tried of each thing that changes, the rest in the
/// middle; shares along the way on which the others keep their proportions (the direction of Cox).
pub fn ends(space: &Space, points: &[Vec<f64>]) -> Vec<(String, Vec<f64>, Vec<f64>)> {
    let mut found = Vec::new();
    let middle = middle(space);
    let reach = spans(points);
    if let Some(own) = &space.mixture {
        for (at, one) in own.region.components.iter().enumerate() {
            let with = |share: f64| {
                let rest = 1.0 - middle[at];
                let mut point = middle.clone();
                for (other, value) in point.iter_mut().take(own.parts.len()).enumerate() {
                    *value = match other == at {
                        true => share,
                        false => middle[other] * (1.0 - share) / rest,
                    };
                }
                point
            };
            let inside = |share: &f64| own.region.holds(&with(*share)[..own.parts.len()]);
            let (low, high) = reach[at];
            let steps = (0..=100).map(|step| low + (high - low) * f64::from(step) / 100.0);
            let mut held = steps.filter(inside);
            if let Some(low) = held.next() {
                let high = held.next_back().unwrap_or(low);
                found.push((one.name.clone(), with(low), with(high)));
            }
        }
    }
    for (at, axis) in space.axes.iter().enumerate() {
        let with = |level: f64| {
            let mut point = middle.clone();
            point[space.shares() + at] = level;
            point
        };
        let (low, high) = reach[space.shares() + at];
        found.push((axis.name.clone(), with(low), with(high)));
    }
    found
}

/// The middle of everything; what comes in later is left out of it.
pub fn middle(space: &Space) -> Vec<f64> {
    let shares = space.mixture.as_ref();
    let centre = shares.and_then(|own| trials::vertices::landmarks(&own.region).ok());
    let mut point = centre.map_or_else(Vec::new, |one| one.centre);
    point.extend(space.axes.iter().map(|axis| match axis.of {
        Of::Choice(..) => -1.0,
        _ if axis.later => -1.0,
        _ => 0.0,
    }));
    point
}

/// The first session, with the shape asked for or the one that bends most of those that the
/// batches teach.
fn first_plan(
    experiment: &Experiment,
    space: &Space,
    candidates: &[Vec<f64>],
    extent: Extent,
) -> Result<(Shape, plan::Plan), ExperimentError> {
    let model = |shape: Shape| without_later(space, &space.model(shape));
    if let Some(shape) = experiment.shape {
        let found = plan::plan(&model(shape), candidates, extent)?;
        return Ok((shape, found));
    }
    for shape in [Shape::Bent, Shape::Twisted] {
        let model = model(shape);
        let terms = model.terms.len() + extent.days.saturating_sub(1);
        // A shape that takes every different batch leaves nothing to see that it is wrong.
        let enough = match experiment.aim {
            // Sessions that are added show it there.
            Aim::Best => terms + extent.repeats <= extent.runs,
            Aim::Learn => terms + extent.repeats < extent.runs,
        };
        if enough && let Ok(found) = plan::plan(&model, candidates, extent) {
            return Ok((shape, found));
        }
    }
    let found = plan::plan(&model(Shape::Plane), candidates, extent)?;
    Ok((Shape::Plane, found))
}

/// The second session: batches that teach most together with those of the first.
fn add_later(
    experiment: &Experiment,
    space: &Space,
    shape: Shape,
    later: Later,
    batches: &mut Vec<Batch>,
) -> Result<(), ExperimentError> {
    let Later {
        batches: runs,
        repeats: again,
    } = later;
    if again >= runs {
        let repeats = again;
        return Err(PlanError::TooManyRepeats { runs, repeats }.into());
    }
    let plain = space.model(shape);
    let model = with_days(&plain, 2);
    let made = batches.iter().map(|one| on_day(&space.point(one), 0, 2));
    let made: Vec<Vec<f64>> = made.collect();
    let candidates = space.candidates(experiment.aim, true);
    let candidates = candidates.map_err(ExperimentError::Percent)?;
    let on_second: Vec<Vec<f64>> = candidates.iter().map(|one| on_day(one, 1, 2)).collect();
    let places = chosen_beside(&model, &made, &on_second, runs - again, experiment.seed);
    let places = places.map_err(PlanError::from)?;
    let mut points: Vec<Vec<f64>> = places
        .into_iter()
        .map(|at| candidates[at].clone())
        .collect();
    for at in repeats(&plain, &points, again) {
        points.push(points[at].clone());
    }
    for one in spread(&plain, points, 1, experiment.seed) {
        batches.push(batch(space, &one.point, batches.len() + 1, 2, From::Later));
    }
    Ok(())
}

/// A model without the terms of what comes in only later.
fn without_later(space: &Space, model: &Model) -> Model {
    let later = |at: &usize| *at >= space.shares() && space.axes[*at - space.shares()].later;
    let mut plain = model.clone();
    plain.terms.retain(|term| !term.factors.iter().any(later));
    plain
}

/// What the terms left out would add to those learnt: squares and products of two that the model
/// does not hold.
///
/// # Errors
///
/// When the runs cannot teach the model itself.
pub fn hidden(space: &Space, model: &Model, points: &[Vec<f64>]) -> Result<Vec<Alias>, FitError> {
    let whole = whole_second_order(space);
    let left_out: Vec<_> = whole
        .terms
        .into_iter()
        .filter(|term| !model.terms.contains(term))
        .collect();
    let found = aliases(model, points, &left_out)?;
    let told = found.into_iter().map(|mut one| {
        one.falsifies
            .retain(|(_, part)| part.abs() >= WORTH_TELLING);
        one.falsifies
            .sort_by(|one, other| other.1.abs().total_cmp(&one.1.abs()));
        one
    });
    // What only lifts all mixes alike falsifies no comparison.
    let compares = |one: &Alias| one.falsifies.iter().any(|(name, _)| name != "constant");
    Ok(told.filter(compares).collect())
}

/// Everything of second order: what bends and what acts together, later parts too.
fn whole_second_order(space: &Space) -> Model {
    let mut early = space.clone();
    for axis in &mut early.axes {
        axis.later = false;
    }
    early.model(Shape::Bent)
}

fn out_of_reach(space: &Space) -> Vec<(String, f64, f64)> {
    let Some(own) = &space.mixture else {
        return Vec::new();
    };
    let found = unattainable(&own.plain).into_iter();
    found
        .map(|one| {
            (
                one.name,
                one.bound * own.together,
                one.reachable * own.together,
            )
        })
        .collect()
}
