//! The pattern of a casting with cores: hollows filled, prints put on, and what is told of them.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use std::f64::consts::PI;

use job::making::core_prints::CorePrints;
use job::making::{Making, Step, make};
use measure::length::Length;
use pattern::look::look;
use pattern::mesh::Mesh;
use pattern::unit::Unit;

/// A block of 60 × 40 × 40 mm, parted half way up, with a bore of 20 mm along x.
const BORED: &str = r#"
name = "Bored block"
[part]
up = "+z"
[metal]
alloy = "A356"
contraction = "1.3 %"
[mould]
joint = "20 mm"
[pattern]
draught = 0
one_piece = true
"#;

const SOLIDS: &str = r#"
[[solid]]
kind = "box"
size = ["60 mm", "40 mm", "40 mm"]
[[solid]]
kind = "cylinder"
diameter = "20 mm"
length = "80 mm"
at = ["-40 mm", 0, "20 mm"]
axis = "x"
take_away = true
"#;

fn made(job: &str) -> Making {
    let part = worked::given(job);
    let mesh = &part.looked().unwrap().mesh;
    make(&worked::job(job), &worked::shop(""), mesh).unwrap()
}

fn after(making: &Making, step: Step) -> f64 {
    making.steps.iter().find(|(own, _)| *own == step).unwrap().1
}

/// Block and bore are larger by 1.3 %; the prints of the core are as long as the bore is wide, and
/// those of the pattern 0.4 mm wider and longer on each side.
#[test]
fn a_bored_block_is_solid_and_carries_the_prints_of_its_core() {
    let making = made(&format!("{BORED}{SOLIDS}"));
    let block = 60.0 * 40.0 * 40.0 * 1.013_f64.powi(3);
    let filled = after(&making, Step::Hollows);
    assert!((filled / block - 1.0).abs() < 1e-6, "{filled} {block}");
    let across = 20.0 * 1.013;
    let print = PI / 4.0 * (across + 0.8_f64).powi(2) * (across + 0.4);
    let prints = after(&making, Step::Prints) - block;
    assert!(
        (prints / (2.0 * print) - 1.0).abs() < 4e-3,
        "{prints} {print}"
    );
    assert_eq!(making.held_mm3, 0.0);
    let length = 60.0 * 1.013 + 2.0 * (across + 0.4);
    assert!(
        (making.pattern_mm[0] - length).abs() < 0.1,
        "{:?}",
        making.pattern_mm
    );
    let CorePrints::Made(cores) = &making.cores else {
        unreachable!("{:?}", making.cores);
    };
    assert_eq!((cores.len(), cores[0].lengths.len()), (1, 2));
    assert_eq!(cores[0].play, Length::from_mm(0.4));
}

/// The same with its draught by rule, in two halves: it still holds nothing.
#[test]
fn a_drafted_pattern_with_prints_parts_into_halves_that_draw() {
    let rules = BORED.replace("draught = 0\none_piece = true", "");
    let making = made(&format!("{rules}{SOLIDS}"));
    assert_eq!(making.no_draught, None);
    assert!(making.held_mm3 < 1.0, "{}", making.held_mm3);
    assert_eq!(making.pieces.len(), 2);
    let block = 60.0 * 40.0 * 40.0 * 1.013_f64.powi(3);
    assert!(after(&making, Step::Hollows) > block);
}

#[test]
fn prints_given_by_hand_stand_and_those_of_the_core_are_told_as_not_made() {
    let by_hand = r#"print = [{ at = ["29 mm", 0, "20 mm"], axis = "x", length = "9 mm", diameter = "22 mm" }]"#;
    let halves = BORED.replace("one_piece = true", "");
    let making = made(&format!("{halves}{by_hand}\n{SOLIDS}"));
    assert_eq!(making.cores, CorePrints::ByHand(1));
    assert!(making.steps.iter().all(|(step, _)| *step != Step::Hollows));
    let bore = PI / 4.0 * 400.0 * 60.0 * 1.013_f64.powi(3);
    let block = 60.0 * 40.0 * 40.0 * 1.013_f64.powi(3);
    assert!(after(&making, Step::Contraction) < block - 0.99 * bore);
}

fn mesh_of(name: &str) -> Mesh {
    let meshes = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/meshes");
    let bytes = std::fs::read(format!("{meshes}/{name}")).unwrap();
    look(name, &bytes, Some(Unit::Metre)).unwrap().mesh
}

/// Parts whose cores go from wall to wall: what the pattern held before lies in the cores.
#[test]
fn real_parts_with_cores_give_patterns_that_hold_no_sand() {
    let job = |alloy: &str| {
        let text =
            format!("name = \"Real\"\n[part]\nmesh = \"x.stl\"\n[metal]\nalloy = \"{alloy}\"");
        worked::job(&text)
    };
    for (name, alloy) in [
        ("motor_housing_metres.stl", "A356"),
        ("pipe_bend_metres.stl", "gunmetal"),
    ] {
        let making = make(&job(alloy), &worked::shop(""), &mesh_of(name)).unwrap();
        let CorePrints::Made(cores) = &making.cores else {
            unreachable!("{name}: {:?}", making.cores);
        };
        assert!(!cores.is_empty(), "{name}");
        let share = making.held_mm3 / after(&making, Step::Prints);
        assert!(share < 1e-3, "{name}: {share}");
    }
}
