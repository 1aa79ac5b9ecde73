//! Directions along which a part may draw.
//!
//! Made parts draw along the normal of a large flat face, of a plane of symmetry, or along an axis
//! of turning; grown ones along anything. An axis of turning is a main axis of inertia; so faces,
//! planes of symmetry, main axes and a net over the half sphere leave nothing out that the steps
//! between the knots of the net do not find.

use std::collections::BTreeMap;

use super::inertia::main_axes;
use super::symmetry::symmetry_planes;
use crate::mesh::Mesh;
use crate::vector::{Vector, add, dot, norm, scale};

/// Flat faces taken, largest first: a machined part has its six sides among the first dozen.
const FACES: usize = 14;

/// Knots of the net over the half sphere, about 18° apart.
const KNOTS: usize = 56;

/// Directions closer than this are one.
const SAME_DEGREES: f64 = 1.0;

/// Directions of length one that the part itself gives, the likeliest first; a direction and its
/// opposite are the same.
pub fn made(mesh: &Mesh) -> Vec<Vector> {
    let mut taken: Vec<Vector> = Vec::new();
    let symmetric = symmetry_planes(mesh).into_iter().map(|plane| plane.normal);
    let axes = main_axes(mesh).into_iter().flat_map(|axes| axes.along);
    let given = faces(mesh).into_iter().chain(symmetric).chain(axes);
    for direction in given.map(snapped) {
        let is_new = taken
            .iter()
            .all(|other| !is_same_line(*other, direction, SAME_DEGREES));
        if is_new {
            taken.push(direction);
        }
    }
    taken
}

/// A direction along an axis of the file if it is so but for the rounding of its numbers.
fn snapped(direction: Vector) -> Vector {
    let near = direction.map(|x| if x.abs() < 1e-4 { 0.0 } else { x });
    scale(near, 1.0 / norm(near))
}

/// Whether two directions of length one, or one and the opposite of the other, lie within an angle.
pub fn is_same_line(a: Vector, b: Vector, degrees: f64) -> bool {
    dot(a, b).abs() >= degrees.to_radians().cos()
}

/// Directions around one, some degrees off it.
pub fn around(direction: Vector, degrees: f64) -> Vec<Vector> {
    let Some(frame) = super::frame::DrawFrame::drawing_along(direction) else {
        return Vec::new();
    };
    let (sin, cos) = degrees.to_radians().sin_cos();
    (0..6)
        .map(|turn| {
            let angle = std::f64::consts::TAU * f64::from(turn) / 6.0;
            frame.part_from_draw([sin * angle.cos(), sin * angle.sin(), cos])
        })
        .collect()
}

/// Normals of the largest groups of facets that look alike or opposite.
fn faces(mesh: &Mesh) -> Vec<Vector> {
    // Squares of the directions: 0.02 is about one degree.
    let mut groups: BTreeMap<[i64; 3], (f64, Vector)> = BTreeMap::new();
    for facet in 0..mesh.triangles.len() {
        let normal = mesh.normal(facet);
        let doubled = norm(normal);
        if doubled > 0.0 {
            let normal = half(scale(normal, 1.0 / doubled));
            let key = normal.map(|x| (x / 0.02).round() as i64);
            let group = groups.entry(key).or_insert((0.0, [0.0; 3]));
            *group = (group.0 + doubled, add(group.1, scale(normal, doubled)));
        }
    }
    let mut groups: Vec<(f64, Vector)> = groups.into_values().collect();
    groups.sort_by(|a, b| b.0.total_cmp(&a.0));
    let sums = groups.into_iter().take(FACES).map(|(_, sum)| sum);
    sums.map(|sum| scale(sum, 1.0 / norm(sum))).collect()
}

/// The one of a direction and its opposite whose first entry that counts is positive, so that the
/// two sides of a plate come to one group.
fn half(direction: Vector) -> Vector {
    let leading = direction.iter().rev().find(|x| x.abs() > 0.01);
    match leading.is_some_and(|x| *x < 0.0) {
        true => scale(direction, -1.0),
        false => direction,
    }
}

/// Knots spread evenly over the upper half sphere along a spiral.
pub fn net() -> Vec<Vector> {
    let golden = std::f64::consts::PI * (3.0 - 5f64.sqrt());
    (0..KNOTS)
        .map(|knot| {
            let z = (knot as f64 + 0.5) / KNOTS as f64;
            let (flat, turn) = ((1.0 - z * z).sqrt(), golden * knot as f64);
            [flat * turn.cos(), flat * turn.sin(), z]
        })
        .collect()
}
