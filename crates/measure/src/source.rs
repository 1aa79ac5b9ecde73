//! Where a figure was seen: `Source`, `Sourced<T>`, and `Law`, a formula with range and sources.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::Deserialize;

/// A book, a standard, a page, or an honest "from memory".
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// What it is, as it is printed in a list of sources.
    pub title: String,
    /// The address where it was seen, or "from memory", or "common practice, no source".
    pub seen: String,
}

/// A value and the key of the source it was taken from.
#[derive(Clone, Debug, PartialEq)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// A key of `data/sources.toml`.
    pub source: String,
}

/// A formula of the trade: what it is called, what it says, where it holds, who says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Law {
    /// Its path, by which published checks and explanations find it: `mould::gating::choke`.
    pub name: &'static str,
    /// The formula as a founder would write it on paper.
    pub formula: &'static str,
    /// Where it holds.
    pub range: &'static str,
    /// Keys of `data/sources.toml`.
    pub sources: &'static [&'static str],
}

/// The source of a key, or nothing where the key is not in the bibliography.
pub fn source(key: &str) -> Option<&'static Source> {
    BIBLIOGRAPHY.get(key)
}

/// Every key of the bibliography with its source, in the order of the keys.
pub fn bibliography() -> impl Iterator<Item = (&'static str, &'static Source)> {
    BIBLIOGRAPHY
        .iter()
        .map(|(key, source)| (key.as_str(), source))
}

static BIBLIOGRAPHY: LazyLock<BTreeMap<String, Source>> =
    LazyLock::new(|| toml::from_str(include_str!("../data/sources.toml")).unwrap_or_default());
