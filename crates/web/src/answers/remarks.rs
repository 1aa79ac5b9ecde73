//! Remarks, with their weight in a word and the block that they stand beside.

use job::remark::{Level, Remark};
use job::words::Language;
use serde::Serialize;
use utoipa::ToSchema;

/// A remark.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct RemarkAnswer {
    /// How weighty it is.
    #[schema(value_type = Weight)]
    pub level: Level,
    /// The weight in a word of the shop's language.
    pub weight: String,
    /// The block that it stands beside.
    pub block: String,
    /// What was found.
    pub words: String,
    /// What to do about it.
    pub advice: String,
}

/// Weights of remarks, as they are described: [`Level`] itself knows no page.
#[derive(Clone, Debug, Serialize, ToSchema)]
#[serde(rename_all = "lowercase")]
pub enum Weight {
    /// Reason not to pour.
    Stop,
    /// To be looked at.
    Caution,
    /// Good to know.
    Note,
}

/// Remarks in the words of a shop.
pub fn remarks(remarks: &[Remark], words: Language) -> Vec<RemarkAnswer> {
    remarks
        .iter()
        .map(|remark| RemarkAnswer {
            level: remark.level,
            weight: weight(remark.level, words),
            block: block_of(remark.about).to_owned(),
            words: words.say(&remark.words),
            advice: remark.advice_on_sheet(words),
        })
        .collect()
}

/// A weight in a word.
pub fn weight(level: Level, words: Language) -> String {
    words.word(match level {
        Level::Stop => "told-stop",
        Level::Caution => "told-caution",
        Level::Note => "told-note",
    })
}

/// The block beside which a remark stands.
fn block_of(about: &str) -> &'static str {
    match about {
        "metal" | "charge" | "crucible" => "block-metal",
        "sand" | "flask" => "block-sand",
        "mould" | "gates" | "feeder" | "feeding" | "core" => "block-mould",
        "weights" => "block-weights",
        "pour" | "opening" => "block-pour",
        _ => "block-pattern",
    }
}
