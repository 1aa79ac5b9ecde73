//! What a melt has to come to: the ranges of an alloy, or the founder's own.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::Deserialize;
use thiserror::Error;

use crate::alloy::Family;
use crate::alloys::plain;
use crate::charge_makeup::element::{Element, UnknownElement};
use crate::charge_makeup::limit::Limit;
use crate::charge_makeup::measured::Measured;
use crate::charge_makeup::share_text::{ShareFault, of_limit};

/// A target.
#[derive(Clone, Debug, PartialEq)]
pub struct Target {
    /// Its name: "A356".
    pub name: String,
    /// The other names it is asked for by.
    pub also: Vec<String>,
    /// The metal it is based on.
    pub family: Family,
    /// The limits, each measured thing once.
    pub limits: Vec<Limit>,
    /// Keys of the bibliography; none for the founder's own ranges.
    pub sources: Vec<String>,
    /// What is to be said about it; empty where there is nothing to say.
    pub remark: String,
}

/// Why there is no such target.
#[derive(Debug, Error)]
pub enum TargetError {
    /// No such name.
    #[error("no target goes by \"{typed}\"; targets known: {known}")]
    Unknown {
        /// What was typed.
        typed: String,
        /// The names there are.
        known: String,
    },
    /// Not such a table.
    #[error("charge_targets.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// No such element.
    #[error("{0}")]
    Element(#[from] UnknownElement),
    /// No range.
    #[error("{0}")]
    Share(#[from] ShareFault),
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../../data/charge_targets.toml");

impl Target {
    /// The founder's own ranges, typed symbol by text.
    ///
    /// # Errors
    ///
    /// Where a symbol or a range is none.
    pub fn own(family: Family, typed: &BTreeMap<String, String>) -> Result<Target, TargetError> {
        Ok(Target {
            name: "own ranges".to_owned(),
            also: Vec::new(),
            family,
            limits: limits(typed)?,
            sources: Vec::new(),
            remark: String::new(),
        })
    }

    /// This target with some of its limits replaced, or more of them.
    ///
    /// # Errors
    ///
    /// Where a symbol or a range is none.
    pub fn narrowed(&self, typed: &BTreeMap<String, String>) -> Result<Target, TargetError> {
        let own = limits(typed)?;
        let replaced = |limit: &&Limit| own.iter().any(|other| other.of == limit.of);
        let kept = self.limits.iter().filter(|limit| !replaced(limit));
        Ok(Target {
            limits: kept.chain(&own).copied().collect(),
            ..self.clone()
        })
    }

    /// The metal that makes up the rest.
    pub fn base(&self) -> Element {
        base(self.family)
    }
}

/// The metal that makes up the rest of an alloy of a family.
pub fn base(family: Family) -> Element {
    match family {
        Family::Aluminium => Element::Aluminium,
        Family::Copper => Element::Copper,
        Family::Zinc => Element::Zinc,
        Family::Iron => Element::Iron,
        Family::Tin => Element::Tin,
    }
}

/// Every target of the built-in table.
pub fn all() -> &'static [Target] {
    &TABLE
}

/// The target that goes by a name; case, spaces and hyphens do not count.
///
/// # Errors
///
/// Where none does.
pub fn named(typed: &str) -> Result<&'static Target, TargetError> {
    let wanted = plain(typed);
    let goes_by = |target: &&Target| {
        let mut names = std::iter::once(&target.name).chain(&target.also);
        names.any(|name| plain(name) == wanted)
    };
    all().iter().find(goes_by).ok_or_else(|| {
        let known: Vec<_> = all().iter().map(|target| target.name.as_str()).collect();
        TargetError::Unknown {
            typed: typed.trim().to_owned(),
            known: known.join(", "),
        }
    })
}

/// Reads a table of targets.
///
/// # Errors
///
/// Where it is no such table.
pub fn read(text: &str) -> Result<Vec<Target>, TargetError> {
    let typed: TableText = toml::from_str(text)?;
    typed.target.into_iter().map(TargetText::meant).collect()
}

static TABLE: LazyLock<Vec<Target>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    target: Vec<TargetText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TargetText {
    name: String,
    also: Vec<String>,
    family: Family,
    limits: BTreeMap<String, String>,
    source: Vec<String>,
    #[serde(default)]
    remark: String,
}

impl TargetText {
    fn meant(self) -> Result<Target, TargetError> {
        Ok(Target {
            limits: limits(&self.limits)?,
            name: self.name,
            also: self.also,
            family: self.family,
            sources: self.source,
            remark: self.remark,
        })
    }
}

/// The limits typed, in the order of the elements.
fn limits(typed: &BTreeMap<String, String>) -> Result<Vec<Limit>, TargetError> {
    let mut limits = Vec::new();
    for (symbol, range) in typed {
        let of = Measured::read(symbol)?;
        let (low, high) = of_limit(range)?;
        limits.push(Limit { of, low, high });
    }
    limits.sort_by_key(|limit| limit.of);
    Ok(limits)
}
