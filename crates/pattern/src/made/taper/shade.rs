//! What lies in the shade of a part when light falls along a way of draw: the room below its metal.

use crate::boolean::{Body, BooleanError};
use crate::mesh::{Edges, Mesh};
use crate::tree::{Box3, Tree, touch};
use crate::vector::bounds_of;

/// Below the part by this much, mm, the shade ends.
const BEYOND_MM: f64 = 1.0;

/// Share of their height by which the lower ends of what is in the shade differ: were they in one
/// plane, they would all have to be cut by each other.
const STAGGERED: f64 = 0.01;

/// The metal and all room below it, seen along `way` (1: from above, −1: from below), at least
/// over the plan of what some facets cover.
pub(super) fn shade(mesh: &Mesh, way: f64, over: &Mesh) -> Result<Body, BooleanError> {
    let plans = Tree::over(&flat(over));
    let flat = flat(mesh);
    let lit = |facet: &usize| {
        let Some(own) = bounds_of(flat.corners(*facet)) else {
            return false;
        };
        let mut meets = false;
        if way * mesh.normal(*facet)[2] > 0.0 {
            let within = |b: &Box3| touch(b, &own);
            plans.visit(0, within, |_| {
                meets = true;
                false
            });
        }
        meets
    };
    let lit = (0..mesh.triangles.len()).filter(lit);
    let mut top = Mesh {
        triangles: lit.map(|facet| mesh.triangles[facet]).collect(),
        points: mesh.points.clone(),
    };
    top.drop_unused_points();
    let [low, high] = mesh.bounds();
    let floor = if way > 0.0 {
        low[2] - BEYOND_MM
    } else {
        high[2] + BEYOND_MM
    };
    let count = top.points.len() as u32;
    let mut shade = top.clone();
    let below = top
        .points
        .iter()
        .map(|&[x, y, z]| [x, y, floor + STAGGERED * (floor - z)]);
    shade.points.extend(below);
    let foot = top
        .triangles
        .iter()
        .map(|&[a, b, c]| [a + count, c + count, b + count]);
    shade.triangles.extend(foot);
    // A side shared by two lit facets walls off nothing.
    let edges = Edges::of(&top);
    for side in edges.groups().filter(|group| group.len() != 2).flatten() {
        let (a, b) = top.ends(side.id);
        shade
            .triangles
            .extend([[a, a + count, b + count], [a, b + count, b]]);
    }
    Body::rebuilt(&shade)
}

/// A mesh seen from above.
fn flat(mesh: &Mesh) -> Mesh {
    Mesh {
        points: mesh.points.iter().map(|&[x, y, _]| [x, y, 0.0]).collect(),
        triangles: mesh.triangles.clone(),
    }
}
