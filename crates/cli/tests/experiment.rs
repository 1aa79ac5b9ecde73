//! `oddside experiment` as a founder meets it: a plan, cards, results, pictures.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use std::fs;

use shop::{Shop, examples};

/// The example, copied without its batches and results.
fn village() -> Shop {
    let shop = Shop::new();
    let text = fs::read(examples().join("village-heap/experiment.toml")).unwrap();
    shop.file("heap/experiment.toml", text);
    shop
}

/// The example with its batches and results.
fn measured() -> Shop {
    let shop = village();
    for name in ["batches.toml", "results.csv"] {
        let bytes = fs::read(examples().join("village-heap").join(name)).unwrap();
        shop.file(&format!("heap/{name}"), bytes);
    }
    shop
}

#[test]
fn a_new_folder_is_planned_as_it_stands() {
    let shop = Shop::new();
    shop.run(&["experiment", "new", "own"]).ends_with(0);
    shop.run(&["experiment", "new", "own"])
        .ends_with(2)
        .talks("already there");
    let said = shop.run(&["experiment", "plan", "own"]);
    said.ends_with(0)
        .says("9 batches of 1 kg")
        .says("drawn by lot")
        .says("dust");
    assert!(
        fs::read(shop.path().join("own/batch-cards.pdf"))
            .unwrap()
            .starts_with(b"%PDF")
    );
}

/// The heap from scratch: nine batches and six later, two repeats, molasses in a second session.
#[test]
fn the_village_heap_is_planned_as_its_example_says() {
    let shop = village();
    let said = shop.run(&["experiment", "plan", "heap"]);
    said.ends_with(0)
        .says("15 batches of 1 kg")
        .says("from batch 10 on a second session, with molasses")
        .says("repeats, which show the noise");
    let own = fs::read_to_string(shop.path().join("heap/batches.toml")).unwrap();
    let shipped = fs::read_to_string(examples().join("village-heap/batches.toml")).unwrap();
    assert_eq!(own, shipped);
    assert_eq!(said.out, shop.run(&["experiment", "plan", "heap"]).out);
}

#[test]
fn results_come_in_one_by_one_and_as_a_table() {
    let shop = village();
    let enter = |more: &[&str]| shop.run(&[&["experiment", "enter", "heap"], more].concat());
    enter(&["1", "green=40"])
        .ends_with(2)
        .talks("oddside experiment plan");
    shop.run(&["experiment", "plan", "heap"]).ends_with(0);
    enter(&["1", "green=40 kPa", "perm=55"])
        .ends_with(0)
        .talks("2 results kept");
    enter(&["1", "green=52"])
        .ends_with(3)
        .talks("40")
        .talks("--replace")
        .talks("--again");
    enter(&["1", "green=52", "--replace"]).ends_with(0);
    enter(&["77", "green=52"])
        .ends_with(2)
        .talks("batches 1 to 15");
    enter(&["2"]).ends_with(64);
    shop.file(
        "bench.csv",
        "batch;green strength;permeability\n2;41,5;\n3;x;60\n4;44;58\n",
    );
    enter(&["--csv", "bench.csv"])
        .ends_with(2)
        .talks("4 results kept")
        .talks("line 3, left out");
    let kept = fs::read_to_string(shop.path().join("heap/results.csv")).unwrap();
    assert!(
        kept.contains("1,green strength,40,\n1,permeability,55,\n1,green strength,52,replaces")
    );
    shop.run(&["experiment", "plan", "heap", "--force"])
        .ends_with(2)
        .talks("has results");
    let said = shop.run(&["experiment", "read", "heap"]);
    said.ends_with(0)
        .says("2 of 15 batches measured")
        .says("still to measure");
}

