//! Why a law is not worked out.

use measure::text::TextError;
use thiserror::Error;

/// Figures that cannot be, as the law sees them.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{what}: {why}; {advice}")]
pub struct Impossible {
    /// Which input.
    pub what: &'static str,
    /// Why it cannot be.
    pub why: String,
    /// What to do.
    pub advice: String,
}

/// Why nothing came of an ask.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum Refusal {
    /// No law goes by that name.
    #[error("nothing here is called \"{name}\"{}", meant(near))]
    NoSuchName {
        /// What was asked for.
        name: String,
        /// The nearest name there is.
        near: Option<&'static str>,
    },
    /// An input that the law does not ask for.
    #[error("{name} does not ask for \"{key}\"{}; it asks for {asks}", meant(near))]
    NotAsked {
        /// The law.
        name: &'static str,
        /// What was given.
        key: String,
        /// The nearest input there is.
        near: Option<&'static str>,
        /// Everything it asks for.
        asks: String,
    },
    /// Something needed was not given.
    #[error("{name} needs {}: write it like {example}", keys.join(", "))]
    Missing {
        /// The law.
        name: &'static str,
        /// What is missing, each with what it is.
        keys: Vec<String>,
        /// A whole ask that works.
        example: String,
    },
    /// A quantity that cannot be read.
    #[error("{key}: {fault}")]
    Unreadable {
        /// Which input.
        key: &'static str,
        /// What is wrong with it.
        fault: TextError,
    },
    /// A word, a share, a number or a shape that cannot be read.
    #[error("{key}: \"{typed}\" is not {wanted}")]
    Not {
        /// Which input.
        key: &'static str,
        /// What was typed.
        typed: String,
        /// What has to stand there.
        wanted: String,
    },
    /// The law itself says no.
    #[error("{0}")]
    Impossible(#[from] Impossible),
}

fn meant(near: &Option<&'static str>) -> String {
    near.map_or_else(String::new, |near| format!(" - did you mean {near}?"))
}
