//! The log opened, written, asked and mended.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::fs;
use std::path::Path;

use shoplog::column::is_time;
use shoplog::entry::{Fresh, half_filled};
use shoplog::error::LogError;
use shoplog::log::Log;
use shoplog::question::{questions, questions_about};
use shoplog::salvage::salvage;
use shoplog::sent::{Sent, take};
use shoplog::table::castings::{CASTINGS, SIZES};
use shoplog::table::melt::{HEATS, POURS};
use shoplog::table::mould::MOULDS;
use shoplog::table::{TABLES, Table};
use shoplog::value::Value;

fn log_in(folder: &Path) -> Log {
    Log::open(&folder.join("log.sqlite")).expect("opens")
}

fn add(log: &mut Log, table: &'static Table, given: &[(&str, &str)]) -> String {
    let fresh = given.iter().fold(Fresh::of(table), |fresh, (key, text)| {
        fresh.typed(log, key, text).expect("understood")
    });
    log.add(&[fresh]).expect("written").remove(0).id
}

fn asked(log: &Log) -> Vec<String> {
    let found = questions(log).expect("asked");
    found
        .iter()
        .map(|question| question.words.id().to_owned())
        .collect()
}

#[test]
fn the_file_holds_the_tables_as_they_are_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = log_in(folder.path());
    let page = include_str!("../../../docs/log.md");
    let sql = include_str!("../migrations/0001_start.sql");
    for table in &TABLES {
        assert!(
            page.contains(&format!("### `{}`", table.name)),
            "{}",
            table.name
        );
        for column in table.columns {
            let name = column.name();
            let told = format!("| `{name}` |");
            assert!(page.contains(&told), "docs/log.md on {} {name}", table.name);
            let bare = format!("    {name} {}", column.kept_as());
            let quoted = format!("    \"{name}\" {}", column.kept_as());
            assert!(
                sql.contains(&bare) || sql.contains(&quoted),
                "{} {name}",
                table.name
            );
        }
        // Every column is asked for by name here: one that the file lacks is an error.
        assert_eq!(log.last(table, 1).expect("listed"), []);
    }
}

#[test]
fn what_is_typed_with_units_is_kept_and_found() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = log_in(folder.path());
    let heat = add(
        &mut log,
        &HEATS,
        &[("alloy", "A356"), ("charge", "4 lb 6 oz")],
    );
    let pour = add(
        &mut log,
        &POURS,
        &[("heat", "last"), ("temperature", "1330 F"), ("time", "6")],
    );
    let entry = log.entry(&POURS, &pour).expect("there");
    let temperature = entry.values["temperature_c"].number().expect("a number");
    assert!((temperature - 721.111).abs() < 0.01, "{temperature}");
    assert_eq!(entry.values["heat"], Value::Text(heat.clone()));
    assert_eq!(entry.values["time_s"], Value::Real(6.0));
    assert_eq!(half_filled(&POURS, &entry), ["mould", "poured"]);
    assert_eq!(log.find(&HEATS, "1").expect("by number"), heat);
    assert_eq!(log.find(&HEATS, &heat[..8]).expect("by its start"), heat);
    assert!(matches!(
        log.find(&HEATS, "2"),
        Err(LogError::NoEntry { .. })
    ));
    let words = |result: Result<Fresh, LogError>| result.expect_err("refused").to_string();
    let odd = words(Fresh::of(&POURS).typed(&log, "colour", "red"));
    assert!(
        odd.contains("a pour has no \"colour\": it has heat, mould"),
        "{odd}"
    );
    let odd = words(Fresh::of(&POURS).typed(&log, "how", "well"));
    assert!(odd.contains("not one of steady, broken"), "{odd}");
    assert!(Fresh::of(&POURS).typed(&log, "time", "6 kg").is_err());
}

#[test]
fn the_same_entry_twice_is_written_once_and_a_change_keeps_what_stood() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = log_in(folder.path());
    let mut fresh = Fresh::of(&HEATS)
        .typed(&log, "alloy", "zinc")
        .expect("understood");
    fresh.id = Some("0123456789abcdef0123456789abcdef".to_owned());
    let first = log.add(&[fresh.clone()]).expect("written");
    let again = log.add(&[fresh.clone()]).expect("taken");
    assert!(first[0].new && !again[0].new);
    assert_eq!(first[0].number, again[0].number);
    let id = first[0].id.as_str();
    let brass = Some(Value::Text("brass".to_owned()));
    log.change(&HEATS, id, "alloy", brass).expect("changed");
    let changes = log
        .last(&shoplog::table::around::CHANGES, 9)
        .expect("listed");
    assert_eq!(changes.len(), 1);
    assert_eq!(changes[0].values["was"], Value::Text("zinc".to_owned()));
    fresh.id = Some("pour 7".to_owned());
    assert!(matches!(log.add(&[fresh]), Err(LogError::BadId(_))));
}

