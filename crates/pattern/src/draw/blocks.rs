//! A flask full of sand cut in two by its joint: closed blocks below and above it, as they lie in
//! the draw. Together they are the inside of the flask, and their faces at the joint are the same.

use super::joint::Joint;
use crate::boolean::{Body, BooleanError};
use crate::mesh::Mesh;
use crate::vector::Vector;

/// The blocks under and over a joint, down to the bottom of the flask and up to its top: drag and
/// cope before the part is taken out. Where the joint is flat they have no more facets than it
/// takes.
pub fn blocks(joint: &Joint) -> [Mesh; 2] {
    let whole = block(joint, joint.flask[0][2]);
    let plain = plain(&whole, joint.flask[1][2]);
    plain.unwrap_or_else(|_| {
        let mut above = block(joint, joint.flask[1][2]);
        for triangle in &mut above.triangles {
            triangle.swap(1, 2);
        }
        [whole, above]
    })
}

/// What is no further off than this, mm, is rounding of a joint that is flat; less than the hair by
/// which a joint keeps off the faces of a part.
const ROUNDING_MM: f64 = 1e-7;

/// A block with the facets of its flat places joined, and what is over it up to the top of the
/// flask.
fn plain(block: &Mesh, top_mm: f64) -> Result<[Mesh; 2], BooleanError> {
    let below = Body::of(block)?.tidied(ROUNDING_MM)?;
    let [low, high] = block.bounds();
    let corner = |i: u8| {
        [
            [low[0], high[0]][usize::from(i & 1)],
            [low[1], high[1]][usize::from(i >> 1 & 1)],
            [low[2], top_mm][usize::from(i >> 2)],
        ]
    };
    let corners: Vec<Vector> = (0..8).map(corner).collect();
    let above = Body::around(&corners)?.without(&below)?;
    Ok([below.mesh(), above.mesh()])
}

/// The block between the joint and a level end, wound as for the one below.
fn block(joint: &Joint, end_mm: f64) -> Mesh {
    let heights = &joint.heights;
    let (nx, ny) = (heights.xs_mm.len(), heights.ys_mm.len());
    let at = |i: usize, j: usize| (i + nx * j) as u32;
    let mut mesh = Mesh::default();
    for (j, &y) in heights.ys_mm.iter().enumerate() {
        let row = heights.xs_mm.iter().enumerate();
        mesh.points
            .extend(row.map(|(i, &x)| [x, y, heights.nodes_mm[i + nx * j]]));
    }
    for (i, j) in (1..ny).flat_map(|j| (1..nx).map(move |i| (i, j))) {
        let corners = [at(i - 1, j - 1), at(i, j - 1), at(i, j), at(i - 1, j)];
        let [a, b, c, d] = corners;
        mesh.triangles.extend([[a, b, c], [a, c, d]]);
    }
    let first = mesh.points.len() as u32;
    let corners = [(0, 0), (nx - 1, 0), (nx - 1, ny - 1), (0, ny - 1)];
    let ends = corners.map(|(i, j)| [heights.xs_mm[i], heights.ys_mm[j], end_mm]);
    mesh.points.extend(ends);
    mesh.triangles
        .extend([[first, first + 2, first + 1], [first, first + 3, first + 2]]);
    // Walls, anticlockwise round the flask as seen from above.
    let walls: [Vec<u32>; 4] = [
        (0..nx).map(|i| at(i, 0)).collect(),
        (0..ny).map(|j| at(nx - 1, j)).collect(),
        (0..nx).rev().map(|i| at(i, ny - 1)).collect(),
        (0..ny).rev().map(|j| at(0, j)).collect(),
    ];
    for (wall, foot) in walls.iter().zip(0..4) {
        let (from, to) = (first + foot, first + (foot + 1) % 4);
        for pair in wall.windows(2) {
            mesh.triangles.push([from, pair[1], pair[0]]);
        }
        if let Some(last) = wall.last() {
            mesh.triangles.push([from, to, *last]);
        }
    }
    mesh
}
