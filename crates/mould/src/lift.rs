//! What lifts the cope, and what has to lie on it.
//!
//! Liquid metal presses upward on every face it stands under. The cope must be heavy enough, with
//! irons on it, before the first drop is poured. Everything here is rounded to the heavy side.

use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Force, Mass, Pressure};
use measure::source::Law;

use crate::core_seat::{Drowned, float};

/// Lift of the metal on the cope.
pub const COPE_LIFT: Law = Law {
    name: "mould::lift::cope_lift",
    formula: "F = ρ g (A H − V_above)",
    range: "metal at rest; A the shadow of the cavity on the joint, V_above the cavity over it, \
            its cores with it",
    sources: &["lifting-force-lexicon"],
};

/// Lift of a core drowned in metal.
pub const CORE_LIFT: Law = Law {
    name: "mould::lift::core_lift",
    formula: "F = V_core (ρ_metal − ρ_core) g",
    range: "core wholly surrounded; with ρ_core = 0 the conservative form",
    sources: &["core-pipe-problem", "lifting-force-lexicon"],
};

/// Mass to be laid on the cope.
pub const HOLD_DOWN: Law = Law {
    name: "mould::lift::hold_down",
    formula: "m = 1.5 (F_static + F_runners + F_cores) / g − m_cope, never below nought",
    range: "1.3 to 1.7 is used for the surge when the mould is full at once; clamps the same",
    sources: &["surge-factor-memory", "cope-lift-exam"],
};

/// Share of the lift by which the surge at the end of the fill exceeds the metal at rest.
pub const SURGE: f64 = 1.5;

/// Density of rammed core sand (needs no more than one figure: it enters as a small difference).
pub const CORE_SAND: Density = Density::from_kg_per_m3(1600.0);

/// Lift on the cope. Law: [`COPE_LIFT`].
pub fn cope_lift(liquid: Density, shadow: Area, head: Length, above_joint: Volume) -> Force {
    let over_all = Pressure::under(liquid, head) * shadow;
    let metal_above = (liquid * above_joint).weight();
    (over_all - metal_above).max(Force::ZERO)
}

/// Lift of a core. Law: [`CORE_LIFT`].
pub fn core_lift(core: Volume, liquid: Density, core_sand: Density) -> Force {
    float(&Drowned {
        volume: core,
        mass: core_sand * core,
        liquid,
    })
}

/// Mass to lay on the cope. Law: [`HOLD_DOWN`].
pub fn hold_down(lift: Force, surge: f64, cope: Mass) -> Mass {
    ((lift * surge).held_by() - cope).max(Mass::ZERO)
}

/// What is laid on: up to the next half kilogram, since nobody lays grams on a cope, and never less
/// than is wanted.
pub fn laid_on(wanted: Mass) -> Mass {
    Mass::from_kg((wanted.as_kg() * 2.0).ceil() / 2.0)
}
