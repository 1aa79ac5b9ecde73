//! Factors on the plan's own figures that the shop's log has taught and the founder has accepted:
//! `[learned.freezing]` and its like in `shop.toml`, where they are seen and may be struck out.

use measure::band::Band;
use measure::text::rounded;
use serde::Deserialize;

/// Factors on figures of the plan; a figure without one stays as books have it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Learned {
    /// Time in which a section freezes, sand and its contact with the metal together.
    pub freezing: Option<Band<f64>>,
    /// Speed at which the mould fills.
    pub filling: Option<Band<f64>>,
    /// Time in which sand dries.
    pub drying: Option<Band<f64>>,
    /// Efficiency of the furnace.
    pub efficiency: Option<Band<f64>>,
    /// What passes between metal and sand for each kelvin, over the book's, once told apart from
    /// the sand.
    pub contact: Option<Band<f64>>,
}

/// The words under which a figure carries the factor that it was worked out with, so that whoever
/// compares it with what was measured can take it off again.
pub const OWN_FACTOR: &str = "own factor";

/// Factors as typed in `shop.toml`.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct LearnedFile {
    freezing: Option<FactorFile>,
    filling: Option<FactorFile>,
    drying: Option<FactorFile>,
    efficiency: Option<FactorFile>,
    contact: Option<FactorFile>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct FactorFile {
    factor: f64,
    low: f64,
    high: f64,
    /// For people: the entries of the log it rests on.
    #[serde(rename = "rests_on")]
    _rests_on: Option<String>,
}

/// How far a shop may be off its books. Further, and something else was measured.
const MOST: f64 = 5.0;

impl LearnedFile {
    /// What is meant, or what is wrong, in a sentence.
    pub(crate) fn meant(self) -> Result<Learned, String> {
        Ok(Learned {
            freezing: factor("freezing", self.freezing)?,
            filling: factor("filling", self.filling)?,
            drying: factor("drying", self.drying)?,
            efficiency: factor("efficiency", self.efficiency)?,
            contact: factor("contact", self.contact)?,
        })
    }
}

/// A factor as it stands beside a figure.
pub fn shown(factor: &Band<f64>) -> String {
    rounded(factor.likely(), 4)
}

fn factor(key: &str, typed: Option<FactorFile>) -> Result<Option<Band<f64>>, String> {
    let Some(FactorFile {
        factor, low, high, ..
    }) = typed
    else {
        return Ok(None);
    };
    let sound = 1.0 / MOST <= low && low <= factor && factor <= high && high <= MOST;
    if !sound {
        return Err(format!(
            "learned.{key}: low {low}, factor {factor} and high {high} have to rise, between 0.2 \
             and 5; take it from oddside log learn"
        ));
    }
    Ok(Some(Band::new(low, factor, high)))
}
