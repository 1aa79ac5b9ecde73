//! The box with a rim that is never solved, so that a row has neighbours on all sides: one cell
//! wide, but along a row as wide as registers and blocks of cells ask for.

use crate::case::Case;
use crate::grid::Grid;
use crate::multirate::wide::LANES;

/// Cells of the rim in front of a row. Rows are a whole number of registers apart, and the usual
/// allocator lays a long list sixteen bytes behind a boundary: so the first cell of a row begins a
/// register that no two lines of the cache share. Elsewhere it costs a little time and no more.
pub const LEAD: usize = 4;

/// Where cells stand in lists with a rim.
#[derive(Debug, Clone, Copy)]
pub struct Padded {
    /// Cells without the rim.
    pub counts: [usize; 3],
    /// From a row to the next.
    pub row: usize,
    /// From a plane to the next.
    pub plane: usize,
}

impl Padded {
    /// Around a grid whose blocks of cells overhang a row by so many cells at most.
    pub fn around(grid: &Grid, overhang: usize) -> Padded {
        let counts = grid.counts();
        let row = (LEAD + counts[0] + overhang.max(1)).next_multiple_of(LANES);
        Padded {
            counts,
            row,
            plane: row * (counts[1] + 2),
        }
    }

    /// Length of a list.
    pub fn len(&self) -> usize {
        self.plane * (self.counts[2] + 2)
    }

    /// Where a cell stands.
    pub fn at(&self, [x, y, z]: [usize; 3]) -> usize {
        (z + 1) * self.plane + (y + 1) * self.row + LEAD + x
    }

    /// The first cells of all rows, in order.
    pub fn rows(&self) -> impl Iterator<Item = [usize; 3]> + use<> {
        let [_, rows, planes] = self.counts;
        (0..planes).flat_map(move |z| (0..rows).map(move |y| [0, y, z]))
    }

    /// Where the planes from z on begin.
    pub fn plane_at(&self, z: usize) -> usize {
        (z + 1) * self.plane
    }

    /// A list cut into pieces of whole planes; `cuts` are the first planes of the pieces and the
    /// end of the last.
    pub fn pieces<'all>(&self, all: &'all mut [f32], cuts: &[usize]) -> Vec<&'all mut [f32]> {
        let mut pieces = Vec::with_capacity(cuts.len());
        let (_, mut rest) = all.split_at_mut(self.plane_at(cuts[0]));
        for pair in cuts.windows(2) {
            let (piece, after) = rest.split_at_mut((pair[1] - pair[0]) * self.plane);
            pieces.push(piece);
            rest = after;
        }
        pieces
    }
}

/// First planes of pieces of about the same work, with the end of the last; at most `most` pieces,
/// and none with less work than `least`.
pub fn cuts(work: &[usize], most: usize, least: usize) -> Vec<usize> {
    let whole: usize = work.iter().sum();
    let pieces = (whole / least.max(1)).clamp(1, most.max(1));
    let mut cuts = vec![0];
    let mut done = 0;
    for (plane, work) in work.iter().enumerate() {
        if done >= whole * cuts.len() / pieces && plane > 0 && cuts.len() < pieces {
            cuts.push(plane);
        }
        done += work;
    }
    cuts.push(work.len());
    cuts
}

/// Weights of the faces of cells within one material: half over the width of the cell and the way
/// to the middle of its neighbour, per axis low and high; nothing at the ends of the box, nor where
/// a block overhangs.
pub fn weights(case: &Case) -> [[Vec<f32>; 2]; 3] {
    [0, 1, 2].map(|axis: usize| {
        let count = case.grid.counts()[axis];
        let weight = |at: usize, next: Option<usize>| {
            let Some(next) = next.filter(|next| *next < count) else {
                return 0.0;
            };
            let grid = &case.grid;
            let way_m = (grid.middle(axis, at) - grid.middle(axis, next)).abs();
            (0.5 / (grid.width(axis, at) * way_m)) as f32
        };
        let low = (0..count).map(|at| weight(at, at.checked_sub(1))).collect();
        let high = (0..count).map(|at| weight(at, Some(at + 1))).collect();
        [low, high].map(|mut weights: Vec<f32>| {
            weights.resize(count + LANES, 0.0);
            weights
        })
    })
}

#[cfg(test)]
mod tests {
    use super::cuts;

    #[test]
    fn pieces_cover_all_planes() {
        assert_eq!(cuts(&[5, 5, 5, 5], 2, 1), [0, 2, 4]);
        assert_eq!(cuts(&[0, 0, 20, 0], 2, 1), [0, 3, 4]);
        assert_eq!(cuts(&[5, 5, 5, 5], 2, 100), [0, 4]);
        assert_eq!(cuts(&[7], 8, 1), [0, 1]);
    }
}
