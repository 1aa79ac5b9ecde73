//! Lift-out temperature, tongs load and fuel of a whole job.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::plan::Plan;
use worked::{because, block, values};

const FLASK: &str = r#"
[[flask]]
name = "B"
length = "300 mm"
width = "250 mm"
cope = "100 mm"
drag = "80 mm"
"#;

/// The plan of a block of 100 x 60 x 20 mm in an alloy, with the furnace and the crucible written
/// into the shop file.
fn plan(alloy: &str, furnace: &str, mark: u32) -> Plan {
    let job =
        format!("name = \"Block\"\n[part]\nmesh = \"block.obj\"\n[metal]\nalloy = \"{alloy}\"");
    let shop = format!("{furnace}\n{FLASK}\n[[crucible]]\nname = \"own\"\nmark = {mark}");
    worked::plan(&job, &shop, &block([100.0, 60.0, 20.0]))
}

#[test]
fn metal_is_lifted_out_hotter_than_it_is_poured() {
    let plan = plan("gunmetal", "", 6);
    let (lift, pour) = (
        values(&plan, "lift-out temperature"),
        values(&plan, "pouring temperature"),
    );
    assert!(lift[0] > pour[1] + 20.0, "{lift:?} {pour:?}");
    assert!(lift[1] < pour[1] + 200.0, "{lift:?} {pour:?}");
    assert!(because(&plan, "lift-out temperature").contains("turn back"));
}

#[test]
fn a_longer_walk_wants_hotter_metal() {
    let of = |seconds: u32| {
        let furnace = format!("[furnace]\ncarry = \"{seconds} s\"");
        values(&plan("gunmetal", &furnace, 6), "lift-out temperature")[1]
    };
    assert!(of(10) + 5.0 < of(30));
}

#[test]
fn tongs_carry_the_crucible_with_the_metal() {
    let plan = plan("aluminium", "", 6);
    let (load, charge) = (values(&plan, "tongs load"), values(&plan, "charge"));
    assert!(load[1] > charge[1] + 0.5, "{load:?} {charge:?}");
}

#[test]
fn fuel_is_told_where_the_shop_says_what_it_burns() {
    let silent = plan("aluminium", "", 6);
    assert!(silent.figure("fuel").is_none());
    let gas = plan("aluminium", "[furnace]\nfuel = \"propane\"", 6);
    let charcoal = plan("aluminium", "[furnace]\nfuel = \"charcoal\"", 6);
    let (gas, charcoal) = (values(&gas, "fuel"), values(&charcoal, "fuel"));
    assert!(charcoal[1] > 1.4 * gas[1], "{gas:?} {charcoal:?}");
    let charge = values(&silent, "charge")[1];
    // Some 1.1 MJ for each kilogram of metal, 13 % of the fuel's 46 MJ reaching it.
    let by_hand = charge * 1.1 / 0.13 / 46.35;
    assert!(
        (gas[1] - by_hand).abs() < 0.15 * by_hand,
        "{gas:?} {by_hand}"
    );
}

#[test]
fn without_a_crucible_nothing_is_said_of_the_way() {
    let small = plan("gunmetal", "", 1);
    assert!(small.figure("lift-out temperature").is_none());
}

/// No table knows aluminium in a cupola: what it loses in other furnaces is taken, and it is said.
#[test]
fn a_furnace_without_a_figure_for_the_metal_is_told() {
    let told = |furnace: &str| {
        let plan = plan("aluminium", &format!("[furnace]\nkind = \"{furnace}\""), 6);
        plan.remarks
            .iter()
            .any(|remark| remark.code == "loss_unknown")
    };
    assert_eq!(["cupola", "fuel-crucible"].map(told), [true, false]);
}
