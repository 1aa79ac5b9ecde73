//! How long the mould may take to fill.
//!
//! Too slow, and a thin wall freezes before it is full; too fast, and the gates wash sand and fold
//! skin into the metal. The old rule of the root of the mass stands between; the freezing of the
//! thinnest wall is the limit that may not be passed.

use measure::band::Band;
use measure::flow::Duration;
use measure::length::Length;
use measure::matter::Mass;
use measure::source::Law;

/// Time to fill from the mass poured.
pub const POUR_TIME: Law = Law {
    name: "mould::gating::pour_time::pour_time",
    formula: "t = S √m, at most ½ t_freeze; S = 1.63, 1.85, 2.2 s/√kg for walls to 3.5, 8, 15 mm",
    range: "walls of 2.5 to 15 mm, up to some 450 kg; t_freeze that of the thinnest wall",
    sources: &["pour-time-root-memory", "common-practice"],
};

/// Latest time at which the thinnest wall has to be full.
pub const THIN_WALL_LIMIT: Law = Law {
    name: "mould::gating::pour_time::thin_wall_limit",
    formula: "t ≤ ½ t_freeze of the thinnest wall",
    range: "all metals; a judgement: metal that is half frozen no longer runs into a corner",
    sources: &["common-practice"],
};

/// Time to fill grey iron from mass and wall, a second opinion.
pub const IRON_POUR_TIME: Law = Law {
    name: "mould::gating::pour_time::iron_pour_time",
    formula: "t = K (1.41 + T/14.59) √m, K = fluidity in inches / 40",
    range: "grey iron to 450 kg, T in mm",
    sources: &["rao-manufacturing-technology"],
};

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

/// Time to fill. Law: [`POUR_TIME`].
pub fn pour_time(poured: Mass, constant: f64) -> Duration {
    let poured_kg = poured.as_kg();
    Duration::from_s(constant * poured_kg.sqrt())
}

/// Time to fill, no later than the thinnest wall allows, where it is known how fast that wall
/// freezes. Law: [`POUR_TIME`].
pub fn time_to_fill(poured: Mass, constant: f64, freezing: Option<Duration>) -> Duration {
    let by_rule = pour_time(poured, constant);
    freezing.map_or(by_rule, |freezing| by_rule.min(thin_wall_limit(freezing)))
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

/// Latest time to be full. Law: [`THIN_WALL_LIMIT`].
pub fn thin_wall_limit(freezing: Duration) -> Duration {
    freezing * 0.5
}

/// Time to fill grey iron. Law: [`IRON_POUR_TIME`].
pub fn iron_pour_time(poured: Mass, wall: Length, fluidity: Length) -> Duration {
    let (poured_kg, wall_mm) = (poured.as_kg(), wall.as_mm());
    Duration::from_s(fluidity.as_inch() / 40.0 * (1.41 + wall_mm / 14.59) * poured_kg.sqrt())
}

/// The band of filling times: the root rule, cut short where the thinnest wall would freeze first.
pub fn fill_time(poured: &Band<Mass>, wall: Length, wall_freezes: Duration) -> FillTime {
    let constants = constants_for(wall);
    let rule = poured.with(&constants, pour_time);
    let limit = thin_wall_limit(wall_freezes);
    let because = |rule_says: Duration, reason: Limit| match limit < rule_says {
        true => Limit::ThinWall,
        false => reason,
    };
    FillTime {
        band: poured.with(&constants, |poured, constant| {
            time_to_fill(poured, constant, Some(wall_freezes))
        }),
        low_because: because(rule.low(), Limit::QuickRule),
        high_because: because(rule.high(), Limit::SlowRule),
    }
}
