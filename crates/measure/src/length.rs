//! Length, area, volume.

use crate::quantity::{products, quantity};

/// Metres in an inch, exact: `iso-31`.
const INCH: f64 = 0.0254;

/// Cubic metres in a gallon of 231 cubic inches, exact: `nist-handbook-44`. Kitchen measures
/// without another word are parts of it.
const US_GALLON: f64 = 231.0 * INCH * INCH * INCH;

/// Cubic metres in an imperial gallon, exact: `nist-handbook-44`.
const IMPERIAL_GALLON: f64 = 4.546_09e-3;

quantity! {
    /// A length.
    Length: "a length", "125 mm or 4 15/16 in" {
        /// Metres.
        from_m, as_m = 1.0;
        /// Millimetres.
        from_mm, as_mm = 1e-3;
        /// Inches of 25.4 mm.
        from_inch, as_inch = INCH;
    }
    written {
        Metric &["mm", "millimetre", "millimetres", "millimeter", "millimeters"] => 1e-3,
        Metric &["cm", "centimetre", "centimetres", "centimeter", "centimeters"] => 1e-2,
        Metric &["m", "metre", "metres", "meter", "meters"] => 1.0,
        Metric &["um", "µm", "μm", "micron", "microns"] => 1e-6,
        Inch &["in", "\"", "″", "”", "inch", "inches"] => INCH,
        Inch &["ft", "'", "′", "’", "foot", "feet"] => 12.0 * INCH,
    }
}

quantity! {
    /// An area.
    Area: "an area", "12 cm2 or 1.9 in2" {
        /// Square metres.
        from_m2, as_m2 = 1.0;
        /// Square centimetres.
        from_cm2, as_cm2 = 1e-4;
        /// Square millimetres.
        from_mm2, as_mm2 = 1e-6;
        /// Square inches.
        from_in2, as_in2 = INCH * INCH;
    }
    written {
        Metric &["mm²", "mm2", "sq mm"] => 1e-6,
        Metric &["cm²", "cm2", "sq cm"] => 1e-4,
        Metric &["m²", "m2", "sq m"] => 1.0,
        Inch &["in²", "in2", "sq in"] => INCH * INCH,
        Inch &["ft²", "ft2", "sq ft"] => 144.0 * INCH * INCH,
    }
}

quantity! {
    /// A volume.
    Volume: "a volume", "640 cm3 or 39 in3" {
        /// Cubic metres.
        from_m3, as_m3 = 1.0;
        /// Litres.
        from_litre, as_litre = 1e-3;
        /// Cubic centimetres.
        from_cm3, as_cm3 = 1e-6;
        /// Cubic millimetres.
        from_mm3, as_mm3 = 1e-9;
        /// Cubic inches.
        from_in3, as_in3 = INCH * INCH * INCH;
    }
    written {
        Metric &["mm³", "mm3"] => 1e-9,
        Metric &["cm³", "cm3", "cc", "ml", "mL"] => 1e-6,
        Metric &["l", "L", "litre", "litres", "liter", "liters"] => 1e-3,
        Metric &["m³", "m3"] => 1.0,
        Inch &["in³", "in3", "cu in"] => INCH * INCH * INCH,
        Inch &["ft³", "ft3", "cu ft"] => 1728.0 * INCH * INCH * INCH,
        Inch &["gal", "gallon", "gallons"] => US_GALLON,
        Inch &["qt", "quart", "quarts"] => US_GALLON / 4.0,
        Inch &["pt", "pint", "pints"] => US_GALLON / 8.0,
        Inch &["cup", "cups"] => US_GALLON / 16.0,
        Inch &["fl oz", "floz"] => US_GALLON / 128.0,
        Inch &["tbsp", "tablespoon", "tablespoons"] => US_GALLON / 256.0,
        Inch &["tsp", "teaspoon", "teaspoons"] => US_GALLON / 768.0,
        Inch &["imp gal", "imperial gallon", "imperial gallons"] => IMPERIAL_GALLON,
        Inch &["imp pt", "imperial pint", "imperial pints"] => IMPERIAL_GALLON / 8.0,
    }
}

products! {
    Length * Length = Area;
    Length * Area = Volume;
    Area * Length = Volume;
}