#[test]
fn a_link_to_nothing_is_refused_and_nothing_of_the_lot_is_written() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = log_in(folder.path());
    let lost = Value::Text("00000000000000000000000000000000".to_owned());
    let lot = [Fresh::of(&HEATS), Fresh::of(&CASTINGS).with("pour", lost)];
    let error = log.add(&lot).expect_err("refused");
    assert!(
        matches!(error, LogError::Dangling { key: "pour", .. }),
        "{error}"
    );
    assert_eq!(log.last(&HEATS, 9).expect("listed"), []);
}

#[test]
fn contradictions_are_kept_and_asked_about() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = log_in(folder.path());
    add(
        &mut log,
        &HEATS,
        &[
            ("alloy", "A356"),
            ("charge", "2 kg"),
            ("melted", "2026-05-03T15:00"),
        ],
    );
    add(
        &mut log,
        &MOULDS,
        &[
            ("job", "bracket"),
            ("alloy", "A356"),
            ("closed", "2026-05-03T14:00"),
        ],
    );
    let pour = [
        ("heat", "last"),
        ("mould", "last"),
        ("poured", "2026-05-03T14:20"),
        ("planned_temperature", "720 C"),
        ("temperature", "1330 C"),
    ];
    let id = add(&mut log, &POURS, &pour);
    add(&mut log, &CASTINGS, &[("pour", "last"), ("mass", "2.3 kg")]);
    let casting = [("casting", "last"), ("along", "x")];
    let size = [("pattern", "100 mm"), ("measured", "102 mm")];
    add(&mut log, &SIZES, &[&casting[..], &size[..]].concat());
    let wanted = [
        "log-asks-poured-before-melted",
        "log-asks-heavier-than-charge",
        "log-asks-which-degrees",
        "log-asks-contraction",
    ];
    assert_eq!(asked(&log), wanted);
    let about = questions_about(&log, &POURS, &id).expect("asked");
    let about: Vec<&str> = about.iter().map(|question| question.words.id()).collect();
    assert_eq!(
        about,
        ["log-asks-poured-before-melted", "log-asks-which-degrees"]
    );
}

#[test]
fn a_day_alone_contradicts_no_hour_of_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = log_in(folder.path());
    add(&mut log, &HEATS, &[("melted", "2026-05-03T15:00")]);
    add(
        &mut log,
        &POURS,
        &[("heat", "last"), ("poured", "2026-05-03")],
    );
    assert_eq!(asked(&log), [""; 0]);
    add(
        &mut log,
        &POURS,
        &[("heat", "last"), ("poured", "2026-05-02")],
    );
    assert_eq!(asked(&log), ["log-asks-poured-before-melted"]);
}

#[test]
fn times_are_those_of_the_calendar() {
    for time in [
        "2026-05-03",
        "2024-02-29",
        "2026-05-03T14:20",
        "2026-05-03T14:20:31.5Z",
    ] {
        assert!(is_time(time), "{time}");
    }
    for time in [
        "2026-02-29",
        "2026-13-01",
        "3 May",
        "2026-05-03T24:00",
        "2026-05-03T1:00",
        "",
    ] {
        assert!(!is_time(time), "{time}");
    }
}

#[test]
fn a_newer_log_is_read_and_not_written() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.sqlite");
    let mut log = Log::open(&path).expect("opens");
    add(&mut log, &HEATS, &[("alloy", "A356")]);
    drop(log);
    // The version of the tables stands at byte 60 of the head, as the file format says.
    let mut bytes = fs::read(&path).expect("readable");
    assert_eq!(bytes[60..64], 1_u32.to_be_bytes());
    bytes[60..64].copy_from_slice(&7_u32.to_be_bytes());
    fs::write(&path, bytes).expect("written");
    let mut log = Log::open(&path).expect("opens all the same");
    assert_eq!(log.newer, Some(7));
    assert_eq!(log.last(&HEATS, 9).expect("listed").len(), 1);
    let error = log.add(&[Fresh::of(&HEATS)]).expect_err("only read");
    assert!(
        error.to_string().contains("open for reading only"),
        "{error}"
    );
}

