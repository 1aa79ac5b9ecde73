//! Rows as they stood before a step that is written over them, kept aside while they are needed.
//!
//! A sweep writes the temperatures after a step where those before it stood, so that eight bytes of
//! memory pass for a cell and not twelve. When a row is done, the row in front of it and the row
//! below it are written over already. So as many rows as a belt has are kept, one after the other
//! in a ring, and of each belt the last row of every plane, for the first row of the next belt.

use pulp::Simd;

use crate::multirate::padded::Padded;
use crate::multirate::wide::{Row, RowMut, registers};

/// Rows of some planes that a sweep has written over.
pub struct Aside {
    /// Cells of a row, with the rim.
    row: usize,
    /// Cells of a plane, with the rim.
    plane: usize,
    /// Rows of a plane, with the rim.
    rows: u32,
    /// First plane.
    first: usize,
    /// Rows of a belt.
    belt: usize,
    /// The rows written over last, one more than a belt has; behind them the last row of the belt
    /// before, in every plane.
    celsius: Vec<f32>,
    /// Which rows of the box they are.
    numbers: Vec<u32>,
}

/// A row that is swept, and where rows are kept that it needs.
#[derive(Debug, Clone, Copy)]
pub struct Place {
    /// Its number among all rows of the box.
    number: u32,
    /// Where it is kept itself.
    kept: u32,
    /// Where the row in front is kept.
    front: u32,
    /// Where the row below is kept; nowhere in the first plane.
    below: Option<u32>,
    /// Where it is kept for the next belt, if it is the last of a belt.
    wall: Option<u32>,
}

/// Planes next to those of a sweep, as they stood before the step.
#[derive(Debug, Clone, Default)]
pub struct Borders {
    /// Below the first plane.
    pub below: Vec<f32>,
    /// Above the last plane.
    pub above: Vec<f32>,
}

/// A row and those around it before the step.
pub struct RowBefore<'all> {
    /// The row itself.
    pub own: &'all [f32],
    /// In front, at the back, below and above.
    pub across: [&'all [f32]; 4],
}

/// The number of no row.
const NONE: u32 = u32::MAX;

impl Aside {
    /// Room for a sweep of `planes` planes from `first` on, in belts of so many rows: at least two.
    pub fn of(padded: &Padded, first: usize, planes: usize, belt: usize) -> Aside {
        let belt = belt.max(2);
        let walled = if belt < padded.counts[1] { planes } else { 0 };
        let kept = belt + 1 + walled;
        Aside {
            row: padded.row,
            plane: padded.plane,
            rows: (padded.plane / padded.row) as u32,
            first,
            belt,
            celsius: vec![0.0; padded.row * kept],
            numbers: vec![NONE; kept],
        }
    }

    /// The belt in which a row lies.
    pub fn belt_of(&self, y: usize) -> usize {
        y / self.belt
    }

    /// The place of row y of plane z.
    pub fn place(&self, [y, z]: [usize; 2]) -> Place {
        let ring = self.belt + 1;
        let (within, plane) = (y % self.belt, z - self.first);
        let turn = plane * self.belt + within;
        let wall = ring + plane;
        let front = if within == 0 {
            wall
        } else {
            (turn + ring - 1) % ring
        };
        Place {
            number: (z + 1) as u32 * self.rows + (y + 1) as u32,
            kept: (turn % ring) as u32,
            front: front as u32,
            below: (plane > 0).then(|| ((turn - self.belt) % ring) as u32),
            wall: (within + 1 == self.belt).then_some(wall as u32),
        }
    }

    /// Nothing is written over yet.
    pub fn begin(&mut self) {
        self.numbers.fill(NONE);
    }

    /// Keeps a row aside and gives what stood there and around it before the step, with the row
    /// that may be written over now; `celsius` are the planes of the sweep.
    #[inline(always)]
    pub fn take<'all, S: Simd>(
        &'all mut self,
        simd: S,
        place: Place,
        borders: &'all Borders,
        celsius: &'all mut [f32],
    ) -> (RowBefore<'all>, &'all mut [f32]) {
        let (row, plane, at) = (self.row, self.plane, self.at(place));
        let (written, rest) = celsius.split_at_mut(at);
        let (own, beyond) = rest.split_at_mut(row);
        self.put(simd, place.kept, place.number, own);
        if let Some(wall) = place.wall {
            // The first row of the belt has read what stood here.
            self.put(simd, wall, place.number, own);
        }
        let front = self.kept(place.front, place.number - 1);
        let front = front.unwrap_or(&written[at - row..]);
        let below = match place.below {
            None => &borders.below[at..at + row],
            Some(below) => (self.kept(below, place.number - self.rows))
                .unwrap_or(&written[at - plane..][..row]),
        };
        let above = match beyond.get(plane - row..plane) {
            Some(above) => above,
            None => &borders.above[at % plane..][..row],
        };
        let before = RowBefore {
            own: self.kept(place.kept, place.number).unwrap_or_default(),
            across: [front, &beyond[..row], below, above],
        };
        (before, own)
    }

    /// The row above one, where it lies in the planes of the sweep.
    #[inline(always)]
    pub fn above<'all>(&self, place: Place, celsius: &'all [f32]) -> &'all [f32] {
        let at = self.at(place) + self.plane;
        celsius.get(at..at + self.row).unwrap_or_default()
    }

    /// Where a row stands in the planes of the sweep.
    #[inline(always)]
    fn at(&self, place: Place) -> usize {
        place.number as usize * self.row - (self.first + 1) * self.plane
    }

    /// Keeps a row somewhere, if there is room.
    #[inline(always)]
    fn put<S: Simd>(&mut self, simd: S, slot: u32, number: u32, celsius: &[f32]) {
        let from = slot as usize * self.row;
        if let Some(kept) = self.celsius.get_mut(from..from + self.row) {
            // Rows are a whole number of registers.
            let count = registers::<S>(self.row);
            let (mut kept, row) = (RowMut::of(simd, kept, count), Row::of(simd, celsius, count));
            for at in 0..count {
                kept.put(at, row.at(at));
            }
            self.numbers[slot as usize] = number;
        }
    }

    /// What is kept somewhere, if it is the row that is asked for.
    #[inline(always)]
    fn kept(&self, slot: u32, number: u32) -> Option<&[f32]> {
        let from = slot as usize * self.row;
        let there = self.numbers.get(slot as usize) == Some(&number);
        there.then(|| &self.celsius[from..from + self.row])
    }
}

impl Place {
    /// The number of the row among all rows of the box.
    #[inline(always)]
    pub fn number(self) -> usize {
        self.number as usize
    }
}

impl Borders {
    /// Copies the planes next to each piece of a list; `cuts` are the first planes of the pieces
    /// and the end of the last.
    pub fn take(padded: &Padded, celsius: &[f32], cuts: &[usize], borders: &mut [Borders]) {
        for (pair, borders) in cuts.windows(2).zip(borders) {
            let below = padded.plane_at(pair[0]) - padded.plane;
            let above = padded.plane_at(pair[1]);
            for (kept, at) in [(&mut borders.below, below), (&mut borders.above, above)] {
                kept.clear();
                kept.extend_from_slice(&celsius[at..at + padded.plane]);
            }
        }
    }
}
