//! Chills in the face of the mould: cold metal that takes the place of sand beside a casting.
//!
//! A chill follows the skin that it lies on: along each line of cells through its face, as deep as
//! it is thick. Its cells hold as much as the chill truly does.

use std::fmt;

use mould::feeding::chill::{ChillMetal, chill_metals};
use rigging::piece::Piece;
use solver::material::{Material, Phase};
use thiserror::Error;

use crate::cells::{MouldCells, Stuff};
use crate::meshing::Meshed;

/// A chill of the mould.
#[derive(Clone, Debug, PartialEq)]
pub struct Chill {
    /// Place of its metal in [`chill_metals`].
    pub metal: u8,
    /// Along x, y and z of the mould, mm.
    pub size_mm: [f64; 3],
    /// The middle of the face with which it lies on the casting, mm in the mould's coordinates.
    pub at_mm: [f64; 3],
    /// On which side of the casting it lies.
    pub lies: Side,
}

/// A side of a casting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Toward lower x.
    Left,
    /// Toward higher x.
    Right,
    /// Toward lower y.
    Front,
    /// Toward higher y.
    Back,
    /// Under it.
    Below,
    /// Over it.
    Above,
}

/// A chill as it lies in the cells.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// The casting that it lies on.
    pub piece: Piece,
    /// How much of the casting it touches, mm².
    pub touches_mm2: f64,
    /// The cells of metal that it touches.
    pub touched: Vec<usize>,
}

/// Why a chill cannot be laid; numbers count from one.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum ChillError {
    /// A size that is none.
    #[error("chill {number}: its three sizes have to be lengths above 0 mm")]
    Size {
        /// Which.
        number: usize,
    },
    /// No metal beside it.
    #[error(
        "chill {number} at {}: no casting has its skin {lies} within {reach_mm:.0} mm of there; give \
         the middle of the face on which it lies, in the coordinates of the mould",
        place(at_mm)
    )]
    Apart {
        /// Which.
        number: usize,
        /// Where, mm.
        at_mm: [f64; 3],
        /// On which side of the casting.
        lies: Side,
        /// How far was looked, mm.
        reach_mm: f64,
    },
    /// On what has to stay liquid.
    #[error(
        "chill {number} touches {piece} at {}, which has to stay hot longer than the casting: move \
         it, or make it smaller, so that it lies on the casting alone",
        place(at_mm)
    )]
    OnRigging {
        /// Which.
        number: usize,
        /// The piece.
        piece: Piece,
        /// Where, mm.
        at_mm: [f64; 3],
    },
}

/// How far the skin may lie from where it was said to be, mm: the grown casting and a rough ruler.
const REACH_MM: f64 = 12.0;

/// Low and high corner of the box around chills, mm; none without any.
pub fn around(chills: &[Chill]) -> Option<[[f64; 3]; 2]> {
    let boxes = chills.iter().map(|chill| {
        let (along, up) = chill.lies.way();
        // How far it reaches to the lower and to the higher end of an axis.
        let reach = |axis: usize, higher: bool| match (axis == along, higher == up) {
            (false, _) => 0.5 * chill.size_mm[axis],
            (true, true) => chill.size_mm[axis] + REACH_MM,
            (true, false) => 0.0,
        };
        let axes = [0, 1, 2];
        [
            axes.map(|axis| chill.at_mm[axis] - reach(axis, false)),
            axes.map(|axis| chill.at_mm[axis] + reach(axis, true)),
        ]
    });
    boxes.reduce(|[low, high], [from, to]| {
        let axes = [0, 1, 2];
        [
            axes.map(|axis: usize| low[axis].min(from[axis])),
            axes.map(|axis: usize| high[axis].max(to[axis])),
        ]
    })
}

/// Lays chills into a mould in cells.
pub fn lay(meshed: &mut Meshed, chills: &[Chill]) -> Result<Vec<Laid>, ChillError> {
    let numbered = chills.iter().zip(1..);
    numbered
        .map(|(chill, number)| lay_one(meshed, chill, number))
        .collect()
}

/// The table of a metal of chills for the solver; it stays far from melting.
fn chill_table(metal: &ChillMetal) -> Material {
    let j_m3k = metal.density.as_kg_per_m3() * metal.heat.as_j_per_kg_k();
    let w_mk = metal.conductivity.as_w_per_m_k();
    Material::plain(&metal.name, Phase { j_m3k, w_mk })
}

