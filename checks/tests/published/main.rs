//! Every law has to give back the examples of `checks/published`, and every law has an example.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]
#![allow(
    clippy::print_stdout,
    reason = "the table of deviations is there to be read"
)]

use std::collections::{BTreeMap, BTreeSet};

use checks::check::{Check, read, read_all};
use checks::deviation::{Deviation, deviation};
use checks::repository::root;
use measure::source::Law;
use reckon::ask::Ask;
use reckon::reckoner::Reckoner;

mod table;

/// What came of one figure of a row.
pub struct Outcome<'a> {
    check: &'a Check,
    figure: &'a str,
    expected: &'a str,
    deviation: Deviation,
}

#[test]
fn the_laws_give_back_every_row() {
    let rows = rows();
    let (outcomes, faults) = judge(&rows);
    table::print(&outcomes);
    table::print_counts(&rows, &law_names());
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

#[test]
fn every_law_has_a_row() {
    let rows = rows();
    let with_row: BTreeSet<&str> = rows.iter().map(|row| row.law.as_str()).collect();
    let names = law_names();
    let missing: Vec<_> = names
        .iter()
        .filter(|name| !with_row.contains(*name))
        .collect();
    assert!(
        missing.is_empty(),
        "no row in checks/published for {missing:#?}"
    );
}

#[test]
fn every_row_and_every_reckoner_belongs_to_a_law() {
    let rows = rows();
    let names = law_names();
    let known = |name: &str| names.contains(name);
    let of_rows = rows.iter().map(|row| row.law.as_str());
    let strangers: BTreeSet<_> = of_rows
        .chain(reckoners().into_keys())
        .filter(|name| !known(name))
        .collect();
    assert!(strangers.is_empty(), "in no room's LAWS: {strangers:#?}");
}

#[test]
fn every_law_has_exactly_one_reckoner() {
    let called: Vec<&str> = reckon::all()
        .map(|(_, reckoner)| reckoner.law.name)
        .collect();
    let distinct: BTreeSet<&str> = called.iter().copied().collect();
    assert_eq!(called.len(), distinct.len(), "a law is called by two names");
    let silent: Vec<_> = law_names().difference(&distinct).copied().collect();
    assert!(silent.is_empty(), "laws that cannot be called: {silent:#?}");
}

#[test]
fn every_row_says_where_it_was_seen() {
    for row in rows() {
        let said = [&row.source, &row.seen, &row.case, &row.within];
        let silent = said.iter().any(|text| text.trim().is_empty());
        assert!(
            !silent,
            "{} ({}) is silent about something",
            row.law, row.case
        );
        assert!(
            !row.gives.is_empty(),
            "{} ({}) gives nothing",
            row.law,
            row.case
        );
        let owns_up = row.source.contains("hand sum") || row.source.contains("limit case");
        assert_eq!(
            owns_up, row.independent,
            "{} ({}): a hand sum or limit case, and only that, is independent",
            row.law, row.case
        );
    }
}

/// Fewer would leave most of the rooms to hand sums.
const LEAST_PUBLISHED: usize = 25;

#[test]
fn enough_rows_are_published_ones() {
    let published = rows().iter().filter(|row| !row.independent).count();
    assert!(
        published >= LEAST_PUBLISHED,
        "only {published} published rows"
    );
}

#[test]
fn a_wrong_figure_fails() {
    let rows = rows();
    for row in &rows {
        let mut wrong = row.clone();
        let first = wrong.gives.values_mut().next().expect("a figure");
        *first = nudged(first);
        let (_, faults) = judge(std::slice::from_ref(&wrong));
        assert!(
            !faults.is_empty(),
            "{} ({}) passes with {:?} in place of {:?}",
            row.law,
            row.case,
            wrong.gives,
            row.gives
        );
    }
}

#[test]
fn rows_that_cannot_be_judged_fail() {
    let row = |given: &str, gives: &str, law: &str| {
        format!(
            "[[check]]\nlaw = \"{law}\"\ncase = \"x\"\ngiven = {{ {given} }}\n\
             gives = {{ {gives} }}\nwithin = \"1 %\"\nsource = \"x\"\nseen = \"x\"\n"
        )
    };
    let law = "mould::gating::sprue::fall_speed";
    let right = row("fall = \"20 cm\"", "speed = \"1.98 m/s\"", law);
    let wrong = [
        row(
            "fall = \"20 cm\", head = \"9 cm\"",
            "speed = \"1.98 m/s\"",
            law,
        ),
        row("head = \"20 cm\"", "speed = \"1.98 m/s\"", law),
        row("fall = \"20 kg\"", "speed = \"1.98 m/s\"", law),
        row("fall = \"20 cm\"", "speed = \"1.98 s\"", law),
        row("fall = \"20 cm\"", "velocity = \"1.98 m/s\"", law),
        row(
            "fall = \"20 cm\"",
            "speed = \"1.98 m/s\"",
            "mould::gating::sprue::fall",
        ),
        row("fall = \"20 cm\"", "speed = \"1.94 m/s\"", law),
        row("fall = \"20 cm\"", "speed = \"2.02 m/s\"", law),
    ];
    assert_eq!(faults_in(&right), Vec::<String>::new());
    for text in wrong {
        assert_eq!(faults_in(&text).len(), 1, "{text}");
    }
}

fn faults_in(text: &str) -> Vec<String> {
    let rows = read(text).expect("a row");
    judge(&rows).1
}

fn rows() -> Vec<Check> {
    read_all(&root().join("checks/published")).expect("rows that can be read")
}

fn law_names() -> BTreeSet<&'static str> {
    all_laws().map(|law| law.name).collect()
}

