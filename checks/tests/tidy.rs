//! What every file of the repository keeps to, and that every source named is in the bibliography.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::collections::BTreeSet;

use checks::repository::{File, code_only, files, root};
use measure::source::{Law, bibliography, source};

/// Folders with code of the repository.
const CODE: [&str; 4] = ["crates", "checks", "benches", "fuzz"];

/// Rooms in whose comments a word in backticks and hyphens is a key of the bibliography.
const WITH_KEYS: [&str; 7] = [
    "measure", "pattern", "metal", "sand", "mould", "rigging", "job",
];

const BIBLIOGRAPHY: &str = "crates/measure/data/sources.toml";

#[test]
fn every_file_opens_with_what_it_is() {
    for file in rust_files() {
        let mut lines = file.text.lines().filter(|line| !line.trim().is_empty());
        let first = lines.find(|line| !line.starts_with("#!["));
        let opens = first.is_some_and(|line| line.starts_with("//! "));
        assert!(opens, "{} does not say at its head what it is", file.path);
    }
}

#[test]
fn nothing_is_left_lying_about() {
    // Put together here, so that this file does not find itself.
    let left = [
        concat!("TO", "DO"),
        concat!("FIX", "ME"),
        concat!("db", "g!("),
        concat!("to", "do!("),
        concat!("unimple", "mented!("),
    ];
    let left_here = |line: &str| left.iter().any(|word| line.contains(word));
    let mut found = Vec::new();
    for file in all_text() {
        for (number, line) in file.text.lines().enumerate() {
            if left_here(line) || names_a_machine(line) {
                found.push(format!("{}:{}: {line}", file.path, number + 1));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn a_path_of_a_machine_is_told_from_an_address() {
    let path = format!("see {}x/y", ["/ho", "me/"].concat());
    assert!(names_a_machine(&path));
    assert!(!names_a_machine(
        "scholar.archive.org/work/rcoc6, for Metal Workers"
    ));
}

#[test]
fn no_file_has_a_name_that_takes_anything_in() {
    let dumping = [
        "util", "utils", "common", "core", "helper", "helpers", "types", "misc", "prelude",
    ];
    for file in rust_files() {
        let mut names = file.path.trim_end_matches(".rs").split('/');
        let bad = names.find(|name| dumping.contains(name));
        assert!(bad.is_none(), "{}: {bad:?} says nothing", file.path);
    }
}

#[test]
fn nothing_is_imported_or_handed_on_by_star() {
    for file in rust_files() {
        for (number, line) in code_only(&file.text).iter().enumerate() {
            let line = line.trim();
            let hands_on = line.starts_with("pub") && line.contains("::*");
            // What another library calls its prelude is made to be taken whole.
            let takes = line.starts_with("use ") && line.replace("prelude::*", "").contains("::*");
            let star = hands_on || takes;
            assert!(!star, "{}:{}: {line}", file.path, number + 1);
        }
    }
}

/// Columns of a line of code; a long text or address may run on.
const COLUMNS: usize = 100;

#[test]
fn lines_fit_the_page() {
    let mut found = Vec::new();
    for file in rust_files() {
        for (number, line) in file.text.lines().enumerate() {
            let long = line.chars().count() > COLUMNS;
            if long && !line.contains('"') && !line.contains("://") {
                found.push(format!("{}:{}", file.path, number + 1));
            }
        }
    }
    assert!(
        found.is_empty(),
        "longer than {COLUMNS}:\n{}",
        found.join("\n")
    );
}

#[test]
fn the_bibliography_is_read_whole() {
    let keys: Vec<_> = bibliography().map(|(key, _)| key).collect();
    let text = std::fs::read_to_string(root().join(BIBLIOGRAPHY)).expect("the bibliography");
    let headings = text.lines().filter(|line| line.starts_with('[')).count();
    assert!(!keys.is_empty());
    assert_eq!(keys.len(), headings, "entries read, headings written");
    assert!(keys.is_sorted(), "in the order of the keys");
    for (key, source) in bibliography() {
        assert!(!source.title.trim().is_empty(), "{key} has no title");
        assert!(!source.seen.trim().is_empty(), "{key} was seen nowhere");
    }
}

#[test]
fn every_source_named_is_in_the_bibliography() {
    let mut unknown = Vec::new();
    let mut look_up = |place: &str, key: &str| {
        if source(key).is_none() {
            unknown.push(format!("{place}: {key}"));
        }
    };
    for law in laws() {
        assert!(!law.sources.is_empty(), "{} has no source", law.name);
        law.sources.iter().for_each(|key| look_up(law.name, key));
    }
    for file in data_files() {
        let table: toml::Table = file.text.parse().expect("a table");
        let keys = keys_in(&toml::Value::Table(table));
        keys.iter().for_each(|key| look_up(&file.path, key));
        let in_comments = file.text.lines().filter_map(|line| line.split_once('#'));
        for (_, comment) in in_comments {
            in_backticks(comment).for_each(|key| look_up(&file.path, key));
        }
    }
    for room in WITH_KEYS {
        for file in files(&format!("crates/{room}/src"), &[".rs"]).expect("sources") {
            let comments = file.text.lines().filter_map(|line| line.split_once("//"));
            for (_, comment) in comments {
                in_backticks(comment).for_each(|key| look_up(&file.path, key));
            }
            for text in file.text.split("source: \"").skip(1) {
                let key = text.split('"').next().unwrap_or_default();
                look_up(&file.path, key);
            }
        }
    }
    assert!(
        unknown.is_empty(),
        "not in {BIBLIOGRAPHY}:\n{}",
        unknown.join("\n")
    );
}

#[test]
fn every_entry_of_the_bibliography_is_used() {
    let named: BTreeSet<String> = files("crates", &[".rs", ".toml"])
        .expect("files")
        .iter()
        .filter(|file| file.path != BIBLIOGRAPHY)
        .flat_map(|file| key_words(&file.text))
        .collect();
    let unused: Vec<_> = bibliography()
        .map(|(key, _)| key)
        .filter(|key| !named.contains(*key))
        .collect();
    assert!(
        unused.is_empty(),
        "in the bibliography and used nowhere: {unused:#?}"
    );
}

#[test]
fn the_table_of_alloys_has_no_fault() {
    let faults = metal::alloys::faults();
    assert!(faults.is_empty(), "{faults:#?}");
    assert!(!metal::alloys::all().is_empty());
}

/// Whether a line names a place on somebody's disk: such a path starts a word, while the same
/// letters within an address follow on another.
fn names_a_machine(line: &str) -> bool {
    let places = ["work/", "tmp/", "home/", "Users/", "root/"];
    line.match_indices('/').any(|(at, _)| {
        let starts_word = !line[..at].ends_with(|before: char| {
            before.is_alphanumeric() || [')', '}', '.', '/', '-', '_', '*'].contains(&before)
        });
        starts_word && places.iter().any(|place| line[at + 1..].starts_with(place))
    })
}

fn laws() -> impl Iterator<Item = &'static Law> {
    [pattern::LAWS, metal::LAWS, sand::LAWS, mould::LAWS]
        .into_iter()
        .flatten()
        .copied()
}

fn rust_files() -> Vec<File> {
    let found: Vec<_> = CODE
        .iter()
        .flat_map(|folder| files(folder, &[".rs"]).expect("sources"))
        .collect();
    assert!(!found.is_empty());
    found
}

/// Everything that people write: code, tables, templates and pages.
fn all_text() -> Vec<File> {
    files("", &[".rs", ".toml", ".typ", ".md", ".yml"]).expect("files")
}

/// Tables of figures, which name their sources under `source`.
fn data_files() -> Vec<File> {
    let all = files("crates", &[".toml"]).expect("tables");
    let of_data = |file: &File| file.path.contains("/data/") && file.path != BIBLIOGRAPHY;
    all.into_iter().filter(of_data).collect()
}

/// The texts under `source`, at any depth.
fn keys_in(value: &toml::Value) -> Vec<String> {
    match value {
        toml::Value::Table(table) => table
            .iter()
            .flat_map(|(name, value)| match name.as_str() {
                "source" => texts_in(value),
                _ => keys_in(value),
            })
            .collect(),
        toml::Value::Array(values) => values.iter().flat_map(keys_in).collect(),
        _ => Vec::new(),
    }
}

fn texts_in(value: &toml::Value) -> Vec<String> {
    match value {
        toml::Value::String(text) => vec![text.clone()],
        toml::Value::Array(values) => values.iter().flat_map(texts_in).collect(),
        _ => Vec::new(),
    }
}

/// Words in backticks that look like a key: small letters and digits in parts joined by hyphens.
fn in_backticks(comment: &str) -> impl Iterator<Item = &str> {
    let quoted = comment.split('`').skip(1).step_by(2);
    quoted.filter(|word| {
        let parts = word.split('-');
        let of_key = |letter: char| letter.is_ascii_lowercase() || letter.is_ascii_digit();
        let whole = |part: &str| !part.is_empty() && part.chars().all(of_key);
        word.contains('-') && parts.clone().all(whole)
    })
}

fn key_words(text: &str) -> BTreeSet<String> {
    let in_key = |letter: char| letter.is_ascii_alphanumeric() || letter == '-';
    let words = text.split(|letter| !in_key(letter));
    words.map(str::to_owned).collect()
}
