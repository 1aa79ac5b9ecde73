//! The sprue: the fall of the metal, the taper that keeps the sprue full, and filling times of the
//! plain cases.

use measure::flow::{Duration, Flow, Speed};
use measure::length::{Area, Length, Volume};
use measure::matter::GRAVITY_M_PER_S2;
use measure::source::Law;

/// Speed after a free fall.
pub const FALL_SPEED: Law = Law {
    name: "mould::gating::sprue::fall_speed",
    formula: "v = √(2 g h)",
    range: "no losses; the metal starts from rest in the basin",
    sources: &["gating-slides", "byjus-sprue"],
};

/// Area that passes a flow at the foot of a fall.
pub const SPRUE_EXIT: Law = Law {
    name: "mould::gating::sprue::sprue_exit",
    formula: "A = Q / √(2 g h)",
    range: "no losses",
    sources: &["sprue-base-question"],
};

/// Width of the sprue at its top that keeps it full.
pub const SPRUE_TAPER: Law = Law {
    name: "mould::gating::sprue::sprue_top",
    formula: "A_top / A_foot = √(h_total / h_basin), diameters as its root",
    range: "the basin kept full; a straight sprue draws air",
    sources: &["bhel-sprue-2019", "sprue-ratio-question"],
};

/// Filling time of a mould that is filled from above its cavity.
pub const FILL_FROM_TOP: Law = Law {
    name: "mould::gating::sprue::fill_from_top",
    formula: "t = V / (A √(2 g h))",
    range: "no losses; the head stays the same to the end",
    sources: &["gating-slides", "byjus-sprue"],
};

/// Filling time of a mould that is filled from the bottom.
pub const FILL_FROM_BOTTOM: Law = Law {
    name: "mould::gating::sprue::fill_from_bottom",
    formula: "t = (2 A_m / (A_g √(2 g))) (√h_t − √(h_t − h_m))",
    range: "no losses; upright walls; the head falls as the metal rises",
    sources: &["bottom-gate-exam"],
};

/// Speed after a fall. Law: [`FALL_SPEED`].
pub fn fall_speed(fall: Length) -> Speed {
    Speed::from_m_per_s((2.0 * GRAVITY_M_PER_S2 * fall.as_m()).sqrt())
}

/// The fall that gives a speed: the height of the metal's own velocity.
pub fn fall_for(speed: Speed) -> Length {
    Length::from_m(speed.as_m_per_s().powi(2) / (2.0 * GRAVITY_M_PER_S2))
}

/// Area at the foot of the sprue for a flow. Law: [`SPRUE_EXIT`].
pub fn sprue_exit(flow: Flow, fall: Length) -> Area {
    Area::from_m2(flow.as_m3_per_s() / fall_speed(fall).as_m_per_s())
}

/// Diameter of the sprue at its top for a diameter at its foot. Law: [`SPRUE_TAPER`].
pub fn sprue_top(foot: Length, basin: Length, total: Length) -> Length {
    foot * (total / basin).powf(0.25)
}

/// Time to fill from above. Law: [`FILL_FROM_TOP`].
pub fn fill_from_top(cavity: Volume, foot: Area, fall: Length) -> Duration {
    cavity / (foot * fall_speed(fall))
}

/// Time to fill from the bottom. Law: [`FILL_FROM_BOTTOM`].
pub fn fill_from_bottom(plan: Area, gate: Area, head: Length, cavity_height: Length) -> Duration {
    let (head_m, left_m) = (head.as_m(), (head - cavity_height).as_m());
    let roots = head_m.sqrt() - left_m.max(0.0).sqrt();
    Duration::from_s(2.0 * (plan / gate) / (2.0 * GRAVITY_M_PER_S2).sqrt() * roots)
}

/// Diameter of the round hole of an area.
pub fn diameter_of(area: Area) -> Length {
    Length::from_m((4.0 * area.as_m2() / std::f64::consts::PI).sqrt())
}

/// Area of the round hole of a diameter.
pub fn area_of(diameter: Length) -> Area {
    diameter * diameter * (std::f64::consts::PI / 4.0)
}

/// Volume of the tapered sprue between two round ends: a cone cut off.
pub fn sprue_volume(top: Length, foot: Length, height: Length) -> Volume {
    let squares = top * top + top * foot + foot * foot;
    squares * height * (std::f64::consts::PI / 12.0)
}
