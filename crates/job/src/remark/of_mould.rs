//! The words for what is found in flask, sand and weights.

use measure::length::Length;
use measure::matter::Mass;
use measure::text::rounded;
use mould::flask::FlaskError;

use super::{Level, Remark};

/// What is found in flask, sand and weights.
#[derive(Clone, Debug, PartialEq)]
pub enum MouldFact {
    /// No flask takes the patterns; the plan goes on with one to be made.
    NoFlask(FlaskError),
    /// The flask asked for has less sand round the patterns than is wanted.
    TightFlask(FlaskError),
    /// The metal is not poured higher than the casting reaches.
    NoHead {
        /// From the joint to the level in the basin.
        pour_height: Length,
        /// From the joint to the top of the casting.
        top: Length,
    },
    /// The heap is too small.
    HeapTooSmall {
        /// Sand wanted.
        wanted: Mass,
        /// Sand there is.
        there: Mass,
    },
    /// No heap in the shop file.
    HeapUnknown,
    /// The heap is too wet to pour on.
    TooWet {
        /// Its moisture.
        moisture: f64,
        /// The limit.
        limit: f64,
    },
    /// The moisture of the heap is not known.
    MoistureUnknown,
    /// Half a flask is more than three people may lift.
    TooHeavy {
        /// The heavier half.
        load: Mass,
        /// What three may lift.
        three: Mass,
    },
    /// The cope alone does not hold the metal down.
    WeightsNeeded {
        /// What to lay on.
        to_lay: Mass,
    },
    /// The shop's irons together are too light.
    IronsTooLight {
        /// What has to lie on the cope.
        wanted: Mass,
        /// All there is.
        there: Mass,
    },
}

impl From<MouldFact> for Remark {
    fn from(fact: MouldFact) -> Remark {
        let kg = |mass: Mass| rounded(mass.as_kg(), 3);
        match fact {
            MouldFact::NoFlask(error) => Remark::new(
                "flask_none",
                Level::Caution,
                "flask",
                error.to_string(),
                "the plan goes on with a flask of that size, to be made",
            ),
            MouldFact::TightFlask(error) => Remark::new(
                "flask_tight",
                Level::Caution,
                "flask",
                error.to_string(),
                "ram the narrow places with care, or take a larger flask",
            ),
            MouldFact::NoHead { pour_height, top } => Remark::new(
                "no_head",
                Level::Stop,
                "pour",
                format!(
                    "the pour stands {} mm over the joint and the casting {} mm: it cannot fill",
                    rounded(pour_height.as_mm(), 3),
                    rounded(top.as_mm(), 3)
                ),
                "build the basin up, take a deeper cope, or lay more of the part in the drag",
            ),
            MouldFact::HeapTooSmall { wanted, there } => Remark::new(
                "sand_short",
                Level::Caution,
                "sand",
                format!(
                    "the mould wants {} kg of sand, the heap has {} kg",
                    kg(wanted),
                    kg(there)
                ),
                "mix more, or back the facing with dry old sand",
            ),
            MouldFact::HeapUnknown => Remark::new(
                "heap_unknown",
                Level::Note,
                "sand",
                "the heap is not in shop.toml, so sand is not compared with it".to_owned(),
                "weigh it once by the bucket and write [heap]",
            ),
            MouldFact::TooWet { moisture, limit } => Remark::new(
                "too_wet",
                Level::Stop,
                "sand",
                format!(
                    "the heap is at {} % of wet mass; above {} % a mould turns to steam",
                    rounded(moisture * 100.0, 2),
                    rounded(limit * 100.0, 2)
                ),
                "dry it back and weigh a handful again before ramming",
            ),
            MouldFact::MoistureUnknown => Remark::new(
                "moisture_unknown",
                Level::Caution,
                "sand",
                "the moisture of the heap is not known".to_owned(),
                "weigh a handful wet and dry; wet sand under metal throws it back at you",
            ),
            MouldFact::TooHeavy { load, three } => Remark::new(
                "flask_heavy",
                Level::Caution,
                "flask",
                format!(
                    "half the flask weighs {} kg; three people may lift {} kg together",
                    kg(load),
                    kg(three)
                ),
                "use a hoist, ram it where it is poured, or take a smaller flask",
            ),
            MouldFact::WeightsNeeded { to_lay } => Remark::new(
                "weights_needed",
                Level::Caution,
                "weights",
                format!(
                    "the metal lifts the cope: {} kg on it are not optional",
                    kg(to_lay)
                ),
                "lay them on, or clamp for the same force, before the first drop",
            ),
            MouldFact::IronsTooLight { wanted, there } => Remark::new(
                "irons_short",
                Level::Stop,
                "weights",
                format!(
                    "{} kg have to lie on the cope; your irons come to {} kg",
                    rounded(wanted.as_kg(), 3),
                    kg(there)
                ),
                "clamp cope and drag together for the same force, or borrow weights",
            ),
        }
    }
}
