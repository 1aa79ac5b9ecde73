//! The job folder: the only place here that touches the disk.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use pattern::look::{Looked, look};
use pattern::read::{MOST_BYTES, ReadError};
use pattern::unit::Unit;
use thiserror::Error;

use crate::file_fault::{FileFault, read};
use crate::given_part::{GivenPart, PartFault, given_part};
use crate::job::{Job, JobError, mesh_unit};
use crate::job_file::JobFile;
use crate::part::Part;
use crate::shop::{Shop, ShopFile};

/// Name of the job's file.
pub const JOB_FILE: &str = "job.toml";
/// Name of the shop's file.
pub const SHOP_FILE: &str = "shop.toml";

/// The commented job that a new folder starts with.
pub const STARTER_JOB: &str = include_str!("../data/job.toml");
/// The commented shop that a new folder starts with.
pub const STARTER_SHOP: &str = include_str!("../data/shop.toml");

/// A job opened: what is meant, where, and its part looked at.
#[derive(Debug)]
pub struct Opened {
    /// The job.
    pub job: Job,
    /// The shop.
    pub shop: Shop,
    /// The shop's file, or nothing where the starter was taken.
    pub shop_file: Option<PathBuf>,
    /// The folder of the job.
    pub folder: PathBuf,
    /// The part.
    pub part: Part,
}

/// A job read, its part not yet looked at.
#[derive(Debug)]
pub struct Noted {
    /// The job.
    pub job: Job,
    /// The shop.
    pub shop: Shop,
    /// The shop's file, or nothing where the starter was taken.
    pub shop_file: Option<PathBuf>,
    /// The folder of the job.
    pub folder: PathBuf,
    given: GivenPart,
    unit: Option<Unit>,
}

/// Why a job cannot be opened or written.
#[derive(Debug, Error)]
pub enum FolderError {
    /// The disk says no.
    #[error("{path}: {error}")]
    Disk {
        /// The file or folder.
        path: PathBuf,
        /// What the system says.
        error: io::Error,
    },
    /// A file is not there.
    #[error("{path} is not there; {advice}")]
    NotThere {
        /// The file.
        path: PathBuf,
        /// What to do.
        advice: String,
    },
    /// A file larger than is read.
    #[error("{path} has {bytes} bytes, more than the {most} that are read")]
    TooLarge {
        /// The file.
        path: PathBuf,
        /// Its size.
        bytes: u64,
        /// The limit.
        most: u64,
    },
    /// A file that has to be text and is not.
    #[error("{path} is not text in UTF-8; save it as UTF-8 and try again")]
    NotText {
        /// The file.
        path: PathBuf,
    },
    /// Findings of a freezing that are none.
    #[error(
        "{path} holds no findings of a freezing ({error}): write them anew with oddside freeze"
    )]
    NoFindings {
        /// The file.
        path: PathBuf,
        /// What is wrong.
        error: serde_json::Error,
    },
    /// Something wrong in a file the founder wrote.
    #[error(transparent)]
    File(#[from] Box<FileFault>),
    /// A job that can be read but not meant.
    #[error("{path}: {error}")]
    Job {
        /// The file.
        path: PathBuf,
        /// What is wrong.
        error: JobError,
    },
    /// A shop that can be read but not meant.
    #[error("{path}: {words}")]
    Shop {
        /// The file.
        path: PathBuf,
        /// What is wrong.
        words: String,
    },
    /// A mesh that cannot be read.
    #[error("{path}: {error}")]
    Mesh {
        /// The file.
        path: PathBuf,
        /// What is wrong.
        error: ReadError,
    },
    /// A mesh where a job is wanted.
    #[error(
        "{path} is a mesh, and this takes a job: make one with oddside new DIR, and name the mesh \
         in its job.toml"
    )]
    MeshForJob {
        /// The mesh.
        path: PathBuf,
    },
    /// Something is already there.
    #[error("{path} is already there and is left as it is")]
    InTheWay {
        /// What is there.
        path: PathBuf,
    },
    /// A file that would be written over.
    #[error(
        "{path} is already there and nothing is written; move it away, or write over it with --force"
    )]
    WouldOverwrite {
        /// What is there.
        path: PathBuf,
    },
}

/// Opens a job folder, or the job file in it.
pub fn open(path: &Path) -> Result<Opened, FolderError> {
    noted(path)?.with_part()
}

impl Noted {
    /// The file of its mesh and the unit it is asked for in, where it has one.
    pub fn mesh(&self) -> Option<(PathBuf, Option<Unit>)> {
        match &self.given {
            GivenPart::Mesh(mesh) => Some((self.folder.join(mesh), self.unit)),
            GivenPart::Here(_) => None,
        }
    }

