//! The words for what is found about opening the mould.

use measure::flow::Duration;
use measure::text::rounded;

use super::{Level, Remark};

/// What is found about opening the mould.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OpeningFact {
    /// It is hot, and for how long.
    Hot {
        /// When it may be opened, from the end of the pour.
        open: Duration,
        /// Whether oil binds the sand.
        oil: bool,
    },
    /// It is not cold in a fortnight.
    NeverCold,
}

impl From<OpeningFact> for Remark {
    fn from(fact: OpeningFact) -> Remark {
        match fact {
            OpeningFact::Hot { open, oil } => Remark::new(
                "hot_mould",
                Level::Caution,
                "opening",
                format!(
                    "opened before {} min it may be liquid or red inside{}",
                    rounded(open.as_min().ceil(), 3),
                    if oil {
                        ", and oil in hot sand flares"
                    } else {
                        ""
                    }
                ),
                "count from the last of the pour; tongs, gloves, boots; never water on it",
            ),
            OpeningFact::NeverCold => Remark::new(
                "never_cold",
                Level::Caution,
                "opening",
                "so much metal in so little sand is not cold in a fortnight".to_owned(),
                "take a larger flask, or have an experienced founder lay it open",
            ),
        }
    }
}
