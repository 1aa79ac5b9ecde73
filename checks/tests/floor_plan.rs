//! The arrows between the rooms, and what each room must not know.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::collections::BTreeSet;

use checks::repository::{File, code_only, crates, files};

/// Each room with the rooms it knows, from the ground up.
const ARROWS: &[(&str, &[&str])] = &[
    ("measure", &[]),
    ("solver", &[]),
    ("gpu", &["solver"]),
    ("conduct", &["solver"]),
    ("pattern", &["measure"]),
    ("metal", &["measure"]),
    ("sand", &["measure"]),
    ("mould", &["measure"]),
    ("trials", &[]),
    ("rigging", &["mould", "pattern", "measure"]),
    (
        "pour",
        &["rigging", "mould", "pattern", "metal", "solver", "measure"],
    ),
    ("reckon", &["mould", "pattern", "metal", "sand", "measure"]),
    (
        "job",
        &[
            "reckon", "pour", "rigging", "mould", "pattern", "metal", "sand", "measure",
        ],
    ),
    (
        "bench",
        &["job", "pour", "reckon", "sand", "trials", "measure"],
    ),
    ("shoplog", &["bench", "job", "trials", "measure"]),
    ("sheet", &["bench", "job", "measure"]),
    (
        "web",
        &[
            "shoplog", "sheet", "bench", "job", "pour", "rigging", "pattern", "metal", "measure",
            "gpu",
        ],
    ),
    (
        "cli",
        &[
            "web", "shoplog", "sheet", "bench", "job", "reckon", "pattern", "metal", "sand",
            "measure", "mould", "conduct", "gpu",
        ],
    ),
];

/// The rooms below the doors but for the job: no disk, no clock, no network.
const WITHOUT_DISK: [&str; 12] = [
    "measure", "solver", "conduct", "pattern", "metal", "sand", "mould", "trials", "rigging",
    "pour", "reckon", "bench",
];

/// Words of the trade that the ground may not know.
const TRADE: [&str; 7] = [
    "alloy", "sand", "flask", "mould", "feeder", "sprue", "casting",
];

#[test]
fn the_arrows_are_those_of_the_plan() {
    let rooms = manifests();
    let named: BTreeSet<_> = rooms.iter().map(|(name, _)| name.as_str()).collect();
    let planned: BTreeSet<_> = ARROWS.iter().map(|(name, _)| *name).collect();
    assert_eq!(named, planned, "rooms there are, rooms there should be");
    for (name, manifest) in &rooms {
        let known = dependencies(manifest, &planned);
        let wanted = ARROWS.iter().find(|(room, _)| room == name);
        let wanted: BTreeSet<&str> = wanted.expect("planned").1.iter().copied().collect();
        assert_eq!(known, wanted, "what {name} knows, what it should know");
    }
}

#[test]
fn arrows_run_down_only() {
    let mut below = BTreeSet::new();
    for (name, known) in ARROWS {
        let up: Vec<_> = known.iter().filter(|room| !below.contains(*room)).collect();
        assert!(up.is_empty(), "{name} knows {up:?} above it");
        below.insert(*name);
    }
}

#[test]
fn no_room_depends_on_the_checks() {
    for (name, manifest) in manifests() {
        let known = dependencies(&manifest, &BTreeSet::from(["checks"]));
        assert!(known.is_empty(), "{name} depends on the checks");
    }
}

#[test]
fn below_the_doors_only_the_job_opens_a_file() {
    let doors = [
        "std::fs",
        "std::net",
        "std::env",
        "SystemTime",
        "Instant",
        "File::open",
    ];
    for room in WITHOUT_DISK {
        let found = lines_with(&sources(room), &doors);
        assert!(found.is_empty(), "{}", found.join("\n"));
    }
}

#[test]
fn only_the_sheet_knows_typst() {
    for (name, manifest) in manifests() {
        let knows =
            manifest.contains("typst") || !lines_with(&sources(&name), &["typst"]).is_empty();
        assert_eq!(knows, name == "sheet", "{name} and typst");
    }
}

#[test]
fn only_the_web_knows_a_server() {
    for (name, manifest) in manifests() {
        let knows = ["axum", "tokio"]
            .iter()
            .any(|library| manifest.contains(library));
        assert_eq!(knows, name == "web", "{name} and the server");
    }
}