    /// With its mesh as it was looked at before; a part without a mesh needs none.
    pub fn with_looked(self, looked: Option<Looked>) -> Result<Opened, FolderError> {
        match looked {
            Some(looked) => Ok(self.with(Part::Mesh(looked))),
            None => self.with_part(),
        }
    }

    /// Looks at its part too.
    pub fn with_part(self) -> Result<Opened, FolderError> {
        let part = match &self.given {
            GivenPart::Mesh(mesh) => Part::Mesh(look_at(&self.folder.join(mesh), self.unit)?),
            GivenPart::Here(part) => Part::clone(part),
        };
        Ok(self.with(part))
    }

    fn with(self, part: Part) -> Opened {
        Opened {
            part,
            job: self.job,
            shop: self.shop,
            shop_file: self.shop_file,
            folder: self.folder,
        }
    }
}

/// Reads a job folder, or the job file in it, and the shop, and leaves the mesh alone.
pub fn noted(path: &Path) -> Result<Noted, FolderError> {
    if is_mesh(path) {
        return Err(FolderError::MeshForJob {
            path: path.to_owned(),
        });
    }
    let file = if path.is_dir() {
        path.join(JOB_FILE)
    } else {
        path.to_owned()
    };
    noted_of(&file, &read_text(&file, "make one with: oddside new DIR")?)
}

/// What a job file says if its text is this one, and the shop above it.
pub fn noted_of(file: &Path, text: &str) -> Result<Noted, FolderError> {
    let name = file.display().to_string();
    let typed: JobFile = read(&name, text)?;
    let wrong = |error| FolderError::Job {
        path: file.to_owned(),
        error,
    };
    let job = Job::meant(&typed).map_err(wrong)?;
    let unit = typed
        .part
        .get_ref()
        .unit
        .as_ref()
        .map(|unit| mesh_unit(unit.get_ref()))
        .transpose()
        .map_err(wrong)?;
    let given = given_part(&typed).map_err(|fault| in_file(&name, text, fault))?;
    let folder = file.parent().unwrap_or(Path::new(".")).to_owned();
    let (shop, shop_file) = shop_above(&folder)?;
    Ok(Noted {
        job: job.with_own(&shop),
        shop,
        shop_file,
        folder,
        given,
        unit,
    })
}

/// Whether a file is a mesh by the end of its name.
pub fn is_mesh(path: &Path) -> bool {
    let ending = path
        .extension()
        .map(|ending| ending.to_string_lossy().to_lowercase());
    ending.is_some_and(|ending| ["stl", "obj", "ply", "3mf"].contains(&ending.as_str()))
}

/// The shop of a file named by the founder.
pub fn shop_at(file: &Path) -> Result<Shop, FolderError> {
    shop_of(file, &read_text(file, "check the name of the shop's file")?)
}
/// Looks at a mesh file.
pub fn look_at(path: &Path, unit: Option<Unit>) -> Result<Looked, FolderError> {
    let bytes = read_bytes(path, MOST_BYTES as u64, "check the name of the mesh")?;
    let name = path
        .file_name()
        .map_or_else(String::new, |name| name.to_string_lossy().into_owned());
    look(&name, &bytes, unit).map_err(|error| FolderError::Mesh {
        path: path.to_owned(),
        error,
    })
}

/// The shop file nearest above a folder, or the starter shop.
pub fn shop_above(folder: &Path) -> Result<(Shop, Option<PathBuf>), FolderError> {
    let whole = fs::canonicalize(folder).unwrap_or_else(|_| folder.to_owned());
    for above in whole.ancestors() {
        let file = above.join(SHOP_FILE);
        if file.is_file() {
            let text = read_text(&file, "")?;
            return Ok((shop_of(&file, &text)?, Some(file)));
        }
    }
    Ok((
        shop_of(Path::new("the starter shop.toml"), STARTER_SHOP)?,
        None,
    ))
}

/// Makes a folder that is not there yet.
///
/// # Errors
///
/// [`FolderError::InTheWay`] where something of this name is there.
pub fn make_new(folder: &Path) -> Result<(), FolderError> {
    fs::create_dir(folder).map_err(|error| match error.kind() {
        io::ErrorKind::AlreadyExists => FolderError::InTheWay {
            path: folder.to_owned(),
        },
        _ => disk(folder, error),
    })
}

