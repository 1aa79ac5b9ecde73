//! A small full system of linear equations, solved by elimination.

/// So many equations, row by row.
#[derive(Clone, Debug)]
pub(super) struct Square {
    count: usize,
    rows: Vec<f64>,
}

impl Square {
    /// All noughts.
    pub(super) fn of(count: usize) -> Square {
        Square {
            count,
            rows: vec![0.0; count * count],
        }
    }

    /// Adds to a factor.
    pub(super) fn add(&mut self, row: usize, column: usize, factor: f64) {
        self.rows[row * self.count + column] += factor;
    }

    /// The unknowns for a right side, with the largest factor of a column as its pivot; none where
    /// the equations do not settle them.
    pub(super) fn solve(mut self, right: &[f64]) -> Option<Vec<f64>> {
        let n = self.count;
        let mut right = right.to_vec();
        for column in 0..n {
            let size = |row: &usize| self.rows[row * n + column].abs();
            let pivot = (column..n).max_by(|a, b| size(a).total_cmp(&size(b)))?;
            if size(&pivot) <= f64::MIN_POSITIVE {
                return None;
            }
            if pivot != column {
                (0..n).for_each(|k| self.rows.swap(pivot * n + k, column * n + k));
                right.swap(pivot, column);
            }
            for row in column + 1..n {
                let share = self.rows[row * n + column] / self.rows[column * n + column];
                if share != 0.0 {
                    for k in column..n {
                        self.rows[row * n + k] -= share * self.rows[column * n + k];
                    }
                    right[row] -= share * right[column];
                }
            }
        }
        for row in (0..n).rev() {
            let known: f64 = (row + 1..n)
                .map(|k| self.rows[row * n + k] * right[k])
                .sum();
            right[row] = (right[row] - known) / self.rows[row * n + row];
        }
        right.iter().all(|x| x.is_finite()).then_some(right)
    }
}
