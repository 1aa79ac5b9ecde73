//! Remarks: what the founder is told beside the figures, with the advice that goes with it.
//!
//! Rooms below report typed facts; only here do they get their words.

use schemars::JsonSchema;
use serde::Serialize;

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

/// A remark, the same everywhere: on paper, in the terminal, in files.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Remark {
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

impl Remark {
    fn new(code: &str, level: Level, about: &str, words: String, advice: &str) -> Remark {
        Remark {
            code: code.to_owned(),
            level,
            about: about.to_owned(),
            place: None,
            words,
            advice: advice.to_owned(),
        }
    }

    fn at(mut self, place: Option<[f64; 3]>) -> Remark {
        // A tenth of a millimetre finds a place on a part; more digits are noise.
        self.place = place.map(|point| point.map(|x| (x * 10.0).round() / 10.0 + 0.0));
        self
    }
}

/// The weightiest first, otherwise in the order in which they came.
pub fn sorted(mut remarks: Vec<Remark>) -> Vec<Remark> {
    remarks.sort_by_key(|remark| remark.level);
    remarks
}