/// Writes a new job folder; gives the files written.
pub fn new(folder: &Path) -> Result<Vec<PathBuf>, FolderError> {
    let job = folder.join(JOB_FILE);
    if job.exists() {
        return Err(FolderError::InTheWay { path: job });
    }
    fs::create_dir_all(folder).map_err(|error| disk(folder, error))?;
    let mut written = vec![job];
    write_whole(&written[0], STARTER_JOB.as_bytes())?;
    if shop_above(folder)?.1.is_none() {
        let shop = folder.join(SHOP_FILE);
        write_whole(&shop, STARTER_SHOP.as_bytes())?;
        written.push(shop);
    }
    Ok(written)
}

/// Writes a file as a whole or not at all: beside its place first, then moved there.
pub fn write_whole(path: &Path, bytes: &[u8]) -> Result<(), FolderError> {
    if let Some(folder) = path
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty())
    {
        fs::create_dir_all(folder).map_err(|error| disk(folder, error))?;
    }
    let mut beside = path.as_os_str().to_owned();
    beside.push(".part");
    let beside = PathBuf::from(beside);
    let written = fs::File::create(&beside)
        .and_then(|mut file| file.write_all(bytes).and_then(|()| file.sync_all()))
        .and_then(|()| fs::rename(&beside, path));
    written.map_err(|error| {
        // The half-written file is of no use to anybody; that it may not go is no second error.
        let _ = fs::remove_file(&beside);
        disk(path, error)
    })
}

/// Writes several files into a folder, none of them unless all may be written: one that is there
/// already is only written over by force. Gives the files written.
pub fn write_all_new(
    folder: &Path,
    files: &[(String, Vec<u8>)],
    force: bool,
) -> Result<Vec<PathBuf>, FolderError> {
    let paths: Vec<PathBuf> = files.iter().map(|(name, _)| folder.join(name)).collect();
    nothing_in_the_way(&paths, force)?;
    for (path, (_, bytes)) in paths.iter().zip(files) {
        write_whole(path, bytes)?;
    }
    Ok(paths)
}

/// Refuses to write over files that are there, unless by force: asked before work that takes long.
pub fn nothing_in_the_way(paths: &[PathBuf], force: bool) -> Result<(), FolderError> {
    match paths.iter().find(|path| !force && path.exists()) {
        Some(path) => Err(FolderError::WouldOverwrite { path: path.clone() }),
        None => Ok(()),
    }
}

/// Takes a file away; one that is not there is no error.
pub fn forget(path: &Path) -> Result<(), FolderError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(disk(path, error)),
        _ => Ok(()),
    }
}

fn in_file(name: &str, text: &str, fault: PartFault) -> Box<FileFault> {
    let (message, hint) = (fault.to_string(), fault.error.hint());
    Box::new(FileFault::at(name, text, fault.span, message, hint))
}

/// What a shop's file says if its text is this one.
pub fn shop_of(path: &Path, text: &str) -> Result<Shop, FolderError> {
    let typed: ShopFile = read(&path.display().to_string(), text)?;
    typed.meant().map_err(|words| FolderError::Shop {
        path: path.to_owned(),
        words,
    })
}

/// Largest job or shop file: a hundred thousand lines nobody types.
const MOST_TEXT: u64 = 4 << 20;

/// Reads a text file of the founder's; `advice` is told where it is not there.
pub fn read_text(path: &Path, advice: &str) -> Result<String, FolderError> {
    let bytes = read_bytes(path, MOST_TEXT, advice)?;
    let text = String::from_utf8(bytes).map_err(|_| FolderError::NotText {
        path: path.to_owned(),
    })?;
    Ok(text
        .strip_prefix('\u{feff}')
        .map_or(text.clone(), str::to_owned))
}

/// Reads a file of no more than so many bytes; `advice` is told where it is not there.
pub fn read_bytes(path: &Path, most: u64, advice: &str) -> Result<Vec<u8>, FolderError> {
    let facts = fs::metadata(path).map_err(|error| match error.kind() {
        io::ErrorKind::NotFound => FolderError::NotThere {
            path: path.to_owned(),
            advice: advice.to_owned(),
        },
        _ => disk(path, error),
    })?;
    if !facts.is_file() {
        return Err(disk(
            path,
            io::Error::new(io::ErrorKind::InvalidInput, "not a file"),
        ));
    }
    if facts.len() > most {
        return Err(FolderError::TooLarge {
            path: path.to_owned(),
            bytes: facts.len(),
            most,
        });
    }
    fs::read(path).map_err(|error| disk(path, error))
}

fn disk(path: &Path, error: io::Error) -> FolderError {
    FolderError::Disk {
        path: path.to_owned(),
        error,
    }
}
