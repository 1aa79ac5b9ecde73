//! Facets that have no area, and edges that end in the middle of another edge.
//!
//! Both are mended by giving a facet a corner that already lies on its side; nothing moves.

use crate::mesh::{Edges, Mesh, Side};
use crate::vector::{cross, dot, norm, sub};

/// Distance from a side, as a share of the box diagonal, within which a point lies on it.
const ON_SIDE: f64 = 1e-5;

/// Height of a facet over its longest side, as a share of that side and of the box diagonal,
/// below which it has no area.
const NO_HEIGHT: f64 = 1e-9;

/// Length of a side, as a share of the box diagonal, below which its ends are one point.
const NO_LENGTH: f64 = 1e-7;

/// A mended needle may leave another beside it; so many rounds settle any fan met in practice.
const MOST_ROUNDS: usize = 16;

/// Most comparisons of open sides with loose points.
const MOST_COMPARISONS: usize = 50_000_000;

/// Facets without area though their corners differ.
pub fn needles(mesh: &Mesh) -> Vec<u32> {
    let diagonal = mesh.diagonal();
    let facets = 0..mesh.triangles.len() as u32;
    facets
        .filter(|&facet| is_needle(mesh, facet as usize, diagonal))
        .collect()
}

/// Gives the middle corner of each needle to the facet across its longest side: the two then share
/// the area of that facet. A needle with two corners closer than rounding loses its short side
/// instead, and with it itself and the facet across. Gives the number mended; a needle that can
/// only make another one stays.
pub fn mend_needles(mesh: &mut Mesh) -> usize {
    let mut mended = 0;
    for _ in 0..MOST_ROUNDS {
        let needles = needles(mesh);
        let done = match join_short_sides(mesh, &needles) {
            0 => split_neighbours(mesh, &needles),
            joined => joined,
        };
        mended += done;
        if done == 0 {
            break;
        }
    }
    mended
}

/// Gives open sides the loose points that lie on them, so that they meet the sides across.
/// Gives the number of sides that were split.
pub fn zip(mesh: &mut Mesh) -> usize {
    let mut split = 0;
    for _ in 0..4 {
        let open = Edges::of(mesh).open();
        let done = zip_once(mesh, &open);
        split += done;
        if done == 0 {
            break;
        }
    }
    split
}

fn is_needle(mesh: &Mesh, facet: usize, diagonal: f64) -> bool {
    is_needle_of(mesh, mesh.triangles[facet], diagonal)
}

fn is_needle_of(mesh: &Mesh, triangle: [u32; 3], diagonal: f64) -> bool {
    let [a, b, c] = triangle.map(|point| mesh.points[point as usize]);
    let (first, second) = (sub(b, a), sub(c, a));
    let longest = norm(first).max(norm(second)).max(norm(sub(c, b)));
    let height = norm(cross(first, second)) / longest;
    height.is_nan() || height <= NO_HEIGHT * longest.max(NO_HEIGHT * diagonal)
}

/// Corner of a facet from which its longest side starts.
fn longest_side(mesh: &Mesh, facet: usize) -> usize {
    let corners = mesh.corners(facet);
    let length = |i: usize| norm(sub(corners[(i + 1) % 3], corners[i]));
    let longer = |a: usize, b: usize| if length(b) > length(a) { b } else { a };
    longer(longer(0, 1), 2)
}

/// Joins the ends of the short sides of needles, and drops what collapses.
fn join_short_sides(mesh: &mut Mesh, needles: &[u32]) -> usize {
    let shortest = NO_LENGTH * mesh.diagonal();
    let mut target: Vec<u32> = (0..mesh.points.len() as u32).collect();
    for &needle in needles {
        for side in 3 * needle..3 * needle + 3 {
            let (from, to) = mesh.ends(side);
            let length = norm(sub(mesh.points[from as usize], mesh.points[to as usize]));
            let is_free = target[from as usize] == from && target[to as usize] == to;
            if from != to && length <= shortest && is_free {
                target[from.max(to) as usize] = from.min(to);
            }
        }
    }
    let before = mesh.triangles.len();
    for point in mesh.triangles.iter_mut().flatten() {
        *point = target[*point as usize];
    }
    mesh.triangles
        .retain(|&[a, b, c]| a != b && b != c && c != a);
    before - mesh.triangles.len()
}

