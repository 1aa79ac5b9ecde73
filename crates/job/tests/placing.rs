//! Which way up a part lies, and where its joint is.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod worked;

use job::job::Up;
use job::placed_part::PlacedPart;
use measure::length::Length;
use pattern::mesh::Mesh;
use worked::blocks::{Heights, obj};

/// A step: 60 x 40 mm and 10 mm high, with 20 x 40 mm of it 30 mm high.
fn step() -> Mesh {
    let (x, y) = (vec![0.0, 20.0, 60.0], vec![0.0, 40.0]);
    let text = obj(&Heights {
        x,
        y,
        height: &|i, _| if i == 0 { 30.0 } else { 10.0 },
    });
    pattern::look::look("step.obj", text.as_bytes(), None)
        .unwrap()
        .mesh
}

#[test]
fn turning_keeps_metal_and_surface_and_never_mirrors() {
    for axis in 0..3 {
        for upward in [true, false] {
            let part = PlacedPart::of(&step(), Up::Axis(axis, upward), None);
            // A mirrored skin is wound inward: its volume would be below nought.
            assert!(
                (part.volume.likely().as_mm3() - 40_000.0).abs() < 1e-6,
                "{axis} {upward}"
            );
            assert!(
                (part.area.likely().as_mm2() - 9_200.0).abs() < 1e-6,
                "{axis} {upward}"
            );
            assert!(part.extents[0] >= part.extents[1], "{axis} {upward}");
        }
    }
}

#[test]
fn up_and_down_change_places() {
    let up = PlacedPart::of(&step(), Up::Axis(2, true), Some(Length::from_mm(10.0)));
    assert!((up.above_joint.likely().as_mm3() - 16_000.0).abs() < 1e-6);
    let down = PlacedPart::of(&step(), Up::Axis(2, false), Some(Length::from_mm(20.0)));
    assert!((down.above_joint.likely().as_mm3() - 24_000.0).abs() < 1e-6);
}

#[test]
fn the_joint_lies_at_the_widest_cut_as_high_as_that_goes() {
    let part = PlacedPart::of(&step(), Up::Axis(2, true), None);
    assert!(
        (part.joint.as_mm() - 10.0).abs() < 0.5,
        "{}",
        part.joint.as_mm()
    );
    let block = PlacedPart::of(&step(), Up::Axis(1, true), None);
    // Seen from the side the step is the same all the way up: all of it goes into the drag.
    assert_eq!(block.joint.as_mm(), block.extents[2].as_mm());
    assert!(block.above_joint.likely().as_mm3().abs() < 1e-6);
}

#[test]
fn left_alone_the_flattest_way_is_up() {
    let part = PlacedPart::of(&step(), Up::Flattest, None);
    assert_eq!(
        part.extents.map(|side| side.as_mm().round()),
        [60.0, 40.0, 30.0]
    );
}
