//! The log as files: exports, plain files of the bench, backups, what a damaged one still holds.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use job::folder::{FolderError, read_text, write_all_new, write_whole};
use job::words::said::Said;
use shoplog::bench_files::{self, MoveError};
use shoplog::error::LogError;
use shoplog::{backup as copy, export as written, import as taken, salvage as saved};

use crate::commands::log::Desk;
use crate::trouble::Trouble;

/// Writes all of the log.
pub fn export(desk: &Desk, to: &Path, json: bool, force: bool) -> Result<ExitCode, Trouble> {
    let log = desk.open_to_read()?;
    if json {
        if to.exists() && !force {
            let path = to.to_owned();
            return Err(FolderError::WouldOverwrite { path }.into());
        }
        write_whole(to, written::json(&log)?.as_bytes())?;
        return said_written(desk, to);
    }
    let files = write_all_new(to, &written::csv(&log)?, force)?;
    said_files(desk, to, files.len())
}

/// Reads exports back.
pub fn import(desk: &Desk, files: &[PathBuf]) -> Result<ExitCode, Trouble> {
    let read = files.iter().map(|path| {
        let bytes = std::fs::read(path).map_err(|error| {
            let path = path.clone();
            LogError::Disk { path, error }
        })?;
        Ok((path.clone(), bytes))
    });
    let read: Vec<(PathBuf, Vec<u8>)> = read.collect::<Result<_, LogError>>()?;
    let imported = taken::import(&mut desk.open()?, &read)?;
    let names: Vec<String> = files
        .iter()
        .map(|path| path.display().to_string())
        .collect();
    moved(desk, &names.join(", "), imported.new, imported.there);
    for (table, was, number) in imported.renumbered {
        let said = Said::new("log-renumbered").with("table", table);
        desk.say(
            &said
                .with("was", was.to_string())
                .with("number", number.to_string()),
        );
    }
    Ok(ExitCode::SUCCESS)
}

/// Moves plain files of the bench in.
pub fn move_in(desk: &Desk, files: &[PathBuf]) -> Result<ExitCode, Trouble> {
    let mut log = desk.open()?;
    for file in files {
        let text = read_text(file, "check the name of the file")?;
        let name = file.display().to_string();
        let name = name.trim_start_matches("./");
        let said = bench_files::move_in(&mut log, name, &text).map_err(|error| match error {
            MoveError::File(fault) => Trouble::Folder(FolderError::File(fault)),
            MoveError::Bench(wrong) => Trouble::Bench(wrong),
            MoveError::Log(wrong) => Trouble::Log(wrong),
        })?;
        moved(desk, name, said.new, said.there);
    }
    Ok(ExitCode::SUCCESS)
}

/// Writes the plain files out again.
pub fn move_out(desk: &Desk, to: &Path, force: bool) -> Result<ExitCode, Trouble> {
    let files = bench_files::moved_in(&desk.open_to_read()?)?;
    let files: Vec<(String, Vec<u8>)> = files
        .into_iter()
        .map(|(name, text)| (name_below(&name), text.into_bytes()))
        .collect();
    let written = write_all_new(to, &files, force)?;
    said_files(desk, to, written.len())
}

/// Copies the log while it is in use.
pub fn backup(desk: &Desk, to: &Path) -> Result<ExitCode, Trouble> {
    copy::backup(&desk.open_to_read()?, to)?;
    said_written(desk, to)
}

/// Saves what can be read of a damaged log.
pub fn salvage(desk: &Desk, to: &Path) -> Result<ExitCode, Trouble> {
    let report = saved::salvage(&desk.path, to)?;
    if report.head_lost {
        desk.say(&Said::new("log-head-lost"));
    }
    for (table, count) in report.saved.iter().filter(|(_, count)| *count > 0) {
        desk.say(
            &Said::new("log-salvaged")
                .with("table", *table)
                .with("count", *count),
        );
    }
    for (table, number) in &report.last {
        let said = Said::new("log-torn").with("table", *table);
        desk.say(&said.with("number", number.to_string()));
    }
    if report.links_lost > 0 {
        desk.say(&Said::new("log-links-lost").with("count", report.links_lost));
    }
    said_written(desk, to)
}

fn moved(desk: &Desk, file: &str, new: usize, there: usize) {
    let said = Said::new("log-moved-in").with("file", file);
    desk.say(
        &said
            .with("new", new.to_string())
            .with("there", there.to_string()),
    );
}

fn said_written(desk: &Desk, to: &Path) -> Result<ExitCode, Trouble> {
    desk.say(&Said::new("written").with("file", to.display().to_string()));
    Ok(ExitCode::SUCCESS)
}

fn said_files(desk: &Desk, to: &Path, count: usize) -> Result<ExitCode, Trouble> {
    let said = Said::new("log-written-files").with("count", count.to_string());
    desk.say(&said.with("folder", to.display().to_string()));
    Ok(ExitCode::SUCCESS)
}

/// A name that stays below the folder it is written into.
fn name_below(name: &str) -> String {
    let parts = name
        .split(['/', '\\'])
        .filter(|part| !["", ".", ".."].contains(part));
    parts.collect::<Vec<_>>().join("/")
}
