//! Words made fit for paper: no character that steers a terminal, turns the line round or hides.

use std::collections::BTreeMap;

use job::words::Language;
use serde_json::Value;

/// The own words of a template, by the ids under which it asks for them.
pub(crate) fn of_template(
    language: Language,
    ids: &[&'static str],
) -> BTreeMap<&'static str, String> {
    ids.iter().map(|id| (*id, language.word(id))).collect()
}

/// Cleans every string inside a value, in place.
pub(crate) fn clean(value: &mut Value) {
    match value {
        Value::String(words) => *words = readable(words),
        Value::Array(items) => items.iter_mut().for_each(clean),
        Value::Object(fields) => fields.values_mut().for_each(clean),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

/// The words with every control character as a space and every invisible mark left out.
///
/// Tabs and line breaks are control characters too: a name is one line, and the template alone
/// decides where it is broken.
fn readable(words: &str) -> String {
    let spaced = words
        .chars()
        .filter(|&letter| !is_hidden(letter))
        .map(|letter| if letter.is_control() { ' ' } else { letter });
    // The font has no cube root of one piece.
    let spaced: String = spaced.collect::<String>().replace('∛', "³√");
    spaced
        .split(' ')
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

/// Marks that print nothing but change the direction or the order of what stands beside them.
fn is_hidden(letter: char) -> bool {
    matches!(
        letter,
        '\u{200B}' | '\u{200E}' | '\u{200F}' | '\u{2028}' | '\u{2029}' | '\u{FEFF}'
            | '\u{202A}'..='\u{202E}'
            | '\u{2066}'..='\u{2069}'
    )
}

#[cfg(test)]
mod tests {
    use super::readable;

    #[test]
    fn control_characters_become_one_space() {
        assert_eq!(readable("a\u{0}\t\r\nb\u{1b}[31mc"), "a b [31mc");
    }

    #[test]
    fn marks_that_turn_the_line_are_left_out() {
        assert_eq!(readable("4\u{202E}02 kg\u{200F}"), "402 kg");
    }

    #[test]
    fn other_words_stay_as_they_are() {
        assert_eq!(readable("#evil *x* $1$ @ref מים"), "#evil *x* $1$ @ref מים");
    }
}
