//! Where pins and holes go: places on a cut through a solid with enough of it all around.

use rayon::prelude::*;

use super::plain::along;
use crate::distance::{is_inside, nearest};
use crate::mesh::Mesh;
use crate::tree::Tree;
use crate::vector::{Vector, add, norm, scale, sub};

/// A hole that has to find room.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Room {
    /// The axis along which it runs.
    pub(super) axis: usize,
    /// How far it reaches from the cut, against the axis and along it, mm.
    pub(super) reach_mm: [f64; 2],
    /// From its middle to the nearest skin, mm.
    pub(super) clear_mm: f64,
    /// How near to the cut the skin may come, mm: a cut that is itself skin is left that far.
    pub(super) from_mm: f64,
}

/// Places looked at along the longer side of a cut. Fewer and a wall that takes a pin is missed,
/// more and large patterns wait for seconds.
const PLACES: f64 = 64.0;

/// Places looked at along each hole.
const ALONG: usize = 5;

/// The places of a cut where a hole has room, row by row; `cut_at` gives the place of the cut
/// along the axis.
pub(super) fn places(
    mesh: &Mesh,
    tree: &Tree,
    within: [Vector; 2],
    room: Room,
    cut_at: impl Fn([f64; 2]) -> Option<f64> + Sync,
) -> Vec<Vector> {
    let (u, v) = ((room.axis + 1) % 3, (room.axis + 2) % 3);
    let [low, high] = within;
    let longer = (high[u] - low[u]).max(high[v] - low[v]);
    let step = (longer / PLACES).max(f64::MIN_POSITIVE);
    let count = |axis: usize| ((high[axis] - low[axis]) / step).floor() as usize;
    let start = |axis: usize| {
        let rest = (high[axis] - low[axis]) - count(axis) as f64 * step;
        low[axis] + rest / 2.0
    };
    let is_far = |place: &Vector| {
        [u, v].into_iter().all(|axis| {
            place[axis] - low[axis] >= room.clear_mm && high[axis] - place[axis] >= room.clear_mm
        })
    };
    let place_at = |row: usize, column: usize| {
        let mut place = [0.0; 3];
        place[u] = start(u) + column as f64 * step;
        place[v] = start(v) + row as f64 * step;
        moved(mesh, tree, place, room, step, &cut_at).filter(is_far)
    };
    let rows = (0..=count(v)).into_par_iter();
    rows.flat_map_iter(|row| (0..=count(u)).filter_map(move |column| place_at(row, column)))
        .collect()
}

/// Steps by which a place is moved away from the skin: in a straight wall the second brings it to
/// the middle, in a bend a few more.
const MOVES: usize = 6;

/// The place on the cut, moved away from the skin by no more than `most_mm` where it lies too near:
/// the middle of a wall that is just wide enough lies between the places looked at.
fn moved(
    mesh: &Mesh,
    tree: &Tree,
    start: Vector,
    room: Room,
    most_mm: f64,
    cut_at: &impl Fn([f64; 2]) -> Option<f64>,
) -> Option<Vector> {
    let (u, v) = ((room.axis + 1) % 3, (room.axis + 2) % 3);
    let mut place = start;
    for _ in 0..MOVES {
        place[room.axis] = cut_at([place[u], place[v]])?;
        let Some(away) = tightest(mesh, tree, place, room)? else {
            return Some(place);
        };
        place[u] += away[u];
        place[v] += away[v];
        if (place[u] - start[u]).hypot(place[v] - start[v]) > most_mm {
            return None;
        }
    }
    None
}

/// Where along the hole the skin lies nearest, if too near: how far to move away from it; `None`
/// where the hole leaves the solid.
fn tightest(mesh: &Mesh, tree: &Tree, place: Vector, room: Room) -> Option<Option<Vector>> {
    let [back, onward] = room.reach_mm;
    let mut least: Option<(f64, Vector)> = None;
    for i in 0..ALONG {
        let offset = -back + i as f64 / (ALONG - 1) as f64 * (back + onward);
        if offset.abs() < room.from_mm {
            continue;
        }
        let at = add(place, scale(along(room.axis, 1.0), offset));
        if !is_inside(mesh, tree, at) {
            return None;
        }
        let Some(skin) = nearest(mesh, tree, at, room.clear_mm) else {
            continue;
        };
        if least.is_none_or(|(distance, _)| skin.distance < distance) {
            let short = room.clear_mm * (1.0 + 1e-6) - skin.distance;
            let away = sub(at, skin.point);
            let share = short / skin.distance.max(f64::MIN_POSITIVE);
            least = Some((skin.distance, scale(away, share)));
        }
    }
    Some(least.map(|(_, away)| away))
}

