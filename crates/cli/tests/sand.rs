//! `oddside sand` and `oddside heap` as a founder meets them: scenarios 4.6 and 4.7 end to end.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use shop::Shop;

const RIVER: &str = r#"
name = "river sand"
[sieving]
sample = "50 g"
pan = "0.5 g"
kept = { 20 = "0.5 g", 30 = "1.5 g", 40 = "6 g", 50 = "12 g", 70 = "13.5 g", 100 = "9 g", 140 = "4 g", 200 = "1.5 g", 270 = "0.5 g" }
[moisture]
wet = "200.0 g"
dry = "189.6 g"
[jar]
fine = "18 mm"
all = "120 mm"
[[puck]]
humidity = "40 %"
dry = "250 g"
rest = "251 g"
[[puck]]
humidity = "78 %"
dry = "250 g"
rest = "254.75 g"
"#;

/// Scenario 4.6: a heap from scratch.
#[test]
fn a_heap_from_scratch() {
    let shop = Shop::new();
    shop.file("sand.toml", RIVER);
    let card = shop.run(&["sand", "card", "--json"]);
    let card = card.ends_with(0).json();
    let likely = |key: &str| card["figures"][key]["likely"].as_f64().unwrap();
    assert!((likely("fineness") - 58.4).abs() < 0.1);
    assert!((likely("moisture_of_wet") - 5.20).abs() < 0.01);
    assert!((likely("moisture_of_dry") - 5.49).abs() < 0.01);
    shop.run(&["sand", "card"])
        .ends_with(0)
        .says("silica")
        .says("no per cent of clay by mass");
    shop.run(&[
        "sand",
        "water",
        "sand=18 kg",
        "wet=200 g",
        "dry=189.6 g",
        "wanted=7.5 % of wet mass",
    ])
    .ends_with(0)
    .says("448 g")
    .says("8 to 9 %");
    let tub = [
        "sand",
        "dry",
        "tub=22 kg",
        "now=9 % of wet mass",
        "wanted=6 % of wet mass",
    ];
    shop.run(&tub).ends_with(0).says("21.3 kg");
    let then = ["weighed=21.7 kg", "after=40 min", "started=13:00"];
    shop.run(&[&tub[..], &then[..]].concat())
        .ends_with(0)
        .says("weigh again at")
        .says("I expect");
    let bottle = [
        "air=500 ml",
        "height=50 mm",
        "pressure=10 cmH2O",
        "area=1963.5 mm2",
        "time=14 s",
    ];
    let into = ["--day", "2026-05-03", "--good"];
    shop.run(&[&["sand", "test", "bottle"], &bottle[..], &into[..]].concat())
        .ends_with(0)
        .says("54.6");
    let book = std::fs::read_to_string(shop.path().join("readings.toml")).unwrap();
    assert!(
        book.contains("value = 54.5") || book.contains("value = 54.6"),
        "{book}"
    );
    shop.run(&["sand", "pucks", "at=78 %"])
        .ends_with(0)
        .says("1.9 %")
        .says("do not pour");
    shop.run(&[
        "sand",
        "recipe",
        "natural",
        "mix=60 kg",
        "moisture=0 % of wet mass",
    ])
    .ends_with(0)
    .says("figures of bentonite do not hold");
}

/// Scenario 4.7: the rescue of a tired, rained-on heap.
#[test]
fn a_tired_heap_is_rescued() {
    let shop = Shop::new();
    let asked = [
        "heap",
        "rescue",
        "heap=90 kg",
        "wet=100 g",
        "dry=90.9 g",
        "dried=50.0 g",
        "washed=44.6 g",
        "unburnt=50.0 g",
        "burnt=48.55 g",
        "squeeze=crumbles",
        "silicate=yes",
        "clay=5 kg",
        "sand=40 kg",
    ];
    shop.run(&asked)
        .ends_with(0)
        .says("4.34 kg")
        .says("not sensible")
        .says("10.8 %")
        .says("dead clay")
        .says("silicate")
        .says("a dull one");
    let spread = [
        "sand",
        "dry",
        "tub=90 kg",
        "now=9.1 % of wet mass",
        "wanted=4.5 % of wet mass",
        "air=28 C",
        "humidity=50 %",
        "sun=500",
        "area=6 m2",
    ];
    shop.run(&spread).ends_with(0).says("drying time");
}

#[test]
fn sheets_are_printed_for_mixing_mulling_facing_and_rescue() {
    let shop = Shop::new();
    let asks: [&[&str]; 4] = [
        &[
            "sand",
            "recipe",
            "bentonite",
            "dry_sand=20 kg",
            "moisture=1 % of wet mass",
        ],
        &["sand", "mull", "before=40", "after=45", "noise=2"],
        &["sand", "facing", "block=80 mm, 60 mm, 18 mm"],
        &["heap", "rescue", "heap=90 kg", "wet=100 g", "dry=90.9 g"],
    ];
    for ask in asks {
        let printed = shop.run(&[ask, &["--out", "paper.pdf", "--letter"]].concat());
        printed.ends_with(0).talks("paper.pdf");
        let bytes = std::fs::read(shop.path().join("paper.pdf")).unwrap();
        assert!(bytes.starts_with(b"%PDF-"));
        std::fs::remove_file(shop.path().join("paper.pdf")).unwrap();
    }
}

