//! Draught, against the formulas of the prismatoid and of the foot of a cone.

use std::f64::consts::PI;

use measure::length::Length;
use pattern::crossings;
use pattern::draft::{Side, Skin, by_skin, wanted};
use pattern::made::taper::{Draught, Draws, TaperError, tapered, tapered_about};
use pattern::mesh::{Edges, Mesh};
use pattern::tree::Tree;

use crate::solids::{away, block, close, cylinder, example, mesh, volume};

const TWO: Draught = Draught::Degrees(2.0);

fn tan_two() -> f64 {
    2.0_f64.to_radians().tan()
}

/// Prismatoid: (h / 6) (A_top + 4 A_middle + A_bottom).
fn prismatoid(height: f64, area: impl Fn(f64) -> f64) -> f64 {
    height / 6.0 * (area(0.0) + 4.0 * area(height / 2.0) + area(height))
}

/// Foot of a cone: (π h / 3) (R² + R r + r²).
fn foot_of_cone(height: f64, low: f64, high: f64) -> f64 {
    PI * height / 3.0 * (low * low + low * high + high * high)
}

#[test]
fn a_box_becomes_a_prismatoid_about_its_joint() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 50.0])]);
    let t = tan_two();
    for joint in [0.0, 15.0, 25.0, 50.0] {
        let deepest = f64::max(joint, 50.0 - joint);
        let area = |depth: f64| {
            let out = 2.0 * (deepest - depth) * t;
            (60.0 + out) * (40.0 + out)
        };
        let wanted = prismatoid(joint, area) + prismatoid(50.0 - joint, area);
        let made = tapered(&part, joint, TWO).unwrap();
        close(volume(&made.mesh), wanted, 1e-9);
        close(made.after_mm3, wanted, 1e-9);
        close(made.before_mm3, 120_000.0, 1e-9);
        assert!(
            made.walls
                .iter()
                .all(|wall| (wall.has_degrees - 2.0).abs() < 1e-9)
        );
    }
}

#[test]
fn a_round_becomes_the_foot_of_a_cone() {
    let part = mesh(&[cylinder([0.0; 3], 50.0, 30.0)]);
    let made = tapered(&part, 0.0, TWO).unwrap();
    // Polygons of the true area keep to the formula but for the mitre of their corners.
    close(
        volume(&made.mesh),
        foot_of_cone(30.0, 25.0 + 30.0 * tan_two(), 25.0),
        2e-4,
    );
    let made = tapered(&part, 20.0, TWO).unwrap();
    let at = |depth: f64| 25.0 + (20.0 - depth) * tan_two();
    let wanted = foot_of_cone(20.0, at(0.0), at(20.0)) + foot_of_cone(10.0, at(0.0), at(10.0));
    close(volume(&made.mesh), wanted, 2e-4);
}

#[test]
fn a_pocket_narrows_to_its_floor_wherever_the_joint_lies() {
    let part = mesh(&[
        block([0.0; 3], [80.0, 60.0, 30.0]),
        away(block([0.0, 0.0, 10.0], [40.0, 30.0, 30.0])),
    ]);
    let outside =
        |z: f64| (80.0 + 2.0 * (30.0 - z) * tan_two()) * (60.0 + 2.0 * (30.0 - z) * tan_two());
    let pocket =
        |z: f64| (40.0 - 2.0 * (20.0 - z) * tan_two()) * (30.0 - 2.0 * (20.0 - z) * tan_two());
    let wanted = prismatoid(30.0, outside) - prismatoid(20.0, pocket);
    let made = tapered(&part, 0.0, TWO).unwrap();
    close(volume(&made.mesh), wanted, 1e-9);
    let pockets = made.walls.iter().filter(|wall| wall.draws == Draws::Up);
    assert!(pockets.clone().count() == 4 && pockets.clone().all(|wall| wall.side == Side::Inside));
    // With the joint on top the same pocket still narrows downward.
    let outside = |z: f64| (80.0 + 2.0 * z * tan_two()) * (60.0 + 2.0 * z * tan_two());
    let wanted = prismatoid(30.0, outside) - prismatoid(20.0, pocket);
    close(
        volume(&tapered(&part, 30.0, TWO).unwrap().mesh),
        wanted,
        1e-9,
    );
}

#[test]
fn a_through_hole_is_narrowest_at_the_joint() {
    let part = mesh(&[
        block([0.0; 3], [60.0, 60.0, 40.0]),
        away(cylinder([0.0, 0.0, -1.0], 30.0, 42.0)),
    ]);
    let made = tapered(&part, 20.0, TWO).unwrap();
    let hole = 2.0 * foot_of_cone(20.0, 15.0 - 20.0 * tan_two(), 15.0);
    let side = |h: f64| (60.0 + 2.0 * (20.0 - h) * tan_two()).powi(2);
    close(
        volume(&made.mesh),
        2.0 * prismatoid(20.0, side) - hole,
        2e-4,
    );
}

