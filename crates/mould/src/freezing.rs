//! How long a section takes to freeze in sand.
//!
//! Sand drinks heat as the square root of time, so the time grows with the square of the modulus.
//! The constant follows from the heat the metal has to lose and from how hard the sand drinks; the
//! second differs more from heap to heap than the first from alloy to alloy, which is why the band
//! is wide until one slab has been timed in one's own sand.

use measure::band::Band;
use measure::flow::{Duration, FreezingConstant};
use measure::heat::{HeatDrawing, HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::Density;
use measure::source::Law;

/// Time to freeze from the modulus.
pub const FREEZING_TIME: Law = Law {
    name: "mould::freezing::freezing_time",
    formula: "t = C M²",
    range: "sand moulds; round shapes freeze somewhat sooner than plates of equal modulus",
    sources: &["chvorinov-1940"],
};

/// The constant of the freezing time from the heat of the metal and the thirst of the sand.
pub const MOULD_CONSTANT: Law = Law {
    name: "mould::freezing::mould_constant",
    formula: "C = (ρ H / (1.128 b (T_s − T_0)))², with H = L + c ΔT and b = √(k ρ c) of the sand",
    range: "thick sand, metal nearly even in temperature; one timed slab fixes C for a heap",
    sources: &["chvorinov-1940", "feeder-lecture", "flemings-1974"],
};

/// 2/√π, the factor of heat flowing into a half-space (`carslaw-jaeger-1959`).
const INTO_HALF_SPACE: f64 = std::f64::consts::FRAC_2_SQRT_PI;

/// Metal and sand as far as freezing is concerned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreezingHeat {
    /// Density of the metal at its freezing.
    pub density: Density,
    /// Heat of freezing.
    pub latent: HeatPerMass,
    /// Specific heat of the liquid.
    pub liquid_heat: SpecificHeat,
    /// How far above its liquidus the metal enters.
    pub superheat: TemperatureDifference,
    /// Temperature at which the last of it freezes.
    pub solidus: Temperature,
    /// Heat diffusivity of the sand.
    pub sand: HeatDrawing,
}

/// Temperature of the sand before the pour: a mild day.
const SAND_AT_REST: Temperature = Temperature::from_celsius(20.0);

/// How hard moulding sand drinks heat: loose dry sand 900, damp well-rammed sand 1300; green sand
/// with steam moving in it is found higher still (`feeder-lecture`, the upper values from memory).
pub fn thirst_of_sand() -> Band<HeatDrawing> {
    Band::new(900.0, 1080.0, 1300.0).map(HeatDrawing::from_w_rts_per_m2_k)
}

/// The constant C. Law: [`MOULD_CONSTANT`].
pub fn mould_constant(heat: &FreezingHeat) -> FreezingConstant {
    let superheat = heat.liquid_heat.as_j_per_kg_k() * heat.superheat.as_kelvin();
    let to_lose = heat.density.as_kg_per_m3() * (heat.latent.as_j_per_kg() + superheat);
    let rise = (heat.solidus - SAND_AT_REST).as_kelvin();
    let root = to_lose / (INTO_HALF_SPACE * heat.sand.as_w_rts_per_m2_k() * rise);
    FreezingConstant::from_s_per_m2(root * root)
}

/// The constant of a mould in which a section of known modulus froze in a known time.
pub fn constant_from_trial(modulus: Length, time: Duration) -> FreezingConstant {
    time / (modulus * modulus)
}

/// Time in which a section of this modulus freezes. Law: [`FREEZING_TIME`].
pub fn freezing_time(constant: FreezingConstant, modulus: Length) -> Duration {
    constant * (modulus * modulus)
}
