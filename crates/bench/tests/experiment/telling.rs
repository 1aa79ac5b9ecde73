//! Plans and results in words of every language, as pictures and as a chart.

use bench::experiment::Experiment;
use bench::experiment::batches::Batch;
use bench::experiment::chart::chart;
use bench::experiment::design::planned;
use bench::experiment::picture::pictures;
use bench::experiment::reading::{Read, Unnamed, Unread, read};
use bench::experiment::results::Reading;
use bench::experiment::results_told::read_told;
use bench::experiment::told::{Told, plan_told};
use job::words::Language;
use job::words::said::Said;

use crate::simulated::{Noise, at, results};
use crate::{FROM_SCRATCH, experiment, one_session};

/// Shares of three parts that change together, beside one that does not, with a name that SVG has
/// to escape.
const IN_PERCENT: &str = r#"
name = "Three in per cent"
seed = 3
batch = "2 kg"
basis = "as it lies"
batches = 10
repeats = 2
aim = "best"
part = [
    { name = "sand <0.5 & fine", amount = "70 to 86 %" },
    { name = "clay", amount = "8 to 20 %" },
    { name = "water", amount = "4 to 12 %", is_water = true },
    { name = "coal dust", amount = "1 %" },
]
response = [{ name = "strength", unit = "kPa", want = "high" }]
"#;

fn measured(text: &str, seed: u64) -> (Experiment, Vec<Batch>, Vec<Reading>) {
    let experiment = experiment(text);
    let plan = planned(&experiment).unwrap().batches;
    let mut noise = Noise(seed);
    let made = results(&plan, |one| {
        let at = at(&experiment, one);
        40.0 - 30.0 * (at[0] - 0.5).powi(2) - 40.0 * (at[1] - 0.4).powi(2) + noise.normal()
    });
    (experiment, plan, made)
}

fn said(told: &Told) -> impl Iterator<Item = &Said> {
    [&told.head]
        .into_iter()
        .chain(&told.lines)
        .chain(&told.cautions)
}

#[track_caller]
fn is_told_everywhere(told: &[Told]) {
    for one in told.iter().flat_map(said) {
        for language in Language::ALL {
            let shown = language.say(one);
            assert!(
                shown != one.id() && !shown.contains('{'),
                "{language:?}: {shown}"
            );
            assert!(!shown.contains("NaN") && !shown.contains("inf"), "{shown}");
        }
    }
}

/// A reading with every reason why nothing is named or read.
fn with_every_reason(mut read: Read) -> Vec<Read> {
    let mut all = Vec::new();
    for why in [
        Unnamed::Chance(0.31),
        Unnamed::NoneToSpare,
        Unnamed::WrongShape(0.01),
        Unnamed::StepTooCoarse,
        Unnamed::RangeWanted,
        Unnamed::NothingKnown,
    ] {
        if let Ok(fitted) = &mut read.responses[0].fitted {
            fitted.unnamed = Some(why);
        }
        all.push(read.clone());
    }
    for why in [
        Unread::NoResults,
        Unread::AllAlike,
        Unread::NeverVaried {
            name: "clay".to_owned(),
            value: "15".to_owned(),
        },
        Unread::Fit(trials::fit::FitError::FewerRunsThanTerms { runs: 2, terms: 3 }),
        Unread::Fit(trials::fit::FitError::FewerDifferentThanTerms {
            runs: 4,
            different: 2,
            terms: 3,
        }),
    ] {
        read.responses[0].fitted = Err(why);
        all.push(read.clone());
    }
    all
}

#[test]
fn every_language_tells_plans_and_results() {
    for text in [FROM_SCRATCH, &one_session(9, "best"), IN_PERCENT] {
        let (experiment, plan, made) = measured(text, 4);
        is_told_everywhere(&[plan_told(&experiment, &planned(&experiment).unwrap())]);
        for results in [&made[..], &made[..5], &made[..1], &[]] {
            let found = read(&experiment, &plan, results, 2).unwrap();
            is_told_everywhere(&read_told(&experiment, &plan, &found));
            for one in with_every_reason(found) {
                is_told_everywhere(&read_told(&experiment, &plan, &one));
            }
        }
    }
}

#[test]
fn pictures_show_lines_with_numbers_and_what_is_not_known() {
    let (experiment, plan, made) = measured(&one_session(12, "best"), 4);
    let found = read(&experiment, &plan, &made, 1).unwrap();
    let drawn = pictures(&experiment, &plan, &found, Language::Uk);
    assert_eq!(drawn.len(), 1);
    assert_eq!(drawn[0].file, "strength-dug-clay-water.svg");
    let svg = &drawn[0].svg;
    let hatched = svg
        .split("<path d=\"")
        .find(|path| path.contains("url(#unknown)"));
    assert!(
        hatched.unwrap().starts_with('M'),
        "the ends were not tried, so they are hatched"
    );
    let numbers = (20..=40).filter(|height| svg.contains(&format!(">{height}</text>")));
    assert!(numbers.count() >= 3, "lines have their numbers");
    assert_eq!(
        svg.matches("l8 8m0 -8l-8 8").count(),
        2 * 12,
        "each batch has its cross"
    );
    let chart = chart(&experiment, &experiment.responses[0], &found.responses[0]).unwrap();
    let all: String = chart.rows.concat();
    assert!(all.contains('9') && all.contains('0') && all.contains('.'));
}

#[test]
fn a_triangle_names_its_corners_and_escapes_what_was_typed() {
    let (experiment, plan, made) = measured(IN_PERCENT, 4);
    let found = read(&experiment, &plan, &made, 1).unwrap();
    let drawn = pictures(&experiment, &plan, &found, Language::Fr);
    let svg = &drawn[0].svg;
    assert!(
        svg.contains("sand &lt;0.5 &amp; fine 87 %"),
        "99 less the others at their least"
    );
    assert!(svg.contains("clay 25 %") && svg.contains("water 21 %"));
    assert!(svg.contains("hachurée") && !svg.contains("<0.5"));
}
