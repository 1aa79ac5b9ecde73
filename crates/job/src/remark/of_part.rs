//! How a part without a mesh is known.

use measure::length::Volume;
use measure::text::rounded;

use super::Remark;

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
        match fact {
            PartFact::SolidsApart { bodies } => {
                Remark::caution("solids_apart", "solids").with("bodies", bodies)
            }
            PartFact::SolidAddsNothing { number } => {
                Remark::caution("solid_adds_nothing", "solids").with("number", number)
            }
            PartFact::SolidTakesNothing { number } => {
                Remark::caution("solid_takes_nothing", "solids").with("number", number)
            }
            PartFact::VolumeGuessed {
                from_to: [low, high],
            } => Remark::caution("volume_guessed", "part")
                .with("low", rounded(low.as_cm3(), 2))
                .with("high", format!("{} cm³", rounded(high.as_cm3(), 2))),
            PartFact::VolumeByWeight { off } => Remark::note("volume_by_weight", "part")
                .with("off", format!("{} %", rounded(off * 100.0, 2))),
            PartFact::SizesOnly { joint_asked: true } => Remark::caution("sizes_only", "part"),
            PartFact::SizesOnly { joint_asked: false } => {
                Remark::caution("sizes_only-joint", "part")
            }
        }
    }
}
