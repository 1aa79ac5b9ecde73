//! The cheapest charge within limits, as a linear programme.
//!
//! The variables are the kilograms of each heap for a kilogram of melt, so that a thimble and a
//! ladle are the same sum. A limit "at most h" of something holds where Σ x (part − h whole) ≤ 0.

use crate::charge_makeup::limit::{Limit, Side};
use crate::charge_makeup::makeup::Wish;
use crate::charge_makeup::measured::Measured;
use crate::charge_makeup::mix::{Brought, Column, Mix};
use crate::charge_makeup::programme::{Is, Programme, Row};

/// What a charge is made from, for a kilogram of melt in the crucible.
pub(super) struct Sum<'a> {
    pub(super) mix: &'a Mix,
    /// What a kilogram of each heap costs; nothing where no heap has a price.
    pub(super) prices: Option<Vec<f64>>,
    /// The least and the most of each heap.
    pub(super) bounds: Vec<(f64, f64)>,
    pub(super) limits: Vec<Limit>,
}

/// The share of rows that is per cent: figures of some ones suit the solver.
const PER_CENT: f64 = 100.0;

impl Sum<'_> {
    /// The charge that costs least, with this part of the heaps' own bands kept clear of the
    /// limits; where no heap has a price, the one that stands nearest the middle of the target.
    pub(super) fn cheapest(&self, clearance: f64) -> Option<Vec<f64>> {
        let mut programme = self.programme();
        for limit in &self.limits {
            programme.rows.extend(self.rows(limit, clearance));
        }
        match &self.prices {
            Some(prices) => programme.cost.clone_from(prices),
            None => self.stand_in_the_middle(&mut programme),
        }
        programme.solve().map(|mut kg| {
            kg.truncate(self.bounds.len());
            kg.into_iter().map(drop_last_bits).collect()
        })
    }

    /// The programme without limits and without cost: a kilogram of melt from what is there.
    pub(super) fn programme(&self) -> Programme {
        let columns = self.mix.columns.iter();
        let brings = columns.map(|column| self.mix.likely(column).whole);
        Programme {
            cost: vec![0.0; self.bounds.len()],
            bounds: self.bounds.clone(),
            rows: vec![Row {
                sum: brings.collect(),
                is: Is::Equal,
                than: 1.0,
            }],
        }
    }

    /// The rows of a limit.
    pub(super) fn rows(&self, limit: &Limit, clearance: f64) -> Vec<Row> {
        let row = |(side, end)| self.row(limit.of, side, end, clearance);
        limit.ends().map(row).collect()
    }

    /// One end of a limit as a row; what stands beyond it counts in per cent.
    pub(super) fn row(&self, of: Measured, side: Side, end: f64, clearance: f64) -> Row {
        let beyond =
            |brought: &Brought| PER_CENT * (self.mix.measured(brought, of) - end * brought.whole);
        let of_column = |column: &Column| {
            let likely = beyond(&self.mix.likely(column));
            let worst = beyond(&self.mix.worst(column, of, side));
            likely + clearance * (worst - likely)
        };
        Row {
            sum: self.mix.columns.iter().map(of_column).collect(),
            is: match side {
                Side::Low => Is::AtLeast,
                Side::High => Is::AtMost,
            },
            than: 0.0,
        }
    }

    /// Makes the programme look for the charge whose nearest limit is farthest away, counted in
    /// halves of the widths of the limits.
    fn stand_in_the_middle(&self, programme: &mut Programme) {
        programme.add(-1.0, (0.0, 1.0));
        for limit in &self.limits {
            let room = PER_CENT * limit.half_width();
            for mut row in self.rows(limit, 0.0) {
                row.sum
                    .push(if row.is == Is::AtMost { room } else { -room });
                programme.rows.push(row);
            }
        }
    }
}

/// The bounds of each heap for a kilogram of melt: what has to be used up, and what is there.
pub(super) fn bounds(there: &[f64], wish: &Wish, names: &[&str]) -> Vec<(f64, f64)> {
    let melt_kg = wish.melt().as_kg();
    let least = |name: &str| {
        let of_heap = wish.use_up.iter().filter(|used| used.heap == name);
        of_heap.map(|used| used.at_least.as_kg()).sum::<f64>()
    };
    let of_heap = names.iter().zip(there);
    of_heap
        .map(|(name, there)| (least(name) / melt_kg, there / melt_kg))
        .collect()
}

/// A solver's nought is not quite one.
fn drop_last_bits(kg: f64) -> f64 {
    if kg < 1e-9 { 0.0 } else { kg }
}
