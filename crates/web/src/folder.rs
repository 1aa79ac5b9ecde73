//! The shop's folder: which jobs lie in it, and their meshes as looked at last.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Component, Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::SystemTime;

use job::draw_maps::{Judged, judged};
use job::fingerprint::{fingerprint, of_mesh};
use job::folder::{FolderError, JOB_FILE, Noted, Opened, look_at, noted_of, read_text, shop_above};
use job::mould_solids::{NoMould, mould_of};
use job::part::Part;
use job::placed_part::PlacedPart;
use job::plan::Plan;
use job::rewritten::Rewritten;
use job::work_out::{placed, work_out_placed};
use pattern::draw::maps::MapsError;
use pattern::look::Looked;
use pattern::unit::Unit;
use rigging::mould::Mould;

use crate::kept::Kept;
use crate::runs::Runs;

/// A folder that is served.
#[derive(Debug)]
pub struct ShopFolder {
    root: PathBuf,
    opening: Mutex<()>,
    opened: Mutex<BTreeMap<PathBuf, OpenedAt>>,
    looked: Mutex<BTreeMap<PathBuf, (MeshAt, Looked)>>,
    writing: Mutex<()>,
    placed: Kept<PlacedPart>,
    plans: Kept<Plan>,
    moulds: Kept<Result<Mould, NoMould>>,
    skins: Kept<Result<Judged, MapsError>>,
    /// Longer work.
    pub runs: Arc<Runs>,
}

/// A job as it was opened, and what it was opened from.
#[derive(Clone, Debug)]
struct OpenedAt {
    text: String,
    shop: String,
    mesh: Option<MeshAt>,
    opened: Arc<Opened>,
}

/// A mesh file, and what changes whenever it has to be looked at again.
#[derive(Clone, Debug, PartialEq)]
struct MeshAt {
    path: PathBuf,
    bytes: u64,
    written: Option<SystemTime>,
    unit: Option<Unit>,
}

/// Most jobs and meshes kept in memory: a founder has one or two jobs open.
const MOST_KEPT: usize = 8;

/// Most plans kept: some steps of undo and redo, in a few jobs.
const MOST_PLANS: usize = 32;

/// Most moulds kept: each is some tens of megabytes.
const MOST_MOULDS: usize = 2;

/// How deep job folders are looked for: a shop sorts them by year and customer at most.
const DEPTH: usize = 3;

/// Most jobs that are listed: beyond that a list is no list, and a disk is being walked.
const MOST_JOBS: usize = 2_000;

impl ShopFolder {
    /// The folder at a path; nothing where there is none.
    pub fn at(path: &Path) -> Option<ShopFolder> {
        let root = fs::canonicalize(path).ok().filter(|root| root.is_dir())?;
        Some(ShopFolder {
            root,
            opening: Mutex::default(),
            opened: Mutex::default(),
            looked: Mutex::default(),
            writing: Mutex::default(),
            placed: Kept::at_most(MOST_KEPT),
            plans: Kept::at_most(MOST_PLANS),
            moulds: Kept::at_most(MOST_MOULDS),
            skins: Kept::at_most(MOST_MOULDS),
            runs: Arc::default(),
        })
    }

    /// The folder itself.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The jobs by the way to them from here, in the order of their names.
    pub fn jobs(&self) -> Vec<String> {
        let mut found = Vec::new();
        gather(&self.root, &self.root, DEPTH, &mut found);
        found.sort();
        found
    }

    /// The folder of a job by that way; nothing for a way that leads anywhere else.
    pub fn job(&self, name: &str) -> Option<PathBuf> {
        let steps = Path::new(name).components();
        let is_plain = |step| matches!(step, Component::Normal(_));
        if name.is_empty() || !steps.clone().all(is_plain) || steps.count() > DEPTH {
            return None;
        }
        let folder = fs::canonicalize(self.root.join(name)).ok()?;
        let is_within = folder.starts_with(&self.root);
        (is_within && folder.join(JOB_FILE).is_file()).then_some(folder)
    }

