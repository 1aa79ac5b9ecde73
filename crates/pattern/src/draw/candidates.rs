//! Directions along which a part may draw.
//!
//! Made parts draw along the normal of a large flat face or along an axis of turning or symmetry;
//! grown ones along anything. The normal of a plane of symmetry is a main axis of inertia, and so
//! is an axis of turning; so faces, main axes and a net over the half sphere leave nothing out that
//! the steps between the knots of the net do not find.

use std::collections::BTreeMap;

use crate::mesh::Mesh;
use crate::vector::{Vector, add, dot, norm, scale, sub};

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
    for direction in faces(mesh).into_iter().chain(main_axes(mesh)).map(snapped) {
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

/// The three main axes of inertia.
fn main_axes(mesh: &Mesh) -> Vec<Vector> {
    let [low, high] = mesh.bounds();
    let origin = scale(add(low, high), 0.5);
    let mut volume = 0.0;
    let mut first = [0.0; 3];
    let mut second = [[0.0; 3]; 3];
    // A tetrahedron of volume v over the corners 0, p, q, r has the second moments
    // v/20 (Σ cᵢcⱼ + sᵢsⱼ), with s the sum of its corners.
    for facet in 0..mesh.triangles.len() {
        let [p, q, r] = mesh.corners(facet).map(|corner| sub(corner, origin));
        let v = dot(p, crate::vector::cross(q, r)) / 6.0;
        let sum = add(add(p, q), r);
        volume += v;
        first = add(first, scale(sum, v / 4.0));
        for i in 0..3 {
            for j in 0..3 {
                let corners = p[i] * p[j] + q[i] * q[j] + r[i] * r[j];
                second[i][j] += v / 20.0 * (corners + sum[i] * sum[j]);
            }
        }
    }
    if volume == 0.0 {
        return Vec::new();
    }
    for i in 0..3 {
        for j in 0..3 {
            second[i][j] -= first[i] * first[j] / volume;
        }
    }
    eigenvectors(second)
}

/// Eigenvectors of a symmetric matrix by Jacobi's turns.
fn eigenvectors(mut m: [[f64; 3]; 3]) -> Vec<Vector> {
    let mut axes = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
    for _ in 0..SWEEPS {
        for (i, j) in [(0, 1), (0, 2), (1, 2)] {
            if m[i][j] == 0.0 {
                continue;
            }
            let angle = 0.5 * (2.0 * m[i][j]).atan2(m[j][j] - m[i][i]);
            let (sin, cos) = angle.sin_cos();
            for row in &mut m {
                let (a, b) = (row[i], row[j]);
                (row[i], row[j]) = (cos * a - sin * b, sin * a + cos * b);
            }
            for k in 0..3 {
                let (a, b) = (m[i][k], m[j][k]);
                (m[i][k], m[j][k]) = (cos * a - sin * b, sin * a + cos * b);
                let (a, b) = (axes[i][k], axes[j][k]);
                (axes[i][k], axes[j][k]) = (cos * a - sin * b, sin * a + cos * b);
            }
        }
    }
    axes.to_vec()
}

/// Sweeps of turns; a matrix of three rows is done to the last digit after five or six.
const SWEEPS: usize = 12;

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
