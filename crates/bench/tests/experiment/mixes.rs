//! Named mixes: planned in whole blocks, read without naming chance a winner.

use std::collections::BTreeMap;

use bench::experiment::Experiment;
use bench::experiment::batches::{Batch, BatchesFile, text};
use bench::experiment::mixes::answer_file::ComparedFile;
use bench::experiment::mixes::picture::pictures;
use bench::experiment::mixes::reading::{Compared, Next, compared};
use bench::experiment::mixes::told::{plan_told, read_told};
use bench::experiment::mixes::trouble::MixError;
use bench::experiment::mixes::{planned, with_more};
use bench::experiment::results::Reading;
use bench::experiment::trouble::ExperimentError;
use job::words::Language;

use crate::simulated::{Noise, results};
use crate::{experiment, meant};

/// So many mixes of sand, clay and water, each made so often over so many days.
fn mixes(count: usize, times: usize, days: usize, seed: u64) -> String {
    let mut text = format!(
        r#"
name = "Heaps"
seed = {seed}
batch = "1 kg"
basis = "dry"
times = {times}
days = {days}
part = [
    {{ name = "sand", amount = 100, moisture = "1 % of wet mass" }},
    {{ name = "clay" }},
    {{ name = "water", amount = 8, is_water = true }},
]
response = [{{ name = "strength", unit = "kPa", want = "high" }}]
"#
    );
    for mix in 0..count {
        let clay = 12 + mix;
        text += &format!("[[mix]]\nname = \"heap {mix}\"\namounts = {{ clay = {clay} }}\n");
    }
    text
}

fn read(experiment: &Experiment, batches: &[Batch], readings: &[Reading]) -> Compared {
    let mixes = experiment.mixes.as_ref().unwrap();
    compared(experiment, mixes, batches, readings)
}

/// Simulated sets: the lift of each mix, days that differ by five noises, noise of deviation one.
fn winners(count: usize, times: usize, days: usize, lift: f64) -> Vec<Option<usize>> {
    let winner = |seed: u64| {
        let experiment = experiment(&mixes(count, times, days, seed));
        let batches = planned(&experiment);
        let mut noise = Noise(seed * 7919 + 1);
        let readings = results(&batches, |batch| {
            let lift = if batch.mix == Some(count - 1) {
                lift
            } else {
                0.0
            };
            50.0 + lift + 5.0 * batch.day as f64 + noise.normal()
        });
        read(&experiment, &batches, &readings).responses[0].winner
    };
    (0..1000).map(winner).collect()
}

/// The promise: of 1,000 sets of pure noise at most 70 have a winner.
#[test]
fn pure_noise_has_hardly_a_winner() {
    for (count, times, days) in [
        (2, 3, 1),
        (2, 3, 3),
        (3, 3, 1),
        (5, 3, 1),
        (5, 3, 3),
        (8, 2, 2),
    ] {
        let found = winners(count, times, days, 0.0).iter().flatten().count();
        println!("{count} mixes, {times} times, {days} days: {found}");
        assert!(
            found <= 70,
            "{count} mixes, {times} times, {days} days: {found}"
        );
    }
}

/// The promise: one of five mixes, better by five noises, made three times: named in 80 % at least.
#[test]
fn a_true_winner_is_named() {
    for days in [1, 3] {
        let found = winners(5, 3, days, 5.0);
        let rightly = found.iter().filter(|one| **one == Some(4)).count();
        println!("{days} days: {rightly}");
        assert!(rightly >= 800, "{days} days: {rightly}");
    }
}

#[test]
fn every_day_holds_every_mix_in_an_order_by_lot() {
    let first = experiment(&mixes(5, 4, 2, 1));
    let batches = planned(&first);
    assert_eq!((first.batches, first.repeats, batches.len()), (20, 15, 20));
    let mut made = BTreeMap::new();
    for (at, batch) in batches.iter().enumerate() {
        assert_eq!(batch.number, at + 1);
        let mix = batch.mix.unwrap();
        assert_eq!(batch.amounts, [100.0, 12.0 + mix as f64, 8.0]);
        *made.entry((batch.day, mix)).or_insert(0) += 1;
    }
    assert!(batches.windows(2).all(|two| two[0].day <= two[1].day));
    assert_eq!(made.len(), 10);
    assert!(made.values().all(|times| *times == 2));
    let order = |seed: u64| {
        let batches = planned(&experiment(&mixes(5, 4, 2, seed)));
        batches.iter().map(|one| one.mix).collect::<Vec<_>>()
    };
    assert_eq!(order(1), order(1));
    assert_ne!(order(1), order(2));
    assert_ne!(order(1)[..10], order(1)[10..]);
}

