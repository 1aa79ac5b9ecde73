//! The languages of the trade, never mixed on a page.
//!
//! Every text shown to people stands in a message file of `data/words/`, under an id; the program
//! carries ids with what is put into them ([`Said`]) and puts them into words where they are
//! shown. American English is the British messages with the words of one list exchanged.

use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use measure::text::shown::Shown;
use serde::Deserialize;

use crate::words::exchanged::in_american;
use crate::words::said::{Given, Said};

pub mod exchanged;
pub mod said;

/// The language of labels and remarks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Language {
    /// British English: mould, feeder, aluminium, grey iron.
    #[default]
    Uk,
    /// American English: mold, riser, aluminum, gray iron.
    Us,
}

/// The messages of a language, ready to be put into words.
struct Messages {
    bundle: FluentBundle<FluentResource>,
}

static BRITISH: LazyLock<Messages> = LazyLock::new(|| Messages::of("en-GB", &EN_GB, None));
static AMERICAN: LazyLock<Messages> =
    LazyLock::new(|| Messages::of("en-US", &EN_GB, Some(in_american)));

/// The message files of British English.
const EN_GB: [&str; 7] = [
    include_str!("../data/words/en-GB/charge.ftl"),
    include_str!("../data/words/en-GB/laws.ftl"),
    include_str!("../data/words/en-GB/paper.ftl"),
    include_str!("../data/words/en-GB/plan.ftl"),
    include_str!("../data/words/en-GB/terminal.ftl"),
    include_str!("../data/words/en-GB/remarks.ftl"),
    include_str!("../data/words/en-GB/parts.ftl"),
];

impl Language {
    /// Every language there is.
    pub const ALL: [Language; 2] = [Language::Uk, Language::Us];

    /// A message in this language; its id where it has no such message.
    pub fn say(self, said: &Said) -> String {
        let words = self.messages().words(self, said);
        words.unwrap_or_else(|| said.id().to_owned())
    }

    /// A message into which nothing is put.
    pub fn word(self, id: &'static str) -> String {
        self.say(&Said::new(id))
    }

    /// A figure's band; nothing where it has none.
    pub fn between(self, shown: &Shown) -> Option<String> {
        shown.band.as_ref().map(|band| self.say(&Said::from(band)))
    }

    /// A figure's band, or its likely value where it has none.
    pub fn ends(self, shown: &Shown) -> String {
        self.between(shown).unwrap_or_else(|| shown.likely.clone())
    }

    /// Several messages into which nothing is put.
    pub fn each<const N: usize>(self, ids: [&'static str; N]) -> [String; N] {
        ids.map(|id| self.word(id))
    }

    /// Its code, for the typesetter.
    pub fn code(self) -> &'static str {
        match self {
            Language::Uk | Language::Us => "en",
        }
    }

    /// The English in which laws describe themselves to readers of this language.
    #[must_use]
    pub fn for_laws(self) -> Language {
        self
    }

    /// An English text in this English.
    pub fn of(self, text: &str) -> String {
        match self {
            Language::Uk => text.to_owned(),
            Language::Us => in_american(text).into_owned(),
        }
    }

    fn messages(self) -> &'static Messages {
        match self {
            Language::Uk => &BRITISH,
            Language::Us => &AMERICAN,
        }
    }
}

impl Messages {
    fn of(code: &str, files: &[&str], transform: Option<exchanged::Transform>) -> Messages {
        let mut bundle = FluentBundle::new_concurrent(code.parse().into_iter().collect());
        // Marks that turn the line round have no place on paper.
        bundle.set_use_isolating(false);
        bundle.set_transform(transform);
        for file in files {
            // A line that cannot be read leaves its message out; a test reads every line.
            let read = FluentResource::try_new((*file).to_owned()).unwrap_or_else(|(read, _)| read);
            bundle.add_resource_overriding(read);
        }
        Messages { bundle }
    }

    fn words(&self, language: Language, said: &Said) -> Option<String> {
        let (id, attribute) = match said.id().split_once('.') {
            Some((id, attribute)) => (id, Some(attribute)),
            None => (said.id(), None),
        };
        let message = self.bundle.get_message(id)?;
        let pattern = match attribute {
            Some(name) => message.get_attribute(name)?.value(),
            None => message.value()?,
        };
        let mut given = FluentArgs::new();
        for (name, value) in said.given() {
            given.set(*name, language.value(value));
        }
        // What a message asks for and was not given shows as its own name.
        let mut faults = Vec::new();
        let words = self
            .bundle
            .format_pattern(pattern, Some(&given), &mut faults);
        Some(words.into_owned())
    }
}

impl Language {
    fn value(self, given: &Given) -> FluentValue<'static> {
        match given {
            Given::Text(text) => FluentValue::from(text.clone()),
            Given::Count(count) => FluentValue::from(*count),
            Given::Said(said) => FluentValue::from(self.say(said)),
            Given::List(list) => {
                let each: Vec<String> = list.iter().map(|said| self.say(said)).collect();
                FluentValue::from(each.join(", "))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Language;
    use super::said::Said;

    #[test]
    fn a_message_that_is_missing_shows_its_id() {
        let nothing = Said::new("no_such_message.advice");
        assert_eq!(Language::Uk.say(&nothing), "no_such_message.advice");
    }

    #[test]
    fn what_the_founder_typed_is_not_exchanged() {
        let heavy = Said::new("charge_oily").with("heap", "grey moulds");
        let american = Language::Us.say(&heavy);
        assert!(american.starts_with("grey moulds: "), "{american}");
        let chill = Language::Us.say(&Said::new("spoiled_by_aluminium"));
        assert!(chill.contains("aluminum"), "{chill}");
    }
}
