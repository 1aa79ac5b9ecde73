//! Solids cut, wrapped, joined and grown, against the volumes geometry gives them.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod shapes;

use std::f64::consts::PI;

use pattern::boolean::{Body, BooleanError, NEEDLE_MM};
use pattern::distance::{is_inside, nearest};
use pattern::mesh::Mesh;
use pattern::offset::{Offset, OffsetError, offset};
use pattern::rays::{first_met, first_met_each};
use pattern::stl::write_stl;
use pattern::touching::apart;
use pattern::tree::Tree;
use shapes::{ball, block, both, inside_out};

fn body(mesh: &Mesh) -> Body {
    Body::of(mesh).unwrap()
}

fn assert_near(what: &str, found: f64, wanted: f64, within: f64) {
    assert!(
        (found / wanted - 1.0).abs() <= within,
        "{what}: {found} instead of {wanted}"
    );
}

#[test]
fn two_cubes_have_in_common_the_block_where_they_overlap() {
    let (a, b) = (
        block([0.0; 3], [40.0; 3]),
        block([30.0, 25.0, -5.0], [40.0; 3]),
    );
    let common = body(&a).common_with(&body(&b)).unwrap();
    assert_near("common", common.volume_mm3(), 10.0 * 15.0 * 35.0, 1e-12);
    let apart = body(&a)
        .common_with(&body(&block([50.0; 3], [9.0; 3])))
        .unwrap();
    assert!(apart.is_empty());
}

#[test]
fn a_plane_cuts_a_ball_into_the_two_caps_of_archimedes() {
    let round = body(&ball(30.0, 400, 0.0));
    let normal = [1.0, 2.0, 2.0];
    let [ahead, behind] = round.cut_by_plane(normal, 12.0).unwrap();
    // Cap of height h on a ball of radius r: π h² (3 r − h) / 3.
    let cap = |h: f64| PI * h * h * (90.0 - h) / 3.0;
    assert_near("ahead", ahead.volume_mm3(), cap(18.0), 1e-3);
    assert_near("behind", behind.volume_mm3(), cap(42.0), 1e-3);
    assert_near(
        "both",
        ahead.volume_mm3() + behind.volume_mm3(),
        round.volume_mm3(),
        1e-12,
    );
    let lowest_ahead = |p: &[f64; 3]| (p[0] + 2.0 * p[1] + 2.0 * p[2]) / 3.0 > 12.0 - 1e-9;
    assert!(ahead.mesh().points.iter().all(lowest_ahead));
    let [ahead, behind] = round.cut_by_plane(normal, 31.0).unwrap();
    assert!(ahead.is_empty() && !behind.is_empty());
    for bad in [[0.0; 3], [f64::NAN, 0.0, 1.0]] {
        assert_eq!(
            round.cut_by_plane(bad, 0.0).err(),
            Some(BooleanError::NoDirection)
        );
    }
}

#[test]
fn the_hull_of_a_frame_fills_its_window() {
    let frame = body(&block([0.0; 3], [40.0, 30.0, 8.0]))
        .without(&body(&block([5.0, 5.0, -1.0], [30.0, 20.0, 10.0])))
        .unwrap();
    assert_near(
        "hull",
        frame.hull().unwrap().volume_mm3(),
        40.0 * 30.0 * 8.0,
        1e-12,
    );
}

#[test]
fn a_rebuilt_solid_counts_shared_room_once_and_keeps_voids() {
    let overlapping = both(
        &block([0.0; 3], [40.0; 3]),
        &block([25.0, 11.0, 13.0], [40.0; 3]),
    );
    let joined = Body::rebuilt(&overlapping).unwrap();
    assert_near(
        "joined",
        joined.volume_mm3(),
        128_000.0 - 15.0 * 29.0 * 27.0,
        1e-9,
    );
    let hollow = both(
        &block([0.0; 3], [60.0; 3]),
        &inside_out(&block([20.0; 3], [10.0; 3])),
    );
    assert_near(
        "hollow",
        Body::rebuilt(&hollow).unwrap().volume_mm3(),
        215_000.0,
        1e-9,
    );
    let open = Mesh {
        triangles: overlapping.triangles[1..].to_vec(),
        ..overlapping
    };
    assert_eq!(Body::rebuilt(&open).err(), Some(BooleanError::NotClosed));
}

