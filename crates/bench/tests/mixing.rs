//! Mixing, mulling and facing as sheets are printed from them.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a helper that fails fails its test"
)]

use bench::given::Given;
use bench::tested::facing::{KEYS as FACING, facing_sand};
use bench::tested::mulling::{KEYS as MULL, mulling};
use bench::tested::readings::{Reading, ReadingsFile};
use bench::tested::recipe::{KEYS as RECIPE, recipe};
use bench::told::{Told, Value};
use job::file_fault::read;
use job::folder::STARTER_SHOP;
use job::shop::{Shop, ShopFile};
use job::words::Language;
use sand::mixes;

fn shop(more: &str) -> Shop {
    let typed: ShopFile = read("shop.toml", &format!("{STARTER_SHOP}\n{more}")).unwrap();
    typed.meant().unwrap()
}

fn given(text: &[&str], keys: &[&str]) -> Given {
    let text: Vec<String> = text.iter().map(|one| (*one).to_owned()).collect();
    Given::read(&text, keys, &[]).unwrap()
}

fn likely(told: &Told, id: &str) -> f64 {
    let found = told.figures.iter().find(|figure| figure.id == id);
    match &found.unwrap_or_else(|| panic!("{id} is not told")).value {
        Value::Amount(amount) => amount.values()[1],
        other => panic!("{other:?}"),
    }
}

fn steps(told: &Told) -> Vec<&str> {
    told.steps.iter().map(|step| step.id()).collect()
}

fn says(told: &Told, id: &str) -> bool {
    told.lines.iter().any(|line| line.words.id() == id)
}

#[test]
fn a_mix_tells_its_water_of_the_wet_and_of_the_dry_mass() {
    let asked = ["dry_sand=100 kg", "moisture=0 % of wet mass"];
    let told = recipe("sugar-clay", &given(&asked, &RECIPE), &shop("")).unwrap();
    // 100 sand, 8 molasses with a fifth of water, 4 bentonite, 2.5 water.
    let water = 2.5 + 8.0 * 0.2;
    assert!((likely(&told, "bench-mix-of-wet") - water / 114.5 * 100.0).abs() < 1e-9);
    assert!((likely(&told, "bench-mix-of-dry") - water / (114.5 - water) * 100.0).abs() < 1e-9);
    assert!((likely(&told, "bench-water-each-spray") - 2.5 / 3.0).abs() < 1e-9);
    let mulled = steps(&told)
        .iter()
        .position(|step| *step == "mix-step-mull");
    let dried = steps(&told)
        .iter()
        .position(|step| *step == "mix-step-dry-back");
    assert!(mulled < dried && mulled.is_some());
}

#[test]
fn every_scoop_and_bucket_of_a_stuff_is_told() {
    let own = "[[scoop]]\nname = \"bucket\"\nof = \"sand\"\nholds = \"10 kg\"\n\
               [[scoop]]\nname = \"tin\"\nof = \"sand\"\nholds = \"400 g\"\n";
    let asked = ["dry_sand=20 kg", "moisture=0 % of wet mass"];
    let told = recipe("bentonite", &given(&asked, &RECIPE), &shop(own)).unwrap();
    let sand = &told.figures[0];
    let beside = Language::Uk.say(sand.beside.as_ref().unwrap());
    assert_eq!(beside, "2 × bucket = 50 × tin");
    assert!(sand.weighed_out);
}

#[test]
fn no_step_or_caution_of_a_mix_is_english_for_all() {
    for mix in mixes::all() {
        let asked = ["dry_sand=1 kg", "moisture=0 % of wet mass"];
        let told = recipe(&mix.name, &given(&asked, &RECIPE), &shop("")).unwrap();
        for step in told.steps.iter().chain([&told.head]) {
            let each = [Language::Uk, Language::Fr, Language::Es].map(|one| one.say(step));
            assert!(each[0] != each[1] && each[0] != each[2], "{}", each[0]);
        }
    }
}

fn book(values: &[(&str, f64)]) -> ReadingsFile {
    let reading = |(day, value): &(&str, f64)| Reading {
        day: (*day).to_owned(),
        test: "drop".to_owned(),
        value: *value,
        good: false,
        who: None,
    };
    ReadingsFile {
        reading: values.iter().map(reading).collect(),
    }
}

