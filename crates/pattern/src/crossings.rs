//! Facets that pass through one another.

use rayon::prelude::*;

use crate::mesh::Mesh;
use crate::tree::{Tree, touch};
use crate::vector::{Vector, add, cross, dot, norm, scale, sub};

/// Depth, as a share of the box diagonal, below which facets touch rather than cross.
///
/// Corners of a single-precision file are off by up to 6e-8 of the largest coordinate; a smaller
/// depth would call rounded neighbours crossing, a larger one would miss what can be seen.
const TOUCHING: f64 = 1e-9;

/// Leaves worked through as one portion; fixed, so that the answer does not depend on how many
/// processors share the work.
const PORTION: usize = 512;

/// Comparisons allowed in all: some seconds. A sound part of the largest size spends a tenth of it.
const MOST_COMPARISONS: usize = 400_000_000;

/// Comparisons allowed per portion: a fan of two thousand needles, all in one another's way, is
/// still gone through.
const MOST_PER_PORTION: usize = 60_000_000;

/// Portions worked on between two looks at what has been spent; fixed as well.
const ROUND: usize = 8;

/// What comparing two facets with touching boxes costs beside comparing two boxes.
const PAIR_COST: usize = 20;

/// What was found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Crossings {
    /// Facets that pass through another one, in order.
    pub facets: Vec<u32>,
    /// A point on the first crossing.
    pub place: Option<Vector>,
    /// Whether the search was given up because too many facets lie in the same place.
    pub was_given_up: bool,
}

/// Finds the facets that pass through one another, neighbours with a common edge left aside.
pub fn find(mesh: &Mesh, tree: &Tree) -> Crossings {
    let search = Search {
        mesh,
        tree,
        triangles: tree
            .order
            .iter()
            .map(|&facet| mesh.triangles[facet as usize])
            .collect(),
        normals: unit_normals(mesh, tree),
        depth: TOUCHING * mesh.diagonal(),
    };
    let portions = search.all_portions();
    let place = portions.iter().find_map(|portion| portion.place);
    let was_given_up = portions.iter().any(|portion| portion.was_given_up);
    let mut facets: Vec<u32> = portions
        .into_iter()
        .flat_map(|portion| portion.facets)
        .collect();
    facets.sort_unstable();
    facets.dedup();
    Crossings {
        facets,
        place,
        was_given_up,
    }
}

struct Search<'a> {
    mesh: &'a Mesh,
    tree: &'a Tree,
    /// The facets in tree order.
    triangles: Vec<[u32; 3]>,
    /// Unit normal of each facet in tree order; zero for a facet without area.
    normals: Vec<Vector>,
    depth: f64,
}

#[derive(Default)]
struct Portion {
    facets: Vec<u32>,
    place: Option<Vector>,
    was_given_up: bool,
    comparisons: usize,
}

