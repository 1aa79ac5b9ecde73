//! Joining corners that are the same point: by equal numbers first, then across small gaps.

use crate::mesh::{Edges, Mesh, Side, Soup};
use crate::vector::{Vector, norm, sub};

/// Gaps that may be joined, as shares of the box diagonal, in the order they are tried.
///
/// The narrowest is a few times the rounding of a single-precision file, the widest 0.01 mm on a
/// part of one metre. Wider would join edges that a pattern maker can see.
pub const GAPS: [f64; 3] = [1e-7, 1e-6, 1e-5];

/// Most comparisons spent on looking for close points; a mesh with more gaps than that is not
/// nearly closed.
const MOST_COMPARISONS: usize = 30_000_000;

/// A mesh with close points joined.
pub struct Joined {
    /// The mesh.
    pub mesh: Mesh,
    /// Number of points that were joined to another.
    pub count: usize,
    /// Whether the gaps were no wider than the rounding of the file.
    pub is_rounding: bool,
}

/// Joins points with equal coordinates; facets keep their order.
pub fn equal_points(soup: &Soup) -> Mesh {
    let mut table = Table::for_points(soup.points.len());
    let mut points = Vec::with_capacity(soup.points.len() / 4);
    let index: Vec<u32> = soup
        .points
        .iter()
        .map(|&[x, y, z]| table.index_of([x + 0.0, y + 0.0, z + 0.0], &mut points))
        .collect();
    let triangles = soup
        .triangles
        .iter()
        .map(|t| t.map(|point| index[point as usize]))
        .collect();
    Mesh { points, triangles }
}

/// Joins points of open sides that lie closer together than one of [`GAPS`].
///
/// The narrowest gap that closes the mesh is taken, else the one that leaves fewest open sides.
/// Points that are not on an open side never move. Nothing is given if no gap helps.
pub fn near_points(mesh: &Mesh, open: &[Side]) -> Option<Joined> {
    let diagonal = mesh.diagonal();
    let loose = loose_points(mesh, open);
    let mut best: Option<Joined> = None;
    let mut fewest = open.len();
    for gap in GAPS {
        let (joined, count) = join(mesh, &loose, gap * diagonal)?;
        if count == 0 {
            continue;
        }
        let left = Edges::of(&joined).open().len();
        if left < fewest {
            fewest = left;
            let is_rounding = gap <= GAPS[0];
            best = Some(Joined {
                mesh: joined,
                count,
                is_rounding,
            });
        }
        if left == 0 {
            break;
        }
    }
    best
}

/// Hash table from coordinates to point numbers, linear probing, never more than half full.
struct Table {
    slots: Vec<u32>,
    mask: usize,
}

impl Table {
    fn for_points(count: usize) -> Table {
        let size = (2 * count).next_power_of_two().max(16);
        Table {
            slots: vec![u32::MAX; size],
            mask: size - 1,
        }
    }

    fn index_of(&mut self, point: Vector, points: &mut Vec<Vector>) -> u32 {
        let mut slot = hash(point) as usize & self.mask;
        loop {
            let index = self.slots[slot];
            if index == u32::MAX {
                self.slots[slot] = points.len() as u32;
                points.push(point);
                return self.slots[slot];
            }
            if points[index as usize] == point {
                return index;
            }
            slot = (slot + 1) & self.mask;
        }
    }
}

/// Mixes the bits of three coordinates; the constants are odd and otherwise arbitrary.
fn hash(point: Vector) -> u64 {
    let mut sum = 0u64;
    for value in point {
        sum = (sum ^ value.to_bits()).wrapping_mul(0x9E37_79B9_7F4A_7C15);
        sum ^= sum >> 29;
    }
    sum.wrapping_mul(0xBF58_476D_1CE4_E5B9) >> 20
}

/// The points of open sides, sorted by their first coordinate.
fn loose_points(mesh: &Mesh, open: &[Side]) -> Vec<(f64, u32)> {
    let mut loose: Vec<u32> = open.iter().flat_map(|side| [side.low, side.high]).collect();
    loose.sort_unstable();
    loose.dedup();
    let at = |point: u32| (mesh.points[point as usize][0], point);
    let mut loose: Vec<(f64, u32)> = loose.into_iter().map(at).collect();
    loose.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    loose
}

fn join(mesh: &Mesh, loose: &[(f64, u32)], gap: f64) -> Option<(Mesh, usize)> {
    let at = |point: u32| mesh.points[point as usize];
    let mut target: Vec<u32> = (0..mesh.points.len() as u32).collect();
    let mut comparisons = 0;
    let mut count = 0;
    for (i, &(x, a)) in loose.iter().enumerate() {
        for &(_, b) in loose[i + 1..].iter().take_while(|other| other.0 - x <= gap) {
            comparisons += 1;
            if comparisons > MOST_COMPARISONS {
                return None;
            }
            let (root_a, root_b) = (root(&target, a), root(&target, b));
            if root_a != root_b && norm(sub(at(a), at(b))) <= gap {
                target[root_a.max(root_b) as usize] = root_a.min(root_b);
                count += 1;
            }
        }
    }
    let triangles = mesh
        .triangles
        .iter()
        .map(|t| t.map(|point| root(&target, point)))
        .collect();
    Some((
        Mesh {
            points: mesh.points.clone(),
            triangles,
        },
        count,
    ))
}

fn root(target: &[u32], mut point: u32) -> u32 {
    while target[point as usize] != point {
        point = target[point as usize];
    }
    point
}
