//! The way of a core's breath: from each print through the middle of the core.
//!
//! The core is filled with cells. From one end to the other the way is sought that is cheapest when
//! a cell costs the more the nearer it lies to the skin: it keeps to the middle, and takes no
//! detour. A wire, a string of wax or a drill has to follow it.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use crate::cells::Cells;
use crate::depth::depths;
use crate::mesh::Mesh;
use crate::vector::{Vector, norm, sub};

/// A vent through a core.
#[derive(Clone, Debug, PartialEq)]
pub struct Vent {
    /// Its course, mm in the axes of the core.
    pub course_mm: Vec<Vector>,
    /// Its length, mm.
    pub length_mm: f64,
    /// Least distance from the skin but for its ends, mm: the vent has to be thinner than twice
    /// this.
    pub clear_mm: f64,
    /// Whether one straight wire does it.
    pub is_straight: bool,
}

/// Cells across the mean wall of a core: enough to tell its middle from its skin.
const ACROSS: f64 = 8.0;

/// A course that strays from the straight line by no more than this share of its clear width can
/// be pricked with a wire.
const STRAIGHT: f64 = 0.5;

/// Vents of a core, closed and wound outward, that breathes at `ends`: from one end through to each
/// other, or from the only one to the deepest place. Empty where the core is too thin for a vent.
pub fn vents(core: &Mesh, volume_mm3: f64, ends: &[Vector]) -> Vec<Vent> {
    let wall_mm = 2.0 * volume_mm3 / core.area().max(f64::MIN_POSITIVE);
    let [low, high] = core.bounds();
    let extents = sub(high, low);
    let size_mm = (wall_mm / ACROSS).max(Cells::suiting_size_mm(volume_mm3, core.area(), extents));
    let cells = Cells::fill(core, size_mm);
    let depth = depths(&cells);
    let Some((first, others)) = ends.split_first() else {
        return Vec::new();
    };
    let Some(start) = nearest(&cells, *first) else {
        return Vec::new();
    };
    let goals: Vec<usize> = match others.is_empty() {
        true => deepest(&depth).into_iter().collect(),
        false => others
            .iter()
            .filter_map(|&end| nearest(&cells, end))
            .collect(),
    };
    let came_from = cheapest(&cells, &depth, start);
    goals
        .into_iter()
        .filter_map(|goal| vent(&cells, &depth, &came_from, start, goal))
        .collect()
}

/// The cell of the core whose middle is nearest to a place.
fn nearest(cells: &Cells, place: Vector) -> Option<usize> {
    let solid = (0..cells.volume_mm3.len()).filter(|&cell| cells.is_solid(cell));
    let away = |cell: &usize| norm(sub(cells.middle_mm(*cell), place));
    solid.min_by(|a, b| away(a).total_cmp(&away(b)))
}

fn deepest(depth: &[f64]) -> Option<usize> {
    (0..depth.len()).max_by(|&a, &b| depth[a].total_cmp(&depth[b]))
}

/// Marks a cell that no way has reached.
const NOWHERE: usize = usize::MAX;

/// From which cell the cheapest way from `start` comes to each cell.
fn cheapest(cells: &Cells, depth: &[f64], start: usize) -> Vec<usize> {
    let mut cost = vec![f64::INFINITY; depth.len()];
    let mut came_from = vec![NOWHERE; depth.len()];
    let mut open = BinaryHeap::from([(Reverse(0u64), start)]);
    cost[start] = 0.0;
    came_from[start] = start;
    while let Some((Reverse(bits), cell)) = open.pop() {
        if f64::from_bits(bits) > cost[cell] {
            continue;
        }
        for stride in cells.strides() {
            for next in [cell.wrapping_sub(stride), cell + stride] {
                if next >= depth.len() || !cells.is_solid(next) {
                    continue;
                }
                let share = (depth[next] / cells.size_mm).max(0.25);
                let through = cost[cell] + 1.0 / (share * share);
                if through < cost[next] {
                    cost[next] = through;
                    came_from[next] = cell;
                    // Costs are never negative, so that their bits sort as they do.
                    open.push((Reverse(through.to_bits()), next));
                }
            }
        }
    }
    came_from
}

fn vent(
    cells: &Cells,
    depth: &[f64],
    came_from: &[usize],
    start: usize,
    goal: usize,
) -> Option<Vent> {
    let mut way = vec![goal];
    let mut at = goal;
    while at != start {
        at = came_from[at];
        if at == NOWHERE {
            return None;
        }
        way.push(at);
    }
    way.reverse();
    // The ends lie on the skin: what counts is the middle half of the way.
    let inner = &way[way.len() / 4..way.len() - way.len() / 4];
    let clear_mm = inner
        .iter()
        .map(|&cell| depth[cell])
        .fold(f64::INFINITY, f64::min);
    let middles: Vec<Vector> = way.iter().map(|&cell| cells.middle_mm(cell)).collect();
    let course_mm = thinned(&middles, STRAIGHT * clear_mm.max(cells.size_mm));
    let legs = course_mm.windows(2).map(|leg| norm(sub(leg[1], leg[0])));
    Some(Vent {
        length_mm: legs.sum(),
        is_straight: course_mm.len() == 2,
        clear_mm,
        course_mm,
    })
}

/// The course with as few corners as stay within `within_mm` of the way.
fn thinned(way: &[Vector], within_mm: f64) -> Vec<Vector> {
    let (Some(&first), Some(&last)) = (way.first(), way.last()) else {
        return Vec::new();
    };
    let off = |at: &usize| off_line(way[*at], first, last);
    let far = (1..way.len().saturating_sub(1)).max_by(|a, b| off(a).total_cmp(&off(b)));
    match far.filter(|at| off(at) > within_mm) {
        None => vec![first, last],
        Some(at) => {
            let mut course = thinned(&way[..=at], within_mm);
            course.pop();
            course.extend(thinned(&way[at..], within_mm));
            course
        }
    }
}

fn off_line(place: Vector, from: Vector, to: Vector) -> f64 {
    let (line, aside) = (sub(to, from), sub(place, from));
    let length = norm(line);
    match length > 0.0 {
        true => norm(crate::vector::cross(line, aside)) / length,
        false => norm(aside),
    }
}
