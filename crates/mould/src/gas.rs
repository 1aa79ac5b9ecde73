//! Gas that hot sand gives off: steam from its water, smoke from its binder.

use measure::flow::{Duration, Flow};
use measure::heat::Temperature;
use measure::length::Area;
use measure::matter::Density;
use measure::source::Law;

/// Gas from each kilogram of sand that is heated through.
pub const SAND_GAS: Law = Law {
    name: "mould::gas::sand_gas",
    formula: "v = (1335 w + v_b b) T / 293 K  in litres a kg",
    range: "all its water and binder gone to gas at T, at the pressure of the air",
    sources: &["ideal-gas-memory", "binder-gas-memory"],
};

/// Rate at which a heated face gives off gas.
pub const GAS_RATE: Law = Law {
    name: "mould::gas::gas_rate",
    formula: "Q = A ρ v κ / √t",
    range: "mean over the time t; the hot front is κ √t deep in the sand, flat face",
    sources: &["carslaw-jaeger-1959"],
};

/// Steam from a kilogram of water at 20 °C and the pressure of the air if it did not condense:
/// R T / (M p) = 8.314 · 293.15 / (0.018015 · 101325) m³ (`ideal-gas-memory`).
const STEAM_L_PER_KG: f64 = 1335.0;

/// The temperature to which the litres are counted.
const COUNTED_AT: Temperature = Temperature::from_celsius(20.0);

/// Litres of gas from each kilogram of sand at a temperature. Law: [`SAND_GAS`].
///
/// `water` and `binder` are shares of the sand's mass; `binder_litres` is what a kilogram of
/// binder gives, counted at 20 °C.
pub fn sand_gas(water: f64, binder: f64, binder_litres: f64, gas: Temperature) -> f64 {
    let cold = STEAM_L_PER_KG * water + binder_litres * binder;
    cold * gas.as_kelvin() / COUNTED_AT.as_kelvin()
}

/// Gas given off by a face of sand, mean over a time. Law: [`GAS_RATE`].
///
/// `litres_per_kg` from [`sand_gas`]; `front_mm` the depth of the hot front after one second,
/// which grows as the root of time.
pub fn gas_rate(
    face: Area,
    sand: Density,
    litres_per_kg: f64,
    front_mm: f64,
    time: Duration,
) -> Flow {
    let depth_m = front_mm * 1e-3 * time.as_s().sqrt();
    let heated_kg = sand.as_kg_per_m3() * face.as_m2() * depth_m;
    Flow::from_litre_per_s(heated_kg * litres_per_kg / time.as_s())
}
