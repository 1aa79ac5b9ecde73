//! Runs of a freezing under way, kept in the folder of its files so that it can go on later.
//!
//! One file a run, `run-1.kept` and so on. What is kept is taken up for the very same mould, cells
//! and heat only, whatever has become of the job meanwhile; the rest is passed over.

use std::path::{Path, PathBuf};

use pour::solved::{Kept, Standing};

use crate::folder::{FolderError, forget, read_bytes, write_whole};

/// Most runs of one freezing.
const RUNS: usize = 9;

/// Largest file of a run that is read: the most cells that may be asked for take less.
const MOST_BYTES: u64 = 4 << 30;

/// What is kept in a folder; a file that is cut off, or of another version, is passed over.
///
/// # Errors
///
/// A file that the disk does not give.
pub fn kept_runs(folder: &Path) -> Result<Vec<Kept>, FolderError> {
    let mut kept = Vec::new();
    for path in (1..=RUNS).map(|number| file(folder, number)) {
        match read_bytes(&path, MOST_BYTES, "") {
            Ok(bytes) => kept.extend(Kept::read_from(&mut bytes.as_slice()).ok()),
            Err(FolderError::NotThere { .. }) => {}
            Err(error) => return Err(error),
        }
    }
    Ok(kept)
}

/// Keeps a run as it stands.
///
/// # Errors
///
/// A disk that is full or says no.
pub fn keep_run(folder: &Path, number: usize, run: &Standing<'_>) -> Result<(), FolderError> {
    let mut bytes = Vec::new();
    // A list in memory takes all that is written to it.
    let _ = run.keep().write_to(&mut bytes);
    write_whole(&file(folder, number), &bytes)
}

/// Takes away what was kept: the freezing is through.
///
/// # Errors
///
/// A file that the disk does not let go.
pub fn forget_runs(folder: &Path) -> Result<(), FolderError> {
    (1..=RUNS).try_for_each(|number| forget(&file(folder, number)))
}

fn file(folder: &Path, number: usize) -> PathBuf {
    folder.join(format!("run-{number}.kept"))
}
