//! Settings of more than two ways, ranges over decades, and pictures along one thing.

use bench::experiment::batches::{BatchesFile, text};
use bench::experiment::design::planned;
use bench::experiment::picture::pictures;
use bench::experiment::reading::read;
use bench::experiment::space::Space;
use bench::experiment::trouble::ExperimentError;
use job::words::Language;

use crate::simulated::results;
use crate::{experiment, meant};

const WAYS: &str = r#"
name = "Ways"
seed = 3
batch = "1 kg"
basis = "dry"
batches = 12
repeats = 2
aim = "learn"
part = [
    { name = "sand", amount = 100 },
    { name = "clay", amount = "6 to 12" },
    { name = "water", amount = 4, is_water = true },
]
setting = [{ name = "mulled", choices = ["by foot", "by drill", "by muller"] }]
response = [{ name = "strength", unit = "kPa", want = "high" }]
"#;

/// A law without noise: what each way does is found to the last digit.
#[test]
fn each_of_three_ways_is_told_beside_the_first() {
    let experiment = experiment(WAYS);
    let plan = planned(&experiment).unwrap().batches;
    for way in [0.0, 1.0, 2.0] {
        assert!(plan.iter().any(|one| one.settings == [way]), "way {way}");
    }
    let file = text(&experiment, &plan);
    let again: BatchesFile = job::file_fault::read("batches.toml", &file).unwrap();
    assert_eq!(again.meant(&experiment).unwrap(), plan);
    let made = results(&plan, |one| {
        [40.0, 46.0, 37.0][one.settings[0] as usize] + 2.0 * one.amounts[1]
    });
    let said = read(&experiment, &plan, &made, 1).unwrap();
    let fitted = said.responses[0].fitted.as_ref().unwrap();
    let effect = |name: &str| {
        let found = fitted.effects.iter().find(|one| one.name == name);
        found.unwrap().change
    };
    assert!((effect("mulled by drill") - 6.0).abs() < 1e-9);
    assert!((effect("mulled by muller") + 3.0).abs() < 1e-9);
    assert!((effect("clay") - 12.0).abs() < 1e-9);
    let best = fitted.best.as_ref().unwrap();
    assert_eq!(Space::of(&experiment).settings(&best.point), [1.0]);
}

#[test]
fn no_batch_is_made_in_two_ways() {
    let space = Space::of(&experiment(WAYS));
    for point in space.everywhere().unwrap() {
        let taken = point[1..].iter().filter(|level| **level > 0.0);
        assert!(taken.count() <= 1, "{point:?}");
    }
}

