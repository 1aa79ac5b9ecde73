//! Fuels: how much a heat takes of them, how long it takes, and what goes up the flue.

use std::sync::LazyLock;

use measure::band::Band;
use measure::flow::{Duration, MassRate};
use measure::heat::{Heat, HeatPerMass, Power, SpecificHeat, Temperature};
use measure::matter::{Density, Mass};
use measure::source::Law;
use serde::Deserialize;

use crate::figure::{Figure, FigureError, FigureText};

/// Mean specific heat of flue gas between the shop and a bright furnace. From memory, a few per
/// cent either way by fuel and heat.
pub const FLUE_GAS: SpecificHeat = SpecificHeat::from_j_per_kg_k(1200.0);

/// Fuel for a heat in the metal, at what reaches the metal of the fuel's heat.
pub const FUEL_MASS: Law = Law {
    name: "metal::fuel::fuel_mass",
    formula: "m_f = H / (η h)",
    range: "lower heating value h; η = 1 gives the fuel for the metal alone, which no furnace reaches",
    sources: &["brass-heat-thread", "doe-melting-2005"],
};

/// What reaches the metal in one's own furnace, from a weighed heat.
pub const OWN_EFFICIENCY: Law = Law {
    name: "metal::fuel::own_efficiency",
    formula: "η = H / (m_f h)",
    range: "one heat weighed, first or later told apart",
    sources: &["common-practice"],
};

/// Heat that a burner gives.
pub const BURNER_POWER: Law = Law {
    name: "metal::fuel::burner_power",
    formula: "P = q h",
    range: "fuel burnt whole in the furnace: a long flame out of the lid burns part of it outside",
    sources: &["common-practice"],
};

/// Time to put so much heat out of a burner or an element.
pub const HEATING_TIME: Law = Law {
    name: "metal::fuel::heating_time",
    formula: "t = H_f / P",
    range: "from lighting to the heat wanted, without stops to charge",
    sources: &["common-practice"],
};

/// Share of the fuel's heat that leaves with the flue gas.
pub const FLUE_SHARE: Law = Law {
    name: "metal::fuel::flue_share",
    formula: "f = (1 + (1 + e) a) c_g (T_g − T_0) / h",
    range: "burnt whole; gas leaves at about the heat of the furnace; c_g of 1.2 kJ/kgK from memory",
    sources: &["burning-sum", "common-practice"],
};

/// Fuel for metal, crucible and lining together, by what the flue leaves of it.
pub const FURNACE_BALANCE: Law = Law {
    name: "metal::fuel::furnace_balance",
    formula: "H_f = (H + H_l) / (1 − f)",
    range: "heat through the shell and out of an open lid is not in it: a real furnace takes more",
    sources: &["brass-heat-thread"],
};

/// Something burnt under a crucible.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fuel {
    /// Propane, and what is sold as such.
    Propane,
    /// Butane.
    Butane,
    /// Lump charcoal.
    Charcoal,
    /// Coke.
    Coke,
    /// Diesel or heating oil.
    Diesel,
    /// Old engine or kitchen oil.
    WasteOil,
}

impl Fuel {
    /// Every fuel.
    pub const ALL: [Fuel; 6] = [
        Fuel::Propane,
        Fuel::Butane,
        Fuel::Charcoal,
        Fuel::Coke,
        Fuel::Diesel,
        Fuel::WasteOil,
    ];

    /// The word it is typed by.
    pub fn word(self) -> &'static str {
        match self {
            Fuel::Propane => "propane",
            Fuel::Butane => "butane",
            Fuel::Charcoal => "charcoal",
            Fuel::Coke => "coke",
            Fuel::Diesel => "diesel",
            Fuel::WasteOil => "waste-oil",
        }
    }

    /// The fuel of a word.
    pub fn named(word: &str) -> Option<Fuel> {
        Fuel::ALL.into_iter().find(|fuel| fuel.word() == word)
    }
}

/// What is known of a fuel.
#[derive(Clone, Debug, PartialEq)]
pub struct FuelRow {
    /// The fuel.
    pub fuel: Fuel,
    /// Heat given up, the water leaving as steam.
    pub heating_value: Figure<HeatPerMass>,
    /// Air to burn it whole, kilograms for each kilogram.
    pub air: Figure<f64>,
    /// Density, where it is measured in litres.
    pub density: Option<Figure<Density>>,
}

