//! The languages of the trade, never mixed on a page.
//!
//! Every text shown to people stands in a message file of `data/words/`, under an id; the program
//! carries ids with what is put into them ([`Said`]) and puts them into words where they are
//! shown. American English is the British messages with the words of one list exchanged.

use fluent_bundle::{FluentArgs, FluentValue};
use measure::text::shown::Shown;
use serde::Deserialize;

use crate::words::exchanged::in_american;
use crate::words::messages::{AMERICAN, BRITISH, FRENCH, Messages, SPANISH};
use crate::words::said::{Given, Said};

mod exchanged;
mod messages;
pub mod said;
mod spaced;

/// The language of labels and remarks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Language {
    /// British English: mould, feeder, aluminium, grey iron.
    #[default]
    Uk,
    /// American English: mold, riser, aluminum, gray iron.
    Us,
    /// French: moule, masselotte, aluminium, fonte grise.
    Fr,
    /// Spanish: molde, mazarota, aluminio, fundición gris.
    Es,
}

impl Language {
    /// Every language there is.
    pub const ALL: [Language; 4] = [Language::Uk, Language::Us, Language::Fr, Language::Es];

    /// A message in this language; its id where it has no such message.
    pub fn say(self, said: &Said) -> String {
        let mut given = FluentArgs::new();
        for (name, value) in said.given() {
            given.set(*name, self.value(value));
        }
        let words = self.messages().words(said.id(), &given);
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
            Language::Fr => "fr",
            Language::Es => "es",
        }
    }

    /// The English in which laws describe themselves to readers of this language.
    #[must_use]
    pub fn for_laws(self) -> Language {
        match self {
            Language::Uk | Language::Fr | Language::Es => Language::Uk,
            Language::Us => Language::Us,
        }
    }

    /// An English text in this English; other languages leave it as it is.
    pub fn of(self, text: &str) -> String {
        match self {
            Language::Us => in_american(text).into_owned(),
            Language::Uk | Language::Fr | Language::Es => text.to_owned(),
        }
    }

    fn messages(self) -> &'static Messages {
        match self {
            Language::Uk => &BRITISH,
            Language::Us => &AMERICAN,
            Language::Fr => &FRENCH,
            Language::Es => &SPANISH,
        }
    }

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
