//! Chills: a piece of cold metal in the mould face that makes a heavy section freeze as fast as a
//! thin one.
//!
//! Two things have to be enough. The face has to draw heat faster than the sand it replaces; and
//! the piece has to hold that heat without growing as hot as the casting. A damp, rusty or cold
//! chill blows, so that it is dried and warmed, and laid in last.

use std::sync::LazyLock;

use measure::band::Band;
use measure::heat::{Conductivity, HeatPerMass, SpecificHeat, TemperatureDifference};
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use measure::source::Law;
use measure::text::Typed;
use serde::Deserialize;

/// Area of chill that brings a section down to a modulus.
pub const CHILL_AREA: Law = Law {
    name: "mould::feeding::chill::chill_area",
    formula: "A_ch = (V / M − A) / (f − 1)",
    range: "A the cooling surface before; f how many times as fast as sand a chilled face cools, \
            some 2 to 4 for bare iron; the wanted M below V/A",
    sources: &["wlodawer-1966"],
};

/// Mass of chill that holds the heat drawn into it.
pub const CHILL_MASS: Law = Law {
    name: "mould::feeding::chill::chill_mass",
    formula: "m = ρ (L + c ΔT) (V − (A − A_ch) M) / (c_ch ΔT_ch)",
    range: "ΔT the superheat; ΔT_ch by which the whole chill may warm while the section freezes",
    sources: &["common-practice"],
};

/// Modulus of a section with a chill on it.
pub const CHILLED_MODULUS: Law = Law {
    name: "mould::feeding::chill::chilled_modulus",
    formula: "M = V / (A + (f − 1) A_ch)",
    range: "the chill heavy enough to stay colder than the casting to the end",
    sources: &["wlodawer-1966"],
};

/// A section that is to be chilled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chilled {
    /// Volume of the section.
    pub volume: Volume,
    /// Its surface that cools, without the chill.
    pub surface: Area,
    /// The modulus it is to have: that of the section beside it or less.
    pub wanted: Length,
}

/// A metal of chills.
#[derive(Clone, Debug, PartialEq)]
pub struct ChillMetal {
    /// What it is called.
    pub name: String,
    /// Density.
    pub density: Density,
    /// Mean specific heat from cold to some 500 °C.
    pub heat: SpecificHeat,
    /// Conductivity of heat.
    pub conductivity: Conductivity,
    /// Key of the source.
    pub source: String,
}

/// Every metal of chills, the usual one first.
pub fn chill_metals() -> &'static [ChillMetal] {
    &METALS
}

/// How many times as fast as sand a bare iron face cools (`wlodawer-1966`, from memory).
pub fn chilled_face() -> Band<f64> {
    Band::new(2.0, 3.0, 4.0)
}

/// Area of chill, or nothing where the section has that modulus already or the face cools no
/// faster than sand. Law: [`CHILL_AREA`].
pub fn chill_area(section: &Chilled, faster: f64) -> Option<Area> {
    let more = section.volume / section.wanted - section.surface;
    (more > Area::ZERO && faster > 1.0).then(|| more / (faster - 1.0))
}

/// Mass of chill. Law: [`CHILL_MASS`].
pub fn chill_mass(
    section: &Chilled,
    contact: Area,
    density: Density,
    heat: HeatPerMass,
    chill: SpecificHeat,
    rise: TemperatureDifference,
) -> Mass {
    let to_sand = (section.surface - contact).max(Area::ZERO) * section.wanted;
    let to_chill = (section.volume - to_sand).max(Volume::ZERO);
    let joules = (density * to_chill).as_kg() * heat.as_j_per_kg();
    Mass::from_kg(joules / (chill.as_j_per_kg_k() * rise.as_kelvin()))
}

/// Modulus with a chill on it. Law: [`CHILLED_MODULUS`].
pub fn chilled_modulus(volume: Volume, surface: Area, contact: Area, faster: f64) -> Length {
    volume / (surface + contact * (faster - 1.0))
}

/// Thickness of a flat chill of this mass and face.
pub fn chill_thickness(mass: Mass, metal: Density, face: Area) -> Length {
    Volume::filled_by(mass, metal) / face
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    name: String,
    density: Typed<Density>,
    heat: Typed<SpecificHeat>,
    conductivity: Typed<Conductivity>,
    source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    chill: Vec<Row>,
}

static METALS: LazyLock<Vec<ChillMetal>> = LazyLock::new(|| {
    let table: Result<Table, _> = toml::from_str(include_str!("../../data/feeding/chills.toml"));
    let rows = table.map(|table| table.chill).unwrap_or_default();
    rows.into_iter().map(Row::meant).collect()
});

impl Row {
    fn meant(self) -> ChillMetal {
        ChillMetal {
            name: self.name,
            density: self.density.value,
            heat: self.heat.value,
            conductivity: self.conductivity.value,
            source: self.source,
        }
    }
}
