//! The book of a heap: scenario 4.7 of the needs, pours, and what is refused.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a helper that fails fails its test"
)]

use bench::book::file::{HeapFile, STARTER, begun};
use bench::book::pour::{keys, poured};
use bench::book::rescue::{KEYS as RESCUE, rescue};
use bench::book::state::{now_after, state};
use bench::given::Given;
use bench::told::{Told, Value};
use job::file_fault::read;
use job::solved_kept::HeatOfPour;
use pour::hot_sand::HotSand;

fn given(text: &[&str], keys: &[&str]) -> Given {
    let text: Vec<String> = text.iter().map(|one| (*one).to_owned()).collect();
    Given::read(&text, keys, &[]).unwrap()
}

fn figure(told: &Told, id: &str) -> f64 {
    let found = told.figures.iter().find(|figure| figure.id == id);
    match &found.unwrap_or_else(|| panic!("{id} is not told")).value {
        Value::Amount(amount) => amount.values()[1],
        Value::Number(band) => band.likely(),
        Value::Words(words) => panic!("{words:?}"),
    }
}

fn says(told: &Told, id: &str) -> bool {
    told.lines.iter().any(|line| line.words.id() == id)
}

fn near(got: f64, wanted: f64, within: f64) {
    assert!((got - wanted).abs() <= within, "{got}, wanted {wanted}");
}

