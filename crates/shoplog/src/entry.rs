//! Entries written, found, changed and listed.

use std::collections::BTreeMap;

use rusqlite::{Connection, OptionalExtension, Row, Transaction, TransactionBehavior, params};

use crate::error::LogError;
use crate::log::Log;
use crate::table::{TABLES, Table, named};
use crate::value::Value;

/// An entry as it stands in the log.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Its id.
    pub id: String,
    /// Its number among those of its table.
    pub number: i64,
    /// When it was written down, in universal time.
    pub written: String,
    /// What is filled, by the full name of the column.
    pub values: BTreeMap<String, Value>,
}

/// An entry to be written.
#[derive(Clone, Debug, PartialEq)]
pub struct Fresh {
    /// The table.
    pub table: &'static Table,
    /// Its id, where whoever writes has chosen one: the same id twice is written once.
    pub id: Option<String>,
    /// Its number, where it comes from another log and has one.
    pub number: Option<i64>,
    /// When it was written down, where that was not now.
    pub written: Option<String>,
    /// What is filled, by the full name of the column.
    pub values: BTreeMap<String, Value>,
}

/// What became of an entry that was to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Added {
    /// Its id.
    pub id: String,
    /// Its number.
    pub number: i64,
    /// Whether it was not there before.
    pub new: bool,
}

impl Fresh {
    /// An empty entry of a table.
    pub fn of(table: &'static Table) -> Fresh {
        Fresh {
            table,
            id: None,
            number: None,
            written: None,
            values: BTreeMap::new(),
        }
    }

    /// With a value of a column, by its key.
    pub fn with(mut self, key: &str, value: Value) -> Fresh {
        if let Some(column) = self.table.column(key) {
            self.values.insert(column.name(), value);
        }
        self
    }

    /// With words typed for a key; links are looked up in the log.
    ///
    /// # Errors
    ///
    /// A key that the table lacks, a value that is not understood, a link to nothing.
    pub fn typed(mut self, log: &Log, key: &str, typed: &str) -> Result<Fresh, LogError> {
        let (name, value) = log.typed(self.table, key, typed)?;
        self.values.insert(name, value);
        Ok(self)
    }
}

impl Log {
    /// Writes entries, all or none; when this returns they are on the disk. One whose id is there
    /// already is left as it stands.
    ///
    /// # Errors
    ///
    /// A log that is only read, a full disk, a link to nothing.
    pub fn add(&mut self, fresh: &[Fresh]) -> Result<Vec<Added>, LogError> {
        self.writable()?;
        let behaviour = TransactionBehavior::Immediate;
        let transaction = self.connection.transaction_with_behavior(behaviour)?;
        let added = fresh.iter().map(|one| written(&transaction, one));
        let added: Vec<Added> = added.collect::<Result<_, _>>()?;
        for (one, _) in fresh.iter().zip(&added).filter(|(_, added)| added.new) {
            links(&transaction, one)?;
        }
        transaction.commit()?;
        Ok(added)
    }

    /// Changes a value of an entry and keeps what stood there; nothing for a value empties it.
    ///
    /// # Errors
    ///
    /// As [`Log::add`], and a key that the table lacks.
    pub fn change(
        &mut self,
        table: &'static Table,
        id: &str,
        key: &str,
        value: Option<Value>,
    ) -> Result<(), LogError> {
        self.writable()?;
        let column = table.column(key).ok_or_else(|| no_column(table, key))?;
        let name = column.name();
        let was = self.entry(table, id)?.values.remove(&name);
        if was == value {
            return Ok(());
        }
        let behaviour = TransactionBehavior::Immediate;
        let transaction = self.connection.transaction_with_behavior(behaviour)?;
        let sql = format!("UPDATE {} SET \"{name}\" = ?1 WHERE id = ?2", table.name);
        transaction.execute(&sql, params![value, id])?;
        let text = |value: Option<Value>| value.map(|value| Value::Text(value.to_string()));
        let kept = [
            ("of_table", Some(Value::Text(table.name.to_owned()))),
            ("of", Some(Value::Text(id.to_owned()))),
            ("what", Some(Value::Text(name))),
            ("was", text(was)),
            ("became", text(value)),
        ];
        let changes = Fresh::of(&crate::table::around::CHANGES);
        let filled = kept
            .into_iter()
            .filter_map(|(key, value)| Some((key, value?)));
        let change = filled.fold(changes, |change, (key, value)| change.with(key, value));
        written(&transaction, &change)?;
        transaction.commit()?;
        Ok(())
    }

    /// The entry of an id.
    ///
    /// # Errors
    ///
    /// [`LogError::NoEntry`].
    pub fn entry(&self, table: &'static Table, id: &str) -> Result<Entry, LogError> {
        let sql = format!("{} WHERE id = ?1", select(table));
        let found = self
            .connection
            .query_row(&sql, [id], |row| read(table, row));
        found.optional()?.ok_or_else(|| LogError::NoEntry {
            table: table.one,
            asked: id.to_owned(),
        })
    }

