//! `oddside log`: what was planned, what was done, what came out.

pub mod files;
pub mod lessons;
pub mod listing;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use job::folder::{read_text, shop_above};
use job::words::Language;
use job::words::said::Said;
use shoplog::entry::{Added, Fresh, half_filled, table_of};
use shoplog::log::{LOG_FILE, Log};
use shoplog::photo::{keep_photo, small_of};
use shoplog::prefill::of_plan;
use shoplog::question::questions_about;
use shoplog::table::Table;
use shoplog::table::around::PHOTOS;
use shoplog::value::Value;
use shoplog::written_pour::write_pour;

use crate::args::{LogArgs, LogCommand};
use crate::print;
use crate::trouble::Trouble;

/// Name of the plan in a job folder.
const PLAN_FILE: &str = "plan.json";

/// Does what was asked for.
pub fn run(args: LogArgs) -> Result<ExitCode, Trouble> {
    let desk = Desk::of(args.file.as_deref())?;
    match args.what {
        LogCommand::Pour { job, given } => poured(&desk, &job, &given),
        LogCommand::Add { table, given } => added(&desk, &table, &given),
        LogCommand::Change {
            table,
            entry,
            given,
        } => changed(&desk, &table, &entry, &given),
        LogCommand::List { table, last, json } => {
            listing::list(&desk, table.as_deref(), last, json)
        }
        LogCommand::Show { table, entry, json } => listing::show(&desk, &table, &entry, json),
        LogCommand::Check => listing::check(&desk),
        LogCommand::Photo {
            table,
            entry,
            picture,
            note,
        } => photo(&desk, (&table, &entry), &picture, note.as_deref()),
        LogCommand::Export { to, json, force } => files::export(&desk, &to, json, force),
        LogCommand::Import { files } => files::import(&desk, &files),
        LogCommand::MoveIn { files } => files::move_in(&desk, &files),
        LogCommand::MoveOut { to, force } => files::move_out(&desk, &to, force),
        LogCommand::Backup { to } => files::backup(&desk, &to),
        LogCommand::Salvage { to } => files::salvage(&desk, &to),
        LogCommand::Learn { accept, json } => lessons::learn(&desk, &accept, json),
        LogCommand::Changes { last, json } => lessons::changes(&desk, last, json),
        LogCommand::Compare { pour, json } => lessons::compare(&desk, &pour, json),
        LogCommand::Power {
            from,
            to,
            wanted,
            json,
        } => lessons::power((&from, &to, &wanted), json),
        LogCommand::Chart { what, svg } => lessons::chart(&desk, &what, svg.as_deref()),
    }
}

/// Where the log lies and in which language it is told.
pub struct Desk {
    /// The log.
    pub path: PathBuf,
    /// The language.
    pub words: Language,
}

impl Desk {
    /// The desk of the shop above the folder one works in.
    pub fn of(named: Option<&Path>) -> Result<Desk, Trouble> {
        let (shop, file) = shop_above(Path::new("."))?;
        let beside = file.unwrap_or_else(|| PathBuf::from(LOG_FILE));
        let path = named.map_or_else(|| beside.with_file_name(LOG_FILE), Path::to_owned);
        let words = shop.words;
        Ok(Desk { path, words })
    }

    /// The log, started where there is none.
    pub fn open(&self) -> Result<Log, Trouble> {
        self.told(Log::open(&self.path)?)
    }

    /// The log, which has to be there.
    pub fn open_to_read(&self) -> Result<Log, Trouble> {
        self.told(Log::open_to_read(&self.path)?)
    }

    fn told(&self, log: Log) -> Result<Log, Trouble> {
        if log.newer.is_some() {
            print::talk(&self.words.word("log-newer"));
        }
        Ok(log)
    }

    /// Says it aside.
    pub fn say(&self, said: &Said) {
        print::talk(&self.words.say(said));
    }
}

