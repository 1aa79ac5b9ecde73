//! What can still be read of a damaged log, written into a new one, with a report.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use rusqlite::{Connection, OpenFlags};

use crate::entry::{Entry, Fresh, read, select, written};
use crate::error::LogError;
use crate::log::{Log, migrated};
use crate::table::{TABLES, Table};

/// What was saved.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Salvaged {
    /// Entries saved, by table, in the order of the tables.
    pub saved: Vec<(&'static str, usize)>,
    /// Tables of which a part could not be read.
    pub torn: Vec<&'static str>,
    /// The highest number saved of each torn table: the last good record.
    pub last: Vec<(&'static str, i64)>,
    /// Links to entries that are lost; they are left empty.
    pub links_lost: usize,
    /// Whether the head of the file was lost and put back as this program writes it.
    pub head_lost: bool,
}

/// Rows looked for one by one behind a torn place. A shop of a lifetime stays far below.
const MOST_ROWS: i64 = 2_000_000;

/// Bytes of a page, as the log is made.
const PAGE: usize = 4096;

/// Reads a damaged log as far as it goes and writes what was read into a new one. The damaged file
/// stays as it is.
///
/// # Errors
///
/// A file in the way, a disk that says no, a file of which nothing can be read.
pub fn salvage(damaged: &Path, to: &Path) -> Result<Salvaged, LogError> {
    if to.exists() {
        return Err(LogError::InTheWay {
            path: to.to_owned(),
        });
    }
    if !damaged.is_file() {
        let path = damaged.to_owned();
        return Err(LogError::NotThere { path });
    }
    let mut report = Salvaged::default();
    let mut fresh = Log::open(to)?;
    let headless = to.with_extension("headless");
    let source = match readable(damaged) {
        Some(source) => source,
        None => {
            report.head_lost = true;
            with_new_head(damaged, to, &headless)?;
            let lost = || LogError::Damaged {
                path: damaged.to_owned(),
                words: "nothing of it can be read: take the last backup".to_owned(),
            };
            readable(&headless).ok_or_else(lost)?
        }
    };
    fresh
        .connection
        .pragma_update(None, "foreign_keys", false)?;
    for table in &TABLES {
        let (entries, torn) = rows(&source, table);
        report.saved.push((table.name, entries.len()));
        if torn {
            report.torn.push(table.name);
            let last = entries.iter().map(|entry| entry.number).max().unwrap_or(0);
            report.last.push((table.name, last));
        }
        kept(&mut fresh, table, entries)?;
    }
    report.links_lost = links_emptied(&fresh)?;
    fresh.connection.pragma_update(None, "foreign_keys", true)?;
    drop(source);
    // Only there where the head was lost.
    let _ = fs::remove_file(&headless);
    fresh.check()?;
    Ok(report)
}

/// The damaged file as far as it opens and names its tables.
fn readable(path: &Path) -> Option<Connection> {
    let connection = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY).ok()?;
    let sql = "SELECT count(*) FROM sqlite_schema";
    let tables: i64 = connection.query_row(sql, [], |row| row.get(0)).ok()?;
    (tables > 0).then_some(connection)
}

/// The first page is the same in every log made by the same steps, but for the count of pages.
fn with_new_head(damaged: &Path, fresh: &Path, to: &Path) -> Result<(), LogError> {
    let disk = |path: &Path| {
        let path = path.to_owned();
        move |error| LogError::Disk { path, error }
    };
    let whole = fresh.with_extension("whole");
    let mut made = Connection::open(&whole)?;
    migrated(&mut made)?;
    drop(made);
    let head = fs::read(&whole).map_err(disk(&whole))?;
    fs::remove_file(&whole).map_err(disk(&whole))?;
    let mut bytes = fs::read(damaged).map_err(disk(damaged))?;
    if bytes.len() < PAGE || head.len() < PAGE {
        return Ok(());
    }
    bytes[..PAGE].copy_from_slice(&head[..PAGE]);
    let pages = u32::try_from(bytes.len() / PAGE).unwrap_or(u32::MAX);
    bytes[28..32].copy_from_slice(&pages.to_be_bytes());
    fs::write(to, bytes).map_err(disk(to))
}

/// Rows from the front, from the back, and one by one in between; and whether any was unreadable.
fn rows(source: &Connection, table: &Table) -> (Vec<Entry>, bool) {
    let mut found: BTreeMap<i64, Entry> = BTreeMap::new();
    let front = run(source, table, "ORDER BY rowid", &mut found);
    let from = found.keys().next_back().copied().unwrap_or(0);
    if front {
        return (found.into_values().collect(), false);
    }
    let before = found.len();
    let _ = run(source, table, "ORDER BY rowid DESC", &mut found);
    let behind = found.range(from + 1..).next().map(|(row, _)| *row);
    let to = behind.unwrap_or_else(|| highest(source, table).unwrap_or(from + before as i64));
    for row in (from + 1)..to.min(from + MOST_ROWS) {
        let _ = run(source, table, &format!("WHERE rowid = {row}"), &mut found);
    }
    (found.into_values().collect(), true)
}

/// Whether all rows that were asked for could be read.
fn run(source: &Connection, table: &Table, which: &str, to: &mut BTreeMap<i64, Entry>) -> bool {
    let sql = select(table).replacen(" FROM ", ", rowid FROM ", 1);
    let Ok(mut query) = source.prepare(&format!("{sql} {which}")) else {
        return false;
    };
    let at = table.columns.len() + 3;
    let rows = query.query_map([], |row| Ok((row.get::<_, i64>(at)?, read(table, row)?)));
    let Ok(rows) = rows else {
        return false;
    };
    for row in rows {
        match row {
            Ok((row, entry)) => to.insert(row, entry),
            Err(_) => return false,
        };
    }
    true
}

fn highest(source: &Connection, table: &Table) -> Option<i64> {
    let sql = format!("SELECT max(rowid) FROM {}", table.name);
    source.query_row(&sql, [], |row| row.get(0)).ok()
}

fn kept(fresh: &mut Log, table: &'static Table, entries: Vec<Entry>) -> Result<(), LogError> {
    let transaction = fresh.connection.transaction()?;
    for entry in entries {
        let one = Fresh {
            table,
            id: Some(entry.id),
            number: Some(entry.number),
            written: Some(entry.written),
            values: entry.values,
        };
        match written(&transaction, &one) {
            // A row whose id was overwritten is no entry any more.
            Ok(_) | Err(LogError::BadId(_)) => {}
            Err(error) => return Err(error),
        }
    }
    Ok(transaction.commit()?)
}

/// Empties links to entries that are lost; how many.
fn links_emptied(fresh: &Log) -> Result<usize, LogError> {
    let mut emptied = 0;
    for table in &TABLES {
        for (column, to) in table.points_to() {
            let (name, key) = (table.name, column.key);
            let sql = format!(
                "UPDATE {name} SET {key} = NULL WHERE {key} IS NOT NULL \
                 AND NOT EXISTS (SELECT 1 FROM {to} WHERE {to}.id = {name}.{key})"
            );
            emptied += fresh.connection.execute(&sql, [])?;
        }
    }
    Ok(emptied)
}