    /// The id of what a founder calls an entry: its number, `last`, its id or the start of it.
    ///
    /// # Errors
    ///
    /// Where there is none, or more than one.
    pub fn find(&self, table: &'static Table, asked: &str) -> Result<String, LogError> {
        let name = table.name;
        let (sql, key) = match asked.trim() {
            "last" => (
                format!("SELECT id FROM {name} WHERE ?1 <> '' ORDER BY number DESC LIMIT 1"),
                "last".to_owned(),
            ),
            number if number.parse::<i64>().is_ok() && number.len() < 9 => (
                format!("SELECT id FROM {name} WHERE number = CAST(?1 AS INTEGER)"),
                number.to_owned(),
            ),
            id if id.len() >= 4 && id.bytes().all(|byte| byte.is_ascii_hexdigit()) => (
                format!("SELECT id FROM {name} WHERE id GLOB ?1 LIMIT 9"),
                format!("{}*", id.to_lowercase()),
            ),
            other => (
                format!("SELECT id FROM {name} WHERE ?1 = ''"),
                other.to_owned(),
            ),
        };
        let mut query = self.connection.prepare(&sql)?;
        let found = query.query_map([&key], |row| row.get(0))?;
        let mut found: Vec<String> = found.collect::<Result<_, _>>()?;
        match (found.pop(), found.len()) {
            (Some(id), 0) => Ok(id),
            (Some(_), more) => Err(LogError::NotOne {
                asked: asked.to_owned(),
                count: more + 1,
            }),
            (None, _) => Err(LogError::NoEntry {
                table: table.one,
                asked: asked.to_owned(),
            }),
        }
    }

    /// What was typed for a key, as it is kept, under the full name of its column.
    ///
    /// # Errors
    ///
    /// A key that the table lacks, a value that is not understood, a link to nothing.
    pub fn typed(
        &self,
        table: &'static Table,
        key: &str,
        typed: &str,
    ) -> Result<(String, Value), LogError> {
        let column = table.column(key).ok_or_else(|| no_column(table, key))?;
        let to = table
            .points_to()
            .find(|(points, _)| points.key == column.key);
        let value = match to.and_then(|(_, to)| named(to)) {
            Some(to) => Value::Text(self.find(to, typed)?),
            None => column.read(typed)?,
        };
        Ok((column.name(), value))
    }

    /// The last entries of a table, the newest first.
    ///
    /// # Errors
    ///
    /// What the file says.
    pub fn last(&self, table: &'static Table, count: usize) -> Result<Vec<Entry>, LogError> {
        let sql = format!("{} ORDER BY number DESC LIMIT ?1", select(table));
        let mut query = self.connection.prepare(&sql)?;
        let rows = query.query_map([count as i64], |row| read(table, row))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Every entry of a table that points to an entry by a key, in order.
    ///
    /// # Errors
    ///
    /// A key that the table lacks.
    pub fn pointing(
        &self,
        table: &'static Table,
        key: &str,
        id: &str,
    ) -> Result<Vec<Entry>, LogError> {
        let column = table.column(key).ok_or_else(|| no_column(table, key))?;
        let sql = format!(
            "{} WHERE \"{}\" = ?1 ORDER BY number",
            select(table),
            column.name()
        );
        let mut query = self.connection.prepare(&sql)?;
        let rows = query.query_map([id], |row| read(table, row))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// How many entries each table holds, in the order of the tables.
    ///
    /// # Errors
    ///
    /// What the file says.
    pub fn counts(&self) -> Result<Vec<(&'static Table, usize)>, LogError> {
        let count = |table: &'static Table| {
            let sql = format!("SELECT count(*) FROM {}", table.name);
            let found: i64 = self.connection.query_row(&sql, [], |row| row.get(0))?;
            Ok((table, usize::try_from(found).unwrap_or(0)))
        };
        TABLES.iter().map(count).collect()
    }

    /// The number of an entry, for people.
    ///
    /// # Errors
    ///
    /// [`LogError::NoEntry`].
    pub fn number(&self, table: &'static Table, id: &str) -> Result<i64, LogError> {
        Ok(self.entry(table, id)?.number)
    }
}

/// The keys that are wanted and not there.
pub fn half_filled(table: &Table, entry: &Entry) -> Vec<&'static str> {
    let lacking = |column: &&crate::column::Column| {
        column.wanted && !entry.values.contains_key(&column.name())
    };
    table
        .columns
        .iter()
        .filter(lacking)
        .map(|column| column.key)
        .collect()
}

/// Every column of a table by its full name, in order, as a statement asks for them.
pub(crate) fn select(table: &Table) -> String {
    let own = table
        .columns
        .iter()
        .map(|column| format!(", \"{}\"", column.name()));
    format!(
        "SELECT id, number, written{} FROM {}",
        own.collect::<String>(),
        table.name
    )
}

