//! Ten days in the shop, from a pair of vise jaws to thirty pots a week: what a careful founder
//! works out by hand with the rules of handbooks, asked through plans and laws.
//!
//! A figure passes where its likely value lies in the founder's range, or where its band reaches
//! into it, the scenario says why the two differ, and the product says the same. Where even the
//! band lies outside, the scenario has to own up to that by `beyond`, and the table shows it. Every
//! warning has to be told; some things may not be said.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]
#![allow(
    clippy::print_stdout,
    reason = "the table of deviations is there to be read"
)]

use product::Told;
use scenario::{Quantity, Scenario, read_all};
use verdict::{Line, judge, judged};

mod product;
mod range;
mod scenario;
mod table;
mod verdict;

#[test]
fn every_day_comes_out_as_a_founder_expects() {
    let lines: Vec<Line> = scenarios().iter().flat_map(judge).collect();
    table::print(&lines);
    let faults: Vec<String> = lines
        .iter()
        .filter_map(|line| {
            let fault = line.verdict.as_ref().err()?;
            Some(format!(
                "{}, {}: {} for {}: {fault}",
                line.scenario, line.what, line.got, line.expected
            ))
        })
        .collect();
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

#[test]
fn there_are_ten_days() {
    assert_eq!(scenarios().len(), 10);
}

/// A range moved beyond the band has to fail, and so has a warning of words nobody wrote.
#[test]
fn what_is_wrong_fails() {
    for scenario in scenarios()
        .into_iter()
        .filter(|scenario| scenario.job.is_none())
    {
        let mut moved = scenario;
        for quantity in &mut moved.quantity {
            quantity.expected = quantity.expected.as_deref().map(far_off);
            quantity.words = quantity.words.as_ref().map(|_| "no such words".to_owned());
        }
        for warning in &mut moved.warn {
            warning.says.push("no such words".to_owned());
        }
        for line in judge(&moved) {
            let kept_back = line.verdict == Ok("kept back");
            assert!(line.verdict.is_err() || kept_back, "{} passes", line.what);
        }
    }
}

#[test]
fn an_explanation_has_to_be_the_product_s_own() {
    let passes = |more: &str, ends| judged(&quantity(more), &told(ends)).is_ok();
    let overlapping = [1.0, 2.0, 3.0];
    assert!(!passes("", overlapping));
    assert!(!passes("explained = \"x\"", overlapping));
    assert!(!passes(
        "explained = \"x\"\nsays = [\"another\"]",
        overlapping
    ));
    assert!(passes(
        "explained = \"x\"\nsays = [\"a reason\"]",
        overlapping
    ));
    let outside = [1.0, 2.0, 2.2];
    assert!(!passes("explained = \"x\"\nsays = [\"a reason\"]", outside));
    assert!(!passes("beyond = true", outside));
    assert!(passes("", [1.0, 3.0, 9.0]));
}

/// A quantity of 2.5 to 4 kg.
fn quantity(more: &str) -> Quantity {
    let text = format!("what = \"x\"\nmark = \"c\"\nexpected = \"2.5 to 4 kg\"\n{more}");
    toml::from_str(&text).expect("a quantity")
}

fn told(ends: [f64; 3]) -> Told {
    Told {
        figure: Some((ends, "kg".to_owned())),
        words: String::new(),
        said: "a reason".to_owned(),
    }
}

fn scenarios() -> Vec<Scenario> {
    read_all().expect("scenarios that can be read")
}

fn far_off(expected: &str) -> String {
    let range = range::Range::read(expected).expect("a range");
    format!(
        "{} to {} {}",
        range.high * 50.0,
        range.high * 60.0,
        range.unit
    )
}