#[test]
fn ways_that_are_none_are_refused() {
    let with = |choices: &str| {
        let text = WAYS.replace(r#"["by foot", "by drill", "by muller"]"#, choices);
        meant(&text).unwrap_err()
    };
    for choices in [
        r#"["by foot"]"#,
        r#"["by foot", "by foot"]"#,
        r#"["a", "b", "c", "d", "e", "f", "g"]"#,
        r#"["by foot", " "]"#,
    ] {
        let fault = with(choices);
        assert!(matches!(fault, ExperimentError::SettingHow(_)), "{fault}");
    }
}

const DECADES: &str = r#"
name = "Decades"
seed = 3
batch = "1 kg"
basis = "dry"
batches = 6
repeats = 1
aim = "learn"
part = [
    { name = "sand", amount = 100 },
    { name = "syrup", amount = "0.2 to 20", steps = "factors" },
]
response = [{ name = "strength", unit = "kPa", want = "high" }]
"#;

/// A response that grows by the same step with each doubling is a plane in the logarithm of the
/// ratio (the additive log-ratio of Aitchison), and no parabola in the amount.
#[test]
fn a_range_over_decades_goes_by_even_factors() {
    let experiment = experiment(DECADES);
    let plan = planned(&experiment).unwrap().batches;
    let mut levels: Vec<f64> = plan.iter().map(|one| one.amounts[1]).collect();
    levels.sort_by(f64::total_cmp);
    levels.dedup();
    assert_eq!(levels, [0.2, 2.0, 20.0]);
    let made = |one: &bench::experiment::batches::Batch| 30.0 + 5.0 * one.amounts[1].log2();
    let noise = |text: &str| {
        let experiment = crate::experiment(text);
        let said = read(&experiment, &plan, &results(&plan, made), 0).unwrap();
        let fitted = said.responses[0].fitted.as_ref().unwrap();
        (fitted.fit.noise.unwrap(), fitted.effects[0].change)
    };
    let (left, change) = noise(DECADES);
    assert!(left < 1e-9, "{left}");
    // From 0.2 to 20 there are log2(100) doublings.
    assert!((change - 5.0 * 100_f64.log2()).abs() < 1e-9);
}

/// The published inverse of the log-ratio (mix-07, Aitchison's data 13): shares by the exponentials
/// of their coordinates beside one part that stays.
#[test]
fn the_centre_and_the_corners_are_the_published_shares() {
    let e = std::f64::consts::E;
    let range = format!("{} to {e}", 1.0 / e);
    let part =
        |name: &str| format!("{{ name = \"{name}\", amount = \"{range}\", steps = \"factors\" }},");
    let text = DECADES.replace(
        "    { name = \"sand\", amount = 100 },\n    { name = \"syrup\", amount = \"0.2 to 20\", steps = \"factors\" },",
        &format!("{}{}{}{}{{ name = \"e\", amount = 1 }},", part("a"), part("b"), part("c"), part("d")),
    );
    let space = Space::of(&experiment(&text));
    let shares = |coordinates: [f64; 4]| {
        let amounts = space.amounts(&coordinates);
        let sum: f64 = amounts.iter().sum();
        amounts.iter().map(|one| one / sum).collect::<Vec<f64>>()
    };
    let published = [0.118_532, 0.118_532, 0.322_203, 0.118_532, 0.322_203];
    for (share, published) in shares([-1.0, -1.0, 0.0, -1.0]).iter().zip(published) {
        assert!((share - published).abs() < 1e-6, "{share}, {published}");
    }
    assert!(
        shares([0.0; 4])
            .iter()
            .all(|share| (share - 0.2).abs() < 1e-12)
    );
}

#[test]
fn factors_that_cannot_be_are_refused() {
    let nought = meant(&DECADES.replace("0.2 to 20", "0 to 20")).unwrap_err();
    assert!(nought.to_string().contains("above nought"), "{nought}");
    let percent = DECADES
        .replace("amount = 100", "amount = \"80 to 99.8 %\"")
        .replace("0.2 to 20", "0.2 to 20 %");
    let percent = meant(&percent).unwrap_err();
    assert!(percent.to_string().contains("in parts"), "{percent}");
    let odd = meant(&DECADES.replace("factors", "leaps")).unwrap_err();
    assert!(odd.to_string().contains("even or factors"), "{odd}");
}

#[test]
fn the_one_thing_that_changes_is_drawn_with_its_band_and_batches() {
    let experiment = experiment(DECADES);
    let plan = planned(&experiment).unwrap().batches;
    let mut off = [0.7, -0.4, 0.1, -0.6, 0.3, 0.2].into_iter();
    let made = results(&plan, |one| {
        30.0 + 5.0 * one.amounts[1].log2() + off.next().unwrap()
    });
    let said = read(&experiment, &plan, &made, 0).unwrap();
    let found = pictures(&experiment, &plan, &said, Language::Uk);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].file, "strength-syrup.svg");
    let svg = &found[0].svg;
    // A cross of two strokes a batch, a frame, five ticks and the line; a band below it.
    assert_eq!(svg.matches("<polyline").count(), 2 * plan.len() + 1 + 5 + 1);
    assert_eq!(svg.matches("<polygon").count(), 1);
    for tick in ["0.2", "0.632", "2", "6.32", "20"] {
        assert!(svg.contains(&format!(">{tick}<")), "{tick}");
    }
}
