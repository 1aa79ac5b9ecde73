//! The two Englishes: British words exchanged for American ones, whole, with their capital kept.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::sync::LazyLock;

use fluent_bundle::FluentResource;
use fluent_bundle::concurrent::FluentBundle;

/// The list of trade words: each id is the British word, its message the American one.
const LIST: &str = include_str!("../../data/words/en-US/exchanged.ftl");

/// British word, American word.
static PAIRS: LazyLock<BTreeMap<String, String>> = LazyLock::new(|| {
    let mut bundle = FluentBundle::new_concurrent(Vec::new());
    // A line that cannot be read leaves its word as it is; a test reads every line.
    let list = FluentResource::try_new(LIST.to_owned()).unwrap_or_else(|(read, _)| read);
    bundle.add_resource_overriding(list);
    let word = |british: &str| {
        let pattern = bundle.get_message(british)?.value()?;
        let american = bundle.format_pattern(pattern, None, &mut Vec::new());
        Some((british.to_owned(), american.into_owned()))
    };
    names().filter_map(word).collect()
});

/// A British text with the words of the list exchanged; keys of files stay as they are typed.
pub(super) fn in_american(text: &str) -> Cow<'_, str> {
    let mut out = String::with_capacity(text.len());
    for token in text.split_inclusive(char::is_whitespace) {
        match is_key(token) {
            true => out.push_str(token),
            false => exchange_words(token, &mut out),
        }
    }
    Cow::Owned(out)
}

/// Whether it is a key or a table of a file: `mould.joint`, `[mould.place]`.
fn is_key(token: &str) -> bool {
    let has_parts = token.split('.').collect::<Vec<_>>().windows(2).any(|two| {
        two[0].ends_with(char::is_alphabetic) && two[1].starts_with(char::is_alphabetic)
    });
    has_parts || token.starts_with('[')
}

fn exchange_words(token: &str, out: &mut String) {
    let mut word = String::new();
    for letter in token.chars() {
        if letter.is_alphabetic() {
            word.push(letter);
        } else {
            out.push_str(&exchanged(&word));
            word.clear();
            out.push(letter);
        }
    }
    out.push_str(&exchanged(&word));
}

fn exchanged(word: &str) -> String {
    let Some(american) = PAIRS.get(&word.to_lowercase()) else {
        return word.to_owned();
    };
    match word.chars().next().is_some_and(char::is_uppercase) {
        true => american[..1].to_uppercase() + &american[1..],
        false => american.clone(),
    }
}

/// The British words of the list.
fn names() -> impl Iterator<Item = &'static str> {
    let lines = LIST.lines().filter_map(|line| line.split_once(" = "));
    lines.map(|(name, _)| name)
}

#[cfg(test)]
mod tests {
    use super::{PAIRS, in_american, names};

    #[test]
    fn every_line_of_the_list_is_read() {
        assert_eq!(PAIRS.len(), names().count());
        assert!(PAIRS.values().all(|american| american.is_ascii()));
    }

    #[test]
    fn keys_of_files_stay_as_they_are_typed() {
        assert_eq!(
            in_american("write mould.joint, or [mould.place], for this mould. Aluminium"),
            "write mould.joint, or [mould.place], for this mold. Aluminum"
        );
    }

    #[test]
    fn words_are_exchanged_whole_and_keep_their_capital() {
        assert_eq!(
            in_american("Grey iron in a moulding box; the Feeder's draught. Greyhound"),
            "Gray iron in a molding box; the Riser's draft. Greyhound"
        );
    }
}
