//! Meshes built whole, then broken: what is mended, what is asked, what is turned away.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod shapes;

use pattern::look::{Looked, Verdict, look};
use pattern::mended::Repair;
use pattern::mesh::Mesh;
use pattern::stl::write_stl;
use pattern::unit::{Unit, UnitBasis};
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
        "{volume} instead of {wanted}"
    );
}

#[test]
fn a_sound_ball_is_accepted_and_measured() {
    let found = looked(&ball(50.0, 200, 0.0));
    assert_eq!((found.verdict, codes(&found).len()), (Verdict::Accepted, 0));
    let whole = 4.0 / 3.0 * std::f64::consts::PI * 50.0f64.powi(3);
    assert_volume(&found, whole, 2e-3);
    assert!(found.solid.volume_mm3 < whole);
    assert!(found.solid.centre_mm.iter().all(|c| c.abs() < 1e-4));
}

#[test]
fn a_cube_with_one_facet_in_twenty_turned_is_a_thousand_cubic_centimetres() {
    let mut cube = fine_cube(100.0, 10);
    for facet in (0..cube.triangles.len()).step_by(20) {
        cube.triangles[facet].swap(1, 2);
    }
    let found = looked(&cube);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Healed, vec!["winding"])
    );
    assert_volume(&found, 1e6, 1e-3);
    assert_eq!(found.repairs, vec![Repair::FacetsTurned { count: 60 }]);
}

#[test]
fn a_part_wound_inside_out_is_turned() {
    let found = looked(&inside_out(&ball(30.0, 40, 0.1)));
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Healed, vec!["inverted"])
    );
    assert!(found.solid.volume_mm3 > 0.0);
}

#[test]
fn a_shell_wound_inward_within_metal_is_a_void_and_said_so() {
    let outer = block([0.0; 3], [60.0; 3]);
    let inner = inside_out(&block([20.0; 3], [10.0; 3]));
    let found = looked(&both(&outer, &inner));
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Accepted, vec!["enclosed_void"])
    );
    assert_eq!((found.solid.bodies, found.solid.voids), (1, 1));
    assert_volume(&found, 216_000.0 - 1000.0, 1e-9);
    let mirrored = looked(&inside_out(&both(&outer, &inner)));
    assert_volume(&mirrored, 216_000.0 - 1000.0, 1e-9);
    assert_eq!(mirrored.verdict, Verdict::Healed);
}

#[test]
fn a_body_within_a_body_is_not_quietly_counted_twice() {
    let found = looked(&both(
        &block([0.0; 3], [60.0; 3]),
        &block([20.0; 3], [30.0; 3]),
    ));
    assert!(matches!(found.verdict, Verdict::Ask | Verdict::Refused));
    assert!(codes(&found).contains(&"multi_body"));
    let flush = both(
        &block([0.0; 3], [60.0; 3]),
        &block([0.0; 3], [60.0, 60.0, 30.0]),
    );
    assert!(matches!(
        looked(&flush).verdict,
        Verdict::Ask | Verdict::Refused
    ));
}

#[test]
fn bodies_apart_are_counted_and_bodies_that_overlap_are_joined() {
    let apart = both(
        &block([0.0; 3], [40.0; 3]),
        &block([50.0, 0.0, 0.0], [40.0; 3]),
    );
    let found = looked(&apart);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Accepted, vec!["multi_body"])
    );
    assert_volume(&found, 128_000.0, 1e-9);
    let overlapping = both(
        &block([0.0; 3], [40.0; 3]),
        &block([25.0, 11.0, 13.0], [40.0; 3]),
    );
    let found = looked(&overlapping);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Healed, vec!["self_intersection"])
    );
    assert_volume(&found, 128_000.0 - 15.0 * 29.0 * 27.0, 1e-9);
}

#[test]
fn double_sided_facets_are_kept_once() {
    let ball = ball(30.0, 40, 0.1);
    let found = looked(&both(&ball, &inside_out(&ball)));
    assert_eq!(found.verdict, Verdict::Healed);
    assert!(codes(&found).contains(&"duplicate_facets"));
    let alone = looked(&ball).solid.volume_mm3;
    assert_volume(&found, alone, 1e-9);
}

#[test]
fn a_wall_of_no_thickness_between_two_blocks_goes() {
    let stacked = both(
        &block([0.0; 3], [40.0; 3]),
        &block([0.0, 0.0, 40.0], [40.0; 3]),
    );
    let found = looked(&stacked);
    assert!(matches!(found.verdict, Verdict::Healed | Verdict::Accepted));
    assert_volume(&found, 128_000.0, 1e-9);
    assert!(!codes(&found).is_empty());
}

#[test]
fn a_small_hole_is_closed_and_a_bent_one_refused_with_its_place() {
    let mut cube = fine_cube(100.0, 20);
    cube.triangles.remove(7);
    let found = looked(&cube);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Healed, vec!["open_boundary"])
    );
    assert_volume(&found, 1e6, 1e-9);
    let mut block = block([0.0; 3], [40.0; 3]);
    block.triangles.drain(4..6);
    block.triangles.drain(8..);
    let found = looked(&block);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Refused, vec!["open_boundary"])
    );
    let place = found.faults[0].place().unwrap();
    assert!((place[0] - 80.0 / 3.0).abs() < 1e-9 && (place[1] - 40.0 / 3.0).abs() < 1e-9);
}

