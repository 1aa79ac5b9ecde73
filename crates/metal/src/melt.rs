//! Heat to melt a charge and the fuel it takes.

use measure::band::Band;
use measure::heat::{Heat, HeatPerMass, SpecificHeat, Temperature};
use measure::matter::Mass;
use measure::source::Law;

use crate::alloy::Alloy;

/// Heat from cold metal to the pouring temperature.
pub const HEAT_TO_MELT: Law = Law {
    name: "metal::melt::heat_to_melt",
    formula: "H = m (c_s (T_m − T_0) + L + c_l (T_p − T_m))",
    range: "metal only: crucible, furnace and flue are in the efficiency",
    sources: &["pouring-lecture"],
};

/// Heat in the fuel for a heat in the metal.
pub const FUEL_HEAT: Law = Law {
    name: "metal::melt::fuel_heat",
    formula: "H_fuel = H / η",
    range: "η from a warm furnace; the first heat of the day takes more",
    sources: &["doe-melting-2005"],
};

/// What a metal takes up on its way to liquid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Melting {
    /// Mean specific heat of the solid.
    pub solid: SpecificHeat,
    /// Where it melts: the liquidus of an alloy.
    pub melts_at: Temperature,
    /// Latent heat.
    pub latent: HeatPerMass,
    /// Specific heat of the liquid.
    pub liquid: SpecificHeat,
}

/// Heat that a charge takes up from its first to its pouring temperature. Law: [`HEAT_TO_MELT`].
///
/// The same heat is given up again in the mould on the way back.
pub fn heat_to_melt(mass: Mass, from: Temperature, to: Temperature, metal: &Melting) -> Heat {
    let warming = metal.solid.as_j_per_kg_k() * (metal.melts_at - from).as_kelvin();
    let melting = metal.latent.as_j_per_kg();
    let superheating = metal.liquid.as_j_per_kg_k() * (to - metal.melts_at).as_kelvin();
    Heat::from_kj(mass.as_kg() * (warming + melting + superheating) / 1e3)
}

/// The band of the heat that a charge of an alloy takes up: all its figures low together, all
/// high together, since each of them adds heat. The melting point is the likely liquidus.
pub fn heat_band(
    alloy: &Alloy,
    charge: &Band<Mass>,
    from: Temperature,
    pouring: &Band<Temperature>,
) -> Band<Heat> {
    let melts_at = alloy.liquidus.band.likely();
    let solid = &alloy.specific_heat_solid.band;
    let latent = &alloy.latent_heat.band;
    let liquid = &alloy.specific_heat_liquid.band;
    let of = |solid, latent, liquid| Melting {
        solid,
        melts_at,
        latent,
        liquid,
    };
    let low = of(solid.low(), latent.low(), liquid.low());
    let likely = of(solid.likely(), latent.likely(), liquid.likely());
    let high = of(solid.high(), latent.high(), liquid.high());
    Band::new(
        heat_to_melt(charge.low(), from, pouring.low(), &low),
        heat_to_melt(charge.likely(), from, pouring.likely(), &likely),
        heat_to_melt(charge.high(), from, pouring.high(), &high),
    )
}

/// Heat in the fuel for a heat in the metal; `efficiency` above nought, 0.12 for 12 %.
/// Law: [`FUEL_HEAT`].
pub fn fuel_heat(metal: Heat, efficiency: f64) -> Heat {
    metal / efficiency
}
