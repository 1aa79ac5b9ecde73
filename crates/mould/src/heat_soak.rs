//! How deep the heat goes into the sand, and how much of it is burnt.
//!
//! Sodium bentonite is dead for good above some 600 °C, calcium bentonite begins at 320 to 450,
//! sugar and starch are burnt out at 450 to 550 (`sand-death-memory`).

use measure::flow::Duration;
use measure::heat::{HeatDrawing, Temperature};
use measure::length::Length;
use measure::source::Law;

use crate::cooling::{HEAT_OF_SAND_J_PER_M3_K, Poured, cooling};
use crate::freezing::SAND_AT_REST;

/// Depth to which a flat face held hot has brought the sand to a temperature.
pub const SOAK_DEPTH: Law = Law {
    name: "mould::heat_soak::soak_depth",
    formula: "x = 2 √(a t) erfc⁻¹((T − 20 °C) / (T_face − 20 °C)), a = (b / 1.76 MJ/m³K)²",
    range: "a flat face at one temperature all that time, thick sand",
    sources: &["carslaw-jaeger-1959"],
};

/// Depth of sand that was at some time hotter than a temperature.
pub const BURNT_DEPTH: Law = Law {
    name: "mould::heat_soak::burnt_depth",
    formula: "x where the sand's highest T = T_mark, while ρ M (L + c ΔT + c_s (T_s − T)) goes into \
              sand with b",
    range: "flat face; less behind a corner, more in a narrow core between two faces",
    sources: &["carslaw-jaeger-1959", "sand-death-memory"],
};

/// Depth at a temperature behind a face held hot, or nought where the face is no hotter. Law:
/// [`SOAK_DEPTH`].
pub fn soak_depth(
    face: Temperature,
    mark: Temperature,
    sand: HeatDrawing,
    time: Duration,
) -> Length {
    let share = (mark - SAND_AT_REST).as_kelvin() / (face - SAND_AT_REST).as_kelvin();
    if !(0.0..1.0).contains(&share) || share == 0.0 {
        return Length::ZERO;
    }
    let root_a = sand.as_w_rts_per_m2_k() / HEAT_OF_SAND_J_PER_M3_K;
    Length::from_m(2.0 * root_a * time.as_s().sqrt() * inverse_erfc(share))
}

/// Depth that was at some time hotter than a temperature. Law: [`BURNT_DEPTH`].
pub fn burnt_depth(poured: &Poured, mark: Temperature) -> Length {
    cooling(poured, mark).sand_over(mark)
}

/// Where the complementary error function has this value, between 0 and 1.
fn inverse_erfc(value: f64) -> f64 {
    let (mut low, mut high) = (0.0, 6.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        match erfc(middle) > value {
            true => low = middle,
            false => high = middle,
        }
    }
    low
}

/// The complementary error function of nought or more, to 1.5e-7 (Abramowitz and Stegun 7.1.26,
/// `abramowitz-stegun`).
fn erfc(x: f64) -> f64 {
    let t = 1.0 / (1.0 + 0.327_591_1 * x);
    let terms = [
        1.061_405_429,
        -1.453_152_027,
        1.421_413_741,
        -0.284_496_736,
        0.254_829_592,
    ];
    terms.iter().fold(0.0, |sum, term| (sum + term) * t) * (-x * x).exp()
}
