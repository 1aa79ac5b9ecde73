//! Boxes within boxes around the facets, for finding those that come near a facet or a line.

use std::sync::OnceLock;

use crate::mesh::Mesh;
use crate::vector::{Vector, bounds_of};
use crate::wide::Wide;

/// Facets in one lowest box: fewer cost visits, more cost comparisons.
pub const LEAF: usize = 4;

/// A box: lowest and highest corner.
pub type Box3 = [Vector; 2];

/// A balanced tree over the facets in the order of a space-filling curve.
///
/// The boxes lie in one row: box 1 is the whole, boxes 2i and 2i+1 make up box i, and the lowest
/// row holds the leaves.
pub struct Tree {
    /// Facet numbers in tree order; leaf `i` holds the facets from `LEAF·i` on.
    pub order: Vec<u32>,
    /// The box of each facet, in tree order.
    pub facet_boxes: Vec<Box3>,
    boxes: Vec<Box3>,
    leaves: usize,
    wide: OnceLock<Wide>,
}

const NOWHERE: Box3 = [[f64::INFINITY; 3], [f64::NEG_INFINITY; 3]];

impl Tree {
    /// The tree over all facets of `mesh`.
    pub fn over(mesh: &Mesh) -> Tree {
        let order = along_curve(mesh);
        let box_of = |&facet: &u32| bounds_of(mesh.corners(facet as usize)).unwrap_or(NOWHERE);
        let facet_boxes: Vec<Box3> = order.iter().map(box_of).collect();
        let leaves = order.len().div_ceil(LEAF).max(1).next_power_of_two();
        let mut boxes = vec![NOWHERE; 2 * leaves];
        for (leaf, facets) in facet_boxes.chunks(LEAF).enumerate() {
            boxes[leaves + leaf] = facets.iter().fold(NOWHERE, |all, one| joined(&all, one));
        }
        for i in (1..leaves).rev() {
            boxes[i] = joined(&boxes[2 * i], &boxes[2 * i + 1]);
        }
        Tree {
            order,
            facet_boxes,
            boxes,
            leaves,
            wide: OnceLock::new(),
        }
    }

    /// Number of leaves that hold facets.
    pub fn leaf_count(&self) -> usize {
        self.order.len().div_ceil(LEAF)
    }

    /// The box of a leaf.
    pub fn leaf_box(&self, leaf: usize) -> &Box3 {
        &self.boxes[self.leaves + leaf]
    }

    /// Positions in tree order of the facets in a leaf.
    pub fn facets_in(&self, leaf: usize) -> std::ops::Range<usize> {
        leaf * LEAF..((leaf + 1) * LEAF).min(self.order.len())
    }

    /// Visits the leaves from `first` on whose box `enters` accepts, until a visit says stop.
    pub fn visit(
        &self,
        first: usize,
        enters: impl Fn(&Box3) -> bool,
        mut goes_on_after: impl FnMut(usize) -> bool,
    ) {
        let mut stack = [0usize; 64];
        let mut depth = 1;
        stack[0] = 1;
        while depth > 0 {
            depth -= 1;
            let node = stack[depth];
            if self.last_leaf_below(node) < first || !enters(&self.boxes[node]) {
                continue;
            }
            if node >= self.leaves {
                if !goes_on_after(node - self.leaves) {
                    return;
                }
                continue;
            }
            stack[depth] = 2 * node + 1;
            stack[depth + 1] = 2 * node;
            depth += 2;
        }
    }

    /// The same facets for lines and for nearest places, made when it is first asked for: most
    /// trees never are.
    pub fn wide(&self) -> &Wide {
        self.wide
            .get_or_init(|| Wide::over(&self.order, &self.facet_boxes))
    }

    fn last_leaf_below(&self, node: usize) -> usize {
        let levels = self.leaves.ilog2() - node.ilog2();
        ((node + 1) << levels) - 1 - self.leaves
    }
}

/// Whether two boxes have a point in common.
pub fn touch(a: &Box3, b: &Box3) -> bool {
    (0..3).all(|i| a[0][i] <= b[1][i] && b[0][i] <= a[1][i])
}

fn joined(a: &Box3, b: &Box3) -> Box3 {
    let mut all = *a;
    for i in 0..3 {
        all[0][i] = all[0][i].min(b[0][i]);
        all[1][i] = all[1][i].max(b[1][i]);
    }
    all
}

/// Facet numbers sorted along a curve that visits near places one after another.
fn along_curve(mesh: &Mesh) -> Vec<u32> {
    let [low, high] = mesh.bounds();
    let widest = (0..3)
        .map(|i| high[i] - low[i])
        .fold(f64::MIN_POSITIVE, f64::max);
    let scale = f64::from(1u32 << 20) / widest * (1.0 - f64::EPSILON);
    let mut keyed: Vec<(u64, u32)> = (0..mesh.triangles.len())
        .map(|facet| {
            let [a, b, c] = mesh.corners(facet);
            let cell = [0, 1, 2].map(|i| ((a[i] + b[i] + c[i]) / 3.0 - low[i]) * scale);
            let [x, y, z] = cell.map(|v| spread(v.max(0.0) as u64));
            (x | y << 1 | z << 2, facet as u32)
        })
        .collect();
    keyed.sort_unstable();
    keyed.into_iter().map(|(_, facet)| facet).collect()
}

/// Puts two empty bits between the lowest twenty-one bits of a number.
pub fn spread(value: u64) -> u64 {
    let mut v = value & 0x1F_FFFF;
    v = (v | v << 32) & 0x001F_0000_0000_FFFF;
    v = (v | v << 16) & 0x001F_0000_FF00_00FF;
    v = (v | v << 8) & 0x100F_00F0_0F00_F00F;
    v = (v | v << 4) & 0x10C3_0C30_C30C_30C3;
    (v | v << 2) & 0x1249_2492_4924_9249
}
