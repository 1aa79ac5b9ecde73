//! What was typed on the command line of the bench: `key=figure` pairs, as for a law.

use std::collections::BTreeMap;
use std::str::FromStr;

use job::scoop::{Scoop, weighed};
use measure::matter::Mass;
use measure::share::Share;
use measure::text::{TextError, Typed, Written, plain_number};
use sand::moisture::wet_from_dry;
use thiserror::Error;

/// Pairs as typed, checked against the keys that are taken.
#[derive(Clone, Debug)]
pub struct Given {
    pairs: BTreeMap<String, String>,
    scoops: Vec<Scoop>,
}

/// Why what was typed is not understood.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum GivenError {
    /// Not a pair.
    #[error("\"{0}\" gives nothing a name: write it like wet='200 g'")]
    NotAPair(
        /// What was typed.
        String,
    ),
    /// A key that is not taken.
    #[error("\"{key}\" is not asked for{near}; taken are: {taken}")]
    Strange {
        /// What was typed.
        key: String,
        /// The nearest key, in words, or nothing.
        near: String,
        /// What is taken.
        taken: String,
    },
    /// A key given twice.
    #[error("\"{0}\" is there twice: give it once")]
    Twice(
        /// The key.
        String,
    ),
    /// Something that has to be known.
    #[error("{key} is missing: {what}")]
    Missing {
        /// The key.
        key: &'static str,
        /// What it is, and how it is typed.
        what: &'static str,
    },
    /// A figure that cannot be read.
    #[error("{key}: {error}")]
    Text {
        /// The key.
        key: String,
        /// What is wrong.
        error: TextError,
    },
    /// A number that cannot be read.
    #[error("{key}: \"{typed}\" is no {what}")]
    NotThat {
        /// The key.
        key: String,
        /// What was typed.
        typed: String,
        /// What is wanted.
        what: &'static str,
    },
    /// A moisture that does not say of what.
    #[error(
        "{key}: \"{typed}\" does not say of what: write \"{typed} of wet mass\" or \"{typed} of \
         dry sand\"; the two differ"
    )]
    Basis {
        /// The key.
        key: String,
        /// What was typed.
        typed: String,
    },
}

impl GivenError {
    /// Whether the founder has to choose, rather than to type it anew.
    pub fn asks(&self) -> bool {
        matches!(self, GivenError::Basis { .. })
    }
}

impl Given {
    /// Reads pairs; keys that end with a point are taken with anything behind it.
    ///
    /// # Errors
    ///
    /// A text that is no pair, a key that is not taken, a key given twice.
    pub fn read(typed: &[String], keys: &[&str], scoops: &[Scoop]) -> Result<Given, GivenError> {
        let mut pairs = BTreeMap::new();
        for text in typed {
            let (key, figure) = text
                .split_once('=')
                .ok_or_else(|| GivenError::NotAPair(text.clone()))?;
            let key = key.trim();
            let taken =
                |known: &&str| *known == key || (known.ends_with('.') && key.starts_with(*known));
            if !keys.iter().any(taken) {
                return Err(strange(key, keys));
            }
            let twice = pairs.insert(key.to_owned(), figure.trim().to_owned());
            if twice.is_some() {
                return Err(GivenError::Twice(key.to_owned()));
            }
        }
        Ok(Given {
            pairs,
            scoops: scoops.to_vec(),
        })
    }

    /// Whether it was typed.
    pub fn has(&self, key: &str) -> bool {
        self.pairs.contains_key(key)
    }

    /// What was typed.
    pub fn text(&self, key: &str) -> Option<&str> {
        self.pairs.get(key).map(String::as_str)
    }

