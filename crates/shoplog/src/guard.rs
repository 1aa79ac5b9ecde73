//! What changed, whether it goes with bad castings, and what changed together with it, so that the
//! two cannot be told apart. Nothing here is ever proved: a founder's pours are not drawn by lot.
//!
//! What changes, changes from pour to pour, and the castings of a pour share their metal and their
//! day. So whole pours are weighed against each other, not castings one by one: four bad castings
//! of one pour tell little more than one.

use trials::exact::{Count, fisher_in_lots};

use crate::around_pour::{AroundPour, NUMBERS, WORDS};

/// A thing that was one way in some pours and another way in others.
#[derive(Clone, Debug, PartialEq)]
pub struct Changed {
    /// The word of [`WORDS`] or [`NUMBERS`].
    pub what: &'static str,
    /// One way, as it is written down, or how a number lies.
    pub one: Way,
    /// The other way.
    pub other: Way,
    /// How often chance alone parts two equal shares as far, pours taken whole.
    pub chance: f64,
    /// Things that changed with it in every pour but this many at the most, so that they cannot be
    /// told apart.
    pub hidden_by: Vec<Hidden>,
}

/// One way of a thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// In words: "old bentonite", "≤ 4.6".
    pub is: String,
    /// Bad castings of all that were judged.
    pub bad: Count,
}

/// Something that changed together with something else.
#[derive(Clone, Debug, PartialEq)]
pub struct Hidden {
    /// The other thing.
    pub what: &'static str,
    /// The way of the other thing that always went with the first way.
    pub with_one: String,
    /// The way that always went with the other way.
    pub with_other: String,
}

/// How often chance may part two shares before they are called different.
pub const LEVEL: f64 = 0.05;

/// Fewest judged castings on each side. With fewer no test can tell anything at one in twenty.
const FEWEST: usize = 3;

/// Every thing that changed, those that go with bad castings most surely first.
pub fn changed(pours: &[AroundPour]) -> Vec<Changed> {
    let splits = splits(pours);
    let mut found: Vec<Changed> = splits
        .iter()
        .filter_map(|split| {
            let [ones, others] = [false, true].map(|side| bad_by_pour(pours, split, side));
            let [one, other] = [false, true].map(|side| count(pours, split, side));
            if one.of < FEWEST || other.of < FEWEST {
                return None;
            }
            let way = |is: &String, bad: Count| Way {
                is: is.clone(),
                bad,
            };
            Some(Changed {
                what: split.what,
                one: way(&split.ways[0], one),
                other: way(&split.ways[1], other),
                chance: fisher_in_lots(&ones, &others),
                hidden_by: hidden(split, &splits, pours),
            })
        })
        .collect();
    found.sort_by(|one, other| one.chance.total_cmp(&other.chance));
    found
}

/// The level at which one of these things is called different: shared out among them, so that a
/// log in which nothing matters names something once in twenty (Bonferroni's rule, from memory).
/// Things that changed together in every pour are one comparison, not two.
pub fn level_for(changed: &[Changed]) -> f64 {
    let once = changed.iter().enumerate().filter(|(at, one)| {
        let before = &changed[..*at];
        !before.iter().any(|other| is_the_same(one, other))
    });
    LEVEL / once.count().max(1) as f64
}

/// Whether two things part the pours in the same way.
fn is_the_same(one: &Changed, other: &Changed) -> bool {
    let sides = [one.one.bad, one.other.bad];
    let others = [other.one.bad, other.other.bad];
    let together = one.hidden_by.iter().any(|hidden| hidden.what == other.what);
    together && (sides == others || sides == [others[1], others[0]])
}

/// A thing with the side on which each pour lies.
struct Split {
    what: &'static str,
    ways: [String; 2],
    sides: Vec<Option<bool>>,
}

fn splits(pours: &[AroundPour]) -> Vec<Split> {
    let mut found = Vec::new();
    for (at, (what, _)) in WORDS.iter().enumerate() {
        let each: Vec<Option<&str>> = pours.iter().map(|pour| pour.words[at].as_deref()).collect();
        let mut ways: Vec<&str> = each.iter().flatten().copied().collect();
        ways.sort_unstable();
        ways.dedup();
        // Each way against all others; of two ways, once.
        let last = if ways.len() == 2 { 1 } else { ways.len() };
        for way in ways.iter().take(last).filter(|_| ways.len() > 1) {
            let others: Vec<&str> = ways.iter().filter(|other| *other != way).copied().collect();
            found.push(Split {
                what,
                ways: [(*way).to_owned(), others.join(", ")],
                sides: each.iter().map(|is| is.map(|is| is != *way)).collect(),
            });
        }
    }
    for (at, (what, _, least)) in NUMBERS.iter().enumerate() {
        let each: Vec<Option<f64>> = pours.iter().map(|pour| pour.numbers[at]).collect();
        if let Some(from) = usual(&each).map(|usual| usual + least) {
            let from_text = measure::text::rounded(from, 3);
            found.push(Split {
                what,
                ways: [format!("< {from_text}"), format!("≥ {from_text}")],
                sides: each
                    .iter()
                    .map(|number| number.map(|number| number >= from))
                    .collect(),
            });
        }
    }
    found.retain(|split| {
        [false, true]
            .iter()
            .all(|side| split.sides.contains(&Some(*side)))
    });
    found
}

/// The middle of the numbers.
fn usual(each: &[Option<f64>]) -> Option<f64> {
    let mut numbers: Vec<f64> = each.iter().flatten().copied().collect();
    numbers.sort_by(f64::total_cmp);
    numbers.get(numbers.len() / 2).copied()
}

fn judged<'a>(
    pours: &'a [AroundPour],
    split: &'a Split,
    side: bool,
) -> impl Iterator<Item = &'a AroundPour> {
    let on_side = pours.iter().zip(&split.sides);
    let on_side = on_side.filter(move |(_, is)| **is == Some(side));
    on_side.map(|(pour, _)| pour).filter(|pour| pour.judged > 0)
}

fn bad_by_pour(pours: &[AroundPour], split: &Split, side: bool) -> Vec<usize> {
    let each = judged(pours, split, side);
    each.map(|pour| pour.judged - pour.good).collect()
}

fn count(pours: &[AroundPour], split: &Split, side: bool) -> Count {
    let each = judged(pours, split, side);
    each.fold(Count { hits: 0, of: 0 }, |all, pour| Count {
        hits: all.hits + pour.judged - pour.good,
        of: all.of + pour.judged,
    })
}

/// Things that lie on the same side as this one in every judged pour, or on the other side in all.
fn hidden(split: &Split, splits: &[Split], pours: &[AroundPour]) -> Vec<Hidden> {
    let mut found = Vec::new();
    for other in splits.iter().filter(|other| other.what != split.what) {
        let judged = pours.iter().zip(split.sides.iter().zip(&other.sides));
        let judged = judged.filter(|(pour, _)| pour.judged > 0);
        let both: Vec<(bool, bool)> = judged
            .filter_map(|(_, (one, other))| one.zip(*other))
            .collect();
        let varies = [false, true]
            .iter()
            .all(|side| both.iter().any(|(one, _)| one == side));
        let same = both.iter().all(|(one, other)| one == other);
        let opposite = both.iter().all(|(one, other)| one != other);
        if varies && (same || opposite) {
            let (with_one, with_other) = if same { (0, 1) } else { (1, 0) };
            found.push(Hidden {
                what: other.what,
                with_one: other.ways[with_one].clone(),
                with_other: other.ways[with_other].clone(),
            });
        }
    }
    found
}
