//! Facets that pass through one another.

use rayon::prelude::*;

use crate::mesh::Mesh;
use crate::tree::{LEAF, Tree, touch};
use crate::vector::{Vector, cross, dot, norm, scale, sub};

/// Depth, as a share of the box diagonal, below which facets touch rather than cross.
///
/// Corners of a single-precision file are off by up to 6e-8 of the largest coordinate; a smaller
/// depth would call rounded neighbours crossing, a larger one would miss what can be seen.
const TOUCHING: f64 = 2e-7;

/// Leaves worked through as one portion; fixed, so that the answer does not depend on how many
/// processors share the work.
const PORTION: usize = 512;

/// Comparisons allowed per facet on average within a portion. Sound parts need a few dozen, a fan
/// of a thousand needles several hundred.
const MOST_PER_FACET: usize = 2000;

/// What was found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Crossings {
    /// Facets that pass through another one.
    pub facets: usize,
    /// A point on the first crossing.
    pub place: Option<Vector>,
    /// Whether the search was given up because too many facets lie in the same place.
    pub was_given_up: bool,
}

/// Finds the facets that pass through one another, neighbours with a common edge left aside.
pub fn find(mesh: &Mesh, tree: &Tree) -> Crossings {
    let depth = TOUCHING * mesh.diagonal();
    let leaves = tree.leaf_count();
    let portions: Vec<Portion> = (0..leaves.div_ceil(PORTION))
        .into_par_iter()
        .map(|i| {
            search(
                mesh,
                tree,
                depth,
                i * PORTION..((i + 1) * PORTION).min(leaves),
            )
        })
        .collect();
    let place = portions.iter().find_map(|portion| portion.place);
    let was_given_up = portions.iter().any(|portion| portion.was_given_up);
    let mut facets: Vec<u32> = portions
        .into_iter()
        .flat_map(|portion| portion.facets)
        .collect();
    facets.sort_unstable();
    facets.dedup();
    Crossings {
        facets: facets.len(),
        place,
        was_given_up,
    }
}

#[derive(Default)]
struct Portion {
    facets: Vec<u32>,
    place: Option<Vector>,
    was_given_up: bool,
    comparisons: usize,
}

fn search(mesh: &Mesh, tree: &Tree, depth: f64, leaves: std::ops::Range<usize>) -> Portion {
    let most = MOST_PER_FACET * LEAF * leaves.len().max(64);
    let mut found = Portion::default();
    for leaf in leaves {
        let own_box = tree.leaf_box(leaf);
        tree.visit(
            leaf,
            |other| touch(own_box, other),
            |other| {
                compare_leaves(mesh, tree, depth, [leaf, other], &mut found);
                found.comparisons <= most
            },
        );
        if found.comparisons > most {
            found.was_given_up = true;
            break;
        }
    }
    found
}

fn compare_leaves(mesh: &Mesh, tree: &Tree, depth: f64, leaves: [usize; 2], found: &mut Portion) {
    for i in tree.facets_in(leaves[0]) {
        for j in tree.facets_in(leaves[1]) {
            found.comparisons += 1;
            if j <= i && leaves[0] == leaves[1]
                || !touch(&tree.facet_boxes[i], &tree.facet_boxes[j])
            {
                continue;
            }
            let (a, b) = (tree.order[i], tree.order[j]);
            let (low, high) = (a.min(b) as usize, a.max(b) as usize);
            if let Some(place) = crossing(mesh, low, high, depth) {
                found.facets.extend([a, b]);
                found.place.get_or_insert(place);
            }
        }
    }
}

/// A point where two facets pass through each other by more than `depth`.
///
/// Facets with a common edge are neighbours and never counted; with a common corner only the side
/// opposite to it can pass through.
fn crossing(mesh: &Mesh, a: usize, b: usize, depth: f64) -> Option<Vector> {
    let mut common =
        (0..9).filter(|pair| mesh.triangles[a][pair / 3] == mesh.triangles[b][pair % 3]);
    match (common.next(), common.next()) {
        (_, Some(_)) => None,
        (Some(pair), None) => pierce_point(mesh, a, b, depth, Some(pair / 3))
            .or_else(|| pierce_point(mesh, b, a, depth, Some(pair % 3))),
        (None, None) => {
            pierce_point(mesh, a, b, depth, None).or_else(|| pierce_point(mesh, b, a, depth, None))
        }
    }
}

/// Where a side of facet `a` passes through facet `b`; with `only`, just the side opposite to
/// that corner of `a` is tried.
fn pierce_point(
    mesh: &Mesh,
    a: usize,
    b: usize,
    depth: f64,
    only: Option<usize>,
) -> Option<Vector> {
    let [origin, second, third] = mesh.corners(b);
    let normal = cross(sub(second, origin), sub(third, origin));
    let length = norm(normal);
    if length <= depth * depth {
        return None;
    }
    let normal = scale(normal, 1.0 / length);
    let corners = mesh.corners(a);
    let heights = corners.map(|corner| dot(sub(corner, origin), normal));
    (0..3)
        .filter(|&side| only.is_none_or(|corner| side == (corner + 1) % 3))
        .find_map(|side| {
            let (from, to) = (side, (side + 1) % 3);
            let (low, high) = (
                heights[from].min(heights[to]),
                heights[from].max(heights[to]),
            );
            if low > -depth || high < depth {
                return None;
            }
            let share = heights[from] / (heights[from] - heights[to]);
            let along = sub(corners[to], corners[from]);
            let point = [0, 1, 2].map(|i| corners[from][i] + share * along[i]);
            is_well_inside(point, [origin, second, third], normal, depth).then_some(point)
        })
}

fn is_well_inside(point: Vector, corners: [Vector; 3], normal: Vector, depth: f64) -> bool {
    (0..3).all(|i| {
        let side = sub(corners[(i + 1) % 3], corners[i]);
        let inward = cross(normal, side);
        dot(sub(point, corners[i]), inward) > depth * norm(side)
    })
}
