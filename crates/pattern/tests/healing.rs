//! Parts as they are downloaded: overlapping solids, crossing skins, missing faces, cracks, each
//! built so that its volume is known.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod shapes;

use std::f64::consts::{PI, TAU};

use pattern::boolean::Body;
use pattern::faults::FaultKind;
use pattern::look::{Looked, Verdict, look};
use pattern::mended::Repair;
use pattern::mesh::Mesh;
use pattern::stl::write_stl;
use shapes::{ball, block, both, fine_cube, inside_out};

fn looked(mesh: &Mesh) -> Looked {
    look("part.stl", &write_stl(mesh), None).unwrap()
}

fn codes(looked: &Looked) -> Vec<&'static str> {
    looked.faults.iter().map(|fault| fault.code()).collect()
}

fn assert_volume(looked: &Looked, wanted: f64, within: f64) {
    let volume = looked.solid.volume_mm3;
    assert!(
        (volume / wanted - 1.0).abs() <= within,
        "{volume} instead of {wanted}: {:?}",
        looked.faults
    );
}

fn joined(looked: &Looked) -> (f64, f64) {
    let joined = looked.repairs.iter().find_map(|repair| match repair {
        Repair::CrossingsJoined { before, after } => Some((*before, *after)),
        _ => None,
    });
    joined.unwrap()
}

/// A wall that stands round the z axis from below to a rim whose height is up to the turn, closed
/// by a flat floor.
fn cup(radius: f64, sides: usize, rim: impl Fn(f64) -> f64) -> Mesh {
    let mut mesh = Mesh::default();
    for i in 0..sides {
        let turn = TAU * i as f64 / sides as f64;
        let [x, y] = [radius * turn.cos(), radius * turn.sin()];
        mesh.points.extend([[x, y, 0.0], [x, y, rim(turn)]]);
    }
    mesh.points.push([0.0; 3]);
    let floor = 2 * sides as u32;
    for i in 0..sides as u32 {
        let (a, b) = (2 * i, 2 * ((i + 1) % sides as u32));
        mesh.triangles
            .extend([[a, b, b + 1], [a, b + 1, a + 1], [b, a, floor]]);
    }
    mesh
}

/// Area of a regular outline.
fn regular(radius: f64, sides: usize) -> f64 {
    sides as f64 / 2.0 * radius * radius * (TAU / sides as f64).sin()
}

#[test]
fn overlapping_solids_are_joined_and_both_volumes_told() {
    let hub = block([0.0; 3], [40.0; 3]);
    let arm = block([30.0, 10.0, 10.0], [60.0, 20.0, 20.0]);
    let pin = block([80.0, 15.0, -5.0], [5.0, 10.0, 50.0]);
    let found = looked(&both(&both(&hub, &arm), &pin));
    assert_eq!(found.verdict, Verdict::Healed, "{:?}", found.faults);
    let apart = 64_000.0 + 24_000.0 + 2500.0;
    let (in_hub, in_arm) = (10.0 * 20.0 * 20.0, 5.0 * 10.0 * 20.0);
    assert_volume(&found, apart - in_hub - in_arm, 1e-9);
    let (before, after) = joined(&found);
    assert!((before - apart).abs() < 1e-6 && (after - found.solid.volume_mm3).abs() < 1e-6);
    assert_eq!((found.solid.bodies, found.solid.voids), (1, 0));
    assert!(Body::of(&found.mesh).is_ok());
}

#[test]
fn bars_of_one_section_that_share_a_length_are_joined() {
    let found = looked(&both(
        &block([0.0; 3], [40.0, 20.0, 20.0]),
        &block([25.0, 0.0, 0.0], [40.0, 20.0, 20.0]),
    ));
    assert_eq!(found.verdict, Verdict::Healed, "{:?}", found.faults);
    assert_volume(&found, 65.0 * 400.0, 1e-9);
}

