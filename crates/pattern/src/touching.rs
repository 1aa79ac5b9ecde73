//! Solids that touch themselves along an edge, told apart for readers that join points at a place.
//!
//! A body may meet itself along an edge and still be closed: there each side has points of its own.
//! Many programs that read meshes know points by their place alone, find four facets at that edge
//! and call the body open. Points at one place are therefore set into the metal, each by another
//! hair.

use crate::mesh::Mesh;
use crate::vector::{Vector, add, dot, norm, scale, sub};

/// By how much one point more at a place is set inward, mm: several times what the coarsest format
/// rounds a place in a mould to, and a thousandth of what a printer resolves.
const HAIR_MM: f64 = 2e-4;

/// Points nearer than this, mm, are at one place for programs that round, and in formats that do.
const SAME_MM: f64 = 1e-5;

/// A closed mesh with points of its own at every place at which it touches itself.
pub fn apart(mesh: &Mesh) -> Mesh {
    let place = |point: usize| mesh.points[point].map(|along| (along / SAME_MM).round() as i64);
    let mut order: Vec<usize> = (0..mesh.points.len()).collect();
    order.sort_by_key(|&point| place(point));
    let out = ways_out(mesh);
    let mut apart = mesh.clone();
    let together = order.chunk_by(|&one, &other| place(one) == place(other));
    for twins in together.filter(|points| points.len() > 1) {
        for (&point, count) in twins.iter().zip(1..) {
            let inward = scale(out[point], -HAIR_MM * f64::from(count));
            apart.points[point] = add(apart.points[point], inward);
        }
    }
    apart
}

/// The way out at each point: the mean of the facets around it, by the angle of each there.
fn ways_out(mesh: &Mesh) -> Vec<Vector> {
    let mut out = vec![[0.0; 3]; mesh.points.len()];
    for (facet, triangle) in mesh.triangles.iter().enumerate() {
        let normal = unit(mesh.normal(facet));
        let corners = mesh.corners(facet);
        for corner in 0..3 {
            let [at, next, last] = [0, 1, 2].map(|step| corners[(corner + step) % 3]);
            let angle = dot(unit(sub(next, at)), unit(sub(last, at)))
                .clamp(-1.0, 1.0)
                .acos();
            let point = triangle[corner] as usize;
            out[point] = add(out[point], scale(normal, angle));
        }
    }
    out.into_iter().map(unit).collect()
}

fn unit(way: Vector) -> Vector {
    scale(way, 1.0 / norm(way).max(f64::MIN_POSITIVE))
}
