//! What was seen, weighed: how likely each of several explanations is, and the look that parts two.
//!
//! A look has outcomes; each explanation says in how many of a hundred cases it shows which. The
//! looks are taken as independent of one another, which flatters the answer a little.

use std::collections::BTreeMap;

/// In how many of a hundred cases an explanation shows each outcome of a look.
pub type Outcomes = BTreeMap<String, f64>;

/// Share that is left to an outcome the table calls impossible: tables are wrong now and then,
/// and with a nought one slip of the eye would rule out the truth for good.
const NEVER_QUITE_NOUGHT: f64 = 0.005;

/// How likely an outcome is under an explanation, as a part of one.
pub fn likelihood(outcomes: &Outcomes, seen: &str) -> f64 {
    let in_a_hundred = outcomes.get(seen).copied().unwrap_or(0.0);
    (in_a_hundred / 100.0).max(NEVER_QUITE_NOUGHT)
}

/// Shares of the explanations: the weight of each before anything was seen, times what each says
/// of what was seen, made to add up to one. All weights nought: all shares nought.
pub fn shares(weighed: &[f64]) -> Vec<f64> {
    let all: f64 = weighed.iter().sum();
    let share = |weight: &f64| if all > 0.0 { weight / all } else { 0.0 };
    weighed.iter().map(share).collect()
}

/// How well a look parts two explanations: nought where both show the same, one where never.
pub fn apart(one: &Outcomes, other: &Outcomes) -> f64 {
    let names = one.keys().chain(other.keys());
    let distinct: std::collections::BTreeSet<&String> = names.collect();
    let differ = |name: &&String| (likelihood(one, name) - likelihood(other, name)).abs();
    (distinct.iter().map(differ).sum::<f64>() / 2.0).min(1.0)
}
