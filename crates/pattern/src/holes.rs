//! Openings in a surface: their outlines, and those closed whose lid can be told.
//!
//! A small opening is closed whatever its lid, for no lid changes the volume by what a scale shows.
//! A large one is a face that is missing. It is closed too if its outline is flat: a skin without
//! thickness cannot be cast, so the part can only be meant as solid there. That is said aloud,
//! with the volume by two different lids.

use crate::mesh::Mesh;
use crate::polygon::{self, Plane};
use crate::tight_lid::tight_lid;
use crate::vector::{Vector, add, bounds_of, cross, dot, norm, scale, sub};

/// Largest share of the whole surface up to which lids are small, all openings together.
///
/// A lid of one percent, off by the tenth allowed in [`MOST_UNEVEN`], changes the volume of a
/// compact part by less than 0.1 %. A larger opening is a missing face: the founder must be told.
pub const MOST_AREA: f64 = 0.01;

/// Largest distance of the outline from its mean plane, as a share of its own length across.
pub const MOST_UNEVEN: f64 = 0.1;

/// Length across, as a share of the box diagonal, up to which an outline need not be flat: its
/// lids differ by less than a millionth of the box.
pub const CRACK: f64 = 0.02;

/// Largest share of the volume that may hang on which lid is taken. The scale at the furnace and
/// the loss in melting leave as much open; with more the charge would be a guess.
pub const MOST_DOUBT: f64 = 0.025;

/// An opening.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Point numbers along the outline, in the direction of a lid wound outward.
    pub outline: Vec<u32>,
    /// Mean of the outline's points.
    pub place: Vector,
    /// Area of a flat lid.
    pub area: f64,
    /// Whether a lid in the mean plane is close to the outline, or the opening next to nothing.
    pub is_flat: bool,
}

/// The lids of all openings of a mesh.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lids {
    /// Their area.
    pub area: f64,
    /// Volume of the closed mesh.
    pub volume: f64,
    /// Volume it would have with the other way of drawing lids.
    pub other_volume: f64,
    /// Whether they are too large to pass without a word.
    pub is_large: bool,
}

/// The openings along `open` sides, and the number of sides that lead nowhere.
pub fn openings(mesh: &Mesh, open: &[u32]) -> (Vec<Opening>, usize) {
    let mut starts: Vec<(u32, u32)> = open.iter().map(|&side| mesh.ends(side)).collect();
    starts.sort_unstable();
    let mut is_used = vec![false; starts.len()];
    let mut found = Vec::new();
    let mut astray = 0;
    let diagonal = mesh.diagonal();
    for first in 0..starts.len() {
        if !is_used[first] {
            astray += walk(mesh, &starts, &mut is_used, first, diagonal, &mut found);
        }
    }
    (found, astray)
}

/// Closes every opening if all are flat and their lids leave the volume in little doubt; else
/// the mesh stays as it is.
///
/// An outline that bends a little and can be seen whole from its middle gets a lid drawn to that
/// point, at the mean height of the outline: on a round opening the volume is then that under a
/// stretched skin. One that bends and winds gets the lid of least area; a flat one is cut up as it
/// is.
pub fn close(mesh: &mut Mesh, openings: &[Opening]) -> Option<Lids> {
    if openings.iter().any(|opening| !opening.is_flat) {
        return None;
    }
    let area: f64 = openings.iter().map(|opening| opening.area).sum();
    let is_large = area > MOST_AREA * mesh.area();
    let mut closed = mesh.clone();
    let mut to_other = 0.0;
    for opening in openings {
        to_other += add_lid(&mut closed, opening)?;
    }
    let place = openings.first()?.place;
    let all = 0..closed.triangles.len();
    let signed: f64 = all
        .map(|facet| volume_over(place, closed.corners(facet)))
        .sum();
    let (volume, other_volume) = (signed.abs(), (signed + to_other).abs());
    if is_large && (other_volume - volume).abs() > MOST_DOUBT * volume {
        return None;
    }
    *mesh = closed;
    Some(Lids {
        area,
        volume,
        other_volume,
        is_large,
    })
}

/// Adds the lid of one opening. Gives by how much the volume would change with the other lid.
fn add_lid(mesh: &mut Mesh, opening: &Opening) -> Option<f64> {
    let at = |&point: &u32| mesh.points[point as usize];
    let outline: Vec<Vector> = opening.outline.iter().map(at).collect();
    let plane = Plane::through(&outline)?;
    let arms = outline.iter().map(|&point| norm(sub(point, plane.centre)));
    let is_bent = plane.unevenness(&outline) > BENT * arms.fold(0.0, f64::max);
    let cut = match is_bent {
        true => tight_lid(&outline),
        false => None,
    };
    let cut = cut.or_else(|| polygon::triangles(&outline))?;
    let corners = |lid: &[usize; 3]| lid.map(|corner| outline[corner]);
    let over_middle = cut
        .iter()
        .map(|lid| volume_over(opening.place, corners(lid)));
    let over_middle: f64 = over_middle.sum();
    if is_bent && is_open(&outline, &plane) {
        let middle = mesh.points.len() as u32;
        mesh.points.push(opening.place);
        let next = opening.outline.iter().cycle().skip(1);
        let sides = opening.outline.iter().zip(next);
        mesh.triangles
            .extend(sides.map(|(&from, &to)| [from, to, middle]));
        return Some(over_middle);
    }
    let lids = cut
        .iter()
        .map(|lid| lid.map(|corner| opening.outline[corner]));
    mesh.triangles.extend(lids);
    Some(-over_middle)
}

/// Whether every side of an outline is seen from its middle the same way round.
fn is_open(outline: &[Vector], plane: &Plane) -> bool {
    let arms = outline.iter().map(|&point| sub(point, plane.centre));
    let next = arms.clone().cycle().skip(1);
    let mut sides = arms.zip(next);
    sides.all(|(from, to)| dot(cross(from, to), plane.normal) > 0.0)
}

/// Share of its own length by which a bent outline leaves its plane; less is rounding, and a point
/// in the middle of the lid would only be in the way.
const BENT: f64 = 1e-5;

/// Signed volume between a facet and a point: zero for every facet of a lid drawn to that point.
fn volume_over(point: Vector, [a, b, c]: [Vector; 3]) -> f64 {
    dot(sub(a, point), cross(sub(b, point), sub(c, point))) / 6.0
}

/// Follows open sides from point to point. Each time the way comes back to a point it has passed,
/// the loop since then is an opening. Gives the number of sides that came to a dead end.
fn walk(
    mesh: &Mesh,
    starts: &[(u32, u32)],
    is_used: &mut [bool],
    first: usize,
    diagonal: f64,
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
            found.push(opening(mesh, diagonal, outline));
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

fn opening(mesh: &Mesh, diagonal: f64, mut outline: Vec<u32>) -> Opening {
    outline.reverse();
    let points: Vec<Vector> = outline
        .iter()
        .map(|&point| mesh.points[point as usize])
        .collect();
    let sum = points.iter().fold([0.0; 3], |sum, &point| add(sum, point));
    let place = scale(sum, 1.0 / points.len() as f64);
    let across = bounds_of(points.iter().copied()).map_or(0.0, |[low, high]| norm(sub(high, low)));
    let is_even = |plane: Plane| {
        across <= CRACK * diagonal || plane.unevenness(&points) <= MOST_UNEVEN * across
    };
    let is_flat = points.len() >= 3 && Plane::through(&points).is_some_and(is_even);
    Opening {
        outline,
        place,
        area: polygon::area(&points),
        is_flat,
    }
}