#[test]
fn a_batch_has_had_enough_when_its_gain_drowns_in_the_noise() {
    // Two tests of one sand differ by a standard deviation of √2 times that of one.
    let none = book(&[]);
    let asked = |after| given(&["before=40", after, "noise=2"], &MULL);
    let more = mulling(&asked("after=42.9"), &none).unwrap();
    assert!(says(&more, "bench-mull-on"));
    let enough = mulling(&asked("after=42.8"), &none).unwrap();
    assert!(says(&enough, "bench-mull-enough"));
    // Repeats of two days, each 2 apart: the pooled deviation of one test is √2.
    let known = book(&[("1", 40.0), ("1", 42.0), ("2", 50.0), ("2", 52.0)]);
    let asked = |after| given(&["before=40", after, "test=drop"], &MULL);
    let more = mulling(&asked("after=42.1"), &known).unwrap();
    assert!(says(&more, "bench-mull-on"));
    let enough = mulling(&asked("after=41.9"), &known).unwrap();
    assert!(says(&enough, "bench-mull-enough"));
}

#[test]
fn a_gain_without_a_noise_is_refused_with_what_to_do() {
    let refused = |text: &[&str]| {
        let fault = mulling(&given(text, &MULL), &book(&[("1", 40.0)])).unwrap_err();
        fault.to_string()
    };
    assert!(refused(&["before=40", "after=42"]).contains("noise="));
    assert!(refused(&["before=40", "after=42", "test=drop"]).contains("test one again"));
    assert!(refused(&["before=40", "noise=1"]).contains("ten minutes later"));
    assert!(refused(&["before=40", "after=42", "noise=0"]).contains("twice"));
    assert!(mulling(&given(&[], &MULL), &book(&[])).is_ok());
}

/// What lies within the face of a box, by counting cells of a millimetre.
fn counted(sides: [i32; 3], thick: i32) -> f64 {
    let outside = |at: i32, side: i32| {
        let middle = f64::from(at) + 0.5;
        (-middle).max(middle - f64::from(side)).max(0.0)
    };
    let mut cells = 0;
    for x in -thick..sides[0] + thick {
        for y in -thick..sides[1] + thick {
            for z in -thick..sides[2] + thick {
                let off = [(x, sides[0]), (y, sides[1]), (z, sides[2])];
                let squared: f64 = off.map(|(at, side)| outside(at, side).powi(2)).iter().sum();
                cells += u32::from(squared > 0.0 && squared <= f64::from(thick * thick));
            }
        }
    }
    f64::from(cells) / 1000.0
}

#[test]
fn facing_sand_is_what_geometry_says() {
    let asked = [
        "block=80 mm, 60 mm, 18 mm",
        "thickness=12 mm",
        "sand_density=1.6 g/cm3",
    ];
    let told = facing_sand(&given(&asked, &FACING)).unwrap();
    let volume = likely(&told, "bench-facing-volume");
    let by_cells = counted([80, 60, 18], 12);
    assert!(
        (volume / by_cells - 1.0).abs() < 0.01,
        "{volume}, {by_cells} counted"
    );
    let laid = likely(&told, "bench-facing-laid");
    assert!((laid - 1.6 * volume / 1000.0).abs() < 1e-9);
}

#[test]
fn a_finer_face_costs_breath() {
    let asked = [
        "block=80 mm, 60 mm, 18 mm",
        "heap_grain=0.3 mm",
        "facing_grain=0.15 mm",
        "backing=60 mm",
    ];
    let told = facing_sand(&given(&asked, &FACING)).unwrap();
    // Breath goes with the square of the grain, and the layers follow each other.
    assert!((likely(&told, "bench-facing-open") - 25.0).abs() < 1e-9);
    let both = 72.0 / (12.0 / 0.25 + 60.0) * 100.0;
    assert!((likely(&told, "bench-facing-both") - both).abs() < 1e-9);
    assert!(says(&told, "bench-facing-closes"));
    let exchanged = [&asked[..1], &["heap_grain=0.15 mm", "facing_grain=0.3 mm"]].concat();
    let fault = facing_sand(&given(&exchanged, &FACING)).unwrap_err();
    assert!(fault.to_string().contains("exchange"));
    let fault = facing_sand(&given(&["thickness=12 mm"], &FACING)).unwrap_err();
    assert!(fault.to_string().contains("block"), "{fault}");
}

#[test]
fn dug_clay_is_left_out_until_it_is_asked_for() {
    let asked = ["dry_sand=50 kg", "moisture=5.2 % of wet mass"];
    let without = recipe("natural", &given(&asked, &RECIPE), &shop("")).unwrap();
    assert!(says(&without, "bench-part-left-out"));
    assert!(
        without
            .figures
            .iter()
            .all(|figure| figure.id != "bench-part")
    );
    let with = [&asked[..], &["parts.dug-clay=25"]].concat();
    let told = recipe("natural", &given(&with, &RECIPE), &shop("")).unwrap();
    assert!((likely(&told, "bench-part") - 12.5).abs() < 1e-9);
    assert!(says(&told, "bench-within-sources"));
}
