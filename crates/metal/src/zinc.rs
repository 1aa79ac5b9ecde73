//! Zinc that goes up in smoke: when brass flares, how much is lost, what to put back.

use measure::flow::Duration;
use measure::heat::Temperature;
use measure::length::{Area, Length};
use measure::matter::{Mass, Pressure};
use measure::source::Law;

/// Vapour pressure of pure liquid zinc.
pub const VAPOUR: Law = Law {
    name: "metal::zinc::vapour",
    formula: "log p = 12.34 − 6620 / T − 1.255 log T",
    range: "p in mm of mercury, T in K; 420 to 907 °C as published, carried on to 1300 °C",
    sources: &["kubaschewski-thermochemistry"],
};

/// Vapour pressure of zinc over brass.
pub const VAPOUR_OVER_BRASS: Law = Law {
    name: "metal::zinc::vapour_over_brass",
    formula: "p = p_zinc x γ,  ln γ = −19246 (1 − x)² / (R T)",
    range: "zinc in liquid copper, 5 to 50 % by mass; tin, lead and aluminium left out",
    sources: &["raoult", "brass-activity-problem"],
};

/// Where brass boils.
pub const FLARE: Law = Law {
    name: "metal::zinc::flare",
    formula: "p(T, w) = 1 atm",
    range: "brass with 5 to 50 % zinc by mass; it smokes well below and flares here",
    sources: &[
        "raoult",
        "brass-activity-problem",
        "kubaschewski-thermochemistry",
    ],
};

/// Zinc lost through the air above the pot.
pub const LOST: Law = Law {
    name: "metal::zinc::lost",
    formula: "m = h A t M p / (R T)",
    range: "open pot, not boiling; h of some 2 to 20 mm/s is a judgement: good to a factor of three",
    sources: &["film-evaporation", "common-practice"],
};

/// Kilograms of a kilomole of zinc and of copper, divided by a thousand.
const ZINC_KG_PER_MOL: f64 = 0.065_38;
const COPPER_KG_PER_MOL: f64 = 0.063_546;

/// Joules for a mole and kelvin, exact: `si-brochure-2019`.
const GAS_CONSTANT: f64 = 8.314_462_618;

/// How fast the air over the pot carries vapour away, in m/s: low, likely, high. Below, lid or
/// charcoal lies on the metal; above, the flame plays over it.
pub const CARRIED_OFF_M_PER_S: [f64; 3] = [0.002, 0.006, 0.02];

/// Pascals of a millimetre of mercury: `iso-31`.
const MILLIMETRE_OF_MERCURY: f64 = 133.322;

/// Pressure of the air that the vapour has to lift.
const ATMOSPHERE_PA: f64 = 101_325.0;

/// Vapour pressure of pure liquid zinc. Law: [`VAPOUR`].
pub fn vapour(at: Temperature) -> Pressure {
    let kelvin = at.as_kelvin();
    let log = 12.34 - 6620.0 / kelvin - 1.255 * kelvin.log10();
    Pressure::from_pa(10_f64.powf(log) * MILLIMETRE_OF_MERCURY)
}

/// Vapour pressure of zinc over brass that holds this share of it by mass.
/// Law: [`VAPOUR_OVER_BRASS`].
pub fn vapour_over_brass(zinc: f64, at: Temperature) -> Pressure {
    let moles = zinc / ZINC_KG_PER_MOL;
    let part = moles / (moles + (1.0 - zinc) / COPPER_KG_PER_MOL);
    let copper = 1.0 - part;
    let bound = (-19_246.0 * copper * copper / (GAS_CONSTANT * at.as_kelvin())).exp();
    vapour(at) * (part * bound)
}

/// Where brass of this share of zinc boils and flares; nothing where it would lie above 1600 °C.
/// Law: [`FLARE`].
pub fn flare(zinc: f64) -> Option<Temperature> {
    let boils = |celsius: f64| {
        vapour_over_brass(zinc, Temperature::from_celsius(celsius)).as_pa() >= ATMOSPHERE_PA
    };
    let (mut low, mut high) = (500.0, 1600.0);
    if !boils(high) {
        return None;
    }
    // Forty halvings of 1100 K leave less than a billionth of a kelvin.
    for _ in 0..40 {
        let middle = (low + high) / 2.0;
        match boils(middle) {
            true => high = middle,
            false => low = middle,
        }
    }
    Some(Temperature::from_celsius(high))
}

/// The temperature wanted, or that at which brass of this share of zinc boils where it is lower: no
/// brass gets hotter than it boils.
pub fn no_hotter_than_it_boils(zinc: f64, wanted: Temperature) -> Temperature {
    match flare(zinc) {
        Some(flare) if flare < wanted => flare,
        _ => wanted,
    }
}

/// An open pot of brass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pot {
    /// Share of zinc by mass.
    pub zinc: f64,
    /// Its temperature.
    pub at: Temperature,
    /// The open surface of the metal.
    pub surface: Area,
}

impl Pot {
    /// A round pot that is so wide across the metal.
    pub fn across(zinc: f64, at: Temperature, width: Length) -> Pot {
        let surface = width * width * std::f64::consts::FRAC_PI_4;
        Pot { zinc, at, surface }
    }
}

/// Zinc lost from an open pot that does not boil; `carried_off` in m/s, as in
/// [`CARRIED_OFF_M_PER_S`]. Law: [`LOST`].
pub fn lost(pot: &Pot, standing: Duration, carried_off: f64) -> Mass {
    let pressure_pa = vapour_over_brass(pot.zinc, pot.at).as_pa();
    let kg_per_m3 = ZINC_KG_PER_MOL * pressure_pa / (GAS_CONSTANT * pot.at.as_kelvin());
    Mass::from_kg(carried_off * pot.surface.as_m2() * standing.as_s() * kg_per_m3)
}