#[test]
fn what_is_no_log_is_left_as_it_is() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.sqlite");
    fs::write(
        &path,
        "my shopping list, which is long enough to be looked at twice".repeat(99),
    )
    .expect("written");
    let before = fs::read(&path).expect("readable");
    let error = Log::open(&path).expect_err("no log");
    assert!(matches!(error, LogError::Damaged { .. }), "{error}");
    assert_eq!(fs::read(&path).expect("readable"), before);
    assert!(matches!(
        Log::open_to_read(&folder.path().join("none")),
        Err(LogError::NotThere { .. })
    ));
}

/// A log of 3,000 castings, closed and in one file; its bytes.
fn large(path: &Path) -> Vec<u8> {
    let mut log = Log::open(path).expect("opens");
    add(&mut log, &HEATS, &[("alloy", "A356")]);
    add(&mut log, &POURS, &[("heat", "last")]);
    let pour = log.find(&POURS, "last").expect("there");
    let casting = |at: usize| {
        let fresh = Fresh::of(&CASTINGS).with("pour", Value::Text(pour.clone()));
        fresh.with("mark", Value::Text(format!("casting {at} of a long row")))
    };
    let lot: Vec<Fresh> = (0..3000).map(casting).collect();
    log.add(&lot).expect("written");
    drop(log);
    fs::read(path).expect("readable")
}

#[test]
fn a_torn_page_costs_its_own_entries_and_no_others() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.sqlite");
    let mut bytes = large(&path);
    let row = b"casting 1500 of a long row";
    let at = bytes
        .windows(row.len())
        .position(|part| part == row)
        .expect("in the file");
    let page = at / 4096 * 4096;
    bytes[page..page + 4096].fill(0xA5);
    fs::write(&path, bytes).expect("written");
    let saved = folder.path().join("saved.sqlite");
    let report = salvage(&path, &saved).expect("saved");
    assert_eq!(report.torn, ["castings"]);
    let castings = report
        .saved
        .iter()
        .find(|(name, _)| *name == "castings")
        .expect("told")
        .1;
    assert!((2900..3000).contains(&castings), "{castings} of 3000");
    let log = Log::open(&saved).expect("opens");
    log.check().expect("sound");
    let marks = log.last(&CASTINGS, 9999).expect("listed");
    let marked = |mark: &str| {
        marks
            .iter()
            .any(|one| one.values["mark"].text() == Some(mark))
    };
    assert!(marked("casting 0 of a long row") && marked("casting 2999 of a long row"));
    assert!(!marked("casting 1500 of a long row"));
}

#[test]
fn a_file_cut_short_gives_what_is_left() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.sqlite");
    let bytes = large(&path);
    fs::write(&path, &bytes[..bytes.len() / 2]).expect("written");
    let report = salvage(&path, &folder.path().join("saved.sqlite")).expect("saved");
    let castings = report
        .saved
        .iter()
        .find(|(name, _)| *name == "castings")
        .expect("told")
        .1;
    assert!((500..2900).contains(&castings), "{castings} of 3000");
    assert_eq!(report.torn.first(), Some(&"castings"));
}

#[test]
fn a_lost_head_is_put_back() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.sqlite");
    let mut bytes = large(&path);
    bytes[..4096].fill(0);
    fs::write(&path, bytes).expect("written");
    assert!(matches!(Log::open(&path), Err(LogError::Damaged { .. })));
    let report = salvage(&path, &folder.path().join("saved.sqlite")).expect("saved");
    assert!(report.head_lost);
    let castings = report
        .saved
        .iter()
        .find(|(name, _)| *name == "castings")
        .expect("told")
        .1;
    assert_eq!(castings, 3000);
}

#[test]
fn what_a_phone_sends_twice_is_written_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut log = log_in(folder.path());
    let text = r#"[
        {"table": "heat", "id": "000000000000000000000000000000a1",
         "written": "2026-05-03T13:00:00Z", "says": {"alloy": "A356"}},
        {"table": "pour", "id": "000000000000000000000000000000b1",
         "written": "2026-05-03T13:20:00Z",
         "says": {"heat": "000000000000000000000000000000a1", "temperature": "1330 F"}}]"#;
    let sent: Vec<Sent> = serde_json::from_str(text).expect("sent");
    let first = take(&mut log, &sent).expect("taken");
    let again = take(&mut log, &sent).expect("taken");
    assert!(first.iter().all(|one| one.new) && again.iter().all(|one| !one.new));
    let pour = log.last(&POURS, 9).expect("listed").remove(0);
    assert_eq!(pour.written, "2026-05-03T13:20:00Z");
    assert_eq!(
        pour.values["heat"].text(),
        Some("000000000000000000000000000000a1")
    );
    let odd = Sent {
        id: "x".to_owned(),
        ..sent[0].clone()
    };
    assert!(matches!(take(&mut log, &[odd]), Err(LogError::BadId(_))));
}
