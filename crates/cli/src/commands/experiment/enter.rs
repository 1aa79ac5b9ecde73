//! `oddside experiment enter`: results taken in.

use std::path::PathBuf;
use std::process::ExitCode;

use bench::experiment::entry::{Meant, Taken, entered, entered_table};
use bench::experiment::results::with;
use bench::experiment::trouble::EntryError;
use job::folder::{read_text, write_whole};

use crate::commands::experiment::opened_planned;
use crate::print;
use crate::trouble::Trouble;

/// What was asked for.
pub struct Asked {
    /// An experiment's folder or file.
    pub experiment: PathBuf,
    /// The batch.
    pub batch: Option<String>,
    /// Its results as `name=value`.
    pub results: Vec<String>,
    /// A table of results.
    pub csv: Option<PathBuf>,
    /// How doubtful results are meant.
    pub meant: Meant,
}

/// Takes results in.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = opened_planned(&asked.experiment)?;
    let (experiment, batches) = (&opened.experiment, &opened.batches);
    let taken = match (&asked.csv, &asked.batch) {
        (Some(csv), _) => {
            let table = read_text(csv, "check the name of the table")?;
            entered_table(experiment, batches, &opened.readings, &table, asked.meant)
        }
        (None, Some(batch)) if !asked.results.is_empty() => {
            let known = &opened.readings;
            entered(
                experiment,
                batches,
                known,
                batch,
                &asked.results,
                asked.meant,
            )
        }
        _ => return Err(Trouble::NothingToEnter),
    };
    let taken = taken.map_err(trouble)?;
    if !(taken.readings.is_empty() && taken.weighings.is_empty()) {
        let text = with(
            &opened.results,
            experiment,
            &taken.readings,
            &taken.weighings,
        );
        write_whole(&opened.results_file, text.as_bytes())?;
    }
    tell(&taken);
    let asks = taken.refused.iter().any(|(_, error)| error.asks());
    Ok(match taken.refused.is_empty() {
        true => ExitCode::SUCCESS,
        false => ExitCode::from(2 + u8::from(asks)),
    })
}

fn tell(taken: &Taken) {
    let known = match taken.known {
        0 => String::new(),
        known => format!(", {known} known already"),
    };
    print::talk(&format!("{} results kept{known}", taken.readings.len()));
    if !taken.weighings.is_empty() {
        print::talk(&format!("{} masses kept as weighed", taken.weighings.len()));
    }
    for (line, error) in &taken.refused {
        print::talk(&format!("line {line}, left out: {error}"));
    }
}

fn trouble(error: EntryError) -> Trouble {
    match error.asks() {
        true => Trouble::ResultAsked(error),
        false => Trouble::Result(error),
    }
}
