//! Every law of the trade, called by name with figures as a founder types them.
//!
//! A law is a pure function in the room of its trade. Here it gets a [`reckoner::Reckoner`]: a
//! name, the question it answers, what has to be given, and the call. The frame reads the figures
//! with their ranges, works the law out at every corner of them, and says what would narrow the
//! answer.
//!
//! ```
//! use reckon::ask::Ask;
//!
//! let ask = Ask::new("choke").give("poured", "4.2 kg").give("time", "3.4 to 4.6 s")
//!     .give("metal", "gunmetal").give("head", "100 mm");
//! let worked = reckon::worked::work_out(&ask)?;
//! assert_eq!(worked.answers[0].name, "area");
//! assert!(worked.with_numbers.contains("(4.2 kg)"));
//! # Ok::<(), reckon::refusal::Refusal>(())
//! ```
//!
//! To add one: write the law in its room, a row here in the file of its topic, and a published
//! example in the checks.

mod after;
pub mod answer;
pub mod ask;
mod body;
mod charging;
mod feeding;
pub mod formula;
mod freezing;
mod furnace;
mod gating;
pub mod given;
mod heats;
mod helping;
mod holding;
pub mod input;
mod melting;
mod opening;
mod pattern;
mod pouring;
mod pricing;
mod reading;
pub mod reckoned_file;
pub mod reckoner;
pub mod refusal;
mod sand;
pub mod topic;
pub mod worked;

use crate::reckoner::Reckoner;
use crate::topic::Topic;

/// The reckoners of a topic.
pub fn of_topic(topic: Topic) -> &'static [Reckoner] {
    match topic {
        Topic::Pattern => pattern::RECKONERS,
        Topic::Sand => sand::RECKONERS,
        Topic::Gating => gating::RECKONERS,
        Topic::Freezing => freezing::RECKONERS,
        Topic::Feeding => feeding::RECKONERS,
        Topic::Helping => helping::RECKONERS,
        Topic::Holding => holding::RECKONERS,
        Topic::Charging => charging::RECKONERS,
        Topic::Melting => melting::RECKONERS,
        Topic::Furnace => furnace::RECKONERS,
        Topic::Heats => heats::RECKONERS,
        Topic::Pouring => pouring::RECKONERS,
        Topic::After => after::RECKONERS,
        Topic::Pricing => pricing::RECKONERS,
        Topic::Opening => opening::RECKONERS,
    }
}

/// Every reckoner, topic by topic in the order of the day.
pub fn all() -> impl Iterator<Item = (Topic, &'static Reckoner)> {
    Topic::ALL
        .iter()
        .flat_map(|topic| of_topic(*topic).iter().map(|reckoner| (*topic, reckoner)))
}

/// The reckoner of a name.
pub fn named(name: &str) -> Option<&'static Reckoner> {
    all()
        .map(|(_, reckoner)| reckoner)
        .find(|reckoner| reckoner.name == name)
}
