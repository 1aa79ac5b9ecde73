//! The oddside: it fills the box with pattern and drag, meets the drag on the joint, and draws.

use measure::length::Length;
use pattern::made::board::{BoardError, BoardWish, oddside};
use pattern::made::joint::Joint;
use pattern::mesh::Mesh;
use pattern::shape::Form;
use pattern::slice::areas_at;

use crate::solids::{block, close, cylinder, example, mesh, shape, step_from_10_to_20, volume};

const WISH: BoardWish = BoardWish {
    plan_mm: [[-60.0, -50.0], [60.0, 50.0]],
    base_mm: 8.0,
};

/// Room of the five marks on a board of so much height: 2 mm wide, 1 mm deep.
fn marks(height: f64) -> f64 {
    5.0 * 2.0 * 1.0 * height
}

#[test]
fn a_stepped_block_is_taken_out_of_the_board() {
    let part = mesh(&[
        block([0.0; 3], [60.0, 40.0, 20.0]),
        cylinder([0.0, 0.0, 20.0], 30.0, 12.0),
    ]);
    let made = oddside(&part, &Joint::Flat(15.0), &WISH).unwrap();
    let round = volume(&part) - 48_000.0;
    let height = 32.0 - 15.0 + 8.0;
    close(made.height_mm, height, 1e-9);
    let wanted = 120.0 * 100.0 * height - 60.0 * 40.0 * 5.0 - round - marks(height);
    close(volume(&made.mesh), wanted, 1e-9);
    close(
        volume(&made.drag),
        120.0 * 100.0 * 23.0 - 60.0 * 40.0 * 15.0,
        1e-9,
    );
    assert!(made.fill.gap < 1e-9 && made.fill.overlap < 1e-9);
    close(made.fill.joint_mm2, 120.0 * 100.0 - 60.0 * 40.0, 1e-9);
}

#[test]
fn balls_parted_at_their_middle_fill_the_box() {
    let diameter = Length::from_mm(50.0);
    let ball = mesh(&[shape(Form::Ball { diameter }, [0.0, 0.0, 25.0], false)]);
    let egg = mesh(&[shape(
        Form::Ellipsoid {
            size: [60.0, 44.0, 30.0].map(Length::from_mm),
        },
        [0.0, 0.0, 15.0],
        false,
    )]);
    for part in [ball, egg] {
        let [low, high] = part.bounds();
        let level = (low[2] + high[2]) / 2.0;
        let wish = BoardWish {
            plan_mm: [
                [low[0] - 20.0, low[1] - 20.0],
                [high[0] + 20.0, high[1] + 20.0],
            ],
            base_mm: 6.0,
        };
        let made = oddside(&part, &Joint::Flat(level), &wish).unwrap();
        assert!(
            made.fill.gap < 1e-3 && made.fill.overlap < 1e-3,
            "{:?}",
            made.fill
        );
        let plan = (high[0] - low[0] + 40.0) * (high[1] - low[1] + 40.0);
        let cut = areas_at(&part, &[Length::from_mm(level)])[0].as_mm2();
        close(made.fill.joint_mm2, plan - cut, 1e-3);
    }
}

#[test]
fn blocks_that_meet_in_a_step_are_taken_as_they_are() {
    let part = mesh(&[block([0.0; 3], [60.0, 30.0, 40.0])]);
    let below = mesh(&[
        block([0.0, 0.0, -20.0], [140.0, 120.0, 30.0]),
        block([35.0, 0.0, 10.0], [70.0, 120.0, 10.0]),
    ]);
    let above = mesh(&[
        block([-35.0, 0.0, 10.0], [70.0, 120.0, 60.0]),
        block([35.0, 0.0, 20.0], [70.0, 120.0, 50.0]),
    ]);
    let step = |below: Mesh| Joint::Blocks {
        heights: step_from_10_to_20([70.0, 60.0]),
        below,
        above: above.clone(),
    };
    let made = oddside(&part, &step(below), &WISH).unwrap();
    assert!(made.fill.gap < 1e-9 && made.fill.overlap < 1e-9);
    // The level parts beside the pattern, and the step between them where the pattern is not.
    close(
        made.fill.joint_mm2,
        120.0 * 100.0 - 60.0 * 30.0 + 10.0 * 70.0,
        1e-9,
    );
    // Blocks that leave a slit between them are no joint.
    let slit = mesh(&[block([0.0, 0.0, -20.0], [140.0, 120.0, 27.0])]);
    let error = oddside(&part, &step(slit), &WISH).unwrap_err();
    assert!(matches!(error, BoardError::DoesNotFill { .. }), "{error}");
}

