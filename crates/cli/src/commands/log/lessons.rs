//! What the log teaches: own figures, what changed, how many castings a comparison takes.

use std::path::Path;
use std::process::ExitCode;

use bench::told::Told;
use job::folder::{read_text, shop_above, write_whole};
use job::words::said::Said;
use measure::text::plain_number;
use shoplog::around_pour::pours;
use shoplog::chart::picture;
use shoplog::diagnosis::answer::answer;
use shoplog::guard::changed;
use shoplog::guard_told::{changes_told, power_told, then_and_now_told};
use shoplog::learn::accepted::{CONTACT, accepted, accepted_contact, name};
use shoplog::learn::apart::apart;
use shoplog::learn::lessons;
use shoplog::learn::told::{apart_told, told};
use shoplog::table::melt::POURS;
use shoplog::then_and_now::{FAR_BACK, then_and_now};

use crate::commands::log::{Desk, pairs};
use crate::commands::sand::{shop, tell};
use crate::print;
use crate::trouble::Trouble;

/// Tells what the log teaches, and writes what is accepted into the shop's file.
pub fn learn(desk: &Desk, accept: &[String], json: bool) -> Result<ExitCode, Trouble> {
    let log = desk.open_to_read()?;
    let (lessons, apart) = (lessons(&log)?, apart(&log)?);
    if accept.is_empty() {
        let mut told = told(&lessons);
        if let Some(apart) = &apart {
            apart_told(&mut told, apart);
        }
        return show(&told, json);
    }
    let file = shop_above(Path::new("."))?.1.ok_or(Trouble::NoShopFile)?;
    let mut text = read_text(&file, "start one with: oddside new DIR")?;
    for wanted in accept {
        if let Some(apart) = apart.as_ref().filter(|_| wanted == CONTACT) {
            text = accepted_contact(&text, apart)?;
            continue;
        }
        let lesson = lessons.iter().find(|lesson| name(&lesson.of) == *wanted);
        let lesson = lesson.ok_or_else(|| Trouble::NoLessonOfLog {
            name: wanted.clone(),
            known: lessons
                .iter()
                .map(|lesson| name(&lesson.of))
                .collect::<Vec<_>>()
                .join(", "),
        })?;
        text = accepted(&text, lesson)?;
    }
    job::folder::shop_of(&file, &text)?;
    write_whole(&file, text.as_bytes())?;
    for wanted in accept {
        let said = Said::new("log-learn-accepted").with("name", wanted.as_str());
        desk.say(&said.with("file", file.display().to_string()));
    }
    Ok(ExitCode::SUCCESS)
}

/// Tells what changed from pour to pour.
pub fn changes(desk: &Desk, last: usize, json: bool) -> Result<ExitCode, Trouble> {
    let pours = pours(&desk.open_to_read()?, last)?;
    show(&changes_told(&changed(&pours)), json)
}

/// Tells what differs from the last good pour.
pub fn compare(desk: &Desk, pour: &str, json: bool) -> Result<ExitCode, Trouble> {
    let log = desk.open_to_read()?;
    let number = log.number(&POURS, &log.find(&POURS, pour)?)?;
    let pours = pours(&log, FAR_BACK)?;
    let both = then_and_now(&pours, number).ok_or(Trouble::NoGoodPour)?;
    show(&then_and_now_told(&both), json)
}

/// Tells how many castings a comparison takes.
pub fn power((from, to, wanted): (&str, &str, &str), json: bool) -> Result<ExitCode, Trouble> {
    let share = |text: &str| {
        let number = text.trim().strip_suffix('%').and_then(plain_number);
        let share = number
            .map(|percent| percent / 100.0)
            .filter(|share| (0.0..=1.0).contains(share));
        share.ok_or_else(|| Trouble::NoShare(text.to_owned()))
    };
    let (from, to, wanted) = (share(from)?, share(to)?, share(wanted)?);
    show(&power_told(from, to, wanted.clamp(0.01, 0.99)), json)
}

/// Tells what a defect may come from.
pub fn diagnose(pour: Option<&str>, given: &[String], json: bool) -> Result<ExitCode, Trouble> {
    let (desk, typed) = (Desk::of(None)?, pairs(given)?);
    let answer = match pour {
        Some(pour) => {
            let log = desk.open_to_read()?;
            let id = log.find(&POURS, pour)?;
            answer(Some((&log, &id)), &typed)?
        }
        None => answer(None, &typed)?,
    };
    let shown = show(&answer.diagnosis, json)?;
    match &answer.then_and_now {
        // One ask gives one object.
        Some(then_and_now) if !json => show(then_and_now, json),
        _ => Ok(shown),
    }
}

/// Shows the log month by month, and draws what is asked for.
pub fn chart(desk: &Desk, what: &str, svg: Option<&Path>) -> Result<ExitCode, Trouble> {
    let (kind, log) = (picture::named(what)?, desk.open_to_read()?);
    let chart = shoplog::chart::chart(&log)?;
    let bands = shoplog::chart::bands::lines(&lessons(&log)?, desk.words);
    let lines = shoplog::chart::drawn::lines(&chart, desk.words);
    print::out(&[lines, bands].join("\n"))?;
    if let Some(file) = svg {
        let drawn = picture::picture(&log, kind, desk.words)?;
        write_whole(file, drawn.svg.as_bytes())?;
        desk.say(&Said::new("written").with("file", file.display().to_string()));
    }
    Ok(ExitCode::SUCCESS)
}

fn show(told: &Told, json: bool) -> Result<ExitCode, Trouble> {
    tell(told, &shop()?, json)
}
