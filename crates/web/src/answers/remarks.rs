//! Remarks, with their weight in a word and the block that they stand beside.

use job::remark::{Level, Remark};
use job::typed_key::{SHOP_KEYS, TYPED_KEYS};
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
    /// Lines that the advice names, to be filled in.
    pub leads: Vec<LeadAnswer>,
}

/// A line that an advice names.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, ToSchema)]
pub struct LeadAnswer {
    /// Its key, by which it is known on its sheet.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// The sheet on which it stands.
    pub on: LeadsTo,
}

/// The sheet on which a line stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "lowercase")]
pub enum LeadsTo {
    /// That of the job.
    Job,
    /// That of the sand.
    Sand,
    /// That of the shop.
    Shop,
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
    let answer = |remark: &Remark| {
        let advice = remark.advice_on_sheet(words);
        RemarkAnswer {
            level: remark.level,
            weight: weight(remark.level, words),
            block: block_of(remark.about).to_owned(),
            words: words.say(&remark.words),
            leads: leads(&advice, words),
            advice,
        }
    };
    remarks.iter().map(answer).collect()
}

/// The lines that an advice names: between marks, as they are called on their sheet.
fn leads(advice: &str, words: Language) -> Vec<LeadAnswer> {
    let of_job = TYPED_KEYS.iter().map(|key| (key, LeadsTo::Job));
    let of_shop = SHOP_KEYS
        .iter()
        .map(|key| match key.path.starts_with("heap.") {
            true => (key, LeadsTo::Sand),
            false => (key, LeadsTo::Shop),
        });
    let named = of_job.chain(of_shop).filter_map(|(key, on)| {
        let label = words.word(key.label);
        let is_named = between_marks(advice).any(|marked| marked == label);
        is_named.then(|| LeadAnswer {
            key: key.path.to_owned(),
            label,
            on,
        })
    });
    named.collect()
}

/// What stands between marks, as any of the languages sets them.
fn between_marks(text: &str) -> impl Iterator<Item = &str> {
    let opened = text.split(['“', '«']).skip(1);
    opened.filter_map(|rest| rest.split_once(['”', '»']).map(|(marked, _)| marked.trim()))
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
