//! Words of the trade that this program uses, each explained in a sentence, in every language of
//! the shop.

use measure::source::source;

use crate::words::Language;
use crate::words::said::Said;

/// A word of the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Term {
    /// By which its messages are found.
    pub id: &'static str,
    /// Key of the source of what is said of it.
    pub source: &'static str,
}

/// The words, in the order of their English.
pub const TERMS: &[Term] = &[
    term("glossary-allowance", "common-practice"),
    term("glossary-alloy", "common-practice"),
    term("glossary-back-pressure", "common-practice"),
    term("glossary-basin", "common-practice"),
    term("glossary-batch", "common-practice"),
    term("glossary-bentonite", "common-practice"),
    term("glossary-binder", "common-practice"),
    term("glossary-blow", "defect-classes"),
    term("glossary-burning-loss", "common-practice"),
    term("glossary-casting", "common-practice"),
    term("glossary-chaplet", "common-practice"),
    term("glossary-charge", "common-practice"),
    term("glossary-chill", "common-practice"),
    term("glossary-choke", "gating-slides"),
    term("glossary-clay", "common-practice"),
    term("glossary-cold-shut", "defect-classes"),
    term("glossary-compactability", "common-practice"),
    term("glossary-contact", "flemings-1974"),
    term("glossary-contraction", "common-practice"),
    term("glossary-cope", "common-practice"),
    term("glossary-core", "common-practice"),
    term("glossary-core-box", "common-practice"),
    term("glossary-core-print", "common-practice"),
    term("glossary-crucible", "common-practice"),
    term("glossary-crush", "defect-classes"),
    term("glossary-degassing", "common-practice"),
    term("glossary-discharge", "gating-slides"),
    term("glossary-drag", "common-practice"),
    term("glossary-draught", "common-practice"),
    term("glossary-draw", "common-practice"),
    term("glossary-dross", "common-practice"),
    term("glossary-efficiency", "common-practice"),
    term("glossary-expansion", "defect-classes"),
    term("glossary-facing", "common-practice"),
    term("glossary-feeder", "feeder-lecture"),
    term("glossary-fillet", "common-practice"),
    term("glossary-fin", "defect-classes"),
    term("glossary-fines", "common-practice"),
    term("glossary-flask", "common-practice"),
    term("glossary-freezing-time", "chvorinov-1940"),
    term("glossary-furnace", "common-practice"),
    term("glossary-gate", "common-practice"),
    term("glossary-gating-ratio", "gating-ratio-table"),
    term("glossary-grain-fineness", "common-practice"),
    term("glossary-green-sand", "common-practice"),
    term("glossary-green-strength", "common-practice"),
    term("glossary-hard-spot", "defect-classes"),
    term("glossary-head", "common-practice"),
    term("glossary-heap", "common-practice"),
    term("glossary-heat", "common-practice"),
    term("glossary-hot-spot", "common-practice"),
    term("glossary-hot-tear", "defect-classes"),
    term("glossary-ingot-mould", "common-practice"),
    term("glossary-inoculant", "common-practice"),
    term("glossary-joint", "common-practice"),
    term("glossary-ladle", "common-practice"),
    term("glossary-lift", "common-practice"),
    term("glossary-liquidus", "common-practice"),
    term("glossary-loose-piece", "common-practice"),
    term("glossary-melt-loss", "common-practice"),
    term("glossary-misrun", "defect-classes"),
    term("glossary-modulus", "chvorinov-1940"),
    term("glossary-moisture", "common-practice"),
    term("glossary-mould", "common-practice"),
    term("glossary-mulling", "common-practice"),
    term("glossary-oddside", "common-practice"),
    term("glossary-parting-dust", "common-practice"),
    term("glossary-pattern", "common-practice"),
    term("glossary-penetration", "defect-classes"),
    term("glossary-permeability", "common-practice"),
    term("glossary-pinholes", "defect-classes"),
    term("glossary-pouring-temperature", "common-practice"),
    term("glossary-ramming", "common-practice"),
    term("glossary-rat-tail", "defect-classes"),
    term("glossary-reject", "common-practice"),
    term("glossary-run-out", "defect-classes"),
    term("glossary-runner", "common-practice"),
    term("glossary-running-system", "common-practice"),
    term("glossary-shift", "defect-classes"),
    term("glossary-shrinkage", "defect-classes"),
    term("glossary-silica", "common-practice"),
    term("glossary-skimming", "common-practice"),
    term("glossary-slag", "common-practice"),
    term("glossary-solidus", "common-practice"),
    term("glossary-sprue", "common-practice"),
    term("glossary-superheat", "common-practice"),
    term("glossary-swell", "defect-classes"),
    term("glossary-temper", "common-practice"),
    term("glossary-veins", "defect-classes"),
    term("glossary-vent", "common-practice"),
    term("glossary-wash", "defect-classes"),
    term("glossary-weights", "common-practice"),
    term("glossary-yield", "common-practice"),
];

impl Term {
    /// The word.
    pub fn word(&self) -> Said {
        Said::new(format!("{}.word", self.id))
    }

    /// What it means, in a sentence.
    pub fn meaning(&self) -> Said {
        Said::new(self.id)
    }