#[test]
fn distances_to_a_cube_and_lines_to_a_ball_are_those_of_geometry() {
    let cube = block([0.0; 3], [40.0; 3]);
    let tree = Tree::over(&cube);
    let distance = |place| nearest(&cube, &tree, place, f64::MAX).unwrap().distance;
    for (place, wanted, inside) in [
        ([20.0, 20.0, 10.0], 10.0, true),
        ([43.0, 44.0, 20.0], 5.0, false),
        ([-2.0, -3.0, 46.0], 7.0, false),
        ([20.0, 20.0, -1.0], 1.0, false),
    ] {
        assert!((distance(place) - wanted).abs() < 1e-12, "{place:?}");
        assert_eq!(is_inside(&cube, &tree, place), inside, "{place:?}");
    }
    assert_eq!(nearest(&cube, &tree, [20.0, 20.0, 50.0], 9.0), None);
    let round = ball(30.0, 400, 0.0);
    let tree = Tree::over(&round);
    for aim in [[1.0, 2.0, 2.0], [-3.0, 0.1, 0.2], [0.3, -0.4, -5.0]] {
        let length = aim.iter().map(|x: &f64| x * x).sum::<f64>().sqrt();
        let from = aim.map(|x| -100.0 * x / length);
        let (_, at) = first_met(&round, &tree, from, aim).unwrap();
        assert!(
            (at * length - 70.0).abs() < 5e-3,
            "{aim:?}: {}",
            at * length
        );
        assert_eq!(first_met(&round, &tree, from, aim.map(|x| -x)), None);
    }
}

/// Numbers from 0 to 1 by a plain congruence (Numerical Recipes' constants, from memory).
fn chances() -> impl FnMut() -> f64 {
    let mut state = 12_345_u32;
    move || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(state >> 8) / f64::from(1 << 24)
    }
}

/// Where a line meets the plane of a facet, if it does so within its sides: by the signs of the
/// three tetrahedra over the sides, another way than the program's.
fn met(mesh: &Mesh, facet: usize, from: [f64; 3], along: [f64; 3]) -> Option<f64> {
    let [a, b, c] = mesh
        .corners(facet)
        .map(|p| [0, 1, 2].map(|i| p[i] - from[i]));
    let triple = |p: [f64; 3], q: [f64; 3], r: [f64; 3]| {
        p[0] * (q[1] * r[2] - q[2] * r[1])
            + p[1] * (q[2] * r[0] - q[0] * r[2])
            + p[2] * (q[0] * r[1] - q[1] * r[0])
    };
    let sides = [
        triple(along, a, b),
        triple(along, b, c),
        triple(along, c, a),
    ];
    let sum: f64 = sides.iter().sum();
    let within = sides.iter().all(|s| *s > 0.0) || sides.iter().all(|s| *s < 0.0);
    let at = triple(a, b, c) / sum;
    (within && at > 0.0).then_some(at)
}

#[test]
fn lines_meet_first_what_all_facets_tried_one_by_one_give() {
    let mut chance = chances();
    // Near the origin, far off it, and flat as a sheet: single precision must leave nothing out.
    let far = ball(30.0, 60, 0.0);
    let moved = |scale: [f64; 3], by: f64| Mesh {
        points: far
            .points
            .iter()
            .map(|p| [0, 1, 2].map(|i| p[i] * scale[i] + by))
            .collect(),
        ..far.clone()
    };
    let shapes = [
        moved([1.0; 3], 0.0),
        moved([1.0; 3], 1e5),
        moved([1.0, 1.0, 1e-6], -300.0),
        moved([1e-3, 1.0, 100.0], 7.0),
    ];
    for mesh in &shapes {
        let tree = Tree::over(mesh);
        let [low, high] = mesh.bounds();
        let mut lines = Vec::new();
        for number in 0..400 {
            let spot = |far: f64, chance: &mut dyn FnMut() -> f64| {
                [0, 1, 2].map(|i| {
                    let share = far * (chance() - 0.5) + 0.5;
                    low[i] + share * (high[i] - low[i])
                })
            };
            let from = spot(if number % 2 == 0 { 1.0 } else { 50.0 }, &mut chance);
            let to = spot(1.0, &mut chance);
            lines.push((from, [0, 1, 2].map(|i| (to[i] - from[i]) * 0.01)));
        }
        let each = first_met_each(mesh, &tree, &lines);
        let mut hit = 0;
        for (&(from, along), found) in lines.iter().zip(&each) {
            assert_eq!(*found, first_met(mesh, &tree, from, along));
            let all = (0..mesh.triangles.len()).filter_map(|f| met(mesh, f, from, along));
            let first = all.fold(f64::MAX, f64::min);
            let at = found.map_or(f64::MAX, |(_, at)| at);
            assert!((at - first).abs() <= 1e-6 * first, "{at} {first}");
            hit += usize::from(found.is_some());
        }
        assert!(hit > 200, "{hit} of 400");
    }
}

