//! The shop's folder: which jobs lie in it, and their meshes as looked at last.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Component, Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, PoisonError};

use job::draw_maps::{Judged, judged};
use job::fingerprint::{fingerprint_of, of_mesh};
use job::folder::{FolderError, JOB_FILE, Noted, look_at, noted_of, read_text, shop_above};
use job::mould_solids::{NoMould, mould_of_placed};
use job::part::Part;
use job::placed_part::PlacedPart;
use job::plan::Plan;
use job::rewritten::Rewritten;
use job::work_out::{placed, work_out_placed};
use pattern::draw::maps::MapsError;
use pattern::look::Looked;
use rigging::mould::Mould;

use crate::kept::Kept;
use crate::opened_job::{FileAt, OpenedJob};
use crate::runs::Runs;

/// A folder that is served.
#[derive(Debug)]
pub struct ShopFolder {
    root: PathBuf,
    opening: Mutex<()>,
    opened: Mutex<BTreeMap<PathBuf, Arc<OpenedJob>>>,
    looked: Mutex<BTreeMap<PathBuf, LookedAt>>,
    writing: Mutex<()>,
    placed: Kept<PlacedPart>,
    plans: Kept<Plan>,
    moulds: Kept<Result<Mould, NoMould>>,
    skins: Kept<Result<Judged, MapsError>>,
    named: Kept<Named>,
    /// Longer work.
    pub runs: Arc<Runs>,
    /// Whether phones are let in, since this program was started.
    pub lets_phones_in: OnceLock<()>,
}

/// A mesh as it was looked at, with the fingerprint of its skin.
type LookedAt = (FileAt, Looked, u64);

/// Most jobs and meshes kept in memory: a founder has one or two jobs open.
const MOST_KEPT: usize = 8;

/// Most plans kept: some steps of undo and redo, in a few jobs.
const MOST_PLANS: usize = 32;

/// Most moulds kept: each is some tens of megabytes.
const MOST_MOULDS: usize = 2;

/// What a job is called.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// Its name.
    pub name: String,
    /// Its alloy, by the name in the table.
    pub alloy: String,
}

