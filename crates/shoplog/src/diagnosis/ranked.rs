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
//!
//! What was looked for and is not so speaks too: a record that has the metal hot and quick speaks
//! against cold metal. And a look alone names no cause, unless it is the mark of one: what else is
//! seen and written down has to speak for the cause by more than a single hint.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::diagnosis::case_file::CaseFile;
use crate::diagnosis::cause::{Cause, causes};
use crate::diagnosis::facts::{Facts, facts};

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

/// How many times as likely it is that nothing tells where the fault is small, and as unlikely
/// where it is large. Judgement: everyday blemishes are small. At one, a pock of half a millimetre
/// asks for a cause like a hole as big as a thumb.
const BLEMISH: f64 = 3.0;

/// A cause is named where it is likelier than all others and than that nothing tells, taken
/// together; `docs/diagnose-cases.md` shows what other thresholds would do.
const NAMED_FROM: f64 = 0.5;

/// The second cause is named beside the first where it is at least this share as likely.
const NAMED_BESIDE: f64 = 0.1;

/// A look that is listed so with a cause is its mark, and names it without anything else.
const MARK: f64 = 27.0;

/// Where the look is no mark, all else that is seen and written down has to speak for the cause by
/// more than this, together: more than a single hint. At one, a hint does; at nine, a
/// dirty charge and dross in the upper face name nothing.
const A_HINT: f64 = 3.0;

/// From here on, what is met with a cause is missed where it was looked for and is not so.
const NEARLY_ITS_MARK: f64 = 9.0;

/// What such a miss counts. By the rule of total probability, something met in one of twelve
/// ordinary pours, and nine times as often with a cause, is missing with the cause
/// (1 − 9/12)/(1 − 1/12) = 0.27 times as often; where it is met three times as often, 0.82 times,
/// which is told as nothing.
const MISSED: f64 = 1.0 / 3.0;

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
    let nothing = NOTHING_TELLS * blemish(&facts);
    let all: f64 = found.iter().map(|(_, one)| one.share).sum::<f64>() + nothing;
    for (_, one) in &mut found {
        one.share = (one.share / all).min(MOST_SURE);
    }
    // What is alike stays in the order of the table.
    found.sort_by(|(_, one), (_, other)| other.share.total_cmp(&one.share));
    name(&mut found);
    Ok(found.into_iter().map(|(_, one)| one).collect())
}

/// The causes that are named: two at the most, and none where too little speaks for any.
pub fn named(ranked: &[Ranked]) -> impl Iterator<Item = &Ranked> {
    ranked.iter().take(2).filter(|one| one.named)
}

/// How many times as likely the size makes it that nothing tells.
fn blemish(facts: &Facts) -> f64 {
    match () {
        () if facts.met.contains("small") => BLEMISH,
        () if facts.met.contains("large") => 1.0 / BLEMISH,
        () => 1.0,
    }
}

fn name(found: &mut [(Weight, Ranked)]) {
    let Some((weight, first)) = found.first() else {
        return;
    };
    let spoken_for = weight.look >= MARK || weight.beside_the_look > A_HINT;
    let (share, stands) = (first.share, first.share >= NAMED_FROM && spoken_for);
    for (at, (_, one)) in found.iter_mut().take(2).enumerate() {
        one.named = stands && (at == 0 || one.share >= NAMED_BESIDE * share);
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

fn reasons(row: &Row, facts: &Facts) -> Vec<Reason> {
    let met = row.ratios.iter();
    let met = met.filter(|(fact, ..)| facts.met.contains(fact));
    let mut reasons: Vec<Reason> = met
        .map(|(fact, times, mark)| Reason {
            fact: fact.clone(),
            times: *times,
            mark: *mark,
        })
        .collect();
    reasons.extend(missed(row, facts).map(|fact| Reason {
        fact: format!("no {}", fact.trim_end_matches('-')),
        times: MISSED,
        mark: Mark::Judgement,
    }));
    reasons.sort_by(|one, other| other.times.ln().abs().total_cmp(&one.times.ln().abs()));
    reasons
}

/// What nearly is the mark of a cause, was looked for and is not so.
fn missed<'a>(row: &'a Row, facts: &'a Facts) -> impl Iterator<Item = &'a str> {
    let marks = |absent: &str| {
        let of_kind = |fact: &str| match absent.ends_with('-') {
            true => fact.starts_with(absent),
            false => fact == absent,
        };
        let mut listed = row.ratios.iter();
        listed.any(|(fact, times, _)| of_kind(fact) && *times >= NEARLY_ITS_MARK)
    };
    let absent = facts.absent.iter().map(String::as_str);
    absent.filter(move |absent| marks(absent))
}

/// How much a case speaks for a cause.
struct Weight {
    /// By what is seen.
    seen: f64,
    /// By what was written down, found by the plan, and seen of other heats and sands.
    written: f64,
    /// By the look that speaks most for it, alone.
    look: f64,
    /// By all but the look, in full.
    beside_the_look: f64,
}

/// Of several looks one is the fault's own and nobody says which, so that they are averaged; the
/// same goes for places and walls.
fn weight(row: &Row, facts: &Facts) -> Weight {
    let times = |fact: &str| {
        let listed = row.ratios.iter().find(|(listed, ..)| listed == fact);
        listed.map(|(_, times, _)| *times)
    };
    let of_kind = |kind: &str, unlisted: f64| -> Vec<f64> {
        let met = facts.met.iter().filter(|fact| fact.starts_with(kind));
        met.map(|fact| times(fact).unwrap_or(unlisted)).collect()
    };
    let mean = |each: &[f64]| match each.len() {
        0 => 1.0,
        count => each.iter().sum::<f64>() / count as f64,
    };
    let product = |wanted: fn(&str) -> bool| -> f64 {
        let met = facts.met.iter().filter(|fact| wanted(fact));
        met.filter_map(|fact| times(fact)).product()
    };
    let looks = of_kind("look-", UNLIKE);
    let by_place_and_wall = mean(&of_kind("place-", 1.0)) * mean(&of_kind("wall-", 1.0));
    let by_eye = by_place_and_wall * product(is_beside_the_look);
    let missed = MISSED.powi(i32::try_from(missed(row, facts).count()).unwrap_or(i32::MAX));
    let written = product(is_written) * missed;
    Weight {
        seen: mean(&looks) * by_eye.powf(WITH_THE_LOOK),
        written,
        look: looks.iter().copied().fold(0.0, f64::max),
        beside_the_look: by_eye * written,
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
