//! Heat lost between the furnace and the mould: how hot to lift out, and when to turn back.
//!
//! A crucible out of the furnace shines from its mouth and, much more, from its glowing wall. Small
//! ones have more wall for each kilogram and cool faster. The wall lets the heat through only so
//! fast, so its skin is cooler than the metal. What the metal then wets for the first time, a ladle
//! or the running system, drinks heat like sand does.

use measure::flow::Duration;
use measure::heat::{Conductivity, HeatDrawing, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::{Area, Length, Volume};
use measure::matter::Mass;
use measure::source::Law;

use crate::alloy::{Alloy, Family};
use crate::crucible::Shape;

/// Radiation of a black body, W/(m² K⁴): `iso-80000-5`.
const STEFAN: f64 = 5.670_374_419e-8;

/// Heat carried off by the air that rises from a hot wall, W/(m² K): still air to a brisk walk,
/// 10 to 20. From memory; at red heat the glow outweighs it ten to one.
const AIR: f64 = 15.0;

/// Specific heat of a clay-graphite or silicon-carbide wall at red heat. From memory.
pub const CRUCIBLE_HEAT: SpecificHeat = SpecificHeat::from_j_per_kg_k(1150.0);

/// How black the glowing wall of a crucible is, low, likely and high, the part that tongs and shank
/// hide taken off. From memory of tables of emissivity, with a judgement on the tongs.
pub const WALL_GLOW: [f64; 3] = [0.5, 0.7, 0.9];

/// How well the wall of a crucible conducts, W/(m K): worn clay-graphite, sound clay-graphite,
/// silicon carbide. From memory.
pub const WALL_CONDUCTS: [f64; 3] = [10.0, 20.0, 40.0];

/// Heat that the liquid hands to the wall, W/(m² K). From memory, of the order only: it hinders
/// less than the wall itself.
const FILM: f64 = 5000.0;

/// Steps in which a cooling is followed.
const STEPS: u32 = 32;

/// Drop of a filled crucible that stands or walks in the open.
pub const CARRY_DROP: Law = Law {
    name: "metal::superheat_path::carry_drop",
    formula: "ΔT = t (A q(T) + A_w q(T_s)) / (m c + m_c c_c),  q = ε σ (T⁴ − T_0⁴) + h_air (T − T_0), \
              skin T_s where q(T_s) = (T − T_s) k / s",
    range: "out of the furnace, in the open; no freezing, no flux cover; followed in steps as the \
            metal cools; somewhat high where the crucible came out hotter than its metal",
    sources: &["emissivity-pages", "common-practice"],
};

/// Drop of metal that wets a colder lining, ladle or sand.
pub const SOAK_DROP: Law = Law {
    name: "metal::superheat_path::soak_drop",
    formula: "ΔT = 2 b A (T − T_w) √(t / π) / (m c)",
    range: "wall thick for the time; metal taken as hot as it came, so somewhat high",
    sources: &["carslaw-jaeger-1959"],
};

/// How hot to lift out.
pub const LIFT_OUT: Law = Law {
    name: "metal::superheat_path::lift_out",
    formula: "T_lift = T_pour + ΔT_carry + ΔT_soak",
    range: "carry counts from lift-out to the mould, skimming and waiting with it",
    sources: &["common-practice", "emissivity-pages"],
};

/// A crucible full of metal, as far as its cooling goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Filled {
    /// The metal in it.
    pub metal: Mass,
    /// Specific heat of the liquid.
    pub liquid: SpecificHeat,
    /// Open surface of the metal.
    pub mouth: Area,
    /// How black that surface is.
    pub mouth_glow: f64,
    /// Outside of the crucible, bottom and all.
    pub wall: Area,
    /// How black the wall is, less what tongs hide.
    pub wall_glow: f64,
    /// How thick the wall is.
    pub thickness: Length,
    /// How well it conducts.
    pub conducts: Conductivity,
    /// The crucible itself.
    pub crucible: Mass,
}

impl Filled {
    /// So much of an alloy in a crucible of this brim volume: the slowest, the likely and the
    /// fastest to cool.
    pub fn of(alloy: &Alloy, brim: Volume, metal: Mass) -> [Filled; 3] {
        let shape = Shape::of(brim);
        let glow = mouth_glow(alloy.family);
        [0, 1, 2].map(|end| Filled {
            metal,
            liquid: alloy.specific_heat_liquid.band.likely(),
            mouth: shape.mouth,
            mouth_glow: glow[end],
            wall: shape.wall,
            wall_glow: WALL_GLOW[end],
            thickness: shape.thickness,
            conducts: Conductivity::from_w_per_m_k(WALL_CONDUCTS[end]),
            crucible: shape.mass,
        })
    }
}

