//! Tolerance, stock, draught, and what a worn or rapped pattern makes of the contraction.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::plan::Plan;
use worked::{block, says, values};

const SHOP: &str = r#"
[[flask]]
name = "large"
length = "600 mm"
width = "500 mm"
cope = "150 mm"
drag = "150 mm"

[[crucible]]
name = "A20"
mark = 20
"#;

/// A plate of this length in mm, 40 mm wide and 16 mm thick.
fn plan(length_mm: f64, metal: &str, of_part: &str) -> Plan {
    let text = format!(
        "name = \"x\"\n[part]\nmesh = \"plate.obj\"\n{of_part}\n[metal]\nalloy = \"{metal}\"\n"
    );
    worked::plan(&text, SHOP, &block([length_mm, 40.0, 16.0]))
}

#[test]
fn every_plan_says_how_near_to_size_and_how_much_draught() {
    let plan = plan(140.0, "Al-Si7-Mg", "");
    // Grades 11 to 13 of 100 to 160 mm: 5 to 10 mm in all.
    assert_eq!(
        values(&plan, "tolerance on the longest size"),
        [2.5, 3.5, 5.0]
    );
    let [.., draught] = values(&plan, "draught on the deepest wall");
    assert!((0.7..=0.9).contains(&draught), "{draught}");
    assert!(plan.figure("machining stock under the cope").is_none());
    assert!(plan.figure("casting from the original as it is").is_none());
}

#[test]
fn a_machined_casting_gets_more_under_the_cope() {
    let plan = plan(125.0, "gunmetal", "machined = true");
    let below = values(&plan, "machining stock below or at the side");
    let cope = values(&plan, "machining stock under the cope");
    assert_eq!((below[0], below[2]), (1.5, 3.0));
    assert!(cope[0] > below[0] && cope[2] > below[2]);
    assert!(says(&plan, "machined_faces"));
}

#[test]
fn an_iron_original_of_280_does_not_fit_the_wall() {
    let plan = plan(280.0, "grey iron", "from = \"worn original\"");
    let [low, _, high] = values(&plan, "casting from the original as it is");
    assert!(
        (low - 277.1).abs() < 0.05 && (high - 277.8).abs() < 0.05,
        "{low} to {high}"
    );
    let [_, laid_on, _] = values(&plan, "laid on each end of the original");
    assert!((laid_on - 1.4).abs() < 0.05, "{laid_on}");
    assert!(says(&plan, "worn_original"));
    let contraction = plan.figure("contraction").unwrap();
    assert!(
        contraction.inputs.len() >= 3,
        "each source beside its figure"
    );
}

#[test]
fn a_small_rapped_pattern_may_stay_as_it_is_sideways() {
    let small = plan(60.0, "Al-Si7-Mg", "rapped = true");
    let [low, likely, high] = values(&small, "pattern length, rapped");
    assert!(low == 60.0 && likely == 60.0 && high > 60.9);
    let large = plan(140.0, "Al-Si7-Mg", "rapped = true");
    assert!(large.figure("pattern length, rapped").is_none());
    assert!(says(&large, "rapping_not_counted"));
}

#[test]
fn a_pattern_that_is_itself_cast_wants_a_larger_master() {
    let plan = plan(100.0, "gunmetal", "pattern_contraction = \"1.3 %\"");
    let [_, pattern, _] = values(&plan, "pattern length");
    let [_, master, _] = values(&plan, "master length");
    assert!((master / pattern - 1.013).abs() < 1e-9);
}

#[test]
fn pewter_has_no_row_in_the_tables_and_gets_no_figure() {
    let plan = plan(60.0, "pewter", "machined = true");
    assert!(plan.figure("tolerance on the longest size").is_none());
    assert!(plan.figure("machining stock under the cope").is_none());
}
