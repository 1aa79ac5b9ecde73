//! How hot to pour, by the heaviness of the section.

use measure::band::Band;
use measure::heat::{Temperature, TemperatureDifference};
use measure::length::Length;
use measure::source::Law;

use crate::alloy::Alloy;

/// Modulus up to which a section is light: a wall of about 6 mm. Common practice, no source.
pub const LIGHT_UP_TO: Length = Length::from_mm(3.0);

/// Modulus from which a section is heavy: a wall of about 20 mm. Common practice, no source.
pub const HEAVY_FROM: Length = Length::from_mm(10.0);

/// Pouring temperatures between those of light and of heavy sections.
///
/// The tables say "light" and "heavy" without saying where one ends. Taken here: light to a
/// modulus of 3 mm, heavy from 10 mm. Were the marks lower, thin walls of 6 to 8 mm would be
/// poured too cold and run short; were they higher, thick bosses would be poured too hot, with
/// coarse grain, gas and more to feed. Between the marks the band slides in proportion.
pub const POURING_BAND: Law = Law {
    name: "metal::pouring_temperature::pouring_band",
    formula: "T = T_light + (T_heavy − T_light) s,  \
              s = (M − 3 mm) / (10 mm − 3 mm), kept in 0 … 1",
    range: "hand-rammed sand moulds; the marks of 3 and 10 mm are a judgement",
    sources: &["common-practice"],
};

/// How far above its liquidus the metal is poured.
pub const SUPERHEAT: Law = Law {
    name: "metal::pouring_temperature::superheat",
    formula: "ΔT = T_pour − T_liquidus",
    range: "below nought the metal is already freezing in the crucible",
    sources: &["common-practice"],
};

/// Which table a section belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// Modulus up to [`LIGHT_UP_TO`].
    Light,
    /// Between the two tables.
    Between,
    /// Modulus from [`HEAVY_FROM`].
    Heavy,
}

impl Section {
    /// The heaviness of a section of this modulus.
    pub fn of(modulus: Length) -> Section {
        match heaviness(modulus) {
            share if share <= 0.0 => Section::Light,
            share if share >= 1.0 => Section::Heavy,
            _ => Section::Between,
        }
    }
}

/// Pouring temperatures of an alloy for a section of this modulus. Law: [`POURING_BAND`].
pub fn pouring_band(alloy: &Alloy, modulus: Length) -> Band<Temperature> {
    let (light, heavy) = (&alloy.pouring_light.band, &alloy.pouring_heavy.band);
    let share = heaviness(modulus);
    let between = |light: Temperature, heavy: Temperature| light + (heavy - light) * share;
    Band::new(
        between(light.low(), heavy.low()),
        between(light.likely(), heavy.likely()),
        between(light.high(), heavy.high()),
    )
}

/// How far above the liquidus the metal is poured; below nought it is already freezing.
/// Law: [`SUPERHEAT`].
pub fn superheat(pouring: Temperature, liquidus: Temperature) -> TemperatureDifference {
    pouring - liquidus
}

/// Nought for a light section, one for a heavy one.
fn heaviness(modulus: Length) -> f64 {
    ((modulus - LIGHT_UP_TO) / (HEAVY_FROM - LIGHT_UP_TO)).clamp(0.0, 1.0)
}
