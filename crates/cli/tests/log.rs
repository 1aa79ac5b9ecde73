//! `oddside log` as a founder meets it: a pour written from its plan, asked about, and moved.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use shop::{Shop, WEIGHTS};

#[test]
fn a_pour_is_written_from_its_plan_and_comes_back_from_an_export() {
    let shop = Shop::with_its_file();
    shop.file(
        "job/job.toml",
        WEIGHTS.replace("[part]", "[part]\ncount = 2"),
    );
    shop.run(&["plan", "job"]).ends_with(0);
    let pour = [
        "log",
        "pour",
        "job",
        "temperature=715 C",
        "poured=2026-05-03T14:20",
        "good=1",
    ];
    let said = shop.run(&pour);
    said.ends_with(0);
    assert!(said.talk.contains("written: pour 1"), "{}", said.talk);
    assert!(
        said.talk.contains("pour 1 is half-filled: it lacks time"),
        "{}",
        said.talk
    );
    shop.run(&["log", "change", "pour", "last", "time=6 s"])
        .ends_with(0);
    shop.run(&["log", "change", "heat", "1", "melted=2026-05-03T15:00"])
        .ends_with(0);
    let check = shop.run(&["log", "check"]);
    check.ends_with(0);
    assert!(
        check
            .talk
            .contains("pour 1: poured before the heat was melted"),
        "{}",
        check.talk
    );
    let list = shop.run(&["log", "list", "castings", "--json"]);
    let list = list.ends_with(0).json();
    assert_eq!(list.as_array().unwrap().len(), 2);
    let table = shop.run(&["log", "list", "pours"]);
    assert!(
        table.out.contains("temperature, °C") && table.out.contains("715"),
        "{}",
        table.out
    );
    shop.run(&["log", "export", "open"]).ends_with(0);
    let csv: Vec<String> = std::fs::read_dir(shop.path().join("open"))
        .unwrap()
        .map(|file| format!("open/{}", file.unwrap().file_name().to_string_lossy()))
        .collect();
    let mut import = vec!["log", "--log", "other.sqlite", "import"];
    import.extend(csv.iter().map(String::as_str));
    shop.run(&import).ends_with(0);
    shop.run(&["log", "export", "one.json", "--json"])
        .ends_with(0);
    shop.run(&[
        "log",
        "--log",
        "other.sqlite",
        "export",
        "two.json",
        "--json",
    ])
    .ends_with(0);
    let read = |name: &str| std::fs::read(shop.path().join(name)).unwrap();
    assert_eq!(read("one.json"), read("two.json"));
    shop.run(&["log", "backup", "kept.sqlite"]).ends_with(0);
    shop.run(&["log", "backup", "kept.sqlite"]).ends_with(2);
}

#[test]
fn what_is_wrong_is_told_with_what_to_do() {
    let shop = Shop::with_its_file();
    for (asked, code, told) in [
        (&["log", "list"][..], 2, "the first entry makes it"),
        (&["log", "add", "hat"], 64, "say one of weather, heaps"),
        (
            &["log", "add", "heat", "colour=red"],
            64,
            "a heat has no \"colour\": it has alloy",
        ),
        (&["log", "add", "heat", "charge=much"], 64, "charge"),
        (
            &["log", "add", "pour", "heat=last"],
            64,
            "there is no heat \"last\"",
        ),
        (&["log", "pour", "job"], 2, "work the job out first"),
    ] {
        let said = shop.run(asked);
        said.ends_with(code);
        assert!(said.talk.contains(told), "{}", said.talk);
    }
    shop.file(
        "log.sqlite",
        "no log at all, but long enough to be looked at twice".repeat(99),
    );
    let said = shop.run(&["log", "add", "heat", "alloy=A356"]);
    said.ends_with(2);
    assert!(said.talk.contains("oddside log salvage"), "{}", said.talk);
}

#[test]
fn files_of_the_bench_move_in_and_out() {
    let shop = Shop::with_its_file();
    shop.run(&["heap", "new"]).ends_with(0);
    let said = shop.run(&["log", "move-in", "heap.toml"]);
    said.ends_with(0);
    assert!(
        said.talk.contains("heap.toml: 2 new entries"),
        "{}",
        said.talk
    );
    shop.run(&["log", "move-out", "again"]).ends_with(0);
    let read = |name: &str| std::fs::read(shop.path().join(name)).unwrap();
    assert_eq!(read("heap.toml"), read("again/heap.toml"));
}