#[test]
fn a_boss_on_a_plate_spreads_over_the_plate() {
    let part = mesh(&[
        block([0.0; 3], [80.0, 80.0, 10.0]),
        cylinder([0.0, 0.0, 10.0], 30.0, 25.0),
    ]);
    let made = tapered(&part, 0.0, TWO).unwrap();
    let side = |z: f64| (80.0 + 2.0 * (10.0 - z) * tan_two()).powi(2);
    let boss = foot_of_cone(25.0, 15.0 + 25.0 * tan_two(), 15.0);
    close(volume(&made.mesh), prismatoid(10.0, side) + boss, 2e-4);
}

#[test]
fn about_a_sloping_joint_each_wall_is_thickest_along_it() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 20.0])]);
    let slope = |[x, _]: [f64; 2]| 10.0 + 0.2 * x;
    let made = tapered_about(&part, &slope, TWO).unwrap();
    // Every wall reaches 16 mm from the joint, and moves out by (16 - |z - h|) tan 2 degrees. Over
    // a column of 20 mm parted at h this adds 16 x 20 - (h^2 + (20 - h)^2) / 2, mm2.
    let column = |h: f64| (320.0 - (h * h + (20.0 - h).powi(2)) / 2.0) * tan_two();
    let steps = 6000;
    let along = |i: usize| -30.0 + 60.0 * (i as f64 + 0.5) / steps as f64;
    let long: f64 = (0..steps)
        .map(|i| column(slope([along(i), 0.0])))
        .sum::<f64>()
        / steps as f64;
    let walls = 2.0 * 60.0 * long + 40.0 * (column(4.0) + column(16.0));
    // The corners add the square of what the walls move out by, some 0.6 per cent of the whole.
    let added = volume(&made.mesh) - 48_000.0;
    assert!(added > walls && added < 1.012 * walls, "{added} {walls}");
    close(made.walls[0].depth_mm, 16.0, 1e-9);
}

#[test]
fn draught_by_depth_asks_the_rule() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 50.0])]);
    let depth = Length::from_mm(50.0);
    let draft = wanted(depth, Skin::Printed, Side::Outside).unwrap().as_mm();
    let area = |z: f64| {
        let out = 2.0 * draft * (1.0 - z / 50.0);
        (60.0 + out) * (40.0 + out)
    };
    let made = tapered(&part, 0.0, Draught::ByDepth(Skin::Printed)).unwrap();
    close(volume(&made.mesh), prismatoid(50.0, area), 1e-9);
    // On a shallow wall the angle of the table, not the length that holds from an inch on.
    let flat = mesh(&[block([0.0; 3], [60.0, 40.0, 8.0])]);
    let made = tapered(&flat, 0.0, Draught::ByDepth(Skin::Wood)).unwrap();
    let share = by_skin(Length::from_mm(8.0), Skin::Wood, Side::Outside)
        .unwrap()
        .value;
    close(made.walls[0].has_degrees.to_radians().tan(), share, 1e-9);
}

#[test]
fn what_has_its_draught_and_what_is_undercut_stay() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 50.0])]);
    let once = tapered(&part, 20.0, TWO).unwrap();
    let twice = tapered(&once.mesh, 20.0, Draught::Degrees(1.0)).unwrap();
    close(volume(&twice.mesh), volume(&once.mesh), 1e-12);
    // A groove round a bar draws neither way.
    let grooved = mesh(&[
        cylinder([0.0; 3], 60.0, 10.0),
        cylinder([0.0, 0.0, 10.0], 30.0, 10.0),
        cylinder([0.0, 0.0, 20.0], 60.0, 10.0),
    ]);
    let made = tapered(&grooved, 0.0, TWO).unwrap();
    let held = made
        .walls
        .iter()
        .filter(|wall| wall.draws == Draws::Neither);
    close(held.map(|wall| wall.area_mm2).sum(), PI * 30.0 * 10.0, 1e-2);
}

#[test]
fn walls_without_room_and_bad_angles_are_told() {
    // Two ribs 1 mm apart and 40 mm high: each would grow by 1.4 mm at its foot.
    let comb = mesh(&[
        block([0.0; 3], [60.0, 40.0, 5.0]),
        block([-3.5, 0.0, 5.0], [6.0, 40.0, 40.0]),
        block([3.5, 0.0, 5.0], [6.0, 40.0, 40.0]),
    ]);
    let made = tapered(&comb, 0.0, TWO).unwrap();
    assert!(!made.tight.is_empty());
    for tight in &made.tight {
        assert!(tight.place_mm[0].abs() < 2.0, "{tight:?}");
        close(tight.gap_mm, 1.0, 1e-9);
        // Two thirds of the gap for both.
        assert!(
            tight.has_degrees < 1.0 / 3.0 / 38.0 * 180.0 / PI,
            "{tight:?}"
        );
    }
    for degrees in [0.0, -1.0, 11.0, f64::NAN] {
        let error = tapered(&comb, 0.0, Draught::Degrees(degrees));
        assert!(matches!(error, Err(TaperError::Angle { .. })));
    }
}

