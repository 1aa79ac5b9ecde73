//! The two Englishes of the trade, never mixed on a page.
//!
//! Everything is written in British trade words; for a shop that wants the American ones they are
//! exchanged word by word at the last moment.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use fluent_bundle::{FluentBundle, FluentResource};
use serde::Deserialize;

/// Which English labels and remarks are written in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum English {
    /// Mould, feeder, aluminium, grey iron.
    #[default]
    Uk,
    /// Mold, riser, aluminum, gray iron.
    Us,
}

/// The lists of trade words, one for each English; the British one says which words there are.
const BRITISH: &str = include_str!("../data/words/en-GB.ftl");
const AMERICAN: &str = include_str!("../data/words/en-US.ftl");

/// British word, American word.
static PAIRS: LazyLock<BTreeMap<String, String>> = LazyLock::new(|| {
    let (british, american) = (bundle("en-GB", BRITISH), bundle("en-US", AMERICAN));
    let names = BRITISH.lines().filter_map(|line| line.split_once(" = "));
    names
        .filter_map(|(name, _)| Some((word(&british, name)?, word(&american, name)?)))
        .collect()
});

fn bundle(language: &str, list: &str) -> FluentBundle<FluentResource> {
    let mut bundle = FluentBundle::new(language.parse().into_iter().collect());
    // A line that cannot be read leaves its word as it is; a test reads every line.
    let resource = FluentResource::try_new(list.to_owned()).unwrap_or_else(|(read, _)| read);
    bundle.add_resource_overriding(resource);
    bundle
}

fn word(bundle: &FluentBundle<FluentResource>, name: &str) -> Option<String> {
    let pattern = bundle.get_message(name)?.value()?;
    let mut faults = Vec::new();
    Some(
        bundle
            .format_pattern(pattern, None, &mut faults)
            .into_owned(),
    )
}

impl English {
    /// A text in this English.
    pub fn of(self, text: &str) -> String {
        match self {
            English::Uk => text.to_owned(),
            English::Us => exchanged(text),
        }
    }
}

fn exchanged(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut word = String::new();
    for letter in text.chars() {
        if letter.is_alphabetic() {
            word.push(letter);
        } else {
            out.push_str(&in_american(&word));
            word.clear();
            out.push(letter);
        }
    }
    out.push_str(&in_american(&word));
    out
}

fn in_american(word: &str) -> String {
    let small = word.to_lowercase();
    let Some(american) = PAIRS.get(&small) else {
        return word.to_owned();
    };
    match word.chars().next().is_some_and(char::is_uppercase) {
        true => american[..1].to_uppercase() + &american[1..],
        false => american.clone(),
    }
}

#[cfg(test)]
mod tests {
    use super::{AMERICAN, BRITISH, English, PAIRS, bundle, word};

    #[test]
    fn both_lists_answer_to_the_same_names() {
        let names = |list: &'static str| -> Vec<&str> {
            let lines = list.lines().filter_map(|line| line.split_once(" = "));
            lines.map(|(name, _)| name).collect()
        };
        assert_eq!(names(BRITISH), names(AMERICAN));
        assert_eq!(PAIRS.len(), names(BRITISH).len());
        let american = bundle("en-US", AMERICAN);
        assert!(
            names(AMERICAN)
                .iter()
                .all(|name| word(&american, name).is_some())
        );
    }

    #[test]
    fn words_are_exchanged_whole_and_keep_their_capital() {
        let text = "Grey iron in a moulding box; the Feeder's draught. Greyhound";
        assert_eq!(
            English::Us.of(text),
            "Gray iron in a molding box; the Riser's draft. Greyhound"
        );
        assert_eq!(English::Uk.of(text), text);
    }
}
