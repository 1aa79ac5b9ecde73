//! Openings in a surface: their outlines, and the small flat ones closed.

use crate::mesh::Mesh;
use crate::polygon::{self, Plane};
use crate::vector::{Vector, add, bounds_of, norm, scale, sub};

/// Largest share of the whole surface that lids may make up, all openings together.
///
/// A lid of one percent, off by the tenth allowed in [`MOST_UNEVEN`], changes the volume of a
/// compact part by less than 0.1 %. A larger opening is a missing face: the founder must look.
pub const MOST_AREA: f64 = 0.01;

/// Largest distance of the outline from its mean plane, as a share of its own length across.
pub const MOST_UNEVEN: f64 = 0.1;

/// An opening.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Point numbers along the outline, in the direction of a lid wound outward.
    pub outline: Vec<u32>,
    /// Mean of the outline's points.
    pub place: Vector,
    /// Area of a flat lid.
    pub area: f64,
    /// Whether a lid in the mean plane is close to the outline.
    pub is_flat: bool,
}

/// The openings along `open` sides, and the number of sides that lead nowhere.
pub fn openings(mesh: &Mesh, open: &[u32]) -> (Vec<Opening>, usize) {
    let mut starts: Vec<(u32, u32)> = open.iter().map(|&side| mesh.ends(side)).collect();
    starts.sort_unstable();
    let mut is_used = vec![false; starts.len()];
    let mut found = Vec::new();
    let mut astray = 0;
    for first in 0..starts.len() {
        if !is_used[first] {
            astray += walk(mesh, &starts, &mut is_used, first, &mut found);
        }
    }
    (found, astray)
}

/// Closes every opening if all are flat and together small. Gives the number of lids, zero when
/// any opening must stay.
pub fn close(mesh: &mut Mesh, openings: &[Opening]) -> usize {
    let area: f64 = openings.iter().map(|opening| opening.area).sum();
    if area > MOST_AREA * mesh.area() || openings.iter().any(|opening| !opening.is_flat) {
        return 0;
    }
    let mut lids = Vec::new();
    for opening in openings {
        let outline: Vec<Vector> = opening
            .outline
            .iter()
            .map(|&point| mesh.points[point as usize])
            .collect();
        let Some(cut) = polygon::triangles(&outline) else {
            return 0;
        };
        lids.extend(
            cut.into_iter()
                .map(|lid| lid.map(|corner| opening.outline[corner])),
        );
    }
    mesh.triangles.extend(lids);
    openings.len()
}

/// Follows open sides from point to point. Each time the way comes back to a point it has passed,
/// the loop since then is an opening. Gives the number of sides that came to a dead end.
fn walk(
    mesh: &Mesh,
    starts: &[(u32, u32)],
    is_used: &mut [bool],
    first: usize,
    found: &mut Vec<Opening>,
) -> usize {
    let mut way = vec![starts[first].0];
    let mut position = std::collections::HashMap::from([(starts[first].0, 0usize)]);
    let mut at = first;
    loop {
        is_used[at] = true;
        let to = starts[at].1;
        if let Some(&since) = position.get(&to) {
            let outline: Vec<u32> = way.drain(since..).collect();
            for point in &outline {
                position.remove(point);
            }
            found.push(opening(mesh, outline));
            if way.is_empty() && since == 0 {
                return 0;
            }
        }
        position.insert(to, way.len());
        way.push(to);
        let from = starts.partition_point(|start| start.0 < to);
        let next = (from..starts.len())
            .take_while(|&i| starts[i].0 == to)
            .find(|&i| !is_used[i]);
        match next {
            Some(next) => at = next,
            None => return way.len() - 1,
        }
    }
}

fn opening(mesh: &Mesh, mut outline: Vec<u32>) -> Opening {
    outline.reverse();
    let points: Vec<Vector> = outline
        .iter()
        .map(|&point| mesh.points[point as usize])
        .collect();
    let sum = points.iter().fold([0.0; 3], |sum, &point| add(sum, point));
    let place = scale(sum, 1.0 / points.len() as f64);
    let across = bounds_of(points.iter().copied()).map_or(0.0, |[low, high]| norm(sub(high, low)));
    let is_flat = points.len() >= 3
        && Plane::through(&points)
            .is_some_and(|plane| plane.unevenness(&points) <= MOST_UNEVEN * across);
    Opening {
        outline,
        place,
        area: polygon::area(&points),
        is_flat,
    }
}
