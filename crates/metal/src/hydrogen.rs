//! Hydrogen in liquid aluminium: where it comes from, how much dissolves, and how to test for it.
//!
//! Amounts are in cm³ of gas (at 0 °C and one atmosphere) for each 100 g of metal, as the trade
//! counts them.

use measure::flow::Duration;
use measure::heat::Temperature;
use measure::matter::{Density, Pressure};
use measure::source::Law;

/// Vapour of water in the air.
pub const VAPOUR_IN_AIR: Law = Law {
    name: "metal::hydrogen::vapour_in_air",
    formula: "p = φ 610.94 Pa exp(17.625 T / (T + 243.04))",
    range: "−40 to 50 °C, T in °C, within 0.4 %",
    sources: &["magnus-formula"],
};

/// Hydrogen that liquid aluminium holds under an atmosphere of it.
pub const SOLUBILITY: Law = Law {
    name: "metal::hydrogen::solubility",
    formula: "log S = a − b / T",
    range: "T in K, pure liquid aluminium, 660 to 850 °C; the sources lie apart by up to 1.8 times",
    sources: &[
        "hydrogen-assessment-1988",
        "ransley-neufeld-1948",
        "hydrogen-solubility-2980",
        "hydrogen-quench-1981",
    ],
};

/// Solubility from permeation and diffusion.
pub const FROM_PERMEATION: Law = Law {
    name: "metal::hydrogen::from_permeation",
    formula: "S = 100 P / (D ρ)",
    range: "P in cm²/(s atm^½), D in cm²/s, ρ in g/cm³",
    sources: &["vashchenko-1972"],
};

/// Hydrogen dissolved after a time over damp air or flame.
pub const DISSOLVED: Law = Law {
    name: "metal::hydrogen::dissolved",
    formula: "H = S √(p / p_0) (1 − exp(−t / τ))",
    range: "p of the water vapour as if all its hydrogen were free: an upper bound; τ a judgement",
    sources: &["sieverts-law", "common-practice"],
};

/// Difference of two cups, one frozen in a vacuum and one in air.
pub const DENSITY_INDEX: Law = Law {
    name: "metal::hydrogen::density_index",
    formula: "DI = (ρ_1 − ρ_2) / ρ_1",
    range: "same metal, same cup, one vacuum kept to; oxides raise it like gas does",
    sources: &["density-index-page"],
};

/// Pressure of the atmosphere to which solubilities refer.
pub const ATMOSPHERE: Pressure = Pressure::from_pa(101_325.0);

/// Water vapour in the waste gas over the pot, as a part of an atmosphere: low, high. Propane and
/// natural gas burn to 15 to 18 % of water, oil to some 12 %; coke and charcoal bring only the
/// water they hold.
const WATER_IN_FLUE: [(Fire, [f64; 2]); 4] = [
    (Fire::Electric, [0.0, 0.0]),
    (Fire::Charcoal, [0.0, 0.02]),
    (Fire::Oil, [0.0, 0.12]),
    (Fire::Gas, [0.0, 0.18]),
];

/// Who measured how much hydrogen liquid aluminium holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measured {
    /// A critical assessment of 1988, the middle of the rest.
    Assessed,
    /// Ransley and Neufeld 1948.
    Ransley,
    /// A later determination that lies higher.
    Later,
    /// By quenching: the lowest.
    Quenched,
}

impl Measured {
    /// All of them, the one to take first.
    pub const ALL: [Measured; 4] = [
        Measured::Assessed,
        Measured::Ransley,
        Measured::Later,
        Measured::Quenched,
    ];

    /// The one who is called by this word.
    pub fn named(word: &str) -> Option<Measured> {
        Measured::ALL.into_iter().find(|who| who.name() == word)
    }

