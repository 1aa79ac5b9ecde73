//! `oddside experiment plan`: which batches to make, in which order, and their cards.

use std::path::PathBuf;
use std::process::ExitCode;

use bench::experiment::batches::{Batch, text};
use bench::experiment::design::{Planned, planned, teaches};
use bench::experiment::mixes::reading::{Next, compared};
use bench::experiment::mixes::{self, Mixes};
use bench::experiment::more::with_more as with_more_of;
use bench::experiment::reading::read;
use bench::experiment::space::Space;
use bench::experiment::told::plan_told;
use bench::experiment::trouble::{BatchesError, ExperimentError};
use bench::experiment::weighing::{Weighed, weighed};
use bench::experiment::{Counted, Experiment, Shape};
use comfy_table::Table;
use job::folder::write_whole;
use job::words::Language;
use measure::text::rounded;
use sheet::Paper;

use crate::commands::experiment::{Opened, block, opened};
use crate::print;
use crate::trouble::Trouble;

/// Name of the cards in an experiment's folder.
const CARDS_FILE: &str = "batch-cards.pdf";

/// What was asked for.
pub struct Asked {
    /// An experiment's folder or file.
    pub experiment: PathBuf,
    /// Folder for the cards.
    pub out: Option<PathBuf>,
    /// Print them for US Letter.
    pub letter: bool,
    /// Batches to add that the results speak for.
    pub more: Option<usize>,
    /// Plan anew although there is a plan.
    pub force: bool,
}

/// Plans and tells.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = opened(&asked.experiment)?;
    let (batches, told) = match (opened.experiment.mixes.clone(), asked.more) {
        (Some(mixes), more) => {
            let batches = of_mixes(&opened, &mixes, more, asked.force)?;
            let told = mixes::told::plan_told(&opened.experiment, &mixes, &batches);
            (batches, told)
        }
        (None, more) => {
            let plan = match more {
                Some(count) => with_more(&opened, count)?,
                None => plan(&opened, asked.force)?,
            };
            let told = plan_told(&opened.experiment, &plan);
            (plan.batches, told)
        }
    };
    let rows: Vec<Vec<Weighed>> = batches
        .iter()
        .map(|one| weighed(&opened.experiment, one))
        .collect::<Result<_, BatchesError>>()
        .map_err(|error| Trouble::Experiment(error.to_string()))?;
    if batches != opened.batches || asked.more.is_some() {
        let text = text(&opened.experiment, &batches);
        write_whole(&opened.batches_file, text.as_bytes())?;
        print::talk(&format!("wrote {}", opened.batches_file.display()));
    }
    let told = block(&told, opened.words);
    let table = table(&opened.experiment, &batches, &rows, opened.words);
    let unread = print::unread(opened.words);
    print::out(&format!("{told}\n{table}\n{unread}"))?;
    let paper = if asked.letter {
        Paper::Letter
    } else {
        Paper::A4
    };
    let cards = sheet::batch_cards(&opened.experiment, &batches, &rows, opened.words, paper)?;
    let out = asked
        .out
        .as_ref()
        .unwrap_or(&opened.folder)
        .join(CARDS_FILE);
    write_whole(&out, &cards)?;
    print::talk(&format!("wrote {}", out.display()));
    Ok(ExitCode::SUCCESS)
}

/// The plan there is, or a new one.
fn plan(opened: &Opened, force: bool) -> Result<Planned, Trouble> {
    if force && !opened.readings.is_empty() {
        return Err(Trouble::ResultsOfThePlan);
    }
    if opened.batches.is_empty() || force {
        return planned(&opened.experiment).map_err(trouble);
    }
    taught(opened, opened.batches.clone())
}

