//! The words for how a part without a mesh is known.

use measure::length::Volume;
use measure::text::rounded;

use super::{Level, Remark};

/// What is found in a part built from solids, weighed, or known by its sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PartFact {
    /// The solids do not all touch.
    SolidsApart {
        /// Separate bodies they make.
        bodies: usize,
    },
    /// A solid lies wholly in those before it.
    SolidAddsNothing {
        /// Which, counted from one.
        number: usize,
    },
    /// A solid takes away where nothing stands.
    SolidTakesNothing {
        /// Which, counted from one.
        number: usize,
    },
    /// The metal is guessed from sizes.
    VolumeGuessed {
        /// Least and most.
        from_to: [Volume; 2],
    },
    /// The metal is known by weight, and badly.
    VolumeByWeight {
        /// By which share it may be off.
        off: f64,
    },
    /// Walls, shadow and joint are known by sizes only.
    SizesOnly {
        /// Whether the joint was asked for.
        joint_asked: bool,
    },
}

impl From<PartFact> for Remark {
    fn from(fact: PartFact) -> Remark {
        let caution =
            |code, about, words, advice| Remark::new(code, Level::Caution, about, words, advice);
        match fact {
            PartFact::SolidsApart { bodies } => caution(
                "solids_apart",
                "solids",
                format!("the solids make {bodies} separate bodies"),
                "those that belong together have to touch: let one reach a millimetre into the next",
            ),
            PartFact::SolidAddsNothing { number } => caution(
                "solid_adds_nothing",
                "solids",
                format!("solid {number} lies wholly in what stands before it"),
                "check its place and its sizes; it adds no metal",
            ),
            PartFact::SolidTakesNothing { number } => caution(
                "solid_takes_nothing",
                "solids",
                format!("solid {number} takes away where nothing stands"),
                "check its place; it acts only on the solids listed before it",
            ),
            PartFact::VolumeGuessed {
                from_to: [low, high],
            } => caution(
                "volume_guessed",
                "part",
                format!(
                    "without a weight the metal is a guess: {} to {} cm³",
                    rounded(low.as_cm3(), 2),
                    rounded(high.as_cm3(), 2)
                ),
                "weigh the pattern, best in water, and write [part.displaced]; melt for the high \
                 end until then",
            ),
            PartFact::VolumeByWeight { off } => Remark::new(
                "volume_by_weight",
                Level::Note,
                "part",
                format!(
                    "by weight alone the metal may be off by {} %",
                    rounded(off * 100.0, 2)
                ),
                "weighing in water would narrow it to some two per cent: write [part.displaced]",
            ),
            PartFact::SizesOnly { joint_asked } => Remark::new(
                "sizes_only",
                Level::Caution,
                "part",
                match joint_asked {
                    true => "walls, shadow and moduli rest on five sizes, not on a shape",
                    false => {
                        "walls, shadow and moduli rest on five sizes, not on a shape; the joint is \
                         taken half way up"
                    }
                }
                .to_owned(),
                "their bands are wide: go by the side of them that is safe, and write mould.joint",
            ),
        }
    }
}
