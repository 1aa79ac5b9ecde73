//! Why the log says no.

use std::io;
use std::path::PathBuf;

use thiserror::Error;

use crate::column::ColumnError;

/// Why something could not be done with the log.
#[derive(Debug, Error)]
pub enum LogError {
    /// No log where one is asked for.
    #[error("{path} is not there: the first entry makes it, such as oddside log weather")]
    NotThere {
        /// The file.
        path: PathBuf,
    },
    /// The disk says no.
    #[error("{path}: {error}")]
    Disk {
        /// The file or folder.
        path: PathBuf,
        /// What the system says.
        error: io::Error,
    },
    /// The file is damaged, or no log at all.
    #[error(
        "{path} is damaged or is no log ({words}); nothing was changed in it: save what can be read \
         with oddside log salvage"
    )]
    Damaged {
        /// The file.
        path: PathBuf,
        /// What was found.
        words: String,
    },
    /// A log of a newer program.
    #[error(
        "{path} was written by a newer oddside (version {found} of its tables, this one knows \
         {known}): it is open for reading only; take the newer program to write"
    )]
    Newer {
        /// The file.
        path: PathBuf,
        /// Version of the file.
        found: i64,
        /// Version known.
        known: i64,
    },
    /// Another database.
    #[error("{path} is a database of another program: name the log by --log FILE")]
    Foreign {
        /// The file.
        path: PathBuf,
    },
    /// No room.
    #[error("the disk is full: nothing of this entry was written, all that was confirmed stands")]
    Full,
    /// Another process holds it.
    #[error("another program has held the log for over ten seconds: try again when it is done")]
    Busy,
    /// A table that is none.
    #[error("there is no table \"{name}\": say one of {known}")]
    NoTable {
        /// What was asked for.
        name: String,
        /// What there is.
        known: String,
    },
    /// A key that the table lacks.
    #[error("a {table} has no \"{key}\": it has {known}")]
    NoColumn {
        /// The table.
        table: &'static str,
        /// What was typed.
        key: String,
        /// What there is.
        known: String,
    },
    /// A value that is not understood.
    #[error(transparent)]
    Value(#[from] ColumnError),
    /// An entry that is not there.
    #[error("there is no {table} \"{asked}\": say its number, its id or last")]
    NoEntry {
        /// The table.
        table: &'static str,
        /// What was asked for.
        asked: String,
    },
    /// More than one entry.
    #[error("\"{asked}\" begins the ids of {count} entries: write more of it")]
    NotOne {
        /// What was asked for.
        asked: String,
        /// How many.
        count: usize,
    },
    /// An id that is none.
    #[error("\"{0}\" is no id: it has 32 hexadecimal digits")]
    BadId(
        /// What was given.
        String,
    ),
    /// An entry that points to nothing.
    #[error("{table}: its {key} points to an entry that is not in the log: write that one first")]
    Dangling {
        /// The table.
        table: &'static str,
        /// The key that points.
        key: &'static str,
    },
    /// A file to import that is not understood.
    #[error("{path}, {place}: {words}")]
    Import {
        /// The file.
        path: PathBuf,
        /// Line or entry.
        place: String,
        /// What is wrong and what to do.
        words: String,
    },
    /// A picture that is not taken.
    #[error("{path}: {words}")]
    Photo {
        /// The file.
        path: PathBuf,
        /// What is wrong and what to do.
        words: String,
    },
    /// A copy that is not what it was copied from.
    #[error("the backup {path} did not pass its check ({words}): it was removed; look at the disk")]
    BadBackup {
        /// The file.
        path: PathBuf,
        /// What was found.
        words: String,
    },
    /// Something that is there already.
    #[error("{path} is already there and is left as it is: name another")]
    InTheWay {
        /// The file.
        path: PathBuf,
    },
    /// Tables that could not be made.
    #[error("the tables of the log could not be brought up to date: {0}")]
    Migration(Box<rusqlite_migration::Error>),
    /// The database library says no.
    #[error("the log: {0}")]
    Database(rusqlite::Error),
}

impl From<rusqlite::Error> for LogError {
    fn from(error: rusqlite::Error) -> LogError {
        match error.sqlite_error_code() {
            Some(rusqlite::ErrorCode::DiskFull) => LogError::Full,
            Some(rusqlite::ErrorCode::DatabaseBusy | rusqlite::ErrorCode::DatabaseLocked) => {
                LogError::Busy
            }
            _ => LogError::Database(error),
        }
    }
}

/// Whether the file itself is at fault.
pub(crate) fn is_damage(error: &rusqlite::Error) -> bool {
    matches!(
        error.sqlite_error_code(),
        Some(rusqlite::ErrorCode::DatabaseCorrupt | rusqlite::ErrorCode::NotADatabase)
    )
}
