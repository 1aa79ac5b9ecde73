//! Causes ranked: each fact multiplies the odds of the causes it speaks for or against, and beside
//! the causes stands that nothing tells.
//!
//! Where nothing tells, a fault looks as it does over all causes alike, and the record is as on any
//! day. What is seen therefore speaks for a cause only so far as it speaks against the others: a
//! look that ten causes share names none of them, and a record without anything telling leaves the
//! odds where the eye has put them. Facts of the record are taken as independent of each other
//! given the cause (the "naive" form of Bayes' rule), which makes the shares too sure of themselves;
//! what is seen by the eye hangs together and counts as a square root, and no share is told
//! above [`MOST_SURE`].

use std::collections::{BTreeMap, BTreeSet};

use serde::Deserialize;

use crate::diagnosis::case_file::CaseFile;
use crate::diagnosis::cause::{Cause, causes};
use crate::diagnosis::facts::facts;

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
    /// How likely it is among all causes and the case in which nothing tells.
    pub share: f64,
    /// The facts that speak for it or against it, the strongest first.
    pub reasons: Vec<Reason>,
    /// Whether it is named.
    pub named: bool,
}

/// The most that is ever told, however much speaks for a cause.
pub const MOST_SURE: f64 = 0.95;

/// How likely it is, before anything is known of a case, that what was seen and written down tells
/// of no cause: an everyday blemish, a fault of some cause not in the table, or a record that looks
/// past it. Judgement. At a fifth, a look that goes with one cause five times in eight names it
/// without any record; at a half no look does, however plain.
const NOTHING_TELLS: f64 = 1.0 / 3.0;

/// A cause is named where it is likelier than all others and than that nothing tells, taken
/// together; `docs/diagnose-cases.md` shows what other thresholds would do.
const NAMED_FROM: f64 = 0.5;

/// The second cause is named beside the first where it is at least this share as likely.
const NAMED_BESIDE: f64 = 0.1;

/// A look that a cause is not listed with. Larger, and causes of other defects crowd the list;
/// smaller changes nothing, since the looks of a case are averaged.
const UNLIKE: f64 = 1.0 / 27.0;

/// The power to which place, wall, size, time of finding, count of castings and metal are taken.
/// They hang together with the look (many small holes mostly lie everywhere, on all castings), so
/// that in full they would say the same thing twice; at nought, a place would say nothing.
const WITH_THE_LOOK: f64 = 0.5;

/// What is seen by the eye beside look, place and wall.
const BESIDE_THE_LOOK: [&str; 6] = ["on-", "seen-", "metal-", "small", "medium", "large"];

/// Causes, the likeliest first.
///
/// # Errors
///
/// Tables that are not sound.
pub fn ranked(case: &CaseFile) -> Result<Vec<Ranked>, toml::de::Error> {
    let (facts, rows) = (facts(case), likelihoods()?);
    let by_cause: BTreeMap<&str, &Row> = rows.iter().map(|row| (row.id.as_str(), row)).collect();
    let mut found: Vec<(Weight, Ranked)> = Vec::new();
    for cause in causes()? {
        let Some(row) = by_cause.get(cause.id.as_str()) else {
            continue;
        };
        let one = Ranked {
            cause,
            share: 0.0,
            reasons: reasons(row, &facts),
            named: false,
        };
        found.push((weight(row, &facts), one));
    }
    // Where nothing tells, what is seen comes as often as it does over all causes alike.
    let count = found.len().max(1) as f64;
    let usual = found.iter().map(|(weight, _)| weight.seen).sum::<f64>() / count;
    for (weight, one) in &mut found {
        one.share = (1.0 - NOTHING_TELLS) / count * weight.seen / usual * weight.written;
    }
    let all: f64 = found.iter().map(|(_, one)| one.share).sum::<f64>() + NOTHING_TELLS;
    let mut ranked: Vec<Ranked> = found.into_iter().map(|(_, one)| one).collect();
    for one in &mut ranked {
        one.share = (one.share / all).min(MOST_SURE);
    }
    // What is alike stays in the order of the table.
    ranked.sort_by(|one, other| other.share.total_cmp(&one.share));
    name(&mut ranked);
    Ok(ranked)
}

/// The causes that are named: two at the most, and none where too little speaks for any.
pub fn named(ranked: &[Ranked]) -> impl Iterator<Item = &Ranked> {
    ranked.iter().take(2).filter(|one| one.named)
}

fn name(ranked: &mut [Ranked]) {
    let first = ranked.first().map_or(0.0, |one| one.share);
    for (at, one) in ranked.iter_mut().take(2).enumerate() {
        let beside = at == 0 || one.share >= NAMED_BESIDE * first;
        one.named = first >= NAMED_FROM && beside;
    }
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

/// How much a case speaks for a cause.
struct Weight {
    /// By what is seen.
    seen: f64,
    /// By what was written down, found by the plan, and seen of other heats and sands.
    written: f64,
}

/// Of several looks one is the fault's own and nobody says which, so that they are averaged; the
/// same goes for places and walls.
fn weight(row: &Row, facts: &BTreeSet<String>) -> Weight {
    let times = |fact: &str| {
        let listed = row.ratios.iter().find(|(listed, ..)| listed == fact);
        listed.map(|(_, times, _)| *times)
    };
    let mean = |kind: &str, unlisted: f64| {
        let of_kind = facts.iter().filter(|fact| fact.starts_with(kind));
        let each: Vec<f64> = of_kind
            .map(|fact| times(fact).unwrap_or(unlisted))
            .collect();
        match each.len() {
            0 => 1.0,
            count => each.iter().sum::<f64>() / count as f64,
        }
    };
    let product = |wanted: fn(&str) -> bool| -> f64 {
        let facts = facts.iter().filter(|fact| wanted(fact));
        facts.filter_map(|fact| times(fact)).product()
    };
    let with_the_look = mean("place-", 1.0) * mean("wall-", 1.0) * product(is_beside_the_look);
    Weight {
        seen: mean("look-", UNLIKE) * with_the_look.powf(WITH_THE_LOOK),
        written: product(is_written),
    }
}

/// Whether it is seen by the eye, and neither look, place nor wall.
fn is_beside_the_look(fact: &str) -> bool {
    BESIDE_THE_LOOK.iter().any(|kind| fact.starts_with(kind))
}

/// Whether it was written down, found by the plan or seen of another heat, sand or sprue.
fn is_written(fact: &str) -> bool {
    let by_eye = ["look-", "place-", "wall-"];
    !is_beside_the_look(fact) && !by_eye.iter().any(|kind| fact.starts_with(kind))
}
