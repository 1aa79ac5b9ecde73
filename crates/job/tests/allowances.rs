//! Tolerance, stock, draught, and what a worn or rapped pattern makes of the contraction.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod blocks;

use blocks::{Heights, obj};
use job::file_fault::read;
use job::job::Job;
use job::job_file::JobFile;
use job::part::Part;
use job::plan::Plan;
use job::shop::ShopFile;
use job::work_out::work_out;

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
    let plate = obj(&Heights {
        x: vec![0.0, length_mm],
        y: vec![0.0, 40.0],
        height: &|_, _| 16.0,
    });
    let mesh = pattern::look::look("plate.obj", plate.as_bytes(), None).unwrap();
    let text = format!(
        "name = \"x\"\n[part]\nmesh = \"plate.obj\"\n{of_part}\n[metal]\nalloy = \"{metal}\"\n"
    );
    let typed: JobFile = read("job.toml", &text).unwrap();
    let shop: ShopFile = read("shop.toml", SHOP).unwrap();
    work_out(
        &Job::meant(&typed).unwrap(),
        &shop.meant().unwrap(),
        &Part::Mesh(mesh),
    )
}

#[track_caller]
fn figure(plan: &Plan, name: &str) -> [f64; 3] {
    plan.figure(name).unwrap().amount.values()
}

fn has_remark(plan: &Plan, code: &str) -> bool {
    plan.remarks.iter().any(|remark| remark.code == code)
}

#[test]
fn every_plan_says_how_near_to_size_and_how_much_draught() {
    let plan = plan(140.0, "Al-Si7-Mg", "");
    // Grades 11 to 13 of 100 to 160 mm: 5 to 10 mm in all.
    assert_eq!(
        figure(&plan, "tolerance on the longest size"),
        [2.5, 3.5, 5.0]
    );
    let [.., draught] = figure(&plan, "draught on the deepest wall");
    assert!((0.7..=0.9).contains(&draught), "{draught}");
    assert!(plan.figure("machining stock under the cope").is_none());
    assert!(plan.figure("casting from the original as it is").is_none());
}

#[test]
fn a_machined_casting_gets_more_under_the_cope() {
    let plan = plan(125.0, "gunmetal", "machined = true");
    let below = figure(&plan, "machining stock below or at the side");
    let cope = figure(&plan, "machining stock under the cope");
    assert_eq!((below[0], below[2]), (1.5, 3.0));
    assert!(cope[0] > below[0] && cope[2] > below[2]);
    assert!(has_remark(&plan, "machined_faces"));
}

#[test]
fn an_iron_original_of_280_does_not_fit_the_wall() {
    let plan = plan(280.0, "grey iron", "from = \"worn original\"");
    let [low, _, high] = figure(&plan, "casting from the original as it is");
    assert!(
        (low - 277.1).abs() < 0.05 && (high - 277.8).abs() < 0.05,
        "{low} to {high}"
    );
    let [_, laid_on, _] = figure(&plan, "laid on each end of the original");
    assert!((laid_on - 1.4).abs() < 0.05, "{laid_on}");
    assert!(has_remark(&plan, "worn_original"));
    let contraction = plan.figure("contraction").unwrap();
    assert!(
        contraction.inputs.len() >= 3,
        "each source beside its figure"
    );
}

#[test]
fn a_small_rapped_pattern_may_stay_as_it_is_sideways() {
    let small = plan(60.0, "Al-Si7-Mg", "rapped = true");
    let [low, likely, high] = figure(&small, "pattern length, rapped");
    assert!(low == 60.0 && likely == 60.0 && high > 60.9);
    let large = plan(140.0, "Al-Si7-Mg", "rapped = true");
    assert!(large.figure("pattern length, rapped").is_none());
    assert!(has_remark(&large, "rapping_not_counted"));
}

#[test]
fn a_pattern_that_is_itself_cast_wants_a_larger_master() {
    let plan = plan(100.0, "gunmetal", "pattern_contraction = \"1.3 %\"");
    let [_, pattern, _] = figure(&plan, "pattern length");
    let [_, master, _] = figure(&plan, "master length");
    assert!((master / pattern - 1.013).abs() < 1e-9);
}

#[test]
fn pewter_has_no_row_in_the_tables_and_gets_no_figure() {
    let plan = plan(60.0, "pewter", "machined = true");
    assert!(plan.figure("tolerance on the longest size").is_none());
    assert!(plan.figure("machining stock under the cope").is_none());
}
