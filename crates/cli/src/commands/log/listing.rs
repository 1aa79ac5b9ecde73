//! Entries listed and shown, and the whole log looked over.

use std::process::ExitCode;

use job::words::said::Said;
use measure::text::rounded;
use serde_json::{Value as Json, json};
use shoplog::column::{Column, Holds};
use shoplog::entry::{Entry, half_filled, table_of};
use shoplog::export::of_entry;
use shoplog::log::Log;
use shoplog::question::{Question, questions, questions_about};
use shoplog::table::named;
use shoplog::value::Value;

use crate::commands::log::Desk;
use crate::print;
use crate::trouble::Trouble;

/// Longest text in a cell of a list; the rest is shown by `show`.
const MOST_LETTERS: usize = 32;

/// Lists the last entries of a table, or how many each table holds.
pub fn list(
    desk: &Desk,
    table: Option<&str>,
    last: usize,
    json: bool,
) -> Result<ExitCode, Trouble> {
    let log = desk.open_to_read()?;
    let Some(table) = table else {
        return counted(&log, json);
    };
    let table = table_of(table)?;
    let entries = log.last(table, last)?;
    if json {
        let entries: Vec<Json> = entries.iter().map(|entry| of_entry(table, entry)).collect();
        print::out(&format!("{:#}\n", Json::Array(entries)))?;
        return Ok(ExitCode::SUCCESS);
    }
    let filled = |column: &&Column| {
        let name = column.name();
        entries.iter().any(|entry| entry.values.contains_key(&name))
    };
    let columns: Vec<&Column> = table.columns.iter().filter(filled).collect();
    let heads = columns.iter().map(|column| match column.unit() {
        Some((_, unit)) => format!("{}, {unit}", column.key),
        None => column.key.to_owned(),
    });
    let heads: Vec<String> = std::iter::once("number".to_owned()).chain(heads).collect();
    let mut heads: Vec<&str> = heads.iter().map(String::as_str).collect();
    heads.push("");
    let mut rows = print::table(&heads);
    for entry in &entries {
        let mut row = vec![entry.number.to_string()];
        for column in &columns {
            row.push(cell(&log, column, entry)?);
        }
        row.push(match half_filled(table, entry).is_empty() {
            true => String::new(),
            false => desk.words.word("log-head-half"),
        });
        rows.add_row(row);
    }
    print::out(&format!("{rows}\n"))?;
    Ok(ExitCode::SUCCESS)
}

/// Shows an entry whole.
pub fn show(desk: &Desk, table: &str, entry: &str, json: bool) -> Result<ExitCode, Trouble> {
    let log = desk.open_to_read()?;
    let table = table_of(table)?;
    let entry = log.entry(table, &log.find(table, entry)?)?;
    let lacks = half_filled(table, &entry);
    let asked = questions_about(&log, table, &entry.id)?;
    if json {
        let asked: Vec<Json> = asked
            .iter()
            .map(|question| {
                json!({ "about": question.table.one, "number": question.number,
                "code": question.words.id() })
            })
            .collect();
        let whole = json!({ "entry": of_entry(table, &entry), "lacks": lacks, "asked": asked });
        print::out(&format!("{whole:#}\n"))?;
        return Ok(ExitCode::SUCCESS);
    }
    let mut rows = print::table(&["", ""]);
    rows.add_row(["id", &entry.id]);
    rows.add_row(["number", &entry.number.to_string()]);
    rows.add_row(["written", &entry.written]);
    for column in table.columns {
        if let Some(value) = entry.values.get(&column.name()) {
            rows.add_row([column.name(), shown(&log, column, value)?]);
        }
    }
    print::out(&format!("{rows}\n"))?;
    if !lacks.is_empty() {
        let said = Said::new("log-half-filled").with("table", table.one);
        let said = said.with("number", entry.number.to_string());
        desk.say(&said.with("keys", lacks.join(", ")));
    }
    asked.iter().for_each(|question| ask(desk, question));
    Ok(ExitCode::SUCCESS)
}

/// Looks the whole log over.
pub fn check(desk: &Desk) -> Result<ExitCode, Trouble> {
    let log = desk.open_to_read()?;
    log.check()?;
    let count = log.counts()?.iter().map(|(_, count)| count).sum::<usize>();
    desk.say(&Said::new("log-sound").with("count", count));
    let asked = questions(&log)?;
    asked.iter().for_each(|question| ask(desk, question));
    if asked.is_empty() {
        desk.say(&Said::new("log-nothing-asked"));
    }
    Ok(ExitCode::SUCCESS)
}

/// Asks about an entry.
pub fn ask(desk: &Desk, question: &Question) {
    let said = Said::new("log-asked")
        .with("table", question.table.one)
        .with("number", question.number.to_string())
        .with("words", question.words.clone());
    desk.say(&said);
}

fn counted(log: &Log, json: bool) -> Result<ExitCode, Trouble> {
    let counts = log.counts()?;
    if json {
        let counts = counts
            .iter()
            .map(|(table, count)| (table.name.to_owned(), json!(count)));
        let counts: serde_json::Map<String, Json> = counts.collect();
        print::out(&format!("{:#}\n", Json::Object(counts)))?;
        return Ok(ExitCode::SUCCESS);
    }
    let mut rows = print::table(&["", "", ""]);
    for (table, count) in counts {
        rows.add_row([table.name, &count.to_string(), table.says]);
    }
    print::out(&format!("{rows}\n"))?;
    Ok(ExitCode::SUCCESS)
}

fn cell(log: &Log, column: &Column, entry: &Entry) -> Result<String, Trouble> {
    let Some(value) = entry.values.get(&column.name()) else {
        return Ok(String::new());
    };
    let text = shown(log, column, value)?.replace(['\n', '\r'], " ");
    match text.chars().count() > MOST_LETTERS {
        true => Ok(text.chars().take(MOST_LETTERS).chain(['…']).collect()),
        false => Ok(text),
    }
}

/// A value for people: links by number, yes and no, six figures.
fn shown(log: &Log, column: &Column, value: &Value) -> Result<String, Trouble> {
    Ok(match (column.holds, value) {
        (Holds::Entry(to), Value::Text(id)) => match named(to) {
            Some(to) => log.number(to, id)?.to_string(),
            None => id.clone(),
        },
        (Holds::Flag, Value::Whole(1)) => "yes".to_owned(),
        (Holds::Flag, Value::Whole(0)) => "no".to_owned(),
        (_, Value::Real(number)) => rounded(*number, 6),
        (_, other) => other.to_string(),
    })
}
