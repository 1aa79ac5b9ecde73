//! Lessons for a class: twenty-four pupils with four castings in a flask, six flasks.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use std::path::Path;

use bench::class::{Class, NoClass, class};
use bench::told::{Told, Value};
use job::folder::open;
use job::plan::Plan;
use job::remark::Level;
use job::shop::Shop;
use job::words::Language;
use job::work_out::work_out;

fn job() -> (Plan, Shop) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/paperweights");
    let opened = open(&folder).expect("an example");
    let plan = work_out(&opened.job, &opened.shop, &opened.part);
    (plan, opened.shop)
}

fn of(pupils: usize) -> Class {
    Class {
        pupils,
        sessions: 5,
        minutes: 80.0,
        adults: 2,
        flasks: Some(6),
    }
}

fn number(told: &Told, id: &str) -> f64 {
    let figure = told.figures.iter().find(|figure| figure.id == id);
    let Value::Number(band) = &figure.expect("told").value else {
        return f64::NAN;
    };
    band.likely()
}

fn says(told: &Told, id: &str) -> bool {
    told.lines.iter().any(|line| line.words.id() == id)
}

#[test]
fn twenty_four_paperweights_are_rammed_in_one_lesson_and_poured_in_the_next() {
    let (plan, shop) = job();
    let told = class(&plan, &shop, &of(24)).expect("planned");
    assert_eq!(number(&told, "class-moulds"), 6.0);
    assert_eq!(number(&told, "class-groups"), 6.0);
    let steps: Vec<String> = told
        .steps
        .iter()
        .map(|step| Language::Uk.say(step))
        .collect();
    let at = |words: &str| {
        let found = steps.iter().find(|step| step.contains(words));
        found
            .unwrap_or_else(|| panic!("{words}: {steps:?}"))
            .clone()
    };
    assert!(at("rams its mould").starts_with("lesson 1, "), "{steps:?}");
    assert!(at("grown-ups pour").starts_with("lesson 2, "), "{steps:?}");
    // No step goes on after the lesson.
    for step in &steps {
        let ends = step
            .split(" to ")
            .nth(1)
            .and_then(|rest| rest.split(' ').next());
        let ends: f64 = ends.expect("an end").parse().expect("minutes");
        assert!(ends <= 80.0, "{step}");
    }
    for mind in [
        "class-distance",
        "class-ingot",
        "class-overnight",
        "class-bearing",
    ] {
        assert!(says(&told, mind), "{mind}");
    }
    assert!(!says(&told, "class-group-large"), "four to a group");
}

/// Two double lessons, the six flasks of the example's own shop. By hand: a mould takes some 1.9 kg
/// and 8 % for the ingot mould, 2.04 kg; the larger crucible holds 4.3 kg, two moulds; three heats.
/// At the fire 10 + 3 · 6 + 2 · 20 = 68 of 80 minutes, so that nothing is opened within two
/// lessons.
#[test]
fn two_double_lessons_suffice_where_the_grown_ups_open_the_moulds() {
    let (plan, shop) = job();
    let two = Class {
        sessions: 2,
        flasks: None,
        ..of(24)
    };
    let told = class(&plan, &shop, &two).expect("planned");
    assert_eq!(number(&told, "class-flasks"), 6.0);
    assert_eq!(number(&told, "class-heats"), 3.0);
    assert_eq!(number(&told, "class-sessions"), 2.0);
    assert!(!says(&told, "class-too-few"));
    assert!(says(&told, "class-heats-more"), "a mould may take more");
    let steps = told.steps.iter().map(|step| Language::Uk.say(step));
    let steps: Vec<String> = steps.collect();
    let last = steps.last().expect("a step");
    assert!(
        last.starts_with("after lesson 2, and not before 60 min"),
        "{last}"
    );
    let at_fire = steps.iter().filter(|step| step.contains("lesson 2, "));
    assert!(
        at_fire.clone().any(|step| step.contains("62 to 68 min")),
        "{steps:?}"
    );
    // With a third lesson the class opens its own moulds.
    let three = Class { sessions: 3, ..two };
    let told = class(&plan, &shop, &three).expect("planned");
    assert_eq!(number(&told, "class-sessions"), 3.0);
    let steps = told.steps.iter().map(|step| Language::Uk.say(step));
    assert!(
        steps
            .into_iter()
            .any(|step| step.starts_with("lesson 3, ") && step.contains("gloves"))
    );
}

#[test]
fn what_does_not_suffice_is_told() {
    let (plan, shop) = job();
    let one = Class {
        sessions: 1,
        ..of(24)
    };
    let told = class(&plan, &shop, &one).expect("planned");
    let stopped = |told: &Told| told.lines.iter().any(|line| line.level == Level::Stop);
    assert!(says(&told, "class-too-few") && stopped(&told));
    let two = Class {
        flasks: Some(2),
        ..of(24)
    };
    let told = class(&plan, &shop, &two).expect("planned");
    assert!(says(&told, "class-group-large"), "twelve to a group");
    assert!(
        number(&told, "class-sessions") > 3.0,
        "three rounds of ramming"
    );
    let crowd = class(&plan, &shop, &of(200)).expect("planned");
    assert!(says(&crowd, "class-sand-short"), "fifty moulds of sand");
}

#[test]
fn a_class_that_cannot_be_is_refused() {
    let (plan, shop) = job();
    let refused = |wrong: Class| class(&plan, &shop, &wrong).expect_err("refused");
    let alone = Class {
        adults: 1,
        ..of(24)
    };
    assert_eq!(refused(alone), NoClass::Alone);
    assert!(matches!(refused(of(0)), NoClass::Numbers(_)));
    let short = Class {
        minutes: 30.0,
        ..of(24)
    };
    assert!(matches!(refused(short), NoClass::TooShort { .. }));
    let odd = Class {
        minutes: f64::NAN,
        ..of(24)
    };
    assert!(matches!(refused(odd), NoClass::Numbers(_)));
}
