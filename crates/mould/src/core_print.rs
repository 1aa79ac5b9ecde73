//! The print of a core: how hard it bears on the sand, and how large it has to be.
//!
//! The sand of the mould carries the core before the metal comes and holds it under while the
//! metal rises. What it bears is read from the founder's own strength test, never from a book.

use measure::length::{Area, Length};
use measure::matter::{Force, Pressure};
use measure::source::Law;

/// Pressure of a print on the sand.
pub const PRINT_PRESSURE: Law = Law {
    name: "mould::core_print::print_pressure",
    formula: "p = F / A",
    range: "force square to the face of the print, whole face in touch",
    sources: &["hydrostatics"],
};

/// Area that a print wants.
pub const PRINT_AREA: Law = Law {
    name: "mould::core_print::print_area",
    formula: "A = k F / σ",
    range: "σ the green compression strength of this sand by one's own test",
    sources: &["common-practice"],
};

/// Length of prints that lie on their side.
pub const PRINT_LENGTH: Law = Law {
    name: "mould::core_print::print_length",
    formula: "L = k F / (σ d n)",
    range: "round prints lying in the joint, bearing on their breadth; as long as wide to 3 in",
    sources: &["common-practice", "core-print-rule"],
};

/// Bearing of a print as text-books print it.
pub const BOOK_BEARING: Law = Law {
    name: "mould::core_print::book_bearing",
    formula: "F = 350 A  in N and cm²",
    range: "doubtful: that is 3.5 MPa, far above what green sand bears; shown to be warned of",
    sources: &["core-print-rules-memory"],
};

/// Longest print by the rule of thumb that a print is as long as it is wide.
pub const LONGEST_BY_RULE: Length = Length::from_mm(76.2);

/// Bearing by the text-books, N for each cm² as printed.
const BOOK_N_PER_CM2: f64 = 350.0;

/// Pressure on the sand. Law: [`PRINT_PRESSURE`].
pub fn print_pressure(force: Force, area: Area) -> Pressure {
    force / area
}

/// Area wanted. Law: [`PRINT_AREA`].
pub fn print_area(force: Force, strength: Pressure, margin: f64) -> Area {
    Area::from_m2(force.as_n() * margin / strength.as_pa())
}

/// Length by what the sand bears. Law: [`PRINT_LENGTH`].
pub fn print_length(
    force: Force,
    strength: Pressure,
    margin: f64,
    diameter: Length,
    prints: f64,
) -> Length {
    let wanted = print_area(force, strength, margin) / prints;
    wanted / diameter
}

/// Length by the rule of thumb: as long as wide, to 3 in.
pub fn length_by_rule(diameter: Length) -> Length {
    diameter.min(LONGEST_BY_RULE)
}

/// Force that text-books let a print bear. Law: [`BOOK_BEARING`].
pub fn book_bearing(area: Area) -> Force {
    Force::from_n(BOOK_N_PER_CM2 * area.as_cm2())
}
