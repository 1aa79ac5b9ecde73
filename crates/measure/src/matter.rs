//! Mass, density, force, pressure.

use crate::length::{Area, Length, Volume};
use crate::quantity::{products, quantity};

/// Kilograms in an avoirdupois pound, exact: `iso-31`.
pub(crate) const POUND: f64 = 0.453_592_37;

/// Standard fall of a body, 9.80665 m/s², exact by convention: `iso-80000-3`.
pub const GRAVITY_M_PER_S2: f64 = 9.806_65;

quantity! {
    /// A mass.
    Mass: "a mass", "1.98 kg or 4 lb 6 oz" {
        /// Kilograms.
        from_kg, as_kg = 1.0;
        /// Grams.
        from_g, as_g = 1e-3;
        /// Pounds.
        from_lb, as_lb = POUND;
    }
    written {
        Metric &["kg", "kilo", "kilos", "kilogram", "kilograms"] => 1.0,
        Metric &["g", "gram", "grams"] => 1e-3,
        Metric &["t", "tonne", "tonnes"] => 1e3,
        Inch &["lb", "lbs", "pound", "pounds"] => POUND,
        Inch &["oz", "ounce", "ounces"] => POUND / 16.0,
    }
}

quantity! {
    /// A density.
    Density: "a density", "1.6 g/cm3 or 100 lb/ft3" {
        /// Kilograms a cubic metre.
        from_kg_per_m3, as_kg_per_m3 = 1.0;
        /// Grams a cubic centimetre.
        from_g_per_cm3, as_g_per_cm3 = 1e3;
    }
    written {
        Metric &["kg/m³", "kg/m3"] => 1.0,
        Metric &["g/cm³", "g/cm3", "g/cc", "kg/l", "kg/L", "g/ml"] => 1e3,
        Inch &["lb/in³", "lb/in3", "lb/cu in"] => POUND / (0.0254 * 0.0254 * 0.0254),
        Inch &["lb/ft³", "lb/ft3", "lb/cu ft"] => POUND / (0.3048 * 0.3048 * 0.3048),
    }
}

quantity! {
    /// A force.
    Force: "a force", "92 N or 9.4 kgf" {
        /// Newtons.
        from_n, as_n = 1.0;
        /// Kilograms-force: the weight of a kilogram.
        from_kgf, as_kgf = GRAVITY_M_PER_S2;
    }
    written {
        Metric &["N", "newton", "newtons"] => 1.0,
        Metric &["kN"] => 1e3,
        Metric &["kgf"] => GRAVITY_M_PER_S2,
        Inch &["lbf"] => POUND * GRAVITY_M_PER_S2,
    }
}

quantity! {
    /// A pressure.
    Pressure: "a pressure", "14 kPa or 2 psi" {
        /// Pascals.
        from_pa, as_pa = 1.0;
        /// Kilopascals.
        from_kpa, as_kpa = 1e3;
    }
    written {
        Metric &["Pa"] => 1.0,
        Metric &["kPa", "kN/m2", "kN/m²"] => 1e3,
        Metric &["MPa", "N/mm2", "N/mm²"] => 1e6,
        Metric &["mbar", "hPa"] => 1e2,
        Metric &["bar"] => 1e5,
        Metric &["cmH2O", "cm H2O", "cm of water"] => 98.0665,
        Metric &["mmHg", "mm Hg"] => 133.322_387_415,
        Metric &["atm"] => 101_325.0,
        Metric &["kgf/cm2", "kgf/cm²"] => GRAVITY_M_PER_S2 / 1e-4,
        Inch &["psi", "lbf/in2", "lb/in2"] => POUND * GRAVITY_M_PER_S2 / (0.0254 * 0.0254),
    }
}

products! {
    Density * Volume = Mass;
    Pressure * Area = Force;
}

impl Mass {
    /// The pull of the Earth on it.
    pub fn weight(self) -> Force {
        Force::from_kgf(self.as_kg())
    }
}

impl Force {
    /// The mass that weighs as much: what has to lie on the cope to hold this force.
    pub fn held_by(self) -> Mass {
        Mass::from_kg(self.as_kgf())
    }
}

impl Pressure {
    /// Pressure under a column of liquid: p = ρ g h.
    pub fn under(liquid: Density, head: Length) -> Pressure {
        Pressure::from_pa(liquid.as_kg_per_m3() * GRAVITY_M_PER_S2 * head.as_m())
    }
}

impl Volume {
    /// The volume that a mass fills at a density: V = m/ρ.
    pub fn filled_by(mass: Mass, density: Density) -> Volume {
        Volume::from_m3(mass.as_kg() / density.as_kg_per_m3())
    }
}
