//! The choke: the narrowest place of the running system, which sets the pace of the pour.

use measure::band::Band;
use measure::flow::Duration;
use measure::length::{Area, Length};
use measure::matter::{Density, GRAVITY_M_PER_S2, Mass};
use measure::source::Law;

/// Area of the choke.
pub const CHOKE: Law = Law {
    name: "mould::gating::choke::choke",
    formula: "A = m / (ρ t C √(2 g H))",
    range: "running system kept full; C 0.73 to 0.90 by its bends",
    sources: &["gating-slides", "gating-lecture-notes"],
};

/// The head that drives the metal on average over the pour.
pub const EFFECTIVE_HEAD: Law = Law {
    name: "mould::gating::choke::effective_head",
    formula: "H = h − h₁² / (2 h₂)",
    range: "h₁ the casting above the gate, h₂ the whole casting; h the pour above the gate",
    sources: &["gating-lecture-notes"],
};

/// What a real running system lets through of what an ideal one would: 0.8 in common use, 0.90 for
/// a tapered sprue and one gate, 0.73 with bends and two gates (from memory).
pub fn discharge() -> Band<f64> {
    Band::new(0.73, 0.8, 0.9)
}

/// Area of the choke. Law: [`CHOKE`].
pub fn choke(poured: Mass, liquid: Density, time: Duration, discharge: f64, head: Length) -> Area {
    let speed = discharge * (2.0 * GRAVITY_M_PER_S2 * head.as_m()).sqrt();
    Area::from_m2(poured.as_kg() / (liquid.as_kg_per_m3() * time.as_s() * speed))
}

/// The mean head. Law: [`EFFECTIVE_HEAD`].
pub fn effective_head(pour_above_gate: Length, above_gate: Length, casting: Length) -> Length {
    if casting <= Length::ZERO {
        return pour_above_gate;
    }
    let (above_m, casting_m) = (above_gate.as_m(), casting.as_m());
    pour_above_gate - Length::from_m(above_m * above_m / (2.0 * casting_m))
}
