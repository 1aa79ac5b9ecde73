//! The batches of an experiment for the next session: those that are planned, a new plan, or more
//! of what the results speak for.

use thiserror::Error;

use crate::experiment::batches::Batch;
use crate::experiment::design::{Planned, planned, teaches};
use crate::experiment::mixes::reading::{Next, compared};
use crate::experiment::mixes::{self, Mixes};
use crate::experiment::more::with_more;
use crate::experiment::opened::Opened;
use crate::experiment::reading::read;
use crate::experiment::space::Space;
use crate::experiment::told::{Told, plan_told};
use crate::experiment::trouble::{BatchesError, ExperimentError};
use crate::experiment::weighing::{Weighed, weighed};
use crate::experiment::{Experiment, Shape};

/// Which batches are wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// Those there are, or a plan where there is none.
    Planned,
    /// A new plan, whatever there is.
    Anew,
    /// Those there are and so many more, on a day of their own.
    More(usize),
}

/// Batches with what is told of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Session {
    /// The batches.
    pub batches: Vec<Batch>,
    /// What to weigh out for each.
    pub weighed: Vec<Vec<Weighed>>,
    /// What they are and what they can teach.
    pub told: Told,
}

/// Why there are no such batches.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum SessionError {
    /// No batches can be planned.
    #[error(transparent)]
    Experiment(#[from] ExperimentError),
    /// Batches that cannot be weighed.
    #[error(transparent)]
    Batches(#[from] BatchesError),
    /// An experiment without batches.
    #[error("this experiment is not planned yet: run oddside experiment plan")]
    NotPlanned,
    /// A plan that would lose its results.
    #[error(
        "this plan has results, which belong to its batches: plan anew in another folder, or move \
         results.csv away first"
    )]
    ResultsOfThePlan,
    /// No batches to add yet.
    #[error("too few results to say which batch may be better: measure three batches at least")]
    TooFewResults,
    /// Mixes are asked for again before all batches are measured.
    #[error("some batches have no result yet: measure those before adding more")]
    OpenBatches,
    /// Batches are asked for that nothing speaks for.
    #[error("the best mix is named, or only ranges are wanted, so no batch has to be added")]
    BestIsNamed,
    /// Fewer batches than mixes that are not told apart.
    #[error(
        "{0} mixes are not told apart, and a day has to hold each of them: write --more {0} or more"
    )]
    TooFewMore(
        /// How many mixes.
        usize,
    ),
}

/// The batches that are wanted.
///
/// # Errors
///
/// As [`SessionError`] says.
pub fn session(opened: &Opened, wanted: Wanted) -> Result<Session, SessionError> {
    let experiment = &opened.experiment;
    if wanted == Wanted::Anew && !opened.readings.is_empty() {
        return Err(SessionError::ResultsOfThePlan);
    }
    if matches!(wanted, Wanted::More(_)) && opened.batches.is_empty() {
        return Err(SessionError::NotPlanned);
    }
    let (batches, told) = match &experiment.mixes {
        Some(named) => {
            let batches = of_mixes(opened, named, wanted)?;
            let told = mixes::told::plan_told(experiment, named, &batches);
            (batches, told)
        }
        None => {
            let plan = of_ranges(opened, wanted)?;
            let told = plan_told(experiment, &plan);
            (plan.batches, told)
        }
    };
    let rows = batches.iter().map(|one| weighed(experiment, one));
    Ok(Session {
        weighed: rows.collect::<Result<_, _>>()?,
        batches,
        told,
    })
}

/// The batches of an experiment over ranges.
fn of_ranges(opened: &Opened, wanted: Wanted) -> Result<Planned, SessionError> {
    let experiment = &opened.experiment;
    let Wanted::More(count) = wanted else {
        return match opened.batches.is_empty() || wanted == Wanted::Anew {
            true => Ok(planned(experiment)?),
            false => taught(experiment, opened.batches.clone()),
        };
    };
    let found = read(experiment, &opened.batches, &opened.readings, count);
    let found = found.map_err(ExperimentError::Percent)?;
    if found.next.better.is_empty() {
        return Err(SessionError::TooFewResults);
    }
    let (there, readings) = (&opened.batches, &opened.readings);
    taught(
        experiment,
        with_more(experiment, there, readings, &found, count),
    )
}

/// The batches of named mixes: those there are, new ones, or those with more of the mixes that are
/// not told apart yet.
fn of_mixes(opened: &Opened, named: &Mixes, wanted: Wanted) -> Result<Vec<Batch>, SessionError> {
    let experiment = &opened.experiment;
    let Wanted::More(count) = wanted else {
        return Ok(match opened.batches.is_empty() || wanted == Wanted::Anew {
            true => mixes::planned(experiment),
            false => opened.batches.clone(),
        });
    };
    match compared(experiment, named, &opened.batches, &opened.readings).next {
        Next::Measure => Err(SessionError::OpenBatches),
        Next::Nothing => Err(SessionError::BestIsNamed),
        Next::Again { mixes: again, .. } if count < again.len() => {
            Err(SessionError::TooFewMore(again.len()))
        }
        Next::Again { mixes: again, .. } => {
            Ok(mixes::with_more(experiment, &opened.batches, &again, count))
        }
    }
}

/// What batches that are there can teach, with the shape that bends most of those they can.
fn taught(experiment: &Experiment, batches: Vec<Batch>) -> Result<Planned, SessionError> {
    let space = Space::of(experiment);
    let of = |shape: Shape| teaches(experiment, &space, shape, &batches);
    let bent = [Shape::Bent, Shape::Twisted].into_iter().find_map(|shape| {
        let found = of(shape).ok()?;
        (found.degrees > 0).then_some(found)
    });
    let teaches = match bent {
        Some(found) => found,
        None => of(Shape::Plane)?,
    };
    Ok(Planned { batches, teaches })
}
