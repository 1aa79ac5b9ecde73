//! The lesson of a plan: sums that a pupil can do, and answers that tally with the pencil.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use std::path::Path;

use job::folder::open;
use job::lesson::{Lesson, Task, lesson};
use job::work_out::work_out;

fn of(example: &str) -> Lesson {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let opened = open(&folder.join(example)).unwrap();
    lesson(&work_out(&opened.job, &opened.shop, &opened.part)).unwrap()
}

fn task<'a>(lesson: &'a Lesson, rule: &str) -> (usize, &'a Task) {
    let at = lesson.tasks.iter().position(|task| task.rule.id() == rule);
    (at.unwrap() + 1, &lesson.tasks[at.unwrap()])
}

/// The number at the head of a text such as "212 g".
fn head(text: &str) -> f64 {
    text.split(' ').next().unwrap().parse().unwrap()
}

fn number(task: &Task, label: &str) -> f64 {
    let of = task
        .numbers
        .iter()
        .find(|number| number.label.id() == label);
    head(of.unwrap().given.as_ref().unwrap())
}

/// A block of 80 × 60 × 18 mm less its engraving, in aluminium of 2.6 to 2.8 g/cm³: the pencil does
/// volume × density from the printed numbers and comes to the answer within its last figure.
#[test]
fn a_printed_answer_is_the_product_of_the_printed_numbers() {
    let lesson = of("paperweights");
    let (_, mass) = task(&lesson, "pencil-casting-mass");
    let volume_cm3 = number(mass, "pencil-number-volume");
    let density = number(mass, "pencil-number-density");
    let grams_per_cm3 = if density > 100.0 {
        density / 1000.0
    } else {
        density
    };
    let grams = match mass.unit.as_str() {
        "kg" => head(&mass.answer) * 1000.0,
        _ => head(&mass.answer),
    };
    assert!(
        (grams - volume_cm3 * grams_per_cm3).abs() < 0.006 * grams,
        "{mass:?}"
    );
}

#[test]
fn an_answer_goes_on_into_the_tasks_below_and_is_not_printed_there() {
    let lesson = of("paperweights");
    let (mass_at, _) = task(&lesson, "pencil-casting-mass");
    let (poured_at, poured) = task(&lesson, "pencil-poured-mass");
    let (_, charge) = task(&lesson, "pencil-charge");
    let own = |task: &Task| -> Vec<usize> {
        let numbers = task.numbers.iter();
        numbers.filter_map(|number| number.answer_of).collect()
    };
    assert_eq!((own(poured), own(charge)), (vec![mass_at], vec![poured_at]));
    for task in &lesson.tasks {
        for number in &task.numbers {
            assert_ne!(
                number.given.is_some(),
                number.answer_of.is_some(),
                "{task:?}"
            );
        }
    }
}

/// Cores push too, which is more than the one law: neither that is asked, nor what rests on it.
#[test]
fn a_figure_of_more_than_one_law_is_not_asked() {
    let lesson = of("pump-body");
    for rule in ["pencil-cope-lift", "pencil-weight-on-the-cope"] {
        assert!(lesson.tasks.iter().all(|task| task.rule.id() != rule));
    }
    assert!(lesson.tasks.len() > 5);
}

/// Density × (shadow × head − room): 2.39 g/cm³ over 239 cm² at 6 cm is 3.43 kg.
#[test]
fn a_lift_is_told_by_the_mass_it_would_raise() {
    let lesson = of("paperweights");
    let (lift_at, lift) = task(&lesson, "pencil-cope-lift");
    let [shadow, head_mm, room] =
        ["shadow", "head", "above-joint"].map(|key| number(lift, &format!("pencil-number-{key}")));
    let density = number(lift, "pencil-number-liquid-density");
    let kilograms = density * (shadow * head_mm / 10.0 - room) / 1000.0;
    assert_eq!(lift.unit, "kg");
    assert!(
        (head(&lift.answer) - kilograms).abs() < 0.006 * kilograms,
        "{lift:?}"
    );
    let (_, weight) = task(&lesson, "pencil-weight-on-the-cope");
    assert!(
        weight
            .numbers
            .iter()
            .any(|number| number.answer_of == Some(lift_at))
    );
}
