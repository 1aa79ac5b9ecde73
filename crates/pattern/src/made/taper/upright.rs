//! The metal over and under a place, seen along the way in which a wall draws.

use crate::mesh::Mesh;
use crate::rays::along;
use crate::tree::Tree;

/// A closed mesh with its tree, seen with the way of draw up: heights count along that way.
#[derive(Clone, Copy)]
pub(super) struct Upright<'a> {
    /// The part.
    pub(super) mesh: &'a Mesh,
    /// Boxes around its facets.
    pub(super) tree: &'a Tree,
    /// The way along z.
    pub(super) way: f64,
}

/// Thinner than this, mm, there is neither metal nor sand between two heights.
pub(super) const NOTHING_MM: f64 = 5e-3;

impl Upright<'_> {
    /// Heights between which there is metal along the upright line through a place, each the lower
    /// end first, from above.
    pub(super) fn metal(&self, place: [f64; 2]) -> Vec<[f64; 2]> {
        let hits = along(self.mesh, self.tree, 2, [place[0], place[1], 0.0]);
        let mut spans = Vec::new();
        let (mut depth, mut from) = (0, 0.0);
        for hit in hits {
            let before = depth;
            depth += hit.step;
            match (before, depth) {
                (0, 1..) => from = hit.at,
                (1.., 0) if self.way > 0.0 => spans.push([from, hit.at]),
                (1.., 0) => spans.push([-hit.at, -from]),
                _ => {}
            }
        }
        if self.way > 0.0 {
            spans.reverse();
        }
        spans
    }

    /// The metal on which sand at a height over a place stands: its lower and upper end, or `None`
    /// for no metal below. `Err` where that height lies in metal itself.
    pub(super) fn floor(&self, place: [f64; 2], height: f64) -> Result<Option<[f64; 2]>, ()> {
        let spans = self.metal(place);
        let below = spans.into_iter().find(|[low, _]| *low < height);
        match below {
            Some([_, high]) if high > height - NOTHING_MM => Err(()),
            other => Ok(other),
        }
    }
}