/// The laws of all rooms.
fn all_laws() -> impl Iterator<Item = &'static Law> {
    [pattern::LAWS, metal::LAWS, sand::LAWS, mould::LAWS]
        .into_iter()
        .flatten()
        .copied()
}

/// What came of the rows, and a line for everything that is wrong with them.
fn judge(rows: &[Check]) -> (Vec<Outcome<'_>>, Vec<String>) {
    let reckoners = reckoners();
    let mut outcomes = Vec::new();
    let mut faults = Vec::new();
    for row in rows {
        match outcomes_of(row, &reckoners) {
            Ok(of_row) => {
                let far = of_row.iter().filter(|outcome| outcome.deviation.too_far);
                faults.extend(far.map(|outcome| table::fault(outcome)));
                outcomes.extend(of_row);
            }
            Err(fault) => faults.push(format!("{} ({}): {fault}", row.law, row.case)),
        }
    }
    (outcomes, faults)
}

/// Every reckoner by the name of its law.
fn reckoners() -> BTreeMap<&'static str, &'static Reckoner> {
    reckon::all()
        .map(|(_, reckoner)| (reckoner.law.name, reckoner))
        .collect()
}

fn outcomes_of<'a>(
    row: &'a Check,
    reckoners: &BTreeMap<&str, &Reckoner>,
) -> Result<Vec<Outcome<'a>>, String> {
    let reckoner = reckoners.get(row.law.as_str()).ok_or("no such law")?;
    let given = row.given.iter();
    let ask = given.fold(Ask::new(reckoner.name), |ask, (key, text)| {
        ask.give(key, text)
    });
    let worked = reckon::worked::work_out(&ask).map_err(|fault| fault.to_string())?;
    let mut outcomes = Vec::new();
    for (figure, expected) in &row.gives {
        let deviation = deviation(&worked, figure, expected, &row.within);
        outcomes.push(Outcome {
            check: row,
            figure,
            expected,
            deviation: deviation.map_err(|fault| fault.to_string())?,
        });
    }
    Ok(outcomes)
}

/// The figure half as large again, or one instead of nought.
fn nudged(figure: &str) -> String {
    let end = figure
        .find(|letter: char| !(letter.is_ascii_digit() || ".-".contains(letter)))
        .unwrap_or(figure.len());
    let (number, unit) = figure.split_at(end);
    let number: f64 = number.parse().expect("a plain number");
    let wrong = if number == 0.0 { 1.0 } else { number * 1.5 };
    format!("{wrong}{unit}")
}
