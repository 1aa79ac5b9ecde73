//! Rows of slow cells of one material, a register at a time.

use pulp::Simd;

use super::aside::RowBefore;
use super::{Segment, Step};
use crate::multirate::padded::{LEAD, Padded};
use crate::multirate::ramps::Table;
use crate::multirate::wide::{Row, RowMut, Wide, registers};

/// Step, weights along the row and what a material of one conductivity makes of them: a rise of
/// temperature of a plain one, of heat content of one that is not.
pub struct RowWeights {
    low: Vec<f32>,
    high: Vec<f32>,
    factor: f32,
}

impl RowWeights {
    /// Those of a material.
    pub fn of(table: &Table, step: &Step) -> RowWeights {
        let [low, high] = &step.weights[0];
        let Some(w_mk) = table.steady_w_mk else {
            return RowWeights {
                low: Vec::new(),
                high: Vec::new(),
                factor: 0.0,
            };
        };
        let j_m3k = table.plain_j_m3k.map_or(1.0, f64::from);
        let factor = (step.step_s * 2.0 * f64::from(w_mk) / j_m3k) as f32;
        let times = |weights: &[f32]| weights.iter().map(|weight| factor * weight).collect();
        RowWeights {
            low: times(low),
            high: times(high),
            factor,
        }
    }
}

/// Seven rows of a list: a row of cells and its neighbours.
pub struct Rows<'all> {
    /// The row itself.
    pub own: &'all [f32],
    /// Left, right, front, back, below, above.
    pub sides: [&'all [f32]; 6],
}

impl<'all> Rows<'all> {
    /// Those of a row.
    #[inline(always)]
    pub fn of(all: &'all [f32], padded: &Padded, at: usize, len: usize) -> Rows<'all> {
        let row = |from: usize| &all[from..from + len];
        let Padded {
            row: next, plane, ..
        } = *padded;
        Rows {
            own: row(at),
            sides: [
                row(at - 1),
                row(at + 1),
                row(at - next),
                row(at + next),
                row(at - plane),
                row(at + plane),
            ],
        }
    }

    /// Those of some cells of a row as it stood before a step.
    #[inline(always)]
    pub fn within(before: &RowBefore<'all>, segment: &Segment) -> Rows<'all> {
        let (x, len) = (LEAD + segment.place[0] as usize, segment.len as usize);
        let [front, back, below, above] = before.across;
        let row = |row: &'all [f32], from: usize| &row[from..from + len];
        Rows {
            own: row(before.own, x),
            sides: [
                row(before.own, x - 1),
                row(before.own, x + 1),
                row(front, x),
                row(back, x),
                row(below, x),
                row(above, x),
            ],
        }
    }

    /// Registers of it from a cell on.
    #[inline(always)]
    fn wide<S: Simd>(&self, simd: S, from: usize, count: usize) -> WideRows<'all, S> {
        let [a, b, c, d, e, f] = self.sides;
        let row = |row: &'all [f32]| Row::of(simd, &row[from..], count);
        WideRows {
            own: row(self.own),
            sides: [row(a), row(b), row(c), row(d), row(e), row(f)],
        }
    }
}

struct WideRows<'all, S: Simd> {
    own: Row<'all, S>,
    sides: [Row<'all, S>; 6],
}

/// What the neighbours of a row weigh.
struct Weights<'all> {
    low: &'all [f32],
    high: &'all [f32],
    across: [f32; 4],
}

