//! The forty questions of the documents are answered by laws that exist.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use checks::repository::root;

fn document() -> String {
    std::fs::read_to_string(root().join("docs/questions.md")).expect("the document")
}

/// Names after `oddside reckon ` in backquotes.
fn names(text: &str) -> Vec<&str> {
    let asks = text
        .split('`')
        .filter_map(|part| part.strip_prefix("oddside reckon "));
    asks.filter_map(|ask| ask.split_whitespace().next())
        .filter(|name| *name != "NAME")
        .collect()
}

#[test]
fn all_forty_are_there_and_each_says_how_to_ask() {
    let document = document();
    for number in 1..=40 {
        let start = format!("| {number} | ");
        let row = document.lines().find(|line| line.starts_with(&start));
        let row = row.unwrap_or_else(|| panic!("question {number} is missing"));
        let cells: Vec<&str> = row.split(" | ").collect();
        assert!(cells.len() >= 3 && !cells[2].trim().is_empty(), "{row}");
    }
}

#[test]
fn every_law_named_can_be_asked_and_answers_its_example() {
    let document = document();
    let names = names(&document);
    assert!(names.len() > 60, "only {} laws are named", names.len());
    for name in names {
        let reckoner = reckon::named(name).unwrap_or_else(|| panic!("no law is called {name}"));
        let worked = reckon::worked::work_out(&reckoner.example_ask());
        assert!(
            worked.is_ok_and(|worked| !worked.answers.is_empty()),
            "{name}"
        );
    }
}