/// The batches of named mixes: those there are, new ones, or those with more of the mixes that are
/// not told apart yet.
fn of_mixes(
    opened: &Opened,
    named: &Mixes,
    more: Option<usize>,
    force: bool,
) -> Result<Vec<Batch>, Trouble> {
    let experiment = &opened.experiment;
    let Some(count) = more else {
        if force && !opened.readings.is_empty() {
            return Err(Trouble::ResultsOfThePlan);
        }
        return Ok(match opened.batches.is_empty() || force {
            true => mixes::planned(experiment),
            false => opened.batches.clone(),
        });
    };
    if opened.batches.is_empty() {
        return Err(Trouble::NotPlanned);
    }
    match compared(experiment, named, &opened.batches, &opened.readings).next {
        Next::Measure => Err(Trouble::OpenBatches),
        Next::Nothing => Err(Trouble::BestIsNamed),
        Next::Again { mixes: again, .. } if count < again.len() => {
            Err(Trouble::TooFewMore(again.len()))
        }
        Next::Again { mixes: again, .. } => {
            Ok(mixes::with_more(experiment, &opened.batches, &again, count))
        }
    }
}

/// The batches there are, and so many more that the results speak for, on a day of their own.
fn with_more(opened: &Opened, count: usize) -> Result<Planned, Trouble> {
    if opened.batches.is_empty() {
        return Err(Trouble::NotPlanned);
    }
    let found = read(&opened.experiment, &opened.batches, &opened.readings, count);
    let found = found.map_err(|error| trouble(ExperimentError::Percent(error)))?;
    if found.next.better.is_empty() {
        return Err(Trouble::TooFewResults);
    }
    let batches = with_more_of(
        &opened.experiment,
        &opened.batches,
        &opened.readings,
        &found,
        count,
    );
    taught(opened, batches)
}

/// What batches that are there can teach, with the shape that bends most of those they can.
fn taught(opened: &Opened, batches: Vec<Batch>) -> Result<Planned, Trouble> {
    let space = Space::of(&opened.experiment);
    let of = |shape: Shape| teaches(&opened.experiment, &space, shape, &batches);
    let bent = [Shape::Bent, Shape::Twisted].into_iter().find_map(|shape| {
        let found = of(shape).ok()?;
        (found.degrees > 0).then_some(found)
    });
    let teaches = match bent {
        Some(found) => found,
        None => of(Shape::Plane).map_err(trouble)?,
    };
    Ok(Planned { batches, teaches })
}

fn table(
    experiment: &Experiment,
    batches: &[Batch],
    rows: &[Vec<Weighed>],
    language: Language,
) -> Table {
    let mut heads = vec!["experiment-batch", "experiment-day"];
    heads.extend(experiment.mixes.as_ref().map(|_| "experiment-mix"));
    let heads = heads.into_iter().map(|id| language.word(id));
    let parts = experiment.parts.iter().map(|one| one.name.clone());
    let settings = experiment.settings.iter().map(|one| one.name.clone());
    let heads: Vec<String> = heads.chain(parts).chain(settings).collect();
    let mut table = print::table(&heads.iter().map(String::as_str).collect::<Vec<_>>());
    for (one, rows) in batches.iter().zip(rows) {
        let mut cells = vec![one.number.to_string(), one.day.to_string()];
        cells.extend(experiment.mix_of(one).map(|mix| mix.name.clone()));
        cells.extend(rows.iter().zip(&one.amounts).map(|(row, amount)| {
            let unit = if experiment.counted == Counted::Percent {
                " %"
            } else {
                ""
            };
            let amount = rounded(*amount, 3);
            format!("{} g ({amount}{unit})", grams(row))
        }));
        let settings = experiment.settings.iter().zip(&one.settings);
        cells.extend(settings.map(|(setting, value)| setting.shown(*value)));
        table.add_row(cells);
    }
    table
}

/// Grams as a scale shows them.
fn grams(row: &Weighed) -> String {
    rounded(row.weigh.as_g(), 4)
}

fn trouble(error: ExperimentError) -> Trouble {
    Trouble::Experiment(error.to_string())
}
