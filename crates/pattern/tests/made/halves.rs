//! Halves, pins and lifting holes.

use std::f64::consts::PI;

use pattern::made::halves::{HalvesError, PinWish, USUAL_CLEARANCE_MM, halved};
use pattern::made::joint::Joint;
use pattern::made::lifting::{LiftError, Lifted, with_lifting_hole};

use crate::solids::{block, close, cylinder, example, mesh, step_from_10_to_20, volume};

const PINS: PinWish = PinWish {
    diameter_mm: None,
    clearance_mm: USUAL_CLEARANCE_MM,
};

#[test]
fn halves_add_up_and_pin_holes_have_their_volume() {
    let part = mesh(&[block([0.0; 3], [90.0, 40.0, 30.0])]);
    let joint = Joint::Flat(18.0);
    let bare = halved(&part, &joint, None).unwrap();
    close(volume(&bare.drag), 90.0 * 40.0 * 18.0, 1e-9);
    close(volume(&bare.cope), 90.0 * 40.0 * 12.0, 1e-9);
    let made = halved(&part, &joint, Some(&PINS)).unwrap();
    let pins = made.pins.unwrap();
    let hole = |across: f64| PI / 4.0 * across * across * pins.depth_mm;
    close(
        volume(&bare.drag) - volume(&made.drag),
        2.0 * hole(pins.hole_mm),
        1e-6,
    );
    close(
        volume(&bare.cope) - volume(&made.cope),
        2.0 * hole(pins.diameter_mm),
        1e-6,
    );
    assert_eq!(pins.hole_mm, pins.diameter_mm + USUAL_CLEARANCE_MM);
    // As far apart as the corners allow: no nearer than two thirds of the diagonal.
    let [a, b] = pins.places_mm;
    assert!((a[0] - b[0]).hypot(a[1] - b[1]) > 0.66 * 90.0_f64.hypot(40.0));
    assert!(pins.places_mm.iter().all(|pin| pin[2] == 18.0));
}

#[test]
fn blocks_that_meet_in_a_step_part_the_pattern_there() {
    let part = mesh(&[block([0.0; 3], [60.0, 30.0, 40.0])]);
    let below = mesh(&[
        block([0.0, 0.0, -20.0], [100.0, 80.0, 30.0]),
        block([25.0, 0.0, 10.0], [50.0, 80.0, 10.0]),
    ]);
    let above = mesh(&[
        block([-25.0, 0.0, 10.0], [50.0, 80.0, 50.0]),
        block([25.0, 0.0, 20.0], [50.0, 80.0, 40.0]),
    ]);
    let joint = Joint::Blocks {
        heights: step_from_10_to_20([50.0, 40.0]),
        below,
        above,
    };
    let made = halved(&part, &joint, Some(&PINS)).unwrap();
    let pins = made.pins.unwrap();
    let [a, b] = pins.places_mm;
    for pin in [a, b] {
        assert_eq!(pin[2], if pin[0] < 0.0 { 10.0 } else { 20.0 });
    }
    let hole = |across: f64| PI / 4.0 * across * across * pins.depth_mm;
    let wanted = 30.0 * 30.0 * 30.0 - 2.0 * hole(pins.hole_mm);
    close(volume(&made.drag), wanted, 1e-6);
    close(
        volume(&made.cope),
        72_000.0 - 27_000.0 - 2.0 * hole(pins.diameter_mm),
        1e-6,
    );
}

#[test]
fn a_thin_drag_half_gets_short_pegs_and_keeps_its_bottom() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 30.0])]);
    let made = halved(&part, &Joint::Flat(4.2), Some(&PINS)).unwrap();
    let pins = made.pins.unwrap();
    // The hole leaves as much as its least wall below it, and the rod sits tight over more.
    assert!(pins.wide_mm >= 0.8 * pins.diameter_mm && pins.wide_mm <= 4.2 - 1.5);
    assert!(pins.depth_mm > pins.wide_mm);
    let hole = |across: f64, deep: f64| PI / 4.0 * across * across * deep;
    let drag = 60.0 * 40.0 * 4.2 - 2.0 * hole(pins.hole_mm, pins.wide_mm);
    let cope = 60.0 * 40.0 * 25.8 - 2.0 * hole(pins.diameter_mm, pins.depth_mm);
    close(volume(&made.drag), drag, 1e-6);
    close(volume(&made.cope), cope, 1e-6);
}

