//! When each piece of metal was solid, and how far off that may be.

use measure::band::Band;
use rigging::piece::Piece;

use crate::solved::{Solved, metal_cells};

/// When a piece froze.
#[derive(Clone, Debug, PartialEq)]
pub struct PieceFrozen {
    /// Which.
    pub piece: Piece,
    /// When its first metal was solid through, s.
    pub first_s: f64,
    /// When its last metal was solid, s, over all errors.
    pub last_s: Band<f64>,
    /// Where that was, mm.
    pub last_mm: [f64; 3],
}

/// The errors of a time, as factors of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Errors {
    /// By the grid, as a share.
    pub by_grid: f64,
    /// Times it at the best and at the worst contact.
    pub by_contact: [f64; 2],
    /// Times it with the quickest and with the slowest sand.
    pub by_sand: [f64; 2],
}

impl Errors {
    /// A time with its errors, added as those that know nothing of each other.
    pub fn around(&self, time_s: f64) -> Band<f64> {
        let sooner = [
            self.by_grid,
            1.0 - self.by_contact[0],
            1.0 - self.by_sand[0],
        ];
        let later = [
            self.by_grid,
            self.by_contact[1] - 1.0,
            self.by_sand[1] - 1.0,
        ];
        let together = |errors: [f64; 3]| {
            let squares = errors.iter().map(|error| error.max(0.0).powi(2));
            squares.sum::<f64>().sqrt()
        };
        Band::new(
            time_s * (1.0 - together(sooner)).max(0.0),
            time_s,
            time_s * (1.0 + together(later)),
        )
    }
}

/// When each piece was solid, with its own difference between the grids.
pub fn pieces(narrow: &Solved, wide: &Solved, whole: &Errors) -> Vec<PieceFrozen> {
    let of = |solved: &Solved, number: usize| -> Vec<usize> {
        let is_of = |cell: &usize| usize::from(solved.meshed.piece[*cell]) == number;
        metal_cells(&solved.meshed).filter(is_of).collect()
    };
    let names = narrow.meshed.pieces.iter().enumerate();
    names
        .filter_map(|(number, piece)| {
            let cells = of(narrow, number);
            let first_s = cells
                .iter()
                .map(|&cell| f64::from(narrow.ends_s[cell]))
                .reduce(f64::min)?;
            let (last, last_mm) = latest(narrow, cells.into_iter());
            let (on_wide, _) = latest(wide, of(wide, number).into_iter());
            let by_grid = match on_wide > 0.0 {
                true => (on_wide / last - 1.0).abs(),
                false => whole.by_grid,
            };
            let errors = Errors { by_grid, ..*whole };
            Some(PieceFrozen {
                piece: piece.clone(),
                first_s,
                last_s: errors.around(last),
                last_mm,
            })
        })
        .collect()
}

/// The latest of some cells to be solid, s, and where it lies, mm.
pub fn latest(solved: &Solved, cells: impl Iterator<Item = usize>) -> (f64, [f64; 3]) {
    let end = |cell: &usize| f64::from(solved.ends_s[*cell]);
    let last = cells.max_by(|one, other| end(one).total_cmp(&end(other)));
    last.map_or((0.0, [0.0; 3]), |cell| {
        (end(&cell), solved.meshed.cells.middle_mm(cell))
    })
}