#[test]
fn the_example_is_read_drawn_and_goes_on() {
    let shop = measured();
    let said = shop.run(&["experiment", "read", "heap"]);
    said.ends_with(0)
        .says("15 of 15 batches measured")
        .says("green strength")
        .says("noise of one batch, by repeats")
        .says("best for all")
        .says("most likely to be better")
        .says("teaches most");
    let picture = "heap/pictures/green-strength-dug-clay-water.svg";
    let svg = fs::read_to_string(shop.path().join(picture)).unwrap();
    assert!(svg.contains("url(#unknown)") && svg.contains("dug clay") && svg.contains("</svg>"));
    let json = shop.run(&["experiment", "read", "heap", "--json"]).json();
    assert_eq!(
        json["responses"][0]["results"].as_array().unwrap().len(),
        15
    );
    assert!(json["next"][0]["mix"]["amounts"].is_array());
    shop.run(&["experiment", "plan", "heap", "--more", "2"])
        .ends_with(0)
        .says("17 batches");
    let batches = fs::read_to_string(shop.path().join("heap/batches.toml")).unwrap();
    assert_eq!(batches.matches("from = \"next\"").count(), 2);
    shop.run(&["experiment", "read", "heap"])
        .says("still to measure: batch 16, 17");
}

#[test]
fn every_language_tells_it() {
    for (language, words) in [("fr", "gâchées"), ("es", "amasadas"), ("us", "batches")] {
        let shop = measured();
        shop.file("shop.toml", format!("words = \"{language}\"\n"));
        shop.run(&["experiment", "plan", "heap"])
            .ends_with(0)
            .says(words);
        shop.run(&["experiment", "read", "heap"])
            .ends_with(0)
            .says(words);
    }
}

/// Three heaps, of which `best` is better by far and the others are alike.
const HEAPS: &str = r#"
name = "Three heaps"
seed = 3
batch = "1 kg"
basis = "dry"
times = 3
days = 3
[[part]]
name = "sand"
amount = 100
[[part]]
name = "clay"
[[part]]
name = "water"
amount = 8
is_water = true
[[mix]]
name = "old heap"
amounts = { clay = 14 }
[[mix]]
name = "best"
amounts = { clay = 18, water = 9 }
[[mix]]
name = "bare"
[[response]]
name = "strength"
unit = "kPa"
want = "high"
"#;

/// Enters results of each mix, taken in turn, for every planned batch that has none.
fn enter_each(shop: &Shop, from: usize, of: &[(&str, &[f64])]) {
    let text = fs::read_to_string(shop.path().join("heap/batches.toml")).unwrap();
    let names = text.lines().filter_map(|line| line.strip_prefix("mix = "));
    let mut table = "batch,strength\n".to_owned();
    let mut turns = vec![0; of.len()];
    for (at, name) in names.enumerate().skip(from) {
        let name = name.trim_matches('"');
        let mix = of.iter().position(|(mix, _)| *mix == name).unwrap();
        let value = of[mix].1[turns[mix] % of[mix].1.len()];
        table += &format!("{},{value}\n", at + 1);
        turns[mix] += 1;
    }
    shop.file("bench.csv", table);
    shop.run(&[
        "experiment",
        "enter",
        "heap",
        "--csv",
        "bench.csv",
        "--sure",
    ])
    .ends_with(0);
}

#[test]
fn named_mixes_are_planned_entered_and_read() {
    for (language, winner, mixes) in [
        ("uk", "winner: best", "old heap, best, bare"),
        ("us", "winner: best", "each mix is made 3 times"),
        ("fr", "vainqueur", "chaque mélange est fait"),
        ("es", "ganadora: best", "cada mezcla se hace"),
    ] {
        let shop = Shop::new();
        shop.file("shop.toml", format!("words = \"{language}\"\n"));
        shop.file("heap/experiment.toml", HEAPS);
        let said = shop.run(&["experiment", "plan", "heap"]);
        said.ends_with(0).says("9").says(mixes).says("old heap");
        shop.run(&["experiment", "read", "heap"]).ends_with(0);
        let best = [59.0, 60.0, 61.5];
        let of: [(&str, &[f64]); 3] = [
            ("old heap", &[40.0, 41.0, 42.5]),
            ("best", &best),
            ("bare", &[39.5, 41.5, 42.0]),
        ];
        enter_each(&shop, 0, &of);
        shop.run(&["experiment", "read", "heap"])
            .ends_with(0)
            .says(winner);
        let json = shop.run(&["experiment", "read", "heap", "--json"]).json();
        assert_eq!(json["responses"][0]["winner"], "best");
        shop.run(&["experiment", "plan", "heap", "--more", "3"])
            .ends_with(2)
            .talks("no batch has to be added");
    }
}

