//! Following a freezing to its end: kept on the way, so that it goes on after a stop or a kill.

use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};

use job::fingerprint::fingerprint;
use job::folder::{FolderError, Opened, forget, read_text, write_whole};
use job::freezing::{FREEZE_FOLDER, FreezingWish, JobFrozen, freezing_files, freezing_from};
use job::kept_runs::{forget_runs, keep_run, kept_runs};
use job::solved::{SolvedBy, solved_times};
use job::solved_kept::{FINDINGS_FILE, findings};

use crate::answers::sheets::planned;
use crate::folder::ShopFolder;
use crate::runs::{Run, RunOf};

/// Says in the folder of a freezing that it was asked for on the page, and with how many cells; it
/// is gone when that run is over.
const ASKED_FILE: &str = "asked-on-the-page";

/// How often a run is kept: seldom enough to cost nothing beside the run, often enough that nobody
/// minds what is lost. The same as in the terminal.
const KEPT_EVERY: Duration = Duration::from_secs(10);

/// Begins to follow a freezing; goes on from where it was kept, if it was.
pub fn begin<O>(shop: &ShopFolder, job: &str, opened: Arc<O>, cells: f64) -> Run
where
    O: std::ops::Deref<Target = Opened> + Send + Sync + 'static,
{
    shop.runs.begin(job, RunOf::Freezing, move |report| {
        let wish = FreezingWish {
            cells,
            ..FreezingWish::default()
        };
        to_the_end(&opened, &wish, report)
            .map(|()| Vec::new())
            .map_err(|error| error.to_string())
    })
}

/// Begins again what was under way when the program was ended in the middle.
pub fn go_on(shop: &ShopFolder) {
    for job in shop.jobs() {
        let Some(folder) = shop.job(&job) else {
            continue;
        };
        let asked = read_text(&folder.join(FREEZE_FOLDER).join(ASKED_FILE), "");
        let cells = asked.ok().and_then(|text| text.trim().parse::<f64>().ok());
        // A job that cannot be opened any more tells so on its own sheet.
        if let Some((cells, opened)) = cells.zip(shop.open(&folder).ok())
            && planned(shop, &opened).is_ok()
        {
            begin(shop, &job, opened, cells);
        }
    }
}

/// Follows it and writes what came of it, the findings last: they never stand beside fields that
/// are only half written.
fn to_the_end(
    opened: &Opened,
    wish: &FreezingWish,
    report: &mut dyn FnMut(f64) -> bool,
) -> Result<(), Box<dyn std::error::Error>> {
    let folder = opened.folder.join(FREEZE_FOLDER);
    write_whole(&folder.join(ASKED_FILE), wish.cells.to_string().as_bytes())?;
    let followed = followed(opened, wish, &folder, report);
    // Not asked for any more, whether it is done, came to nothing or was stopped by hand.
    forget(&folder.join(ASKED_FILE))?;
    let frozen = followed?;
    let (job, shop, part) = (&opened.job, &opened.shop, &opened.part);
    let times = solved_times(&frozen, SolvedBy::Freezing);
    let print = fingerprint(job, shop, part);
    let mut files = freezing_files(&frozen);
    let found = findings(&frozen, &times, &job.name, &print);
    files.push((FINDINGS_FILE.to_owned(), found));
    for (name, bytes) in &files {
        write_whole(&folder.join(name), bytes)?;
    }
    Ok(forget_runs(&folder)?)
}

/// The freezing itself, kept every ten seconds and once more when it is stopped.
fn followed(
    opened: &Opened,
    wish: &FreezingWish,
    folder: &Path,
    report: &mut dyn FnMut(f64) -> bool,
) -> Result<JobFrozen, Box<dyn std::error::Error>> {
    let kept = kept_runs(folder)?;
    let (mut last, mut is_kept) = (Instant::now(), false);
    let mut trouble: Option<FolderError> = None;
    let (job, shop, part) = (&opened.job, &opened.shop, &opened.part);
    let frozen = freezing_from(job, shop, part, wish, &kept, &mut |told, run| {
        let before = told.run.saturating_sub(1) as f64;
        let goes_on = report((before + told.solid) / told.runs as f64);
        let Some(run) = run else {
            return goes_on;
        };
        let is_through = told.solid >= 1.0 && is_kept;
        if !goes_on || is_through || last.elapsed() >= KEPT_EVERY {
            trouble = keep_run(folder, told.run, run).err();
            (last, is_kept) = (Instant::now(), true);
        }
        goes_on && trouble.is_none()
    });
    match trouble {
        Some(trouble) => Err(trouble.into()),
        None => Ok(frozen?),
    }
}
