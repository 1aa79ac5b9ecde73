//! Straight lines through a mesh: where those along an axis enter and leave it, and what one in
//! any direction meets first.

use rayon::prelude::*;

use crate::mesh::Mesh;
use crate::tree::Tree;
use crate::vector::{Vector, cross, dot, sub};

/// One passage of a line through a facet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hit {
    /// Coordinate along the axis.
    pub at: f64,
    /// The facet.
    pub facet: u32,
    /// +1 where the line enters an outward-wound solid, −1 where it leaves.
    pub step: i32,
}

/// Volumes counted by how many shells lie around them.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Counted {
    /// Volume of the joined solid: inside at least once.
    pub joined: f64,
    /// Volume inside twice or more; a part inside thrice counts twice.
    pub doubled: f64,
    /// Volume inside less than never, where a surface is turned inside out.
    pub inverted: f64,
}

/// Lines along each side of the box per axis: a doubled region a hundredth of the part across is
/// met by at least one line.
const LINES: usize = 100;

/// Passages of the line parallel to `axis` through `through`, in order along the axis.
pub fn along(mesh: &Mesh, tree: &Tree, axis: usize, through: Vector) -> Vec<Hit> {
    let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
    let point = [through[u], through[v]];
    let mut hits = Vec::new();
    tree.visit(
        0,
        |b| {
            b[0][u] <= point[0] && point[0] <= b[1][u] && b[0][v] <= point[1] && point[1] <= b[1][v]
        },
        |leaf| {
            let facets = tree.facets_in(leaf).map(|position| tree.order[position]);
            hits.extend(facets.filter_map(|facet| hit(mesh, facet, axis, point)));
            true
        },
    );
    hits.sort_by(|a, b| a.at.total_cmp(&b.at).then(a.facet.cmp(&b.facet)));
    hits
}

/// What a line from `from` in `direction`, of any length, meets first: the facet, and how many
/// lengths of `direction` away. Facets seen edge-on are passed by.
pub fn first_met(mesh: &Mesh, tree: &Tree, from: Vector, direction: Vector) -> Option<(u32, f64)> {
    let mut met: Option<(u32, f64)> = None;
    tree.wide().along(from, direction, |facet| {
        let nearest = met.map_or(f64::MAX, |(_, at)| at);
        match meets_at(mesh, facet, from, direction) {
            Some(at) if at < nearest => {
                met = Some((facet, at));
                at
            }
            _ => nearest,
        }
    });
    met
}

/// The same for many lines, each from a place in a direction, in their order. Lines that run close
/// to each other are followed one after another, so that what they meet is still at hand.
pub fn first_met_each(
    mesh: &Mesh,
    tree: &Tree,
    lines: &[(Vector, Vector)],
) -> Vec<Option<(u32, f64)>> {
    let wide = tree.wide();
    let keys = lines
        .par_iter()
        .map(|(from, direction)| wide.key(*from, *direction));
    let mut keyed: Vec<(u64, u32)> = keys.zip(0..lines.len() as u32).collect();
    keyed.par_sort_unstable();
    let followed = keyed.par_iter().map(|&(_, line)| {
        let (from, direction) = lines[line as usize];
        (line, first_met(mesh, tree, from, direction))
    });
    let mut met = vec![None; lines.len()];
    for (line, found) in followed.collect::<Vec<_>>() {
        met[line as usize] = found;
    }
    met
}

/// Where a line meets a facet, sides included (method of Möller and Trumbore, from memory).
fn meets_at(mesh: &Mesh, facet: u32, from: Vector, direction: Vector) -> Option<f64> {
    let [a, b, c] = mesh.corners(facet as usize);
    let (ab, ac) = (sub(b, a), sub(c, a));
    let across = cross(direction, ac);
    let height = dot(ab, across);
    if height == 0.0 {
        return None;
    }
    let offset = sub(from, a);
    let u = dot(offset, across) / height;
    if !(0.0..=1.0).contains(&u) {
        return None;
    }
    let turned = cross(offset, ab);
    let v = dot(direction, turned) / height;
    let at = dot(ac, turned) / height;
    (v >= 0.0 && u + v <= 1.0 && at > 0.0).then_some(at)
}