impl Search<'_> {
    /// Works through the portions round by round until all are done or too much is spent.
    fn all_portions(&self) -> Vec<Portion> {
        let leaves = self.tree.leaf_count();
        let count = leaves.div_ceil(PORTION);
        let mut portions: Vec<Portion> = Vec::with_capacity(count);
        let mut spent = 0;
        while portions.len() < count && spent <= MOST_COMPARISONS {
            let first = portions.len();
            let round: Vec<Portion> = (first..(first + ROUND).min(count))
                .into_par_iter()
                .map(|i| self.portion(i * PORTION..((i + 1) * PORTION).min(leaves)))
                .collect();
            spent += round
                .iter()
                .map(|portion| portion.comparisons)
                .sum::<usize>();
            portions.extend(round);
        }
        if let Some(last) = portions.last_mut() {
            last.was_given_up |= spent > MOST_COMPARISONS;
        }
        portions
    }

    fn portion(&self, leaves: std::ops::Range<usize>) -> Portion {
        let mut found = Portion::default();
        for leaf in leaves {
            let own_box = self.tree.leaf_box(leaf);
            self.tree.visit(
                leaf,
                |other| touch(own_box, other),
                |other| {
                    self.compare_leaves(leaf, other, &mut found);
                    found.comparisons <= MOST_PER_PORTION
                },
            );
            if found.comparisons > MOST_PER_PORTION {
                found.was_given_up = true;
                break;
            }
        }
        found.facets.sort_unstable();
        found.facets.dedup();
        found
    }

    fn compare_leaves(&self, leaf: usize, other: usize, found: &mut Portion) {
        let boxes = &self.tree.facet_boxes;
        let other_box = self.tree.leaf_box(other);
        for i in self.tree.facets_in(leaf) {
            found.comparisons += 1;
            if !touch(&boxes[i], other_box) {
                continue;
            }
            for j in self.tree.facets_in(other) {
                found.comparisons += 1;
                if j <= i || !touch(&boxes[i], &boxes[j]) {
                    continue;
                }
                found.comparisons += PAIR_COST;
                if let Some(place) = self.crossing(i, j) {
                    found
                        .facets
                        .extend([self.tree.order[i], self.tree.order[j]]);
                    found.place.get_or_insert(place);
                }
            }
        }
    }

    /// A point where two facets, given by their places in the tree, pass through each other.
    ///
    /// Facets with a common edge are neighbours and never counted; with a common corner only the
    /// side opposite to it can pass through.
    fn crossing(&self, i: usize, j: usize) -> Option<Vector> {
        let (a, b) = (self.triangles[i], self.triangles[j]);
        let mut common = None;
        for (in_a, &corner) in a.iter().enumerate() {
            if let Some(in_b) = b.iter().position(|&other| other == corner)
                && common.replace((in_a, in_b)).is_some()
            {
                return None;
            }
        }
        if let Some((in_a, in_b)) = common {
            return self
                .pierce_point(opposite(a, in_a), j)
                .or_else(|| self.pierce_point(opposite(b, in_b), i));
        }
        let sides = (0..3).map(|corner| (opposite(a, corner), j));
        let mut sides = sides.chain((0..3).map(|corner| (opposite(b, corner), i)));
        sides.find_map(|(side, facet)| self.pierce_point(side, facet))
    }

    /// Where a side passes through a facet, given by its place in the tree.
    fn pierce_point(&self, side: [u32; 2], facet: usize) -> Option<Vector> {
        let [from, to] = side.map(|point| self.mesh.points[point as usize]);
        let triangle = self.triangles[facet];
        let normal = self.normals[facet];
        let origin = self.mesh.points[triangle[0] as usize];
        let heights = [dot(sub(from, origin), normal), dot(sub(to, origin), normal)];
        let passes =
            heights[0].min(heights[1]) < -self.depth && heights[0].max(heights[1]) > self.depth;
        if !passes {
            return None;
        }
        let share = heights[0] / (heights[0] - heights[1]);
        let point = add(from, scale(sub(to, from), share));
        let corners = triangle.map(|point| self.mesh.points[point as usize]);
        is_well_inside(point, corners, normal, self.depth).then_some(point)
    }
}

/// The two corners of a facet other than the given one.
fn opposite(triangle: [u32; 3], corner: usize) -> [u32; 2] {
    [triangle[(corner + 1) % 3], triangle[(corner + 2) % 3]]
}

fn unit_normals(mesh: &Mesh, tree: &Tree) -> Vec<Vector> {
    let unit = |&facet: &u32| {
        let normal = mesh.normal(facet as usize);
        let length = norm(normal);
        if length > 0.0 {
            scale(normal, 1.0 / length)
        } else {
            [0.0; 3]
        }
    };
    tree.order.par_iter().map(unit).collect()
}

fn is_well_inside(point: Vector, corners: [Vector; 3], normal: Vector, depth: f64) -> bool {
    (0..3).all(|i| {
        let side = sub(corners[(i + 1) % 3], corners[i]);
        let inward = cross(normal, side);
        dot(sub(point, corners[i]), inward) > depth * norm(side)
    })
}