#[test]
fn a_hollow_ball_run_through_by_a_bar_keeps_what_is_left_of_its_void() {
    let shell = both(&ball(30.0, 80, 0.0), &inside_out(&ball(20.0, 80, 0.0)));
    let found = looked(&both(&shell, &block([-2.0, -2.0, -25.0], [4.0, 4.0, 50.0])));
    assert_eq!(found.verdict, Verdict::Healed, "{:?}", found.faults);
    // The bar fills of the void a square prism of 4 x 4 mm, 40 mm long less its rounded ends.
    let alone = looked(&shell).solid.volume_mm3;
    let ends = 2.0 * 16.0 * (16.0 / 6.0) / (2.0 * 20.0);
    assert_volume(&found, alone + 16.0 * 40.0 - ends, 2e-4);
    assert!(codes(&found).contains(&"enclosed_void"));
}

#[test]
fn a_skin_that_crosses_itself_inside_out_is_refused_with_its_place() {
    // An outline like a bow tie, its second loop run the other way.
    let outline = [
        [0.0, 0.0],
        [30.0, 20.0],
        [50.0, 4.0],
        [50.0, 16.0],
        [30.0, 0.0],
        [0.0, 20.0],
    ];
    let mut mesh = Mesh::default();
    for z in [0.0, 20.0] {
        mesh.points.extend(outline.map(|[x, y]| [x, y, z]));
        mesh.points.push([25.0, 10.0, z]);
    }
    for i in 0..6 {
        let (a, b) = (i, (i + 1) % 6);
        mesh.triangles.extend([
            [a, b, b + 7],
            [a, b + 7, a + 7],
            [b, a, 6],
            [a + 7, b + 7, 13],
        ]);
    }
    let found = looked(&mesh);
    assert_eq!(found.verdict, Verdict::Refused, "{:?}", found.faults);
    assert!(codes(&found).contains(&"self_intersection"));
    assert!(found.faults.iter().any(|fault| fault.place().is_some()));
}

#[test]
fn an_assembly_of_many_bodies_is_not_joined() {
    let mut row = block([0.0; 3], [10.0; 3]);
    for i in 1..50 {
        row = both(
            &row,
            &block([8.0 * f64::from(i), f64::from(i % 2), 0.5], [10.0; 3]),
        );
    }
    let found = looked(&row);
    assert_eq!(found.verdict, Verdict::Refused);
    assert_eq!(found.mesh.triangles.len(), 600);
}

#[test]
fn a_hole_whose_neighbours_are_wound_the_wrong_way_is_closed() {
    let mut cube = fine_cube(100.0, 20);
    for facet in [206, 208, 210, 247, 249] {
        cube.triangles[facet].swap(1, 2);
    }
    cube.triangles.remove(208);
    cube.triangles.remove(207);
    let found = looked(&cube);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Healed, vec!["winding", "open_boundary"])
    );
    assert_volume(&found, 1e6, 1e-9);
}

#[test]
fn a_missing_face_is_closed_flat_and_said_aloud() {
    let mut open = block([0.0; 3], [40.0; 3]);
    open.triangles.drain(10..);
    let found = looked(&open);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Healed, vec!["missing_face", "open_boundary"])
    );
    assert_volume(&found, 64_000.0, 1e-9);
    assert_eq!(found.repairs, vec![Repair::FacesClosed { count: 1 }]);
    let FaultKind::MissingFace {
        area,
        least,
        most,
        place,
    } = found.faults[0].kind
    else {
        panic!("{:?}", found.faults);
    };
    assert!((area - 1600.0).abs() < 1e-9 && (least - most).abs() < 1e-6);
    assert_eq!(place, [40.0, 20.0, 20.0]);
}