#[test]
fn a_pour_goes_into_the_book() {
    let shop = Shop::new();
    shop.run(&["heap", "new"]).ends_with(0);
    shop.run(&["heap", "new"])
        .ends_with(2)
        .talks("already there");
    let asked = [
        "heap",
        "pour",
        "day=2026-05-03",
        "metal=grey iron",
        "section=8 mm",
        "poured=5.9 kg",
        "sand_mass=40 kg",
        "faces=900 cm2",
    ];
    shop.run(&asked).ends_with(0).says("burnt crust");
    shop.run(&["heap", "state", "--json"])
        .ends_with(0)
        .says("holds_live_clay");
    let book = std::fs::read_to_string(shop.path().join("heap.toml")).unwrap();
    assert_eq!(book.matches("[[pour]]").count(), 1);
    shop.run(&[&asked[..], &["--look"]].concat()).ends_with(0);
    let same = std::fs::read_to_string(shop.path().join("heap.toml")).unwrap();
    assert_eq!(book, same);
}

#[test]
fn readings_are_watched_and_drawn() {
    let shop = Shop::new();
    for (day, dry) in (1..=9).zip(
        ["190.1 g", "190.5 g", "189.9 g", "190.4 g", "190.2 g"]
            .iter()
            .cycle(),
    ) {
        let dry = format!("dry={dry}");
        let day = format!("2026-05-0{day}");
        let asked = ["sand", "test", "moisture", "wet=200 g", &dry, "--day", &day];
        shop.run(&asked).ends_with(0);
    }
    let said = shop.run(&["sand", "watch", "moisture", "--svg", "chart.svg"]);
    said.ends_with(0)
        .says("limits of a reading")
        .says("2026-05-09");
    let drawn = std::fs::read_to_string(shop.path().join("chart.svg")).unwrap();
    assert!(drawn.starts_with("<svg"));
    assert!(drawn.contains("2026-05-01") && drawn.contains("moisture"));
}

#[test]
fn wrong_usage_ends_with_64_and_a_missing_basis_asks() {
    let shop = Shop::new();
    shop.run(&["sand", "water", "wat=200 g"])
        .ends_with(64)
        .talks("did you mean");
    shop.run(&["sand", "water", "200 g"]).ends_with(64);
    shop.run(&["sand", "sing"]).ends_with(64);
    shop.run(&["sand", "water", "now=5 %"])
        .ends_with(3)
        .talks("of wet mass");
    shop.run(&["sand", "water", "wet=180 g", "dry=190 g"])
        .ends_with(2)
        .talks("exchange");
    shop.run(&["sand", "card"])
        .ends_with(2)
        .talks("oddside sand new");
}

/// What the solver followed in a mould goes into the book of the heap.
#[test]
fn a_freezing_that_was_followed_enters_the_book_of_the_heap() {
    let shop = Shop::new();
    let job = "name = \"block\"\n[part]\nmesh = \"featured_block_inches.stl\"\nunit = \"in\"\n\
               [metal]\nalloy = \"A356\"\n";
    shop.example("featured_block_inches.stl", job);
    shop.run(&["heap", "new"]).ends_with(0);
    let ask = ["heap", "pour", "day=2026-05-03", "freeze=job"];
    shop.run(&ask).ends_with(2).talks("oddside freeze JOB");
    shop.run(&["freeze", "job", "--cells", "20000"])
        .ends_with(0);
    shop.run(&ask)
        .ends_with(0)
        .says("followed in the mould of block");
    let book = std::fs::read_to_string(shop.path().join("heap.toml")).expect("a book");
    let pour: Vec<&str> = book
        .lines()
        .skip_while(|line| *line != "[[pour]]")
        .collect();
    assert!(
        pour.iter().any(|line| line.starts_with("clay_burnt = ")),
        "{pour:?}"
    );
    std::fs::write(shop.path().join("job/freeze/findings.json"), "{}").expect("written");
    shop.run(&ask)
        .ends_with(2)
        .talks("holds no findings of a freezing");
    shop.run(&[
        "heap",
        "pour",
        "day=2026-05-03",
        "freeze=job",
        "section=8 mm",
    ])
    .ends_with(64)
    .talks("section");
}

#[test]
fn a_mesh_in_place_of_a_job_and_a_unit_in_place_of_a_bare_reading_are_told() {
    let shop = Shop::new();
    shop.example("featured_block_inches.stl", "name = \"block\"\n");
    shop.run(&["cores", "job/featured_block_inches.stl"])
        .ends_with(2)
        .talks("is a mesh, and this takes a job");
    shop.run(&["sand", "mull", "before=90 kPa", "after=95", "noise=3"])
        .ends_with(64)
        .talks("without a unit");
}
