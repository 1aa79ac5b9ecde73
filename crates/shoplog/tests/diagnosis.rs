//! The diagnosis scored on labelled cases, which were written by somebody who had not seen the
//! likelihoods and frozen before they were weighed.

#![allow(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a helper that fails fails its test, and scores are there to be read"
)]

use std::path::Path;

use shoplog::diagnosis::case_file::{CaseFile, NO_CAUSE};
use shoplog::diagnosis::cause::causes;
use shoplog::diagnosis::check::parting;
use shoplog::diagnosis::ranked::{likelihoods, named, ranked};

fn cases(folder: &str) -> Vec<(String, CaseFile)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let files = std::fs::read_dir(folder).expect("cases");
    let mut cases: Vec<(String, CaseFile)> = files
        .map(|file| file.expect("listed").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "toml"))
        .map(|path| {
            let text = std::fs::read_to_string(&path).expect("readable");
            let name = path
                .file_stem()
                .expect("a name")
                .to_string_lossy()
                .into_owned();
            (name, toml::from_str(&text).expect("a case"))
        })
        .collect();
    cases.sort_by(|one, other| one.0.cmp(&other.0));
    cases
}

/// The right cause is among the top two in sixteen of twenty at least, and in a case without one
/// none is named. The rule and its likelihoods were settled on these very cases, so that this
/// guards them only; `docs/diagnose-cases.md` tells how they fare on cases nobody had seen.
#[test]
fn labelled_cases_find_their_cause() {
    for (folder, with, without) in [("data/cases", 20, 5), ("data/cases_second", 20, 10)] {
        let scored = scored(folder);
        assert!(scored.with >= with && scored.without >= without);
        assert!(scored.right >= 16, "{} right", scored.right);
        assert_eq!(scored.quiet, scored.without);
    }
}

/// Thirty cases by another hand, scored once, after the rule was settled on the two sets before: 15
/// of 20 right, and 9 of 10 without a cause left unnamed. Sixteen and all were wanted; what makes
/// it fewer is a step back.
#[test]
fn fresh_cases_fare_no_worse_than_when_they_were_first_scored() {
    let scored = scored("data/cases_third");
    assert!(scored.with >= 20 && scored.without >= 10);
    assert!(scored.right >= 15, "{} right", scored.right);
    assert!(scored.quiet >= 9, "{} unnamed", scored.quiet);
}

/// How a set of cases fares.
struct Scored {
    with: usize,
    right: usize,
    without: usize,
    quiet: usize,
}

fn scored(folder: &str) -> Scored {
    let mut scored = Scored {
        with: 0,
        right: 0,
        without: 0,
        quiet: 0,
    };
    for (name, case) in cases(folder) {
        let found = ranked(&case).expect("sound");
        let top: Vec<&str> = named(&found).map(|one| one.cause.id.as_str()).collect();
        let wanted = case.label.expect("labelled").cause;
        match wanted.as_str() {
            NO_CAUSE => {
                scored.without += 1;
                scored.quiet += usize::from(top.is_empty());
            }
            wanted => {
                scored.with += 1;
                scored.right += usize::from(top.contains(&wanted));
            }
        }
        let likely: Vec<String> = found
            .iter()
            .take(3)
            .map(|one| format!("{} {:.2}", one.cause.id, one.share))
            .collect();
        println!("{name}: wanted {wanted}, named {top:?} of {likely:?}");
    }
    println!(
        "{folder}: {} of {} right, {} of {} without a cause left unnamed",
        scored.right, scored.with, scored.quiet, scored.without
    );
    scored
}

#[test]
fn every_cause_has_its_likelihoods_and_every_pair_a_check() {
    let (causes, rows) = (causes().expect("sound"), likelihoods().expect("sound"));
    let ids: Vec<&str> = causes.iter().map(|cause| cause.id.as_str()).collect();
    let rows: Vec<&str> = rows.iter().map(|row| row.id.as_str()).collect();
    assert_eq!(ids, rows);
    for one in &ids {
        for other in ids.iter().filter(|other| *other != one) {
            assert!(
                parting(one, other).expect("sound").is_some(),
                "{one} and {other}"
            );
        }
    }
}

#[test]
fn every_fact_of_the_likelihoods_can_be_seen_or_written_down() {
    let rows = likelihoods().expect("sound");
    let source = include_str!("../src/diagnosis/facts.rs");
    use shoplog::diagnosis::sight::{FOUNDS, LOOKS, PLACES, WALLS};
    let families = [
        ("look-", LOOKS),
        ("place-", PLACES),
        ("wall-", WALLS),
        ("found-", FOUNDS),
    ];
    for row in &rows {
        for (fact, times, _) in &row.ratios {
            let family = families.iter().find_map(|(start, words)| {
                fact.strip_prefix(start).map(|word| words.contains(&word))
            });
            let known = family.unwrap_or_else(|| source.contains(&format!("\"{fact}\"")));
            assert!(known, "{}: {fact}", row.id);
            assert!(*times > 0.0 && *times <= 27.0, "{}: {fact} {times}", row.id);
        }
    }
}

#[test]
fn nothing_is_ever_certain() {
    let text = r#"
        [seen]
        metal = "iron"
        look = ["hard-edge"]
        place = ["thin-section"]
        surface = ["bright"]
        when = "machining"
        [record]
        moisture_percent = 9.0
    "#;
    let case: CaseFile = toml::from_str(text).expect("a case");
    let found = ranked(&case).expect("sound");
    assert_eq!(found[0].cause.id, "chilled-iron");
    assert!(found[0].share <= 0.95);
    assert!(found.iter().map(|one| one.share).sum::<f64>() < 1.0);
}