fn lay_one(meshed: &mut Meshed, chill: &Chill, number: usize) -> Result<Laid, ChillError> {
    if !chill.size_mm.iter().all(|mm| mm.is_finite() && *mm > 0.0) {
        return Err(ChillError::Size { number });
    }
    let (axis, up) = chill.lies.way();
    let size_mm = meshed.cells.size_mm;
    let deep = ((chill.size_mm[axis] / size_mm).round() as usize).max(1);
    let (mut touched, mut filled) = (Vec::new(), Vec::new());
    for skin in skins(&meshed.cells, chill) {
        let piece = &meshed.pieces[usize::from(meshed.piece[skin])];
        if !matches!(piece, Piece::Casting(_)) {
            return Err(ChillError::OnRigging {
                number,
                piece: piece.clone(),
                at_mm: meshed.cells.middle_mm(skin),
            });
        }
        touched.push(skin);
        let mut next = skin;
        for _ in 0..deep {
            match beside(&meshed.cells, next, axis, up) {
                Some(cell) if is_sand(&meshed.cells, cell) => {
                    filled.push(cell);
                    next = cell;
                }
                _ => break,
            }
        }
    }
    let Some(&first) = touched.first() else {
        return Err(ChillError::Apart {
            number,
            at_mm: chill.at_mm,
            lies: chill.lies,
            reach_mm: REACH_MM.max(2.0 * size_mm),
        });
    };
    let volume_mm3: f64 = chill.size_mm.iter().product();
    let held = (volume_mm3 / (filled.len() as f64 * size_mm.powi(3))).clamp(HELD[0], HELD[1]);
    for &cell in &filled {
        meshed.cells.stuff[cell] = Stuff::Chill(chill.metal);
        meshed.chilled.push((cell, held as f32));
    }
    Ok(Laid {
        piece: meshed.pieces[usize::from(meshed.piece[first])].clone(),
        touches_mm2: touched.len() as f64 * size_mm * size_mm,
        touched,
    })
}

/// Least and most that a cell of a chill holds, as a share: beyond, the chill is cut off by the
/// flask or by metal, and holds less than it says.
const HELD: [f64; 2] = [0.3, 2.0];

/// For each line through the face of a chill the last cell of metal before the sand on its side,
/// the nearest to where the face was said to be.
fn skins(cells: &MouldCells, chill: &Chill) -> Vec<usize> {
    let (axis, up) = chill.lies.way();
    let reach_mm = REACH_MM.max(2.0 * cells.size_mm);
    let others = [(axis + 1) % 3, (axis + 2) % 3];
    let in_face = |middle: &[f64; 3]| {
        others
            .iter()
            .all(|&other| (middle[other] - chill.at_mm[other]).abs() <= 0.5 * chill.size_mm[other])
    };
    let mut lines: Vec<(usize, f64, usize)> = Vec::new();
    for cell in 0..cells.stuff.len() {
        if cells.stuff[cell] != Stuff::Metal {
            continue;
        }
        let middle = cells.middle_mm(cell);
        let skin_mm = middle[axis] + if up { 0.5 } else { -0.5 } * cells.size_mm;
        let away_mm = (skin_mm - chill.at_mm[axis]).abs();
        let at_sand = beside(cells, cell, axis, up).is_some_and(|next| is_sand(cells, next));
        if at_sand && away_mm <= reach_mm && in_face(&middle) {
            let at = cells.cell(cell);
            let line = at[others[0]] + cells.count[others[0]] * at[others[1]];
            lines.push((line, away_mm, cell));
        }
    }
    lines.sort_by(|one, other| one.0.cmp(&other.0).then(one.1.total_cmp(&other.1)));
    lines.dedup_by_key(|(line, ..)| *line);
    lines.into_iter().map(|(.., cell)| cell).collect()
}

fn is_sand(cells: &MouldCells, cell: usize) -> bool {
    matches!(cells.stuff[cell], Stuff::Sand | Stuff::Core)
}

fn beside(cells: &MouldCells, cell: usize, axis: usize, up: bool) -> Option<usize> {
    let mut at = cells.cell(cell);
    at[axis] = match up {
        true => at[axis] + 1,
        false => at[axis].checked_sub(1)?,
    };
    (at[axis] < cells.count[axis]).then(|| cells.index(at))
}

impl Side {
    /// The axis, and whether toward its higher end.
    pub fn way(self) -> (usize, bool) {
        match self {
            Side::Left => (0, false),
            Side::Right => (0, true),
            Side::Front => (1, false),
            Side::Back => (1, true),
            Side::Below => (2, false),
            Side::Above => (2, true),
        }
    }
}

impl fmt::Display for Side {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        to.write_str(match self {
            Side::Left => "toward lower x",
            Side::Right => "toward higher x",
            Side::Front => "toward lower y",
            Side::Back => "toward higher y",
            Side::Below => "downward",
            Side::Above => "upward",
        })
    }
}

/// Tables of all metals of chills, in their order.
pub(crate) fn chill_tables() -> impl Iterator<Item = Material> {
    chill_metals().iter().map(chill_table)
}

fn place([x, y, z]: &[f64; 3]) -> String {
    format!("({x:.0}, {y:.0}, {z:.0}) mm")
}
