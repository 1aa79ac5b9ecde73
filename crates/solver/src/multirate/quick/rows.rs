//! Rows of quick cells, a block at a time.

use pulp::Simd;

use super::block::{Block, StageOf};
use super::{Given, Run};
use crate::multirate::padded::Padded;
use crate::multirate::ramps::{Figure, Ramps, WithFigure};
use crate::multirate::wide::{LANES, Row, RowMut, Wide, load, registers, store};

/// A figure of each cell of some blocks from its heat content.
#[inline(always)]
pub fn fill<S: Simd>(simd: S, figure: &impl Figure<S>, blocks: &[Block], figures: &mut [f32]) {
    let in_block = registers::<S>(LANES);
    let mut figures = RowMut::of(simd, figures, blocks.len() * in_block);
    for (at, block) in blocks.iter().enumerate() {
        for i in 0..in_block {
            let at = at * in_block + i;
            figures.put(at, figure.of(simd, at, load(simd, &block.heat, i)));
        }
    }
}

/// Conductances of a run to all sides, for a unit volume, as if all were of one material.
#[inline(always)]
pub fn conduct<S: Simd>(simd: S, run: &Run, given: &Given, blocks: &mut [Block]) {
    let in_block = registers::<S>(LANES);
    let count = blocks.len() * in_block;
    let (at, len) = (run.at as usize, blocks.len() * LANES);
    let [x, y, z] = run.place;
    let (x, y, z) = (x as usize, y as usize, z as usize);
    let row = |from: usize| Row::of(simd, &given.w_mk[from..from + len], count);
    let own = row(at);
    let [left, right, front, back, below, above] = around(given.padded, at, row);
    let [xs, ys, zs] = given.weights;
    let low = Row::of(simd, &xs[0][x..x + len], count);
    let high = Row::of(simd, &xs[1][x..x + len], count);
    let all = |weight| Wide::all(simd, weight);
    let (to_front, to_back) = (all(ys[0][y]), all(ys[1][y]));
    let (to_below, to_above) = (all(zs[0][z]), all(zs[1][z]));
    for (at, block) in blocks.iter_mut().enumerate() {
        let [a, b, c, d, e, f] = &mut block.conductances;
        for i in 0..in_block {
            let at = at * in_block + i;
            let own = own.at(at);
            store(simd, a, i, low.at(at) * (own + left.at(at)));
            store(simd, b, i, high.at(at) * (own + right.at(at)));
            store(simd, c, i, to_front * (own + front.at(at)));
            store(simd, d, i, to_back * (own + back.at(at)));
            store(simd, e, i, to_below * (own + below.at(at)));
            store(simd, f, i, to_above * (own + above.at(at)));
        }
    }
}

/// The highest rate over some blocks, 1/s: the sum of the six conductances and of what goes to
/// surroundings, over the least heat capacity.
#[inline(always)]
pub fn highest<S: Simd>(
    simd: S,
    blocks: &[Block],
    around: Option<&[f32]>,
    inverse: &[f32; LANES],
) -> f32 {
    let in_block = registers::<S>(LANES);
    let mut most = Wide::all(simd, 0.0);
    match around {
        None => {
            for block in blocks {
                for i in 0..in_block {
                    most = most.max(block.sum(simd, i) * load(simd, inverse, i));
                }
            }
        }
        Some(around) => {
            let around = Row::of(simd, around, blocks.len() * in_block);
            for (at, block) in blocks.iter().enumerate() {
                for i in 0..in_block {
                    let sum = block.sum(simd, i) + around.at(at * in_block + i);
                    most = most.max(sum * load(simd, inverse, i));
                }
            }
        }
    }
    most.largest()
}

/// Temperatures around the blocks of a run, and those after a stage.
pub struct StageRow<'all, S: Simd> {
    own: Row<'all, S>,
    sides: [Row<'all, S>; 6],
    outer: Option<(Row<'all, S>, Row<'all, S>)>,
    after: RowMut<'all, S>,
}

