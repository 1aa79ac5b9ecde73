//! Chills of a job as they are meant, and what they change in its freezing.

use measure::length::Length;
use mould::feeding::chill::chill_metals;
use pour::chill::{Chill, ChillError, Laid, Side, lay};
use pour::meshing::Meshed;
use pour::no_freeze::FreezeError;
use pour::solved::{Poured, Solved, carried_to, filling, solved};
use rigging::piece::Piece;
use thiserror::Error;

use crate::job_file::{ChillFile, ChillSide};

/// A chill of a job with what it changes, on the wide cells.
#[derive(Clone, Debug, PartialEq)]
pub struct ChillTold {
    /// The chill.
    pub chill: Chill,
    /// The casting that it lies on.
    pub piece: Piece,
    /// How much of the casting it touches on the narrow cells, mm².
    pub touches_mm2: f64,
    /// When the metal behind it, as deep as its face is wide, is solid: without it and with it, s.
    pub behind_s: [f64; 2],
    /// When the casting is: without any chill and with all of them, s.
    pub casting_s: [f64; 2],
}

/// A chill of a metal that the table does not know.
#[derive(Clone, Debug, PartialEq, Error)]
#[error("chill.of: \"{typed}\" is no metal of chills; write one of: {known}")]
pub struct UnknownChill {
    /// What was typed.
    pub typed: String,
    /// The words it knows.
    pub known: String,
}

/// A chill as typed.
pub(crate) fn chill(typed: &ChillFile) -> Result<Chill, UnknownChill> {
    let metals = chill_metals();
    let metal = metals.iter().position(|row| row.name == typed.of);
    let metal = metal.ok_or_else(|| {
        let known: Vec<&str> = metals.iter().map(|row| row.name.as_str()).collect();
        UnknownChill {
            typed: typed.of.clone(),
            known: known.join(", "),
        }
    })?;
    let [x, y, z] = &typed.size;
    let mm = |length: Length| length.as_mm();
    Ok(Chill {
        metal: metal as u8,
        size_mm: [x, y, z].map(|size| mm(size.value)),
        at_mm: typed.at.map(|along| mm(along.0)),
        lies: match typed.lies {
            ChillSide::Left => Side::Left,
            ChillSide::Right => Side::Right,
            ChillSide::Front => Side::Front,
            ChillSide::Back => Side::Back,
            ChillSide::Below => Side::Below,
            ChillSide::Above => Side::Above,
        },
    })
}

/// A mould in narrow and wide cells with its chills, and the wide cells as they were before.
pub(crate) struct Chilled {
    pub(crate) grids: [Meshed; 2],
    laid: Vec<Laid>,
    bare: Option<Meshed>,
}

/// Lays the chills of a job into both grids.
pub(crate) fn chilled(
    [mut narrow, mut wide]: [Meshed; 2],
    chills: &[Chill],
) -> Result<Chilled, ChillError> {
    let bare = (!chills.is_empty()).then(|| wide.clone());
    let laid = lay(&mut narrow, chills)?;
    lay(&mut wide, chills)?;
    Ok(Chilled {
        grids: [narrow, wide],
        laid,
        bare,
    })
}

impl Chilled {
    /// What the chills change, by the wide cells with and without them; `poured` starts from the
    /// narrow ones.
    pub(crate) fn told(
        &self,
        chills: &[Chill],
        poured: &Poured<'_>,
        go_on: &mut dyn FnMut(f64) -> bool,
    ) -> Result<Vec<ChillTold>, FreezeError> {
        let Some(bare) = &self.bare else {
            return Ok(Vec::new());
        };
        let [narrow, wide] = &self.grids;
        let mut run = |meshed: &Meshed| {
            let poured = carried_to(meshed, poured, narrow);
            let likely = filling(&poured, poured.contact_w_m2k.likely(), 1.0);
            solved(meshed.clone(), &poured, &likely, &mut |progress| {
                go_on(progress.time_s)
            })
        };
        let both = [run(bare)?, run(wide)?];
        let told = chills
            .iter()
            .zip(&self.laid)
            .map(|(chill, laid)| ChillTold {
                chill: chill.clone(),
                piece: laid.piece.clone(),
                touches_mm2: laid.touches_mm2,
                behind_s: both.each_ref().map(|run| behind_s(run, chill)),
                casting_s: both.each_ref().map(|run| casting_s(run, &laid.piece)),
            });
        Ok(told.collect())
    }
}

fn latest_s(solved: &Solved, is_it: impl Fn(usize) -> bool) -> f64 {
    let ends = solved.ends_s.iter().enumerate();
    let ends = ends.filter(|(cell, end)| end.is_finite() && is_it(*cell));
    ends.map(|(_, end)| f64::from(*end)).fold(0.0, f64::max)
}

fn piece(solved: &Solved, cell: usize) -> Option<&Piece> {
    let meshed = &solved.meshed;
    meshed.pieces.get(usize::from(meshed.piece[cell]))
}

fn casting_s(solved: &Solved, of: &Piece) -> f64 {
    latest_s(solved, |cell| piece(solved, cell) == Some(of))
}

/// When the metal within half the width of the chilled face is solid.
fn behind_s(solved: &Solved, chill: &Chill) -> f64 {
    let (axis, _) = chill.lies.way();
    let [one, other] = [(axis + 1) % 3, (axis + 2) % 3].map(|axis| chill.size_mm[axis]);
    let reach_mm = 0.5 * one.max(other) + solved.meshed.cells.size_mm;
    latest_s(solved, |cell| {
        let middle = solved.meshed.cells.middle_mm(cell);
        let squares = (0..3).map(|axis| (middle[axis] - chill.at_mm[axis]).powi(2));
        let is_near = squares.sum::<f64>().sqrt() <= reach_mm;
        is_near && matches!(piece(solved, cell), Some(Piece::Casting(_)))
    })
}