#[test]
fn batches_come_back_from_their_file_as_they_were() {
    let experiment = experiment(&mixes(3, 2, 2, 4));
    let batches = planned(&experiment);
    let written = text(&experiment, &batches);
    let typed =
        |text: &str| -> BatchesFile { job::file_fault::read("batches.toml", text).unwrap() };
    assert_eq!(typed(&written).meant(&experiment).unwrap(), batches);
    let gone = written.replace("heap 2", "heap 9");
    let error = typed(&gone).meant(&experiment).unwrap_err().to_string();
    assert!(
        error.contains("heap 9") && error.contains("put that"),
        "{error}"
    );
    let bare = written.replace("mix = \"heap 2\"\n", "");
    assert!(typed(&bare).meant(&experiment).is_err());
}

/// By hand: means 40 and 52, variances of both 4, so noise 2 with 4 degrees, and the lead of 12 is
/// sure to ± 2.776·2·√(2/3) = 4.53.
#[test]
fn two_heaps_are_read_as_by_hand() {
    let experiment = experiment(&mixes(2, 3, 1, 4));
    let batches = planned(&experiment);
    let mut given = [vec![38.0, 40.0, 42.0], vec![50.0, 52.0, 54.0]];
    let readings = results(&batches, |one| given[one.mix.unwrap()].pop().unwrap());
    let found = read(&experiment, &batches, &readings);
    assert_eq!(found.responses[0].winner, Some(1));
    assert_eq!(found.next, Next::Nothing);
    let mixes = experiment.mixes.as_ref().unwrap();
    let told = read_told(&experiment, mixes, &batches, &found);
    let lines: Vec<String> = told[1]
        .lines
        .iter()
        .map(|one| Language::Uk.say(one))
        .collect();
    assert_eq!(
        lines[0],
        "noise of one batch: 2 kPa, with 4 batches to spare"
    );
    assert!(
        lines.contains(&"heap 0: 40 kPa ± 3.21 kPa, 3 batches".to_owned()),
        "{lines:?}"
    );
    let lead = "heap 1 against heap 0: 12 kPa ± 4.53 kPa".to_owned();
    assert!(lines.contains(&lead), "{lines:?}");
    assert_eq!(lines.last().unwrap(), "winner: heap 1, 52 kPa ± 3.21 kPa");
    let json: serde_json::Value =
        serde_json::from_str(&ComparedFile::of(&experiment, mixes, &batches, &found).text())
            .unwrap();
    assert_eq!(json["responses"][0]["winner"], "heap 1");
}

#[test]
fn what_is_not_told_apart_is_made_again_on_a_day_of_its_own() {
    let experiment = experiment(&mixes(3, 2, 1, 4));
    let batches = planned(&experiment);
    let mut given = [vec![20.0, 22.0], vec![50.0, 53.0], vec![51.0, 54.0]];
    let readings = results(&batches, |one| given[one.mix.unwrap()].pop().unwrap());
    let found = read(&experiment, &batches, &readings);
    assert_eq!(found.responses[0].winner, None);
    let Next::Again { mixes, in_all } = &found.next else {
        panic!("{:?}", found.next);
    };
    assert_eq!(*mixes, [1, 2]);
    // A lead of half a deviation takes some 2·(1.96/0.52)² = 28 batches each by the normal curve.
    assert!((26..=34).contains(&in_all.unwrap()), "{in_all:?}");
    let more = with_more(&experiment, &batches, mixes, 4);
    assert_eq!(more.len(), 10);
    assert!(
        more[6..]
            .iter()
            .all(|one| one.day == 2 && one.mix != Some(0))
    );
    let told = read_told(
        &experiment,
        experiment.mixes.as_ref().unwrap(),
        &batches,
        &found,
    );
    let said = Language::Uk.say(told[1].lines.last().unwrap());
    assert!(
        said.starts_with("none named, because chance alone parts heap 2"),
        "{said}"
    );
}