#[test]
fn a_plate_without_thickness_and_a_flat_pillow_are_refused() {
    let sheet = Mesh {
        points: vec![
            [0.0; 3],
            [100.0, 0.0, 0.0],
            [100.0, 100.0, 0.0],
            [0.0, 100.0, 0.0],
        ],
        triangles: vec![[0, 1, 2], [0, 2, 3]],
    };
    assert_eq!(looked(&sheet).verdict, Verdict::Refused);
    assert_eq!(
        looked(&both(&sheet, &inside_out(&sheet))).verdict,
        Verdict::Refused
    );
    let foil = looked(&block([0.0; 3], [100.0, 100.0, 0.005]));
    assert_eq!(
        (foil.verdict, codes(&foil)),
        (Verdict::Refused, vec!["no_volume"])
    );
}

#[test]
fn gaps_of_a_hair_are_joined_and_slits_are_zipped() {
    let mut cube = fine_cube(100.0, 4);
    for (index, point) in cube.points.iter_mut().enumerate() {
        point[index % 3] += 2e-4 * ((index * 7) % 3) as f64;
    }
    let found = looked(&cube);
    assert_eq!(found.verdict, Verdict::Healed, "{:?}", found.faults);
    assert_volume(&found, 1e6, 1e-4);
    let mut slit = block([0.0; 3], [40.0; 3]);
    let [a, b, c] = slit.triangles[0];
    slit.points
        .push([0, 1, 2].map(|i| (slit.points[a as usize][i] + slit.points[b as usize][i]) / 2.0));
    slit.triangles[0] = [a, 8, c];
    slit.triangles.push([8, b, c]);
    let found = looked(&slit);
    assert_eq!(
        (found.verdict, codes(&found)),
        (Verdict::Healed, vec!["open_boundary"])
    );
    assert_volume(&found, 64_000.0, 1e-9);
}

#[test]
fn needles_do_no_harm() {
    let mut cube = block([0.0; 3], [40.0; 3]);
    let [a, b, c] = cube.triangles[0];
    cube.points
        .push([0, 1, 2].map(|i| (cube.points[a as usize][i] + cube.points[b as usize][i]) / 2.0));
    cube.triangles[0] = [a, 8, c];
    cube.triangles.extend([[8, b, c], [a, b, 8]]);
    cube.triangles.push([b, b, c]);
    let found = looked(&cube);
    assert_eq!(found.verdict, Verdict::Healed, "{:?}", found.faults);
    assert_eq!(codes(&found)[0], "degenerate_facets");
    assert_volume(&found, 64_000.0, 1e-9);
    assert_eq!(found.mesh.triangles.len(), 14);
}

#[test]
fn a_fin_on_an_edge_is_refused() {
    let mut cube = block([0.0; 3], [40.0; 3]);
    cube.points.push([-20.0, -20.0, 20.0]);
    cube.triangles.push([0, 4, 8]);
    let found = looked(&cube);
    assert_eq!(found.verdict, Verdict::Refused);
    assert!(codes(&found).contains(&"non_manifold"));
}

#[test]
fn a_one_sided_band_is_refused() {
    let steps = 12;
    let mut band = Mesh::default();
    for i in 0..steps {
        let turn = std::f64::consts::TAU * i as f64 / steps as f64;
        let (tilt, away) = (turn / 2.0, |r: f64| [r * turn.cos(), r * turn.sin()]);
        for side in [-10.0, 10.0] {
            let [x, y] = away(50.0 + side * tilt.cos());
            band.points.push([x, y, side * tilt.sin()]);
        }
    }
    for i in 0..steps as u32 {
        let (a, b) = (2 * i, 2 * i + 1);
        let (c, d) = if i + 1 < steps as u32 {
            (a + 2, b + 2)
        } else {
            (1, 0)
        };
        band.triangles.extend([[a, c, b], [b, c, d]]);
    }
    assert_eq!(looked(&band).verdict, Verdict::Refused);
}

#[test]
fn a_size_that_fits_no_casting_is_asked_and_then_taken() {
    let bytes = write_stl(&block([0.0; 3], [0.2, 0.1, 0.1]));
    let found = look("part.stl", &bytes, None).unwrap();
    assert_eq!(
        (found.verdict, found.basis, found.unit),
        (Verdict::Ask, UnitBasis::Unknown, None)
    );
    assert!(
        found
            .choices
            .iter()
            .any(|choice| choice.unit == Unit::Metre)
    );
    let found = look("part.stl", &bytes, Some(Unit::Metre)).unwrap();
    assert_eq!(
        (found.verdict, found.basis),
        (Verdict::Accepted, UnitBasis::Asked)
    );
    assert_volume(&found, 2e6, 1e-6);
}

#[test]
fn turning_moving_and_reordering_change_nothing() {
    let ball = ball(40.0, 60, 0.2);
    let first = looked(&ball);
    let mut other = ball.clone();
    for [x, y, z] in &mut other.points {
        (*x, *y, *z) = (*y + 500.0, -*x, *z - 300.0);
    }
    other.triangles.reverse();
    let second = looked(&other);
    assert_eq!(second.verdict, first.verdict);
    assert_volume(&second, first.solid.volume_mm3, 1e-5);
    let again = looked(&other);
    assert_eq!((again.mesh, again.solid), (second.mesh, second.solid));
}
