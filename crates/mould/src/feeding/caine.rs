//! Caine's curve: how much longer a feeder has to last, the less there is of it.
//!
//! A feeder of a given diameter loses part of itself to the casting; what is left is smaller and
//! freezes sooner. The curve joins the rule of modulus and the rule of volume in one.

use std::sync::LazyLock;

use measure::length::{Length, Volume};
use measure::source::Law;
use serde::Deserialize;

use crate::feeding::feeder::{CoolingEnds, cylinder_modulus};

/// How many times longer to freeze a feeder of this share of the casting has to be.
pub const CAINE: Law = Law {
    name: "mould::feeding::caine::caine",
    formula: "X = a / (Y − b) + c",
    range: "X modulus of feeder over casting, Y volume of feeder over casting, Y above b; drawn \
            for steel, the constants of other metals are few and old",
    sources: &["feeding-course-slides", "caine-constants-memory"],
};

/// Diameter of the feeder that lies on the curve.
pub const DIAMETER_BY_CAINE: Law = Law {
    name: "mould::feeding::caine::diameter_by_caine",
    formula: "M_feeder / M_casting = a / (V_feeder / V_casting − b) + c, solved for D",
    range: "the casting frozen as one body; a cylinder of given H/D",
    sources: &["feeding-course-slides", "caine-constants-memory"],
};

/// The constants of one metal.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CaineConstants {
    /// The metal: "aluminium", "grey iron".
    pub name: String,
    /// Names of the alloys they go for.
    pub alloys: Vec<String>,
    /// How the demand rises as the feeder grows small.
    pub a: f64,
    /// Share that the casting draws from the feeder.
    pub b: f64,
    /// How much longer a feeder without limit has to last.
    pub c: f64,
    /// Key of the source.
    pub source: String,
}

/// The constants of every metal in the table.
pub fn caine_metals() -> &'static [CaineConstants] {
    &CONSTANTS
}

/// The constants of a metal, where the handbooks have any.
pub fn caine_of(metal: &str) -> Option<&'static CaineConstants> {
    CONSTANTS.iter().find(|row| row.name == metal)
}

/// The constants that go for an alloy of the table, where there are any.
pub fn caine_for_alloy(alloy: &str) -> Option<&'static CaineConstants> {
    let goes = |row: &&CaineConstants| row.alloys.iter().any(|name| name == alloy);
    CONSTANTS.iter().find(goes)
}

/// Modulus of feeder over casting that a feeder of this share of the casting's volume needs, or
/// nothing where it is too small at any modulus. Law: [`CAINE`].
pub fn caine(share: f64, constants: &CaineConstants) -> Option<f64> {
    (share > constants.b).then(|| constants.a / (share - constants.b) + constants.c)
}

/// Diameter on the curve, or nothing where no diameter comes near. Law: [`DIAMETER_BY_CAINE`].
pub fn diameter_by_caine(
    casting: Volume,
    modulus: Length,
    height_over_diameter: f64,
    ends: CoolingEnds,
    constants: &CaineConstants,
) -> Option<Length> {
    let volume = |d: Length| d * d * d * (height_over_diameter * std::f64::consts::PI / 4.0);
    let lasts = |d: Length| {
        let has = cylinder_modulus(d, d * height_over_diameter, ends) / modulus;
        caine(volume(d) / casting, constants).is_some_and(|needs| has >= needs)
    };
    // Both the modulus it has and the ease of what it needs grow with the diameter, so that there
    // is one crossing; doubling finds it, halving narrows it.
    let mut high = (0..DOUBLINGS)
        .map(|times| modulus * 2f64.powi(times))
        .find(|&d| lasts(d))?;
    let mut low = Length::ZERO;
    for _ in 0..HALVINGS {
        let middle = (low + high) * 0.5;
        match lasts(middle) {
            true => high = middle,
            false => low = middle,
        }
    }
    Some(high)
}

/// Doublings from the modulus of the casting to more than any feeder.
const DOUBLINGS: i32 = 40;

/// Halvings that leave less than a millionth of a millimetre.
const HALVINGS: usize = 60;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    metal: Vec<CaineConstants>,
}

static CONSTANTS: LazyLock<Vec<CaineConstants>> = LazyLock::new(|| {
    let table: Result<Table, _> = toml::from_str(include_str!("../../data/feeding/caine.toml"));
    table.map(|table| table.metal).unwrap_or_default()
});