const TIRED: [&str; 11] = [
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

#[test]
fn the_tired_heap_is_brought_back() {
    let told = rescue(&given(&TIRED, &RESCUE)).unwrap();
    near(figure(&told, "bench-water-to-lose"), 4.34, 0.01);
    near(figure(&told, "bench-dilution"), 92.0, 0.5);
    near(figure(&told, "bench-washable"), 10.8, 0.05);
    near(figure(&told, "bench-burning-loss"), 2.9, 0.05);
    let fines = figure(&told, "bench-fines-after");
    assert!((9.9..=10.1).contains(&fines), "{fines}");
    for id in [
        "bench-do-not-dilute",
        "bench-dead-clay",
        "bench-silicate-out",
        "bench-dull-pour",
        "bench-silica",
    ] {
        assert!(says(&told, id), "{id}");
    }
    assert!(!says(&told, "bench-short-clay") && !says(&told, "bench-short-sand"));
    let steps = told
        .steps
        .iter()
        .filter_map(|step| step.id().strip_prefix("bench-step-"));
    let steps: Vec<&str> = steps.collect();
    assert_eq!(steps, ["dry", "sieve", "crust", "add", "mull", "test"]);
}

#[test]
fn other_moistures_lose_other_water() {
    let lost = |wanted: &str| {
        let told = rescue(&given(&[&TIRED[..], &[wanted]].concat(), &RESCUE)).unwrap();
        figure(&told, "bench-water-to-lose")
    };
    near(lost("wanted=4.0 % of wet mass"), 4.78, 0.01);
    near(lost("wanted=5.0 % of wet mass"), 3.88, 0.01);
}

#[test]
fn what_is_lacking_is_told() {
    let asked = [
        "heap=90 kg",
        "now=9.1 % of wet mass",
        "clay=1 kg",
        "sand=10 kg",
    ];
    let told = rescue(&given(&asked, &RESCUE)).unwrap();
    assert!(says(&told, "bench-short-clay") && says(&told, "bench-short-sand"));
    assert!(says(&told, "bench-wash-first"));
    let odd = [
        "heap=90 kg",
        "now=9.1 % of wet mass",
        "dried=44 g",
        "washed=50 g",
    ];
    let fault = rescue(&given(&odd, &RESCUE)).unwrap_err().to_string();
    assert!(fault.contains("washed is more than dried"), "{fault}");
    assert!(rescue(&given(&["heap=90 kg"], &RESCUE)).is_err());
}

const POURED: [&str; 7] = [
    "day=2026-05-03",
    "metal=A356",
    "section=10 mm",
    "poured=3 kg",
    "sand_mass=40 kg",
    "faces=900 cm2",
    "crust_out=50 %",
];

#[test]
fn a_pour_goes_into_the_book_and_the_state_follows() {
    let before: HeapFile = read("heap.toml", STARTER).unwrap();
    let done = poured(&before, STARTER, &given(&POURED, &keys(false)), None).unwrap();
    assert!(done.book.starts_with(STARTER));
    let after: HeapFile = read("heap.toml", &done.book).unwrap();
    let (start, end) = (begun(&before).unwrap(), now_after(&after).unwrap());
    assert!(end.live_clay <= start.live_clay && end.water < start.water);
    let told = state(&after).unwrap();
    near(
        figure(&told, "bench-holds-live-clay"),
        end.live_clay.as_kg(),
        1e-9,
    );
    let twice = poured(&after, &done.book, &given(&POURED, &keys(false)), None).unwrap();
    let after: HeapFile = read("heap.toml", &twice.book).unwrap();
    assert_eq!(after.pour.len(), 2);
}

/// A thicker section burns a deeper crust (needs.md, capability 29).
#[test]
fn a_thicker_casting_burns_deeper() {
    let file: HeapFile = read("heap.toml", STARTER).unwrap();
    let crust = |section: &str| {
        let mut asked = POURED;
        asked[1] = "metal=grey iron";
        asked[2] = section;
        figure(
            &poured(&file, STARTER, &given(&asked, &keys(false)), None)
                .unwrap()
                .told,
            "bench-crust",
        )
    };
    assert!(crust("section=12 mm") > crust("section=6 mm"));
    assert!(crust("section=6 mm") > 0.0);
}

/// Findings of a mould in which so much sand was above 600 and above 650 °C.
fn followed(above_600_mm3: f64, above_650_mm3: f64) -> HeatOfPour {
    HeatOfPour {
        job: "housing".to_owned(),
        hot_sand: Some(HotSand {
            above_c: vec![105.0, 300.0, 600.0, 650.0],
            mould_mm3: vec![9e6, 4e6, above_600_mm3, above_650_mm3],
            cores_mm3: vec![0.0; 4],
            surface_mm2: 9e4,
        }),
    }
}

/// 1.6 g/cm³ of rammed sand (`shop-handbook-figures`): a litre of it above the death of the clay
/// is 1.6 kg of the heap of 90 kg, wherever in the mould it lay.
#[test]
fn a_freezing_that_was_followed_says_how_much_clay_is_dead() {
    let file: HeapFile = read("heap.toml", STARTER).unwrap();
    let asked = given(&["day=2026-05-03", "freeze=housing"], &keys(true));
    let heat = followed(1.5e6, 0.5e6);
    let done = poured(&file, STARTER, &asked, Some(&heat)).unwrap();
    assert!(says(&done.told, "bench-by-freezing"));
    near(figure(&done.told, "bench-clay-burnt"), 160.0 / 90.0, 1e-6);
    near(figure(&done.told, "bench-crust"), 11.1, 1e-9);
    let after: HeapFile = read("heap.toml", &done.book).unwrap();
    assert_eq!(after.pour[0].clay_burnt, "1.77778 %");
    // Water: 14.4 kg of the heap above 100 °C are dried out, 0.16 of it.
    assert_eq!(after.pour[0].dried, "16 %");
}

#[test]
fn a_freezing_without_its_cooling_is_refused_and_says_what_to_give() {
    let file: HeapFile = read("heap.toml", STARTER).unwrap();
    let asked = given(&["day=2026-05-03", "freeze=housing"], &keys(true));
    let heat = HeatOfPour {
        hot_sand: None,
        ..followed(1.5e6, 0.5e6)
    };
    let fault = poured(&file, STARTER, &asked, Some(&heat)).unwrap_err();
    assert!(fault.to_string().contains("faces="), "{fault}");
    // What the freezing knows is not asked for beside it.
    let both = ["freeze=housing".to_owned(), "section=8 mm".to_owned()];
    let fault = Given::read(&both, &keys(true), &[]).unwrap_err();
    assert!(fault.to_string().contains("section"), "{fault}");
}

#[test]
fn books_that_cannot_be_are_refused_in_words() {
    let full = STARTER.replace(
        "live_clay = \"6 %\"",
        "live_clay = \"60 %\"\ndead_clay = \"50 %\"",
    );
    let file: HeapFile = read("heap.toml", &full).unwrap();
    assert!(state(&file).unwrap_err().to_string().contains("110.0 %"));
    let bare = STARTER.replace("4.5 % of wet mass", "4.5 %");
    let file: HeapFile = read("heap.toml", &bare).unwrap();
    assert!(state(&file).unwrap_err().to_string().contains("of what"));
    let file: HeapFile = read("heap.toml", STARTER).unwrap();
    let fault = poured(&file, STARTER, &given(&POURED[..4], &keys(false)), None).unwrap_err();
    assert!(fault.to_string().contains("missing"), "{fault}");
    let mut odd = POURED;
    odd[1] = "metal=cheese";
    let fault = poured(&file, STARTER, &given(&odd, &keys(false)), None).unwrap_err();
    assert!(fault.to_string().contains("cheese"), "{fault}");
}
