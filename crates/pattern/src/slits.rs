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
/// the area of that facet. Gives the number mended; a needle without such a neighbour stays.
pub fn mend_needles(mesh: &mut Mesh) -> usize {
    let mut mended = 0;
    for _ in 0..8 {
        let needles = needles(mesh);
        if needles.is_empty() {
            break;
        }
        let done = mend_some_needles(mesh, &needles);
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
    let [a, b, c] = mesh.corners(facet);
    let longest = [sub(b, a), sub(c, b), sub(a, c)]
        .map(norm)
        .into_iter()
        .fold(0.0, f64::max);
    let height = norm(mesh.normal(facet)) / longest;
    !(height > NO_HEIGHT * longest.max(NO_HEIGHT * diagonal))
}

/// Corner of a facet from which its longest side starts.
fn longest_side(mesh: &Mesh, facet: usize) -> usize {
    let corners = mesh.corners(facet);
    let length = |i: usize| norm(sub(corners[(i + 1) % 3], corners[i]));
    let longer = |a: usize, b: usize| if length(b) > length(a) { b } else { a };
    longer(longer(0, 1), 2)
}

fn mend_some_needles(mesh: &mut Mesh, needles: &[u32]) -> usize {
    let edges = Edges::of(mesh);
    let mut across = vec![u32::MAX; 3 * mesh.triangles.len()];
    for group in edges.groups().filter(|group| group.len() == 2) {
        across[group[0].id as usize] = group[1].id;
        across[group[1].id as usize] = group[0].id;
    }
    let mut is_touched = vec![false; mesh.triangles.len()];
    let mut done = 0;
    for &needle in needles {
        let needle = needle as usize;
        let side = 3 * needle + longest_side(mesh, needle);
        let other = across[side] as usize;
        if other == u32::MAX as usize || is_touched[needle] || is_touched[other / 3] {
            continue;
        }
        let middle = mesh.triangles[needle][(side % 3 + 2) % 3];
        let (from, to) = mesh.ends(other as u32);
        let far = mesh.triangles[other / 3][(other % 3 + 2) % 3];
        if far == middle {
            continue;
        }
        mesh.triangles[other / 3] = [from, middle, far];
        mesh.triangles[needle] = [middle, to, far];
        is_touched[needle] = true;
        is_touched[other / 3] = true;
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
