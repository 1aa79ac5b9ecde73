//! A copy of the log while it is in use, looked over before it counts.

use std::fs;
use std::path::Path;
use std::time::Duration;

use rusqlite::Connection;
use rusqlite::backup::Backup;

use crate::error::LogError;
use crate::log::{Log, integrity};

/// Pages copied at a stretch; between two stretches others may write.
const PAGES: i32 = 512;

/// Copies the log into a file that is not there yet; others may go on writing. The copy is checked
/// page by page and counted against the log before it gets its name.
///
/// # Errors
///
/// A file in the way, a disk that says no, a copy that fails its check.
pub fn backup(log: &Log, to: &Path) -> Result<u64, LogError> {
    if to.exists() {
        return Err(LogError::InTheWay {
            path: to.to_owned(),
        });
    }
    let mut beside = to.as_os_str().to_owned();
    beside.push(".part");
    let beside = Path::new(&beside);
    let copied = copied(log, beside).and_then(|()| checked(beside, to));
    if copied.is_err() {
        // What failed is of no use; that it may not go is no second error.
        let _ = fs::remove_file(beside);
    }
    copied?;
    let disk = |error| LogError::Disk {
        path: to.to_owned(),
        error,
    };
    fs::File::open(beside)
        .and_then(|file| file.sync_all())
        .map_err(disk)?;
    fs::rename(beside, to).map_err(disk)?;
    Ok(fs::metadata(to).map_err(disk)?.len())
}

fn copied(log: &Log, to: &Path) -> Result<(), LogError> {
    let mut target = Connection::open(to)?;
    {
        let copy = Backup::new(&log.connection, &mut target)?;
        copy.run_to_completion(PAGES, Duration::from_millis(2), None)?;
    }
    // One file, without a second one beside it.
    target.pragma_update(None, "journal_mode", "DELETE")?;
    Ok(())
}

fn checked(copy: &Path, named: &Path) -> Result<(), LogError> {
    let said = integrity(&Connection::open(copy)?)?;
    match said == "ok" {
        true => Ok(()),
        false => Err(LogError::BadBackup {
            path: named.to_owned(),
            words: said,
        }),
    }
}
