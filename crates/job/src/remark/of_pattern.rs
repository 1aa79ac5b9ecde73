//! The words for what is found in the pattern.

use measure::band::Band;
use measure::length::Length;
use measure::text::rounded;

use super::{Level, Remark};

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
}

impl From<PatternFact> for Remark {
    fn from(fact: PatternFact) -> Remark {
        match fact {
            PatternFact::SealedVoid { count } => Remark::new(
                "enclosed_void",
                Level::Stop,
                "pattern",
                format!("{count} void(s) sealed inside the part cannot be moulded"),
                "no core can be carried in or shaken out: open them to the outside or fill them",
            ),
            PatternFact::ThinWall { wall, least, place } => Remark::new(
                "thin_wall",
                Level::Caution,
                "pattern",
                format!(
                    "walls of about {} mm; this metal commonly wants {} mm in sand",
                    rounded(wall.as_mm(), 2),
                    rounded(least.as_mm(), 2)
                ),
                "thicken the wall, gate close to it, or pour at the hot end",
            )
            .at(place),
            PatternFact::WallsUnmeasured { share } => Remark::new(
                "walls_unmeasured",
                Level::Caution,
                "pattern",
                format!(
                    "walls on {} % of the surface are too thin for the cells used here",
                    rounded(share * 100.0, 2)
                ),
                "measure them by hand; they are left out of the sections",
            ),
            PatternFact::ContractionDisputed {
                from_to: [low, high],
                sources,
            } => Remark::new(
                "contraction_disputed",
                Level::Note,
                "pattern",
                format!(
                    "{sources} sources put the contraction at {} to {} %",
                    rounded(low * 100.0, 3),
                    rounded(high * 100.0, 3)
                ),
                "measure your next casting and write metal.contraction in the job",
            ),
            PatternFact::WornOriginal { longest, comes_out } => Remark::new(
                "worn_original",
                Level::Caution,
                "pattern",
                format!(
                    "moulded as it is, an original of {} mm gives {} to {} mm: it has contracted \
                     once already",
                    rounded(longest.as_mm(), 4),
                    rounded(comes_out.low().as_mm(), 4),
                    rounded(comes_out.high().as_mm(), 4)
                ),
                "build its faces up by contraction, wear and machining before it is moulded; old \
                 paint may hold lead: do not sand it dry",
            ),
            PatternFact::MachinedFaces => Remark::new(
                "machined_faces",
                Level::Note,
                "pattern",
                "the stock for machining is not in the mesh as far as this plan knows".to_owned(),
                "add it to each machined face, more to those under the cope; better, turn the \
                 most important face down",
            ),
            PatternFact::RappingNotCounted { longest } => Remark::new(
                "rapping_not_counted",
                Level::Note,
                "pattern",
                format!(
                    "at {} mm rapping does not make up for contraction",
                    rounded(longest.as_mm(), 3)
                ),
                "make the pattern larger by the contraction in full; above some 75 mm rapping is \
                 too little beside it",
            ),
            PatternFact::NotLookedAt => Remark::new(
                "not_looked_at",
                Level::Note,
                "pattern",
                "draft, undercuts, parting and core prints are not looked at here".to_owned(),
                "try the pattern in dry sand before it is rammed up",
            ),
        }
    }
}
