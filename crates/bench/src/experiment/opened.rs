//! An experiment's folder opened: what is meant, its batches and its results.

use std::path::{Path, PathBuf};

use job::file_fault::read;
use job::folder::{FolderError, read_text, shop_above};
use job::words::Language;
use thiserror::Error;

use crate::experiment::Experiment;
use crate::experiment::batches::{BATCHES_FILE, Batch, BatchesFile};
use crate::experiment::file::{EXPERIMENT_FILE, ExperimentFile};
use crate::experiment::results::{RESULTS_FILE, Reading, readings};
use crate::experiment::weighings::{weighings, with_weighings};

/// An experiment opened: what is meant, its batches and results, and where they are.
#[derive(Debug)]
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

/// Why an experiment cannot be opened.
#[derive(Debug, Error)]
pub enum OpenError {
    /// A file that cannot be read.
    #[error(transparent)]
    Folder(#[from] FolderError),
    /// Something in a file that cannot be.
    #[error("{file}: {words}")]
    In {
        /// The file.
        file: String,
        /// What is wrong.
        words: String,
    },
}

/// Opens an experiment by its file. A file of another name than usual has its batches and results
/// under that name.
///
/// # Errors
///
/// A file that is not there or cannot be read, and what cannot be in one.
pub fn opened(file: &Path) -> Result<Opened, OpenError> {
    let text = read_text(file, "make one with: oddside experiment new DIR")?;
    let typed: ExperimentFile =
        read(&file.display().to_string(), &text).map_err(FolderError::from)?;
    let experiment = typed.meant().map_err(|error| in_file(file, &error))?;
    let folder = file.parent().map_or_else(PathBuf::new, Path::to_owned);
    let (batches_file, results_file) = (beside(file, BATCHES_FILE), beside(file, RESULTS_FILE));
    let batches = match text_if_there(&batches_file)? {
        Some(text) => batches(&batches_file, &text, &experiment)?,
        None => Vec::new(),
    };
    let results = text_if_there(&results_file)?.unwrap_or_default();
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

/// A file that belongs to an experiment's.
fn beside(file: &Path, name: &str) -> PathBuf {
    match file.file_name().is_some_and(|own| own == EXPERIMENT_FILE) {
        true => file.with_file_name(name),
        false => {
            let stem = file.file_stem().unwrap_or_default().to_string_lossy();
            file.with_file_name(format!("{stem}-{name}"))
        }
    }
}

fn batches(file: &Path, text: &str, experiment: &Experiment) -> Result<Vec<Batch>, OpenError> {
    let typed: BatchesFile = read(&file.display().to_string(), text).map_err(FolderError::from)?;
    typed
        .meant(experiment)
        .map_err(|error| in_file(file, &error))
}

fn text_if_there(file: &Path) -> Result<Option<String>, FolderError> {
    match read_text(file, "") {
        Ok(text) => Ok(Some(text)),
        Err(FolderError::NotThere { .. }) => Ok(None),
        Err(error) => Err(error),
    }
}

fn in_file(file: &Path, error: &dyn std::error::Error) -> OpenError {
    OpenError::In {
        file: file.display().to_string(),
        words: error.to_string(),
    }
}