#[test]
fn mixes_that_are_not_told_apart_are_made_again() {
    let shop = Shop::new();
    shop.file("heap/experiment.toml", HEAPS);
    shop.run(&["experiment", "plan", "heap"]).ends_with(0);
    shop.run(&["experiment", "plan", "heap", "--more", "3"])
        .ends_with(2)
        .talks("measure those before");
    enter_each(
        &shop,
        0,
        &[
            ("old heap", &[57.0, 60.0, 63.5]),
            ("best", &[64.0, 58.0, 61.5]),
            ("bare", &[19.5, 21.5, 22.0]),
        ],
    );
    shop.run(&["experiment", "read", "heap"])
        .ends_with(0)
        .says("none named, because")
        .says("make again: old heap, best");
    shop.run(&["experiment", "plan", "heap", "--more", "1"])
        .ends_with(2)
        .talks("--more 2");
    shop.run(&["experiment", "plan", "heap", "--more", "2"])
        .ends_with(0)
        .says("11 batches");
    shop.run(&["experiment", "read", "heap"])
        .says("still to measure: batch 10, 11")
        .says("measure the open batches first");
}

#[test]
fn what_is_wrong_in_the_file_is_told_with_its_place() {
    let shop = village();
    let path = shop.path().join("heap/experiment.toml");
    let text = fs::read_to_string(&path).unwrap();
    let plan = |text: &str| {
        shop.file("heap/experiment.toml", text);
        shop.run(&["experiment", "plan", "heap"])
    };
    plan(&text.replace("repeats = 2", "repeat = 2"))
        .ends_with(2)
        .talks("did you mean `repeats`");
    plan(&text.replace("basis = \"dry\"", ""))
        .ends_with(2)
        .talks("basis = \"dry\"");
    plan(&text.replace("batches = 9", "batches = 3"))
        .ends_with(2)
        .talks("batches");
    plan(&text.replace("1.0 % of wet mass", "9.0 % of wet mass"))
        .ends_with(2)
        .talks("river sand brings");
    shop.run(&["experiment", "plan", "nowhere"])
        .ends_with(2)
        .talks("experiment new DIR");
}

/// What the scale said is kept beside what came out, and the reading counts it.
#[test]
fn what_was_really_weighed_is_entered_and_counted() {
    let shop = village();
    shop.run(&["experiment", "plan", "heap"]).ends_with(0);
    let enter = |more: &[&str]| shop.run(&[&["experiment", "enter", "heap"], more].concat());
    enter(&["1", "green=40", "dug clay=240 g"])
        .ends_with(0)
        .talks("1 results kept")
        .talks("1 masses kept as weighed");
    enter(&["2", "dug clay=18 g"])
        .ends_with(3)
        .talks("181 g planned")
        .talks("--sure");
    enter(&["2", "dug clay=some"]).ends_with(2).talks("182 g");
    let kept = fs::read_to_string(shop.path().join("heap/results.csv")).unwrap();
    assert!(kept.contains("1,dug clay,240,weighed"), "{kept}");
    shop.run(&["experiment", "read", "heap"])
        .ends_with(0)
        .says("1 batches are taken as they were weighed");
    // The plan and its cards stay as they were drawn.
    let planned = fs::read_to_string(shop.path().join("heap/batches.toml")).unwrap();
    shop.run(&["experiment", "plan", "heap"]).ends_with(0);
    let again = fs::read_to_string(shop.path().join("heap/batches.toml")).unwrap();
    assert_eq!(planned, again);
}
