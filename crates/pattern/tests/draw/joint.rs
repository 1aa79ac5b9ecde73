//! Parting lines and joints of parts whose joint is plain to see, and whether the halves part.

use pattern::boolean::Body;
use pattern::draw::blocks::blocks;
use pattern::draw::columns::{Columns, Plot};
use pattern::draw::joint::{FlaskBox, Joint, JointError, STEEPEST, joint};
use pattern::draw::parting::{PartingLine, parting_line};
use pattern::draw::{DrawError, DrawSettings};
use pattern::mesh::Mesh;

use crate::parts::{ball, bar, block, cone, less, part, ring, sound_examples, turned};

const Z: [f64; 3] = [0.0, 0.0, 1.0];

fn line(mesh: &Mesh) -> PartingLine {
    parting_line(mesh, Z, &DrawSettings::suiting(mesh)).unwrap()
}

fn flask(mesh: &Mesh, sand: f64) -> FlaskBox {
    let [low, high] = mesh.bounds();
    [low.map(|x| x - sand), high.map(|x| x + sand)]
}

fn joined(mesh: &Mesh) -> Joint {
    let settings = DrawSettings {
        columns: 160,
        ..DrawSettings::suiting(mesh)
    };
    joint(mesh, Z, flask(mesh, 40.0), STEEPEST, &settings).unwrap()
}

fn volume(mesh: &Mesh) -> f64 {
    Body::of(mesh).unwrap().volume_mm3()
}

/// Cope, drag and part fill the flask within a thousandth; no more than that of the sand of the
/// cope hangs under metal and no more of the drag's lies over it.
fn assert_parts(mesh: &Mesh, joint: &Joint) {
    let [low, high] = joint.flask;
    let whole: f64 = (0..3).map(|axis| high[axis] - low[axis]).product();
    let [drag, cope] = blocks(joint);
    assert!((volume(&drag) + volume(&cope) - whole).abs() < 1e-9 * whole);
    let body = Body::of(mesh).unwrap();
    let drag = Body::of(&drag).unwrap().without(&body).unwrap();
    let cope = Body::of(&cope).unwrap().without(&body).unwrap();
    let sum = drag.volume_mm3() + cope.volume_mm3() + body.volume_mm3();
    assert!((sum - whole).abs() <= 1e-3 * whole, "{sum} of {whole}");
    let plot = Plot::of_part(mesh, 211);
    let of_part = Columns::regular(mesh, plot);
    let (of_drag, of_cope) = (
        Columns::regular(&drag.mesh(), plot),
        Columns::regular(&cope.mesh(), plot),
    );
    let mut held = 0.0;
    for column in 0..of_part.len() {
        let metal = of_part.spans(column);
        let (Some(first), Some(last)) = (metal.first(), metal.last()) else {
            continue;
        };
        let in_cope = of_cope
            .spans(column)
            .iter()
            .map(|sand| last.to_mm.min(sand.to_mm) - sand.from_mm);
        let in_drag = of_drag
            .spans(column)
            .iter()
            .map(|sand| sand.to_mm - first.from_mm.max(sand.from_mm));
        held += in_cope.chain(in_drag).map(|mm| mm.max(0.0)).sum::<f64>();
    }
    let held = held * plot.size_mm * plot.size_mm;
    assert!(held <= 1e-3 * whole, "{held} of {whole} cannot be lifted");
}

#[test]
fn a_flat_ring_parts_flat_at_mid_height() {
    let mesh = part(&[ring([0.0, 0.0, 7.0], Z, 90.0, 20.0)]);
    let found = line(&mesh);
    assert!(found.is_flat(), "{:?}", found.heights_mm);
    assert!((found.level.at_mm - 7.0).abs() < 0.02, "{:?}", found.level);
    assert_eq!(found.level.flat_share, 1.0);
    assert_eq!(found.loops.len(), 2);
    // Outer and inner circle, cut into straight pieces by the builder of the ring.
    for (points, radius) in found.loops.iter().zip([45.0, 25.0]) {
        for [x, y, _] in points {
            assert!((x.hypot(*y) - radius).abs() < 0.1, "{x} {y}");
        }
    }
    let joint = joined(&mesh);
    assert_eq!(
        (
            joint.heights.xs_mm.len(),
            joint.heights.ys_mm.len(),
            joint.steepest
        ),
        (2, 2, 0.0)
    );
    assert_parts(&mesh, &joint);
}

#[test]
fn a_ball_parts_flat_at_its_equator() {
    let mesh = part(&[ball([0.0, 0.0, 3.0], 80.0)]);
    for mesh in [turned(&mesh, 0, 0.0), turned(&mesh, 0, 37.0)] {
        let [low, high] = mesh.bounds();
        let found = line(&mesh);
        assert!(found.is_flat(), "{:?}", found.heights_mm);
        let equator = (low[2] + high[2]) / 2.0;
        assert!(
            (found.level.at_mm - equator).abs() < 1.0,
            "{:?} {equator}",
            found.level
        );
        assert_parts(&mesh, &joined(&mesh));
    }
}

#[test]
fn a_flat_back_is_the_joint() {
    let mesh = part(&[
        block([0.0; 3], [100.0, 60.0, 10.0]),
        cone([0.0, 0.0, 10.0], Z, 40.0, 36.0, 20.0),
    ]);
    let found = line(&mesh);
    assert!(
        found.is_flat() && found.level.at_mm == 0.0,
        "{:?}",
        found.level
    );
    assert_parts(&mesh, &joined(&mesh));
}

