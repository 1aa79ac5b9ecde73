//! The two Englishes of the trade, never mixed on a page.
//!
//! Everything is written in British trade words; for a shop that wants the American ones they are
//! exchanged word by word at the last moment.

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

/// British word, American word.
const PAIRS: [(&str, &str); 12] = [
    ("mould", "mold"),
    ("moulds", "molds"),
    ("moulded", "molded"),
    ("moulding", "molding"),
    ("feeder", "riser"),
    ("feeders", "risers"),
    ("aluminium", "aluminum"),
    ("grey", "gray"),
    ("vapour", "vapor"),
    ("litre", "liter"),
    ("metre", "meter"),
    ("draught", "draft"),
];

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
    let Some((_, american)) = PAIRS.iter().find(|(british, _)| *british == small) else {
        return word.to_owned();
    };
    match word.chars().next().is_some_and(char::is_uppercase) {
        true => american[..1].to_uppercase() + &american[1..],
        false => (*american).to_owned(),
    }
}
