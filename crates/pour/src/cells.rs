//! The mould as a box of cells, one stuff a cell.

/// What a cell is filled with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stuff {
    /// Moulding sand.
    Sand,
    /// The sand of a core.
    Core,
    /// The hollow that the metal fills: casting, feeders, gates, runners, sprue.
    Metal,
    /// A chill, by the place of its metal in the table of chills.
    Chill(u8),
    /// Open air above the mould.
    Air,
}

/// A box of cubes over a mould; cell `[i, j, k]` stands at `i + nx (j + ny k)`, z upward.
#[derive(Clone, Debug)]
pub struct MouldCells {
    /// Edge of a cell, mm.
    pub size_mm: f64,
    /// Cells along x, y, z.
    pub count: [usize; 3],
    /// Low corner of cell `[0, 0, 0]`, mm in the mould's coordinates.
    pub origin_mm: [f64; 3],
    /// What each cell is filled with.
    pub stuff: Vec<Stuff>,
    /// Metal of each cell as a share of the cell; nought where it is not [`Stuff::Metal`]. A cell
    /// at the rim may hold some above one: it stands for the piece of wall in its neighbour too.
    pub metal: Vec<f32>,
}

impl MouldCells {
    /// Where a cell stands in the rows.
    pub fn index(&self, [i, j, k]: [usize; 3]) -> usize {
        i + self.count[0] * (j + self.count[1] * k)
    }

    /// The cell that stands at a place in the rows.
    pub fn cell(&self, index: usize) -> [usize; 3] {
        let [nx, ny, _] = self.count;
        [index % nx, index / nx % ny, index / (nx * ny)]
    }

    /// The six neighbours of a cell, low and high along x, y and z, as far as the box goes.
    pub fn neighbours(&self, index: usize) -> impl Iterator<Item = usize> {
        let at = self.cell(index);
        let [nx, ny, _] = self.count;
        let away = [1, nx, nx * ny];
        (0..6).filter_map(move |side| {
            let axis = side / 2;
            match side % 2 {
                0 => (at[axis] > 0).then(|| index - away[axis]),
                _ => (at[axis] + 1 < self.count[axis]).then(|| index + away[axis]),
            }
        })
    }

    /// Metal in a cell, mm³.
    pub fn metal_mm3(&self, index: usize) -> f64 {
        f64::from(self.metal[index]) * self.size_mm.powi(3)
    }

    /// The middle of a cell, mm in the mould's coordinates.
    pub fn middle_mm(&self, index: usize) -> [f64; 3] {
        let at = self.cell(index);
        [0, 1, 2].map(|axis| self.origin_mm[axis] + (at[axis] as f64 + 0.5) * self.size_mm)
    }
}