#[test]
fn nearest_places_are_as_near_as_any_of_a_dense_net_on_the_skin() {
    let mut chance = chances();
    let round = ball(30.0, 60, 0.0);
    let tree = Tree::over(&round);
    for number in 0..60 {
        let reach = [1.0, 10.0, 1e6][number % 3];
        let from = [0, 1, 2].map(|_| reach * 100.0 * (chance() - 0.5));
        let found = nearest(&round, &tree, from, f64::MAX).unwrap().distance;
        let mut best = f64::MAX;
        for facet in 0..round.triangles.len() {
            let [a, b, c] = round.corners(facet);
            for (u, v) in (0..=8).flat_map(|u| (0..=8 - u).map(move |v| (u, v))) {
                let (u, v) = (f64::from(u) / 8.0, f64::from(v) / 8.0);
                let off = [0, 1, 2].map(|i| a[i] + u * (b[i] - a[i]) + v * (c[i] - a[i]) - from[i]);
                best = best.min(off.iter().map(|x| x * x).sum::<f64>().sqrt());
            }
        }
        // The net is no wider than an eighth of a side of 1.6 mm.
        let slack = 1e-12 * best;
        assert!(
            found <= best + slack && found >= best - 0.2,
            "{from:?}: {found} {best}"
        );
    }
}

fn grown(mesh: &Mesh, by: f64, error: f64) -> Offset {
    let found = offset(mesh, by, error).unwrap();
    assert!(
        found.error_mm <= error,
        "{} with {error} allowed",
        found.error_mm
    );
    assert!(Body::of(&found.mesh).is_ok());
    found
}

/// Steiner: a convex body of volume V, surface A and mean width b grows by t to
/// V + A t + 2π b t² + 4π t³/3; a cube of side a has b = 3a/2.
#[test]
fn a_grown_cube_is_the_rounded_cube_of_steiner() {
    let cube = block([3.0, -7.0, 11.0], [40.0; 3]);
    let (a, t): (f64, f64) = (40.0, 5.0);
    let wanted = a.powi(3) + 6.0 * a * a * t + 3.0 * PI * a * t * t + 4.0 / 3.0 * PI * t.powi(3);
    let found = grown(&cube, t, 0.5);
    assert_near("grown", found.volume_mm3, wanted, 2e-3);
    assert_eq!(found.closed_gap, None);
    assert_near("finer", grown(&cube, t, 0.25).volume_mm3, wanted, 5e-4);
}

#[test]
fn a_shrunk_cube_is_a_smaller_cube_and_a_shrunk_ball_a_smaller_ball() {
    let found = grown(&block([0.0; 3], [40.0; 3]), -5.0, 0.25);
    assert_near("cube", found.volume_mm3, 27_000.0, 2e-3);
    let round = ball(30.0, 140, 0.0);
    let of_radius = |r: f64| 4.0 / 3.0 * PI * r.powi(3);
    assert_near(
        "smaller",
        grown(&round, -10.0, 0.3).volume_mm3,
        of_radius(20.0),
        4e-3,
    );
    assert_near(
        "larger",
        grown(&round, 6.0, 0.4).volume_mm3,
        of_radius(36.0),
        4e-3,
    );
}

#[test]
fn a_void_shrinks_as_its_body_grows_and_a_narrow_one_is_told() {
    let outer = block([0.0; 3], [60.0; 3]);
    let wide = both(&outer, &inside_out(&block([20.0; 3], [20.0; 3])));
    let found = grown(&wide, 2.0, 0.5);
    let rounded = 60f64.powi(3) + 6.0 * 3600.0 * 2.0 + 3.0 * PI * 60.0 * 4.0 + 32.0 / 3.0 * PI;
    assert_near("hollow", found.volume_mm3, rounded - 16f64.powi(3), 2e-3);
    assert_eq!(found.closed_gap, None);
    let slot = both(&outer, &inside_out(&block([20.0; 3], [20.0, 20.0, 3.0])));
    let found = grown(&slot, 2.0, 0.5);
    assert_near("closed", found.volume_mm3, rounded, 2e-3);
    assert_near("gap", found.closed_gap.unwrap().width_mm, 3.0, 1e-6);
}

#[test]
fn a_wall_that_shrinking_would_eat_is_refused_with_its_place() {
    let walled = body(&block([0.0; 3], [40.0, 40.0, 20.0]))
        .without(&body(&block([3.0, 5.0, 4.0], [32.0, 30.0, 30.0])))
        .unwrap()
        .mesh();
    assert!(offset(&walled, -1.4, 0.3).is_ok());
    let refused = offset(&walled, -1.6, 0.3).unwrap_err();
    let OffsetError::WallEaten { wall, .. } = refused else {
        panic!("{refused}");
    };
    assert!((wall.width_mm - 3.0).abs() < 1e-6);
    assert!(wall.place_mm[0] <= 3.0 + 1e-9);
    assert!(refused.to_string().contains("3.00 mm"), "{refused}");
}

