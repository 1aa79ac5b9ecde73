//! Exports read back: entries that are there already stay as they are.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use serde::Deserialize;
use serde_json::value::RawValue;

use crate::column::Column;
use crate::entry::{Added, Fresh};
use crate::error::LogError;
use crate::export::number_of;
use crate::log::{Log, known_version};
use crate::table::{TABLES, Table, named};
use crate::value::Value;

/// What became of an import.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Imported {
    /// Entries that are new.
    pub new: usize,
    /// Entries that were there already, as they stand.
    pub there: usize,
    /// Entries whose number was taken, with the one they have now.
    pub renumbered: Vec<(&'static str, i64, i64)>,
}

/// Takes exports in, all or none: CSV files named by their tables, or a JSON file.
///
/// # Errors
///
/// What is not understood, with its line or entry; a link to nothing.
pub fn import(log: &mut Log, files: &[(PathBuf, Vec<u8>)]) -> Result<Imported, LogError> {
    let mut fresh = Vec::new();
    for (path, bytes) in files {
        let is_csv = path.extension().is_some_and(|ending| ending == "csv");
        fresh.extend(match is_csv {
            true => of_csv(path, bytes)?,
            false => of_json(path, bytes)?,
        });
    }
    // Those that others point to are written first.
    fresh.sort_by_key(|one| TABLES.iter().position(|table| table.name == one.table.name));
    let added = log.add(&fresh)?;
    Ok(counted(&fresh, &added))
}

fn counted(fresh: &[Fresh], added: &[Added]) -> Imported {
    let mut imported = Imported::default();
    for (one, added) in fresh.iter().zip(added) {
        match added.new {
            true => imported.new += 1,
            false => imported.there += 1,
        }
        let other = one
            .number
            .filter(|number| added.new && *number != added.number);
        if let Some(number) = other {
            imported
                .renumbered
                .push((one.table.one, number, added.number));
        }
    }
    imported
}

fn of_csv(path: &Path, bytes: &[u8]) -> Result<Vec<Fresh>, LogError> {
    let wrong = |place: String, words: String| LogError::Import {
        path: path.to_owned(),
        place,
        words,
    };
    let stem = path
        .file_stem()
        .map(|stem| stem.to_string_lossy().into_owned());
    let table = stem.as_deref().and_then(named).ok_or_else(|| {
        let names: Vec<&str> = TABLES.iter().map(|table| table.name).collect();
        let words = format!("name it by its table: {}.csv", names.join(".csv, "));
        wrong("its name".to_owned(), words)
    })?;
    let mut reader = csv::Reader::from_reader(bytes);
    let heads = reader
        .headers()
        .map_err(|error| wrong("line 1".to_owned(), error.to_string()))?;
    let heads: Vec<String> = heads.iter().map(str::to_owned).collect();
    let mut fresh = Vec::new();
    for record in reader.records() {
        let record = record.map_err(|error| wrong("its lines".to_owned(), error.to_string()))?;
        let line = record.position().map_or(0, csv::Position::line);
        let place = || format!("line {line}");
        let mut one = Fresh::of(table);
        for (head, text) in heads
            .iter()
            .zip(record.iter())
            .filter(|(_, text)| !text.is_empty())
        {
            let taken = put(&mut one, head, text, &Given::Csv);
            taken.map_err(|words| wrong(place(), words))?;
        }
        fresh.push(one);
    }
    Ok(fresh)
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Whole {
    oddside_log: i64,
    tables: BTreeMap<String, Vec<BTreeMap<String, Box<RawValue>>>>,
}

fn of_json(path: &Path, bytes: &[u8]) -> Result<Vec<Fresh>, LogError> {
    let wrong = |place: String, words: String| LogError::Import {
        path: path.to_owned(),
        place,
        words,
    };
    let whole: Whole = serde_json::from_slice(bytes)
        .map_err(|error| wrong(format!("line {}", error.line()), error.to_string()))?;
    if whole.oddside_log > known_version() {
        let words = "was written by a newer oddside: take that to read it".to_owned();
        return Err(wrong("its version".to_owned(), words));
    }
    let mut fresh = Vec::new();
    for (name, entries) in &whole.tables {
        let table = named(name).ok_or_else(|| {
            let words = format!("there is no table \"{name}\"");
            wrong("its tables".to_owned(), words)
        })?;
        for (at, entry) in entries.iter().enumerate() {
            let mut one = Fresh::of(table);
            for (key, raw) in entry {
                let taken = put(&mut one, key, raw.get(), &Given::Json(raw));
                taken.map_err(|words| wrong(format!("{name}, entry {}", at + 1), words))?;
            }
            fresh.push(one);
        }
    }
    Ok(fresh)
}

/// How a value is written.
enum Given<'a> {
    /// As it stands.
    Csv,
    /// With quotes round words.
    Json(&'a RawValue),
}

fn put(one: &mut Fresh, key: &str, raw: &str, given: &Given<'_>) -> Result<(), String> {
    let text = || match given {
        Given::Csv => Ok(raw.to_owned()),
        Given::Json(_) => serde_json::from_str::<String>(raw)
            .map_err(|_| format!("{key} is to be words in quotes, and is {raw}")),
    };
    match key {
        "id" => one.id = Some(text()?),
        "written" => one.written = Some(text()?),
        "number" => {
            let number = raw
                .parse()
                .map_err(|_| format!("number is to be whole, and is {raw}"))?;
            one.number = Some(number);
        }
        _ => {
            let column = column(one.table, key)?;
            let value = match column.kept_as() {
                "INTEGER" => raw.parse().ok().map(Value::Whole),
                "REAL" => match given {
                    Given::Csv => raw.parse().ok(),
                    Given::Json(raw) => number_of(raw),
                }
                .filter(|number| number.is_finite())
                .map(Value::Real),
                _ => Some(Value::Text(text()?)),
            };
            let value = value.ok_or_else(|| format!("{key} is to be a number, and is {raw}"))?;
            one.values.insert(column.name(), value);
        }
    }
    Ok(())
}

fn column(table: &'static Table, name: &str) -> Result<&'static Column, String> {
    let found = table.columns.iter().find(|column| column.name() == name);
    found.ok_or_else(|| {
        let known: Vec<String> = table.columns.iter().map(Column::name).collect();
        format!(
            "there is no column \"{name}\": there are {}",
            known.join(", ")
        )
    })
}
