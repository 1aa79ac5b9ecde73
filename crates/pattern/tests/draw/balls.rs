//! Balls in metal against the geometry of plain solids.

use pattern::draw::balls::balls_mm;
use pattern::mesh::Mesh;
use pattern::vector::{add, scale};

use crate::parts::{ball, bar, block, part};

fn middle(mesh: &Mesh, facet: usize) -> [f64; 3] {
    let [a, b, c] = mesh.corners(facet);
    scale(add(add(a, b), c), 1.0 / 3.0)
}

/// The middle of a triangle lies beside the middle of the flat that it is half of, and the ball
/// that touches there leans over: flats of a sixteenth to a thirtieth of the diameter cost so much.
const FLATS: f64 = 0.05;

#[test]
fn a_ball_is_as_thick_as_its_diameter_everywhere() {
    let mesh = part(&[ball([0.0; 3], 40.0)]);
    for found in balls_mm(&mesh) {
        assert!((found.unwrap() - 40.0).abs() < FLATS * 40.0, "{found:?}");
    }
}

#[test]
fn a_bar_is_as_thick_as_its_diameter_along_its_side() {
    let mesh = part(&[bar([0.0; 3], [0.0, 0.0, 1.0], 20.0, 200.0)]);
    let found = balls_mm(&mesh);
    let sides = (0..mesh.triangles.len()).filter(|&facet| {
        let normal = mesh.normal(facet);
        normal[2].abs() < 1e-9 * normal[0].hypot(normal[1])
    });
    for facet in sides {
        assert!(
            (found[facet].unwrap() - 20.0).abs() < FLATS * 20.0,
            "{:?}",
            found[facet]
        );
    }
}

#[test]
fn a_plate_is_as_thick_as_it_is() {
    let mesh = part(&[block([0.0; 3], [80.0, 50.0, 3.0])]);
    let found = balls_mm(&mesh);
    for (facet, ball) in found.iter().enumerate() {
        if mesh.normal(facet)[2].abs() > 1.0 {
            assert!((ball.unwrap() - 3.0).abs() < 1e-3, "{ball:?}");
        }
    }
}

/// In a wedge of 50° the ball that touches a face at a distance s from the edge has the radius
/// s tan 25°: both touches lie as far from the edge (plane geometry).
#[test]
fn in_a_wedge_the_ball_grows_with_the_distance_from_the_edge() {
    let half = 25f64.to_radians();
    let (reach, long) = (60.0, 400.0);
    let rise = reach * half.tan();
    let points: Vec<[f64; 3]> = [0.0, long]
        .into_iter()
        .flat_map(|y| [[0.0, y, 0.0], [reach, y, -rise], [reach, y, rise]])
        .collect();
    let triangles = vec![
        [0, 1, 2],
        [3, 5, 4],
        [0, 4, 1],
        [0, 3, 4],
        [1, 4, 5],
        [1, 5, 2],
        [2, 5, 3],
        [2, 3, 0],
    ];
    let wedge = Mesh { points, triangles };
    assert!(pattern::made::volume_mm3(&wedge) > 0.0);
    let found = balls_mm(&wedge);
    let mut seen = 0;
    for facet in 0..8 {
        let [x, y, z] = middle(&wedge, facet);
        let along = x.hypot(z);
        let is_flank = z.abs() > 1.0 && y > 50.0 && y < long - 50.0;
        // The back of the wedge is farther off than the ball is large.
        if is_flank && reach - x > along * half.tan() {
            let wanted = 2.0 * along * half.tan();
            assert!(
                (found[facet].unwrap() - wanted).abs() < 1e-2 * wanted,
                "{found:?}"
            );
            seen += 1;
        }
    }
    assert!(seen >= 2, "{seen}");
}
