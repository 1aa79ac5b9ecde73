//! Taking results in: one batch at a time or a whole table. What contradicts is asked about.

use measure::text::{plain_number, rounded};

use crate::experiment::Experiment;
use crate::experiment::batches::Batch;
use crate::experiment::results::{Note, Reading, number_of, place_of, standing};
use crate::experiment::trouble::EntryError;
use crate::experiment::weighings::{Weighing, part_of, weighing};

/// How results that are in doubt are meant.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Meant {
    /// What stands there was wrong.
    pub replace: bool,
    /// The batch was measured once more.
    pub again: bool,
    /// It truly is far from the others.
    pub sure: bool,
}

/// What was taken in of a table, and what was not.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// New readings.
    pub readings: Vec<Reading>,
    /// What was really put in.
    pub weighings: Vec<Weighing>,
    /// How many stood there already.
    pub known: usize,
    /// What was refused, with its line.
    pub refused: Vec<(usize, EntryError)>,
}

/// A result lies far from all others beyond so many times their range. A slipped point makes ten
/// times the value, which lies further out than this unless the results already spread tenfold;
/// with less, the first batch of a new corner would be asked about.
const FAR: f64 = 3.0;

/// Fewest results before one is called far from the others.
const FEWEST_TO_BE_FAR: usize = 4;

/// Takes results of one batch in, typed as `name=value`, and what was really weighed of its parts.
///
/// # Errors
///
/// When one is not understood, or contradicts what stands there.
pub fn entered(
    experiment: &Experiment,
    batches: &[Batch],
    known: &[Reading],
    batch: &str,
    pairs: &[String],
    meant: Meant,
) -> Result<Taken, EntryError> {
    let batch = number_of(batch, batches)?;
    let mut taken = Taken {
        readings: Vec::new(),
        weighings: Vec::new(),
        known: 0,
        refused: Vec::new(),
    };
    let mut all = known.to_vec();
    for pair in pairs {
        let (name, value) = pair
            .split_once('=')
            .ok_or_else(|| EntryError::NotAPair(pair.clone()))?;
        if let Some(part) = part_of(name, experiment) {
            let one = weighing(experiment, batches, batch, part, value, meant.sure)?;
            taken.weighings.push(one);
            continue;
        }
        let response = place_of(name, experiment)?;
        let value = value_of(experiment, batch, response, value)?;
        match judged(experiment, &all, batch, response, value, meant)? {
            Some(reading) => {
                all.push(reading.clone());
                taken.readings.push(reading);
            }
            None => taken.known += 1,
        }
    }
    Ok(taken)
}

/// Takes a table in: a first line with `batch` and names of responses, then a line a batch; cells
/// parted by commas, semicolons or tabs, empty where nothing was measured. Lines that are not
/// understood or contradict are told and left out, all others are taken.
///
/// # Errors
///
/// When the first line is none.
pub fn entered_table(
    experiment: &Experiment,
    batches: &[Batch],
    known: &[Reading],
    table: &str,
    meant: Meant,
) -> Result<Taken, EntryError> {
    let mut lines = table
        .lines()
        .enumerate()
        .filter(|(_, line)| !line.trim().is_empty() && !line.trim().starts_with('#'));
    let no_head = || {
        let names = experiment.responses.iter().map(|one| one.name.as_str());
        let names: Vec<&str> = ["batch"].into_iter().chain(names).collect();
        EntryError::NoHead(names.join(","))
    };
    let (_, head) = lines.next().ok_or_else(no_head)?;
    let mark = mark(head);
    let names = cells(head, mark);
    if names
        .first()
        .is_none_or(|first| !first.eq_ignore_ascii_case("batch"))
    {
        return Err(no_head());
    }
    let columns: Vec<Column> = names[1..]
        .iter()
        .map(|name| column(name, experiment))
        .collect::<Result<_, _>>()?;
    let mut taken = Taken {
        readings: Vec::new(),
        weighings: Vec::new(),
        known: 0,
        refused: Vec::new(),
    };
    let mut all = known.to_vec();
    for (at, line) in lines {
        let row = cells(line, mark);
        if row.len() > names.len() {
            let (line, has, wants) = (at + 1, row.len(), names.len());
            let error = EntryError::Cells { line, has, wants };
            taken.refused.push((line, error));
            continue;
        }
        for (cell, column) in row[1..].iter().zip(&columns) {
            if cell.is_empty() {
                continue;
            }
            let response = match column {
                Column::Response(response) => *response,
                Column::Part(part) => {
                    let one = number_of(&row[0], batches).and_then(|batch| {
                        weighing(experiment, batches, batch, *part, cell, meant.sure)
                    });
                    match one {
                        Ok(one) => taken.weighings.push(one),
                        Err(error) => taken.refused.push((at + 1, error)),
                    }
                    continue;
                }
            };
            match cell_of(experiment, batches, &all, &row[0], response, cell, meant) {
                Ok(Some(reading)) => {
                    all.push(reading.clone());
                    taken.readings.push(reading);
                }
                Ok(None) => taken.known += 1,
                Err(error) => taken.refused.push((at + 1, error)),
            }
        }
    }
    Ok(taken)
}

