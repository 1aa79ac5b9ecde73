//! `oddside freeze JOB`: when the poured mould is solid, place by place.

use std::process::ExitCode;

use job::fingerprint::fingerprint;
use job::folder::open;
use job::freezing::{FREEZE_FOLDER, FreezingWish, freezing_files, freezing_of};
use job::freezing_asked::{takes, time_above_told};
use job::freezing_file::{above_file, file};
use job::freezing_told::told;
use job::solved::{SolvedBy, solved_times};
use job::solved_kept::{FINDINGS_FILE, findings};
use job::words::said::Said;
use measure::heat::Temperature;

use crate::commands::opened::settled;
use crate::commands::solids;
use crate::print;
use crate::progress::Share;
use crate::trouble::Trouble;

/// What was asked for.
pub struct Asked {
    /// The job, and where its files go.
    pub files: solids::Asked,
    /// Most cells, where the founder wants more or fewer.
    pub cells: Option<f64>,
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
    let mut wish = FreezingWish::default();
    wish.cells = asked.cells.unwrap_or(wish.cells);
    if let Some(said) = takes(wish.cells) {
        print::talk(&language.say(&said));
    }
    let frozen = {
        let working = Share::of("following the freezing");
        freezing_of(
            &opened.job,
            &opened.shop,
            &opened.part,
            &wish,
            &mut |told| {
                let before = told.run.saturating_sub(1) as f64;
                working.reached((before + told.solid) / told.runs as f64);
                true
            },
        )?
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
    let own = opened.folder.join(FREEZE_FOLDER);
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
