//! What a plan says about the melt: inoculant and carbon equivalent, zinc, deoxidiser, gas.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::plan::Plan;
use worked::{block, says, values};

const SHOP: &str = r#"
[[flask]]
name = "square"
length = "350 mm"
width = "300 mm"
cope = "100 mm"
drag = "100 mm"

[[crucible]]
name = "A10"
mark = 10
"#;

/// A plate of 160 x 100 x 8 mm.
fn plan(alloy: &str) -> Plan {
    let job =
        format!("name = \"Plate\"\n[part]\nmesh = \"plate.obj\"\n[metal]\nalloy = \"{alloy}\"\n");
    worked::plan(&job, SHOP, &block([160.0, 100.0, 8.0]))
}

#[test]
fn iron_is_inoculated_and_its_carbon_equivalent_is_a_range() {
    let plan = plan("grey iron");
    let charge = values(&plan, "charge");
    let inoculant = values(&plan, "inoculant");
    assert!((inoculant[0] / charge[0] - 0.002).abs() < 1e-9);
    assert!((inoculant[2] / charge[2] - 0.004).abs() < 1e-9);
    let wanted = values(&plan, "wanted carbon equivalent");
    assert!(
        wanted[0] > 3.9 && wanted[2] < 4.5 && wanted[0] < wanted[2],
        "{wanted:?}"
    );
    assert!(says(&plan, "wanted_equivalent") && says(&plan, "chills_white"));
    assert!(plan.figure("zinc to put back").is_none());
}

#[test]
fn brass_gets_its_zinc_back_with_a_caution_and_gunmetal_its_phosphorus() {
    let brass = plan("yellow brass");
    let zinc = values(&brass, "zinc to put back");
    let charge = values(&brass, "charge");
    assert!(zinc[0] > 0.0 && zinc[1] < 0.02 * charge[1], "{zinc:?}");
    assert!(zinc[2] < 0.1 * charge[2], "{zinc:?} of {charge:?}");
    assert!(says(&brass, "zinc_back") && says(&brass, "zinc_fume"));
    assert!(brass.figure("phosphor copper").is_none());
    let gunmetal = plan("gunmetal");
    assert!(gunmetal.figure("phosphor copper").is_some());
    assert!(gunmetal.figure("zinc to put back").is_none());
    let bronze = plan("silicon bronze");
    assert!(bronze.figure("phosphor copper").is_none());
    assert!(bronze.figure("zinc to put back").is_none());
}

#[test]
fn aluminium_is_told_what_degassing_takes() {
    let plan = plan("A356");
    assert!(says(&plan, "degas"));
    assert!(plan.figure("inoculant").is_none());
}
