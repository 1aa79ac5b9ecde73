//! The hollow that fills, as flats: cells of one layer that touch side by side.
//!
//! Metal that rises slowly covers a flat all at once, so that a few thousand flats say what half a
//! million cells would. The running system is left out: it fills by its own way.

use std::ops::Range;

use crate::cells::{MouldCells, Stuff};

/// Stands for no cell, no flat, no pool.
pub(crate) const NONE: u32 = u32::MAX;

/// Cells of one layer that touch side by side.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Flat {
    /// Its layer, from below.
    pub(crate) layer: usize,
    /// Metal it takes, m³.
    pub(crate) volume_m3: f64,
    /// Its cells in [`Hollow::in_flats`].
    pub(crate) cells: Range<usize>,
}

/// The hollow of a mould, cells counted from below.
#[derive(Clone, Debug)]
pub(crate) struct Hollow {
    /// Where each cell stands in the box.
    pub(crate) cells: Vec<u32>,
    /// Where each cell stands in a box with a rim of one cell around.
    rimmed: Vec<u32>,
    /// Which hollow cell each cell of the rimmed box is, or [`NONE`].
    at: Vec<u32>,
    /// The flat of each cell.
    pub(crate) flat: Vec<u32>,
    /// The flats, from below.
    pub(crate) flats: Vec<Flat>,
    /// Cells in the order of their flats.
    pub(crate) in_flats: Vec<u32>,
    /// Flats that lie on flats: upper, lower; in order, each pair once.
    pub(crate) links: Vec<[u32; 2]>,
    /// From a cell of the rimmed box to the next along x, y, z.
    strides: [usize; 3],
}

impl Hollow {
    /// Of the cells of metal that are not part of the running system.
    pub(crate) fn of(cells: &MouldCells, is_running: &[bool]) -> Hollow {
        let [nx, ny, nz] = cells.count;
        let strides = [1, nx + 2, (nx + 2) * (ny + 2)];
        let mut hollow = Hollow {
            cells: Vec::new(),
            rimmed: Vec::new(),
            at: vec![NONE; strides[2] * (nz + 2)],
            flat: Vec::new(),
            flats: Vec::new(),
            in_flats: Vec::new(),
            links: Vec::new(),
            strides,
        };
        for row in 0..ny * nz {
            let first = 1 + (row % ny + 1) * strides[1] + (row / ny + 1) * strides[2];
            for along in 0..nx {
                let place = row * nx + along;
                let is_metal = cells.stuff[place] == Stuff::Metal && cells.metal[place] > 0.0;
                if is_metal && !is_running.get(place).copied().unwrap_or(false) {
                    hollow.at[first + along] = hollow.cells.len() as u32;
                    hollow.cells.push(place as u32);
                    hollow.rimmed.push((first + along) as u32);
                }
            }
        }
        hollow.flat = vec![NONE; hollow.cells.len()];
        hollow.find_flats(cells);
        hollow.find_links();
        hollow
    }

    /// The hollow cells side by side with one: west, east, south, north, or [`NONE`].
    pub(crate) fn beside(&self, cell: u32) -> [u32; 4] {
        let place = self.rimmed[cell as usize] as usize;
        let [_, row, _] = self.strides;
        [place - 1, place + 1, place - row, place + row].map(|place| self.at[place])
    }

    /// The hollow cell below one, or [`NONE`].
    pub(crate) fn below(&self, cell: u32) -> u32 {
        self.at[self.rimmed[cell as usize] as usize - self.strides[2]]
    }

    /// The hollow cell above one, or [`NONE`].
    pub(crate) fn above(&self, cell: u32) -> u32 {
        self.at[self.rimmed[cell as usize] as usize + self.strides[2]]
    }

    /// The hollow cell at a place in the box, or [`NONE`].
    pub(crate) fn at_cell(&self, [x, y, z]: [usize; 3]) -> u32 {
        let [_, row, layer] = self.strides;
        let place = x + 1 + (y + 1) * row + (z + 1) * layer;
        self.at.get(place).copied().unwrap_or(NONE)
    }

    /// The cells of a flat.
    pub(crate) fn cells_of(&self, flat: u32) -> &[u32] {
        &self.in_flats[self.flats[flat as usize].cells.clone()]
    }

    /// The cell of a flat nearest to the middle of it, mm.
    pub(crate) fn middle_mm(&self, cells: &MouldCells, flat: u32) -> [f64; 3] {
        middle_of(
            cells,
            self.cells_of(flat)
                .iter()
                .map(|cell| self.cells[*cell as usize]),
        )
    }

    fn find_flats(&mut self, cells: &MouldCells) {
        let cell_m3 = (cells.size_mm * 1e-3).powi(3);
        self.in_flats.reserve(self.cells.len());
        for first in 0..self.cells.len() as u32 {
            if self.flat[first as usize] != NONE {
                continue;
            }
            let number = self.flats.len() as u32;
            let from = self.in_flats.len();
            self.flat[first as usize] = number;
            self.in_flats.push(first);
            let (mut next, mut share) = (from, 0.0);
            while next < self.in_flats.len() {
                let cell = self.in_flats[next];
                share += f64::from(cells.metal[self.cells[cell as usize] as usize]);
                for beside in self.beside(cell) {
                    if beside != NONE && self.flat[beside as usize] == NONE {
                        self.flat[beside as usize] = number;
                        self.in_flats.push(beside);
                    }
                }
                next += 1;
            }
            self.flats.push(Flat {
                layer: self.rimmed[first as usize] as usize / self.strides[2] - 1,
                volume_m3: share * cell_m3,
                cells: from..self.in_flats.len(),
            });
        }
    }

    fn find_links(&mut self) {
        let mut last = [NONE, NONE];
        for cell in 0..self.cells.len() as u32 {
            let below = self.below(cell);
            if below != NONE {
                let link = [self.flat[cell as usize], self.flat[below as usize]];
                if link != last {
                    self.links.push(link);
                    last = link;
                }
            }
        }
        self.links.sort_unstable();
        self.links.dedup();
    }
}

/// The middle of the cell nearest to the middle of some cells of the box, mm.
pub(crate) fn middle_of(
    cells: &MouldCells,
    places: impl ExactSizeIterator<Item = u32> + Clone,
) -> [f64; 3] {
    let count = places.len().max(1) as f64;
    let mut mean = [0.0; 3];
    for place in places.clone() {
        let middle = cells.middle_mm(place as usize);
        (0..3).for_each(|axis| mean[axis] += middle[axis] / count);
    }
    let away =
        |middle: &[f64; 3]| -> f64 { (0..3).map(|axis| (middle[axis] - mean[axis]).powi(2)).sum() };
    let middles = places.map(|place| cells.middle_mm(place as usize));
    let nearest = middles.min_by(|a, b| away(a).total_cmp(&away(b)));
    nearest.unwrap_or(mean)
}
