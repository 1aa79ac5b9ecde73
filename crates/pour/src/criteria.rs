//! Published criteria of soundness over the cells of a frozen mould.

use measure::band::Band;
use mould::niyama::niyama;
use rigging::piece::Piece;

use crate::solved::{Solved, metal_cells};

/// The weakest place of a casting by a criterion that is worth comparing within one casting only.
#[derive(Clone, Debug, PartialEq)]
pub struct Weakest {
    /// The casting.
    pub piece: Piece,
    /// The criterion there, and from its lowest to its highest over the casting (likely: the
    /// median), (K s)^½/mm.
    pub niyama: Band<f64>,
    /// Where, mm.
    pub place_mm: [f64; 3],
}

/// The criterion in each cell, (K s)^½/mm; not a number where there is no metal.
pub fn niyama_of_cells(solved: &Solved) -> Vec<f32> {
    let each = solved.gradient_k_m.iter().zip(&solved.cooling_k_s);
    each.map(|(&gradient, &cooling)| match cooling > 0.0 {
        true => niyama(f64::from(gradient) * 1e-3, f64::from(cooling)) as f32,
        false => f32::NAN,
    })
    .collect()
}

/// Cells next to the skin are left out: their gradient is one-sided.
fn is_deep(solved: &Solved, cell: usize) -> bool {
    let mut beside = solved.meshed.cells.neighbours(cell);
    beside.all(|next| solved.is_metal(next))
}

/// The weakest place of each casting.
pub fn weakest(solved: &Solved) -> Vec<Weakest> {
    let meshed = &solved.meshed;
    let values = niyama_of_cells(solved);
    let castings = meshed.pieces.iter().enumerate();
    let castings = castings.filter(|(_, piece)| matches!(piece, Piece::Casting(_)));
    castings
        .filter_map(|(number, piece)| {
            let mut cells: Vec<usize> = metal_cells(meshed)
                .filter(|&cell| usize::from(meshed.piece[cell]) == number)
                .filter(|&cell| values[cell].is_finite() && is_deep(solved, cell))
                .collect();
            cells.sort_by(|&one, &other| values[one].total_cmp(&values[other]));
            let value = |at: usize| f64::from(values[cells[at]]);
            let weakest = *cells.first()?;
            let (middle, last) = (value(cells.len() / 2), value(cells.len() - 1));
            Some(Weakest {
                piece: piece.clone(),
                niyama: Band::new(value(0), middle, last),
                place_mm: meshed.cells.middle_mm(weakest),
            })
        })
        .collect()
}
