//! A patch of skin moved out, with walls drawn behind it: how stock is left on a face.
//!
//! The facets of the patch keep their shape and order; copies of their corners move, and every
//! side on the rim of the patch grows a wall of two facets. Nothing is rounded, so that what is
//! added is the patch times the way it moved, to the last digit.

use crate::boolean::{Body, BooleanError};
use crate::crossings;
use crate::mesh::{Edges, Mesh};
use crate::tree::Tree;
use crate::vector::Vector;

/// The mesh with the facets of `patch` moved by `to`, which is told the number of a facet and a
/// corner of it. Where they then pass through other skin, as
/// in a recess that narrows upward, what overlaps is joined.
pub(super) fn raised(
    mesh: &Mesh,
    patch: &[bool],
    to: impl Fn(usize, Vector) -> Vector,
) -> Result<Mesh, BooleanError> {
    let mut raised = mesh.clone();
    let mut copy = vec![u32::MAX; mesh.points.len()];
    for (facet, corners) in mesh.triangles.iter().enumerate() {
        if !patch[facet] {
            continue;
        }
        raised.triangles[facet] = corners.map(|point| {
            let own = &mut copy[point as usize];
            if *own == u32::MAX {
                *own = raised.points.len() as u32;
                raised.points.push(to(facet, mesh.points[point as usize]));
            }
            *own
        });
    }
    for (from, to) in rim(mesh, patch) {
        let [above_from, above_to] = [from, to].map(|point| copy[point as usize]);
        raised.triangles.push([from, to, above_to]);
        raised.triangles.push([from, above_to, above_from]);
    }
    raised.drop_unused_points();
    let crossed = crossings::find(&raised, &Tree::over(&raised));
    match crossed.facets.len() {
        0 => Ok(raised),
        _ => Ok(Body::rebuilt(&raised)?.mesh()),
    }
}

/// The sides of the patch that no other facet of it meets, in the direction of its facets.
fn rim(mesh: &Mesh, patch: &[bool]) -> Vec<(u32, u32)> {
    let mut rim = Vec::new();
    for group in Edges::of(mesh).groups() {
        let of_patch = group.iter().filter(|side| patch[side.facet()]);
        let ends: Vec<(u32, u32)> = of_patch.map(|side| mesh.ends(side.id)).collect();
        let (onward, back): (Vec<_>, Vec<_>) = ends.into_iter().partition(|(from, to)| from < to);
        let common = onward.len().min(back.len());
        rim.extend(onward.into_iter().skip(common));
        rim.extend(back.into_iter().skip(common));
    }
    rim
}