/// Pairs as they were typed.
pub fn pairs(given: &[String]) -> Result<Vec<(String, String)>, Trouble> {
    let pair = |text: &String| {
        let (key, value) = text
            .split_once('=')
            .ok_or_else(|| Trouble::NotAPair(text.clone()))?;
        Ok((key.trim().to_owned(), value.trim().to_owned()))
    };
    given.iter().map(pair).collect()
}

fn poured(desk: &Desk, job: &Path, given: &[String]) -> Result<ExitCode, Trouble> {
    let given = pairs(given)?;
    let file = match job.is_dir() {
        true => job.join(PLAN_FILE),
        false => job.with_file_name(PLAN_FILE),
    };
    let text = read_text(&file, "work the job out first: oddside plan JOB")?;
    let prefilled = of_plan(&text).map_err(|error| Trouble::NoPlan {
        path: file.display().to_string(),
        error,
    })?;
    let mut log = desk.open()?;
    let added = write_pour(&mut log, &prefilled, &given)?;
    for (one, added) in added.iter().filter(|(one, _)| *one != "planned-figure") {
        tell_entry(desk, &log, table_of(one)?, added)?;
    }
    Ok(ExitCode::SUCCESS)
}

fn added(desk: &Desk, table: &str, given: &[String]) -> Result<ExitCode, Trouble> {
    let table = table_of(table)?;
    let mut log = desk.open()?;
    let mut fresh = Fresh::of(table);
    for (key, text) in pairs(given)? {
        match key.as_str() {
            "id" => fresh.id = Some(text),
            "written" => fresh.written = Some(text),
            _ => fresh = fresh.typed(&log, &key, &text)?,
        }
    }
    let added = log.add(&[fresh])?;
    for added in &added {
        tell_entry(desk, &log, table, added)?;
    }
    Ok(ExitCode::SUCCESS)
}

fn changed(desk: &Desk, table: &str, entry: &str, given: &[String]) -> Result<ExitCode, Trouble> {
    let table = table_of(table)?;
    let mut log = desk.open()?;
    let id = log.find(table, entry)?;
    for (key, text) in pairs(given)? {
        let value = match text.is_empty() {
            true => None,
            false => Some(log.typed(table, &key, &text)?.1),
        };
        log.change(table, &id, &key, value)?;
    }
    let number = log.number(table, &id)?;
    let new = true;
    tell_entry(desk, &log, table, &Added { id, number, new })?;
    Ok(ExitCode::SUCCESS)
}

fn photo(
    desk: &Desk,
    (table, entry): (&str, &str),
    picture: &Path,
    note: Option<&str>,
) -> Result<ExitCode, Trouble> {
    let table = table_of(table)?;
    let mut log = desk.open()?;
    let id = log.find(table, entry)?;
    let added = keep_photo(&mut log, (table, &id), picture, note)?;
    tell_entry(desk, &log, &PHOTOS, &added)?;
    let entry = log.entry(&PHOTOS, &added.id)?;
    if let Some(Value::Text(hash)) = entry.values.get("sha256")
        && small_of(&log, hash).is_none()
    {
        desk.say(&Said::new("log-photo-no-small"));
    }
    Ok(ExitCode::SUCCESS)
}

/// Says that an entry was written, what it lacks and what is asked about it.
fn tell_entry(desk: &Desk, log: &Log, table: &'static Table, added: &Added) -> Result<(), Trouble> {
    let id = match added.new {
        true => "log-entry-written",
        false => "log-entry-there",
    };
    let of = |id: &'static str| {
        let said = Said::new(id).with("table", table.one);
        said.with("number", added.number.to_string())
    };
    desk.say(&of(id));
    let lacks = half_filled(table, &log.entry(table, &added.id)?);
    if !lacks.is_empty() {
        desk.say(&of("log-half-filled").with("keys", lacks.join(", ")));
    }
    for question in questions_about(log, table, &added.id)? {
        listing::ask(desk, &question);
    }
    Ok(())
}
