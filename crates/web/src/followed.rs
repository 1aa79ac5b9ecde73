//! Following a freezing to its end: kept on the way, so that it goes on after a stop or a kill.

use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};

use gpu::card::elsewhere;
use job::fingerprint::fingerprint;
use job::folder::{FolderError, Opened, forget, read_text, write_whole};
use job::freezing::{FREEZE_FOLDER, FreezingWish, JobFrozen, freezing_files, freezing_from};
use job::freezing_told::fell_back;
use job::kept_runs::{forget_runs, keep_run, kept_runs};
use job::solved::{SolvedBy, solved_times};
use job::solved_kept::{FINDINGS_FILE, findings};
use job::words::said::Said;
use serde::{Deserialize, Serialize};

use crate::answers::sheets::planned;
use crate::folder::ShopFolder;
use crate::heat_on::{HeatOn, card_for};
use crate::runs::{Report, Run, RunOf};

/// Says in the folder of a freezing that it was asked for on the page, and how; it is gone when
/// that run is over.
const ASKED_FILE: &str = "asked-on-the-page";

/// How a freezing is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
pub struct Asked {
    /// Most cells of the box around the metal.
    pub cells: f64,
    /// Where it is followed.
    pub on: HeatOn,
}

/// How often a run is kept: seldom enough to cost nothing beside the run, often enough that nobody
/// minds what is lost. The same as in the terminal.
const KEPT_EVERY: Duration = Duration::from_secs(10);

/// Begins to follow a freezing; goes on from where it was kept, if it was.
pub fn begin<O>(shop: &ShopFolder, job: &str, opened: Arc<O>, asked: Asked) -> Run
where
    O: std::ops::Deref<Target = Opened> + Send + Sync + 'static,
{
    shop.runs.begin(job, RunOf::Freezing, move |report| {
        let words = opened.shop.words;
        let card = card_for(asked.on, asked.cells, words, report)?;
        let wish = FreezingWish {
            cells: asked.cells,
            on: elsewhere(card.as_ref()),
            ..FreezingWish::default()
        };
        let fell_back = to_the_end(&opened, asked, &wish, report);
        let fell_back = fell_back.map_err(|error| error.to_string())?;
        Ok(fell_back.iter().map(|said| words.say(said)).collect())
    })
}

/// Begins again what was under way when the program was ended in the middle.
pub fn go_on(shop: &ShopFolder) {
    for job in shop.jobs() {
        let Some(folder) = shop.job(&job) else {
            continue;
        };
        let asked = read_text(&folder.join(FREEZE_FOLDER).join(ASKED_FILE), "");
        let asked = asked
            .ok()
            .and_then(|text| serde_json::from_str::<Asked>(&text).ok());
        // A job that cannot be opened any more tells so on its own sheet.
        if let Some((asked, opened)) = asked.zip(shop.open(&folder).ok())
            && planned(shop, &opened).is_ok()
        {
            begin(shop, &job, opened, asked);
        }
    }
}

/// Follows it and writes what came of it, the findings last: they never stand beside fields that
/// are only half written. Tells where it was not followed to its end on the card that it began on.
fn to_the_end(
    opened: &Opened,
    asked: Asked,
    wish: &FreezingWish<'_>,
    report: &Report<'_>,
) -> Result<Option<Said>, Box<dyn std::error::Error>> {
    let folder = opened.folder.join(FREEZE_FOLDER);
    let asked = serde_json::to_vec(&asked)?;
    write_whole(&folder.join(ASKED_FILE), &asked)?;
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
    forget_runs(&folder)?;
    Ok(fell_back(&frozen.freeze))
}

/// The freezing itself, kept every ten seconds and once more when it is stopped.
fn followed(
    opened: &Opened,
    wish: &FreezingWish<'_>,
    folder: &Path,
    report: &Report<'_>,
) -> Result<JobFrozen, Box<dyn std::error::Error>> {
    let kept = kept_runs(folder)?;
    let (mut last, mut is_kept) = (Instant::now(), false);
    let mut trouble: Option<FolderError> = None;
    let (job, shop, part) = (&opened.job, &opened.shop, &opened.part);
    let frozen = freezing_from(job, shop, part, wish, &kept, &mut |told, run| {
        let before = told.run.saturating_sub(1) as f64;
        let goes_on = report.reached((before + told.solid) / told.runs as f64);
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