    /// Everything typed under keys that begin so, with what follows.
    pub fn under<'a>(&'a self, head: &'a str) -> impl Iterator<Item = (&'a str, &'a str)> {
        let pairs = self.pairs.iter();
        pairs.filter_map(move |(key, text)| Some((key.strip_prefix(head)?, text.as_str())))
    }

    /// A quantity, where it was typed.
    ///
    /// # Errors
    ///
    /// [`GivenError::Text`] where it cannot be read.
    pub fn find<Q: Written>(&self, key: &str) -> Result<Option<Q>, GivenError> {
        let read = |text: &str| {
            let typed = Typed::<Q>::from_str(text).map_err(|error| GivenError::Text {
                key: key.to_owned(),
                error,
            })?;
            Ok(typed.value)
        };
        self.text(key).map(read).transpose()
    }

    /// A quantity that has to be typed.
    ///
    /// # Errors
    ///
    /// As [`Given::find`], and [`GivenError::Missing`].
    pub fn get<Q: Written>(&self, key: &'static str, what: &'static str) -> Result<Q, GivenError> {
        self.find(key)?.ok_or(GivenError::Missing { key, what })
    }

    /// A mass, perhaps in the shop's own scoops.
    ///
    /// # Errors
    ///
    /// As [`Given::find`].
    pub fn find_mass(&self, key: &str) -> Result<Option<Mass>, GivenError> {
        let Some(text) = self.text(key) else {
            return Ok(None);
        };
        let text = weighed(&self.scoops, text);
        let typed = Typed::<Mass>::from_str(&text);
        let typed = typed.map_err(|error| GivenError::Text {
            key: key.to_owned(),
            error,
        })?;
        Ok(Some(typed.value))
    }

    /// A mass that has to be typed.
    ///
    /// # Errors
    ///
    /// As [`Given::get`].
    pub fn mass(&self, key: &'static str, what: &'static str) -> Result<Mass, GivenError> {
        self.find_mass(key)?
            .ok_or(GivenError::Missing { key, what })
    }

    /// A plain per cent, 0.6 for `60 %`.
    ///
    /// # Errors
    ///
    /// [`GivenError::NotThat`] for anything else.
    pub fn percent(&self, key: &str) -> Result<Option<f64>, GivenError> {
        let read = |text: &str| {
            percent(text).ok_or_else(|| GivenError::NotThat {
                key: key.to_owned(),
                typed: text.to_owned(),
                what: "per cent between 0 and 100, like 60 %",
            })
        };
        self.text(key).map(read).transpose()
    }

    /// A plain number.
    ///
    /// # Errors
    ///
    /// [`GivenError::NotThat`] for anything else.
    pub fn number(&self, key: &str) -> Result<Option<f64>, GivenError> {
        let read = |text: &str| {
            plain_number(text).ok_or_else(|| GivenError::NotThat {
                key: key.to_owned(),
                typed: text.to_owned(),
                what: "bare number: write it without a unit, like 90, all of one test in one",
            })
        };
        self.text(key).map(read).transpose()
    }

    /// A moisture as a share of the wet mass, whichever it was told of.
    ///
    /// # Errors
    ///
    /// [`GivenError::Basis`] where it does not say of what.
    pub fn moisture(&self, key: &str) -> Result<Option<f64>, GivenError> {
        let read = |text: &str| moisture(key, text);
        self.text(key).map(read).transpose()
    }
}

/// A moisture of the wet mass from a text that says of what.
///
/// # Errors
///
/// [`GivenError::Basis`] where it does not.
pub fn moisture(key: &str, text: &str) -> Result<f64, GivenError> {
    if percent(text).is_some() {
        return Err(GivenError::Basis {
            key: key.to_owned(),
            typed: text.trim().to_owned(),
        });
    }
    let wrong = |error| GivenError::Text {
        key: key.to_owned(),
        error,
    };
    let share = Share::from_str(text).map_err(wrong)?;
    match share.of.split_whitespace().next() {
        Some("wet") => Ok(share.ratio),
        Some("dry") => Ok(wet_from_dry(share.ratio)),
        _ => Err(GivenError::NotThat {
            key: key.to_owned(),
            typed: text.trim().to_owned(),
            what: "moisture \"of wet mass\" or \"of dry sand\"",
        }),
    }
}

/// A plain per cent as a part of one.
pub fn percent(text: &str) -> Option<f64> {
    let number = plain_number(text.trim().strip_suffix('%')?)?;
    (0.0..=100.0).contains(&number).then_some(number / 100.0)
}

fn strange(key: &str, keys: &[&str]) -> GivenError {
    let alike = |known: &&&str| {
        known
            .chars()
            .zip(key.chars())
            .take_while(|(a, b)| a == b)
            .count()
    };
    let near = keys
        .iter()
        .max_by_key(alike)
        .filter(|known| alike(known) > 1);
    GivenError::Strange {
        key: key.to_owned(),
        near: near.map_or_else(String::new, |near| format!(" - did you mean {near}?")),
        taken: keys.join(", "),
    }
}
