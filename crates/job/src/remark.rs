//! Remarks: what the founder is told beside the figures, with the advice that goes with it.
//!
//! Rooms below report typed facts. Here each gets its weight and the id of its message; the words
//! stand in `data/words/` and are chosen where the remark is shown.

use schemars::JsonSchema;
use serde::Serialize;

use crate::words::Language;
use crate::words::said::{Given, Said};

pub mod of_charge;
pub mod of_core;
pub mod of_feeding;
pub mod of_gating;
pub mod of_mesh;
pub mod of_metal;
pub mod of_mould;
pub mod of_opening;
pub mod of_part;
pub mod of_pattern;
pub mod of_solved;

/// A remark, to be put into the words of any language.
#[derive(Clone, Debug, PartialEq)]
pub struct Remark {
    /// Short fixed name of the fact: the id of its message as far as the first hyphen.
    pub code: &'static str,
    /// How much it weighs.
    pub level: Level,
    /// What it is about: "mesh", "metal", "flask".
    pub about: &'static str,
    /// Where, in mm of the mesh as it is drawn, or of the mould for facts of the mould.
    pub place: Option<[f64; 3]>,
    /// What was found.
    pub words: Said,
    /// What to do about it.
    pub advice: Said,
}

/// How much a remark weighs, heaviest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// Not to be poured as it stands.
    Stop,
    /// Likely to hurt the casting or the founder if not minded.
    Caution,
    /// Worth knowing.
    Note,
}

/// A remark as files carry it, in British words.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[schemars(rename = "Remark")]
pub struct RemarkFile {
    /// Short fixed name of the fact.
    pub code: String,
    /// How much it weighs.
    pub level: Level,
    /// What it is about: "mesh", "metal", "flask".
    pub about: String,
    /// Where, in mm of the mesh as it is drawn, or of the mould for facts of the mould.
    pub place: Option<[f64; 3]>,
    /// What was found.
    pub words: String,
    /// What to do about it.
    pub advice: String,
}

impl Remark {
    /// What to do about it where everything is typed on a sheet: its place there instead of the key
    /// of a file.
    pub fn advice_on_sheet(&self, words: Language) -> String {
        let id = self.advice.id().strip_suffix(".advice").unwrap_or_default();
        let id = format!("{id}.sheet");
        let shown = words.say(&self.advice.under(id.clone()));
        match shown == id {
            true => words.say(&self.advice),
            false => shown,
        }
    }

    fn stop(id: &'static str, about: &'static str) -> Remark {
        Remark::new(id, Level::Stop, about)
    }

    fn caution(id: &'static str, about: &'static str) -> Remark {
        Remark::new(id, Level::Caution, about)
    }

    fn note(id: &'static str, about: &'static str) -> Remark {
        Remark::new(id, Level::Note, about)
    }

    /// A remark whose message goes by this id; its advice is an attribute of that message.
    fn new(id: &'static str, level: Level, about: &'static str) -> Remark {
        Remark {
            code: id.split_once('-').map_or(id, |(code, _)| code),
            level,
            about,
            place: None,
            words: Said::new(id),
            advice: Said::new(format!("{id}.advice")),
        }
    }

    /// Something that its message speaks of.
    fn with(mut self, name: &'static str, given: impl Into<Given>) -> Remark {
        let given = given.into();
        self.words = self.words.with(name, given.clone());
        self.advice = self.advice.with(name, given);
        self
    }

    fn weighing(self, level: Level) -> Remark {
        Remark { level, ..self }
    }

    /// Other advice than that of its message.
    fn advised(self, advice: Said) -> Remark {
        Remark { advice, ..self }
    }

    fn at(mut self, place: Option<[f64; 3]>) -> Remark {
        // A tenth of a millimetre finds a place on a part; more digits are noise.
        self.place = place.map(|point| point.map(|x| (x * 10.0).round() / 10.0 + 0.0));
        self
    }

    /// The remark as files carry it.
    pub fn file(&self) -> RemarkFile {
        RemarkFile {
            code: self.code.to_owned(),
            level: self.level,
            about: self.about.to_owned(),
            place: self.place,
            words: Language::Uk.say(&self.words),
            advice: Language::Uk.say(&self.advice),
        }
    }
}

/// The weightiest first, otherwise in the order in which they came.
pub fn sorted(mut remarks: Vec<Remark>) -> Vec<Remark> {
    remarks.sort_by_key(|remark| remark.level);
    remarks
}
