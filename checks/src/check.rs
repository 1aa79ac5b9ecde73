//! One published example: what is given, what a law has to give back, and where that was seen.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use serde::Deserialize;
use thiserror::Error;

/// A row of `published/*.toml`.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Check {
    /// Path of the law: `mould::gating::choke::choke`.
    pub law: String,
    /// The case in a few words, by which a failure is found again.
    pub case: String,
    /// What goes in, each text with its unit.
    pub given: BTreeMap<String, String>,
    /// What comes out, each text with its unit.
    pub gives: BTreeMap<String, String>,
    /// How far off it may be: per cent of the figure, or an amount with its unit.
    pub within: String,
    /// The book, page or problem, or "hand sum".
    pub source: String,
    /// Where it was seen, or "from memory".
    pub seen: String,
    /// Misprints and readings of the source; empty where there is nothing to say.
    #[serde(default)]
    pub note: String,
    /// A limit case or a hand sum, no published example found.
    #[serde(default)]
    pub independent: bool,
}

/// Why the rows cannot be read.
#[derive(Debug, Error)]
pub enum CheckError {
    /// The folder or a file in it does not open.
    #[error("{}: {fault}", path.display())]
    Unreadable {
        /// Folder or file.
        path: PathBuf,
        /// What the system says.
        fault: std::io::Error,
    },
    /// Not a table of rows.
    #[error("{}: {fault}", path.display())]
    NotRows {
        /// The file.
        path: PathBuf,
        /// What is wrong and where.
        fault: toml::de::Error,
    },
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Rows {
    check: Vec<Check>,
}

/// Every row of every file of a folder, the files in the order of their names.
pub fn read_all(folder: &Path) -> Result<Vec<Check>, CheckError> {
    let unreadable = |path: &Path| {
        let path = path.to_owned();
        |fault| CheckError::Unreadable { path, fault }
    };
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(unreadable(folder))? {
        files.push(entry.map_err(unreadable(folder))?.path());
    }
    files.sort();
    let mut rows = Vec::new();
    for path in files {
        let text = std::fs::read_to_string(&path).map_err(unreadable(&path))?;
        rows.extend(read(&text).map_err(|fault| CheckError::NotRows { path, fault })?);
    }
    Ok(rows)
}

/// The rows of one file.
pub fn read(text: &str) -> Result<Vec<Check>, toml::de::Error> {
    toml::from_str::<Rows>(text).map(|rows| rows.check)
}
