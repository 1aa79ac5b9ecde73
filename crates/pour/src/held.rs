//! How far the coldest part of a casting has cooled when its last place is just solid.
//!
//! What is cold by then has done that much of its shrinking; the hot place has no strength yet and
//! gives, or tears where sand, a core or the shape of the casting holds its ends apart. Later the
//! hot part shrinks on to the cold one, which is bent or pulled: the straight spoke between rim and
//! hub. Neither stress nor strength is followed: this tells where to look, not whether it breaks.

use rigging::piece::Piece;

use crate::meshing::Meshed;
use crate::solved::metal_cells;

/// A casting as its last place is just solid.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// Which casting.
    pub piece: Piece,
    /// When, s from the full mould: the first moment kept by which all of it was solid.
    pub time_s: f64,
    /// Its hottest place, mm.
    pub hottest_mm: [f64; 3],
    /// How hot, °C.
    pub hottest_c: f64,
    /// Its coldest place, mm.
    pub coldest_mm: [f64; 3],
    /// How hot, °C.
    pub coldest_c: f64,
}

impl Held {
    /// How much colder its coldest place is than its hottest, K.
    pub fn spread_k(&self) -> f64 {
        self.hottest_c - self.coldest_c
    }
}

/// Looks at one moment: every casting of which nothing is above the end of freezing and which is
/// not told yet.
pub(crate) fn look(
    meshed: &Meshed,
    time_s: f64,
    celsius: &dyn Fn(usize) -> f64,
    solidus_c: f64,
    told: &mut Vec<Held>,
) {
    for (number, piece) in meshed.pieces.iter().enumerate() {
        let is_told = told.iter().any(|held| held.piece == *piece);
        if !matches!(piece, Piece::Casting(_)) || is_told {
            continue;
        }
        let cells = metal_cells(meshed).filter(|&cell| usize::from(meshed.piece[cell]) == number);
        let cells: Vec<usize> = cells.collect();
        let by_heat = |one: &&usize, other: &&usize| celsius(**one).total_cmp(&celsius(**other));
        let ends = cells
            .iter()
            .max_by(by_heat)
            .zip(cells.iter().min_by(by_heat));
        let Some((&hottest, &coldest)) = ends else {
            continue;
        };
        if celsius(hottest) > solidus_c {
            continue;
        }
        told.push(Held {
            piece: piece.clone(),
            time_s,
            hottest_mm: meshed.cells.middle_mm(hottest),
            hottest_c: celsius(hottest),
            coldest_mm: meshed.cells.middle_mm(coldest),
            coldest_c: celsius(coldest),
        });
    }
}