#[test]
fn a_leaning_bar_has_a_joint_that_climbs_with_it() {
    let mesh = part(&[bar([-60.0, 0.0, -30.0], [2.0, 0.0, 1.0], 20.0, 134.164)]);
    let found = line(&mesh);
    assert!(!found.is_flat());
    // Along the bar the line runs on its axis, where the bar is widest, give or take the height at
    // which the upright cut, an ellipse, is narrower by one play.
    let play_mm = DrawSettings::suiting(&mesh).play_mm;
    let tall_mm = 10.0 * 5f64.sqrt() / 2.0;
    let give_mm = tall_mm * (1.0 - (1.0 - play_mm / 10.0).powi(2)).sqrt();
    for [x, y, z] in found
        .loops
        .iter()
        .flatten()
        .filter(|point| point[0].abs() < 40.0)
    {
        assert!((y.abs() - 10.0).abs() < 0.05, "{y}");
        assert!((z - x / 2.0).abs() < give_mm + 0.3, "{z} at {x}");
    }
    let joint = joined(&mesh);
    assert!(
        joint.steepest > 0.4 && joint.steepest <= STEEPEST * 1.001,
        "{}",
        joint.steepest
    );
    assert_parts(&mesh, &joint);
}

#[test]
fn a_bracket_on_edge_has_a_joint_like_a_roof() {
    let flat = part(&[
        block([30.0, 0.0, 0.0], [60.0, 40.0, 10.0]),
        block([5.0, 0.0, 0.0], [10.0, 40.0, 60.0]),
    ]);
    let mesh = turned(&flat, 1, 135.0);
    let found = line(&mesh);
    assert!(
        found.heights_mm[1] - found.heights_mm[0] > 20.0,
        "{:?}",
        found.heights_mm
    );
    let joint = joined(&mesh);
    assert!(joint.steepest > 0.8, "{}", joint.steepest);
    assert_parts(&mesh, &joint);
}

#[test]
fn a_joint_steps_over_a_riser_as_thick_as_it_is_high_and_not_over_a_thin_one() {
    let step = |riser: f64| {
        part(&[
            block([-40.0, 0.0, 0.0], [80.0, 40.0, 10.0]),
            block([0.0, 0.0, 0.0], [riser, 40.0, 50.0]),
            block([40.0, 0.0, 40.0], [80.0, 40.0, 10.0]),
        ])
    };
    let thick = step(30.0);
    assert!(!line(&thick).is_flat());
    let joint_of_thick = joined(&thick);
    assert!(
        joint_of_thick.steepest <= STEEPEST * 1.001,
        "{}",
        joint_of_thick.steepest
    );
    assert_parts(&thick, &joint_of_thick);
    let thin = step(6.0);
    let settings = DrawSettings {
        columns: 160,
        ..DrawSettings::suiting(&thin)
    };
    let refused = joint(&thin, Z, flask(&thin, 40.0), STEEPEST, &settings);
    let Err(JointError::TooSteep { at_mm, rise_mm, .. }) = refused else {
        panic!("{refused:?}");
    };
    // 30 mm to climb; over the riser of 6 mm the sand climbs 10.4.
    assert!(at_mm[0].abs() < 20.0, "{at_mm:?}");
    assert!(rise_mm > 10.0 && rise_mm < 25.0, "{rise_mm}");
}

#[test]
fn the_sand_under_a_bell_stays_with_the_drag() {
    let bell = part(&[
        cone([0.0; 3], Z, 80.0, 70.0, 50.0),
        less(cone([0.0, 0.0, -1.0], Z, 64.0, 50.0, 41.0)),
    ]);
    let joint = joined(&bell);
    assert!(line(&bell).is_flat());
    assert_parts(&bell, &joint);
    let lid = turned(&bell, 0, 180.0);
    assert_parts(&lid, &joined(&lid));
}

#[test]
fn what_has_no_joint_is_refused() {
    let mesh = part(&[ball([0.0; 3], 20.0)]);
    let settings = DrawSettings::suiting(&mesh);
    let small = [[-30.0; 3], [30.0, 30.0, 9.0]];
    let refused = joint(&mesh, Z, small, STEEPEST, &settings);
    assert!(
        matches!(refused, Err(JointError::OutOfFlask { .. })),
        "{refused:?}"
    );
    let nowhere = joint(&mesh, [0.0; 3], flask(&mesh, 9.0), STEEPEST, &settings);
    assert_eq!(
        nowhere,
        Err(JointError::Draw(DrawError::NoDirection { up: [0.0; 3] }))
    );
}

#[test]
fn every_example_has_a_joint_that_fills_its_flask_or_a_place_where_it_fails() {
    let mut found = 0;
    for (name, mesh) in sound_examples() {
        let settings = DrawSettings {
            columns: 100,
            ..DrawSettings::suiting(&mesh)
        };
        let flask = flask(&mesh, 60.0);
        let [low, high] = flask;
        match joint(&mesh, Z, flask, STEEPEST, &settings) {
            Ok(joint) => {
                let whole: f64 = (0..3).map(|axis| high[axis] - low[axis]).product();
                let [below, above] = blocks(&joint);
                let sum = volume(&below) + volume(&above);
                assert!((sum - whole).abs() < 1e-9 * whole, "{name}");
                assert!(
                    joint.steepest <= 1.001 * STEEPEST,
                    "{name}: {}",
                    joint.steepest
                );
                found += 1;
            }
            Err(JointError::TooSteep { at_mm, rise_mm, .. }) => {
                let is_within =
                    (0..3).all(|axis| low[axis] <= at_mm[axis] && at_mm[axis] <= high[axis]);
                assert!(is_within && rise_mm > 0.0, "{name}: {at_mm:?}");
            }
            Err(error) => panic!("{name}: {error}"),
        }
    }
    assert!(found >= 6, "only {found} have a joint along z");
}
