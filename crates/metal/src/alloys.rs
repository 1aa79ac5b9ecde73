//! The built-in table of alloys, and finding one by the name people type.

use std::sync::LazyLock;

use thiserror::Error;

use crate::alloy::{Alloy, AlloyFault, read};

/// A name that no alloy goes by.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("no alloy goes by \"{typed}\"; {advice}")]
pub struct UnknownAlloy {
    /// What was typed.
    pub typed: String,
    /// The name nearest to it, where one is near.
    pub nearest: Option<&'static str>,
    /// What to do: the near name, or all the names there are.
    pub advice: String,
}

/// Every alloy of the built-in table, in the order of the families and of what is poured most.
pub fn all() -> &'static [Alloy] {
    &TABLE.alloys
}

/// What is wrong with the files of the built-in table: nothing, unless one was edited badly.
pub fn faults() -> &'static [AlloyFault] {
    &TABLE.faults
}

/// The alloy that goes by this name; case, spaces and hyphens do not count.
pub fn named(word: &str) -> Result<&'static Alloy, UnknownAlloy> {
    let wanted = plain(word);
    let goes_by = |alloy: &&Alloy| names(alloy).any(|name| plain(name) == wanted);
    match all().iter().find(goes_by) {
        Some(alloy) if !wanted.is_empty() => Ok(alloy),
        _ => Err(unknown(word, &wanted)),
    }
}

/// The name of an alloy and all its other names.
pub fn names(alloy: &Alloy) -> impl Iterator<Item = &str> {
    std::iter::once(&alloy.name)
        .chain(&alloy.also)
        .map(String::as_str)
}

/// A name as it is compared: letters and digits only, all small.
pub fn plain(word: &str) -> String {
    word.chars()
        .filter(|letter| letter.is_alphanumeric())
        .flat_map(char::to_lowercase)
        .collect()
}

struct Table {
    alloys: Vec<Alloy>,
    faults: Vec<AlloyFault>,
}

macro_rules! files {
    ($($file:literal),+ $(,)?) => {
        &[$( ($file, include_str!(concat!("../data/alloys/", $file))) ),+]
    };
}

const FILES: &[(&str, &str)] = files![
    "al-si7-mg.toml",
    "al-si12.toml",
    "al-si6-cu4.toml",
    "al-pure.toml",
    "al-wrought-scrap.toml",
    "gunmetal-85-5-5-5.toml",
    "tin-bronze-88-10-2.toml",
    "silicon-bronze.toml",
    "silicon-brass.toml",
    "aluminium-bronze.toml",
    "yellow-brass.toml",
    "zamak-3.toml",
    "za-8.toml",
    "za-12.toml",
    "za-27.toml",
    "grey-iron.toml",
    "pewter.toml",
];

static TABLE: LazyLock<Table> = LazyLock::new(|| {
    let mut table = Table {
        alloys: Vec::new(),
        faults: Vec::new(),
    };
    for (file, text) in FILES {
        match read(file, text) {
            Ok(alloy) => table.alloys.push(alloy),
            Err(fault) => table.faults.push(fault),
        }
    }
    table
});

fn unknown(word: &str, wanted: &str) -> UnknownAlloy {
    let allowed = (wanted.chars().count() / 3).clamp(1, 3);
    let nearest = all()
        .iter()
        .flat_map(names)
        .map(|name| (edits(&plain(name), wanted), name))
        .filter(|(edits, _)| *edits <= allowed)
        .min_by_key(|(edits, _)| *edits)
        .map(|(_, name)| name);
    let advice = match nearest {
        Some(name) => format!("did you mean {name}?"),
        None => {
            let known: Vec<_> = all().iter().map(|alloy| alloy.name.as_str()).collect();
            format!("alloys known: {}", known.join(", "))
        }
    };
    UnknownAlloy {
        typed: word.trim().to_owned(),
        nearest,
        advice,
    }
}

/// Letters to put in, take out or change to make one word of the other.
fn edits(one: &str, other: &str) -> usize {
    let other: Vec<char> = other.chars().collect();
    let mut row: Vec<usize> = (0..=other.len()).collect();
    for (above, letter) in one.chars().enumerate() {
        let mut corner = above;
        row[0] = above + 1;
        for (column, wanted) in other.iter().enumerate() {
            let changed = corner + usize::from(letter != *wanted);
            corner = row[column + 1];
            row[column + 1] = changed.min(corner + 1).min(row[column] + 1);
        }
    }
    row[other.len()]
}
