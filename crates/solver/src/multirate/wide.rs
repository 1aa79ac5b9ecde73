//! What runs on the widest registers of the machine: each piece of work with what it needs.

use pulp::NullaryFnOnce;

use crate::multirate::padded::Padded;
use crate::multirate::quick::Quick;
use crate::multirate::ramps::Table;
use crate::multirate::slow::{Before, Slow};
use crate::multirate::stages::Stage;

/// Conductivities of quick cells.
pub struct Refresh<'all> {
    /// The cells.
    pub quick: &'all mut Quick,
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// Conductivities.
    pub w_mk: &'all mut [f32],
}

impl NullaryFnOnce for Refresh<'_> {
    type Output = ();

    #[inline(always)]
    fn call(self) {
        self.quick.refresh(self.tables, self.w_mk);
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

impl NullaryFnOnce for RefreshSlow<'_> {
    type Output = ();

    #[inline(always)]
    fn call(self) {
        let RefreshSlow {
            slow,
            tables,
            padded,
            awake,
            heat,
            w_mk,
        } = self;
        slow.refresh(tables, padded, awake, heat, w_mk);
    }
}

/// What stands still during a step of quick cells.
pub struct Prepare<'all> {
    /// The cells.
    pub quick: &'all mut Quick,
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// Weights of faces, per axis low and high.
    pub weights: &'all [[Vec<f32>; 2]; 3],
    /// The box with its rim.
    pub padded: &'all Padded,
    /// Temperatures of the box.
    pub celsius: &'all [f32],
    /// Conductivities.
    pub w_mk: &'all [f32],
}

impl NullaryFnOnce for Prepare<'_> {
    type Output = f32;

    #[inline(always)]
    fn call(self) -> f32 {
        let Prepare {
            quick,
            tables,
            weights,
            padded,
            celsius,
            w_mk,
        } = self;
        quick.prepare(tables, weights, padded, celsius, w_mk)
    }
}

/// A step of slow cells.
pub struct StepSlow<'all> {
    /// The cells.
    pub slow: &'all mut Slow,
    /// What stands at the start of the step.
    pub before: &'all Before<'all>,
    /// The box with its rim.
    pub padded: &'all Padded,
    /// Heat contents of the planes.
    pub heat: &'all mut [f32],
    /// Temperatures after it, of the planes.
    pub after: &'all mut [f32],
}

impl NullaryFnOnce for StepSlow<'_> {
    type Output = ();

    #[inline(always)]
    fn call(self) {
        self.slow
            .step(self.before, self.padded, self.heat, self.after);
    }
}

/// A stage of quick cells.
pub struct OneStage<'all> {
    /// The cells.
    pub quick: &'all mut Quick,
    /// Its weights.
    pub stage: Stage,
    /// Tables of the materials.
    pub tables: &'all [Table],
    /// The box with its rim.
    pub padded: &'all Padded,
    /// Temperatures of the box.
    pub celsius: &'all [f32],
    /// Temperatures after it, of the planes.
    pub after: &'all mut [f32],
}

impl NullaryFnOnce for OneStage<'_> {
    type Output = ();

    #[inline(always)]
    fn call(self) {
        let OneStage {
            quick,
            stage,
            tables,
            padded,
            celsius,
            after,
        } = self;
        quick.stage(stage, tables, padded, celsius, after);
    }
}
