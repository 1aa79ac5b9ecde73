//! How hard to ram, by the dent of a dropped ball.
//!
//! Sand gives way under a ball until the work of the fall is spent: work over the volume of the
//! dent is a resistance that belongs to the sand, whatever ball was dropped. The founder's own dent
//! of a good day is the measure; another ball or another height gets its own target from it.

use std::sync::LazyLock;

use measure::length::Length;
use measure::matter::{GRAVITY_M_PER_S2, Mass, Pressure};
use measure::source::Law;
use serde::Deserialize;

/// Resistance of rammed sand from the dent of a ball.
pub const DENT_RESISTANCE: Law = Law {
    name: "mould::ramming::dent_resistance",
    formula: "p = m g (h + δ) / (π δ² (3 R − δ) / 3), δ = R − √(R² − w² / 4)",
    range: "ball falls freely and does not bounce; dent no wider than the ball",
    sources: &["tabor-hardness"],
};

/// Width of dent to ram to.
pub const DENT_TARGET: Law = Law {
    name: "mould::ramming::dent_target",
    formula: "w where m g (h + δ) / V_dent is as on the good day",
    range: "same sand, rammed alike; balls of much the same size, for sand heaps up round the dent",
    sources: &["tabor-hardness"],
};

/// How the dent resistance follows the reading of a hardness tester.
pub const DENT_LIMITS: Law = Law {
    name: "mould::ramming::dent_limits",
    formula: "p_limit = p (H_limit / (100 − H_limit)) / (H / (100 − H))",
    range: "tester whose spring grows even with its travel; limits of H by metal: common practice",
    sources: &["tabor-hardness", "mould-hardness-memory"],
};

/// A ball let fall from a height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drop {
    /// Mass of the ball.
    pub mass: Mass,
    /// Its diameter.
    pub ball: Length,
    /// From its lowest point to the sand.
    pub height: Length,
}

/// Readings between which a mould for a metal is rammed.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hardness {
    /// The metal.
    pub metal: String,
    /// Softest.
    pub soft: f64,
    /// Hardest.
    pub hard: f64,
}

/// Resistance of the sand, nothing where the dent is as wide as the ball or wider. Law:
/// [`DENT_RESISTANCE`].
pub fn dent_resistance(drop: &Drop, dent: Length) -> Option<Pressure> {
    let radius_m = drop.ball.as_m() / 2.0;
    let half_m = dent.as_m() / 2.0;
    if half_m >= radius_m {
        return None;
    }
    // The difference of two nearly equal lengths, written so that no figures are lost.
    let depth_m = half_m * half_m / (radius_m + (radius_m * radius_m - half_m * half_m).sqrt());
    let work_j = work_j(drop, depth_m);
    Some(Pressure::from_pa(work_j / dent_m3(radius_m, depth_m)))
}

/// Dent that a drop makes in sand of a resistance; nothing where the ball goes in to its middle.
/// Law: [`DENT_TARGET`].
pub fn dent_target(resistance: Pressure, drop: &Drop) -> Option<Length> {
    let radius_m = drop.ball.as_m() / 2.0;
    let goes_deeper =
        |depth_m: f64| work_j(drop, depth_m) > resistance.as_pa() * dent_m3(radius_m, depth_m);
    if goes_deeper(radius_m) {
        return None;
    }
    let (mut low, mut high) = (0.0, radius_m);
    for _ in 0..HALVINGS {
        let middle = (low + high) / 2.0;
        match goes_deeper(middle) {
            true => low = middle,
            false => high = middle,
        }
    }
    let half_m = (2.0 * radius_m * high - high * high).max(0.0).sqrt();
    Some(Length::from_m(2.0 * half_m))
}

/// Resistance at one reading of a tester from that at another. Law: [`DENT_LIMITS`].
pub fn at_reading(resistance: Pressure, own: f64, wanted: f64) -> Pressure {
    let odds = |reading: f64| reading / (100.0 - reading);
    resistance * (odds(wanted) / odds(own))
}

/// The readings for a metal.
pub fn hardness_for(metal: &str) -> Option<&'static Hardness> {
    HARDNESS.iter().find(|row| row.metal == metal)
}

/// Enough to halve a radius down to the last bit.
const HALVINGS: usize = 60;

fn work_j(drop: &Drop, depth_m: f64) -> f64 {
    drop.mass.as_kg() * GRAVITY_M_PER_S2 * (drop.height.as_m() + depth_m)
}

/// The cap of a ball, this deep.
fn dent_m3(radius_m: f64, depth_m: f64) -> f64 {
    std::f64::consts::PI * depth_m * depth_m * (3.0 * radius_m - depth_m) / 3.0
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    mould: Vec<Hardness>,
}

static HARDNESS: LazyLock<Vec<Hardness>> = LazyLock::new(|| {
    let table: Result<Table, _> = toml::from_str(include_str!("../data/mould_hardness.toml"));
    table.map(|table| table.mould).unwrap_or_default()
});
