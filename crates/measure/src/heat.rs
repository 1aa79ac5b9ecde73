//! Temperature, temperature difference, and the heat that metal carries.
//!
//! A temperature and a temperature difference are two types: 950 °F is 510 °C, while a drop of
//! 950 °F is a drop of 528 °C. Only a difference can be added to a temperature.

use std::ops::{Add, Sub};

use crate::flow::Duration;
use crate::matter::Mass;
use crate::quantity::{products, quantity};
use crate::text::{System, UnitWord, Written};

/// Kelvin at 0 °C, exact: `iso-80000-5`.
const ICE_POINT: f64 = 273.15;

/// A temperature: a mark on a scale, not an amount.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Temperature(f64);

impl Temperature {
    /// Degrees Celsius.
    pub const fn from_celsius(degrees: f64) -> Temperature {
        Temperature(degrees + ICE_POINT)
    }

    /// Degrees Celsius.
    pub const fn as_celsius(self) -> f64 {
        self.0 - ICE_POINT
    }

    /// Degrees Fahrenheit.
    pub fn as_fahrenheit(self) -> f64 {
        self.as_celsius() * 9.0 / 5.0 + 32.0
    }

    /// Kelvin.
    pub const fn as_kelvin(self) -> f64 {
        self.0
    }
}

impl Written for Temperature {
    const WHAT: &'static str = "a temperature";
    const EXAMPLE: &'static str = "710 C or 1310 F";
    const UNITS: &'static [UnitWord] = &[
        UnitWord {
            words: &["C", "°C", "degC", "c"],
            si: 1.0,
            offset: ICE_POINT,
            system: System::Metric,
        },
        UnitWord {
            words: &["K"],
            si: 1.0,
            offset: 0.0,
            system: System::Metric,
        },
        UnitWord {
            words: &["F", "°F", "degF", "f"],
            si: 5.0 / 9.0,
            offset: ICE_POINT - 32.0 * 5.0 / 9.0,
            system: System::Inch,
        },
    ];
    const MAY_BE_NEGATIVE: bool = true;

    fn from_si(amount: f64) -> Temperature {
        Temperature(amount)
    }

    fn si(self) -> f64 {
        self.0
    }
}

quantity! {
    /// A difference of temperatures: a superheat, a drop, a freezing range.
    TemperatureDifference: "a temperature difference", "60 K or 108 F" {
        /// Kelvin, the same step as degrees Celsius.
        from_kelvin, as_kelvin = 1.0;
    }
    written {
        Metric &["K", "C", "°C", "degC", "c"] => 1.0,
        Inch &["F", "°F", "degF", "f"] => 5.0 / 9.0,
    }
}

impl Add<TemperatureDifference> for Temperature {
    type Output = Temperature;
    fn add(self, rise: TemperatureDifference) -> Temperature {
        Temperature(self.0 + rise.as_kelvin())
    }
}

impl Sub<TemperatureDifference> for Temperature {
    type Output = Temperature;
    fn sub(self, drop: TemperatureDifference) -> Temperature {
        Temperature(self.0 - drop.as_kelvin())
    }
}

impl Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, lower: Temperature) -> TemperatureDifference {
        TemperatureDifference::from_kelvin(self.0 - lower.0)
    }
}

quantity! {
    /// Heat for each kilogram: latent heat.
    HeatPerMass: "a heat per mass", "389 kJ/kg" {
        /// Joules a kilogram.
        from_j_per_kg, as_j_per_kg = 1.0;
        /// Kilojoules a kilogram.
        from_kj_per_kg, as_kj_per_kg = 1e3;
    }
    written {
        Metric &["kJ/kg"] => 1e3,
        Metric &["J/kg"] => 1.0,
        Metric &["MJ/kg"] => 1e6,
        Inch &["Btu/lb"] => 2326.0,
    }
}

quantity! {
    /// Heat for each kilogram and kelvin: specific heat.
    SpecificHeat: "a specific heat", "900 J/kgK" {
        /// Joules a kilogram and kelvin.
        from_j_per_kg_k, as_j_per_kg_k = 1.0;
    }
    written {
        Metric &["J/kgK"] => 1.0,
        Metric &["kJ/kgK"] => 1e3,
        Inch &["Btu/lbF"] => 4186.8,
    }
}

quantity! {
    /// Heat diffusivity of the mould, b = √(k ρ c): how hard sand drinks heat.
    HeatDrawing: "a heat diffusivity", "1100 Ws^0.5/m2K" {
        /// W s^0.5 / (m² K).
        from_w_rts_per_m2_k, as_w_rts_per_m2_k = 1.0;
    }
    written {
        Metric &["Ws^0.5/m2K"] => 1.0,
    }
}

/// Joules in a British thermal unit of the steam table: `iso-31`.
const BTU: f64 = 1_055.055_852_62;

quantity! {
    /// An amount of heat.
    Heat: "an amount of heat", "968 kJ or 0.27 kWh" {
        /// Kilojoules.
        from_kj, as_kj = 1e3;
        /// Kilowatt-hours.
        from_kwh, as_kwh = 3.6e6;
    }
    written {
        Metric &["kJ"] => 1e3,
        Metric &["J"] => 1.0,
        Metric &["MJ"] => 1e6,
        Metric &["kWh"] => 3.6e6,
        Inch &["Btu", "BTU"] => BTU,
    }
}

quantity! {
    /// Heat given in each second: of a burner, of an element.
    Power: "a power", "15 kW or 50000 Btu/h" {
        /// Watts.
        from_w, as_w = 1.0;
        /// Kilowatts.
        from_kw, as_kw = 1e3;
    }
    written {
        Metric &["W"] => 1.0,
        Metric &["kW"] => 1e3,
        Inch &["Btu/h", "BTU/h", "BTU/hr", "Btu/hr"] => BTU / 3600.0,
    }
}

quantity! {
    /// Conductivity of heat.
    Conductivity: "a heat conductivity", "0.6 W/mK" {
        /// W / (m K).
        from_w_per_m_k, as_w_per_m_k = 1.0;
    }
    written {
        Metric &["W/mK"] => 1.0,
    }
}

products! {
    HeatPerMass * Mass = Heat;
    Power * Duration = Heat;
}