    /// The word it is called by.
    pub fn name(self) -> &'static str {
        match self {
            Measured::Assessed => "assessed",
            Measured::Ransley => "ransley",
            Measured::Later => "later",
            Measured::Quenched => "quenched",
        }
    }

    /// a and b of log₁₀ S = a − b/T. The quench formula counts for each kilogram: less one.
    fn constants(self) -> (f64, f64) {
        match self {
            Measured::Assessed => (2.72, 2700.0),
            Measured::Ransley => (2.796, 2760.0),
            Measured::Later => (3.07, 2980.0),
            Measured::Quenched => (3.256 - 1.0, 2392.0),
        }
    }
}

/// What burns under the pot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fire {
    /// Elements or a coil: only the air of the shop.
    Electric,
    /// Charcoal or coke.
    Charcoal,
    /// Oil.
    Oil,
    /// Propane or natural gas.
    Gas,
}

/// How likely pinholes are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum GasRisk {
    /// Up to 0.1 cm³ per 100 g.
    Low,
    /// Up to 0.2.
    Middle,
    /// Up to 0.3.
    High,
    /// Above.
    Certain,
}

impl GasRisk {
    /// The risk of an amount in cm³ per 100 g. Marks from memory, `campbell-castings`: slow
    /// cooling in sand shows pores from some 0.1, and everything above 0.3 is full of them.
    pub fn of(amount: f64) -> GasRisk {
        match amount {
            amount if amount <= 0.1 => GasRisk::Low,
            amount if amount <= 0.2 => GasRisk::Middle,
            amount if amount <= 0.3 => GasRisk::High,
            _ => GasRisk::Certain,
        }
    }

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            GasRisk::Low => "low: sound for most work",
            GasRisk::Middle => "middle: pinholes in thick sections",
            GasRisk::High => "high: pinholes on machined faces",
            GasRisk::Certain => "pinholes all through: wait for dry air, or degas",
        }
    }
}

/// Pressure of the water vapour in air of a relative humidity, one for damp.
/// Law: [`VAPOUR_IN_AIR`].
pub fn vapour_in_air(air: Temperature, humidity: f64) -> Pressure {
    let celsius = air.as_celsius();
    Pressure::from_pa(humidity * 610.94 * (17.625 * celsius / (celsius + 243.04)).exp())
}

/// The water vapour that the metal meets: at least that of the air, at most that and the waste gas
/// of the fire, where the flame licks over the pot.
pub fn vapour_over(air: Pressure, fire: Fire) -> (Pressure, Pressure) {
    let row = WATER_IN_FLUE.iter().find(|(of, _)| *of == fire);
    let [low, high] = row.map_or([0.0, 0.0], |(_, parts)| *parts);
    (air + ATMOSPHERE * low, air + ATMOSPHERE * high)
}

/// Hydrogen that liquid aluminium holds at a temperature under one atmosphere of hydrogen, in cm³
/// per 100 g. Law: [`SOLUBILITY`].
pub fn solubility(metal: Temperature, measured: Measured) -> f64 {
    let (a, b) = measured.constants();
    10_f64.powf(a - b / metal.as_kelvin())
}

/// Solubility in cm³ per 100 g from permeation in cm²/(s atm^½) and diffusion in cm²/s.
/// Law: [`FROM_PERMEATION`].
pub fn from_permeation(permeation: f64, diffusion: f64, liquid: Density) -> f64 {
    100.0 * permeation / diffusion / liquid.as_g_per_cm3()
}

/// Hydrogen dissolved, in cm³ per 100 g, with the solubility of the same unit. Law: [`DISSOLVED`].
pub fn dissolved(solubility: f64, vapour: Pressure, liquid_for: Duration, pace: Duration) -> f64 {
    let reached = 1.0 - (-(liquid_for / pace)).exp();
    solubility * (vapour / ATMOSPHERE).sqrt() * reached
}

/// Density index of a cup frozen in air and one frozen in a vacuum. Law: [`DENSITY_INDEX`].
pub fn density_index(air: Density, vacuum: Density) -> f64 {
    (air - vacuum) / air
}
