//! Moulds whose joint follows the parting line of their castings.

use measure::length::Length;
use pattern::mesh::Mesh;
use pattern::shape::{Form, Shape};
use rigging::error::MouldError;
use rigging::given::{Given, Half, Parting};
use rigging::mould::Mould;
use rigging::piece::Piece;
use rigging::placement::Placement;

use crate::plates::{heights, mm, plates};
use crate::{by_rule, is_broken, piece};

/// Diameter and length of the bars, mm.
const BAR: [f64; 2] = [24.0, 100.0];

/// A round bar whose middle lies at height nought and whose axis rises by so many degrees.
fn bar(degrees: f64) -> Mesh {
    let (sin, cos) = degrees.to_radians().sin_cos();
    let [across, length] = BAR.map(Length::from_mm);
    Shape {
        form: Form::Cone {
            diameter: across,
            top: across,
            length,
        },
        at: [length * (-cos / 2.0), Length::ZERO, length * (-sin / 2.0)],
        axis: [cos, 0.0, sin],
        turn_degrees: 0.0,
        is_taken_away: false,
    }
    .skin(96)
    .unwrap()
}

fn bars(count: usize, degrees: f64, half: Half) -> Given {
    let mut given = plates(count, [60.0, 60.0]);
    given.casting.mesh = bar(degrees);
    given.casting.sections = Vec::new();
    given.sizes.feeder = None;
    given.sizes.runner_half = half;
    given.flask.drag = mm(75.0);
    given.parting = Parting::AlongTheLine;
    given
}

/// Sand that a casting pulls along as it is drawn: of the drag over metal, of the cope under it,
/// as a share of the metal, counted on upright lines.
fn pulled(built: &Mould, height: impl Fn([f64; 2]) -> f64) -> f64 {
    let (mut pulled, mut metal) = (0.0, 0.0);
    for casting in &built.castings {
        let [low, high] = casting.mesh.bounds();
        for i in 0..150 {
            for j in 0..50 {
                let share = |axis: usize, at: f64| low[axis] + at * (high[axis] - low[axis]);
                let at = [
                    share(0, (f64::from(i) + 0.503) / 150.0),
                    share(1, (f64::from(j) + 0.497) / 50.0),
                ];
                let met = heights(&casting.mesh, at[0], at[1]);
                if let (Some(from), Some(to)) = (met.first(), met.last()) {
                    let joint = height(at);
                    pulled += (from - joint).max(joint - to).max(0.0);
                    metal += to - from;
                }
            }
        }
    }
    pulled / metal
}

/// The widest place of a round bar lies at the height of its axis, all the way along it.
#[test]
fn a_joint_follows_a_bar_that_rises() {
    for half in [Half::Drag, Half::Cope] {
        let given = bars(1, 12.0, half);
        let built = by_rule(&given);
        assert!(built.off_by.abs() < 1e-9, "{}", built.off_by);
        let joint = &built.joint.as_ref().unwrap().joint;
        let [low, high] = built.castings[0].mesh.bounds();
        let middle = [0, 1].map(|axis| (low[axis] + high[axis]) / 2.0);
        // A little inside of its widest place the bar is so much thicker, cut square to the flask.
        let radius: f64 = BAR[0] / 2.0;
        let inset: f64 = 0.3;
        let (rise, cos) = (12f64.to_radians().tan(), 12f64.to_radians().cos());
        let reach = (radius.powi(2) - (radius - inset).powi(2)).sqrt() / cos;
        for along in [-40.0, -20.0, 0.0, 20.0, 40.0] {
            for side in [-1.0, 1.0] {
                let at = [middle[0] + along, middle[1] + side * (radius - inset)];
                let off = joint.height_mm(at) - along * rise;
                assert!(off.abs() < reach, "{along} {side}: {off} of {reach}");
            }
        }
        let flat = pulled(&built, |_| 0.0);
        let led = pulled(&built, |at| joint.height_mm(at));
        assert!(led < flat / 100.0, "flat {flat}, led {led}");
        // Along the walls the halves of the flask meet at their level.
        let [x, y] = [given.flask.length, given.flask.width].map(|side| side.as_mm());
        for wall in [[0.0, y / 3.0], [x, y / 2.0], [x / 3.0, 0.0], [x / 2.0, y]] {
            assert_eq!(joint.height_mm(wall), 0.0);
        }
        let broken: Vec<_> = built.facts.iter().filter(|fact| is_broken(fact)).collect();
        assert!(broken.is_empty(), "{half:?}: {broken:?}");
    }
}

/// A gate that follows the joint is as thick below it as one on a level joint.
#[test]
fn gates_go_with_the_joint() {
    let built = by_rule(&bars(1, 12.0, Half::Cope));
    let joint = &built.joint.as_ref().unwrap().joint;
    let gate = piece(&built, &Piece::Gate(1));
    let mut furthest: f64 = 0.0;
    for point in &gate.mesh.points {
        let over = point[2] - joint.height_mm([point[0], point[1]]);
        furthest = furthest.max(over.abs());
    }
    assert!(furthest < 15.0, "{furthest}");
    let shared = built.cavity.volume.as_mm3() - built.castings[0].volume.as_mm3();
    assert!(shared > 0.0);
}

#[test]
fn every_casting_has_the_joint_of_the_first() {
    let mut given = bars(4, 12.0, Half::Drag);
    given.layout.between = mm(40.0);
    let built = by_rule(&given);
    assert!(built.off_by.abs() < 1e-9, "{}", built.off_by);
    let joint = &built.joint.as_ref().unwrap().joint;
    let corner = |number: usize| built.castings[number].mesh.bounds()[0];
    for number in 1..4 {
        for [x, y] in [[10.0, -1.0], [90.0, 25.0], [-2.0, 12.0], [50.0, 12.0]] {
            let of = |number: usize| {
                let [left, front, _] = corner(number);
                joint.height_mm([left + x, front + y])
            };
            assert!((of(0) - of(number)).abs() < 1e-9, "{number}: {x}, {y}");
        }
    }
    assert!(pulled(&built, |at| joint.height_mm(at)) < 0.001);
}

/// Along a bar at 75° the joint would have to rise 3.7 in 1.
#[test]
fn a_bar_too_steep_for_sand_is_told_with_its_place() {
    let mut given = bars(1, 75.0, Half::Drag);
    given
        .casting
        .mesh
        .points
        .iter_mut()
        .for_each(|point| point[2] *= 0.6);
    let error = rigging::mould::mould(&given, &Placement::default()).unwrap_err();
    assert!(matches!(error, MouldError::Parting { .. }), "{error}");
    assert!(error.to_string().contains("mm"), "{error}");
}

#[test]
fn a_plate_keeps_its_flat_joint() {
    let mut given = plates(2, [60.0, 60.0]);
    let flat = by_rule(&given);
    given.parting = Parting::AlongTheLine;
    let built = by_rule(&given);
    assert!(built.joint.is_none());
    assert_eq!(built.drag.mesh.points, flat.drag.mesh.points);
}