/// How black the open surface of a skimmed melt is, low, likely and high: bright at once, duller
/// with its skin. `emissivity-pages` for oxidised aluminium and molten iron; the rest from memory.
pub fn mouth_glow(family: Family) -> [f64; 3] {
    match family {
        Family::Aluminium | Family::Zinc | Family::Tin => [0.1, 0.2, 0.4],
        Family::Copper => [0.15, 0.4, 0.7],
        Family::Iron => [0.25, 0.35, 0.6],
    }
}

/// Drop over this time from this temperature. Law: [`CARRY_DROP`].
pub fn carry_drop(
    filled: &Filled,
    from: Temperature,
    shop: Temperature,
    time: Duration,
) -> TemperatureDifference {
    from - followed(filled, from, shop, time.as_s())
}

/// Temperature that has to be there at the start so that this is left after the time: the same
/// cooling followed backwards.
pub fn before_carry(
    filled: &Filled,
    left: Temperature,
    shop: Temperature,
    time: Duration,
) -> Temperature {
    followed(filled, left, shop, -time.as_s())
}

/// Drop of metal that wets a wall of this temperature. Law: [`SOAK_DROP`].
pub fn soak_drop(
    metal: Mass,
    liquid: SpecificHeat,
    from: Temperature,
    wall: Temperature,
    wetted: Area,
    drawing: HeatDrawing,
    time: Duration,
) -> TemperatureDifference {
    let warmer = (from - wall).as_kelvin();
    let drawn = drawing.as_w_rts_per_m2_k() * wetted.as_m2() * warmer;
    let heat = 2.0 * drawn * (time.as_s() / std::f64::consts::PI).sqrt();
    TemperatureDifference::from_kelvin(heat / (metal.as_kg() * liquid.as_j_per_kg_k()))
}

/// How hot to lift out for a temperature wanted in the mould's mouth. Law: [`LIFT_OUT`].
pub fn lift_out(
    pouring: Temperature,
    carry: TemperatureDifference,
    soak: TemperatureDifference,
) -> Temperature {
    pouring + carry + soak
}

/// Fourth-order steps of the cooling; time below nought runs it backwards.
fn followed(filled: &Filled, from: Temperature, shop: Temperature, seconds: f64) -> Temperature {
    let step = seconds / f64::from(STEPS);
    let mut t = from.as_kelvin();
    for _ in 0..STEPS {
        let first = cooling(filled, t, shop.as_kelvin());
        let second = cooling(filled, t + first * step / 2.0, shop.as_kelvin());
        let third = cooling(filled, t + second * step / 2.0, shop.as_kelvin());
        let fourth = cooling(filled, t + third * step, shop.as_kelvin());
        t += step * (first + 2.0 * second + 2.0 * third + fourth) / 6.0;
    }
    Temperature::from_celsius(t - 273.15)
}

/// Kelvin a second, below nought.
fn cooling(filled: &Filled, metal: f64, shop: f64) -> f64 {
    let store = filled.metal.as_kg() * filled.liquid.as_j_per_kg_k()
        + filled.crucible.as_kg() * CRUCIBLE_HEAT.as_j_per_kg_k();
    let skin = skin(filled, metal, shop);
    let from_mouth = filled.mouth.as_m2() * given_off(filled.mouth_glow, metal, shop);
    let from_wall = filled.wall.as_m2() * given_off(filled.wall_glow, skin, shop);
    -(from_mouth + from_wall) / store
}

/// Heat given off by each square metre of a surface, W/m².
fn given_off(glow: f64, surface: f64, shop: f64) -> f64 {
    STEFAN * glow * (surface.powi(4) - shop.powi(4)) + AIR * (surface - shop)
}

/// Where the wall lets through as much as its skin gives off. The curve bends one way only, so
/// that Newton's steps from the metal's own heat run down to it and stop.
fn skin(filled: &Filled, metal: f64, shop: f64) -> f64 {
    let hinders = filled.thickness.as_m() / filled.conducts.as_w_per_m_k() + 1.0 / FILM;
    let mut skin = metal;
    for _ in 0..8 {
        let left_over = given_off(filled.wall_glow, skin, shop) - (metal - skin) / hinders;
        let steepness = 4.0 * STEFAN * filled.wall_glow * skin.powi(3) + AIR + 1.0 / hinders;
        skin -= left_over / steepness;
    }
    skin
}