fn split_neighbours(mesh: &mut Mesh, needles: &[u32]) -> usize {
    let edges = Edges::of(mesh);
    let mut across = vec![u32::MAX; 3 * mesh.triangles.len()];
    for group in edges.groups().filter(|group| group.len() == 2) {
        across[group[0].id as usize] = group[1].id;
        across[group[1].id as usize] = group[0].id;
    }
    let diagonal = mesh.diagonal();
    let mut is_touched = vec![false; mesh.triangles.len()];
    let mut done = 0;
    for &needle in needles {
        let needle = needle as usize;
        let side = 3 * needle + longest_side(mesh, needle);
        let other = across[side];
        if other == u32::MAX || is_touched[needle] || is_touched[other as usize / 3] {
            continue;
        }
        let (other_facet, other_corner) = (other as usize / 3, other as usize % 3);
        let middle = mesh.triangles[needle][(side % 3 + 2) % 3];
        let far = mesh.triangles[other_facet][(other_corner + 2) % 3];
        let (from, to) = mesh.ends(other);
        let old = (mesh.triangles[other_facet], mesh.triangles[needle]);
        mesh.triangles[other_facet] = [from, middle, far];
        mesh.triangles[needle] = [middle, to, far];
        let makes_needle = far == middle
            || is_needle(mesh, other_facet, diagonal)
            || is_needle(mesh, needle, diagonal);
        if makes_needle && !is_needle_of(mesh, old.0, diagonal) {
            (mesh.triangles[other_facet], mesh.triangles[needle]) = old;
            continue;
        }
        is_touched[needle] = true;
        is_touched[other_facet] = true;
        done += 1;
    }
    done
}

fn zip_once(mesh: &mut Mesh, open: &[Side]) -> usize {
    let near = ON_SIDE * mesh.diagonal();
    let mut loose: Vec<u32> = open.iter().flat_map(|side| [side.low, side.high]).collect();
    loose.sort_unstable();
    loose.dedup();
    loose.sort_by(|&a, &b| {
        let x = |point: u32| mesh.points[point as usize][0];
        x(a).total_cmp(&x(b)).then(a.cmp(&b))
    });
    let mut is_touched = vec![false; mesh.triangles.len()];
    let mut comparisons = 0;
    let mut done = 0;
    for side in open {
        if is_touched[side.facet()] || comparisons > MOST_COMPARISONS {
            continue;
        }
        let on_side = points_on(mesh, side.id, &loose, near, &mut comparisons);
        if !on_side.is_empty() {
            is_touched[side.facet()] = true;
            split(mesh, side.id, &on_side);
            done += 1;
        }
    }
    done
}

/// Loose points strictly within a side, from its start to its end.
fn points_on(
    mesh: &Mesh,
    side: u32,
    loose: &[u32],
    near: f64,
    comparisons: &mut usize,
) -> Vec<u32> {
    let (from, to) = mesh.ends(side);
    let (start, end) = (mesh.points[from as usize], mesh.points[to as usize]);
    let along = sub(end, start);
    let length = norm(along);
    let x = |point: &u32| mesh.points[*point as usize][0];
    let first = loose.partition_point(|point| x(point) < start[0].min(end[0]) - near);
    let mut found: Vec<(f64, u32)> = Vec::new();
    for &point in loose[first..]
        .iter()
        .take_while(|p| x(p) <= start[0].max(end[0]) + near)
    {
        *comparisons += 1;
        let offset = sub(mesh.points[point as usize], start);
        let share = dot(offset, along) / length;
        let distance = norm(cross(offset, along)) / length;
        if distance <= near && share > near && share < length - near {
            found.push((share, point));
        }
    }
    found.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    found.into_iter().map(|(_, point)| point).collect()
}

fn split(mesh: &mut Mesh, side: u32, on_side: &[u32]) {
    let facet = side as usize / 3;
    let (from, to) = mesh.ends(side);
    let far = mesh.triangles[facet][(side as usize % 3 + 2) % 3];
    let mut start = from;
    for &point in on_side {
        mesh.triangles.push([start, point, far]);
        start = point;
    }
    mesh.triangles[facet] = [start, to, far];
}
