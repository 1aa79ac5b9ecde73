//! What is found in the pattern.

use measure::band::Band;
use measure::length::Length;
use measure::text::rounded;

use super::Remark;

/// What is found in the pattern.
#[derive(Clone, Debug, PartialEq)]
pub enum PatternFact {
    /// The part has voids that no core can reach.
    SealedVoid {
        /// How many.
        count: usize,
    },
    /// The thinnest wall is thinner than the metal commonly runs.
    ThinWall {
        /// The wall.
        wall: Length,
        /// What the metal commonly runs into.
        least: Length,
        /// Where, if that is known.
        place: Option<[f64; 3]>,
    },
    /// Walls too thin to be measured with the cells used.
    WallsUnmeasured {
        /// Share of the surface.
        share: f64,
    },
    /// The sources of the contraction differ.
    ContractionDisputed {
        /// Lowest and highest, as shares.
        from_to: [f64; 2],
        /// How many sources.
        sources: usize,
    },
    /// A worn original is to be moulded as it is.
    WornOriginal {
        /// Its longest side.
        longest: Length,
        /// What it gives.
        comes_out: Band<Length>,
    },
    /// Faces are machined, and which ones lie uppermost is the founder's to say.
    MachinedFaces,
    /// Too large for rapping to be counted on.
    RappingNotCounted {
        /// The longest side.
        longest: Length,
    },
    /// What this plan does not look at.
    NotLookedAt,
    /// Skin that stands upright in the draw.
    NoDraft {
        /// Share of the skin.
        share: f64,
    },
    /// A printed pattern, whose layers hold the sand.
    Printed {
        /// Height of a layer.
        layer: Length,
    },
    /// Something of the part does not draw, as the founder says.
    CannotDraw {
        /// What.
        what: String,
    },
}

impl From<PatternFact> for Remark {
    fn from(fact: PatternFact) -> Remark {
        let mm = |length: Length, figures| format!("{} mm", rounded(length.as_mm(), figures));
        match fact {
            PatternFact::SealedVoid { count } => {
                Remark::stop("enclosed_void-plan", "pattern").with("count", count)
            }
            PatternFact::ThinWall { wall, least, place } => Remark::caution("thin_wall", "pattern")
                .with("wall", mm(wall, 2))
                .with("least", mm(least, 2))
                .at(place),
            PatternFact::WallsUnmeasured { share } => {
                Remark::caution("walls_unmeasured", "pattern")
                    .with("share", format!("{} %", rounded(share * 100.0, 2)))
            }
            PatternFact::ContractionDisputed {
                from_to: [low, high],
                sources,
            } => Remark::note("contraction_disputed", "pattern")
                .with("sources", sources)
                .with("low", rounded(low * 100.0, 3))
                .with("high", format!("{} %", rounded(high * 100.0, 3))),
            PatternFact::WornOriginal { longest, comes_out } => {
                Remark::caution("worn_original", "pattern")
                    .with("longest", mm(longest, 4))
                    .with("low", rounded(comes_out.low().as_mm(), 4))
                    .with("high", mm(comes_out.high(), 4))
            }
            PatternFact::MachinedFaces => Remark::note("machined_faces", "pattern"),
            PatternFact::RappingNotCounted { longest } => {
                Remark::note("rapping_not_counted", "pattern").with("longest", mm(longest, 3))
            }
            PatternFact::NoDraft { share } => Remark::note("no_draft", "pattern")
                .with("share", format!("{} %", rounded(share * 100.0, 2))),
            PatternFact::Printed { layer } => {
                Remark::caution("print_lines", "pattern").with("layer", mm(layer, 2))
            }
            PatternFact::CannotDraw { what } => {
                Remark::caution("cannot_draw", "pattern").with("what", what)
            }
            PatternFact::NotLookedAt => Remark::note("not_looked_at", "pattern"),
        }
    }
}
