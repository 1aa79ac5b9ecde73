//! What was really put into a batch, where the scale said something else than the plan.
//!
//! Each stands in the results as a line of its own: `3,clay,182,weighed`, in grams as it lay. The
//! last line of a part counts; parts without one are taken as planned.

use std::fmt::Write as _;

use measure::matter::Mass;
use measure::text::{Typed, plain_number, rounded};

use crate::experiment::Experiment;
use crate::experiment::batches::Batch;
use crate::experiment::results::number_of;
use crate::experiment::trouble::EntryError;
use crate::experiment::weighing::{made, weighed};

/// The note of such a line.
pub(super) const NOTE: &str = "weighed";

/// A part of a batch that was weighed.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighing {
    /// Number of the batch, from 1.
    pub batch: usize,
    /// Place of the part.
    pub part: usize,
    /// What the scale said, as it lay.
    pub mass: Mass,
}

/// A mass this far off the plan, as a share of it, is asked about: a slipped digit, a wrong bowl.
/// Less, and a hasty hand is asked about; more, and 150 typed for 200 passes.
const FAR: f64 = 0.25;

/// The part of a name as typed, in any letters.
pub(super) fn part_of(name: &str, experiment: &Experiment) -> Option<usize> {
    let asked = name.trim().to_lowercase();
    let parts = &experiment.parts;
    parts
        .iter()
        .position(|part| part.name.to_lowercase() == asked)
}

/// A mass as typed, grams where no unit stands behind it, beside what was planned.
///
/// # Errors
///
/// When it is no mass, or far from the plan and not said to be sure.
pub(super) fn weighing(
    experiment: &Experiment,
    batches: &[Batch],
    batch: usize,
    part: usize,
    typed: &str,
    sure: bool,
) -> Result<Weighing, EntryError> {
    let name = || experiment.parts[part].name.clone();
    let mass = match plain_number(typed) {
        Some(grams) => Some(Mass::from_g(grams)),
        None => typed.parse::<Typed<Mass>>().ok().map(|typed| typed.value),
    };
    let mass = mass.filter(|mass| mass.as_g() >= 0.0);
    let mass = mass.ok_or_else(|| EntryError::NotWeighed {
        name: name(),
        batch,
        typed: typed.trim().to_owned(),
    })?;
    let found = Weighing { batch, part, mass };
    let planned = weighed(experiment, &batches[batch - 1])?[part].weigh;
    if (mass - planned).as_g().abs() > FAR * planned.as_g() && !sure {
        return Err(EntryError::OffPlan {
            name: name(),
            batch,
            now: format!("{} g", rounded(mass.as_g(), 4)),
            planned: format!("{} g", rounded(planned.as_g(), 4)),
        });
    }
    // It has to leave a batch that can be counted.
    made(experiment, &batches[batch - 1], &[(part, mass)])?;
    Ok(found)
}

/// The weighings of a file of results, in its order.
///
/// # Errors
///
/// When a line is none.
pub fn weighings(
    text: &str,
    experiment: &Experiment,
    batches: &[Batch],
) -> Result<Vec<Weighing>, EntryError> {
    let mut found = Vec::new();
    for (at, line) in text.lines().enumerate() {
        let cells: Vec<&str> = line.split(',').map(str::trim).collect();
        let [batch, name, value, NOTE] = cells.as_slice() else {
            continue;
        };
        let refused = || EntryError::Line {
            line: at + 1,
            text: line.trim().to_owned(),
        };
        let grams: Option<f64> = value.parse().ok().filter(|grams: &f64| grams.is_finite());
        found.push(Weighing {
            batch: number_of(batch, batches)?,
            part: part_of(name, experiment).ok_or_else(refused)?,
            mass: Mass::from_g(grams.ok_or_else(refused)?),
        });
    }
    Ok(found)
}

/// The batches with what was really put in.
///
/// # Errors
///
/// When nothing is left of the parts that all others are counted beside.
pub fn with_weighings(
    experiment: &Experiment,
    batches: &[Batch],
    weighings: &[Weighing],
) -> Result<Vec<Batch>, EntryError> {
    let one = |batch: &Batch| {
        let own = weighings.iter().filter(|one| one.batch == batch.number);
        let own: Vec<(usize, Mass)> = own.map(|one| (one.part, one.mass)).collect();
        let weighed = match own.is_empty() {
            true => None,
            false => Some(made(experiment, batch, &own)?),
        };
        Ok(Batch {
            weighed,
            ..batch.clone()
        })
    };
    batches.iter().map(one).collect()
}

/// Lines of the file for further weighings.
pub fn lines(experiment: &Experiment, weighings: &[Weighing]) -> String {
    let mut text = String::new();
    for one in weighings {
        let name = &experiment.parts[one.part].name;
        // Writing into a text does not fail.
        let _ = writeln!(text, "{},{name},{},{NOTE}", one.batch, one.mass.as_g());
    }
    text
}
