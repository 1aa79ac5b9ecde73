//! What is given to a law in a row, read as the law wants it, with a note of what was looked at.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use measure::text::{TextError, Typed, Written};
use thiserror::Error;

/// The given texts of one row.
pub struct Given<'a> {
    texts: &'a BTreeMap<String, String>,
    used: RefCell<BTreeSet<String>>,
}

/// Why a row does not give what its law wants.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum GivenError {
    /// The law wants something that the row does not give.
    #[error("\"{0}\" is not given")]
    Missing(String),
    /// A quantity that cannot be read.
    #[error("{key}: {fault}")]
    Quantity {
        /// Which one.
        key: String,
        /// What is wrong with the text.
        fault: TextError,
    },
    /// A bare number, a share or a word that cannot be read.
    #[error("{key}: \"{typed}\" is not {wanted}")]
    Not {
        /// Which one.
        key: String,
        /// What stands there.
        typed: String,
        /// What has to stand there.
        wanted: &'static str,
    },
    /// The law has no answer for what is given.
    #[error("no answer: {0}")]
    NoAnswer(String),
}

impl<'a> Given<'a> {
    /// Nothing looked at yet.
    pub fn new(texts: &'a BTreeMap<String, String>) -> Given<'a> {
        Given {
            texts,
            used: RefCell::default(),
        }
    }

    /// Whether something is given under this key.
    pub fn has(&self, key: &str) -> bool {
        self.texts.contains_key(key)
    }

    /// The text as it stands.
    pub fn text(&self, key: &str) -> Result<&'a str, GivenError> {
        self.used.borrow_mut().insert(key.to_owned());
        self.texts
            .get(key)
            .map(String::as_str)
            .ok_or_else(|| GivenError::Missing(key.to_owned()))
    }

    /// A quantity with its unit.
    pub fn quantity<Q: Written>(&self, key: &str) -> Result<Q, GivenError> {
        quantity(key, self.text(key)?)
    }

    /// Quantities parted by a comma and a blank, each with its unit.
    pub fn quantities<Q: Written>(&self, key: &str) -> Result<Vec<Q>, GivenError> {
        let texts = self.text(key)?.split(", ");
        texts.map(|text| quantity(key, text)).collect()
    }

    /// A share in per cent, 0.04 for "4 %"; below nought where something grows.
    pub fn share(&self, key: &str) -> Result<f64, GivenError> {
        let typed = self.text(key)?;
        per_cent(typed).ok_or_else(|| not(key, typed, "a per cent"))
    }

    /// A number without a unit.
    pub fn number(&self, key: &str) -> Result<f64, GivenError> {
        let typed = self.text(key)?;
        typed.parse().map_err(|_| not(key, typed, "a bare number"))
    }

    /// Numbers without a unit, parted by commas.
    pub fn numbers(&self, key: &str) -> Result<Vec<f64>, GivenError> {
        let typed = self.text(key)?;
        let number = |text: &str| text.trim().parse();
        let numbers: Result<_, _> = typed.split(',').map(number).collect();
        numbers.map_err(|_: std::num::ParseFloatError| not(key, typed, "a list of numbers"))
    }

    /// The keys that were given and never looked at.
    pub fn unused(&self) -> Vec<&'a str> {
        let used = self.used.borrow();
        let keys = self.texts.keys().map(String::as_str);
        keys.filter(|key| !used.contains(*key)).collect()
    }
}

/// A share in per cent, or nothing.
pub fn per_cent(text: &str) -> Option<f64> {
    let number = text.strip_suffix('%')?.trim();
    number.parse::<f64>().ok().map(|number| number / 100.0)
}

fn quantity<Q: Written>(key: &str, text: &str) -> Result<Q, GivenError> {
    text.parse::<Typed<Q>>()
        .map(|typed| typed.value)
        .map_err(|fault| GivenError::Quantity {
            key: key.to_owned(),
            fault,
        })
}

fn not(key: &str, typed: &str, wanted: &'static str) -> GivenError {
    GivenError::Not {
        key: key.to_owned(),
        typed: typed.to_owned(),
        wanted,
    }
}
