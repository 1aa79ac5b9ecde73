//! A box of cells with spacings of their own along each axis.

/// The edges of the cells along x, y and z; x runs quickest in every list of cells.
#[derive(Debug, Clone, PartialEq)]
pub struct Grid {
    /// Rising edges along each axis in metres, one more than there are cells.
    pub edges_m: [Vec<f64>; 3],
}

impl Grid {
    /// Cubes of one size, from the origin.
    pub fn uniform(cells: [usize; 3], cell_m: f64) -> Grid {
        let edges = |count: usize| (0..=count).map(|at| at as f64 * cell_m).collect();
        Grid {
            edges_m: cells.map(edges),
        }
    }

    /// Cells along x, y and z.
    pub fn counts(&self) -> [usize; 3] {
        [0, 1, 2].map(|axis: usize| self.edges_m[axis].len().saturating_sub(1))
    }

    /// All cells.
    pub fn cells(&self) -> usize {
        self.counts().iter().product()
    }

    /// Where a cell stands in a list of all cells.
    pub fn index(&self, at: [usize; 3]) -> usize {
        let [along, rows, _] = self.counts();
        (at[2] * rows + at[1]) * along + at[0]
    }

    /// The place of a cell by where it stands in the list.
    pub fn place(&self, index: usize) -> [usize; 3] {
        let [along, rows, _] = self.counts();
        [index % along, index / along % rows, index / along / rows]
    }

    /// Width of a cell along an axis, in metres.
    pub fn width(&self, axis: usize, at: usize) -> f64 {
        self.edges_m[axis][at + 1] - self.edges_m[axis][at]
    }

    /// Middle of a cell along an axis, in metres.
    pub fn middle(&self, axis: usize, at: usize) -> f64 {
        0.5 * (self.edges_m[axis][at + 1] + self.edges_m[axis][at])
    }

    /// Middle of a cell, in metres.
    pub fn centre(&self, at: [usize; 3]) -> [f64; 3] {
        [0, 1, 2].map(|axis: usize| self.middle(axis, at[axis]))
    }

    /// Volume of a whole cell, in cubic metres.
    pub fn volume(&self, at: [usize; 3]) -> f64 {
        (0..3).map(|axis| self.width(axis, at[axis])).product()
    }

    /// Area of a whole face across an axis, in square metres.
    pub fn area(&self, axis: usize, at: [usize; 3]) -> f64 {
        let [one, other] = [(axis + 1) % 3, (axis + 2) % 3];
        self.width(one, at[one]) * self.width(other, at[other])
    }

    /// The cell in which a point lies, if it lies in the box.
    pub fn cell_at(&self, point_m: [f64; 3]) -> Option<[usize; 3]> {
        let mut at = [0; 3];
        for axis in 0..3 {
            let above = self.edges_m[axis].partition_point(|edge| *edge <= point_m[axis]);
            let on_end = self.edges_m[axis].last() == Some(&point_m[axis]);
            let cell = above.checked_sub(if on_end { 2 } else { 1 })?;
            if cell >= self.counts()[axis] {
                return None;
            }
            at[axis] = cell;
        }
        Some(at)
    }
}
