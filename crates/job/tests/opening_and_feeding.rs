//! When to open, what feeds, and what an own timed slab changes, in whole plans.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::file_fault::read;
use job::plan::Plan;
use job::shop::ShopFile;
use worked::blocks::Heights;
use worked::{because, block, drawn, values};

/// A slab of 120 by 80 by 24 mm.
fn plan(alloy: &str, heap: &str) -> Plan {
    let job = format!("name = \"Slab\"\n[part]\nmesh = \"slab.obj\"\n[metal]\nalloy = \"{alloy}\"");
    worked::plan(&job, heap, &block([120.0, 80.0, 24.0]))
}

const HEAP: &str = "[heap]\nmass = \"90 kg\"\nbond = \"bentonite\"\n";
const TRIAL: &str = "[heap.trial]\nmetal = \"A356\"\nslab = [\"150 mm\", \"100 mm\", \"20 mm\"]\n\
                     froze_in = \"4 min\"\nread_within = \"12 s\"\nsuperheat = \"90 K\"\n";

#[test]
fn every_metal_gets_three_marks_in_order_shown_on_the_late_side() {
    for alloy in ["A356", "gunmetal", "grey iron", "Zamak 3", "silicon bronze"] {
        let plan = plan(alloy, HEAP);
        let marks = ["leave alone until", "may be opened", "may be handled"];
        let [leave, open, handle] = marks.map(|name| values(&plan, name));
        assert!(
            0.0 < leave[1] && leave[1] <= open[1] && open[1] <= handle[1],
            "{alloy}"
        );
        for mark in [leave, open, handle] {
            assert!(
                mark[0] <= mark[1] && mark[1] == mark[2],
                "{alloy}: {mark:?}"
            );
        }
        assert!(
            plan.remarks.iter().any(|remark| remark.code == "hot_mould"),
            "{alloy}"
        );
    }
}

/// A hub of 40 by 40 by 40 mm with a web of this height round it, in grey iron.
fn hub(web_mm: f64) -> Plan {
    let part = drawn(&Heights {
        x: vec![0.0, 60.0, 100.0, 160.0],
        y: vec![0.0, 60.0, 100.0, 160.0],
        height: &|i, j| if (i, j) == (1, 1) { 40.0 } else { web_mm },
    });
    let job = "name = \"Hub\"\n[part]\nmesh = \"hub.obj\"\n[metal]\nalloy = \"grey iron\"";
    worked::plan(job, HEAP, &part)
}

#[test]
fn iron_of_thick_and_thin_is_opened_colder() {
    let below = |plan: &Plan| {
        let figure = plan.figure("may be opened").unwrap();
        let below = figure.inputs.iter().find(|(key, _)| key == "below");
        below.unwrap().1.clone()
    };
    assert_eq!(below(&hub(8.0)), "300 °C");
    assert_eq!(below(&hub(34.0)), "480 °C");
}

#[test]
fn oil_bonded_sand_is_not_opened_in_the_same_hour() {
    let oil = plan("A356", "[heap]\nmass = \"90 kg\"\nbond = \"oil\"\n");
    assert!(values(&oil, "may be opened")[0] >= 3600.0);
}

#[test]
fn an_own_slab_narrows_the_freezing_time_and_is_told() {
    let name = "freezing time of the heaviest section";
    let (book, own) = (plan("A356", HEAP), plan("A356", &format!("{HEAP}{TRIAL}")));
    let width = |values: [f64; 3]| values[2] / values[0];
    assert!(width(values(&own, name)) < 0.6 * width(values(&book, name)));
    assert!(because(&own, name).contains("this sand and this metal"));
    // The slab itself comes back: 4 min at a modulus of 7.5 mm.
    let constant = 240.0 / (7.5 * 7.5);
    let modulus = values(&own, "modulus of the heaviest section")[1];
    let again = values(&own, name)[1] / (modulus * modulus);
    assert!((again / constant - 1.0).abs() < 0.15, "{again} {constant}");
    let carried = plan("gunmetal", &format!("{HEAP}{TRIAL}"));
    let because = because(&carried, name);
    assert!(because.contains("carried over"), "{because}");
}

#[test]
fn a_slab_without_a_time_is_refused_with_what_to_write() {
    let shop: ShopFile = read(
        "shop.toml",
        &format!("{HEAP}{}", TRIAL.replace("4 min", "0 min")),
    )
    .unwrap();
    let fault = shop.meant().unwrap_err();
    assert!(fault.contains("froze_in"), "{fault}");
}

#[test]
fn every_rule_for_the_feeder_stands_beside_the_figure() {
    let plan = plan("A356", HEAP);
    let figure = plan.figure("feeder diameter").unwrap();
    let named = |name: &str| figure.inputs.iter().any(|(key, _)| key == name);
    for rule in [
        "by modulus",
        "by volume",
        "by Caine's curve",
        "by the table of shapes",
    ] {
        assert!(named(rule), "{rule}: {:?}", figure.inputs);
    }
    let [low, likely, high] = values(&plan, "neck across");
    assert!(low <= likely && likely <= high);
    let modulus = values(&plan, "modulus of the heaviest section")[1];
    assert!((likely / (4.4 * modulus) - 1.0).abs() < 0.05);
}
