//! A job's file on the disk, or the shop's, with one thing in it changed, if it still is one then.

use std::path::Path;

use thiserror::Error;

use crate::changed::{ChangeError, Typed, changed, typed};
use crate::folder::{
    FolderError, JOB_FILE, Noted, STARTER_SHOP, noted_of, read_text, shop_of, write_whole,
};
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

/// Changes what a job says under a key from what it `was` when it was looked at; gives the job as
/// it is then, for whoever goes on from it.
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
) -> Result<Rewritten, RewriteError> {
    let file = folder.join(JOB_FILE);
    let text = read_text(&file, "the job is gone from here")?;
    let is_job = |new: &str| noted_of(&file, new);
    match with_change(&text, key, was, to)? {
        None => Ok(Rewritten {
            noted: is_job(&text)?,
            text,
        }),
        Some(new) => {
            let noted = is_job(&new)?;
            write_whole(&file, new.as_bytes())?;
            Ok(Rewritten { noted, text: new })
        }
    }
}

/// A job's file after a change, and what it says.
#[derive(Debug)]
pub struct Rewritten {
    /// Its text.
    pub text: String,
    /// What it says, its mesh not yet looked at.
    pub noted: Noted,
}

/// As [`rewrite`], of the file of a shop; where there is none yet, the starter is changed and
/// written there.
///
/// # Errors
///
/// What stands in the way, with the file as it was.
pub fn rewrite_shop(
    file: &Path,
    key: &TypedKey,
    was: Option<&Typed>,
    to: Option<&Typed>,
) -> Result<(), RewriteError> {
    let text = shop_text(file)?;
    if let Some(new) = with_change(&text, key, was, to)? {
        shop_of(file, &new)?;
        write_whole(file, new.as_bytes())?;
    }
    Ok(())
}

/// The text of a shop's file, or the starter where there is none.
///
/// # Errors
///
/// A file that cannot be read.
pub fn shop_text(file: &Path) -> Result<String, FolderError> {
    match file.exists() {
        true => read_text(file, ""),
        false => Ok(STARTER_SHOP.to_owned()),
    }
}

/// A text with a change in it; nothing where it says so already.
fn with_change(
    text: &str,
    key: &TypedKey,
    was: Option<&Typed>,
    to: Option<&Typed>,
) -> Result<Option<String>, RewriteError> {
    let now = typed(text, key)?;
    if now.as_ref() == to {
        return Ok(None);
    }
    if now.as_ref() != was {
        return Err(RewriteError::Meanwhile { now });
    }
    Ok(Some(changed(text, key, to)?))
}