/// What is known of this fuel; none where the built-in table was spoilt.
pub fn known(fuel: Fuel) -> Option<&'static FuelRow> {
    TABLE.iter().find(|row| row.fuel == fuel)
}

/// Reads a table of fuels.
///
/// # Errors
///
/// Where it is no such table, or a figure in it is wrong.
pub fn read(text: &str) -> Result<Vec<FuelRow>, FuelFault> {
    let typed: TableText = toml::from_str(text)?;
    let rows = typed.fuel.into_iter().map(FuelText::meant);
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Why the table of fuels could not be read.
#[derive(Debug, thiserror::Error)]
pub enum FuelFault {
    /// Not such a table.
    #[error("fuels.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// One of the figures is wrong.
    #[error("fuels.toml: {0}")]
    Figure(#[from] FigureError),
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/fuels.toml");

/// Fuel for a heat in the metal; `efficiency` above nought. Law: [`FUEL_MASS`].
pub fn fuel_mass(heat: Heat, efficiency: f64, heating_value: HeatPerMass) -> Mass {
    let in_fuel = crate::melt::fuel_heat(heat, efficiency);
    Mass::from_kg(in_fuel.as_kj() / heating_value.as_kj_per_kg())
}

/// The band of fuel for a heat: more where the fuel is poor and the furnace wastes much.
pub fn fuel_band(
    heat: &Band<Heat>,
    efficiency: &Band<f64>,
    heating_value: &Band<HeatPerMass>,
) -> Band<Mass> {
    heat.with_two(efficiency, heating_value, fuel_mass)
}

/// Share of the fuel's heat that reached the metal. Law: [`OWN_EFFICIENCY`].
pub fn own_efficiency(metal: Heat, burnt: Mass, heating_value: HeatPerMass) -> f64 {
    metal.as_kj() / (burnt.as_kg() * heating_value.as_kj_per_kg())
}

/// Heat that a burner gives when it burns so much fuel. Law: [`BURNER_POWER`].
pub fn burner_power(burnt: MassRate, heating_value: HeatPerMass) -> Power {
    Power::from_w(burnt.as_kg_per_s() * heating_value.as_j_per_kg())
}

/// Time in which a burner or an element gives so much heat. Law: [`HEATING_TIME`].
pub fn heating_time(in_fuel: Heat, power: Power) -> Duration {
    Duration::from_s(in_fuel.as_kj() / power.as_kw())
}

/// Share of the heat in the fuel that leaves with the flue gas; one and more where the gas is so
/// hot or so thinned with air that nothing is left. Law: [`FLUE_SHARE`].
///
/// `air` is the least air in kilograms for each kilogram of fuel, `excess` the part of it blown
/// beyond that.
pub fn flue_share(
    air: f64,
    excess: f64,
    gas: Temperature,
    shop: Temperature,
    heating_value: HeatPerMass,
) -> f64 {
    let gas_mass = 1.0 + (1.0 + excess) * air;
    let rise = (gas - shop).as_kelvin();
    gas_mass * FLUE_GAS.as_j_per_kg_k() * rise / heating_value.as_j_per_kg()
}

/// Heat in the fuel for metal and lining when the flue takes a share below one.
/// Law: [`FURNACE_BALANCE`].
pub fn furnace_balance(metal: Heat, lining: Heat, flue: f64) -> Heat {
    (metal + lining) / (1.0 - flue)
}

static TABLE: LazyLock<Vec<FuelRow>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    fuel: Vec<FuelText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FuelText {
    fuel: Fuel,
    heating_value: FigureText,
    air: FigureText,
    density: Option<FigureText>,
}

impl FuelText {
    fn meant(self) -> Result<FuelRow, FigureError> {
        let density = self.density.map(|figure| figure.quantity("density"));
        Ok(FuelRow {
            fuel: self.fuel,
            heating_value: self.heating_value.quantity("heating_value")?,
            air: self.air.number("air")?,
            density: density.transpose()?,
        })
    }
}