#[test]
fn what_is_missing_is_said() {
    let experiment = experiment(&mixes(3, 2, 1, 4));
    let mixes = experiment.mixes.as_ref().unwrap();
    let batches = planned(&experiment);
    let said = |readings: &[Reading]| {
        let found = read(&experiment, &batches, readings);
        assert_eq!(found.responses[0].winner, None);
        let told = read_told(&experiment, mixes, &batches, &found);
        let lines = told[1].lines.iter().map(|one| Language::Uk.say(one));
        lines.collect::<Vec<_>>().join("\n")
    };
    let all = results(&batches, |one| 10.0 * one.mix.unwrap() as f64);
    let of = |mix: usize| batches.iter().filter(move |one| one.mix == Some(mix));
    let last: Vec<usize> = of(2).map(|one| one.number).collect();
    let part: Vec<Reading> = all
        .iter()
        .filter(|one| !last.contains(&one.batch))
        .cloned()
        .collect();
    assert!(said(&part).contains("because heap 2 has no result yet"));
    let once: Vec<usize> = (0..3).map(|mix| of(mix).next().unwrap().number).collect();
    let once: Vec<Reading> = all
        .iter()
        .filter(|one| once.contains(&one.batch))
        .cloned()
        .collect();
    assert!(said(&once).contains("too few repeats"));
    assert!(said(&all).contains("every repeat gave the same reading"));
    assert!(said(&[]).contains("enter them with"));
}

/// Student's two-sided 5 % value at 10 degrees is 2.228, times √(2/3) is 1.82.
#[test]
fn the_plan_says_what_it_can_show() {
    let experiment = experiment(&mixes(5, 3, 1, 4));
    let told = plan_told(
        &experiment,
        experiment.mixes.as_ref().unwrap(),
        &planned(&experiment),
    );
    let lines: Vec<String> = told.lines.iter().map(|one| Language::Uk.say(one)).collect();
    assert!(
        lines
            .iter()
            .any(|one| one.contains("more than 1.8 times the noise")),
        "{lines:?}"
    );
}

#[test]
fn mixes_in_per_cent_make_a_whole_each() {
    let text = r#"
name = "Heaps"
seed = 1
batch = "1 kg"
basis = "as it lies"
part = [{ name = "sand" }, { name = "old heap" }, { name = "water", is_water = true }]
response = [{ name = "strength", want = "high" }]
[[mix]]
name = "new"
amounts = { sand = "94 %", water = "6 %" }
[[mix]]
name = "half"
amounts = { sand = "47 %", "old heap" = "48 %", water = "5 %" }
"#;
    let found = experiment(text);
    let mixes = found.mixes.unwrap();
    assert_eq!(mixes.each[0].amounts, [94.0, 0.0, 6.0]);
    assert_eq!((mixes.times, found.batches), (3, 6));
    let error = meant(&text.replace("47 %", "40 %"))
        .unwrap_err()
        .to_string();
    assert!(
        error.contains("mix \"half\"") && error.contains("93 %"),
        "{error}"
    );
}

#[test]
fn a_mix_typed_wrong_is_refused_with_what_to_write() {
    let good = mixes(3, 3, 1, 1);
    let refused = |from: &str, to: &str| {
        assert!(good.contains(from), "{from}");
        meant(&good.replacen(from, to, 1)).unwrap_err().to_string()
    };
    for (from, to, said) in [
        ("clay = 13", "cley = 13", "cley is no part"),
        ("clay = 13", "clay = \"13 to 15\"", "one mix"),
        ("clay = 13", "clay = \"much\"", "mix \"heap 1\": clay"),
        ("heap 1", "heap 0", "there twice"),
        ("times = 3", "times = 1", "2 to 20"),
        ("times = 3", "times = 21", "2 to 20"),
        ("days = 1", "days = 4", "days = 1 to 3"),
        ("days = 1", "days = 0", "days = 1 to 3"),
        ("times = 3", "batches = 9", "batches belongs to ranges"),
        ("times = 3", "aim = \"best\"", "aim belongs to ranges"),
        ("clay = 13", "sand = \"90 %\"", "in per cent"),
    ] {
        let error = refused(from, to);
        assert!(error.contains(said), "{to}: {error}");
    }
    let count = |count: usize| meant(&mixes(count, 3, 1, 1)).unwrap_err();
    assert_eq!(count(1), MixError::Count(1).into());
    assert_eq!(count(9), MixError::Count(9).into());
    assert!(matches!(
        meant(&mixes(0, 3, 1, 1)),
        Err(ExperimentError::Mixes(MixError::TimesWithoutMixes))
    ));
}

/// Three mixes of which each says how it is mulled and for how long.
const DONE: &str = r#"
name = "Done"
seed = 4
batch = "1 kg"
basis = "dry"
times = 3
part = [
    { name = "sand", amount = 100 },
    { name = "clay", amount = 8 },
    { name = "water", amount = 4, is_water = true },
]
setting = [{ name = "mulled" }, { name = "minutes", unit = "min" }]
response = [
    { name = "strength", unit = "kPa", want = "high", worthless = 20, good = 60 },
    { name = "openness", want = "high", worthless = 40, good = 120 },
]
mix = [
    { name = "a", settings = { mulled = "by foot", minutes = 20 } },
    { name = "b", settings = { mulled = "by drill", minutes = 10 } },
    { name = "c", settings = { mulled = "by foot", minutes = 40 } },
]
"#;

