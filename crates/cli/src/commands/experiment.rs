//! `oddside experiment`: a few batches planned, entered and read.

use std::path::Path;
use std::process::ExitCode;

use bench::experiment::file::{EXPERIMENT_FILE, STARTER};
use bench::experiment::opened::{self, Opened};
use bench::experiment::session::SessionError;
use bench::experiment::told::Told;
use job::folder::{FolderError, write_whole};
use job::remark::Level;
use job::words::Language;

use crate::print;
use crate::trouble::Trouble;

pub mod enter;
pub mod plan;
pub mod reading;

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

/// Opens an experiment by its folder or its file.
pub fn opened(path: &Path) -> Result<Opened, Trouble> {
    let file = match path.is_dir() {
        true => path.join(EXPERIMENT_FILE),
        false => path.to_owned(),
    };
    Ok(opened::opened(&file)?)
}

/// Opens an experiment that is planned.
pub fn opened_planned(path: &Path) -> Result<Opened, Trouble> {
    let opened = opened(path)?;
    match opened.batches.is_empty() {
        true => Err(SessionError::NotPlanned.into()),
        false => Ok(opened),
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
