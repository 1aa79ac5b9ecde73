//! How much larger than the part the pattern has to be.

use measure::length::Length;
use measure::source::Law;

/// Size of the pattern from the size wanted and the linear contraction.
pub const PATTERN_LENGTH: Law = Law {
    name: "pattern::contraction::pattern_length",
    formula: "L_pattern = L_part (1 + s)",
    range: "s up to some 3 %; free contraction, less where cores or hard sand hold it back",
    sources: &["hobbicast-223", "dooley-426"],
};

/// Size of the pattern where the two shrinkages by volume are known: freezing and cooling solid.
pub const PATTERN_LENGTH_BY_VOLUME: Law = Law {
    name: "pattern::contraction::pattern_length_by_volume",
    formula: "L_pattern = L_part / ((1 - s_freezing) (1 - s_cooling))^(1/3)",
    range: "no feeder: a fed casting does not shrink on freezing, take s_freezing = 0",
    sources: &["exam-2025-pattern"],
};

/// Length of the pattern for a length of the part. Law: [`PATTERN_LENGTH`].
pub fn pattern_length(part: Length, contraction: f64) -> Length {
    part * (1.0 + contraction)
}

/// Length of the pattern from shrinkages by volume. Law: [`PATTERN_LENGTH_BY_VOLUME`].
pub fn pattern_length_by_volume(part: Length, freezing: f64, cooling: f64) -> Length {
    part * (1.0 / ((1.0 - freezing) * (1.0 - cooling))).cbrt()
}
