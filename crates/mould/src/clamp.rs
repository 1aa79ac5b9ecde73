//! What holds cope and drag together in place of weights: clamps and bolts.
//!
//! A clamp pulls with what it was tightened to, so that its own force has to be known or tried on
//! a scale; a wedge that works loose while the metal rises holds nothing.

use measure::length::Length;
use measure::matter::{Force, Mass, Pressure};
use measure::source::Law;

/// Force that each clamp has to hold.
pub const CLAMP_FORCE: Law = Law {
    name: "mould::clamp::clamp_force",
    formula: "f = (k F − m g) / n, never below nought",
    range: "n clamps even round the joint, tight before the pour; two at least, facing each other",
    sources: &["surge-factor-memory", "common-practice"],
};

/// Force that a bolt may hold.
pub const BOLT_HOLD: Law = Law {
    name: "mould::clamp::bolt_hold",
    formula: "F = 0.7 (π / 4) d² σ",
    range: "plain steel bolts, coarse thread, cold; σ is what may be borne, not what breaks it",
    sources: &["bolt-core-memory"],
};

/// Smallest number of clamps: one alone lets the far side gape.
const LEAST_CLAMPS: f64 = 2.0;

/// Part of a bolt's full section that its thread leaves: 0.71 to 0.75 from M6 to M16, the lower
/// taken (`bolt-core-memory`).
const LEFT_BY_THREAD: f64 = 0.7;

/// All that clamps have to hold together.
pub fn force_to_hold(lift: Force, surge: f64, cope: Mass) -> Force {
    (lift * surge - cope.weight()).max(Force::ZERO)
}

/// Force on each of so many clamps. Law: [`CLAMP_FORCE`].
pub fn clamp_force(lift: Force, surge: f64, cope: Mass, clamps: f64) -> Force {
    force_to_hold(lift, surge, cope) / clamps
}

/// How many clamps of a known hold are wanted: whole ones, two at least; none where nothing lifts.
pub fn clamps_wanted(all: Force, each: Force) -> f64 {
    match all > Force::ZERO {
        true => (all / each).ceil().max(LEAST_CLAMPS),
        false => 0.0,
    }
}

/// What a bolt of this nominal diameter may hold. Law: [`BOLT_HOLD`].
pub fn bolt_hold(diameter: Length, allowed: Pressure) -> Force {
    allowed * (diameter * diameter * (std::f64::consts::FRAC_PI_4 * LEFT_BY_THREAD))
}
