//! Whether gas finds its way out through sand and vents before it bubbles into the metal.
//!
//! Pencil grade: gas flows through sand as water through a filter, the pressure falling evenly; a
//! vent is a round pipe that gathers from the sand round it. Real sand is layered, cracks, and
//! cools its steam back to water, so that a figure here ranks one mould against another and is
//! good to a factor of two at best.

use std::f64::consts::PI;

use measure::flow::{Duration, Flow};
use measure::heat::Temperature;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Pressure};
use measure::source::Law;

use crate::gas::{gas_rate, sand_gas};

/// Pressure that drives gas through sand.
pub const SEEPAGE: Law = Law {
    name: "mould::venting::seepage",
    formula: "p = μ s Q / (3.08e-13 m² P a)",
    range: "slow flow, sand of one permeability P, the gas at one temperature",
    sources: &["permeability-page", "darcy-memory"],
};

/// Pressure that drives gas through round vents.
pub const VENT_PIPE: Law = Law {
    name: "mould::venting::vent_pipe",
    formula: "p = 128 μ l Q / (π d⁴ n)",
    range: "smooth round holes that stay open; quick gas in short wide ones wants a little more",
    sources: &["hagen-poiseuille-memory"],
};

/// Pressure of the gas in a core.
pub const CORE_GAS: Law = Law {
    name: "mould::venting::core_gas",
    formula: "p = μ Q / (k a / s + 1 / (ln(D / d) / (2 π k l) + 128 l / (π d⁴))), \
              k = 3.08e-13 m² P",
    range: "core whose only ways out are its print and one hole along its middle",
    sources: &[
        "permeability-page",
        "darcy-memory",
        "hagen-poiseuille-memory",
    ],
};

/// Pressure of steam at the face of a green mould.
pub const STEAM_BACK: Law = Law {
    name: "mould::venting::steam_back",
    formula: "p = μ Q x (1 + 31 w) / (k A), k = 3.08e-13 m² P",
    range: "steam of the layer x dried so far, going back to water in the cold sand behind it",
    sources: &["permeability-page", "darcy-memory", "steam-condensing-sum"],
};

/// Pressure of the gas that does not go back to water, at the face of a mould.
pub const MOULD_GAS: Law = Law {
    name: "mould::venting::mould_gas",
    formula: "p = μ Q (s / (k A) + 1 / (k A / (L − s) + n / r)), \
              r = ln(√(A / (π n)) / (d / 2)) / (2 π k l) + 128 l / (π d⁴), l = L − s, \
              k = 3.08e-13 m² P",
    range: "vents even over the face, all stopping s short of it, open at the back of the sand",
    sources: &[
        "permeability-page",
        "darcy-memory",
        "hagen-poiseuille-memory",
    ],
};

/// Viscosity of steam, smoke and air at some 400 °C, Pa s (from memory: 2.4e-5 to 3.3e-5).
const GAS_PA_S: f64 = 3.0e-5;

/// Square metres of flow in each unit of the permeability number: 1.81e-5 Pa s of air at 20 °C
/// times 1.6995e-8 for centimetres of water and minutes.
const M2_PER_NUMBER: f64 = 3.08e-13;

/// Sand between gas and open air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SandPath {
    /// Its permeability number.
    pub permeability: f64,
    /// Area across the flow.
    pub area: Area,
    /// Way through the sand.
    pub way: Length,
}

/// A round hole or wire vent.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vent {
    /// Its diameter.
    pub diameter: Length,
    /// Its length.
    pub length: Length,
}

/// A face of green sand that metal comes to cover.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WetFace {
    /// Its area.
    pub area: Area,
    /// Time in which the mould fills.
    pub time: Duration,
    /// Water in the sand, of its mass.
    pub water: f64,
    /// Organic binder that burns, of its mass.
    pub binder: f64,
    /// Permeability number of the sand.
    pub permeability: f64,
}

impl WetFace {
    /// Pressure of its steam. Law: [`STEAM_BACK`].
    pub fn steam(&self) -> Pressure {
        let boiling = Temperature::from_celsius(100.0);
        let litres = sand_gas(self.water, 0.0, 0.0, boiling);
        let steam = gas_rate(self.area, RAMMED, litres, STEAMING_MM, self.time);
        let dried = Length::from_mm(STEAMING_MM * self.time.as_s().sqrt());
        steam_back(steam, self.permeability, self.area, dried, self.water)
    }

    /// What has to go out through the sand without turning back to water: the air that metal
    /// drives out, and the smoke of what burns.
    pub fn air_and_smoke(&self, cavity: Volume) -> Flow {
        let litres = sand_gas(0.0, self.binder, SMOKE_L_PER_KG, SMOKE);
        cavity / self.time + gas_rate(self.area, RAMMED, litres, BURNING_MM, self.time)
    }
}

/// Rammed sand; the density matters least here.
const RAMMED: Density = Density::from_kg_per_m3(1600.0);

/// Depth in mm to which sand under metal is dried in the first second, 1.0 to 1.6
/// (`sand-front-sum`).
const STEAMING_MM: f64 = 1.3;

