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
    formula: "C = (ρ (L + c ΔT) / (1.128 b (T_s − 20 °C)))²",
    range: "thick sand, metal nearly even in temperature, b = √(k ρ c) of the sand; one timed \
            slab fixes C for a heap",
    sources: &["chvorinov-1940", "feeder-lecture", "flemings-1974"],
};

/// The constant of a mould in which a section of known modulus froze in a known time.
pub const TRIAL_CONSTANT: Law = Law {
    name: "mould::freezing::constant_from_trial",
    formula: "C = t / M²",
    range: "the same sand, rammed and damp as usual, and the same metal at the same heat",
    sources: &["chvorinov-1940"],
};

/// How hard the sand drank in a timed trial: what carries over to another metal.
pub const TRIAL_THIRST: Law = Law {
    name: "mould::freezing::thirst_from_trial",
    formula: "b = ρ (L + c ΔT) / (1.128 (T_s − T_0) √C)",
    range: "sand at T_0 = 20 °C before the pour; a section that froze under sand on all the faces counted in its modulus",
    sources: &["chvorinov-1940", "flemings-1974"],
};

/// What superheat does to the freezing time.
pub const SUPERHEAT_FACTOR: Law = Law {
    name: "mould::freezing::superheat_factor",
    formula: "f = (1 + c ΔT / L)²",
    range: "the balance of heat; 1 + (c ΔT / L)² is in print as well and is a slip of a bracket",
    sources: &["feeder-lecture", "chvorinov-encyclopaedia"],
};

/// Time to freeze of a ball or a long round bar, round which the sand opens outwards.
pub const ROUND_FREEZING_TIME: Law = Law {
    name: "mould::freezing::round_freezing_time",
    formula: "t = C M² / (1 + γ √C)²",
    range: "γ 0.016 cm/√s for a ball, 0.012 for a long round bar; sand on all sides",
    sources: &["round-shapes-abstract"],
};

/// 2/√π, the factor of heat flowing into a half-space (`carslaw-jaeger-1959`).
pub(crate) const INTO_HALF_SPACE: f64 = std::f64::consts::FRAC_2_SQRT_PI;

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

/// A round body, round which the sand opens outwards and drinks more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Round {
    /// A ball.
    Ball,
    /// A round bar, long beside its diameter.
    Bar,
}

/// The two forms in print of what superheat does to the freezing time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SuperheatFactor {
    /// By the balance of heat: (1 + c ΔT/L)².
    pub balance: f64,
    /// With the bracket misplaced: 1 + (c ΔT/L)².
    pub misplaced: f64,
}

/// Temperature of the sand before the pour: a mild day.
pub const SAND_AT_REST: Temperature = Temperature::from_celsius(20.0);

/// How hard moulding sand drinks heat: loose dry sand 900, damp well-rammed sand 1300; green sand
/// with steam moving in it is found higher still (`feeder-lecture`, the upper values from memory).
pub fn thirst_of_sand() -> Band<HeatDrawing> {
    Band::new(900.0, 1080.0, 1300.0).map(HeatDrawing::from_w_rts_per_m2_k)
}

/// The constant C. Law: [`MOULD_CONSTANT`].
pub fn mould_constant(heat: &FreezingHeat) -> FreezingConstant {
    let root = heat_to_lose(heat) / (drawn_at_first(heat) * heat.sand.as_w_rts_per_m2_k());
    FreezingConstant::from_s_per_m2(root * root)
}

/// The constant of a mould in which a section of known modulus froze in a known time. Law:
/// [`TRIAL_CONSTANT`].
pub fn constant_from_trial(modulus: Length, time: Duration) -> FreezingConstant {
    time / (modulus * modulus)
}

/// How hard the sand drank that gave this constant with this metal; the metal's own entry for the
/// sand does not count. Law: [`TRIAL_THIRST`].
pub fn thirst_from_trial(metal: &FreezingHeat, constant: FreezingConstant) -> HeatDrawing {
    let root = constant.as_s_per_m2().sqrt();
    HeatDrawing::from_w_rts_per_m2_k(heat_to_lose(metal) / (drawn_at_first(metal) * root))
}

/// Time in which a section of this modulus freezes. Law: [`FREEZING_TIME`].
pub fn freezing_time(constant: FreezingConstant, modulus: Length) -> Duration {
    constant * (modulus * modulus)
}

/// How many times longer the freezing takes for the superheat. Law: [`SUPERHEAT_FACTOR`].
pub fn superheat_factor(
    latent: HeatPerMass,
    liquid_heat: SpecificHeat,
    superheat: TemperatureDifference,
) -> SuperheatFactor {
    let share = liquid_heat.as_j_per_kg_k() * superheat.as_kelvin() / latent.as_j_per_kg();
    SuperheatFactor {
        balance: (1.0 + share).powi(2),
        misplaced: 1.0 + share * share,
    }
}

/// Time in which a round body of this modulus freezes. Law: [`ROUND_FREEZING_TIME`].
pub fn round_freezing_time(constant: FreezingConstant, modulus: Length, round: Round) -> Duration {
    let root_s_per_cm = (constant.as_s_per_m2() * 1e-4).sqrt();
    let faster = 1.0 + round.opening_cm_per_root_s() * root_s_per_cm;
    freezing_time(constant, modulus) / (faster * faster)
}

impl Round {
    /// How much the opening sand helps, cm/√s (`round-shapes-abstract`).
    pub fn opening_cm_per_root_s(self) -> f64 {
        match self {
            Round::Ball => 0.016,
            Round::Bar => 0.012,
        }
    }
}

/// Heat a cubic metre has to lose until it is solid, J/m³.
fn heat_to_lose(metal: &FreezingHeat) -> f64 {
    let superheat = metal.liquid_heat.as_j_per_kg_k() * metal.superheat.as_kelvin();
    metal.density.as_kg_per_m3() * (metal.latent.as_j_per_kg() + superheat)
}

/// Heat a square metre of sand with b = 1 draws in the first second, J/m².
fn drawn_at_first(metal: &FreezingHeat) -> f64 {
    INTO_HALF_SPACE * (metal.solidus - SAND_AT_REST).as_kelvin()
}
