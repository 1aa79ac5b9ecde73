//! Each piece of work that runs on the widest registers of the machine, with what it needs.

use pulp::{Simd, WithSimd};

use crate::multirate::padded::Padded;
use crate::multirate::quick::{Given, Quick, Told};
use crate::multirate::ramps::Table;
use crate::multirate::record::{Record, Step};
use crate::multirate::slow::{Borders, Slow, Step as SlowStep};
use crate::multirate::stages::Stage;

/// A figure of quick cells.
pub struct FillQuick<'all> {
    /// The cells.
    pub quick: &'all Quick,
    /// What is told of them.
    pub told: Told,
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// The figures of the planes.
    pub figures: &'all mut [f32],
}

impl WithSimd for FillQuick<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) {
        self.quick.fill(simd, self.told, self.tables, self.figures);
    }
}

/// Conductivities of slow cells.
pub struct RefreshSlow<'all> {
    /// The cells.
    pub slow: &'all Slow,
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// The box with its rim.
    pub padded: &'all Padded,
    /// Which rows are awake.
    pub awake: &'all [bool],
    /// Heat contents of the planes.
    pub heat: &'all [f32],
    /// Conductivities of the planes.
    pub w_mk: &'all mut [f32],
}

impl WithSimd for RefreshSlow<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) {
        let given = (self.tables, self.padded);
        self.slow
            .refresh(simd, given, self.awake, self.heat, self.w_mk);
    }
}

/// What stands still during a step of quick cells; gives the highest rate, 1/s.
pub struct Prepare<'all> {
    /// The cells.
    pub quick: &'all mut Quick,
    /// What stands at the start of the step.
    pub given: &'all Given<'all>,
}

impl WithSimd for Prepare<'_> {
    type Output = f32;

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) -> f32 {
        self.quick.prepare(simd, self.given)
    }
}

/// A step of slow cells.
pub struct StepSlow<'all> {
    /// The cells.
    pub slow: &'all mut Slow,
    /// What it needs beside temperatures.
    pub step: &'all SlowStep<'all>,
    /// The planes next to theirs, before it.
    pub borders: &'all Borders,
    /// Heat contents of the planes.
    pub heat: &'all mut [f32],
    /// Temperatures of the planes.
    pub celsius: &'all mut [f32],
}

impl WithSimd for StepSlow<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) {
        let lists = (self.heat, self.celsius);
        self.slow.step(simd, self.step, self.borders, lists);
    }
}

/// A stage of quick cells.
pub struct OneStage<'all> {
    /// The cells.
    pub quick: &'all mut Quick,
    /// Its weights.
    pub stage: Stage,
    /// Tables of the materials, and the box with its rim.
    pub given: (&'all [Table], &'all Padded),
    /// Temperatures of the box.
    pub celsius: &'all [f32],
    /// Temperatures after it, of the planes.
    pub after: &'all mut [f32],
}

impl WithSimd for OneStage<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) {
        self.quick
            .stage(simd, self.stage, self.given, self.celsius, self.after);
    }
}

/// The end of a step of quick cells: what it crossed is written down, what it changed is added.
pub struct Settle<'all> {
    /// The cells.
    pub quick: &'all mut Quick,
    /// What is written down of them.
    pub record: &'all mut Record,
    /// The step.
    pub step: &'all Step<'all>,
}

impl WithSimd for Settle<'_> {
    type Output = ();

    #[inline(always)]
    fn with_simd<S: Simd>(self, simd: S) {
        self.record.step(simd, self.quick, self.step);
        self.quick.settle(simd);
    }
}