/// Depth in mm to which its binder burns in the first second, 0.4 to 0.8 (`sand-front-sum`).
const BURNING_MM: f64 = 0.6;

/// Gas of a kilogram of binder in litres at 20 °C, 300 to 1000 (`binder-gas-memory`).
const SMOKE_L_PER_KG: f64 = 600.0;

/// Temperature at which smoke leaves, for its volume (common practice, no source).
pub const SMOKE: Temperature = Temperature::from_celsius(400.0);

/// Pressure through sand. Law: [`SEEPAGE`].
pub fn seepage(gas: Flow, path: &SandPath) -> Pressure {
    driving(gas, through_sand(path))
}

/// Pressure through so many vents side by side. Law: [`VENT_PIPE`].
pub fn vent_pipe(gas: Flow, vent: &Vent, vents: f64) -> Pressure {
    driving(gas, vents / pipe(vent))
}

/// Pressure in a core of this thickness, its print the sand path, with or without a hole. Law:
/// [`CORE_GAS`].
pub fn core_gas(gas: Flow, print: &SandPath, thickness: Length, hole: Option<&Vent>) -> Pressure {
    let by_hole = hole.map_or(0.0, |hole| {
        let k_m2 = print.permeability * M2_PER_NUMBER;
        1.0 / (gathering(thickness / hole.diameter, hole.length, k_m2) + pipe(hole))
    });
    driving(gas, through_sand(print) + by_hole)
}

/// Pressure of steam at a face of this area, its sand dried so deep. Law: [`STEAM_BACK`].
///
/// The way of the steam is the dried layer and the cold one behind it that it heats to boiling.
pub fn steam_back(
    steam: Flow,
    permeability: f64,
    face: Area,
    dried: Length,
    water: f64,
) -> Pressure {
    let path = SandPath {
        permeability,
        area: face,
        way: dried * (1.0 + SAND_HEATED_BY_STEAM * water),
    };
    driving(steam, through_sand(&path))
}

/// Kilograms of cold sand that a kilogram of steam brings to boiling: 2257 kJ/kg over
/// 0.9 kJ/kgK · 80 K (`steam-condensing-sum`).
const SAND_HEATED_BY_STEAM: f64 = 31.0;

/// Pressure at a face of the mould, the sand path from there to the open, with so many vents that
/// stop short of the face by `short`. Law: [`MOULD_GAS`].
pub fn mould_gas(
    gas: Flow,
    sand: &SandPath,
    short: Length,
    diameter: Length,
    vents: f64,
) -> Pressure {
    let length = sand.way - short;
    let k_m2 = sand.permeability * M2_PER_NUMBER;
    let skin = 1.0
        / through_sand(&SandPath {
            way: short,
            ..*sand
        });
    let behind = through_sand(&SandPath {
        way: length,
        ..*sand
    });
    let field = Length::from_m((sand.area.as_m2() / (PI * vents.max(1.0))).sqrt());
    let vent = Vent { diameter, length };
    let each = gathering(field / (diameter * 0.5), length, k_m2) + pipe(&vent);
    driving(gas, 1.0 / (skin + 1.0 / (behind + vents / each)))
}

/// Fewest vents that keep the gas below what may be borne; nothing where no number within reason
/// does: they cannot stand closer than 25 mm.
pub fn vents_wanted(
    gas: Flow,
    sand: &SandPath,
    short: Length,
    diameter: Length,
    borne: Pressure,
) -> Option<f64> {
    let most = (sand.area / (CLOSEST * CLOSEST)).ceil().min(MOST_VENTS);
    let enough = |vents: f64| mould_gas(gas, sand, short, diameter, vents) <= borne;
    if enough(0.0) {
        return Some(0.0);
    }
    if !enough(most) {
        return None;
    }
    // More vents never raise the pressure, so halving finds the fewest.
    let (mut few, mut many) = (0.0, most);
    while many - few > 1.0 {
        let middle = ((few + many) / 2.0_f64).floor();
        match enough(middle) {
            true => many = middle,
            false => few = middle,
        }
    }
    Some(many)
}

/// Nearest that wire vents are set (common practice: 25 to 40 mm).
const CLOSEST: Length = Length::from_mm(25.0);

/// Beyond this nobody counts.
const MOST_VENTS: f64 = 10_000.0;

/// Conductance of sand, m³ to the second under one pascal, times the viscosity.
fn through_sand(path: &SandPath) -> f64 {
    path.permeability * M2_PER_NUMBER * path.area.as_m2() / path.way.as_m()
}

/// Resistance of a pipe over viscosity.
fn pipe(vent: &Vent) -> f64 {
    128.0 * vent.length.as_m() / (PI * vent.diameter.as_m().powi(4))
}

/// Resistance, over viscosity, of the sand round a vent that gathers from so many times its own
/// width.
fn gathering(widths: f64, length: Length, k_m2: f64) -> f64 {
    widths.max(1.0).ln() / (2.0 * PI * k_m2 * length.as_m())
}

fn driving(gas: Flow, conductance: f64) -> Pressure {
    Pressure::from_pa(GAS_PA_S * gas.as_m3_per_s() / conductance)
}