/// A row of [`select`].
pub(crate) fn read(table: &Table, row: &Row<'_>) -> rusqlite::Result<Entry> {
    let mut values = BTreeMap::new();
    for (at, column) in table.columns.iter().enumerate() {
        if let Some(value) = row.get::<_, Option<Value>>(at + 3)? {
            values.insert(column.name(), value);
        }
    }
    Ok(Entry {
        id: row.get(0)?,
        number: row.get(1)?,
        written: row.get(2)?,
        values,
    })
}

/// Writes an entry within a transaction, unless its id is there.
pub(crate) fn written(to: &Connection, fresh: &Fresh) -> Result<Added, LogError> {
    let table = fresh.table;
    let id = match &fresh.id {
        Some(id) if is_id(id) => id.clone(),
        Some(id) => return Err(LogError::BadId(id.clone())),
        None => to.query_row("SELECT lower(hex(randomblob(16)))", [], |row| row.get(0))?,
    };
    let there = format!("SELECT number FROM {} WHERE id = ?1", table.name);
    let there: Option<i64> = to.query_row(&there, [&id], |row| row.get(0)).optional()?;
    if let Some(number) = there {
        let new = false;
        return Ok(Added { id, number, new });
    }
    let number = number_for(to, fresh)?;
    let filled = fresh.values.iter().filter(|(_, value)| is_kept(value));
    let mut names = vec!["id", "number", "written"];
    let mut values: Vec<Value> = vec![Value::Text(id.clone()), Value::Whole(number)];
    values.push(Value::Text(when(to, fresh)?));
    let quoted: Vec<(String, Value)> = filled
        .map(|(name, value)| (format!("\"{name}\""), value.clone()))
        .collect();
    for (name, value) in &quoted {
        names.push(name);
        values.push(value.clone());
    }
    let marks = vec!["?"; names.len()].join(", ");
    let sql = format!(
        "INSERT INTO {} ({}) VALUES ({marks})",
        table.name,
        names.join(", ")
    );
    to.prepare(&sql)?
        .execute(rusqlite::params_from_iter(values))?;
    let new = true;
    Ok(Added { id, number, new })
}

/// Whether this is an id.
pub fn is_id(text: &str) -> bool {
    let digit = |byte: u8| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte);
    text.len() == 32 && text.bytes().all(digit)
}

/// An empty text is an empty place, and what is no number is not written.
fn is_kept(value: &Value) -> bool {
    match value {
        Value::Text(text) => !text.is_empty(),
        Value::Real(real) => real.is_finite(),
        Value::Whole(_) => true,
    }
}

fn when(to: &Connection, fresh: &Fresh) -> rusqlite::Result<String> {
    match &fresh.written {
        Some(written) => Ok(written.clone()),
        None => to.query_row("SELECT strftime('%Y-%m-%dT%H:%M:%fZ', 'now')", [], |row| {
            row.get(0)
        }),
    }
}

/// Its own number where that is free, else the next.
fn number_for(to: &Connection, fresh: &Fresh) -> rusqlite::Result<i64> {
    let name = fresh.table.name;
    if let Some(number) = fresh.number {
        let sql = format!("SELECT count(*) FROM {name} WHERE number = ?1");
        let taken: i64 = to.query_row(&sql, [number], |row| row.get(0))?;
        if taken == 0 {
            return Ok(number);
        }
    }
    let sql = format!("SELECT coalesce(max(number), 0) + 1 FROM {name}");
    to.query_row(&sql, [], |row| row.get(0))
}

/// Refuses an entry that points to nothing.
fn links(to: &Transaction<'_>, fresh: &Fresh) -> Result<(), LogError> {
    for (column, table) in fresh.table.points_to() {
        let Some(id) = fresh.values.get(&column.name()) else {
            continue;
        };
        let sql = format!("SELECT count(*) FROM {table} WHERE id = ?1");
        let found: i64 = to.query_row(&sql, [id], |row| row.get(0))?;
        if found == 0 {
            return Err(LogError::Dangling {
                table: fresh.table.one,
                key: column.key,
            });
        }
    }
    Ok(())
}

fn no_column(table: &'static Table, key: &str) -> LogError {
    let known: Vec<&str> = table.columns.iter().map(|column| column.key).collect();
    LogError::NoColumn {
        table: table.one,
        key: key.to_owned(),
        known: known.join(", "),
    }
}

/// The table of a name.
///
/// # Errors
///
/// [`LogError::NoTable`] with those there are.
pub fn table_of(name: &str) -> Result<&'static Table, LogError> {
    named(name).ok_or_else(|| {
        let known: Vec<&str> = TABLES.iter().map(|table| table.name).collect();
        LogError::NoTable {
            name: name.to_owned(),
            known: known.join(", "),
        }
    })
}
