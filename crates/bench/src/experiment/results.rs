//! `results.csv`: what came out, a line each, only ever added to.
//!
//! Invariants, in this order:
//! 1. A line that was written stays; a correction is a further line that says so.
//! 2. Readings of one batch that are marked `again` are averaged: they tell the instrument, and
//!    not the noise from batch to batch.
//! 3. A line `replaces` all earlier readings of its batch and response.

use std::fmt::Write as _;

use measure::text::plain_number;

use crate::experiment::Experiment;
use crate::experiment::batches::Batch;
use crate::experiment::trouble::EntryError;
use crate::experiment::weighings::{self, Weighing};

/// Name of the file in an experiment's folder.
pub const RESULTS_FILE: &str = "results.csv";

/// First line of the file.
pub const HEAD: &str = "batch,what,value,note";

/// One reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Number of the batch, from 1.
    pub batch: usize,
    /// Place of the response.
    pub response: usize,
    /// The value.
    pub value: f64,
    /// How it stands to readings before it.
    pub note: Note,
}

/// How a reading stands to those before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Note {
    /// The first.
    First,
    /// The same batch measured once more.
    Again,
    /// The readings before it were wrong.
    Replaces,
}

impl Note {
    /// Its word in the file.
    pub fn word(self) -> &'static str {
        match self {
            Note::First => "",
            Note::Again => "again",
            Note::Replaces => "replaces",
        }
    }
}

/// The readings of a file, in its order.
///
/// # Errors
///
/// When a line is none.
pub fn readings(
    text: &str,
    experiment: &Experiment,
    batches: &[Batch],
) -> Result<Vec<Reading>, EntryError> {
    let mut found = Vec::new();
    for (at, line) in text.lines().enumerate() {
        let line = line.trim();
        if line.is_empty() || line.starts_with('#') || line == HEAD {
            continue;
        }
        let refused = || EntryError::Line {
            line: at + 1,
            text: line.to_owned(),
        };
        let cells: Vec<&str> = line.split(',').map(str::trim).collect();
        let [batch, what, value, note] = cells.as_slice() else {
            return Err(refused());
        };
        if *note == weighings::NOTE {
            continue;
        }
        let kinds = [Note::First, Note::Again, Note::Replaces];
        let note = kinds.into_iter().find(|one| one.word() == *note);
        let value: Option<f64> = value.parse().ok().filter(|value: &f64| value.is_finite());
        found.push(Reading {
            batch: number_of(batch, batches)?,
            response: place_of(what, experiment)?,
            value: value.ok_or_else(refused)?,
            note: note.ok_or_else(refused)?,
        });
    }
    Ok(found)
}

/// The file with further readings and weighings at its end.
pub fn with(text: &str, experiment: &Experiment, more: &[Reading], weighed: &[Weighing]) -> String {
    let mut all = match text.trim().is_empty() {
        true => format!("{HEAD}\n"),
        false => text.trim_end().to_owned() + "\n",
    };
    for one in more {
        let what = &experiment.responses[one.response].name;
        // Writing into a text does not fail.
        let _ = writeln!(
            all,
            "{},{what},{},{}",
            one.batch,
            one.value,
            one.note.word()
        );
    }
    all + &weighings::lines(experiment, weighed)
}

/// The result of each batch for a response: the mean of its readings since the last that replaced
/// others; nothing where it was not measured.
pub fn of_response(readings: &[Reading], response: usize, batches: usize) -> Vec<Option<f64>> {
    let result = |batch: usize| {
        let own = standing(readings, batch, response);
        (!own.is_empty()).then(|| own.iter().sum::<f64>() / own.len() as f64)
    };
    (1..=batches).map(result).collect()
}

/// The readings of a batch and response that stand.
pub fn standing(readings: &[Reading], batch: usize, response: usize) -> Vec<f64> {
    let mut own = Vec::new();
    for one in readings {
        if one.batch != batch || one.response != response {
            continue;
        }
        if one.note == Note::Replaces {
            own.clear();
        }
        own.push(one.value);
    }
    own
}

/// The number of a batch as typed.
pub(super) fn number_of(typed: &str, batches: &[Batch]) -> Result<usize, EntryError> {
    let number = plain_number(typed).filter(|number| number.fract() == 0.0);
    let known = number.map(|number| number as usize);
    let known = known.filter(|number| (1..=batches.len()).contains(number));
    known.ok_or_else(|| EntryError::NoBatch {
        number: typed.to_owned(),
        last: batches.len(),
    })
}

/// The place of a response as typed: its name in any letters, or its beginning where that is
/// enough to tell it.
pub(super) fn place_of(typed: &str, experiment: &Experiment) -> Result<usize, EntryError> {
    let asked = typed.trim().to_lowercase();
    let names: Vec<String> = experiment
        .responses
        .iter()
        .map(|one| one.name.to_lowercase())
        .collect();
    let whole = names.iter().position(|name| *name == asked);
    let begins: Vec<usize> = (0..names.len())
        .filter(|at| !asked.is_empty() && names[*at].starts_with(&asked))
        .collect();
    let only = match begins.as_slice() {
        [one] => Some(*one),
        _ => None,
    };
    whole.or(only).ok_or_else(|| EntryError::NoResponse {
        typed: typed.to_owned(),
        known: experiment
            .responses
            .iter()
            .map(|one| one.name.as_str())
            .collect::<Vec<_>>()
            .join(", "),
    })
}
