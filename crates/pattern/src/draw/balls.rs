//! How thick the metal is at each place of the skin: the largest ball that lies in the metal and
//! touches the skin there.
//!
//! A ball starts as large as the line straight in allows and shrinks: whatever of the skin lies
//! deepest in it becomes its second point of touch, until nothing lies in it (shrinking ball
//! method, from memory). Skin that turns away from the place by little does not count, or every
//! round bar of flat facets would be as thin as a facet is wide.

use rayon::prelude::*;

use crate::distance::nearest;
use crate::mesh::Mesh;
use crate::rays::first_met;
use crate::tree::Tree;
use crate::vector::{Vector, add, dot, norm, scale, sub};

/// Two places that a ball touches at less than this to each other, seen from its middle, lie on
/// one face: cosine of 45°. With less the flats of a coarse round bar count as its walls; with
/// more the ball in the corner of a block of six sides or more comes out too large.
const ONE_FACE: f64 = std::f64::consts::FRAC_1_SQRT_2;

/// A ball has settled when it shrinks by less than this share.
const SETTLED: f64 = 1e-4;

/// A ball that has not settled by then is as good as settled: each step shrinks it.
const MOST_STEPS: usize = 40;

/// Diameter of the largest ball in the metal that touches the middle of each facet, mm; none for a
/// facet without surface, or one behind which the skin is open.
pub fn balls_mm(mesh: &Mesh) -> Vec<Option<f64>> {
    let tree = Tree::over(mesh);
    let off_mm = 1e-6 * mesh.diagonal();
    let facets = (0..mesh.triangles.len()).into_par_iter();
    facets
        .map(|facet| ball_mm(mesh, &tree, facet, off_mm))
        .collect()
}

fn ball_mm(mesh: &Mesh, tree: &Tree, facet: usize, off_mm: f64) -> Option<f64> {
    let normal = mesh.normal(facet);
    let doubled = norm(normal);
    if doubled == 0.0 {
        return None;
    }
    let inward = scale(normal, -1.0 / doubled);
    let [a, b, c] = mesh.corners(facet);
    let touch = scale(add(add(a, b), c), 1.0 / 3.0);
    let (_, straight) = first_met(mesh, tree, add(touch, scale(inward, off_mm)), inward)?;
    let mut radius = (straight + off_mm) / 2.0;
    for _ in 0..MOST_STEPS {
        match shrunk(mesh, tree, touch, inward, radius) {
            Some(less) if less < radius * (1.0 - SETTLED) => radius = less,
            _ => break,
        }
    }
    Some(2.0 * radius)
}

/// The radius of the ball that touches the skin at `touch` and at the place which lies deepest in
/// the ball of this radius; none if no skin lies in it, or only skin of the same face.
fn shrunk(mesh: &Mesh, tree: &Tree, touch: Vector, inward: Vector, radius: f64) -> Option<f64> {
    let middle = add(touch, scale(inward, radius));
    let deepest = nearest(mesh, tree, middle, radius * (1.0 - SETTLED))?.point;
    let (here, there) = (sub(touch, middle), sub(deepest, middle));
    if dot(here, there) >= ONE_FACE * norm(here) * norm(there) {
        return None;
    }
    let across = sub(deepest, touch);
    Some(dot(across, across) / (2.0 * dot(across, inward)))
}
