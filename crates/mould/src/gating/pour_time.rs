//! How long the mould may take to fill.
//!
//! Too slow, and a thin wall freezes before it is full; too fast, and the gates wash sand and fold
//! skin into the metal. The old rule of the root of the mass stands between; the freezing of the
//! thinnest wall is the limit that may not be passed.

use measure::band::Band;
use measure::flow::Duration;
use measure::length::Length;
use measure::matter::{Density, Mass};
use measure::source::Law;

/// Time to fill from the mass poured.
pub const POUR_TIME: Law = Law {
    name: "mould::gating::pour_time::pour_time",
    formula: "t = S √(m ρ_0 / ρ), at most ½ t_freeze m / m_filled; ρ_0 = 6.9 g/cm³; S = 1.63, 1.85, \
              2.2 s/√kg for walls to 3.5, 8, 15 mm",
    range: "walls of 2.5 to 15 mm, up to some 450 kg; t_freeze that of the thinnest wall; found on \
            iron, and carried over to other metals by the iron that would fill the same mould (a \
            judgement)",
    sources: &["pour-time-root-memory", "common-practice"],
};

/// Latest time at which the thinnest wall has to be full.
pub const THIN_WALL_LIMIT: Law = Law {
    name: "mould::gating::pour_time::thin_wall_limit",
    formula: "t ≤ ½ t_freeze m / m_filled, t_freeze of the thinnest wall",
    range: "all metals; a judgement: metal that is half frozen no longer runs into a corner; m all \
            that is poured at one pace, m_filled what of it goes into castings and feeders",
    sources: &["common-practice"],
};

/// Time to fill grey iron from mass and wall, a second opinion.
pub const IRON_POUR_TIME: Law = Law {
    name: "mould::gating::pour_time::iron_pour_time",
    formula: "t = K (1.41 + T/14.59) √m, K = fluidity in inches / 40",
    range: "grey iron to 450 kg, T in mm",
    sources: &["rao-manufacturing-technology"],
};

/// What the metal runs into.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToRun {
    /// Density of the liquid metal.
    pub liquid: Density,
    /// Castings and feeders together.
    pub filled: Mass,
    /// Time in which the thinnest wall freezes, where it is known.
    pub freezing: Option<Duration>,
}

/// What sets an end of the band of filling times.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limit {
    /// The root rule with the constant of the thinnest walls.
    QuickRule,
    /// The root rule with the constant of the heaviest walls.
    SlowRule,
    /// The thinnest wall would freeze first.
    ThinWall,
}

/// The filling time with the reason of each end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FillTime {
    /// The band.
    pub band: Band<Duration>,
    /// What sets the low end.
    pub low_because: Limit,
    /// What sets the high end.
    pub high_because: Limit,
}

/// Constants of the root rule by wall, s/√kg, and the walls in mm up to which they hold.
const QUICK: f64 = 1.63;
const MIDDLE: f64 = 1.85;
const SLOW: f64 = 2.2;
const THIN_TO_MM: f64 = 3.5;
const MIDDLE_TO_MM: f64 = 8.0;

/// Density of liquid iron, on which the rule was found (`foundry-handbooks-iron`).
pub const OF_IRON: Density = Density::from_g_per_cm3(6.9);

/// Time to fill with iron, or with a metal as heavy. Law: [`POUR_TIME`].
pub fn pour_time(poured: Mass, constant: f64) -> Duration {
    let poured_kg = poured.as_kg();
    Duration::from_s(constant * poured_kg.sqrt())
}

/// The iron that would fill the same mould: a mould asks for metal by its room, and a kilogram of
/// aluminium fills three times the room of one of iron. Part of the law [`POUR_TIME`].
pub fn as_iron(poured: Mass, liquid: Density) -> Mass {
    poured * (OF_IRON / liquid)
}

/// Time to fill, no later than the thinnest wall allows, where it is known how fast that wall
/// freezes. Law: [`POUR_TIME`].
pub fn time_to_fill(poured: Mass, constant: f64, to_run: &ToRun) -> Duration {
    let by_rule = pour_time(as_iron(poured, to_run.liquid), constant);
    let limit = latest(poured, to_run);
    limit.map_or(by_rule, |limit| by_rule.min(limit))
}

/// From the constant of the quickest walls to that of the slowest, likely that of this wall.
pub fn constants_for(wall: Length) -> Band<f64> {
    Band::new(QUICK, constant_for(wall), SLOW)
}

/// The constant of the root rule for a wall.
pub fn constant_for(wall: Length) -> f64 {
    match wall.as_mm() {
        mm if mm <= THIN_TO_MM => QUICK,
        mm if mm <= MIDDLE_TO_MM => MIDDLE,
        _ => SLOW,
    }
}

/// Latest end of the pour, where so much of what is poured goes into castings and feeders: the
/// clock of the wall stands still while sprue and runner fill. Law: [`THIN_WALL_LIMIT`].
pub fn thin_wall_limit(freezing: Duration, poured: Mass, filled: Mass) -> Duration {
    freezing * (0.5 * (poured / filled))
}

/// Time to fill grey iron. Law: [`IRON_POUR_TIME`].
pub fn iron_pour_time(poured: Mass, wall: Length, fluidity: Length) -> Duration {
    let (poured_kg, wall_mm) = (poured.as_kg(), wall.as_mm());
    Duration::from_s(fluidity.as_inch() / 40.0 * (1.41 + wall_mm / 14.59) * poured_kg.sqrt())
}

/// The band of filling times: the root rule, cut short where the thinnest wall would freeze first.
pub fn fill_time(poured: &Band<Mass>, wall: Length, to_run: &ToRun) -> FillTime {
    let constants = constants_for(wall);
    let rule = poured.with(&constants, |poured, constant| {
        pour_time(as_iron(poured, to_run.liquid), constant)
    });
    let because = |poured: Mass, rule_says: Duration, reason: Limit| {
        let cut_short = latest(poured, to_run).is_some_and(|limit| limit < rule_says);
        if cut_short { Limit::ThinWall } else { reason }
    };
    FillTime {
        band: poured.with(&constants, |poured, constant| {
            time_to_fill(poured, constant, to_run)
        }),
        low_because: because(poured.low(), rule.low(), Limit::QuickRule),
        high_because: because(poured.high(), rule.high(), Limit::SlowRule),
    }
}

fn latest(poured: Mass, to_run: &ToRun) -> Option<Duration> {
    let freezing = to_run.freezing?;
    Some(thin_wall_limit(freezing, poured, to_run.filled))
}
