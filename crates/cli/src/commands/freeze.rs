//! `oddside freeze JOB`: when the poured mould is solid, place by place.

use std::path::Path;
use std::process::ExitCode;

use gpu::card::elsewhere;
use job::fingerprint::fingerprint;
use job::folder::{Opened, nothing_in_the_way, open};
use job::freezing::{
    BUDGET, FREEZE_FOLDER, FreezingWish, JobFrozen, freezing_files, freezing_from,
};
use job::freezing_asked::{takes, time_above_told};
use job::freezing_file::{above_file, file};
use job::freezing_told::told;
use job::kept_runs::{forget_runs, keep_run, kept_runs};
use job::solved::{SolvedBy, solved_times};
use job::solved_kept::{FINDINGS_FILE, findings};
use job::words::said::Said;
use measure::heat::Temperature;

use crate::args::Place;
use crate::commands::computer::card_for;
use crate::commands::keeping::{Ended, Keeping};
use crate::commands::opened::settled;
use crate::commands::solids;
use crate::print;
use crate::progress::{Share, in_cells};
use crate::trouble::Trouble;

/// What was asked for.
pub struct Asked {
    /// The job, and where its files go.
    pub files: solids::Asked,
    /// Most cells, where the founder wants more or fewer.
    pub cells: Option<f64>,
    /// Whether one side is to stand for both where they are alike.
    pub halves: bool,
    /// Where it is followed; left out, wherever it is faster.
    pub on: Option<Place>,
    /// A temperature of which it is told how long the metal stays above it.
    pub above: Option<Temperature>,
    /// One object instead of words.
    pub json: bool,
}

/// Builds the mould, follows its freezing and tells of it.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = open(&asked.files.job)?;
    settled(&opened)?;
    let language = opened.shop.words;
    let own = opened.folder.join(FREEZE_FOLDER);
    let into = asked.files.out.clone().unwrap_or_else(|| own.clone());
    if !asked.json {
        nothing_in_the_way(&[into.join(FINDINGS_FILE)], asked.files.force)?;
    }
    let cells = asked.cells.unwrap_or(BUDGET);
    let card = card_for(asked.on, cells as usize)?;
    let wish = FreezingWish {
        cells,
        halves: asked.halves,
        on: elsewhere(card.as_ref()),
    };
    if let Some(on) = wish.on {
        let said = Said::new("freeze-on-card").with("card", on.name().to_owned());
        print::talk(&language.say(&said));
    } else if let Some(said) = takes(wish.cells) {
        print::talk(&language.say(&said));
    }
    let frozen = match followed(&opened, &wish, &own)? {
        Ended::Through(frozen) => frozen,
        Ended::Stopped(code) => {
            print::talk(&language.say(&Said::new("freeze-stopped")));
            return Ok(code);
        }
    };
    if asked.json {
        let mut found = file(&opened.job.name, &opened.job.alloy.name, &frozen);
        found.above = asked.above.and_then(|mark| above_file(&frozen, mark));
        print::out(&found.text())?;
        return Ok(ExitCode::SUCCESS);
    }
    let mut told = told(&frozen);
    let above = asked.above.and_then(|mark| time_above_told(&frozen, mark));
    told.figures.extend(above);
    let mut table = print::table_in(language, &told.heads);
    for (name, cells) in &told.rows {
        let [after, between, place] = cells.clone();
        table.add_row([language.say(name), after, between, place]);
    }
    let all =
        |said: &[Said]| -> String { said.iter().map(|said| language.say(said) + "\n").collect() };
    let filling = match all(&told.filling) {
        filling if filling.is_empty() => filling,
        filling => filling + "\n",
    };
    let lines: String = told
        .lines
        .iter()
        .map(|line| print::line(line, language))
        .collect();
    print::out(&format!(
        "{}\n\n{filling}{table}\n\n{}\n{lines}{}",
        opened.job.name,
        all(&told.figures),
        print::unread(language),
    ))?;
    let times = solved_times(&frozen, SolvedBy::Freezing);
    let print = fingerprint(&opened.job, &opened.shop, &opened.part);
    let mut files = freezing_files(&frozen);
    // Last, so that it never stands beside fields that are only half written.
    files.push((
        FINDINGS_FILE.to_owned(),
        findings(&frozen, &times, &opened.job.name, &print),
    ));
    solids::write(&asked.files, &own, &files, language)?;
    Ok(ExitCode::SUCCESS)
}

/// What is said while it lasts.
const FOLLOWING: &str = "following the freezing";

/// Follows the freezing, from where it was kept if it was, and keeps it on the way in the folder of
/// its files. What was kept goes when it is through.
fn followed(
    opened: &Opened,
    wish: &FreezingWish<'_>,
    own: &Path,
) -> Result<Ended<JobFrozen>, Trouble> {
    let kept = kept_runs(own)?;
    let mut is_new = !kept.is_empty();
    let working = Share::of(FOLLOWING);
    let mut keeping = Keeping::begin();
    let frozen = freezing_from(
        &opened.job,
        &opened.shop,
        &opened.part,
        wish,
        &kept,
        &mut |told, run| {
            let before = told.run.saturating_sub(1) as f64;
            working.reached((before + told.solid) / told.runs as f64);
            if told.cells > 0 {
                working.is_now(in_cells(FOLLOWING, told.cells, told.bytes));
            }
            let Some(run) = run else {
                return !keeping.is_asked();
            };
            if std::mem::take(&mut is_new) {
                let goes_on = match kept.iter().any(|kept| run.is_of(kept)) {
                    true => "freeze-goes-on",
                    false => "freeze-begins-anew",
                };
                print::talk(&opened.shop.words.say(&Said::new(goes_on)));
            }
            keeping.goes_on(told.solid >= 1.0, || keep_run(own, told.run, run))
        },
    );
    let ended = keeping.ended(frozen)?;
    if matches!(ended, Ended::Through(_)) {
        forget_runs(own)?;
    }
    Ok(ended)
}
