//! Every example of a bare case is read, run, and comes out as its file expects.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::path::{Path, PathBuf};

use conduct::answer::{Answer, run};
use conduct::reading::read;

#[test]
fn small_examples_hold() {
    for path in examples().iter().filter(|path| !is_large(path)) {
        assert_holds(path);
    }
}

#[test]
#[ignore = "minutes and half a gibibyte: 17 million cells"]
fn the_largest_example_holds() {
    assert_holds(&folder().join("p1-256.toml"));
}

#[test]
fn every_example_is_read() {
    let examples = examples();
    assert_eq!(examples.len(), 20);
    for path in examples.iter().filter(|path| !is_large(path)) {
        let bare = read(&text(path)).expect("a sound file");
        assert!(
            !bare.expects.is_empty(),
            "{} expects nothing",
            path.display()
        );
    }
}

/// A quarter stands for the whole: no heat crosses a plane of symmetry.
#[test]
fn a_quarter_says_what_the_whole_says() {
    let whole = assert_holds(&folder().join("p1-64.toml"));
    let quarter = assert_holds(&folder().join("p1-64-quarter.toml"));
    assert_eq!((whole.images, quarter.images), (1.0, 4.0));
    assert_eq!(whole.cells, 4 * quarter.cells);
    let last_s = [whole.last_freeze_s, quarter.last_freeze_s].map(|s| s.expect("it froze"));
    let pairs = [
        (last_s[0], last_s[1]),
        (whole.heat.start_j, quarter.heat.start_j),
        (whole.heat.end_j, quarter.heat.end_j),
    ];
    for (whole, quarter) in pairs {
        assert!(
            (quarter / whole - 1.0).abs() < 1e-5,
            "{quarter} for {whole}"
        );
    }
}

fn assert_holds(path: &Path) -> Answer {
    let bare = read(&text(path)).expect("a sound file");
    let answer = run(&bare, &mut |_| true).expect("an answer");
    for expected in &answer.expected {
        assert!(expected.holds, "{}: {expected:?}", path.display());
    }
    let most = if answer.cells > 3_000_000 { 5e-5 } else { 1e-5 };
    assert!(
        answer.heat.drift < most,
        "{}: {:?}",
        path.display(),
        answer.heat
    );
    answer
}

fn is_large(path: &Path) -> bool {
    let name = path.file_name().and_then(|name| name.to_str());
    name == Some("p1-256.toml")
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/conduction")
}

fn examples() -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder()).expect("a folder");
    let mut paths: Vec<_> = entries.map(|entry| entry.expect("a file").path()).collect();
    paths.sort();
    paths
}

fn text(path: &Path) -> String {
    std::fs::read_to_string(path).expect("a file")
}