impl<'all> Weights<'all> {
    #[inline(always)]
    fn of(step: &Step, segment: &Segment, row: &'all RowWeights) -> Weights<'all> {
        let [x, y, z] = segment.place();
        let cells = x..x + segment.len as usize;
        let [_, ys, zs] = step.weights;
        Weights {
            low: &row.low[cells.clone()],
            high: &row.high[cells],
            across: [
                row.factor * ys[0][y],
                row.factor * ys[1][y],
                row.factor * zs[0][z],
                row.factor * zs[1][z],
            ],
        }
    }
}

/// Temperatures of a row of a plain material after a step.
#[inline(always)]
pub fn plain_row<S: Simd>(
    simd: S,
    step: &Step,
    (segment, row): (&Segment, &RowWeights),
    rows: &Rows,
    celsius: &mut [f32],
) {
    let len = celsius.len();
    let weights = Weights::of(step, segment, row);
    let lanes = S::F32_LANES;
    if len < lanes {
        for (i, celsius) in celsius.iter_mut().enumerate() {
            *celsius = rows.own[i] + gain(rows, &weights, i);
        }
        return;
    }
    let whole = registers::<S>(len);
    gain_wide(simd, rows, &weights, (0, whole), celsius, |own, gain, _| {
        own + gain
    });
    if whole * lanes < len {
        // The last register again, as far back as it fits: the same numbers come out.
        let from = len - lanes;
        gain_wide(simd, rows, &weights, (from, 1), celsius, |own, gain, _| {
            own + gain
        });
    }
}

/// Heat contents of a row of a material of one conductivity after a step.
#[inline(always)]
pub fn steady_row<S: Simd>(
    simd: S,
    step: &Step,
    (segment, row): (&Segment, &RowWeights),
    rows: &Rows,
    heat: &mut [f32],
) {
    let len = heat.len();
    let weights = Weights::of(step, segment, row);
    let whole = registers::<S>(len);
    gain_wide(simd, rows, &weights, (0, whole), heat, |_, gain, heat| {
        heat + gain
    });
    for (i, heat) in heat.iter_mut().enumerate().skip(whole * S::F32_LANES) {
        *heat += gain(rows, &weights, i);
    }
}

#[inline(always)]
fn gain(rows: &Rows, weights: &Weights, i: usize) -> f32 {
    let own = rows.own[i];
    let [left, right, front, back, below, above] = rows.sides;
    let [to_front, to_back, to_below, to_above] = weights.across;
    let along = weights.low[i] * (left[i] - own) + weights.high[i] * (right[i] - own);
    let across = to_front * (front[i] - own) + to_back * (back[i] - own);
    let upright = to_below * (below[i] - own) + to_above * (above[i] - own);
    along + (across + upright)
}

/// The same for `count` registers from a cell on; `put` makes of temperature, gain and what stands
/// there what shall stand there.
#[inline(always)]
fn gain_wide<S: Simd>(
    simd: S,
    rows: &Rows,
    weights: &Weights,
    (from, count): (usize, usize),
    figures: &mut [f32],
    put: impl Fn(Wide<S>, Wide<S>, Wide<S>) -> Wide<S>,
) {
    let WideRows { own, sides } = rows.wide(simd, from, count);
    let [left, right, front, back, below, above] = sides;
    let low = Row::of(simd, &weights.low[from..], count);
    let high = Row::of(simd, &weights.high[from..], count);
    let [to_front, to_back, to_below, to_above] = all(simd, weights.across);
    let mut figures = RowMut::of(simd, &mut figures[from..], count);
    for i in 0..count {
        let t = own.at(i);
        let along = low.at(i) * (left.at(i) - t) + high.at(i) * (right.at(i) - t);
        let across = to_front * (front.at(i) - t) + to_back * (back.at(i) - t);
        let upright = to_below * (below.at(i) - t) + to_above * (above.at(i) - t);
        let gain = along + (across + upright);
        figures.put(i, put(t, gain, figures.at(i)));
    }
}

#[inline(always)]
fn all<S: Simd>(simd: S, [a, b, c, d]: [f32; 4]) -> [Wide<S>; 4] {
    [
        Wide::all(simd, a),
        Wide::all(simd, b),
        Wide::all(simd, c),
        Wide::all(simd, d),
    ]
}

/// Heat contents of a row of a material whose conductivity changes after a step.
#[inline(always)]
pub fn changing_row<S: Simd>(simd: S, step: &Step, segment: &Segment, t: &Rows, heat: &mut [f32]) {
    let len = heat.len();
    let [x, y, z] = segment.place();
    let k = Rows::of(step.w_mk, step.padded, segment.at as usize, len);
    let [xs, ys, zs] = step.weights;
    let (low, high) = (&xs[0][x..x + len], &xs[1][x..x + len]);
    let step = step.step_s as f32;
    let across = [ys[0][y], ys[1][y], zs[0][z], zs[1][z]];
    let count = registers::<S>(len);
    {
        let (t, k) = (t.wide(simd, 0, count), k.wide(simd, 0, count));
        let (low, high) = (Row::of(simd, low, count), Row::of(simd, high, count));
        let [to_front, to_back, to_below, to_above] = all(simd, across);
        let step = Wide::all(simd, step);
        let mut heat = RowMut::of(simd, heat, count);
        for i in 0..count {
            let (own, own_k) = (t.own.at(i), k.own.at(i));
            let weights = [low.at(i), high.at(i), to_front, to_back, to_below, to_above];
            let part = |side: usize| {
                let both = own_k + k.sides[side].at(i);
                weights[side] * both * (t.sides[side].at(i) - own)
            };
            let gain = (part(0) + part(1)) + ((part(2) + part(3)) + (part(4) + part(5)));
            heat.put(i, heat.at(i) + step * gain);
        }
    }
    for i in count * S::F32_LANES..len {
        let (own, own_k) = (t.own[i], k.own[i]);
        let weights = [low[i], high[i], across[0], across[1], across[2], across[3]];
        let part =
            |side: usize| weights[side] * (own_k + k.sides[side][i]) * (t.sides[side][i] - own);
        heat[i] += step * ((part(0) + part(1)) + ((part(2) + part(3)) + (part(4) + part(5))));
    }
}
