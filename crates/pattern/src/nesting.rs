//! Which shell is metal, which is a void, which was wound inside out.

use crate::mesh::Mesh;
use crate::rays;
use crate::shells::Shells;
use crate::solid::sums_by_shell;
use crate::tree::Tree;
use crate::vector::{Vector, add, norm, scale};

/// What a shell bounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Metal.
    Body,
    /// A void within metal.
    Void,
    /// Metal that lies within the metal of another shell, and so would be counted twice.
    BodyInBody,
    /// Next to nothing: two sheets on one another.
    Flake,
}

/// One shell as it stands after winding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nested {
    /// What it bounds.
    pub role: Role,
    /// Volume it encloses, never negative, in the unit of the points cubed.
    pub volume: f64,
    /// A point on it.
    pub place: Vector,
    /// Whether it was turned as a whole.
    pub was_inverted: bool,
}

/// Mean thickness, as a share of the box diagonal, below which a shell is a flake.
const FLAKE: f64 = 1e-6;

/// Facets per shell whose middles are asked what lies around them.
const ASKED: usize = 3;

/// Finds what each shell bounds and turns bodies outward, voids inward.
///
/// A shell in the open is metal; if it was wound inward it is turned. A shell within metal is a
/// void if it was wound inward in the file, or against the shell around it (a whole file turned
/// inside out); else it is a body within a body. A shell within a void is metal again.
///
/// Without a `tree` the mesh must be a single shell.
pub fn settle(mesh: &mut Mesh, shells: &Shells, tree: Option<&Tree>) -> Vec<Nested> {
    let sums = sums_by_shell(mesh, &shells.shell_of, shells.shells.len());
    let around = match tree {
        Some(tree) => shells_around(mesh, shells, tree),
        None => vec![Vec::new(); sums.len()],
    };
    let flake = FLAKE * mesh.diagonal();
    let mut nested: Vec<Option<Nested>> = vec![None; sums.len()];
    let mut outermost_first: Vec<usize> = (0..sums.len()).collect();
    outermost_first.sort_by_key(|&shell| around[shell].len());
    for shell in outermost_first {
        let within = around[shell].iter().filter_map(|&outer| {
            let settled = nested[outer as usize].filter(|n| n.role != Role::Flake)?;
            Some((
                around[outer as usize].len(),
                sums[outer as usize].volume < 0.0,
                settled.role,
            ))
        });
        let parent = within.max_by_key(|&(depth, _, _)| depth);
        let is_inward = sums[shell].volume < 0.0;
        let role = match parent {
            _ if 2.0 * sums[shell].volume.abs() <= flake * sums[shell].area => Role::Flake,
            None | Some((_, _, Role::Void)) => Role::Body,
            Some((_, parent_is_inward, _)) if is_inward || parent_is_inward => Role::Void,
            Some(_) => Role::BodyInBody,
        };
        nested[shell] = Some(Nested {
            role,
            volume: sums[shell].volume.abs(),
            place: sums[shell].place,
            was_inverted: role != Role::Flake && (role == Role::Void) != is_inward,
        });
    }
    let nested: Vec<Nested> = nested.into_iter().flatten().collect();
    turn(mesh, shells, &nested);
    nested
}

fn turn(mesh: &mut Mesh, shells: &Shells, nested: &[Nested]) {
    for (triangle, &shell) in mesh.triangles.iter_mut().zip(&shells.shell_of) {
        if nested[shell as usize].was_inverted {
            triangle.swap(1, 2);
        }
    }
}

/// For each shell, the shells around it.
fn shells_around(mesh: &Mesh, shells: &Shells, tree: &Tree) -> Vec<Vec<u32>> {
    let asked = largest_facets(mesh, shells);
    asked
        .iter()
        .enumerate()
        .map(|(shell, facets)| {
            let mut votes: Vec<u32> = Vec::new();
            for &facet in facets {
                let [a, b, c] = mesh.corners(facet as usize);
                let middle = scale(add(add(a, b), c), 1.0 / 3.0);
                for axis in 0..3 {
                    votes.extend(around_point(mesh, shells, tree, axis, middle, shell as u32));
                }
            }
            votes.sort_unstable();
            let most = votes.chunk_by(|a, b| a == b);
            most.filter(|votes| 2 * votes.len() > 3 * facets.len())
                .map(|votes| votes[0])
                .collect()
        })
        .collect()
}

/// Shells that the line up from `point` leaves an odd number of times.
fn around_point(
    mesh: &Mesh,
    shells: &Shells,
    tree: &Tree,
    axis: usize,
    point: Vector,
    own: u32,
) -> Vec<u32> {
    let mut above: Vec<u32> = rays::along(mesh, tree, axis, point)
        .into_iter()
        .filter(|hit| hit.at > point[axis])
        .map(|hit| shells.shell_of[hit.facet as usize])
        .filter(|&shell| shell != own)
        .collect();
    above.sort_unstable();
    above
        .chunk_by(|a, b| a == b)
        .filter(|g| g.len() % 2 == 1)
        .map(|group| group[0])
        .collect()
}

/// The few largest facets of each shell.
fn largest_facets(mesh: &Mesh, shells: &Shells) -> Vec<Vec<u32>> {
    let mut largest: Vec<Vec<(f64, u32)>> = vec![Vec::new(); shells.shells.len()];
    for (facet, &shell) in shells.shell_of.iter().enumerate() {
        let area = norm(mesh.normal(facet));
        let list = &mut largest[shell as usize];
        let position = list.partition_point(|&(other, _)| other >= area);
        if position < ASKED {
            list.insert(position, (area, facet as u32));
            list.truncate(ASKED);
        }
    }
    let only_facets = |list: Vec<(f64, u32)>| list.into_iter().map(|(_, facet)| facet).collect();
    largest.into_iter().map(only_facets).collect()
}
