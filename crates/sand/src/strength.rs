//! Strength on the kitchen scale: a cylinder pressed, a disc split, a lump dropped.

use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass, Pressure};
use measure::source::Law;

/// Standard acceleration of free fall, m/s²: `iso-80000-3`.
const FALL: f64 = 9.806_65;

/// Strength of a cylinder pressed between two plates.
pub const CRUSHING: Law = Law {
    name: "sand::strength::crushing",
    formula: "σ = m g / A",
    range: "m on the scale when it gives way; as high as wide, both ends flat",
    sources: &["shop-handbook-figures"],
};

/// Strength in tension of a disc pressed on its rim.
pub const SPLITTING: Law = Law {
    name: "sand::strength::splitting",
    formula: "σ_t = 2 m g / (π D H)",
    range: "m on the scale when it splits along its diameter; for rough ends",
    sources: &["shop-handbook-figures"],
};

/// Strength index of a lump dropped from higher and higher.
pub const DROP: Law = Law {
    name: "sand::strength::drop",
    formula: "e = ρ g h",
    range: "an index of one heap on one floor, no strength: the work in a litre of lump when it \
            breaks",
    sources: &["henley-moulds"],
};

/// Ramming that matches the laboratory's three blows.
pub const EQUAL_RAMMING: Law = Law {
    name: "sand::strength::equal_ramming",
    formula: "n m g h = 0.092 J/cm³ V",
    range: "any round tube; a 6.35 kg weight falls 50.8 mm three times on 103 cm³",
    sources: &["afs-mold-core-handbook"],
};

/// How much riddled sand sinks under the rammer.
pub const COMPACTABILITY: Law = Law {
    name: "sand::strength::compactability",
    formula: "C = (h_0 − h) / h_0",
    range: "120 mm of loose riddled sand struck off, three standard blows",
    sources: &["afs-mold-core-handbook"],
};

/// Work in each cubic centimetre of the laboratory's rammed specimen, J: three times 6.35 kg from
/// 50.8 mm on 102.96 cm³.
pub const RAMMING_WORK: f64 = 0.092;

/// Compactability at which sand moulds by hand: `shop-handbook-figures`, from memory.
pub const GOOD_COMPACTABILITY: (f64, f64) = (0.35, 0.50);

/// Strength of a pressed cylinder. Law: [`CRUSHING`].
pub fn crushing(load: Mass, face: Area) -> Pressure {
    Pressure::from_pa(load.as_kg() * FALL / face.as_m2())
}

/// Strength of a split disc. Law: [`SPLITTING`].
pub fn splitting(load: Mass, diameter: Length, height: Length) -> Pressure {
    let face = std::f64::consts::PI * diameter.as_m() * height.as_m();
    Pressure::from_pa(2.0 * load.as_kg() * FALL / face)
}

/// Work in a volume of lump when it breaks. Law: [`DROP`].
pub fn drop(lump: Density, height: Length) -> Pressure {
    Pressure::from_pa(lump.as_kg_per_m3() * FALL * height.as_m())
}

/// Height of fall for so many blows of a weight on a rammed volume. Law: [`EQUAL_RAMMING`].
pub fn equal_ramming(rammed: Volume, weight: Mass, blows: f64) -> Length {
    Length::from_m(RAMMING_WORK * rammed.as_cm3() / (blows * weight.as_kg() * FALL))
}

/// Share by which loose sand sinks. Law: [`COMPACTABILITY`].
pub fn compactability(loose: Length, rammed: Length) -> f64 {
    (loose - rammed) / loose
}
