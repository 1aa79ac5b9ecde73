//! How far metal runs in a thin wall before it stops.
//!
//! A pencil law, and an honest one is wide: the heat that passes from metal to sand is known to a
//! factor of several. It ranks walls and cures rightly, which is what it is for.

use measure::flow::Speed;
use measure::heat::{HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::Density;
use measure::source::Law;

/// How far metal runs in a wall.
pub const WALL_REACH: Law = Law {
    name: "mould::gating::reach::wall_reach",
    formula: "L_f = ρ v T (f L + c ΔT) / (2 h (T_m − T_0))",
    range: "wide wall that cools from both sides; f 0.5 to 1 where the metal freezes as a skin, \
            0.2 to 0.5 where it goes to mush; h 700 to 2200 W/m²K in sand over the first seconds, \
            2 b / √(π t); surface tension, which holds back walls under a mm or two, is left out",
    sources: &["flemings-1974", "carslaw-jaeger-1959"],
};

/// Thinnest wall that runs a path.
pub const LEAST_REACHING_WALL: Law = Law {
    name: "mould::gating::reach::least_wall",
    formula: "T = 2 h (T_m − T_0) x / (ρ v (f L + c ΔT))",
    range: "as the reach of a wall, turned round",
    sources: &["flemings-1974"],
};

/// Chance that a wall does not run full.
pub const MISRUN_CHANCE: Law = Law {
    name: "mould::gating::reach::misrun_chance",
    formula: "P = 1 / (1 + (L_f / x)^n), n = ln 9 / ln k",
    range: "a judgement: nine in ten run where the reach is k times the path, one in ten where it \
            is a k-th of it; k says how far the reach may be off",
    sources: &["common-practice"],
};

/// Length that grey iron runs in the spiral of the testing room.
pub const IRON_FLUIDITY: Law = Law {
    name: "mould::gating::reach::iron_fluidity",
    formula: "F = 14.9 CF + 0.05 t − 155, CF = C + Si/4 + P/2, F in inches, t in °F",
    range: "grey iron in the sand spiral; composition factor, not carbon equivalent",
    sources: &["porter-rosenthal"],
};

/// Metal that runs into a wall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunningMetal {
    /// Density of the liquid.
    pub liquid: Density,
    /// Heat of freezing.
    pub latent: HeatPerMass,
    /// Specific heat of the liquid.
    pub liquid_heat: SpecificHeat,
    /// Above the liquidus when it enters the wall.
    pub superheat: TemperatureDifference,
    /// From the sand to the liquidus.
    pub above_sand: TemperatureDifference,
    /// Speed of the front.
    pub speed: Speed,
    /// Part of it that may be frozen before it stops.
    pub frozen_at_stop: f64,
    /// Heat passing from metal to sand, W/m²K.
    pub film_w_per_m2_k: f64,
}

impl RunningMetal {
    /// Distance run for each length of wall thickness.
    fn thicknesses(&self) -> f64 {
        let latent = self.frozen_at_stop * self.latent.as_j_per_kg();
        let superheat = self.liquid_heat.as_j_per_kg_k() * self.superheat.as_kelvin();
        let carried = self.liquid.as_kg_per_m3() * self.speed.as_m_per_s() * (latent + superheat);
        carried / (2.0 * self.film_w_per_m2_k * self.above_sand.as_kelvin())
    }
}

/// How far the metal runs in a wall. Law: [`WALL_REACH`].
pub fn wall_reach(wall: Length, metal: &RunningMetal) -> Length {
    wall * metal.thicknesses()
}

/// The thinnest wall in which it runs a path. Law: [`LEAST_REACHING_WALL`].
pub fn least_wall(path: Length, metal: &RunningMetal) -> Length {
    path / metal.thicknesses()
}

/// Chance that a path does not run full, 0 to 1; `off` is how many times larger or smaller the
/// reach may be in one of ten cases either way, above 1. Law: [`MISRUN_CHANCE`].
pub fn misrun_chance(path: Length, reach: Length, off: f64) -> f64 {
    let steepness = 9f64.ln() / off.ln();
    1.0 / (1.0 + (reach / path).powf(steepness))
}

/// Fluidity of grey iron in the spiral from shares of carbon, silicon and phosphorus (0.034 for
/// 3.4 %) and the pouring temperature; nought where the rule says it does not run. Law:
/// [`IRON_FLUIDITY`].
pub fn iron_fluidity(carbon: f64, silicon: f64, phosphorus: f64, pouring: Temperature) -> Length {
    let factor = (carbon + silicon / 4.0 + phosphorus / 2.0) * 100.0;
    let inches = 14.9 * factor + 0.05 * pouring.as_fahrenheit() - 155.0;
    Length::from_inch(inches.max(0.0))
}
