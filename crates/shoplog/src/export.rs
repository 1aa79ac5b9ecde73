//! The whole log as open files: a CSV file a table, or one JSON file.

use std::path::Path;

use serde_json::{Map, Value as Json, value::RawValue};

use crate::entry::{Entry, read, select};
use crate::error::LogError;
use crate::log::{Log, known_version};
use crate::table::{OF_ALL, TABLES, Table};
use crate::value::Value;

/// The log as CSV: name and text of a file for each table, whose first line names the columns. An
/// empty place is a value that was not given.
///
/// # Errors
///
/// What the file says.
pub fn csv(log: &Log) -> Result<Vec<(String, Vec<u8>)>, LogError> {
    let files = TABLES.iter().map(|table| {
        let bytes = csv_of(log, table)?;
        Ok((format!("{}.csv", table.name), bytes))
    });
    files.collect()
}

/// The log as one JSON object: its version, and for each table a list of entries under the full
/// names of the columns.
///
/// # Errors
///
/// What the file says.
pub fn json(log: &Log) -> Result<String, LogError> {
    let mut tables = Map::new();
    for table in &TABLES {
        let entries = all(log, table)?;
        let entries = entries.iter().map(|entry| of_entry(table, entry));
        tables.insert(table.name.to_owned(), Json::Array(entries.collect()));
    }
    let whole = serde_json::json!({ "oddside_log": known_version(), "tables": tables });
    Ok(format!("{whole:#}\n"))
}

/// An entry as JSON.
pub fn of_entry(table: &Table, entry: &Entry) -> Json {
    let mut whole = Map::new();
    whole.insert("id".to_owned(), Json::from(entry.id.as_str()));
    whole.insert("number".to_owned(), Json::from(entry.number));
    whole.insert("written".to_owned(), Json::from(entry.written.as_str()));
    for column in table.columns {
        let name = column.name();
        let value = match entry.values.get(&name) {
            Some(Value::Whole(number)) => Json::from(*number),
            Some(Value::Real(number)) => Json::from(*number),
            Some(Value::Text(text)) => Json::from(text.as_str()),
            None => continue,
        };
        whole.insert(name, value);
    }
    Json::Object(whole)
}

/// Every entry of a table, in order.
pub(crate) fn all(log: &Log, table: &Table) -> Result<Vec<Entry>, LogError> {
    let sql = format!("{} ORDER BY number", select(table));
    let mut query = log.connection.prepare(&sql)?;
    let rows = query.query_map([], |row| read(table, row))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

fn csv_of(log: &Log, table: &Table) -> Result<Vec<u8>, LogError> {
    let mut to = csv::Writer::from_writer(Vec::new());
    let own = table.columns.iter().map(|column| column.name());
    let heads = OF_ALL
        .iter()
        .map(|(name, ..)| (*name).to_owned())
        .chain(own);
    let heads: Vec<String> = heads.collect();
    let mut rows = vec![heads.clone()];
    for entry in all(log, table)? {
        let mut row = vec![entry.id, entry.number.to_string(), entry.written];
        let place = |name: &String| {
            entry
                .values
                .get(name)
                .map_or_else(String::new, Value::to_string)
        };
        row.extend(heads.iter().skip(OF_ALL.len()).map(place));
        rows.push(row);
    }
    let written = rows.iter().try_for_each(|row| to.write_record(row));
    let disk = |error: std::io::Error| LogError::Disk {
        path: Path::new(table.name).to_owned(),
        error,
    };
    written.map_err(|error| disk(std::io::Error::other(error)))?;
    to.into_inner().map_err(|error| disk(error.into_error()))
}

/// A number of JSON as it was written, so that its last digit is read as it stands.
pub(crate) fn number_of(raw: &RawValue) -> Option<f64> {
    raw.get().parse().ok()
}