/// Area of the sides of a solid that lean less than an angle, and that of all its sides, mm2.
fn sides_below(mesh: &Mesh, degrees: f64) -> [f64; 2] {
    let mut areas = [0.0; 2];
    for triangle in &mesh.triangles {
        let [a, b, c] = triangle.map(|point| mesh.points[point as usize]);
        let (p, q) = (
            [0, 1, 2].map(|i| b[i] - a[i]),
            [0, 1, 2].map(|i| c[i] - a[i]),
        );
        let normal = [0, 1, 2].map(|i| {
            let (j, k) = ((i + 1) % 3, (i + 2) % 3);
            p[j] * q[k] - p[k] * q[j]
        });
        let [level, upright] = [normal[0].hypot(normal[1]), normal[2].abs()];
        if upright < level {
            let area = level.hypot(upright) / 2.0;
            areas[1] += area;
            areas[0] += if upright.atan2(level).to_degrees() < degrees {
                area
            } else {
                0.0
            };
        }
    }
    areas
}

#[test]
fn a_boss_at_the_edge_of_its_plate_goes_on_down_beside_it() {
    let t = tan_two();
    for inset in [0.0, 0.3] {
        let part = mesh(&[
            block([0.0; 3], [80.0, 60.0, 10.0]),
            block([30.0 - inset, 0.0, 10.0], [20.0, 20.0, 20.0]),
        ]);
        let made = tapered(&part, 0.0, TWO).unwrap();
        let plate = |z: f64| (80.0 + 2.0 * (10.0 - z) * t) * (60.0 + 2.0 * (10.0 - z) * t);
        let side = |z: f64| 20.0 + 2.0 * (30.0 - z) * t;
        // Beside the plate, which goes out by (10 - z) t itself.
        let beside = |z: f64| (20.0 * t - inset) * side(z);
        let wanted = prismatoid(10.0, plate)
            + prismatoid(10.0, beside)
            + prismatoid(20.0, |up| side(10.0 + up).powi(2));
        close(volume(&made.mesh), wanted, 1e-6);
        assert!(made.tight.is_empty());
        let [below, all] = sides_below(&made.mesh, 1.95);
        assert!(below < 1e-4 * all, "{below} of {all} mm2");
    }
}

#[test]
fn every_wall_of_plain_solids_reaches_its_angle() {
    let solids = [
        mesh(&[block([0.0; 3], [60.0, 40.0, 50.0])]),
        mesh(&[cylinder([0.0; 3], 50.0, 30.0)]),
        mesh(&[
            block([0.0; 3], [60.0, 60.0, 40.0]),
            away(cylinder([0.0, 0.0, -1.0], 30.0, 42.0)),
        ]),
        mesh(&[
            block([0.0; 3], [80.0, 80.0, 10.0]),
            cylinder([0.0, 0.0, 10.0], 30.0, 25.0),
            cylinder([-35.0, 30.0, 10.0], 8.0, 15.0),
        ]),
    ];
    for (number, part) in solids.iter().enumerate() {
        for joint in [0.0, 5.0] {
            let made = tapered(part, joint, TWO).unwrap();
            let [below, all] = sides_below(&made.mesh, 1.95);
            assert!(below < 1e-3 * all, "solid {number}: {below} of {all} mm2");
        }
    }
}

#[test]
fn meshes_of_files_are_tapered_and_stay_sound() {
    let parts = [
        ("flanged_ring.stl", 0.0),
        ("pump_housing.stl", 0.0),
        ("grooved_pulley_inches.stl", 0.5),
        ("angle_bracket.stl", 0.5),
    ];
    for (name, share) in parts {
        let part = example(name);
        let [low, high] = part.bounds();
        let joint = low[2] + share * (high[2] - low[2]);
        let made = tapered(&part, joint, Draught::Degrees(1.0)).unwrap();
        assert!(made.after_mm3 > made.before_mm3, "{name}");
        // Closed, nowhere through itself, and the same when it is read again.
        assert!(Edges::of(&made.mesh).open().is_empty(), "{name}");
        let crossing = crossings::find(&made.mesh, &Tree::over(&made.mesh));
        assert!(
            crossing.facets.is_empty() && !crossing.was_given_up,
            "{name}"
        );
        close(volume(&made.mesh), made.after_mm3, 1e-6);
    }
}
