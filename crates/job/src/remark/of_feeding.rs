//! The words for what is found in feeding and filling.

use measure::flow::Duration;
use measure::length::Length;
use measure::text::rounded;

use super::{Level, Remark};

/// What is found in feeding and filling.
#[derive(Clone, Debug, PartialEq)]
pub enum FeedingFact {
    /// No feeder, the casting being thin.
    NoFeederThin,
    /// No feeder, the iron swelling in a firm mould.
    NoFeederIron {
        /// The test that showed it.
        shown: String,
    },
    /// A feeder is planned for iron although it may feed itself.
    IronMightFeedItself,
    /// No plain feeder can hold enough.
    FeederImpossible,
    /// The feeder is higher than the cope.
    FeederHigherThanCope {
        /// Its height.
        height: Length,
        /// Cope.
        cope: Length,
    },
    /// More than one heavy section.
    MoreHeavySections {
        /// How many besides the one fed.
        count: usize,
        /// The next heaviest.
        place: [f64; 3],
    },
    /// The thinnest wall freezes while the mould still fills.
    FillMustHurry,
    /// No running system fills the thinnest wall before it freezes.
    FillsTooLate {
        /// The wall.
        wall: Length,
        /// It freezes in.
        freezes: Duration,
    },
}

impl From<FeedingFact> for Remark {
    fn from(fact: FeedingFact) -> Remark {
        let note = |code, words: &str, advice| {
            Remark::new(code, Level::Note, "feeder", words.to_owned(), advice)
        };
        match fact {
            FeedingFact::NoFeederThin => note(
                "feeder_none",
                "no feeder: every section is thin enough to be fed by its gate",
                "if a boss sinks after all, feed that boss next time",
            ),
            FeedingFact::NoFeederIron { shown } => note(
                "feeder_none",
                &format!("no feeder: iron of this carbon swells in a mould shown firm by: {shown}"),
                "holds only while every mould is as firm; a heavy hub may sink: feed or chill it",
            ),
            FeedingFact::IronMightFeedItself => note(
                "feeder_iron",
                "a feeder is planned: no test shows the mould firm, or the carbon is unknown",
                "write mould.firm and metal.carbon_equivalent once you know them",
            ),
            FeedingFact::FeederImpossible => Remark::new(
                "feeder_impossible",
                Level::Caution,
                "feeder",
                "shrinkage is more than a plain feeder of any size can give".to_owned(),
                "use an insulating sleeve, several feeders, or chills; ask an experienced founder",
            ),
            FeedingFact::FeederHigherThanCope { height, cope } => Remark::new(
                "feeder_high",
                Level::Caution,
                "feeder",
                format!(
                    "the feeder is {} mm high and the cope {} mm",
                    rounded(height.as_mm(), 2),
                    rounded(cope.as_mm(), 3)
                ),
                "set a ring of sand on the cope, or take a deeper cope",
            ),
            FeedingFact::MoreHeavySections { count, place } => Remark::new(
                "more_heavy_sections",
                Level::Caution,
                "feeder",
                format!("{count} more section(s) nearly as heavy as the one fed, this the next"),
                "each freezes on its own: feed or chill it, or join them by a heavier wall",
            )
            .at(Some(place)),
            FeedingFact::FillsTooLate { wall, freezes } => Remark::new(
                "fills_too_late",
                Level::Caution,
                "pour",
                format!(
                    "the thinnest wall, some {} mm, freezes in {} s: no usual sprue fills it",
                    rounded(wall.as_mm(), 2),
                    rounded(freezes.as_s(), 2)
                ),
                "expect it short: thicken it, gate straight into it, or leave it to be machined",
            ),
            FeedingFact::FillMustHurry => Remark::new(
                "fill_must_hurry",
                Level::Caution,
                "pour",
                "the thinnest wall freezes sooner than the usual filling time".to_owned(),
                "the choke is sized for the shorter time: pour without a pause, at the hot end",
            ),
        }
    }
}