/// What a column of a table holds.
enum Column {
    Response(usize),
    Part(usize),
}

fn column(name: &str, experiment: &Experiment) -> Result<Column, EntryError> {
    match part_of(name, experiment) {
        Some(part) => Ok(Column::Part(part)),
        None => place_of(name, experiment).map(Column::Response),
    }
}

fn cell_of(
    experiment: &Experiment,
    batches: &[Batch],
    known: &[Reading],
    batch: &str,
    response: usize,
    cell: &str,
    meant: Meant,
) -> Result<Option<Reading>, EntryError> {
    let batch = number_of(batch, batches)?;
    let value = value_of(experiment, batch, response, cell)?;
    judged(experiment, known, batch, response, value, meant)
}

/// The mark that parts the cells of a table.
fn mark(head: &str) -> char {
    [';', '\t']
        .into_iter()
        .find(|mark| head.contains(*mark))
        .unwrap_or(',')
}

fn cells(line: &str, mark: char) -> Vec<String> {
    let cell = |cell: &str| cell.trim().trim_matches('"').trim().to_owned();
    line.split(mark).map(cell).collect()
}

/// A value with or without the unit of its response.
fn value_of(
    experiment: &Experiment,
    batch: usize,
    response: usize,
    typed: &str,
) -> Result<f64, EntryError> {
    let one = &experiment.responses[response];
    let typed = typed.trim();
    let number = typed.strip_suffix(one.unit.as_str()).unwrap_or(typed);
    plain_number(number).ok_or_else(|| EntryError::NotANumber {
        name: one.name.clone(),
        batch,
        typed: typed.to_owned(),
        unit: match one.unit.as_str() {
            "" => "no unit".to_owned(),
            unit => unit.to_owned(),
        },
    })
}

/// The reading as it is to be written; nothing where it stands there already.
fn judged(
    experiment: &Experiment,
    known: &[Reading],
    batch: usize,
    response: usize,
    value: f64,
    meant: Meant,
) -> Result<Option<Reading>, EntryError> {
    let own = standing(known, batch, response);
    let name = || experiment.responses[response].name.clone();
    if own.contains(&value) && !meant.again {
        return Ok(None);
    }
    let note = match (own.is_empty(), meant) {
        (true, Meant { replace: true, .. }) => {
            let name = name();
            return Err(EntryError::NothingToReplace { name, batch });
        }
        (true, _) => Note::First,
        (false, Meant { replace: true, .. }) => Note::Replaces,
        (false, Meant { again: true, .. }) => Note::Again,
        (false, _) => {
            let before: Vec<String> = own.iter().map(|one| rounded(*one, 4)).collect();
            return Err(EntryError::Differs {
                name: name(),
                batch,
                before: before.join(" and "),
                now: rounded(value, 4),
            });
        }
    };
    if !meant.sure {
        near_others(known, batch, response, value, &name())?;
    }
    Ok(Some(Reading {
        batch,
        response,
        value,
        note,
    }))
}

fn near_others(
    known: &[Reading],
    batch: usize,
    response: usize,
    value: f64,
    name: &str,
) -> Result<(), EntryError> {
    let others = || {
        known
            .iter()
            .filter(|one| one.response == response)
            .map(|one| one.value)
    };
    let low = others().fold(f64::INFINITY, f64::min);
    let high = others().fold(f64::NEG_INFINITY, f64::max);
    let reach = FAR * (high - low);
    let far = value < low - reach || value > high + reach;
    match far && others().count() >= FEWEST_TO_BE_FAR && high > low {
        true => Err(EntryError::Far {
            name: name.to_owned(),
            batch,
            now: rounded(value, 4),
            low: rounded(low, 4),
            high: rounded(high, 4),
        }),
        false => Ok(()),
    }
}