impl<'all, S: Simd> StageRow<'all, S> {
    /// The rows of a run; `outer` are the rates of surroundings and their temperatures.
    #[inline(always)]
    pub fn of(
        simd: S,
        at: usize,
        (padded, celsius): (&Padded, &'all [f32]),
        outer: Option<(&'all [f32], &'all [f32])>,
        after: &'all mut [f32],
    ) -> StageRow<'all, S> {
        let len = after.len();
        let count = registers::<S>(len);
        let row = |from: usize| Row::of(simd, &celsius[from..from + len], count);
        let mut around_rows = None;
        if let Some((rate, celsius)) = outer {
            around_rows = Some((Row::of(simd, rate, count), Row::of(simd, celsius, count)));
        }
        StageRow {
            own: row(at),
            sides: around(padded, at, row),
            outer: around_rows,
            after: RowMut::of(simd, after, count),
        }
    }
}

/// A stage of some blocks of a run.
pub struct Part<'part, 'all, S: Simd> {
    /// The stage.
    pub stage: StageOf<S>,
    /// The rows of the run.
    pub row: &'part mut StageRow<'all, S>,
    /// The blocks.
    pub blocks: &'part mut [Block],
    /// The first of them within the run.
    pub first: usize,
}

impl<S: Simd> Part<'_, '_, S> {
    /// The stage of these blocks with the temperature as a figure of the heat content.
    #[inline(always)]
    pub fn of<F: Figure<S>>(self, figure: &F) {
        let (stage, blocks) = (self.stage, self.blocks);
        let in_block = registers::<S>(LANES);
        let (first, count) = (self.first * in_block, blocks.len() * in_block);
        let own = self.row.own.part(first, count);
        let [left, right, front, back, below, above] = &self.row.sides;
        let (left, right) = (left.part(first, count), right.part(first, count));
        let (front, back) = (front.part(first, count), back.part(first, count));
        let (below, above) = (below.part(first, count), above.part(first, count));
        let mut after = self.row.after.part(first, count);
        let sides = |at: usize| {
            [
                left.at(at),
                right.at(at),
                front.at(at),
                back.at(at),
                below.at(at),
                above.at(at),
            ]
        };
        match self.row.outer {
            None => {
                for (at, block) in blocks.iter_mut().enumerate() {
                    for i in 0..in_block {
                        let at = at * in_block + i;
                        let rate = block.rate(stage.simd, i, own.at(at), sides(at));
                        after.put(at, block.step(&stage, figure, (i, at), rate));
                    }
                }
            }
            Some((to_outer, outer_c)) => {
                let to_outer = to_outer.part(first, count);
                let outer_c = outer_c.part(first, count);
                for (at, block) in blocks.iter_mut().enumerate() {
                    for i in 0..in_block {
                        let at = at * in_block + i;
                        let t = own.at(at);
                        let rate = block.rate(stage.simd, i, t, sides(at))
                            + to_outer.at(at) * (outer_c.at(at) - t);
                        after.put(at, block.step(&stage, figure, (i, at), rate));
                    }
                }
            }
        }
    }
}

impl<S: Simd> WithFigure<S> for Part<'_, '_, S> {
    #[inline(always)]
    fn with<F: Figure<S>>(self, figure: &F) {
        self.of(figure);
    }
}

/// A figure of each cell of a row of one material, of any length, from its heat content.
#[inline(always)]
pub fn fill_one<S: Simd>(simd: S, ramps: &Ramps, heat: &[f32], figures: &mut [f32]) {
    ramps.give((simd, heat, &mut *figures));
    for i in registers::<S>(heat.len()) * S::F32_LANES..heat.len() {
        figures[i] = ramps.at(heat[i]);
    }
}

impl<S: Simd> WithFigure<S> for (S, &[f32], &mut [f32]) {
    #[inline(always)]
    fn with<F: Figure<S>>(self, figure: &F) {
        let (simd, heat, figures) = self;
        let count = registers::<S>(heat.len());
        let heat = Row::of(simd, heat, count);
        let mut figures = RowMut::of(simd, figures, count);
        for at in 0..count {
            figures.put(at, figure.of(simd, at, heat.at(at)));
        }
    }
}

/// The neighbours of a row that begins at a cell: left, right, front, back, below, above.
#[inline(always)]
fn around<T>(padded: &Padded, at: usize, row: impl Fn(usize) -> T) -> [T; 6] {
    let Padded {
        row: next, plane, ..
    } = *padded;
    [
        row(at - 1),
        row(at + 1),
        row(at - next),
        row(at + next),
        row(at - plane),
        row(at + plane),
    ]
}
