//! A block of quick cells with all that a stage needs of it beside temperatures.
//!
//! It lies in one piece, so that a stage runs along one stream of memory.

use pulp::Simd;

use crate::multirate::ramps::Figure;
use crate::multirate::stages::Stage;
use crate::multirate::wide::{LANES, Wide, load, registers, store};

/// The cells of a block, one entry a cell in each list.
#[derive(Debug, Clone, Copy)]
#[repr(align(64))]
pub struct Block {
    /// Conductances to the six sides for a unit volume, W/(m³ K).
    pub conductances: [[f32; LANES]; 6],
    /// Heat from slow neighbours and surroundings, W/m³.
    pub source: [f32; LANES],
    /// Heat content above the base of each material, J/m³, at the start of a step.
    pub heat: [f32; LANES],
    /// What the step has changed, J/m³: the newest and what came before it, in turn.
    changes: [[f32; LANES]; 2],
}

/// What a stage does to all blocks alike.
#[derive(Clone, Copy)]
pub struct StageOf<S: Simd> {
    pub simd: S,
    pub lean: Wide<S>,
    pub step_s: Wide<S>,
    /// Which of the changes is the newest before it.
    pub newest: usize,
}

impl<S: Simd> StageOf<S> {
    #[inline(always)]
    pub fn of(simd: S, stage: Stage, newest: usize) -> StageOf<S> {
        StageOf {
            simd,
            lean: Wide::all(simd, stage.lean),
            step_s: Wide::all(simd, stage.step_s),
            newest,
        }
    }
}

impl Block {
    /// Nothing in it.
    pub const EMPTY: Block = Block {
        conductances: [[0.0; LANES]; 6],
        source: [0.0; LANES],
        heat: [0.0; LANES],
        changes: [[0.0; LANES]; 2],
    };

    /// What the step has changed so far, where `newest` says which list that is.
    #[inline(always)]
    pub fn change(&self, newest: usize) -> &[f32; LANES] {
        &self.changes[newest & 1]
    }

    /// Begins a step: nothing has changed.
    #[inline(always)]
    pub fn begin(&mut self) {
        self.changes = [[0.0; LANES]; 2];
    }

    /// Heat that comes to register `i` of the block from its six sides, W/m³.
    #[inline(always)]
    pub fn rate<S: Simd>(&self, simd: S, i: usize, own: Wide<S>, sides: [Wide<S>; 6]) -> Wide<S> {
        let [a, b, c, d, e, f] = &self.conductances;
        let [left, right, front, back, below, above] = sides;
        let along = load(simd, a, i) * (left - own) + load(simd, b, i) * (right - own);
        let across = load(simd, c, i) * (front - own) + load(simd, d, i) * (back - own);
        let upright = load(simd, e, i) * (below - own) + load(simd, f, i) * (above - own);
        // By pairs, so that no sum waits for more than two others.
        (load(simd, &self.source, i) + along) + (across + upright)
    }

    /// The sum of the six conductances.
    #[inline(always)]
    pub fn sum<S: Simd>(&self, simd: S, i: usize) -> Wide<S> {
        let [a, b, c, d, e, f] = &self.conductances;
        load(simd, a, i)
            + load(simd, b, i)
            + load(simd, c, i)
            + load(simd, d, i)
            + load(simd, e, i)
            + load(simd, f, i)
    }

    /// Takes a stage at a rate and gives the temperature after it.
    #[inline(always)]
    pub fn step<S: Simd>(
        &mut self,
        stage: &StageOf<S>,
        figure: &impl Figure<S>,
        (i, at): (usize, usize),
        rate: Wide<S>,
    ) -> Wide<S> {
        let simd = stage.simd;
        let change = load(simd, &self.changes[stage.newest & 1], i);
        let older = &mut self.changes[(stage.newest & 1) ^ 1];
        let leant = change + stage.lean * (change - load(simd, older, i));
        let next = leant + stage.step_s * rate;
        store(simd, older, i, next);
        figure.of(simd, at, load(simd, &self.heat, i) + next)
    }

    /// Ends a step: adds what it has changed, and what was lost in rounding the last time.
    #[inline(always)]
    pub fn settle<S: Simd>(&mut self, simd: S, newest: usize, lost: &mut [f32; LANES]) {
        for i in 0..registers::<S>(LANES) {
            let before = load(simd, &self.heat, i);
            let change = load(simd, self.change(newest), i) + load(simd, lost, i);
            let after = before + change;
            store(simd, &mut self.heat, i, after);
            store(simd, lost, i, change - (after - before));
        }
    }
}
