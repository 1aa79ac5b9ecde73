//! Every labelled case reads, and its cause is one of the table.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::collections::BTreeSet;
use std::path::Path;

use shoplog::diagnosis::case_file::{CaseFile, NO_CAUSE};
use shoplog::diagnosis::cause::causes;

#[test]
fn the_example_of_the_page_is_a_case() {
    let page = include_str!("../../../docs/diagnose-cases.md");
    let text = page.split("```toml\n").nth(1).expect("an example");
    let text = text.split("```").next().expect("its end");
    let case: CaseFile = toml::from_str(text).expect("a case");
    assert_eq!(case.label.expect("labelled").cause, "wet-sand");
}

#[test]
fn every_case_reads_and_names_a_known_cause() {
    let causes = causes().expect("sound");
    let known: BTreeSet<&str> = causes.iter().map(|cause| cause.id.as_str()).collect();
    assert_eq!(known.len(), causes.len(), "no cause twice");
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/cases");
    let files = std::fs::read_dir(folder).expect("the folder of cases");
    let mut read = 0;
    for file in files {
        let path = file.expect("listed").path();
        if path.extension().is_none_or(|ending| ending != "toml") {
            continue;
        }
        let text = std::fs::read_to_string(&path).expect("readable");
        let case: CaseFile =
            toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let label = case.label.expect("labelled");
        let cause = label.cause.as_str();
        assert!(cause == NO_CAUSE || known.contains(cause), "{cause}");
        assert!(!case.seen.look.is_empty(), "{}: no look", path.display());
        read += 1;
    }
    assert!(read >= 25, "{read} cases");
}