/// The mean height of a wavy rim is that of its middle, and a skin stretched over a round opening
/// has the mean height of its rim.
#[test]
fn a_wavy_rim_is_closed_at_its_mean_height() {
    let wavy = cup(40.0, 120, |turn| {
        30.0 + 1.5 * (3.0 * turn).cos() + 0.8 * (7.0 * turn).sin()
    });
    let found = looked(&wavy);
    assert_eq!(found.verdict, Verdict::Healed, "{:?}", found.faults);
    assert_volume(&found, regular(40.0, 120) * 30.0, 1e-3);
    let told = found.faults.iter().find_map(|fault| match fault.kind {
        FaultKind::MissingFace { least, most, .. } => Some((least, most)),
        _ => None,
    });
    let (least, most) = told.unwrap();
    let volume = found.solid.volume_mm3;
    assert!(least <= volume * (1.0 + 1e-9) && volume <= most * (1.0 + 1e-9));
    assert!(most - least <= 0.025 * volume && least < most);
}

#[test]
fn a_rim_that_is_far_from_flat_is_refused() {
    let bent = cup(40.0, 120, |turn| 30.0 + 14.0 * (2.0 * turn).cos());
    let found = looked(&bent);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Refused, vec!["open_boundary"])
    );
}

#[test]
fn a_crack_round_a_corner_is_closed_whatever_its_shape() {
    let side = 100.0;
    let mut cube = fine_cube(side, 100);
    let is_far = |&triangle: &[u32; 3], points: &[[f64; 3]]| {
        let touches = |&point: &u32| points[point as usize].iter().all(|&x| x > side - 0.5);
        !triangle.iter().any(touches)
    };
    let before = cube.triangles.len();
    cube.triangles
        .retain(|triangle| is_far(triangle, &cube.points));
    assert!(cube.triangles.len() < before);
    let found = looked(&cube);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Healed, vec!["open_boundary"])
    );
    assert_volume(&found, side.powi(3), 2e-6);
}

#[test]
fn flipped_doubled_and_overlapping_at_once_are_all_mended() {
    let mut one = fine_cube(40.0, 6);
    (0..one.triangles.len())
        .step_by(9)
        .for_each(|facet| one.triangles[facet].swap(1, 2));
    one.triangles.extend_from_within(10..14);
    let found = looked(&both(
        &one,
        &inside_out(&block([33.0, 7.0, 9.0], [30.0; 3])),
    ));
    assert_eq!(found.verdict, Verdict::Healed, "{:?}", found.faults);
    assert_volume(&found, 64_000.0 + 27_000.0 - 7.0 * 30.0 * 30.0, 1e-9);
    for code in [
        "winding",
        "inverted",
        "duplicate_facets",
        "self_intersection",
    ] {
        assert!(
            codes(&found).contains(&code),
            "{code} among {:?}",
            codes(&found)
        );
    }
}

/// Two round bars of equal radius r that cross square share the body of Steinmetz, 16 r³ / 3.
#[test]
fn crossed_round_bars_share_the_body_of_steinmetz() {
    let (radius, length, sides) = (10.0, 80.0, 240);
    let mut upright = cup(radius, sides, |_| length);
    let middle = upright.points.len() as u32;
    upright.points.push([0.0, 0.0, length]);
    let rim = |i: usize| (2 * (i % sides) + 1) as u32;
    let top = (0..sides).map(|i| [rim(i), rim(i + 1), middle]);
    upright.triangles.extend(top);
    let mut lying = upright.clone();
    for [x, y, z] in &mut lying.points {
        (*x, *y, *z) = (*z - 40.0, *x, *y + 40.0);
    }
    let found = looked(&both(&upright, &lying));
    assert_eq!(found.verdict, Verdict::Healed, "{:?}", found.faults);
    let each = PI * radius * radius * length;
    assert_volume(&found, 2.0 * each - 16.0 / 3.0 * radius.powi(3), 5e-4);
    let (before, after) = joined(&found);
    assert!((before / (2.0 * each) - 1.0).abs() < 5e-4);
    assert!(((before - after) / (16.0 / 3.0 * radius.powi(3)) - 1.0).abs() < 1e-3);
}