#[test]
fn only_the_log_knows_the_database() {
    for (name, manifest) in manifests() {
        assert_eq!(manifest.contains("rusqlite"), name == "shoplog", "{name}");
    }
}

#[test]
fn only_the_metal_room_solves_programmes_and_two_rooms_draw_lots() {
    for (name, manifest) in manifests() {
        for (library, rooms) in [
            ("good_lp", &["metal"][..]),
            ("rand", &["metal", "trials"][..]),
        ] {
            let manifest: toml::Table = manifest.parse().expect("a manifest");
            let table = manifest.get("dependencies").and_then(toml::Value::as_table);
            let knows = table.is_some_and(|table| table.contains_key(library));
            let wanted = rooms.contains(&name.as_str());
            assert_eq!(knows, wanted, "{name} and {library}");
        }
    }
}

#[test]
fn only_one_file_knows_the_library_that_joins_solids() {
    for (name, manifest) in manifests() {
        assert_eq!(manifest.contains("manifold"), name == "pattern", "{name}");
        let knowing = lines_with(&sources(&name), &["manifold_rust"]);
        let strange = knowing
            .iter()
            .find(|line| !line.contains("pattern/src/boolean.rs:"));
        assert_eq!(strange, None);
    }
}

#[test]
fn only_the_door_prints() {
    let printing = [
        "println!",
        "eprintln!",
        "print!",
        "eprint!",
        "stdout()",
        "stderr()",
    ];
    for (name, _) in manifests().iter().filter(|(name, _)| name != "cli") {
        let found = lines_with(&sources(name), &printing);
        assert!(found.is_empty(), "{}", found.join("\n"));
    }
}

#[test]
fn the_ground_knows_no_word_of_the_trade() {
    let of_trade = |line: &str| {
        words(line).any(|word| {
            TRADE
                .iter()
                .any(|trade| *trade == word || *trade == singular(&word))
        })
    };
    for file in ["measure", "solver", "trials"]
        .into_iter()
        .flat_map(sources)
    {
        for (number, line) in code_only(&file.text).iter().enumerate() {
            assert!(!of_trade(line), "{}:{}: {line}", file.path, number + 1);
        }
    }
    assert!(of_trade("let wet_sand = 1;") && of_trade("struct MouldBox;"));
    assert!(!of_trade("let thousand = 1;"));
}

fn manifests() -> Vec<(String, String)> {
    crates().expect("crates with their manifests")
}

fn sources(room: &str) -> Vec<File> {
    let found = files(&format!("crates/{room}/src"), &[".rs"]).expect("sources");
    assert!(!found.is_empty(), "no sources in {room}");
    found
}

/// Which of these crates a manifest asks for outside its tests.
fn dependencies<'a>(manifest: &str, of: &BTreeSet<&'a str>) -> BTreeSet<&'a str> {
    let manifest: toml::Table = manifest.parse().expect("a manifest");
    let table = manifest.get("dependencies").and_then(toml::Value::as_table);
    let asked = |name: &&&str| table.is_some_and(|table| table.contains_key(**name));
    of.iter().filter(asked).copied().collect()
}

/// The lines of code, without comments and the words in strings, in which one of these stands.
fn lines_with(files: &[File], wanted: &[&str]) -> Vec<String> {
    let mut found = Vec::new();
    for file in files {
        for (number, line) in code_only(&file.text).iter().enumerate() {
            if wanted.iter().any(|word| line.contains(word)) {
                found.push(format!("{}:{}: {line}", file.path, number + 1));
            }
        }
    }
    found
}

/// The words that names are made of: `wet_sand` and `WetSand` both hold "sand".
fn words(line: &str) -> impl Iterator<Item = String> {
    let mut spread = String::new();
    let mut before_small = false;
    for letter in line.chars() {
        if letter.is_uppercase() && before_small {
            spread.push(' ');
        }
        before_small = letter.is_lowercase();
        spread.push(if letter.is_alphabetic() { letter } else { ' ' });
    }
    let words: Vec<_> = spread.split(' ').map(str::to_lowercase).collect();
    words.into_iter()
}

fn singular(word: &str) -> &str {
    word.strip_suffix('s').unwrap_or(word)
}
