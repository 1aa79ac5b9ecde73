//! How long a rammed mould may stand before its skin is dry, or damp.

use measure::flow::Duration;
use measure::length::Length;
use measure::matter::Density;
use measure::source::Law;

/// Time until the skin of an open mould has lost its water.
///
/// Water that comes up from behind is left out: the mould stands at least so long.
pub const STANDING_TIME: Law = Law {
    name: "sand::standing::standing_time",
    formula: "t = ρ_dry δ (X_now − X_least) / R",
    range: "an open mould; covered, or closed, it stands longer. R by the air over it",
    sources: &["common-practice"],
};

/// Depth of the skin that has to hold the metal, mm: two to four grains' rows that a finger rubs
/// off, our own choice. Thinner, every mould is dry in minutes; thicker, the warning comes after
/// the edges have begun to crumble.
pub const SKIN_MM: f64 = 3.0;

/// Time until a skin has come down to the least moisture it holds at, both of the dry mass, at a
/// rate in kg/h m². Law: [`STANDING_TIME`].
pub fn standing_time(dry: Density, skin: Length, now: f64, least: f64, rate: f64) -> Duration {
    let water = dry.as_kg_per_m3() * skin.as_m() * (now - least);
    Duration::from_s(water / rate * 3600.0)
}
