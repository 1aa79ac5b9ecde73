//! `oddside experiment read`: what the results say.

use std::path::PathBuf;
use std::process::ExitCode;

use bench::experiment::answer_file::AnswerFile;
use bench::experiment::chart::chart;
use bench::experiment::mixes::answer_file::ComparedFile;
use bench::experiment::mixes::reading::compared;
use bench::experiment::mixes::told::read_told as mixes_told;
use bench::experiment::mixes::{self, Mixes};
use bench::experiment::opened::Opened;
use bench::experiment::picture::{Picture, pictures};
use bench::experiment::reading::{Read, read};
use bench::experiment::results_told::read_told;
use bench::experiment::{Experiment, trouble::ExperimentError};
use job::folder::write_whole;
use job::words::Language;
use measure::text::rounded;

use crate::commands::experiment::{block, opened_planned};
use crate::print;
use crate::trouble::Trouble;

/// Folder of the pictures in an experiment's folder.
const PICTURES: &str = "pictures";

/// What was asked for.
pub struct Asked {
    /// An experiment's folder or file.
    pub experiment: PathBuf,
    /// Folder for the pictures.
    pub out: Option<PathBuf>,
    /// How many batches to propose.
    pub more: usize,
    /// Print one JSON object and draw nothing.
    pub json: bool,
}

/// Reads and tells.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = opened_planned(&asked.experiment)?;
    if let Some(mixes) = &opened.experiment.mixes {
        return run_mixes(asked, &opened, mixes);
    }
    let (experiment, batches) = (&opened.experiment, &opened.batches);
    let found = read(experiment, batches, &opened.readings, asked.more)
        .map_err(|error| Trouble::Experiment(ExperimentError::Percent(error).to_string()))?;
    if asked.json {
        print::out(&AnswerFile::of(experiment, batches, &found).text())?;
        return Ok(ExitCode::SUCCESS);
    }
    print::out(&text(&opened, &found))?;
    let pictures = pictures(experiment, batches, &found, opened.words);
    write(asked, &opened, pictures)?;
    Ok(ExitCode::SUCCESS)
}

/// Reads and tells named mixes.
fn run_mixes(asked: &Asked, opened: &Opened, mixes: &Mixes) -> Result<ExitCode, Trouble> {
    let (experiment, batches) = (&opened.experiment, &opened.batches);
    let found = compared(experiment, mixes, batches, &opened.readings);
    let text = match asked.json {
        true => ComparedFile::of(experiment, mixes, batches, &found).text(),
        false => {
            let told = mixes_told(experiment, mixes, batches, &found);
            let blocks: Vec<String> = told.iter().map(|one| block(one, opened.words)).collect();
            blocks.join("\n") + &print::unread(opened.words)
        }
    };
    print::out(&text)?;
    if !asked.json {
        write(
            asked,
            opened,
            mixes::picture::pictures(experiment, mixes, batches, &found, opened.words),
        )?;
    }
    Ok(ExitCode::SUCCESS)
}

/// Writes pictures into their folder.
fn write(asked: &Asked, opened: &Opened, pictures: Vec<Picture>) -> Result<(), Trouble> {
    let out = asked
        .out
        .clone()
        .unwrap_or_else(|| opened.folder.join(PICTURES));
    for picture in pictures {
        let path = out.join(&picture.file);
        write_whole(&path, picture.svg.as_bytes())?;
        print::talk(&format!("wrote {}", path.display()));
    }
    Ok(())
}

fn text(opened: &Opened, found: &Read) -> String {
    let (experiment, language) = (&opened.experiment, opened.words);
    let told = read_told(experiment, &opened.batches, found);
    let mut blocks: Vec<String> = told.iter().map(|one| block(one, language)).collect();
    // The whole stands first, then each response in order, so that its chart goes under it.
    for (at, response) in experiment.responses.iter().enumerate() {
        if let Some(chart) = chart(experiment, response, &found.responses[at]) {
            let rows = chart.rows.iter().map(|row| format!("    {row}\n"));
            blocks[at + 1] += &rows.collect::<String>();
            blocks[at + 1] += &format!("  {}\n", language.say(&chart.key));
        }
    }
    if let Some(table) = joined(experiment, found, language) {
        blocks[experiment.responses.len() + 1] += &table;
    }
    blocks.join("\n") + &print::unread(language)
}

/// The table of all wishes at the mix that meets them best.
fn joined(experiment: &Experiment, found: &Read, language: Language) -> Option<String> {
    let best = found.joined.as_ref()?.best.as_ref()?;
    let mut table = print::table_in(
        language,
        &["", "experiment-expected", "head-between", "experiment-wish"],
    );
    for (response, (expected, met)) in experiment.responses.iter().zip(&best.each) {
        let between = expected.mean.map_or_else(String::new, |(low, high)| {
            format!("{} – {}", rounded(low, 3), response.shown(high))
        });
        table.add_row([
            response.name.clone(),
            response.shown(expected.value),
            between,
            format!("{} %", rounded((met * 100.0).round(), 3)),
        ]);
    }
    Some(format!("{table}\n"))
}