#[test]
fn pins_are_found_in_the_middle_of_walls_just_wide_enough() {
    // A wall of 6.6 mm beside a foot that moves the places looked at off its middle: they lie
    // 2.3 mm apart, and a rod of 3 mm in a hole of 3.2 mm wants 6.4 mm.
    let part = mesh(&[
        block([0.0; 3], [150.0, 6.6, 40.0]),
        block([0.0, 8.0, 0.0], [150.0, 10.6, 8.0]),
    ]);
    let halves = halved(&part, &Joint::Flat(22.0), Some(&PINS)).unwrap();
    let pins = halves.pins.unwrap();
    assert_eq!((pins.diameter_mm, pins.wide_mm), (3.0, 6.0));
    assert!(
        pins.places_mm.iter().all(|pin| pin[1].abs() <= 0.1 + 1e-6),
        "{pins:?}"
    );
}

#[test]
fn a_joint_beside_the_pattern_and_pins_without_room_are_told() {
    let part = mesh(&[block([0.0; 3], [90.0, 40.0, 30.0])]);
    let error = halved(&part, &Joint::Flat(30.0), None).unwrap_err();
    assert!(matches!(error, HalvesError::OneSide { .. }), "{error}");
    let thin = mesh(&[block([0.0; 3], [90.0, 5.0, 30.0])]);
    let error = halved(&thin, &Joint::Flat(15.0), Some(&PINS)).unwrap_err();
    assert!(matches!(error, HalvesError::NoRoom { .. }), "{error}");
    for (diameter_mm, clearance_mm) in [(0.5, 0.2), (6.0, -0.1), (6.0, f64::NAN), (60.0, 0.2)] {
        let wish = PinWish {
            diameter_mm: Some(diameter_mm),
            clearance_mm,
        };
        let error = halved(&part, &Joint::Flat(15.0), Some(&wish)).unwrap_err();
        assert!(matches!(error, HalvesError::Pin { .. }), "{error}");
    }
}

#[test]
fn meshes_of_files_are_parted() {
    for (name, share) in [
        ("pump_housing.stl", 0.3),
        ("grooved_pulley_inches.stl", 0.5),
    ] {
        let part = example(name);
        let [low, high] = part.bounds();
        let joint = Joint::Flat(low[2] + share * (high[2] - low[2]));
        let made = halved(&part, &joint, None).unwrap();
        close(volume(&made.drag) + volume(&made.cope), volume(&part), 1e-9);
    }
}

#[test]
fn a_lifting_hole_stands_over_the_centre_of_mass() {
    let part = mesh(&[
        block([0.0; 3], [80.0, 60.0, 30.0]),
        cylinder([20.0, 0.0, 30.0], 40.0, 5.0),
    ]);
    let half = halved(&part, &Joint::Flat(26.0), None).unwrap().drag;
    let lift = with_lifting_hole(&half, &Joint::Flat(26.0), Lifted::Drag, 6.0, &[]).unwrap();
    close(volume(&half) - volume(&lift.mesh), PI * 9.0 * 18.0, 1e-6);
    assert!(lift.off_centre_mm < 1.0, "{}", lift.off_centre_mm);
    // A pin where it would go moves it aside.
    let pin = [lift.place_mm];
    let moved = with_lifting_hole(&half, &Joint::Flat(26.0), Lifted::Drag, 6.0, &pin).unwrap();
    assert!(moved.off_centre_mm > 5.0);
    let thin = mesh(&[block([0.0; 3], [80.0, 60.0, 8.0])]);
    let error = with_lifting_hole(&thin, &Joint::Flat(8.0), Lifted::Drag, 6.0, &[]).unwrap_err();
    assert!(matches!(error, LiftError::NoRoom { .. }), "{error}");
}
