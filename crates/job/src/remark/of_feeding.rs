//! What is found in feeding and filling.

use measure::flow::Duration;
use measure::length::Length;
use measure::text::rounded;

use super::Remark;
use crate::words::said::Said;

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
    /// The heaviest place, by the solids that meet there.
    HotSpot {
        /// Names of one or two solids.
        meet: Vec<Said>,
        /// Where.
        place: Option<[f64; 3]>,
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
        let mm = |length: Length, figures| format!("{} mm", rounded(length.as_mm(), figures));
        match fact {
            FeedingFact::NoFeederThin => Remark::note("feeder_none-thin", "feeder"),
            FeedingFact::NoFeederIron { shown } => {
                Remark::note("feeder_none-iron", "feeder").with("shown", shown)
            }
            FeedingFact::IronMightFeedItself => Remark::note("feeder_iron", "feeder"),
            FeedingFact::FeederImpossible => Remark::caution("feeder_impossible", "feeder"),
            FeedingFact::FeederHigherThanCope { height, cope } => {
                Remark::caution("feeder_high", "feeder")
                    .with("height", mm(height, 2))
                    .with("cope", mm(cope, 3))
            }
            FeedingFact::MoreHeavySections { count, place } => {
                Remark::caution("more_heavy_sections", "feeder")
                    .with("count", count)
                    .at(Some(place))
            }
            FeedingFact::HotSpot { meet, place } => hot_spot(meet).at(place),
            FeedingFact::FillsTooLate { wall, freezes } => {
                Remark::caution("fills_too_late", "pour")
                    .with("wall", mm(wall, 2))
                    .with("freezes", format!("{} s", rounded(freezes.as_s(), 2)))
            }
            FeedingFact::FillMustHurry => Remark::caution("fill_must_hurry", "pour"),
        }
    }
}

fn hot_spot(meet: Vec<Said>) -> Remark {
    let mut meet = meet.into_iter();
    let one = meet.next().unwrap_or_else(|| Said::new("the-part"));
    match meet.next() {
        Some(other) => Remark::note("hot_spot-meet", "feeder")
            .with("one", one)
            .with("other", other),
        None => Remark::note("hot_spot-in", "feeder").with("one", one),
    }
}
