//! The message files as lists of ids, attributes and what each message asks for.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use job::folder::open;
use job::plan::Plan;

/// What a message or one of its attributes asks for, by `id` or `id.attribute`.
pub type Messages = BTreeMap<String, BTreeSet<String>>;

/// Folders of languages that have messages of their own.
pub const FOLDERS: [&str; 3] = ["en-GB", "fr", "es"];

/// Names of the message files of a language.
pub fn files(folder: &str) -> Vec<String> {
    let files = fs::read_dir(words().join(folder)).unwrap();
    let mut names: Vec<String> = files
        .map(|file| file.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

/// Every message of one file of a language.
pub fn of_file(folder: &str, file: &str) -> Messages {
    let text = fs::read_to_string(words().join(folder).join(file)).unwrap();
    let mut messages = Messages::new();
    let mut id = String::new();
    let mut name = String::new();
    for line in text.lines().filter(|line| !line.starts_with('#')) {
        let (head, rest) = line.split_once(" = ").unwrap_or(("", line));
        if !head.is_empty() && !head.starts_with(' ') {
            id = head.to_owned();
            name.clone_from(&id);
            let twice = messages.insert(name.clone(), BTreeSet::new());
            assert!(twice.is_none(), "{folder}/{file}: {id} is there twice");
        } else if let Some(attribute) = head.trim().strip_prefix('.') {
            name = format!("{id}.{attribute}");
            messages.insert(name.clone(), BTreeSet::new());
        }
        if let Some(asked) = messages.get_mut(&name) {
            asked.extend(variables(rest));
        }
    }
    messages
}

/// Every message of a language.
pub fn of(folder: &str) -> Messages {
    let files = files(folder);
    let mut all = Messages::new();
    for (id, asked) in files.iter().flat_map(|file| of_file(folder, file)) {
        assert!(!all.contains_key(&id), "{folder}: {id} is there twice");
        all.insert(id, asked);
    }
    all
}

/// Every message of a language but those that stand beside laws, which are English alone.
pub fn for_all(folder: &str) -> Messages {
    let mut all = of(folder);
    if folder == "en-GB" {
        for id in of_file(folder, "laws.ftl").keys() {
            all.remove(id);
        }
    }
    all
}

/// Ids of messages that other messages of British English put into themselves.
pub fn referred_to() -> BTreeSet<String> {
    let mut ids = BTreeSet::new();
    for file in files("en-GB") {
        let text = fs::read_to_string(words().join("en-GB").join(file)).unwrap();
        let inner = text.split("{ ").skip(1);
        let names = inner.filter_map(|rest| rest.split_once(" }").map(|(name, _)| name));
        ids.extend(
            names
                .filter(|name| !name.starts_with('$'))
                .map(str::to_owned),
        );
    }
    ids
}

/// The source of every crate that shows text.
pub fn source() -> String {
    let mut text = String::new();
    for room in ["job", "bench", "sheet", "web", "cli"] {
        gather(&crates().join(room).join("src"), &mut text);
    }
    text
}

/// What stands in quotes in the source of the log and begins like one of its messages; its tables
/// are full of words that read like ids and are none.
pub fn of_the_log() -> Vec<String> {
    let mut text = String::new();
    gather(&crates().join("shoplog/src"), &mut text);
    let ids = text.split('"').skip(1).step_by(2);
    let is_one = |id: &&str| id.starts_with("log-") && *id != "log-photos" && !id.contains('{');
    ids.filter(is_one).map(str::to_owned).collect()
}

/// Whether an id is put together in the log from the name of a cause, a check or a thing of its
/// tables.
pub fn of_a_table_of_the_log(id: &str) -> bool {
    let mut text = String::new();
    gather(&crates().join("shoplog/src"), &mut text);
    let data = crates().join("shoplog/data");
    for table in ["causes.toml", "likelihoods.toml", "checks.toml"] {
        text += &std::fs::read_to_string(data.join(table)).unwrap();
    }
    let families = [
        "log-cause-",
        "log-change-",
        "log-check-",
        "log-thing-",
        "log-key-",
        "log-word-",
        "sight-look-",
        "sight-place-",
        "sight-wall-",
        "sight-size-",
        "sight-when-",
        "sight-castings-",
        "sight-metal-",
        "sight-",
    ];
    let name = families.iter().find_map(|family| id.strip_prefix(family));
    name.is_some_and(|name| text.contains(&format!("\"{name}\"")))
}

/// What stands in quotes in a text and reads like an id: small words with hyphens between them.
pub fn like_ids(text: &str) -> BTreeSet<&str> {
    let letter = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    let quoted = text.split('"').filter(|word| word.contains('-'));
    quoted.filter(|word| word.chars().all(letter)).collect()
}

/// Words that stand right after an opening in a text, up to the closing quote.
pub fn quoted_after<'a>(text: &'a str, opening: &str) -> Vec<&'a str> {
    let after = text.split(opening).skip(1);
    after
        .filter_map(|rest| rest.trim_start().strip_prefix('"')?.split('"').next())
        .collect()
}

/// The source of the steps of a plan.
pub fn work_out() -> String {
    let mut text = String::new();
    gather(&crates().join("job/src/work_out"), &mut text);
    text
}

/// The plans of all example folders.
pub fn examples() -> Vec<Plan> {
    let folder = crates().join("../examples");
    let mut jobs: Vec<PathBuf> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.join("job.toml").is_file())
        .collect();
    jobs.sort();
    let plan = |path: &PathBuf| {
        let opened = open(path).unwrap();
        job::work_out::work_out(&opened.job, &opened.shop, &opened.part)
    };
    jobs.iter().map(plan).collect()
}

fn variables(text: &str) -> impl Iterator<Item = String> {
    let inner = text.split("{ $").skip(1);
    inner.filter_map(|rest| rest.split([' ', '}']).next().map(str::to_owned))
}

fn gather(folder: &Path, text: &mut String) {
    let mut inside: Vec<PathBuf> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    inside.sort();
    for path in inside {
        if path.is_dir() {
            gather(&path, text);
        } else {
            text.push_str(&fs::read_to_string(&path).unwrap());
        }
    }
}

fn crates() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .parent()
        .unwrap()
        .to_owned()
}

fn words() -> PathBuf {
    crates().join("job/data/words")
}