#[test]
fn offsets_that_are_none_are_refused() {
    let cube = block([0.0; 3], [40.0; 3]);
    assert!(matches!(
        offset(&cube, f64::NAN, 0.1),
        Err(OffsetError::NoLength { .. })
    ));
    assert!(matches!(
        offset(&cube, 1.0, 0.0),
        Err(OffsetError::NoLength { .. })
    ));
    let Err(OffsetError::TooFine { finest_mm, .. }) = offset(&cube, 1.0, 0.01) else {
        panic!("a lattice of thousands of millions of places");
    };
    assert!(finest_mm > 0.01 && finest_mm < 0.5);
    let open = Mesh {
        triangles: cube.triangles[1..].to_vec(),
        ..cube
    };
    let not_closed = OffsetError::Boolean(BooleanError::NotClosed);
    assert_eq!(offset(&open, 1.0, 0.5).err(), Some(not_closed));
}

/// Analytic volumes: what is thicker than a film and holds more than a crumb stays to rounding.
#[test]
fn tidying_drops_films_and_crumbs_and_keeps_the_rest() {
    let kept = both(
        &block([0.0; 3], [60.0, 40.0, 20.0]),
        &block([0.0, 150.0, 0.0], [3.0; 3]),
    );
    let film = block([100.0, 0.0, 0.0], [60.0, 40.0, 0.005]);
    let crumb = block([0.0, 100.0, 0.0], [0.3; 3]);
    let tidy = body(&both(&kept, &both(&film, &crumb)))
        .tidied(NEEDLE_MM)
        .unwrap();
    assert_near("kept", tidy.volume_mm3(), 48_000.0 + 27.0, 1e-9);
    assert_eq!(tidy.parts().unwrap().len(), 2);
    // Two facets to a flat face, however many there were.
    let fine = body(&block([0.0; 3], [50.0; 3])).with_sides_up_to(5.0);
    let cube = fine.unwrap().tidied(NEEDLE_MM).unwrap();
    assert_eq!(cube.mesh().triangles.len(), 12);
    assert_near("cube", cube.volume_mm3(), 125_000.0, 1e-9);
    // A round wall moves by no more than it may.
    let round = body(&ball(20.0, 60, 0.0));
    let tidy = round.tidied(NEEDLE_MM).unwrap();
    let most_mm3 = NEEDLE_MM * 4.0 * PI * 20.0 * 20.0;
    assert!((tidy.volume_mm3() - round.volume_mm3()).abs() <= most_mm3);
}

/// Facets at each edge of an STL, points known by their place alone; the fewest and the most.
fn facets_at_edges(mesh: &Mesh) -> [usize; 2] {
    let stl = write_stl(mesh);
    let mut edges = std::collections::BTreeMap::new();
    for facet in stl[84..].chunks_exact(50) {
        let corner = |i: usize| &facet[12 + 12 * i..24 + 12 * i];
        for i in 0..3 {
            let (one, other) = (corner(i), corner((i + 1) % 3));
            *edges.entry((one.min(other), one.max(other))).or_insert(0) += 1;
        }
    }
    let counts = || edges.values().copied();
    [counts().min().unwrap(), counts().max().unwrap()]
}

/// Two blocks on a plate that meet in one upright edge: four facets stand there for whoever knows
/// points by their place. Told apart each edge has two, and the volume is the same to a hair.
#[test]
fn a_body_that_touches_itself_along_an_edge_is_told_apart() {
    let plate = block([0.0, 0.0, 0.0], [40.0, 40.0, 10.0]);
    let [one, other] =
        [[0.0, 0.0], [20.0, 20.0]].map(|[x, y]| block([x, y, 5.0], [20.0, 20.0, 30.0]));
    let whole = body(&plate).with(&body(&one)).unwrap();
    let whole = whole.with(&body(&other)).unwrap().mesh();
    assert_eq!(facets_at_edges(&whole), [2, 4]);
    let told = apart(&whole);
    assert_eq!(facets_at_edges(&told), [2, 2]);
    assert_near("volume", body(&told).volume_mm3(), 36_000.0, 1e-5);
    let moved = told.points.iter().zip(&whole.points);
    let furthest = moved.map(|(a, b)| (0..3).map(|i| (a[i] - b[i]).abs()).sum::<f64>());
    assert!(furthest.fold(0.0, f64::max) < 1e-3);
    // What touches itself nowhere stays as it is.
    assert_eq!(apart(&plate).points, plate.points);
}
