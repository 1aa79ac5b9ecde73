//! The running system of a mould as its cells show it: which channels lead to which gate, how long
//! they are and where the gates enter.
//!
//! Sections come from the sizes that the laws gave; ways are measured in the cells. Gates on one
//! runner to one side of where it is fed share it up to each of them; several runners that are fed
//! by one main runner are each given a way of their own from the sprue, so that what they lose
//! together in the main runner is told too low.

mod channels;

use std::collections::VecDeque;

use mould::gating::friction::Friction;
use rigging::given::Sizes;
use rigging::piece::Piece;
use thiserror::Error;

use self::channels::network;
use super::Gating;
use super::air::WaysOut;
use crate::cells::{MouldCells, Stuff};

/// Why the cells show no running system.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum DrawnError {
    /// Pieces that do not go with the cells.
    #[error("the mould has {cells} cells, but {pieces} of them are told their piece: tell each")]
    Pieces {
        /// Cells there are.
        cells: usize,
        /// Cells with a piece.
        pieces: usize,
    },
    /// No sprue or no gate among the cells.
    #[error("the cells hold no {piece}: take smaller ones, or look whether the mould has one")]
    Missing {
        /// What is missing.
        piece: Piece,
    },
    /// A gate that leads nowhere.
    #[error(
        "gate {number} touches no {misses} in cells of {size_mm:.1} mm: take smaller ones, or lead \
         it there"
    )]
    Apart {
        /// Its number, from one.
        number: usize,
        /// What it should touch.
        misses: &'static str,
        /// Edge of a cell, mm.
        size_mm: f64,
    },
}

/// A gate as the cells show it.
#[derive(Clone, Debug)]
struct Found {
    /// The middle of where it meets the casting, mm.
    enters_mm: [f64; 3],
    /// The runner it leaves, if any, and where along it, mm.
    runner: Option<(usize, f64)>,
    /// Whether it lies to the far side of where its runner is fed.
    far: bool,
    /// Way along its runner, mm.
    along_mm: f64,
    /// Metal it holds, mm³, and its thickness, mm.
    holds_mm3: f64,
    thick_mm: f64,
}

/// Where a runner is fed.
#[derive(Clone, Copy, Debug)]
struct Fed {
    /// Along its own axis, mm.
    at_mm: f64,
    /// From the foot of the sprue, mm; nought where the sprue feeds it itself.
    away_mm: f64,
    /// Its axis.
    axis: usize,
}

/// The gating of a mould in cells: for each cell of metal the piece it belongs to, as a place in
/// the list of pieces; the sizes that the rigging was built with. Air has the ways out of its
/// default.
///
/// # Errors
///
/// Cells without a sprue or gates, or gates that the cells do not join to runner and casting.
pub fn drawn(
    cells: &MouldCells,
    pieces: &[Piece],
    piece: &[u8],
    sizes: &Sizes,
    friction: Friction,
) -> Result<Gating, DrawnError> {
    if piece.len() != cells.stuff.len() {
        return Err(DrawnError::Pieces {
            cells: cells.stuff.len(),
            pieces: piece.len(),
        });
    }
    let drawing = Drawing::of(cells, pieces, piece);
    let sprue_mm = drawing.height_mm(&Piece::Sprue)?;
    let ways = drawing.ways()?;
    let mut gates = Vec::new();
    let numbers = pieces.iter().filter_map(|piece| match piece {
        Piece::Gate(number) => Some(*number),
        _ => None,
    });
    let mut numbers: Vec<usize> = numbers.collect();
    numbers.sort_unstable();
    for number in numbers {
        gates.push(drawing.gate(number, &ways)?);
    }
    if gates.is_empty() {
        return Err(DrawnError::Missing {
            piece: Piece::Gate(1),
        });
    }
    let is_running = |place: usize| {
        drawing.piece_of(place).is_some_and(|piece| {
            let above = matches!(piece, Piece::Basin | Piece::Sprue | Piece::Well);
            above || matches!(piece, Piece::Runner(_) | Piece::Gate(_))
        })
    };
    Ok(Gating {
        network: network(&gates, &ways, sizes, sprue_mm, friction),
        gates_mm: gates.iter().map(|gate| gate.enters_mm).collect(),
        running: (0..cells.stuff.len()).map(is_running).collect(),
        from_rest: false,
        air: WaysOut::default(),
    })
}

