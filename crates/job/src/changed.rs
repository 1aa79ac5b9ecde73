//! A job's file with one thing in it changed; notes, order and everything else stay as typed.

use serde::{Deserialize, Serialize};
use thiserror::Error;
use toml_edit::{Array, DocumentMut, Item, Table, Value, value};

use crate::typed_key::{KeyKind, TypedKey};

/// What stands behind a key.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Typed {
    /// Yes or no.
    Yes(bool),
    /// A whole number.
    Count(i64),
    /// Words, or a figure with its unit.
    Text(String),
    /// Several of them.
    List(Vec<String>),
}

/// Why a file is not changed.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ChangeError {
    /// A file that cannot be read.
    #[error("the file cannot be changed here, since it cannot be read: {0}")]
    Unreadable(
        /// What is wrong with it.
        String,
    ),
    /// Something of another kind than the key takes.
    #[error("{key} takes {wanted}")]
    Kind {
        /// The key.
        key: &'static str,
        /// What it takes.
        wanted: &'static str,
    },
    /// A table on the way that is none.
    #[error("{key} has no place in this file: {table} is written there as something else")]
    NoPlace {
        /// The key.
        key: &'static str,
        /// What is no table.
        table: String,
    },
}

/// What a file says under a key; nothing where it says nothing, or something of another kind.
///
/// # Errors
///
/// A file that cannot be read.
pub fn typed(text: &str, key: &TypedKey) -> Result<Option<Typed>, ChangeError> {
    let file = read(text)?;
    let mut item = Some(file.as_item());
    for step in key.path.split('.') {
        item = item.and_then(|item| item.get(step));
    }
    Ok(item.and_then(Item::as_value).and_then(of_value))
}

/// The text of a file with a key changed, or taken away where there is nothing to write.
///
/// # Errors
///
/// A file that cannot be read, and a value of another kind than the key takes.
pub fn changed(text: &str, key: &TypedKey, to: Option<&Typed>) -> Result<String, ChangeError> {
    let mut file = read(text)?;
    if let Some(to) = to {
        fits(key, to)?;
    }
    let (tables, last) = key
        .path
        .rsplit_once('.')
        .map_or((None, key.path), |(tables, last)| (Some(tables), last));
    let mut table: &mut Table = file.as_table_mut();
    for step in tables.into_iter().flat_map(|tables| tables.split('.')) {
        if !table.contains_key(step) && to.is_none() {
            return Ok(text.to_owned());
        }
        let found = table.entry(step).or_insert_with(|| Item::Table(hidden()));
        table = found.as_table_mut().ok_or_else(|| ChangeError::NoPlace {
            key: key.path,
            table: step.to_owned(),
        })?;
    }
    match to {
        None => {
            table.remove(last);
            tables
                .into_iter()
                .for_each(|path| drop_empty(&mut file, path));
        }
        Some(to) => put(table, last, to_value(to)),
    }
    Ok(file.to_string())
}

/// A table that shows no head of its own before something stands in it.
fn hidden() -> Table {
    let mut table = Table::new();
    table.set_implicit(true);
    table
}

/// Takes a table away that nothing stands in any more, unless notes belong to it: what was put into
/// a file and taken back leaves it as it was.
fn drop_empty(file: &mut DocumentMut, path: &str) {
    let (above, last) = path.rsplit_once('.').unwrap_or(("", path));
    // Notes behind the head of a table within another were there before it was.
    if above.is_empty() && is_noted(&file.to_string(), path) {
        return;
    }
    let mut table: &mut Table = file.as_table_mut();
    for step in above.split('.').filter(|step| !step.is_empty()) {
        let Some(next) = table.get_mut(step).and_then(Item::as_table_mut) else {
            return;
        };
        table = next;
    }
    let plain = |table: &Table| {
        let before = table.decor().prefix().and_then(|notes| notes.as_str());
        table.is_empty() && !before.unwrap_or_default().contains('#')
    };
    if table.get(last).and_then(Item::as_table).is_some_and(plain) {
        table.remove(last);
    }
}

/// Whether notes stand between the head of a table and the next one.
fn is_noted(text: &str, path: &str) -> bool {
    let head = format!("[{path}]");
    let after = text
        .lines()
        .skip_while(|line| line.trim() != head)
        .skip(1)
        .take_while(|line| !line.trim_start().starts_with('['));
    after.into_iter().any(|line| line.contains('#'))
}

/// Puts a value where one stands, with the note behind it, or at the end of its table.
fn put(table: &mut Table, key: &str, mut new: Value) {
    match table.get_mut(key).and_then(Item::as_value_mut) {
        Some(old) => {
            *new.decor_mut() = old.decor().clone();
            *old = new;
        }
        None => {
            table.insert(key, value(new));
        }
    }
}

fn read(text: &str) -> Result<DocumentMut, ChangeError> {
    text.parse()
        .map_err(|error: toml_edit::TomlError| ChangeError::Unreadable(error.to_string()))
}

fn fits(key: &TypedKey, to: &Typed) -> Result<(), ChangeError> {
    let wanted = match key.kind {
        KeyKind::Yes => (matches!(to, Typed::Yes(_)), "yes or no"),
        KeyKind::Count => (matches!(to, Typed::Count(1..)), "a whole number from 1"),
        KeyKind::Places => (matches!(to, Typed::List(_)), "a list of places"),
        _ => (
            matches!(to, Typed::Text(_)),
            "words, or a figure with its unit",
        ),
    };
    match wanted {
        (true, _) => Ok(()),
        (false, wanted) => Err(ChangeError::Kind {
            key: key.path,
            wanted,
        }),
    }
}

fn of_value(value: &Value) -> Option<Typed> {
    let words = |value: &Value| value.as_str().map(str::to_owned);
    match value {
        Value::String(text) => Some(Typed::Text(text.value().clone())),
        Value::Boolean(yes) => Some(Typed::Yes(*yes.value())),
        Value::Integer(count) => Some(Typed::Count(*count.value())),
        Value::Float(_) => Some(Typed::Text(value.to_string().trim().to_owned())),
        Value::Array(list) => list
            .iter()
            .map(words)
            .collect::<Option<_>>()
            .map(Typed::List),
        Value::Datetime(_) | Value::InlineTable(_) => None,
    }
}

fn to_value(typed: &Typed) -> Value {
    match typed {
        Typed::Yes(yes) => (*yes).into(),
        Typed::Count(count) => (*count).into(),
        Typed::Text(text) => text.as_str().into(),
        Typed::List(list) => list.iter().map(String::as_str).collect::<Array>().into(),
    }
}
