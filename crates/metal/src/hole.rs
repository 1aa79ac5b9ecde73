//! Why there is a hole: likely causes, the check that parts the best two, and one change.
//!
//! The table is common practice and a judgement. It sorts causes; it proves none.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use measure::source::Law;
use serde::Deserialize;

use crate::alloy::Family;
use crate::evidence::{self, Outcomes};

/// Shares of the causes of a hole.
pub const CAUSES: Law = Law {
    name: "metal::hole::causes",
    formula: "P = w L_place L_look / Σ w L_place L_look",
    range: "one kind of hole in one casting; all likelihoods are a judgement",
    sources: &["bayes", "gas-hole-lexicon", "common-practice"],
};

/// Where holes are.
pub const PLACES: &[&str] = &[
    "top", "heavy", "core", "through", "skin", "gate", "thin", "drag",
];

/// How holes look.
pub const LOOKS: &[&str] = &[
    "round-bright",
    "round-dull",
    "one-large-smooth",
    "jagged",
    "sink",
    "sand",
    "dross",
    "seam",
];

/// A cause of holes.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cause {
    /// What it is.
    pub name: String,
    common: BTreeMap<Family, f64>,
    place: Outcomes,
    look: Outcomes,
    /// The one change for the next pour.
    pub lever: String,
    checks: BTreeMap<String, String>,
}

/// A check that parts causes.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Check {
    name: String,
    /// What to do.
    pub what: String,
}

/// What parts two causes: the check, and what each of them would show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Parting<'a> {
    /// What to do.
    pub what: &'a str,
    /// What the first cause shows.
    pub first: &'a str,
    /// What the second shows.
    pub second: &'a str,
}

/// The share of each cause, the likeliest first; place and look may be left out. Law: [`CAUSES`].
pub fn causes(metal: Family, place: &str, look: &str) -> Vec<(&'static Cause, f64)> {
    let of = |outcomes: &Outcomes, seen: &str| match seen {
        "" => 1.0,
        seen => evidence::likelihood(outcomes, seen),
    };
    let weighed: Vec<f64> = all()
        .iter()
        .map(|cause| {
            let before = cause.common.get(&metal).copied().unwrap_or(1.0);
            before * of(&cause.place, place) * of(&cause.look, look)
        })
        .collect();
    let mut found: Vec<_> = all().iter().zip(evidence::shares(&weighed)).collect();
    found.sort_by(|a, b| b.1.total_cmp(&a.1));
    found
}

/// The cheapest check whose outcome differs between two causes.
pub fn parting<'a>(one: &'a Cause, other: &'a Cause) -> Option<Parting<'a>> {
    checks().iter().find_map(|check| {
        let (first, second) = (one.checks.get(&check.name)?, other.checks.get(&check.name)?);
        (first != second).then_some(Parting {
            what: &check.what,
            first,
            second,
        })
    })
}

/// Every cause of the table.
pub fn all() -> &'static [Cause] {
    &TABLE.0
}

/// Every check of the table, the cheapest first.
pub fn checks() -> &'static [Check] {
    &TABLE.1
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/holes.toml");

/// Reads a table of causes and checks.
pub fn read(text: &str) -> Result<(Vec<Cause>, Vec<Check>), toml::de::Error> {
    let typed: TableText = toml::from_str(text)?;
    Ok((typed.cause, typed.check))
}

static TABLE: LazyLock<(Vec<Cause>, Vec<Check>)> =
    LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    cause: Vec<Cause>,
    check: Vec<Check>,
}
