//! The room that a body or a patch of skin passes through on a straight way.

use crate::boolean::{Body, BooleanError};
use crate::crossings;
use crate::mesh::{Edges, Mesh};
use crate::tree::Tree;
use crate::vector::{Vector, add, dot};

/// The room that a closed body, wound outward, passes through when it is moved by `by`, its place
/// before and after counted in.
///
/// # Errors
///
/// A skin that does not close, or more than the library can sort out.
pub fn swept(body: &Mesh, by: Vector) -> Result<Body, BooleanError> {
    solid(skin(body, by))
}

/// The skin of that room, as it may pass through itself: the facets that look ahead are moved, the
/// others stay, and walls close the two along the rim between them. It goes round every place
/// passed through at least once, and round no other.
pub fn skin(body: &Mesh, by: Vector) -> Mesh {
    let looks_ahead = |facet: usize| dot(body.normal(facet), by) > 0.0;
    let all = || 0..body.triangles.len();
    let ahead = Mesh {
        points: body.points.clone(),
        triangles: all()
            .filter(|&facet| looks_ahead(facet))
            .map(|facet| body.triangles[facet])
            .collect(),
    };
    let moved: Vec<Vector> = body.points.iter().map(|&point| add(point, by)).collect();
    let mut skin = between(&ahead, &body.points, &moved);
    // The near end of the room is the facets that look back, not the patch ahead turned over.
    let near = ahead.triangles.len();
    skin.triangles.drain(..near);
    let back = all().filter(|&facet| !looks_ahead(facet));
    skin.triangles
        .extend(back.map(|facet| body.triangles[facet]));
    skin
}

/// How many facets of a skin pass through others.
pub fn crossing(skin: &Mesh) -> usize {
    crossings::find(skin, &Tree::over(skin)).facets.len()
}

/// The body of a skin that may pass through itself.
///
/// # Errors
///
/// A skin that does not close, or more than the library can sort out.
pub fn solid(skin: Mesh) -> Result<Body, BooleanError> {
    match crossing(&skin) {
        0 => Body::of(&skin),
        _ => Body::rebuilt(&skin),
    }
}

/// The closed skin between two places of a patch: `near` and `far` are the places of its points,
/// and the patch looks from the first to the second. First come the facets at the near end, as
/// many as the patch has, then those at the far end, then the walls.
pub fn between(patch: &Mesh, near: &[Vector], far: &[Vector]) -> Mesh {
    let count = near.len() as u32;
    let inward = patch.triangles.iter().map(|&[a, b, c]| [a, c, b]);
    let outward = patch.triangles.iter().map(|t| t.map(|point| point + count));
    let mut triangles: Vec<[u32; 3]> = inward.chain(outward).collect();
    for side in Edges::of(patch).open() {
        let (from, to) = patch.ends(side.id);
        triangles.push([from, to, to + count]);
        triangles.push([from, to + count, from + count]);
    }
    Mesh {
        points: near.iter().chain(far).copied().collect(),
        triangles,
    }
}
