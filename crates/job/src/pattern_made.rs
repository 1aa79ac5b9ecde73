//! The pattern as it is meant: what it is made from, and how it leaves the sand.

use measure::length::Length;
use measure::share::Contraction;

use crate::job_file::{PartFile, PatternFrom};

/// How the pattern is made and used.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PatternMade {
    /// What it is made from.
    pub from: PatternFrom,
    /// Whether faces of the casting are machined.
    pub machined: bool,
    /// Whether it is rapped well before it is drawn.
    pub rapped: bool,
    /// Contraction of the metal it is itself cast in.
    pub pattern_contraction: Option<Contraction>,
    /// Height of the layers it is printed in.
    pub printed: Option<Length>,
    /// What of it does not draw, in the founder's words.
    pub cannot_draw: Vec<String>,
}

impl PatternMade {
    pub(crate) fn of(file: &PartFile) -> PatternMade {
        PatternMade {
            from: file.from.unwrap_or_default(),
            machined: file.machined,
            rapped: file.rapped,
            pattern_contraction: file.pattern_contraction.clone(),
            printed: file.printed.as_ref().map(|layer| layer.value),
            cannot_draw: file.cannot_draw.clone(),
        }
    }
}