    /// The title of what its sentence rests on.
    pub fn rests_on(&self) -> &'static str {
        source(self.source).map_or(self.source, |source| source.title.as_str())
    }
}

/// All terms, in the order of their words in a language.
pub fn all(language: Language) -> Vec<Term> {
    in_order(TERMS.to_vec(), language)
}

/// The terms of a word typed in any of the languages: those that are it, else those in whose word
/// or sentence in this language it stands. In the order of [`all`]; empty where none is found.
pub fn found(typed: &str, language: Language) -> Vec<Term> {
    let wanted = plain(typed);
    if wanted.is_empty() {
        return Vec::new();
    }
    let is = |term: &&Term| {
        Language::ALL
            .iter()
            .any(|one| plain(&one.say(&term.word())) == wanted)
    };
    let exactly: Vec<Term> = TERMS.iter().filter(is).copied().collect();
    if !exactly.is_empty() {
        return in_order(exactly, language);
    }
    let holds = |term: &&Term| {
        let names = Language::ALL
            .iter()
            .any(|one| plain(&one.say(&term.word())).contains(&wanted));
        names || plain(&language.say(&term.meaning())).contains(&wanted)
    };
    in_order(TERMS.iter().filter(holds).copied().collect(), language)
}

/// The terms that stand in a text of a language, in the order of [`all`]. Of a term within a
/// longer one the longer is meant: who reads of a core print is not sent to the core.
pub fn told_in(text: &str, language: Language) -> Vec<Term> {
    let text = plain(text);
    let mut left: Vec<&str> = parts(&text);
    let mut all: Vec<(usize, String)> = TERMS
        .iter()
        .map(|term| plain(&language.say(&term.word())))
        .enumerate()
        .collect();
    all.sort_by_key(|(_, word)| std::cmp::Reverse(parts(word).len()));
    let mut found = Vec::new();
    for (at, word) in &all {
        let wanted = parts(word);
        let is_there = |from: usize| {
            let beside = left[from..].iter().zip(&wanted);
            from + wanted.len() <= left.len() && beside.into_iter().all(|(is, of)| is_of(is, of))
        };
        let places: Vec<usize> = (0..left.len()).filter(|from| is_there(*from)).collect();
        for from in &places {
            left[*from..from + wanted.len()].fill("");
        }
        found.extend((!places.is_empty()).then_some(*at));
    }
    in_order(found.into_iter().map(|at| TERMS[at]).collect(), language)
}

/// Terms in the order of their words as they are shown, whatever their accents.
fn in_order(mut terms: Vec<Term>, language: Language) -> Vec<Term> {
    terms.sort_by_cached_key(|term| plain(&language.say(&term.word())));
    terms
}

/// The parts of a plain text that are letters or figures.
fn parts(text: &str) -> Vec<&str> {
    let parts = text.split(|letter: char| !letter.is_alphanumeric());
    parts.filter(|part| !part.is_empty()).collect()
}

/// Whether a part of a text is a word, or several of it as the three languages write them.
fn is_of(part: &str, word: &str) -> bool {
    let behind = part.strip_prefix(word);
    behind.is_some_and(|behind| ["", "s", "es", "x"].contains(&behind))
}

/// Small letters without accents, as a word is typed in a hurry.
fn plain(text: &str) -> String {
    let small = text.trim().to_lowercase();
    let letter = |letter: char| match letter {
        'á' | 'à' | 'â' => 'a',
        'é' | 'è' | 'ê' | 'ë' => 'e',
        'í' | 'î' | 'ï' => 'i',
        'ó' | 'ô' => 'o',
        'ú' | 'ù' | 'û' | 'ü' => 'u',
        'ñ' => 'n',
        'ç' => 'c',
        '-' => ' ',
        other => other,
    };
    small.chars().map(letter).collect()
}

const fn term(id: &'static str, source: &'static str) -> Term {
    Term { id, source }
}

#[cfg(test)]
mod tests {
    use super::{all, plain, told_in};
    use crate::words::Language;

    #[test]
    fn words_stand_in_the_order_in_which_they_are_shown() {
        for language in Language::ALL {
            let words: Vec<String> = all(language)
                .iter()
                .map(|term| plain(&language.say(&term.word())))
                .collect();
            assert!(words.is_sorted(), "{words:?}");
        }
        let words = all(Language::Uk);
        let at = |id: &str| words.iter().position(|term| term.id == id);
        // Shown as "pouring basin".
        assert!(at("glossary-choke") < at("glossary-basin"));
    }

    #[test]
    fn the_longest_term_of_a_text_is_meant_and_several_of_it_are_found() {
        let ids = |text: &str, language| -> Vec<&str> {
            told_in(text, language).iter().map(|term| term.id).collect()
        };
        let found = ids(
            "Dust the core prints, then close both flasks.",
            Language::Uk,
        );
        assert_eq!(found, ["glossary-core-print", "glossary-flask"]);
        assert_eq!(ids("coreless", Language::Uk), Vec::<&str>::new());
        assert_eq!(ids("deux masselottes", Language::Fr), ["glossary-feeder"]);
        assert_eq!(ids("", Language::Es), Vec::<&str>::new());
    }
}
