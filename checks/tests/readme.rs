//! The first page: what the program does, a picture, and two commands; and no path leads nowhere.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::collections::BTreeSet;

use checks::repository::root;

#[test]
fn the_first_paragraph_says_the_job() {
    let readme = readme();
    let first = paragraphs(&readme)
        .into_iter()
        .find(|text| !text.starts_with('#'));
    let first = first.expect("a paragraph").to_lowercase();
    assert!(
        !first.starts_with("!["),
        "the picture stands before the sentence: {first}"
    );
    for word in ["sand", "casting"] {
        assert!(
            first.contains(word),
            "the first paragraph has no word of {word}: {first}"
        );
    }
}

#[test]
fn a_picture_stands_before_the_commands() {
    let readme = readme();
    let picture = readme.find("![").expect("a picture");
    let commands = readme.find("```").expect("a block of commands");
    assert!(picture < commands, "the commands stand before the picture");
}

#[test]
fn the_first_block_is_two_commands() {
    let readme = readme();
    let (_, after) = readme.split_once("```").expect("a block");
    let (block, _) = after.split_once("```").expect("its end");
    let (language, lines) = block.split_once('\n').expect("its lines");
    assert_eq!(language.trim(), "sh", "the first block is one of commands");
    let is_command = |line: &&str| !line.trim().is_empty() && !line.trim().starts_with('#');
    let commands: Vec<_> = lines.lines().filter(is_command).collect();
    assert_eq!(commands.len(), 2, "{commands:?}");
}

#[test]
fn every_path_named_exists() {
    let readme = readme();
    let named = paths(&readme);
    assert!(
        !named.is_empty(),
        "no path is named, not even that of the picture"
    );
    let missing: Vec<_> = named
        .iter()
        .filter(|path| !root().join(path).exists())
        .collect();
    assert!(missing.is_empty(), "named and not there: {missing:?}");
}

#[test]
fn paths_are_found_in_links_code_and_commands() {
    let text = "![sheet](docs/sheet.png) [log](CHANGELOG.md#top) <https://x.org/a/b> `crates/job`\n\
                `and/or words` [web](https://x.org/c)\n```sh\noddside plan examples/lid/job.toml\n\
                cargo install --path crates/cli\n```\n";
    let found: Vec<_> = paths(text).into_iter().collect();
    let wanted = [
        "CHANGELOG.md",
        "crates/cli",
        "crates/job",
        "docs/sheet.png",
        "examples/lid/job.toml",
    ];
    assert_eq!(found, wanted);
}

fn readme() -> String {
    std::fs::read_to_string(root().join("README.md")).expect("README.md")
}

fn paragraphs(text: &str) -> Vec<String> {
    let parts = text.split("\n\n").map(|part| part.trim().to_owned());
    parts.filter(|part| !part.is_empty()).collect()
}

/// Paths of the repository: the targets of links, and what in code starts with one of its folders.
fn paths(text: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for target in text.split("](").skip(1) {
        let target = target.split([')', '#', ' ']).next().unwrap_or_default();
        if !target.is_empty() && !target.contains("://") {
            found.insert(target.to_owned());
        }
    }
    let in_code = text.split('`').flat_map(str::split_whitespace);
    found.extend(in_code.filter_map(own_path));
    found
}

/// A word that starts with one of the repository's folders, as a path.
fn own_path(word: &str) -> Option<String> {
    let folders = ["crates/", "checks/", "examples/", "fuzz/", "benches/"];
    let word = word.trim_end_matches(['.', ',', ';', ':', ')']);
    let own = folders.iter().any(|folder| word.starts_with(folder));
    // What a command writes, and a pattern for several files, need not exist.
    let exact = !word.contains(['*', '{', '<', '…']);
    (own && exact).then(|| word.trim_end_matches('/').to_owned())
}