/// Volumes of a closed mesh by lines along the three axes, their mean.
pub fn count_volumes(mesh: &Mesh, tree: &Tree) -> Counted {
    let mut mean = Counted::default();
    for axis in 0..3 {
        let one = count_along(mesh, tree, axis);
        mean.joined += one.joined / 3.0;
        mean.doubled += one.doubled / 3.0;
        mean.inverted += one.inverted / 3.0;
    }
    mean
}

fn count_along(mesh: &Mesh, tree: &Tree, axis: usize) -> Counted {
    let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
    let [low, high] = mesh.bounds();
    let step = [u, v].map(|i| (high[i] - low[i]) / LINES as f64);
    let rows: Vec<Counted> = (0..LINES)
        .into_par_iter()
        .map(|row| {
            let mut sum = Counted::default();
            for column in 0..LINES {
                let mut through = low;
                through[u] =
                    low[u] + step[0] * (row as f64 + offset(column, 0.618_033_988_749_895));
                through[v] =
                    low[v] + step[1] * (column as f64 + offset(row, 0.414_213_562_373_095));
                add_line(&along(mesh, tree, axis, through), &mut sum);
            }
            sum
        })
        .collect();
    let share = step[0] * step[1];
    rows.into_iter()
        .fold(Counted::default(), |all, row| Counted {
            joined: all.joined + row.joined * share,
            doubled: all.doubled + row.doubled * share,
            inverted: all.inverted + row.inverted * share,
        })
}

/// Places lines off the middle of their cell, each row differently, so that they keep clear of
/// edges drawn on round figures: multiples of an irrational number, another one per direction.
pub fn offset(index: usize, irrational: f64) -> f64 {
    ((index as f64 + 0.5) * irrational).fract()
}

/// A line that does not come out of the solid it went into ran along an edge; it is left out.
fn add_line(hits: &[Hit], sum: &mut Counted) {
    if hits.iter().map(|hit| hit.step).sum::<i32>() != 0 {
        return;
    }
    let mut depth = 0;
    for pair in hits.windows(2) {
        depth += pair[0].step;
        let length = pair[1].at - pair[0].at;
        sum.joined += if depth >= 1 { length } else { 0.0 };
        sum.doubled += length * f64::from((depth - 1).max(0));
        sum.inverted += length * f64::from((-depth).max(0));
    }
}

/// The passage of the line parallel to `axis` through `point` through one facet, if it meets it;
/// the point is given along the two axes that follow on `axis`.
///
/// A line through a side shared by two facets hits exactly one of them: the sides of both are
/// judged by the same products, and a tie falls to the facet for which the side runs upward.
pub fn hit(mesh: &Mesh, facet: u32, axis: usize, point: [f64; 2]) -> Option<Hit> {
    let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
    let corners = mesh.corners(facet as usize);
    let flat = corners.map(|c| [c[u] - point[0], c[v] - point[1]]);
    let sides = [[1, 2], [2, 0], [0, 1]].map(|[i, j]: [usize; 2]| (flat[i], flat[j]));
    let weights = sides.map(|(p, q)| p[0] * q[1] - p[1] * q[0]);
    let is_left = [0, 1, 2].map(|i| {
        let (p, q) = sides[i];
        let falls_here = q[1] > p[1] || q[1] == p[1] && q[0] < p[0];
        weights[i] > 0.0 || weights[i] == 0.0 && falls_here
    });
    let sum: f64 = weights.iter().sum();
    if is_left[0] != is_left[1] || is_left[1] != is_left[2] || sum == 0.0 {
        return None;
    }
    let at = (0..3).map(|i| weights[i] * corners[i][axis]).sum::<f64>() / sum;
    Some(Hit {
        at,
        facet,
        step: if is_left[0] { -1 } else { 1 },
    })
}
