//! Causes ranked: each fact multiplies the odds of the causes it speaks for or against.
//!
//! Facts are taken as independent of each other given the cause (the "naive" form of Bayes' rule),
//! which makes the shares too sure of themselves; therefore no share is told above
//! [`MOST_SURE`], and one fact of a kind is weighed once.

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;

use crate::diagnosis::case_file::CaseFile;
use crate::diagnosis::cause::{Cause, causes};
use crate::diagnosis::facts::{facts, is_look};

/// What stands behind the direction of a ratio.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Mark {
    /// A page or book.
    Published,
    /// Common practice, no source.
    Practice,
    /// Our judgement.
    Judgement,
}

/// What a fact does for a cause.
#[derive(Clone, Debug, PartialEq)]
pub struct Reason {
    /// The fact.
    pub fact: String,
    /// How many times as often it goes with the cause.
    pub times: f64,
    /// What stands behind it.
    pub mark: Mark,
}

/// A cause with how likely it is and why.
#[derive(Clone, Debug, PartialEq)]
pub struct Ranked {
    /// The cause.
    pub cause: Cause,
    /// How likely it is among all causes and one that is not in the table.
    pub share: f64,
    /// The facts that speak for it or against it, the strongest first.
    pub reasons: Vec<Reason>,
    /// Whether enough speaks for it to name it.
    pub named: bool,
}

/// The most that is ever told, however much speaks for a cause.
pub const MOST_SURE: f64 = 0.95;

/// A look that a cause is not listed with: it hardly ever looks like that. Smaller, and one odd
/// word puts the right cause out of sight; larger, and causes of other defects crowd the list.
const UNLIKE: f64 = 1.0 / 9.0;

/// The weight of a cause that is not in the table, beside 1 for each that is. A cause that nothing
/// speaks for then stays below it.
const OTHER: f64 = 9.0;

/// How many times the facts together have to speak for a cause before it is named.
const NAMED_FROM: f64 = 9.0;

/// A fact that is nearly the mark of a cause.
const NEARLY_THE_MARK: f64 = 9.0;

/// Causes, the likeliest first.
///
/// # Errors
///
/// Tables that are not sound.
pub fn ranked(case: &CaseFile) -> Result<Vec<Ranked>, toml::de::Error> {
    let (facts, rows) = (facts(case), likelihoods()?);
    let by_cause: BTreeMap<&str, &Row> = rows.iter().map(|row| (row.id.as_str(), row)).collect();
    let mut found: Vec<(f64, Ranked)> = Vec::new();
    for cause in causes()? {
        let Some(row) = by_cause.get(cause.id.as_str()) else {
            continue;
        };
        let reasons = reasons(row, &facts);
        let weight = weight(&reasons, &facts);
        found.push((weight, judged(cause, reasons)));
    }
    let all: f64 = found.iter().map(|(weight, _)| weight).sum::<f64>() + OTHER;
    for (weight, one) in &mut found {
        one.share = (*weight / all).min(MOST_SURE);
    }
    // What is alike stays in the order of the table.
    found.sort_by(|one, other| other.0.total_cmp(&one.0));
    Ok(found.into_iter().map(|(_, one)| one).collect())
}

/// The causes that are named: two at the most, and none where too little speaks for any.
pub fn named(ranked: &[Ranked]) -> impl Iterator<Item = &Ranked> {
    ranked.iter().take(2).filter(|one| one.named)
}

/// A row of the likelihoods.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Row {
    /// The cause.
    pub id: String,
    /// The check that would show it.
    pub check: String,
    /// Facts, how many times, and what stands behind it.
    pub ratios: Vec<(String, f64, Mark)>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    cause: Vec<Row>,
}

/// The likelihoods of every cause.
///
/// # Errors
///
/// A table that is not sound.
pub fn likelihoods() -> Result<Vec<Row>, toml::de::Error> {
    let table: Table = toml::from_str(include_str!("../../data/likelihoods.toml"))?;
    Ok(table.cause)
}

fn reasons(row: &Row, facts: &BTreeSet<String>) -> Vec<Reason> {
    let met = row.ratios.iter().filter(|(fact, ..)| facts.contains(fact));
    let mut reasons: Vec<Reason> = met
        .map(|(fact, times, mark)| Reason {
            fact: fact.clone(),
            times: *times,
            mark: *mark,
        })
        .collect();
    reasons.sort_by(|one, other| other.times.ln().abs().total_cmp(&one.times.ln().abs()));
    reasons
}

/// The product of the ratios; of several looks, or several places, only the best counts, since a
/// founder who writes down more of them has not seen more.
fn weight(reasons: &[Reason], facts: &BTreeSet<String>) -> f64 {
    let kinds = ["look-", "place-", "wall-"];
    let of_kind = |kind: &str| {
        let times = reasons
            .iter()
            .filter(|reason| reason.fact.starts_with(kind));
        times.map(|reason| reason.times).reduce(f64::max)
    };
    let seen: f64 = kinds.iter().filter_map(|kind| of_kind(kind)).product();
    let unlike = facts.iter().any(|fact| is_look(fact)) && of_kind("look-").is_none();
    let others = reasons
        .iter()
        .filter(|one| !kinds.iter().any(|kind| one.fact.starts_with(kind)));
    let others: f64 = others.map(|reason| reason.times).product();
    seen * others * if unlike { UNLIKE } else { 1.0 }
}

/// Whether a cause is named: a look and a place alone fit several, so that either something beyond
/// the eye speaks for it (a record, a plan, another heat or sand), or two of look, place and wall
/// are each nearly its mark.
fn judged(cause: Cause, reasons: Vec<Reason>) -> Ranked {
    let by_eye = ["look-", "place-", "wall-", "on-", "seen-", "metal-"];
    let is_by_eye = |reason: &&Reason| by_eye.iter().any(|kind| reason.fact.starts_with(kind));
    let beyond = reasons
        .iter()
        .any(|reason| reason.times > 1.0 && !is_by_eye(&reason));
    let marks = ["look-", "place-", "wall-"].iter().filter(|kind| {
        let mut of_kind = reasons
            .iter()
            .filter(|reason| reason.fact.starts_with(*kind));
        of_kind.any(|reason| reason.times >= NEARLY_THE_MARK)
    });
    let product: f64 = reasons.iter().map(|reason| reason.times).product();
    let named = product >= NAMED_FROM && (beyond || marks.count() >= 2);
    Ranked {
        cause,
        share: 0.0,
        reasons,
        named,
    }
}
