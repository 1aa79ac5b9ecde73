//! How thick the skin has grown: on sand, and on a face kept cold by a chill or an iron mould.

use measure::flow::Duration;
use measure::heat::{Conductivity, HeatDrawing, HeatPerMass, Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::Density;
use measure::source::Law;

use crate::freezing::{INTO_HALF_SPACE, SAND_AT_REST};

/// Thickness frozen on a flat face of sand.
pub const SKIN_ON_SAND: Law = Law {
    name: "mould::skin::skin_on_sand",
    formula: "s = 1.128 b (T_s − 20 °C) √t / (ρ L)",
    range: "metal at its freezing point, no superheat, flat face, thick sand",
    sources: &["flemings-1974"],
};

/// Time in which a thickness freezes on a face that stays cold.
pub const TIME_ON_COLD_FACE: Law = Law {
    name: "mould::skin::time_on_cold_face",
    formula: "t = s² ρ L / (2 k ΔT)",
    range: "the skin itself is what holds the heat back: perfect contact, heat of the skin small; \
            the soonest that any chill can do it",
    sources: &["stefan-ice-problem"],
};

/// Thickness frozen on sand after a time. Law: [`SKIN_ON_SAND`].
pub fn skin_on_sand(
    sand: HeatDrawing,
    freezing: Temperature,
    density: Density,
    latent: HeatPerMass,
    time: Duration,
) -> Length {
    let rise = (freezing - SAND_AT_REST).as_kelvin();
    let drawn = INTO_HALF_SPACE * sand.as_w_rts_per_m2_k() * rise * time.as_s().sqrt();
    Length::from_m(drawn / (density.as_kg_per_m3() * latent.as_j_per_kg()))
}

/// Time to freeze a thickness on a cold face; `below` is how far the face stays below the
/// freezing point. Law: [`TIME_ON_COLD_FACE`].
pub fn time_on_cold_face(
    thickness: Length,
    density: Density,
    latent: HeatPerMass,
    solid: Conductivity,
    below: TemperatureDifference,
) -> Duration {
    let heat = density.as_kg_per_m3() * latent.as_j_per_kg();
    let flow = solid.as_w_per_m_k() * below.as_kelvin();
    Duration::from_s(thickness.as_m().powi(2) * heat / (2.0 * flow))
}
