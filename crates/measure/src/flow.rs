//! Speed, rate, duration.

use crate::length::{Area, Length, Volume};
use crate::matter::{Density, Mass, POUND};
use crate::quantity::{products, quantity};

quantity! {
    /// A stretch of time.
    Duration: "a time", "4.5 s or 2 min" {
        /// Seconds.
        from_s, as_s = 1.0;
        /// Minutes.
        from_min, as_min = 60.0;
    }
    written {
        Metric &["s", "sec", "second", "seconds"] => 1.0,
        Metric &["min", "minute", "minutes"] => 60.0,
        Metric &["h", "hour", "hours", "hr"] => 3600.0,
        Metric &["day", "days", "d"] => 86_400.0,
    }
}

quantity! {
    /// A speed.
    Speed: "a speed", "0.5 m/s or 20 in/s" {
        /// Metres a second.
        from_m_per_s, as_m_per_s = 1.0;
    }
    written {
        Metric &["m/s"] => 1.0,
        Metric &["mm/s"] => 1e-3,
        Inch &["in/s"] => 0.0254,
        Inch &["ft/s"] => 0.3048,
    }
}

quantity! {
    /// A rate of flow by volume.
    Flow: "a rate of flow", "0.7 l/s" {
        /// Cubic metres a second.
        from_m3_per_s, as_m3_per_s = 1.0;
        /// Litres a second.
        from_litre_per_s, as_litre_per_s = 1e-3;
    }
    written {
        Metric &["m3/s", "m³/s"] => 1.0,
        Metric &["l/s", "L/s"] => 1e-3,
        Metric &["mm3/s", "mm³/s"] => 1e-9,
        Inch &["in3/s", "in³/s"] => 0.0254 * 0.0254 * 0.0254,
    }
}

quantity! {
    /// A rate of flow by mass.
    MassRate: "a rate of flow by mass", "1.2 kg/s or 2.6 lb/s" {
        /// Kilograms a second.
        from_kg_per_s, as_kg_per_s = 1.0;
        /// Kilograms an hour.
        from_kg_per_h, as_kg_per_h = 1.0 / 3600.0;
    }
    written {
        Metric &["kg/s"] => 1.0,
        Metric &["g/s"] => 1e-3,
        Metric &["kg/min"] => 1.0 / 60.0,
        Metric &["g/min"] => 1e-3 / 60.0,
        Metric &["kg/h"] => 1.0 / 3600.0,
        Inch &["lb/s"] => POUND,
        Inch &["lb/min"] => POUND / 60.0,
        Inch &["lb/h", "lb/hr"] => POUND / 3600.0,
    }
}

quantity! {
    /// Time for each square of modulus: the constant of the freezing-time law t = C M².
    FreezingConstant: "a mould constant", "6.1 min/cm2" {
        /// Seconds a square metre.
        from_s_per_m2, as_s_per_m2 = 1.0;
        /// Minutes a square centimetre.
        from_min_per_cm2, as_min_per_cm2 = 60.0 / 1e-4;
        /// Seconds a square millimetre.
        from_s_per_mm2, as_s_per_mm2 = 1.0 / 1e-6;
    }
    written {
        Metric &["min/cm²", "min/cm2"] => 60.0 / 1e-4,
        Metric &["min/mm²", "min/mm2"] => 60.0 / 1e-6,
        Metric &["s/mm²", "s/mm2"] => 1.0 / 1e-6,
        Inch &["min/in²", "min/in2"] => 60.0 / (0.0254 * 0.0254),
    }
}

products! {
    Speed * Duration = Length;
    Area * Speed = Flow;
    Speed * Area = Flow;
    Flow * Duration = Volume;
    Duration * Flow = Volume;
    FreezingConstant * Area = Duration;
    Density * Flow = MassRate;
    MassRate * Duration = Mass;
}
