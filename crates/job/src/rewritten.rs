//! A job's file on the disk with one thing in it changed, if it still is a job then.

use std::path::Path;

use thiserror::Error;

use crate::changed::{ChangeError, Typed, changed, typed};
use crate::folder::{FolderError, JOB_FILE, noted_of, read_text, write_whole};
use crate::typed_key::TypedKey;

/// Why a file is left as it is.
#[derive(Debug, Error)]
pub enum RewriteError {
    /// It cannot be read or written, or would be no job any more.
    #[error(transparent)]
    Folder(#[from] FolderError),
    /// It cannot be changed there.
    #[error(transparent)]
    Change(#[from] ChangeError),
    /// The same thing was changed by somebody else.
    #[error("this was changed meanwhile")]
    Meanwhile {
        /// What stands there now.
        now: Option<Typed>,
    },
}

/// Changes what a job says under a key from what it `was` when it was looked at.
///
/// Whoever else has changed something else in the file meanwhile loses nothing: the file is read
/// anew, and only this key is written. The file is as it was, or wholly changed.
///
/// # Errors
///
/// What stands in the way, with the file as it was.
pub fn rewrite(
    folder: &Path,
    key: &TypedKey,
    was: Option<&Typed>,
    to: Option<&Typed>,
) -> Result<(), RewriteError> {
    let file = folder.join(JOB_FILE);
    let text = read_text(&file, "the job is gone from here")?;
    let now = typed(&text, key)?;
    if now.as_ref() == to {
        return Ok(());
    }
    if now.as_ref() != was {
        return Err(RewriteError::Meanwhile { now });
    }
    let new = changed(&text, key, to)?;
    noted_of(&file, &new)?;
    write_whole(&file, new.as_bytes())?;
    Ok(())
}