/// The two places that lie farthest apart, if they lie at least so far apart.
pub(super) fn farthest_apart(places: &[Vector], least_mm: f64) -> Option<[Vector; 2]> {
    let mut ends: Vec<Vector> = Vec::new();
    for direction in 0..DIRECTIONS {
        let [a, b, c] = direction_of(direction);
        let far = |p: &Vector| p[0] * a + p[1] * b + p[2] * c;
        ends.extend(places.iter().max_by(|p, q| far(p).total_cmp(&far(q))));
    }
    let mut best: Option<([Vector; 2], f64)> = None;
    for (i, &a) in ends.iter().enumerate() {
        for &b in &ends[..i] {
            let apart = norm(sub(a, b));
            if apart >= least_mm && best.is_none_or(|(_, most)| apart > most) {
                best = Some(([b, a], apart));
            }
        }
    }
    best.map(|(pair, _)| pair)
}

/// Directions in which the ends are looked for: the pair found is shorter than the longest by less
/// than a hundredth.
const DIRECTIONS: usize = 48;

/// Directions round the three axes in turn.
fn direction_of(number: usize) -> Vector {
    let angle = std::f64::consts::TAU * (number / 3) as f64 / (DIRECTIONS / 3) as f64;
    let (sin, cos) = angle.sin_cos();
    [[cos, sin, 0.0], [0.0, cos, sin], [sin, 0.0, cos]][number % 3]
}

/// The place nearest to another.
pub(super) fn nearest_to(places: &[Vector], wanted: Vector) -> Option<Vector> {
    let off = |place: &&Vector| norm(sub(**place, wanted));
    places
        .iter()
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .copied()
}

/// Diameters of rod that a shop has, mm, the thickest first.
const RODS_MM: [f64; 7] = [10.0, 8.0, 6.0, 5.0, 4.0, 3.0, 2.0];

/// Diameters to try for a pin in a pattern of a size, the wanted one first: 4 mm up to 100 mm,
/// 6 mm up to 250 mm, then 8 and 10 mm (common practice, no source).
pub(super) fn diameters(size_mm: f64, wanted: Option<f64>) -> Vec<f64> {
    if let Some(wanted) = wanted {
        return vec![wanted];
    }
    let by_size = match size_mm {
        size if size <= 100.0 => 4.0,
        size if size <= 250.0 => 6.0,
        size if size <= 500.0 => 8.0,
        _ => 10.0,
    };
    RODS_MM.into_iter().filter(|rod| *rod <= by_size).collect()
}

/// Length of a pin in each of the two pieces, as a multiple of its diameter: shorter ones tilt,
/// longer ones bind (common practice, no source).
pub(super) const PIN_DEPTH: f64 = 2.0;

/// The same for two halves, in the wide hole and in the tight one, the best first: a rod that sits
/// tight over its whole length stands straight though the other half has room for a peg only. A
/// peg shorter than these slips out when the flask is jarred (common practice, no source).
pub(super) const PIN_DEPTHS: [[f64; 2]; 5] = [
    [PIN_DEPTH, PIN_DEPTH],
    [1.3, PIN_DEPTH],
    [0.8, PIN_DEPTH],
    [1.3, 1.3],
    [0.8, 1.3],
];

/// Wall left around a hole as a multiple of its diameter, at least [`LEAST_WALL_MM`].
const WALL: f64 = 0.4;

/// Two lines of a nozzle of 0.4 mm on either side: less splits when the pin is pressed in.
const LEAST_WALL_MM: f64 = 1.6;

/// From the middle of a hole to the nearest skin.
pub(super) fn clear_mm(diameter_mm: f64) -> f64 {
    diameter_mm / 2.0 + (WALL * diameter_mm).max(LEAST_WALL_MM)
}
