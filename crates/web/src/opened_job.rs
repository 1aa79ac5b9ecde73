//! A job as it was opened, with what was made of it since.

use std::fs;
use std::ops::Deref;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use std::time::SystemTime;

use axum::body::Bytes;
use job::folder::Opened;
use job::freezing::FREEZE_FOLDER;
use job::solved_kept::FINDINGS_FILE;
use pattern::unit::Unit;

/// A job as it was opened, and what it was opened from.
#[derive(Debug)]
pub struct OpenedJob {
    /// The text of its file.
    pub text: String,
    /// The shop that it stands in, in full.
    pub shop_text: String,
    /// The file of its mesh, where it has one.
    pub mesh: Option<FileAt>,
    /// The fingerprint of its skin; nought where it has none.
    pub skin: u64,
    opened: Opened,
    sheet: Mutex<Option<Sent>>,
}

/// A file, and what changes whenever it has to be read again.
#[derive(Clone, Debug, PartialEq)]
pub struct FileAt {
    /// Where it is.
    pub path: PathBuf,
    /// The unit in which it is read, where it has one.
    pub unit: Option<Unit>,
    bytes: u64,
    written: Option<SystemTime>,
}

/// A sheet as it was sent, and the findings of a freezing that stood beside it.
#[derive(Clone, Debug)]
struct Sent {
    findings: FileAt,
    bytes: Bytes,
}

impl OpenedJob {
    /// A job that has just been opened.
    pub fn new(
        opened: Opened,
        (text, shop_text): (String, String),
        mesh: Option<FileAt>,
        skin: u64,
    ) -> OpenedJob {
        OpenedJob {
            text,
            shop_text,
            mesh,
            skin,
            opened,
            sheet: Mutex::default(),
        }
    }

    /// Whether it is still what its files say.
    pub fn is_as_it_was(&self, text: &str, shop_text: &str) -> bool {
        self.text == text
            && self.shop_text == shop_text
            && self.mesh.as_ref().is_none_or(FileAt::is_as_it_was)
    }

    /// Its sheet as it is sent: as it was made, or made now. Who asks for it meanwhile waits.
    ///
    /// # Errors
    ///
    /// That of the work.
    pub fn sheet<E>(
        &self,
        work: impl FnOnce(&OpenedJob) -> Result<Vec<u8>, E>,
    ) -> Result<Bytes, E> {
        let mut sheet = self.sheet.lock().unwrap_or_else(PoisonError::into_inner);
        // Looked at before the findings are read: what is written meanwhile is read once more.
        let findings = findings_of(&self.opened.folder);
        if let Some(sent) = sheet.as_ref().filter(|sent| sent.findings == findings) {
            return Ok(sent.bytes.clone());
        }
        let bytes = Bytes::from(work(self)?);
        *sheet = Some(Sent {
            findings,
            bytes: bytes.clone(),
        });
        Ok(bytes)
    }
}

impl Deref for OpenedJob {
    type Target = Opened;

    fn deref(&self) -> &Opened {
        &self.opened
    }
}

impl FileAt {
    /// A file as it is now.
    pub fn now(path: PathBuf, unit: Option<Unit>) -> FileAt {
        let facts = fs::metadata(&path).ok();
        FileAt {
            bytes: facts.as_ref().map_or(0, fs::Metadata::len),
            written: facts.and_then(|facts| facts.modified().ok()),
            path,
            unit,
        }
    }

    fn is_as_it_was(&self) -> bool {
        *self == FileAt::now(self.path.clone(), self.unit)
    }
}

fn findings_of(folder: &Path) -> FileAt {
    FileAt::now(folder.join(FREEZE_FOLDER).join(FINDINGS_FILE), None)
}