/// Most names of jobs kept: a list of more is read anew each time, a twentieth of a second a job.
const MOST_NAMED: usize = 256;

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
            named: Kept::at_most(MOST_NAMED),
            runs: Arc::default(),
            lets_phones_in: OnceLock::new(),
        })
    }

    /// The folder itself.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The jobs by the way to them from here, in the order of their names.
    pub fn jobs(&self) -> Vec<String> {
        self.ways_to(JOB_FILE)
    }

    /// The folder of a job by that way; nothing for a way that leads anywhere else.
    pub fn job(&self, name: &str) -> Option<PathBuf> {
        self.folder_with(name, JOB_FILE)
    }

    /// What the job of a folder is called; nothing where its file cannot be read. A file that has
    /// not changed is not read for it again: one that gives solids builds them.
    pub fn named(&self, folder: &Path) -> Option<Named> {
        let file = folder.join(JOB_FILE);
        let text = read_text(&file, "the job is gone from here").ok()?;
        let key = format!("{}\n{text}", file.display());
        let named = self.named.try_of(key, || {
            noted_of(&file, &text).map(|noted| Named {
                name: noted.job.name,
                alloy: noted.job.alloy.name.clone(),
            })
        });
        named.ok().map(|named| Named::clone(&named))
    }

    /// The ways to the folders that hold such a file, in the order of their names.
    pub fn ways_to(&self, file: &str) -> Vec<String> {
        let mut found = Vec::new();
        gather(&self.root, (&self.root, DEPTH), file, &mut found);
        found.sort();
        found
    }

    /// The folder by a way if it holds such a file; nothing for a way that leads anywhere else.
    pub fn folder_with(&self, name: &str, file: &str) -> Option<PathBuf> {
        let steps = Path::new(name).components();
        let is_plain = |step| matches!(step, Component::Normal(_));
        if name.is_empty() || !steps.clone().all(is_plain) || steps.count() > DEPTH {
            return None;
        }
        let folder = fs::canonicalize(self.root.join(name)).ok()?;
        let is_within = folder.starts_with(&self.root);
        (is_within && folder.join(file).is_file()).then_some(folder)
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
    pub fn open(&self, folder: &Path) -> Result<Arc<OpenedJob>, FolderError> {
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
        self.keep_opened(folder, (text, shop), noted)
    }

    /// Opens a job that has just been changed, from what was read of it then: what a change builds
    /// it builds once.
    ///
    /// # Errors
    ///
    /// As [`job::folder::open`].
    pub fn open_changed(
        &self,
        folder: &Path,
        changed: Rewritten,
    ) -> Result<Arc<OpenedJob>, FolderError> {
        let shop = format!("{:?}", shop_above(folder)?.0);
        let _opening = locked(&self.opening);
        match self.known(folder, &changed.text, &shop) {
            Some(known) => Ok(known),
            None => self.keep_opened(folder, (changed.text, shop), changed.noted),
        }
    }

    /// A job that was read, with its part looked at; kept nowhere.
    ///
    /// # Errors
    ///
    /// As [`job::folder::open`].
    pub fn look_on(&self, noted: Noted) -> Result<OpenedJob, FolderError> {
        self.looked_on(noted, Default::default())
    }

    fn looked_on(&self, noted: Noted, texts: (String, String)) -> Result<OpenedJob, FolderError> {
        let mesh = noted.mesh().map(|(path, unit)| FileAt::now(path, unit));
        let looked = mesh.as_ref().map(|mesh| self.look(mesh)).transpose()?;
        let (looked, skin) = looked.unzip();
        let opened = noted.with_looked(looked)?;
        // Of plain solids the skin is only known when they are built.
        let built = || {
            let looked = opened.part.looked();
            looked.map_or(0, |looked| of_mesh(&looked.mesh))
        };
        let skin = skin.unwrap_or_else(built);
        Ok(OpenedJob::new(opened, texts, mesh, skin))
    }

    fn keep_opened(
        &self,
        folder: &Path,
        texts: (String, String),
        noted: Noted,
    ) -> Result<Arc<OpenedJob>, FolderError> {
        let opened = Arc::new(self.looked_on(noted, texts)?);
        keep(
            &mut locked(&self.opened),
            folder.to_owned(),
            Arc::clone(&opened),
        );
        Ok(opened)
    }

    /// A job as it was opened, if nothing has changed since.
    fn known(&self, folder: &Path, text: &str, shop: &str) -> Option<Arc<OpenedJob>> {
        let known = locked(&self.opened).get(folder).cloned()?;
        known.is_as_it_was(text, shop).then_some(known)
    }

    /// A mesh looked at, or as it was looked at before, with the fingerprint of its skin.
    fn look(&self, mesh: &FileAt) -> Result<(Looked, u64), FolderError> {
        if let Some((at, looked, skin)) = locked(&self.looked).get(&mesh.path)
            && at == mesh
        {
            return Ok((looked.clone(), *skin));
        }
        let looked = look_at(&mesh.path, mesh.unit)?;
        let skin = of_mesh(&looked.mesh);
        let kept = (mesh.clone(), looked.clone(), skin);
        keep(&mut locked(&self.looked), mesh.path.clone(), kept);
        Ok((looked, skin))
    }

    /// The fingerprint of a job, by which a mould and its freezing are known again.
    pub fn print(&self, opened: &OpenedJob) -> String {
        fingerprint_of(&opened.job, &opened.shop, opened.skin)
    }

    /// The plan of a job whose mesh is settled.
    pub fn plan(&self, opened: &OpenedJob) -> Arc<Plan> {
        let print = self.print(opened);
        // The two that a mould does not depend on, and a sheet does.
        let key = format!("{print} {:?} {:?}", opened.job.date, opened.job.name);
        self.plans.of(key, || {
            let placed = self.placed(opened);
            work_out_placed(&opened.job, &opened.shop, &opened.part, &placed)
        })
    }

    /// The part of a job in the mould. A change of metal or flask leaves it where it lay.
    fn placed(&self, opened: &OpenedJob) -> Arc<PlacedPart> {
        let (job, part) = (&opened.job, &opened.part);
        let solids = match part {
            Part::Mesh(_) => 0,
            Part::Solids(built) => built.shapes.len(),
            Part::Rough(_) => return Arc::new(placed(job, part)),
        };
        let skin = opened.skin;
        let key = format!("{skin:016x} {solids} {:?} {:?}", job.up, job.joint);
        self.placed.of(key, || placed(job, part))
    }

    /// The skin of the part of a job judged along its draw, or why it is not; nothing for a part of
    /// sizes only.
    pub fn skin(&self, opened: &OpenedJob) -> Option<Arc<Result<Judged, MapsError>>> {
        let (job, looked) = (&opened.job, opened.part.looked()?);
        let skin = opened.skin;
        let making = job.making.skin;
        let key = format!(
            "{skin:016x} {:?} {:?} {making:?} {}",
            job.up, job.joint, job.alloy.name
        );
        Some(self.skins.of(key, || judged(job, &looked.mesh)))
    }

    /// The mould of a job as solids, or why there is none.
    pub fn mould(&self, opened: &OpenedJob) -> Arc<Result<Mould, NoMould>> {
        self.moulds.of(self.print(opened), || {
            let placed = self.placed(opened);
            mould_of_placed(&opened.job, &opened.shop, &opened.part, &placed)
        })
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

/// Adds the folders below one that hold such a file; hidden folders and links are left alone.
fn gather(root: &Path, (folder, depth): (&Path, usize), file: &str, found: &mut Vec<String>) {
    if folder.join(file).is_file() && folder != root {
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
            gather(root, (&entry.path(), depth - 1), file, found);
        }
    }
}
