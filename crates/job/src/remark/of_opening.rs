//! What is found about opening the mould.

use measure::flow::Duration;
use measure::text::rounded;

use super::Remark;

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
    /// Thick and thin sections in one piece may crack each other.
    OpenLate {
        /// When it may be opened, from the end of the pour.
        open: Duration,
    },
}

impl From<OpeningFact> for Remark {
    fn from(fact: OpeningFact) -> Remark {
        match fact {
            OpeningFact::Hot { open, oil } => {
                let id = if oil { "hot_mould-oil" } else { "hot_mould" };
                Remark::caution(id, "opening").with("open", minutes(open))
            }
            OpeningFact::OpenLate { open } => {
                Remark::caution("open_late", "opening").with("open", minutes(open))
            }
            OpeningFact::NeverCold => Remark::caution("never_cold", "opening"),
        }
    }
}

fn minutes(time: Duration) -> String {
    format!("{} min", rounded(time.as_min().ceil(), 3))
}
