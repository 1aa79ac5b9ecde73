//! The shop's folder: which jobs lie in it, and their meshes as looked at last.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Component, Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::SystemTime;

use job::fingerprint::fingerprint;
use job::folder::{FolderError, JOB_FILE, Opened, look_at, noted};
use job::mould_solids::{NoMould, mould_of};
use job::plan::Plan;
use job::work_out::work_out;
use pattern::look::Looked;
use pattern::unit::Unit;
use rigging::mould::Mould;

use crate::kept::Kept;

/// A folder that is served.
#[derive(Debug)]
pub struct ShopFolder {
    root: PathBuf,
    looked: Mutex<BTreeMap<PathBuf, LookedAt>>,
    writing: Mutex<()>,
    plans: Kept<Plan>,
    moulds: Kept<Result<Mould, NoMould>>,
}

/// A mesh as it was looked at, and the state of its file by which it is known to be the same.
#[derive(Clone, Debug)]
struct LookedAt {
    state: MeshState,
    looked: Looked,
}

/// What changes whenever a mesh has to be looked at again.
#[derive(Clone, Debug, PartialEq)]
struct MeshState {
    bytes: u64,
    written: Option<SystemTime>,
    unit: Option<Unit>,
}

/// Most meshes kept in memory: a founder has one or two jobs open.
const MOST_KEPT: usize = 4;

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
            looked: Mutex::default(),
            writing: Mutex::default(),
            plans: Kept::at_most(MOST_PLANS),
            moulds: Kept::at_most(MOST_MOULDS),
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
        self.writing.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Opens a job; its mesh is read again only where it has changed.
    ///
    /// # Errors
    ///
    /// As [`job::folder::open`].
    pub fn open(&self, folder: &Path) -> Result<Opened, FolderError> {
        let noted = noted(folder)?;
        let Some((mesh, unit)) = noted.mesh() else {
            return noted.with_part();
        };
        let state = fs::metadata(&mesh).ok().map(|facts| MeshState {
            bytes: facts.len(),
            written: facts.modified().ok(),
            unit,
        });
        if let Some(looked) = self.known(&mesh, state.as_ref()) {
            return noted.with_looked(Some(looked));
        }
        let looked = look_at(&mesh, unit)?;
        if let Some(state) = state {
            self.keep(mesh, state, looked.clone());
        }
        noted.with_looked(Some(looked))
    }

    /// The plan of a job whose mesh is settled.
    pub fn plan(&self, opened: &Opened) -> Arc<Plan> {
        let print = fingerprint(&opened.job, &opened.shop, &opened.part);
        // The two that a mould does not depend on, and a sheet does.
        let key = format!("{print} {:?} {:?}", opened.job.date, opened.job.name);
        self.plans
            .of(key, || work_out(&opened.job, &opened.shop, &opened.part))
    }

    /// The mould of a job as solids, or why there is none.
    pub fn mould(&self, opened: &Opened) -> Arc<Result<Mould, NoMould>> {
        let key = fingerprint(&opened.job, &opened.shop, &opened.part);
        self.moulds
            .of(key, || mould_of(&opened.job, &opened.shop, &opened.part))
    }

    fn known(&self, mesh: &Path, state: Option<&MeshState>) -> Option<Looked> {
        let kept = self.looked();
        let known = kept.get(mesh).filter(|known| Some(&known.state) == state)?;
        Some(known.looked.clone())
    }

    fn keep(&self, mesh: PathBuf, state: MeshState, looked: Looked) {
        let mut kept = self.looked();
        if kept.len() >= MOST_KEPT && !kept.contains_key(&mesh) {
            kept.clear();
        }
        kept.insert(mesh, LookedAt { state, looked });
    }

    fn looked(&self) -> MutexGuard<'_, BTreeMap<PathBuf, LookedAt>> {
        self.looked.lock().unwrap_or_else(PoisonError::into_inner)
    }
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