/// The cells with their pieces.
struct Drawing<'a> {
    cells: &'a MouldCells,
    pieces: &'a [Piece],
    piece: &'a [u8],
    /// The cells of each piece.
    places: Vec<Vec<usize>>,
}

/// The ways from the foot of the sprue.
struct Ways {
    /// For each cell that leads on, how far it is, mm; without end for all others.
    away_mm: Vec<f64>,
    /// Where each runner is fed, by its number.
    fed: Vec<(usize, Fed)>,
    /// The middle height of the runners, or of the foot where there are none, mm.
    height_mm: f64,
}

impl<'a> Drawing<'a> {
    fn of(cells: &'a MouldCells, pieces: &'a [Piece], piece: &'a [u8]) -> Drawing<'a> {
        let mut places = vec![Vec::new(); pieces.len()];
        for (place, stuff) in cells.stuff.iter().enumerate() {
            let listed = places.get_mut(usize::from(piece[place]));
            if let (Stuff::Metal, Some(listed)) = (stuff, listed) {
                listed.push(place);
            }
        }
        Drawing {
            cells,
            pieces,
            piece,
            places,
        }
    }

    fn piece_of(&self, place: usize) -> Option<&Piece> {
        match self.cells.stuff[place] {
            Stuff::Metal => self.pieces.get(usize::from(self.piece[place])),
            _ => None,
        }
    }

    fn places_of(&self, piece: &Piece) -> impl Iterator<Item = usize> + Clone {
        let number = self.pieces.iter().position(|known| known == piece);
        let places = number.map_or(&[][..], |number| &self.places[number]);
        places.iter().copied()
    }

    /// Floor and ceiling of the cells of a piece, mm.
    fn height_mm(&self, piece: &Piece) -> Result<[f64; 2], DrawnError> {
        let half = 0.5 * self.cells.size_mm;
        let middles = self
            .places_of(piece)
            .map(|place| self.cells.middle_mm(place)[2]);
        let [low, high] = middles.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], z| {
            [low.min(z - half), high.max(z + half)]
        });
        match low < high {
            true => Ok([low, high]),
            false => Err(DrawnError::Missing {
                piece: piece.clone(),
            }),
        }
    }

    /// Spreads from the foot of the sprue through well and runners.
    fn ways(&self) -> Result<Ways, DrawnError> {
        let [foot_mm, _] = self.height_mm(&Piece::Sprue)?;
        let mut ways = Ways {
            away_mm: vec![f64::INFINITY; self.piece.len()],
            fed: Vec::new(),
            height_mm: foot_mm,
        };
        let mut spread = VecDeque::new();
        let is_foot =
            |place: &usize| self.cells.middle_mm(*place)[2] < foot_mm + self.cells.size_mm;
        for place in self.places_of(&Piece::Sprue).filter(is_foot) {
            ways.away_mm[place] = 0.0;
            spread.push_back(place);
        }
        let (mut sum_mm, mut count) = (0.0, 0.0);
        while let Some(place) = spread.pop_front() {
            for next in self.cells.neighbours(place) {
                if ways.away_mm[next].is_finite() {
                    continue;
                }
                let number = match self.piece_of(next) {
                    Some(Piece::Runner(number)) => Some(*number),
                    Some(Piece::Well) => None,
                    _ => continue,
                };
                ways.away_mm[next] = ways.away_mm[place] + self.cells.size_mm;
                if let Some(number) = number {
                    sum_mm += self.cells.middle_mm(next)[2];
                    count += 1.0;
                    if ways.fed_at(number).is_none() {
                        let from_runner = matches!(self.piece_of(place), Some(Piece::Runner(_)));
                        let fed = self.fed(number, next, from_runner, &ways);
                        ways.fed.push((number, fed));
                    }
                }
                spread.push_back(next);
            }
        }
        if count > 0.0 {
            ways.height_mm = sum_mm / count;
        }
        Ok(ways)
    }

    fn fed(&self, number: usize, place: usize, from_runner: bool, ways: &Ways) -> Fed {
        let piece = Piece::Runner(number);
        let middles: Vec<[f64; 3]> = self
            .places_of(&piece)
            .map(|place| self.cells.middle_mm(place))
            .collect();
        let span = |axis: usize| {
            let along = middles.iter().map(|middle| middle[axis]);
            let low = along.clone().fold(f64::INFINITY, f64::min);
            along.fold(f64::NEG_INFINITY, f64::max) - low
        };
        let axis = usize::from(span(1) > span(0));
        Fed {
            at_mm: self.cells.middle_mm(place)[axis],
            away_mm: if from_runner {
                ways.away_mm[place]
            } else {
                0.0
            },
            axis,
        }
    }

    fn gate(&self, number: usize, ways: &Ways) -> Result<Found, DrawnError> {
        let piece = Piece::Gate(number);
        let size_mm = self.cells.size_mm;
        let apart = |misses| DrawnError::Apart {
            number,
            misses,
            size_mm,
        };
        let [low_mm, high_mm] = self.height_mm(&piece)?;
        let (mut enters_mm, mut faces) = ([0.0; 3], 0.0);
        let mut nearest: Option<usize> = None;
        let mut holds_mm3 = 0.0;
        for place in self.places_of(&piece) {
            holds_mm3 += self.cells.metal_mm3(place);
            for next in self.cells.neighbours(place) {
                if let Some(Piece::Casting(_) | Piece::Feeder(_)) = self.piece_of(next) {
                    let middle_mm = self.cells.middle_mm(next);
                    (0..3).for_each(|axis| enters_mm[axis] += middle_mm[axis]);
                    faces += 1.0;
                }
                let away = |place: usize| ways.away_mm[place];
                if away(next).is_finite() && nearest.is_none_or(|best| away(next) < away(best)) {
                    nearest = Some(next);
                }
            }
        }
        let leaves = nearest.ok_or_else(|| apart("runner"))?;
        if faces == 0.0 {
            return Err(apart("casting"));
        }
        let mut found = Found {
            enters_mm: enters_mm.map(|sum| sum / faces),
            runner: None,
            far: false,
            along_mm: ways.away_mm[leaves],
            holds_mm3,
            thick_mm: high_mm - low_mm,
        };
        if let Some(Piece::Runner(runner)) = self.piece_of(leaves)
            && let Some(fed) = ways.fed_at(*runner)
        {
            let at_mm = self.middle_of_gate(&piece)[fed.axis];
            found.runner = Some((*runner, at_mm));
            found.far = at_mm >= fed.at_mm;
            found.along_mm = (at_mm - fed.at_mm).abs();
        }
        Ok(found)
    }

    fn middle_of_gate(&self, piece: &Piece) -> [f64; 3] {
        let (mut sum, mut count) = ([0.0; 3], 0.0);
        for place in self.places_of(piece) {
            let middle_mm = self.cells.middle_mm(place);
            (0..3).for_each(|axis| sum[axis] += middle_mm[axis]);
            count += 1.0;
        }
        sum.map(|sum| sum / f64::max(count, 1.0))
    }
}

impl Ways {
    fn fed_at(&self, runner: usize) -> Option<Fed> {
        let known = self.fed.iter().find(|(number, _)| *number == runner);
        known.map(|(_, fed)| *fed)
    }
}