    /// Held while a file is read, changed and written, so that no change is lost.
    pub fn writing(&self) -> MutexGuard<'_, ()> {
        locked(&self.writing)
    }

    /// Opens a job; nothing of it is read or built again that has not changed.
    ///
    /// # Errors
    ///
    /// As [`job::folder::open`].
    pub fn open(&self, folder: &Path) -> Result<Arc<Opened>, FolderError> {
        let file = folder.join(JOB_FILE);
        let text = read_text(&file, "the job is gone from here")?;
        let shop = format!("{:?}", shop_above(folder)?.0);
        if let Some(known) = self.known(folder, &text, &shop) {
            return Ok(known);
        }
        // Whoever asks for the same meanwhile waits here, and finds it open.
        let _opening = locked(&self.opening);
        if let Some(known) = self.known(folder, &text, &shop) {
            return Ok(known);
        }
        let noted = noted_of(&file, &text)?;
        self.keep_opened(folder, text, shop, noted)
    }

    /// Opens a job that has just been changed, from what was read of it then: what a change builds
    /// it builds once.
    ///
    /// # Errors
    ///
    /// As [`job::folder::open`].
    pub fn open_changed(&self, folder: &Path, changed: Rewritten) -> Result<(), FolderError> {
        let shop = format!("{:?}", shop_above(folder)?.0);
        let _opening = locked(&self.opening);
        if self.known(folder, &changed.text, &shop).is_none() {
            self.keep_opened(folder, changed.text, shop, changed.noted)?;
        }
        Ok(())
    }

    /// A job that was read, with its part looked at; kept nowhere.
    ///
    /// # Errors
    ///
    /// As [`job::folder::open`].
    pub fn look_on(&self, noted: Noted) -> Result<Opened, FolderError> {
        let mesh = noted.mesh().map(|(path, unit)| MeshAt::now(path, unit));
        let looked = mesh.as_ref().map(|mesh| self.look(mesh)).transpose()?;
        noted.with_looked(looked)
    }

    fn keep_opened(
        &self,
        folder: &Path,
        text: String,
        shop: String,
        noted: Noted,
    ) -> Result<Arc<Opened>, FolderError> {
        let mesh = noted.mesh().map(|(path, unit)| MeshAt::now(path, unit));
        let opened = Arc::new(self.look_on(noted)?);
        let at = OpenedAt {
            text,
            shop,
            mesh,
            opened: Arc::clone(&opened),
        };
        keep(&mut locked(&self.opened), folder.to_owned(), at);
        Ok(opened)
    }

    /// A job as it was opened, if nothing has changed since.
    fn known(&self, folder: &Path, text: &str, shop: &str) -> Option<Arc<Opened>> {
        let all = locked(&self.opened);
        let known = all.get(folder)?;
        let is_same = known.text == text
            && known.shop == shop
            && known.mesh.as_ref().is_none_or(MeshAt::is_as_it_was);
        is_same.then(|| Arc::clone(&known.opened))
    }

    /// A mesh looked at, or as it was looked at before.
    fn look(&self, mesh: &MeshAt) -> Result<Looked, FolderError> {
        if let Some((at, looked)) = locked(&self.looked).get(&mesh.path)
            && at == mesh
        {
            return Ok(looked.clone());
        }
        let looked = look_at(&mesh.path, mesh.unit)?;
        let kept = (mesh.clone(), looked.clone());
        keep(&mut locked(&self.looked), mesh.path.clone(), kept);
        Ok(looked)
    }

    /// The plan of a job whose mesh is settled.
    pub fn plan(&self, opened: &Opened) -> Arc<Plan> {
        let print = fingerprint(&opened.job, &opened.shop, &opened.part);
        // The two that a mould does not depend on, and a sheet does.
        let key = format!("{print} {:?} {:?}", opened.job.date, opened.job.name);
        self.plans.of(key, || {
            let placed = self.placed(opened);
            work_out_placed(&opened.job, &opened.shop, &opened.part, &placed)
        })
    }

    /// The part of a job in the mould. A change of metal or flask leaves it where it lay.
    fn placed(&self, opened: &Opened) -> Arc<PlacedPart> {
        let (job, part) = (&opened.job, &opened.part);
        let solids = match part {
            Part::Mesh(_) => 0,
            Part::Solids(built) => built.shapes.len(),
            Part::Rough(_) => return Arc::new(placed(job, part)),
        };
        let skin = part.looked().map_or(0, |looked| of_mesh(&looked.mesh));
        let key = format!("{skin:016x} {solids} {:?} {:?}", job.up, job.joint);
        self.placed.of(key, || placed(job, part))
    }

    /// The skin of the part of a job judged along its draw, or why it is not; nothing for a part of
    /// sizes only.
    pub fn skin(&self, opened: &Opened) -> Option<Arc<Result<Judged, MapsError>>> {
        let (job, looked) = (&opened.job, opened.part.looked()?);
        let skin = of_mesh(&looked.mesh);
        let making = job.making.skin;
        let key = format!(
            "{skin:016x} {:?} {:?} {making:?} {}",
            job.up, job.joint, job.alloy.name
        );
        Some(self.skins.of(key, || judged(job, &looked.mesh)))
    }

    /// The mould of a job as solids, or why there is none.
    pub fn mould(&self, opened: &Opened) -> Arc<Result<Mould, NoMould>> {
        let key = fingerprint(&opened.job, &opened.shop, &opened.part);
        self.moulds
            .of(key, || mould_of(&opened.job, &opened.shop, &opened.part))
    }
}

impl MeshAt {
    fn now(path: PathBuf, unit: Option<Unit>) -> MeshAt {
        let facts = fs::metadata(&path).ok();
        MeshAt {
            bytes: facts.as_ref().map_or(0, fs::Metadata::len),
            written: facts.and_then(|facts| facts.modified().ok()),
            path,
            unit,
        }
    }

    fn is_as_it_was(&self) -> bool {
        *self == MeshAt::now(self.path.clone(), self.unit)
    }
}

fn locked<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Keeps one more, and forgets all others where there are too many.
fn keep<T>(kept: &mut BTreeMap<PathBuf, T>, key: PathBuf, one: T) {
    if kept.len() >= MOST_KEPT && !kept.contains_key(&key) {
        kept.clear();
    }
    kept.insert(key, one);
}

/// Adds the jobs below a folder; hidden folders and links are left alone.
fn gather(root: &Path, folder: &Path, depth: usize, found: &mut Vec<String>) {
    if folder.join(JOB_FILE).is_file() && folder != root {
        let way = folder.strip_prefix(root).map(|way| way.to_string_lossy());
        found.extend(way.map(|way| way.replace('\\', "/")));
        return;
    }
    if depth == 0 || found.len() >= MOST_JOBS {
        return;
    }
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let is_folder = entry.file_type().is_ok_and(|kind| kind.is_dir());
        let is_hidden = entry.file_name().to_string_lossy().starts_with('.');
        if is_folder && !is_hidden {
            gather(root, &entry.path(), depth - 1, found);
        }
    }
}
