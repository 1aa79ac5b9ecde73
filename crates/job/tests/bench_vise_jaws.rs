//! Two jaws for a bench vise in leaded gunmetal, face down in one flask: a whole job against hand
//! sums from handbook figures.
//!
//! The ranges are those of a careful founder's hand sum with the same handbook rules (figures from
//! memory of handbooks): mass by volume and density, filling time from the root of the mass, choke
//! by Torricelli with losses of a fifth, lift of the metal on its shadow, sand at 1.6 g/cm³. Where
//! the plan goes beyond the hand sum the test says in what and by how much.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::part::Part;
use job::plan::Plan;
use worked::blocks::Heights;
use worked::chosen;

const SHOP: &str = r#"
[[flask]]
name = "vise"
length = "300 mm"
width = "250 mm"
cope = "80 mm"
drag = "70 mm"

[[crucible]]
name = "A4"
mark = 4
[[crucible]]
name = "A6"
mark = 6

[[iron]]
name = "sash weight"
mass = "2.5 kg"
count = 5
"#;

const JOB: &str = r#"
name = "Vise jaws"
[part]
mesh = "jaw.obj"
count = 2
[metal]
alloy = "gunmetal"
[mould]
flask = "vise"
pour_height = "100 mm"
joint = "30.5 mm"
"#;

/// A plate of 125 x 47 x 20.5 mm with two bosses on its back, of the area of a 24 mm disc and 10 mm
/// high.
fn jaw() -> Part {
    let boss = (std::f64::consts::PI * 12.0 * 12.0).sqrt();
    let (a, b) = (31.25 - boss / 2.0, 93.75 - boss / 2.0);
    let x = vec![0.0, a, a + boss, b, b + boss, 125.0];
    let y = vec![0.0, 23.5 - boss / 2.0, 23.5 + boss / 2.0, 47.0];
    let is_boss = |i: usize, j: usize| (i == 1 || i == 3) && j == 1;
    worked::drawn(&Heights {
        x,
        y,
        height: &|i, j| if is_boss(i, j) { 30.5 } else { 20.5 },
    })
}

fn plan() -> Plan {
    worked::plan(JOB, SHOP, &jaw())
}

#[track_caller]
fn likely_within(plan: &Plan, name: &str, low: f64, high: f64) {
    let values = worked::values(plan, name);
    let likely = values[1];
    assert!(
        (low..=high).contains(&likely),
        "{name}: {values:?}, wanted {low} to {high}"
    );
}

#[test]
fn masses_agree_with_the_hand_sum() {
    let plan = plan();
    likely_within(&plan, "casting mass", 1.14 * 0.98, 1.14 * 1.02);
    // The hand sum feeds 4 to 5 % and pours 3.9 to 4.7 kg. The plan adds the contraction of the
    // liquid over half of 160 K of superheat, 0.8 %, a full basin and the slag trap: the two bands
    // overlap.
    let poured = worked::values(&plan, "poured mass");
    assert!(poured[0] < 4.7 && poured[1] < 4.7 * 1.1, "{poured:?}");
    let charge = worked::values(&plan, "charge");
    assert!(charge[0] < 5.2 && charge[2] > 4.3, "{charge:?}");
}

#[test]
fn a_small_crucible_is_passed_over() {
    // To the brim an A4 holds 6.1 kg of gunmetal, but 4.9 kg at working fill.
    assert_eq!(chosen(&plan(), "crucible"), "A6");
}

/// The root rule for 4.3 kg gives 3.4 to 4.6 s, and Torricelli 107 to 144 mm²: both lie inside the
/// bands of the plan, but for a hundredth of the choke: with a larger feeder, a full basin and the
/// slag trap it pours a seventh more. Its high end may lie a quarter above, since it counts losses
/// down to C = 0.73 where the hand sum takes 0.8.
#[test]
fn filling_and_choke_agree_with_the_hand_sum() {
    let plan = plan();
    let fill = worked::values(&plan, "fill time");
    assert!(
        fill[0] <= 3.4 && 4.6 <= fill[2] && fill[2] < 5.5,
        "{fill:?}"
    );
    let choke = worked::values(&plan, "choke area");
    assert!(
        choke[0] <= 107.0 * 1.01 && 144.0 <= choke[2] && choke[2] < 144.0 * 1.25,
        "{choke:?}"
    );
}

/// By hand: 117.5 cm² under 100 mm of 7.95 g/cm³ lift 9.34 kgf, and runners 15 to 25 % more. The
/// plan draws its runner, 175 mm of it, and finds a third; at the high end the slag trap lies
/// beside it as so much more runner, and it finds half.
#[test]
fn the_cope_is_held() {
    let plan = plan();
    let lift = worked::values(&plan, "cope lift").map(|n| n / 9.806_65);
    assert!(
        lift[1] > 9.34 * 1.15 && lift[1] < 9.34 * 1.4 && lift[2] < 9.34 * 1.5,
        "{lift:?} kgf"
    );
    likely_within(&plan, "cope mass", 9.4, 9.8);
    // 1.5 times the lift less the lightest cope, up to the next half kilogram.
    let [_, _, wanted] = worked::values(&plan, "weight on the cope");
    let least = 1.5 * lift[2] - 9.0;
    assert!(
        (least..least + 0.5).contains(&wanted),
        "{wanted} kg for {lift:?} kgf"
    );
    assert_eq!(chosen(&plan, "irons"), "5 x sash weight");
}

#[test]
fn the_founder_is_told_what_the_metal_does() {
    let plan = plan();
    for code in ["lead", "fine_sponge", "contraction_disputed"] {
        assert!(
            plan.remarks.iter().any(|remark| remark.code == code),
            "{code} is not told"
        );
    }
}

#[test]
fn every_figure_says_where_it_comes_from() {
    for figure in &plan().figures {
        assert!(!figure.inputs.is_empty(), "{} has no inputs", figure.name);
        assert!(!figure.sources.is_empty(), "{} has no sources", figure.name);
        let [low, likely, high] = figure.amount.values();
        assert!(low <= likely && likely <= high && low.is_finite() && high.is_finite());
    }
}

#[test]
fn the_same_job_gives_the_same_file() {
    let text = || job::plan_file::PlanFile::of(&plan()).text();
    assert_eq!(text(), text());
}
