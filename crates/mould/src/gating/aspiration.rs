//! Whether the sprue runs full, or draws air through the sand.
//!
//! Falling metal gathers speed and its stream grows thin. A sprue that does not narrow as fast as
//! the stream either runs part full, or sucks: the pressure in it falls below that of the air, and
//! sand lets air through.

use measure::flow::Flow;
use measure::length::{Area, Length};
use measure::matter::{Density, GRAVITY_M_PER_S2, Pressure};
use measure::source::Law;

use crate::gating::sprue::area_of;

/// Area of a stream that falls freely.
pub const FREE_JET: Law = Law {
    name: "mould::gating::aspiration::jet_area",
    formula: "A = A₀ √(h₀ / (h₀ + z))",
    range: "no losses; h₀ the metal above the place where the stream has the area A₀, z below it",
    sources: &["bhel-sprue-2019", "gating-slides"],
};

/// Pressure of the stream in the sprue, over that of the air.
pub const SPRUE_PRESSURE: Law = Law {
    name: "mould::gating::aspiration::sprue_pressure",
    formula: "p = ρ (g h − Q² / (2 A²))",
    range: "sprue full, no losses above the place; below nought it draws air",
    sources: &["gating-slides"],
};

/// A round sprue with straight sides under a basin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StraightSprue {
    /// Diameter at the top.
    pub top: Length,
    /// Diameter at the foot.
    pub foot: Length,
    /// Metal in the basin above its top.
    pub basin: Length,
    /// Its length.
    pub height: Length,
}

/// Places down the sprue at which the pressure is looked at.
const PLACES: u32 = 100;

/// Area of a falling stream. Law: [`FREE_JET`].
pub fn jet_area(above: Area, metal_above: Length, below: Length) -> Area {
    above * (metal_above / (metal_above + below)).sqrt()
}

/// Pressure over that of the air at a place with so much metal above it. Law: [`SPRUE_PRESSURE`].
pub fn sprue_pressure(liquid: Density, metal_above: Length, area: Area, flow: Flow) -> Pressure {
    let speed_m_per_s = (flow / area).as_m_per_s();
    let head_m2_per_s2 = GRAVITY_M_PER_S2 * metal_above.as_m() - 0.5 * speed_m_per_s.powi(2);
    Pressure::from_pa(liquid.as_kg_per_m3() * head_m2_per_s2)
}

/// The lowest pressure anywhere in a sprue that runs full at a flow, over that of the air.
pub fn lowest_pressure(liquid: Density, sprue: &StraightSprue, flow: Flow) -> Pressure {
    let at = |place: u32| {
        let down = f64::from(place) / f64::from(PLACES);
        let diameter = sprue.top + (sprue.foot - sprue.top) * down;
        let above = sprue.basin + sprue.height * down;
        sprue_pressure(liquid, above, area_of(diameter), flow)
    };
    (1..=PLACES).map(at).fold(at(0), Pressure::min)
}