#[test]
fn a_joint_that_follows_the_line_gives_an_oddside_that_fills_and_draws() {
    // Two bars at different heights and the riser between them: no level crosses both.
    let part = mesh(&[
        block([-30.0, 0.0, 0.0], [60.0, 30.0, 10.0]),
        block([30.0, 0.0, 16.0], [60.0, 30.0, 10.0]),
        block([0.0; 3], [16.0, 30.0, 26.0]),
    ]);
    let flask = [[-90.0, -45.0, -30.0], [90.0, 45.0, 56.0]];
    let joint = Joint::along_the_line(&part, flask).unwrap();
    let height = |x: f64| joint.heights()([x, 15.2]);
    // Beside the bars it lies on their walls, give or take the slope over 0.2 mm of sand.
    assert!(height(-50.0) <= 10.4 && height(50.0) >= 15.6);
    let wish = BoardWish {
        plan_mm: [[-90.0, -45.0], [90.0, 45.0]],
        base_mm: 6.0,
    };
    let made = oddside(&part, &joint, &wish).unwrap();
    assert!(
        made.fill.gap < 1e-3 && made.fill.overlap < 1e-3,
        "{:?}",
        made.fill
    );
    // The joint is at least the plan beside the part, and no more than a tenth over it.
    let plan = 180.0 * 90.0 - 120.0 * 30.0;
    let touching = made.fill.joint_mm2;
    assert!(
        touching > 0.99 * plan && touching < 1.1 * plan,
        "{touching} of {plan}"
    );
}

#[test]
fn what_the_oddside_would_hold_is_told_with_its_place() {
    // A bar that lies above the joint: the board closes under it.
    let part = mesh(&[
        block([0.0; 3], [60.0, 40.0, 15.0]),
        block([0.0, 0.0, 15.0], [10.0, 10.0, 10.0]),
        block([0.0, 0.0, 25.0], [40.0, 20.0, 8.0]),
    ]);
    let error = oddside(&part, &Joint::Flat(15.0), &WISH).unwrap_err();
    // The plate, 8 mm thick, where it stands over the board: 40 x 20 less the stem.
    let BoardError::Undercut {
        place_mm,
        volume_mm3,
    } = error
    else {
        unreachable!("{error}");
    };
    close(volume_mm3, (800.0 - 100.0) * 8.0, 0.01);
    assert!((place_mm[2] - 29.0).abs() < 1.0, "{place_mm:?}");
    // A flanged ring parted under its upper flange.
    let ring = example("flanged_ring.stl");
    let [low, high] = ring.bounds();
    let wide = BoardWish {
        plan_mm: [
            [low[0] - 20.0, low[1] - 20.0],
            [high[0] + 20.0, high[1] + 20.0],
        ],
        base_mm: 6.0,
    };
    let error = oddside(&ring, &Joint::Flat(low[2] + 1.0), &wide).unwrap_err();
    assert!(matches!(error, BoardError::Undercut { .. }), "{error}");
}

#[test]
fn a_flat_backed_pattern_and_a_narrow_board_are_told() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 20.0])]);
    let error = oddside(&part, &Joint::Flat(20.0), &WISH).unwrap_err();
    assert_eq!(error, BoardError::NothingAbove);
    let narrow = BoardWish {
        plan_mm: [[-32.0, -50.0], [60.0, 50.0]],
        ..WISH
    };
    let error = oddside(&part, &Joint::Flat(10.0), &narrow).unwrap_err();
    assert!(
        matches!(
            error,
            BoardError::TooNarrow {
                wanted_mm: [70.0, 50.0],
                ..
            }
        ),
        "{error}"
    );
    for base_mm in [0.0, -1.0, f64::NAN] {
        let thin = BoardWish { base_mm, ..WISH };
        let error = oddside(&part, &Joint::Flat(10.0), &thin).unwrap_err();
        assert!(matches!(error, BoardError::Base { .. }), "{error}");
    }
}
