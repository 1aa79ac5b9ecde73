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
