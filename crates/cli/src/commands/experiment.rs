//! `oddside experiment`: a few batches planned, entered and read.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use bench::experiment::Experiment;
use bench::experiment::batches::{BATCHES_FILE, Batch, BatchesFile};
use bench::experiment::file::{EXPERIMENT_FILE, ExperimentFile, STARTER};
use bench::experiment::results::{RESULTS_FILE, Reading, readings};
use bench::experiment::told::Told;
use bench::experiment::weighings::{weighings, with_weighings};
use job::file_fault::read;
use job::folder::{FolderError, read_text, shop_above, write_whole};
use job::remark::Level;
use job::words::Language;

use crate::print;
use crate::trouble::Trouble;

pub mod enter;
pub mod plan;
pub mod reading;

/// An experiment opened: what is meant, its batches and results, and where they are.
pub struct Opened {
    /// The experiment.
    pub experiment: Experiment,
    /// Its batches; none before it is planned.
    pub batches: Vec<Batch>,
    /// Its results.
    pub readings: Vec<Reading>,
    /// The text of the results, kept as it is.
    pub results: String,
    /// Where the batches stand.
    pub batches_file: PathBuf,
    /// Where the results stand.
    pub results_file: PathBuf,
    /// The folder of all of them.
    pub folder: PathBuf,
    /// The language of the shop above it.
    pub words: Language,
}

/// Starts an experiment's folder with a commented file.
pub fn new(folder: &Path) -> Result<ExitCode, Trouble> {
    let path = folder.join(EXPERIMENT_FILE);
    if path.exists() {
        return Err(FolderError::InTheWay { path }.into());
    }
    write_whole(&path, STARTER.as_bytes())?;
    print::talk(&format!("wrote {}", path.display()));
    Ok(ExitCode::SUCCESS)
}

/// Opens an experiment's folder or its file. A file of another name has its batches and results
/// under that name.
pub fn opened(path: &Path) -> Result<Opened, Trouble> {
    let file = match path.is_dir() {
        true => path.join(EXPERIMENT_FILE),
        false => path.to_owned(),
    };
    let text = read_text(&file, "make one with: oddside experiment new DIR")?;
    let typed: ExperimentFile =
        read(&file.display().to_string(), &text).map_err(FolderError::from)?;
    let experiment = typed.meant().map_err(|error| in_file(&file, &error))?;
    let folder = file.parent().map_or_else(PathBuf::new, Path::to_owned);
    let own = |name: &str| match file.file_name().is_some_and(|own| own == EXPERIMENT_FILE) {
        true => folder.join(name),
        false => {
            let stem = file.file_stem().unwrap_or_default().to_string_lossy();
            folder.join(format!("{stem}-{name}"))
        }
    };
    let (batches_file, results_file) = (own(BATCHES_FILE), own(RESULTS_FILE));
    let batches = match batches_file.exists() {
        true => batches(&batches_file, &experiment)?,
        false => Vec::new(),
    };
    let results = match results_file.exists() {
        true => read_text(&results_file, "")?,
        false => String::new(),
    };
    let readings = readings(&results, &experiment, &batches);
    let readings = readings.map_err(|error| in_file(&results_file, &error))?;
    let made = weighings(&results, &experiment, &batches)
        .and_then(|weighed| with_weighings(&experiment, &batches, &weighed));
    let batches = made.map_err(|error| in_file(&results_file, &error))?;
    let above = if folder.as_os_str().is_empty() {
        Path::new(".")
    } else {
        &folder
    };
    let words = shop_above(above)?.0.words;
    Ok(Opened {
        experiment,
        batches,
        readings,
        results,
        batches_file,
        results_file,
        folder,
        words,
    })
}

impl Opened {
    /// The same, if it is planned.
    pub fn planned(self) -> Result<Opened, Trouble> {
        match self.batches.is_empty() {
            true => Err(Trouble::NotPlanned),
            false => Ok(self),
        }
    }
}

/// Something told, its lines under its head.
pub fn block(told: &Told, language: Language) -> String {
    let mut text = format!("{}\n", language.say(&told.head));
    for line in &told.lines {
        text += &format!("  {}\n", language.say(line));
    }
    let level = print::level(Level::Caution, language);
    for line in &told.cautions {
        text += &format!("  {level}: {}\n", language.say(line));
    }
    text
}

/// What is wrong in a file of an experiment.
pub fn in_file(file: &Path, error: &dyn std::error::Error) -> Trouble {
    Trouble::Experiment(format!("{}: {error}", file.display()))
}

fn batches(file: &Path, experiment: &Experiment) -> Result<Vec<Batch>, Trouble> {
    let text = read_text(file, "")?;
    let typed: BatchesFile = read(&file.display().to_string(), &text).map_err(FolderError::from)?;
    typed
        .meant(experiment)
        .map_err(|error| in_file(file, &error))
}
