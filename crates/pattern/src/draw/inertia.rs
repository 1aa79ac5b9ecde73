//! The main axes of inertia of the metal.

use crate::mesh::Mesh;
use crate::vector::{Vector, add, cross, dot, scale, sub};

/// The main axes of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MainAxes {
    /// The middle of the metal, mm.
    pub middle_mm: Vector,
    /// The three axes, of length one.
    pub along: [Vector; 3],
    /// How far the metal spreads along each, ∫x² dV, mm⁵.
    pub moments: [f64; 3],
}

/// The main axes of a closed mesh; none without volume.
pub fn main_axes(mesh: &Mesh) -> Option<MainAxes> {
    let [low, high] = mesh.bounds();
    let origin = scale(add(low, high), 0.5);
    let mut volume = 0.0;
    let mut first = [0.0; 3];
    let mut second = [[0.0; 3]; 3];
    // A tetrahedron of volume v over the corners 0, p, q, r has the second moments
    // v/20 (Σ cᵢcⱼ + sᵢsⱼ), with s the sum of its corners.
    for facet in 0..mesh.triangles.len() {
        let [p, q, r] = mesh.corners(facet).map(|corner| sub(corner, origin));
        let v = dot(p, cross(q, r)) / 6.0;
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
        return None;
    }
    for i in 0..3 {
        for j in 0..3 {
            second[i][j] -= first[i] * first[j] / volume;
        }
    }
    let (along, moments) = eigenvectors(second);
    Some(MainAxes {
        middle_mm: add(origin, scale(first, 1.0 / volume)),
        along,
        moments,
    })
}

/// Eigenvectors and values of a symmetric matrix by Jacobi's turns.
fn eigenvectors(mut m: [[f64; 3]; 3]) -> ([Vector; 3], Vector) {
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
    (axes, [m[0][0], m[1][1], m[2][2]])
}

/// Sweeps of turns; a matrix of three rows is done to the last digit after five or six.
const SWEEPS: usize = 12;
