//! The place for what belongs to the phones of a shop: a hidden folder beside the shop's file that
//! nobody but its owner may read. The page serves nothing from it.

use std::fs;
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

use job::folder::shop_above;

use crate::lan::LanError;

/// Name of the folder.
const FOLDER: &str = ".oddside";

/// Keeps it out of a shop's own history of versions: keys are not to travel.
const IGNORED: (&str, &[u8]) = (".gitignore", b"*\n");

/// The folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    folder: PathBuf,
}

impl Place {
    /// That of the shop in which a folder lies; made where it is not there yet.
    ///
    /// # Errors
    ///
    /// A shop's file that cannot be read, a disk that says no.
    pub fn of(folder: &Path) -> Result<Place, LanError> {
        let place = Place {
            folder: beside(folder)?,
        };
        if !place.folder.is_dir() {
            made(&place.folder)?;
            place.write(IGNORED.0, IGNORED.1)?;
        }
        Ok(place)
    }

    /// That of the shop, where there is one yet.
    ///
    /// # Errors
    ///
    /// As [`Place::of`].
    pub fn there(folder: &Path) -> Result<Option<Place>, LanError> {
        let folder = beside(folder)?;
        Ok(folder.is_dir().then_some(Place { folder }))
    }

    /// Where a file of it lies.
    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.join(name)
    }

    /// What stands in a file; nothing where there is none.
    ///
    /// # Errors
    ///
    /// A disk that says no.
    pub fn read(&self, name: &str) -> Result<Option<String>, LanError> {
        let path = self.path(name);
        match fs::read_to_string(&path) {
            Ok(text) => Ok(Some(text)),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(None),
            Err(error) => Err(LanError::Disk { path, error }),
        }
    }

    /// Writes a file for its owner alone, as a whole or not at all.
    ///
    /// # Errors
    ///
    /// A disk that says no.
    pub fn write(&self, name: &str, bytes: &[u8]) -> Result<(), LanError> {
        let path = self.path(name);
        if let Some(folder) = path.parent().filter(|folder| !folder.is_dir()) {
            made(folder)?;
        }
        let mut beside = path.as_os_str().to_owned();
        beside.push(".part");
        let beside = PathBuf::from(beside);
        let written = own(&beside)
            .and_then(|mut file| file.write_all(bytes).and_then(|()| file.sync_all()))
            .and_then(|()| fs::rename(&beside, &path));
        written.map_err(|error| {
            // A half-written file is of no use; that it may not go is no second error.
            let _ = fs::remove_file(&beside);
            LanError::Disk { path, error }
        })
    }

    /// Takes a file away; one that is not there is gone already.
    ///
    /// # Errors
    ///
    /// A disk that says no.
    pub fn forget(&self, name: &str) -> Result<(), LanError> {
        let path = self.path(name);
        match fs::remove_file(&path) {
            Err(error) if error.kind() != ErrorKind::NotFound => {
                Err(LanError::Disk { path, error })
            }
            _ => Ok(()),
        }
    }

    /// The names of the files in a folder of it, in order.
    ///
    /// # Errors
    ///
    /// A disk that says no.
    pub fn files(&self, below: &str) -> Result<Vec<String>, LanError> {
        let path = self.path(below);
        let entries = match fs::read_dir(&path) {
            Ok(entries) => entries,
            Err(error) if error.kind() == ErrorKind::NotFound => return Ok(Vec::new()),
            Err(error) => return Err(LanError::Disk { path, error }),
        };
        let names = entries
            .flatten()
            .map(|entry| entry.file_name().to_string_lossy().into_owned());
        let mut names: Vec<String> = names.collect();
        names.sort();
        Ok(names)
    }
}

/// Beside the shop's file, as the log is; without one in the folder itself.
fn beside(folder: &Path) -> Result<PathBuf, LanError> {
    let shop = shop_above(folder)?.1;
    let shop = shop.as_deref().and_then(Path::parent).unwrap_or(folder);
    Ok(shop.join(FOLDER))
}

fn made(folder: &Path) -> Result<(), LanError> {
    let mut builder = fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder).map_err(|error| LanError::Disk {
        path: folder.to_owned(),
        error,
    })
}

/// A new file that its owner alone may read.
fn own(path: &Path) -> std::io::Result<fs::File> {
    // One left over from a program that was killed may have other rights.
    let _ = fs::remove_file(path);
    let mut options = fs::OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(path)
}
