//! What the feeders have to give, and what is left of a casting once it is cold.

use measure::heat::TemperatureDifference;
use measure::length::{Length, Volume};
use measure::source::Law;

/// Share of the casting's volume that feeders have to bring while it cools and freezes.
///
/// Contraction of the solid is no part of it: the pattern carries that.
pub const FEED_DEMAND: Law = Law {
    name: "metal::shrinkage::feed_demand",
    formula: "β = β_freezing + κ (T_pour − T_liquidus)",
    range: "superheat of nought or more; grey iron may come out below nought",
    sources: &["feed-demand-lesson", "campbell-castings"],
};

/// Volume that feeders have to bring: V_feed = β V.
pub const FEED_VOLUME: Law = Law {
    name: "metal::shrinkage::feed_volume",
    formula: "V_feed = β V",
    range: "β between 0 and 0.14",
    sources: &["campbell-castings"],
};

/// Volume of a casting without a feeder once it has frozen and cooled.
pub const SOLID_VOLUME: Law = Law {
    name: "metal::shrinkage::solid_volume",
    formula: "V = V_mould (1 − β_freezing) (1 − β_solid)",
    range: "no feeder, no pipe: the whole loss shows outside",
    sources: &["cube-shrinking-problem"],
};

/// Side of a cube without a feeder once it has frozen and cooled.
pub const SOLID_SIDE: Law = Law {
    name: "metal::shrinkage::solid_side",
    formula: "a = a_mould ((1 − β_freezing) (1 − β_solid))^(1/3)",
    range: "no feeder, no pipe, free to shrink alike in all three directions",
    sources: &["cube-shrinking-problem"],
};

/// Share of the casting's volume that feeders have to bring. Law: [`FEED_DEMAND`].
///
/// `freezing` is the share lost on freezing, `per_kelvin` the share the liquid loses for each
/// kelvin of superheat. Metal poured below its liquidus has no liquid to contract.
pub fn feed_demand(freezing: f64, per_kelvin: f64, superheat: TemperatureDifference) -> f64 {
    freezing + per_kelvin * superheat.max(TemperatureDifference::ZERO).as_kelvin()
}

/// Volume that feeders have to bring; nought where the metal feeds itself. Law: [`FEED_VOLUME`].
pub fn feed_volume(casting: Volume, demand: f64) -> Volume {
    casting * demand.max(0.0)
}

/// Volume left of an unfed casting, frozen and cold. Law: [`SOLID_VOLUME`].
///
/// Both shares are of volume: `freezing` of the liquid, `cooling` of the solid at the solidus.
pub fn solid_volume(mould: Volume, freezing: f64, cooling: f64) -> Volume {
    mould * ((1.0 - freezing) * (1.0 - cooling))
}

/// Side left of an unfed cube, frozen and cold. Law: [`SOLID_SIDE`].
pub fn solid_side(mould: Length, freezing: f64, cooling: f64) -> Length {
    mould * ((1.0 - freezing) * (1.0 - cooling)).cbrt()
}
