//! The gates of a plan one by one.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::plan::Plan;
use job::remark::Remark;
use worked::{block, values};

/// Blocks of 80 x 60 x 18 mm in aluminium, all of them below the joint.
fn paperweights(count: usize) -> Plan {
    let job = format!(
        "name = \"Paperweights\"\n[part]\nmesh = \"block.obj\"\ncount = {count}\n\
         [metal]\nalloy = \"A356\"\n[mould]\npour_height = \"100 mm\"\njoint = \"18 mm\"\n"
    );
    worked::plan(&job, "", &block([80.0, 60.0, 18.0]))
}

fn likely(plan: &Plan, name: &str) -> f64 {
    values(plan, name)[1]
}

fn remark<'a>(plan: &'a Plan, code: &str) -> Option<&'a Remark> {
    plan.remarks.iter().find(|remark| remark.code == code)
}

#[test]
fn two_castings_to_either_side_fill_together_and_four_do_not() {
    let (two, four) = (paperweights(2), paperweights(4));
    let lag = "last casting full after the first";
    assert!(likely(&two, lag) < 1e-6);
    assert!(remark(&two, "gates_uneven").is_none());
    assert!(likely(&four, lag) > 0.1, "{}", likely(&four, lag));
    let uneven = remark(&four, "gates_uneven").unwrap();
    let advice = uneven.file().advice;
    assert_eq!(advice.matches(',').count(), 2, "two gates a side: {advice}");
    assert!(paperweights(1).figure(lag).is_none());
}

#[test]
fn gates_over_the_limit_of_the_metal_are_told_with_the_area_that_keeps_it() {
    let plan = paperweights(2);
    let speed = likely(&plan, "gate speed");
    let told = remark(&plan, "gate_too_fast");
    assert_eq!(told.is_some(), speed > 0.5, "{speed} {told:?}");
}

#[test]
fn the_lip_gives_the_poured_mass_in_about_the_filling_time() {
    let plan = paperweights(4);
    let seconds = likely(&plan, "poured mass") / likely(&plan, "poured each second");
    let fill = likely(&plan, "fill time");
    assert!((seconds / fill - 1.0).abs() < 0.1, "{seconds} {fill}");
}

#[test]
fn the_run_off_holds_the_first_twentieth() {
    let plan = paperweights(4);
    let room = likely(&plan, "slag trap volume");
    let poured = likely(&plan, "poured mass");
    assert!(
        (room * 2.39e-3 / (0.05 * poured) - 1.0).abs() < 0.02,
        "{room} {poured}"
    );
    let length = likely(&plan, "run-off past the last gate");
    assert!(length * likely(&plan, "runner area") >= 0.999 * room * 1000.0);
}