#[test]
fn mixes_may_differ_by_how_they_are_done() {
    let experiment = experiment(DONE);
    let batches = planned(&experiment);
    for batch in &batches {
        let mix = experiment.mix_of(batch).unwrap();
        let shown = experiment.settings.iter().zip(&batch.settings);
        let shown: Vec<String> = shown.map(|(one, value)| one.shown(*value)).collect();
        let wanted = match mix.name.as_str() {
            "a" => ["by foot", "20 min"],
            "b" => ["by drill", "10 min"],
            _ => ["by foot", "40 min"],
        };
        assert_eq!(shown, wanted);
    }
    let typed: BatchesFile =
        job::file_fault::read("batches.toml", &text(&experiment, &batches)).unwrap();
    assert_eq!(typed.meant(&experiment).unwrap(), batches);
}

/// By hand: means of 40 and 80 meet half of each wish, and the geometric mean of both is half.
#[test]
fn all_wishes_of_mixes_are_joined_and_drawn_without_a_winner_of_their_own() {
    let experiment = experiment(DONE);
    let batches = planned(&experiment);
    let off = |batch: &Batch| [-0.5, 0.0, 0.5][batch.number % 3];
    let strength = |batch: &Batch| [40.0, 60.0, 20.0][batch.mix.unwrap()] + off(batch);
    let open = |batch: &Batch| [80.0, 60.0, 120.0][batch.mix.unwrap()] + off(batch);
    let mut readings = results(&batches, strength);
    readings.extend(
        results(&batches, open)
            .into_iter()
            .map(|one| Reading { response: 1, ..one }),
    );
    let found = read(&experiment, &batches, &readings);
    let joined = found.joined.as_ref().unwrap();
    let means = |at: usize| &found.responses[at].judged.as_ref().unwrap().means;
    let part = |value: f64, low: f64, high: f64| ((value - low) / (high - low)).clamp(0.0, 1.0);
    for (mix, (together, each)) in joined.mixes.iter().enumerate() {
        let wanted = [
            part(means(0)[mix], 20.0, 60.0),
            part(means(1)[mix], 40.0, 120.0),
        ];
        assert!((each[0] - wanted[0]).abs() < 1e-9 && (each[1] - wanted[1]).abs() < 1e-9);
        assert!((together - (wanted[0] * wanted[1]).sqrt()).abs() < 1e-9);
    }
    let mixes = experiment.mixes.as_ref().unwrap();
    let told = read_told(&experiment, mixes, &batches, &found);
    let said: Vec<String> = told
        .iter()
        .flat_map(|one| one.lines.iter().chain(&one.cautions))
        .map(|one| Language::Uk.say(one))
        .collect();
    let of_wishes: Vec<&String> = said
        .iter()
        .filter(|one| one.contains("wishes met"))
        .collect();
    assert!(of_wishes[0].starts_with("a: "), "{of_wishes:?}");
    assert!(said.iter().any(|one| one.contains("know no noise")));
    let drawn = pictures(&experiment, mixes, &batches, &found, Language::Uk);
    assert_eq!(drawn.len(), 2);
    assert_eq!(drawn[0].file, "strength-mixes.svg");
    // A ring a mix, of which the winner's alone is filled; two strokes a batch.
    assert_eq!(drawn[0].svg.matches("<circle").count(), 3);
    assert_eq!(drawn[0].svg.matches("r=\"5.5\" fill=\"#222\"").count(), 1);
    let file = ComparedFile::of(&experiment, mixes, &batches, &found).text();
    assert!(file.contains("all_wishes") && file.contains("by drill"));
}

#[test]
fn settings_of_mixes_typed_wrong_are_refused() {
    let refused = |from: &str, to: &str| meant(&DONE.replace(from, to)).unwrap_err().to_string();
    let lacking = refused(
        "{ mulled = \"by drill\", minutes = 10 }",
        "{ minutes = 10 }",
    );
    assert!(
        lacking.contains("mulled") && lacking.contains("\"b\""),
        "{lacking}"
    );
    let strange = refused("minutes = 10 }", "minutes = 10, wheels = 2 }");
    assert!(strange.contains("wheels is no setting"), "{strange}");
    let range = refused(
        "{ name = \"mulled\" }",
        "{ name = \"mulled\", range = \"1 to 2\" }",
    );
    assert!(range.contains("leave range and choices out"), "{range}");
}
