//! The plain files of the sand bench move into the log: what they say as entries, and the files
//! themselves whole, so that nothing is lost.

use bench::book::file::{ClayKind, HEAP_FILE, HeapFile, meant};
use bench::tested::readings::{READINGS_FILE, ReadingsFile, TESTS};
use bench::tested::sand_file::SandFile;
use bench::trouble::BenchError;
use job::file_fault::{FileFault, read};
use measure::matter::Mass;
use sha2::{Digest, Sha256};
use thiserror::Error;

use crate::column::is_time;
use crate::entry::Fresh;
use crate::error::LogError;
use crate::log::Log;
use crate::table::around::FILES;
use crate::table::sand::{BATCHES, HEAPS, SAND_TESTS};
use crate::value::Value;

/// What became of a file.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct MovedIn {
    /// Entries that are new; the file itself is one.
    pub new: usize,
    /// Entries that were there already.
    pub there: usize,
}

/// Why a file was not taken.
#[derive(Debug, Error)]
pub enum MoveError {
    /// A file that cannot be read.
    #[error(transparent)]
    File(#[from] Box<FileFault>),
    /// A file that does not add up.
    #[error(transparent)]
    Bench(#[from] BenchError),
    /// The log says no.
    #[error(transparent)]
    Log(#[from] LogError),
}

/// Takes a file in by its name: a heap's book, a book of readings, a sand; any other file of the
/// bench is kept whole. The same file twice is taken once, and one that has grown by what it has
/// grown.
///
/// # Errors
///
/// A file that its own room would refuse; a log that says no.
pub fn move_in(log: &mut Log, name: &str, text: &str) -> Result<MovedIn, MoveError> {
    let base = name.rsplit('/').next().unwrap_or(name);
    let mut fresh = vec![whole(name, text)];
    let first = text
        .lines()
        .map(str::trim)
        .find(|line| !line.is_empty() && !line.starts_with('#'));
    if base == HEAP_FILE || (base.starts_with("heap") && base.ends_with(".toml")) {
        fresh.extend(of_heap(name, text)?);
    } else if base == READINGS_FILE {
        fresh.extend(of_readings(name, text)?);
    } else if base.starts_with("sand") && base.ends_with(".toml") && first.is_some() {
        fresh.extend(of_sand(name, text)?);
    }
    let added = log.add(&fresh)?;
    let new = added.iter().filter(|one| one.new).count();
    if let Some(file) = added.first().filter(|file| !file.new) {
        log.change(&FILES, &file.id, "text", Some(Value::Text(text.to_owned())))?;
    }
    let there = added.len() - new;
    Ok(MovedIn { new, there })
}

/// The files as they moved in: name and text.
///
/// # Errors
///
/// What the log says.
pub fn moved_in(log: &Log) -> Result<Vec<(String, String)>, LogError> {
    let files = crate::export::all(log, &FILES)?;
    let text = |file: &crate::entry::Entry, key: &str| {
        file.values
            .get(key)
            .and_then(Value::text)
            .unwrap_or_default()
            .to_owned()
    };
    Ok(files
        .iter()
        .map(|file| (text(file, "name"), text(file, "text")))
        .collect())
}

fn whole(name: &str, text: &str) -> Fresh {
    let mut fresh = Fresh::of(&FILES)
        .with("name", Value::Text(name.to_owned()))
        .with("text", Value::Text(text.to_owned()));
    fresh.id = Some(id_of(&["file", name]));
    fresh
}

fn of_heap(name: &str, text: &str) -> Result<Vec<Fresh>, MoveError> {
    let book: HeapFile = read(name, text)?;
    let heap_id = id_of(&["heap", name]);
    let (bond, clay) = match book.clay {
        ClayKind::SodiumBentonite => ("bentonite", "sodium-bentonite"),
        ClayKind::CalciumBentonite => ("bentonite", "calcium-bentonite"),
        ClayKind::Other => ("other", "other"),
    };
    let words = |text: &str| Value::Text(text.to_owned());
    let mut heap = Fresh::of(&HEAPS)
        .with("name", words(&book.name))
        .with("mass", kilograms(book.mass.value))
        .with("bond", words(bond))
        .with("clay", words(clay));
    heap.id = Some(heap_id.clone());
    let mut fresh = vec![heap];
    for (at, record) in book.pour.iter().enumerate() {
        let (pour, renewal) = meant(record)?;
        let percent = |share: f64| Value::Real(share * 100.0);
        let mut batch = Fresh::of(&BATCHES)
            .with("heap", words(&heap_id))
            .with("clay_burnt", percent(pour.clay_burnt))
            .with("organic_burnt", percent(pour.organic_burnt))
            .with("dried", percent(pour.dried))
            .with("core_sand", kilograms(pour.core_sand))
            .with("core_binder", kilograms(pour.core_binder))
            .with("parting", kilograms(pour.parting))
            .with("crust_out", percent(renewal.crust_out))
            .with("heap_out", percent(renewal.heap_out))
            .with("sand", kilograms(renewal.sand))
            .with("clay", kilograms(renewal.clay))
            .with("binder", kilograms(renewal.organic))
            .with("water", kilograms(renewal.water));
        batch = match is_time(&record.day) {
            true => batch.with("mixed", words(&record.day)),
            false => batch.with("note", words(&record.day)),
        };
        batch.id = Some(id_of(&["pour", name, &at.to_string(), &record.day]));
        fresh.push(batch);
    }
    Ok(fresh)
}

fn of_readings(name: &str, text: &str) -> Result<Vec<Fresh>, MoveError> {
    let book: ReadingsFile = read(name, text)?;
    let readings = book.reading.iter().enumerate().map(|(at, reading)| {
        let unit = TESTS
            .iter()
            .find(|test| test.name == reading.test)
            .map_or("", |test| test.unit);
        let words = |text: &str| Value::Text(text.to_owned());
        let mut fresh = Fresh::of(&SAND_TESTS)
            .with("day", words(&reading.day))
            .with("test", words(&reading.test))
            .with("value", Value::Real(reading.value))
            .with("unit", words(unit))
            .with("good", Value::Whole(i64::from(reading.good)));
        if let Some(who) = &reading.who {
            fresh = fresh.with("who", words(who));
        }
        let (at, value) = (at.to_string(), reading.value.to_string());
        let parts = ["reading", name, &at, &reading.day, &reading.test, &value];
        fresh.id = Some(id_of(&parts));
        fresh
    });
    Ok(readings.collect())
}

/// The moisture of a sand, if it was weighed; all else stays in the file.
fn of_sand(name: &str, text: &str) -> Result<Vec<Fresh>, MoveError> {
    let sand: SandFile = read(name, text)?;
    let moisture = sand.moisture.iter().map(|handful| {
        let (wet, dry) = (handful.wet.value, handful.dry.value);
        let words = |text: &str| Value::Text(text.to_owned());
        let mut fresh = Fresh::of(&SAND_TESTS)
            .with("day", words(&sand.name))
            .with("test", words("moisture"))
            .with("value", Value::Real((wet - dry) / wet * 100.0))
            .with("unit", words("%"));
        fresh.id = Some(id_of(&[
            "sand",
            name,
            &wet.as_g().to_string(),
            &dry.as_g().to_string(),
        ]));
        fresh
    });
    Ok(moisture.collect())
}

fn kilograms(mass: Mass) -> Value {
    Value::Real(mass.as_kg())
}

/// The same things get the same id: the first half of a hash.
fn id_of(parts: &[&str]) -> String {
    let hash = Sha256::digest(parts.join("\0").as_bytes());
    hash.iter()
        .take(16)
        .map(|byte| format!("{byte:02x}"))
        .collect()
}
