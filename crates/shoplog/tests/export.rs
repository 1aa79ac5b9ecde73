//! Exports lose nothing, and a backup is the log.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::path::{Path, PathBuf};

use shoplog::backup::backup;
use shoplog::column::Holds;
use shoplog::entry::Fresh;
use shoplog::error::LogError;
use shoplog::export::{csv, json};
use shoplog::import::import;
use shoplog::log::Log;
use shoplog::table::TABLES;
use shoplog::table::melt::HEATS;
use shoplog::value::Value;

/// Numbers that a careless reader gets wrong in the last digit, and words that break a table.
const NUMBERS: [f64; 6] = [
    0.1,
    1.0 / 3.0,
    5e-324,
    1.797_693_134_862_315_7e308,
    -0.0,
    721.111_111_111_111_1,
];
const WORDS: [&str; 6] = [
    "plain",
    "a \"quoted\", one",
    "two\nlines\r\n",
    " ",
    "mœule ß 鋳",
    "=1+1",
];

/// A log in which every column of every table is filled, and left empty, in several entries.
fn filled(path: &Path) -> Log {
    let mut log = Log::open(path).expect("opens");
    for table in &TABLES {
        for at in 0..6 {
            let mut fresh = Fresh::of(table);
            for (number, column) in table.columns.iter().enumerate() {
                if (number + at) % 5 == 4 {
                    continue;
                }
                let value = match (column.holds, column.kept_as()) {
                    (Holds::Entry(to), _) => {
                        let to = shoplog::table::named(to).expect("a table");
                        Value::Text(log.find(to, "last").expect("there"))
                    }
                    (Holds::Flag, _) => Value::Whole(1),
                    (_, "INTEGER") => Value::Whole(i64::MAX - at as i64),
                    (_, "REAL") => Value::Real(NUMBERS[(number + at) % 6]),
                    _ => Value::Text(WORDS[(number + at) % 6].to_owned()),
                };
                fresh = fresh.with(column.key, value);
            }
            log.add(&[fresh]).expect("written");
        }
    }
    log
}

fn named(files: Vec<(String, Vec<u8>)>) -> Vec<(PathBuf, Vec<u8>)> {
    files
        .into_iter()
        .map(|(name, bytes)| (PathBuf::from(name), bytes))
        .collect()
}

#[test]
fn json_and_csv_come_back_to_the_last_digit() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = filled(&folder.path().join("log.sqlite"));
    let (first, tables) = (json(&log).expect("written"), csv(&log).expect("written"));
    let json_files = vec![(PathBuf::from("log.json"), first.clone().into_bytes())];
    for (at, files) in [json_files, named(tables.clone())].into_iter().enumerate() {
        let mut copy = Log::open(&folder.path().join(format!("copy{at}"))).expect("opens");
        let imported = import(&mut copy, &files).expect("taken");
        assert_eq!((imported.new, imported.there), (6 * TABLES.len(), 0));
        assert!(imported.renumbered.is_empty());
        assert_eq!(json(&copy).expect("written"), first);
        assert_eq!(csv(&copy).expect("written"), tables);
        let again = import(&mut copy, &files).expect("taken");
        assert_eq!(
            (again.new, again.there),
            (0, 6 * TABLES.len()),
            "twice does nothing twice"
        );
        assert_eq!(json(&copy).expect("written"), first);
    }
}

#[test]
fn two_logs_become_one_and_numbers_are_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut one = Log::open(&folder.path().join("one")).expect("opens");
    let mut other = Log::open(&folder.path().join("other")).expect("opens");
    one.add(&[Fresh::of(&HEATS)]).expect("written");
    other.add(&[Fresh::of(&HEATS)]).expect("written");
    let imported = import(&mut one, &named(csv(&other).expect("written"))).expect("taken");
    assert_eq!(imported.renumbered, [("heat", 1, 2)]);
}

#[test]
fn what_is_not_understood_is_told_with_its_place_and_nothing_is_taken() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = Log::open(&folder.path().join("log")).expect("opens");
    let good = "id,alloy,charge_kg\n,A356,2\n";
    for (name, text, told) in [
        (
            "heats.csv",
            "id,alloy,charge_kg\n,A356,2\n,A356,two\n",
            "line 3: charge_kg is to be a number",
        ),
        (
            "heats.csv",
            "id,colour\n,red\n",
            "there is no column \"colour\"",
        ),
        ("heats.csv", "id,alloy\n7,A356\n", "\"7\" is no id"),
        ("heats.csv", "id,alloy\n,A356,2\n", "its lines"),
        ("hats.csv", "id\n", "name it by its table"),
        (
            "log.json",
            "{\"oddside_log\": 9, \"tables\": {}}",
            "newer oddside",
        ),
        (
            "log.json",
            "{\"oddside_log\": 1, \"tables\": {\"hats\": []}}",
            "no table \"hats\"",
        ),
        ("log.json", "{", "line 1"),
    ] {
        let files = [(PathBuf::from(name), text.as_bytes().to_vec())];
        let error = import(&mut log, &files).expect_err("refused").to_string();
        assert!(error.contains(told), "{error}");
        assert_eq!(log.last(&HEATS, 9).expect("listed"), []);
    }
    import(&mut log, &[(PathBuf::from("heats.csv"), good.into())]).expect("ids are made");
    assert_eq!(log.last(&HEATS, 9).expect("listed").len(), 1);
}

#[test]
fn a_backup_taken_while_another_writes_is_whole() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.sqlite");
    let log = filled(&path);
    let before = log.counts().expect("counted")[6].1;
    let writing = std::thread::spawn(move || {
        let mut other = Log::open(&path).expect("opens");
        for _ in 0..200 {
            other.add(&[Fresh::of(&HEATS)]).expect("written");
        }
    });
    let copy = folder.path().join("backup.sqlite");
    backup(&log, &copy).expect("backed up");
    writing.join().expect("wrote");
    let found = Log::open_to_read(&copy).expect("opens");
    found.check().expect("sound");
    let heats = found.counts().expect("counted")[6];
    assert_eq!(heats.0.name, "heats");
    assert!((before..=before + 200).contains(&heats.1), "{}", heats.1);
    assert!(matches!(
        backup(&log, &copy),
        Err(LogError::InTheWay { .. })
    ));
}
