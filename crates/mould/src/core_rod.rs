//! Whether a core bears its own float, and the rod that helps it.
//!
//! Metal lifts a long core evenly along its length; between its prints it bends like a shelf.

use std::sync::LazyLock;

use measure::heat::Temperature;
use measure::length::Length;
use measure::matter::{Density, Force, GRAVITY_M_PER_S2, Pressure};
use measure::source::Law;
use serde::Deserialize;

/// Tension in a round core bent by its float.
pub const CORE_BENDING: Law = Law {
    name: "mould::core_rod::core_bending",
    formula: "σ = c (ρ − ρ_core) g L² / D, c = 1 on two prints, 4 on one",
    range: "round core of one thickness, lying level, wholly drowned over its length L",
    sources: &["beam-statics"],
};

/// Strength of core sand from a bar broken on a scale.
pub const BAR_STRENGTH: Law = Law {
    name: "mould::core_rod::bar_strength",
    formula: "σ = 3 F L / (2 b h²)",
    range: "bar on two edges L apart, pressed in the middle until it breaks; h upright",
    sources: &["beam-statics"],
};

/// Diameter of a steel rod that takes the whole bending.
pub const CORE_ROD: Law = Law {
    name: "mould::core_rod::core_rod",
    formula: "d = ³√(k 32 M / (π σ)), M = (ρ − ρ_core) g (π / 4) D² L² / 8 on two prints, / 2 on one",
    range: "the sand counted as nothing; σ is the yield of the steel at its own heat",
    sources: &["beam-statics", "en-1993-1-2"],
};

/// What holds a core at its ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// A print at each end.
    Both,
    /// A print at one end, the other free.
    One,
}

impl Ends {
    /// Bending moment over load and length: 1/8 on two, 1/2 on one (`beam-statics`).
    fn moment_share(self) -> f64 {
        match self {
            Ends::Both => 1.0 / 8.0,
            Ends::One => 1.0 / 2.0,
        }
    }

    /// Lengths over diameter beyond which a core is slender and wants a wire whatever its float:
    /// it has to live through being lifted and set, too (common practice).
    pub fn slender_from(self) -> f64 {
        match self {
            Ends::Both => 5.0,
            Ends::One => 2.5,
        }
    }
}

/// A round core lying in metal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bar {
    /// Its diameter.
    pub diameter: Length,
    /// Its length between the prints, or from the print to the free end.
    pub span: Length,
    /// What holds it.
    pub ends: Ends,
    /// Density of the liquid metal.
    pub liquid: Density,
    /// Density of the core.
    pub core: Density,
}

impl Bar {
    /// Whether it is slender enough to want a wire whatever its float.
    pub fn is_slender(&self) -> bool {
        self.span > self.diameter * self.ends.slender_from()
    }

    /// Bending moment of the float, N m; a core heavier than the metal bends downward as much.
    fn moment_n_m(&self) -> f64 {
        let (diameter_m, span_m) = (self.diameter.as_m(), self.span.as_m());
        let lift_kg_per_m3 = (self.liquid - self.core).as_kg_per_m3().abs();
        let area_m2 = std::f64::consts::FRAC_PI_4 * diameter_m * diameter_m;
        let load_n_per_m = lift_kg_per_m3 * GRAVITY_M_PER_S2 * area_m2;
        load_n_per_m * span_m * span_m * self.ends.moment_share()
    }
}

/// Tension at the skin of a core. Law: [`CORE_BENDING`].
pub fn core_bending(bar: &Bar) -> Pressure {
    Pressure::from_pa(bar.moment_n_m() / section_m3(bar.diameter))
}

/// Strength from the load that breaks a bar. Law: [`BAR_STRENGTH`].
pub fn bar_strength(load: Force, span: Length, breadth: Length, height: Length) -> Pressure {
    let (span_m, breadth_m, height_m) = (span.as_m(), breadth.as_m(), height.as_m());
    Pressure::from_pa(1.5 * load.as_n() * span_m / (breadth_m * height_m * height_m))
}

/// Diameter of the rod. Law: [`CORE_ROD`].
pub fn core_rod(bar: &Bar, yield_point: Pressure, margin: f64) -> Length {
    let section_m3 = margin * bar.moment_n_m() / yield_point.as_pa();
    Length::from_m((32.0 * section_m3 / std::f64::consts::PI).cbrt())
}

/// Yield of mild steel at heat, against 235 MPa cold (`en-1993-1-2`); nought where it melts away.
pub fn yield_at(heat: Temperature) -> Pressure {
    COLD_YIELD * share_left(heat.as_celsius())
}

/// Yield of plain mild steel, cold.
const COLD_YIELD: Pressure = Pressure::from_kpa(235e3);

/// Section modulus of a round bar.
fn section_m3(diameter: Length) -> f64 {
    std::f64::consts::PI * diameter.as_m().powi(3) / 32.0
}

fn share_left(celsius: f64) -> f64 {
    let after = STEEL.iter().position(|row| row.celsius >= celsius);
    match after {
        Some(0) => 1.0,
        Some(place) => {
            let (a, b) = (&STEEL[place - 1], &STEEL[place]);
            let along = (celsius - a.celsius) / (b.celsius - a.celsius);
            a.left + along * (b.left - a.left)
        }
        None => 0.0,
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SteelRow {
    celsius: f64,
    left: f64,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SteelTable {
    steel: Vec<SteelRow>,
}

static STEEL: LazyLock<Vec<SteelRow>> = LazyLock::new(|| {
    let table: Result<SteelTable, _> = toml::from_str(include_str!("../data/steel_at_heat.toml"));
    table.map(|table| table.steel).unwrap_or_default()
});
