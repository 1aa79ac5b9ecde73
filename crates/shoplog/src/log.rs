//! The log as one file: opened, brought to the newest version of its tables, written durably.

use std::path::{Path, PathBuf};
use std::time::Duration;

use rusqlite::{Connection, OpenFlags};
use rusqlite_migration::{M, Migrations};

use crate::error::{LogError, is_damage};

/// Name of the log in the shop's folder.
pub const LOG_FILE: &str = "log.sqlite";

/// Marks the file as a log of this program ("ODLG").
const APPLICATION: i64 = 0x4F44_4C47;

/// The migrations, one after the other; what stands here is never changed, only added to.
const MIGRATIONS: &[M<'_>] = &[M::up(include_str!("../migrations/0001_start.sql"))];

/// How long another process is waited for. Shorter, and a phone's long upload makes the terminal
/// give up; longer, and a process that hangs makes everybody wait.
const PATIENCE: Duration = Duration::from_secs(10);

/// The log, open.
#[derive(Debug)]
pub struct Log {
    /// The connection; statements stand in this room only.
    pub(crate) connection: Connection,
    /// Where it lies.
    pub path: PathBuf,
    /// The version of its tables, where that is newer than is known here: it is then only read.
    pub newer: Option<i64>,
}

impl Log {
    /// Opens the log, or starts it where there is none.
    ///
    /// # Errors
    ///
    /// A damaged or foreign file, a disk that says no.
    pub fn open(path: &Path) -> Result<Log, LogError> {
        let opened = open_to_write(path);
        opened.map_err(|error| told(path, error))?
    }

    /// Opens a log that is there, for reading alone.
    ///
    /// # Errors
    ///
    /// As [`Log::open`], and where there is none.
    pub fn open_to_read(path: &Path) -> Result<Log, LogError> {
        if !path.is_file() {
            let path = path.to_owned();
            return Err(LogError::NotThere { path });
        }
        let opened = read_only(path);
        opened.map_err(|error| told(path, error))
    }

    /// Refuses where the log is newer than is known here.
    pub(crate) fn writable(&self) -> Result<(), LogError> {
        match self.newer {
            Some(found) => Err(LogError::Newer {
                path: self.path.clone(),
                found,
                known: known_version(),
            }),
            None => Ok(()),
        }
    }

    /// Whether the whole file is sound: every page, every index, every link.
    ///
    /// # Errors
    ///
    /// [`LogError::Damaged`] with what was found first.
    pub fn check(&self) -> Result<(), LogError> {
        let sound = integrity(&self.connection);
        let damaged = |words| LogError::Damaged {
            path: self.path.clone(),
            words,
        };
        match sound.map_err(|error| told(&self.path, error))? {
            words if words == "ok" => Ok(()),
            words => Err(damaged(words)),
        }
    }
}

/// The version of the tables that is known here.
pub fn known_version() -> i64 {
    MIGRATIONS.len() as i64
}

/// What the integrity check and the check of links say: "ok", or what was found first.
pub(crate) fn integrity(connection: &Connection) -> rusqlite::Result<String> {
    let said: String = connection.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))?;
    if said != "ok" {
        return Ok(said);
    }
    let mut links = connection.prepare("PRAGMA foreign_key_check")?;
    let mut rows = links.query([])?;
    match rows.next()? {
        Some(row) => Ok(format!(
            "{} points to an entry that is gone",
            row.get::<_, String>(0)?
        )),
        None => Ok(said),
    }
}

/// Brings a connection to the newest version of the tables.
pub(crate) fn migrated(connection: &mut Connection) -> Result<(), LogError> {
    // The mark is set first: a process killed in between leaves a log, not a stranger's file.
    connection.pragma_update(None, "application_id", APPLICATION)?;
    let migrations = Migrations::from_slice(MIGRATIONS);
    match migrations.to_latest(connection) {
        Ok(()) => Ok(()),
        // Another process was quicker: what counts is where the file stands now.
        Err(_) if version(connection)? == known_version() => Ok(()),
        Err(error) => Err(LogError::Migration(Box::new(error))),
    }
}

fn open_to_write(path: &Path) -> rusqlite::Result<Result<Log, LogError>> {
    let mut connection = Connection::open(path)?;
    connection.busy_timeout(PATIENCE)?;
    let found = version(&connection)?;
    if found > known_version() {
        drop(connection);
        return read_only(path).map(Ok);
    }
    if found == 0 && is_foreign(&connection)? {
        let path = path.to_owned();
        return Ok(Err(LogError::Foreign { path }));
    }
    connection.pragma_update(None, "journal_mode", "WAL")?;
    connection.pragma_update(None, "synchronous", "FULL")?;
    connection.pragma_update(None, "foreign_keys", true)?;
    if found < known_version()
        && let Err(error) = migrated(&mut connection)
    {
        return Ok(Err(error));
    }
    Ok(Ok(Log {
        connection,
        path: path.to_owned(),
        newer: None,
    }))
}

fn read_only(path: &Path) -> rusqlite::Result<Log> {
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let connection = Connection::open_with_flags(path, flags)?;
    connection.busy_timeout(PATIENCE)?;
    let found = version(&connection)?;
    Ok(Log {
        connection,
        path: path.to_owned(),
        newer: (found > known_version()).then_some(found),
    })
}

fn version(connection: &Connection) -> rusqlite::Result<i64> {
    connection.query_row("PRAGMA user_version", [], |row| row.get(0))
}

/// A database with tables that no migration of ours has made.
fn is_foreign(connection: &Connection) -> rusqlite::Result<bool> {
    let tables: i64 =
        connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))?;
    let mark: i64 = connection.query_row("PRAGMA application_id", [], |row| row.get(0))?;
    Ok(tables > 0 && mark != APPLICATION)
}

fn told(path: &Path, error: rusqlite::Error) -> LogError {
    match is_damage(&error) {
        true => LogError::Damaged {
            path: path.to_owned(),
            words: error.to_string(),
        },
        false => error.into(),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

    use crate::entry::Fresh;
    use crate::error::LogError;
    use crate::log::Log;
    use crate::table::melt::HEATS;
    use crate::value::Value;

    #[test]
    fn a_full_disk_loses_the_entry_and_nothing_else() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("log.sqlite");
        let mut log = Log::open(&path).expect("opens");
        log.connection
            .pragma_update(None, "max_page_count", 90)
            .expect("set");
        let long = || Fresh::of(&HEATS).with("note", Value::Text("x".repeat(3000)));
        let mut confirmed = 0;
        let error = loop {
            match log.add(&[long(), long()]) {
                Ok(_) => confirmed += 2,
                Err(error) => break error,
            }
        };
        assert!(matches!(error, LogError::Full), "{error}");
        assert!(confirmed > 4);
        drop(log);
        let mut log = Log::open(&path).expect("opens again");
        log.check().expect("sound");
        assert_eq!(log.last(&HEATS, 999).expect("listed").len(), confirmed);
        log.add(&[long()]).expect("with room it goes on");
    }
}
