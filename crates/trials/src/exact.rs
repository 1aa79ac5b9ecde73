//! Two shares compared by counting every way it may have come: no approximation, so that it holds
//! for a handful as well.
//!
//! Fisher's exact test as in any textbook of statistics; the tests hold it to a general library.

/// How many of how many.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Count {
    /// Those that were.
    pub hits: usize,
    /// All of them.
    pub of: usize,
}

/// Most on a side for which power is looked for. Beyond, no small shop gets there.
const MOST: usize = 400;

/// How often chance alone parts two equal shares at least as far, on either side: the sum of all
/// tables with the same margins that are no more likely than this one.
pub fn fisher(one: Count, other: Count) -> f64 {
    let tables = Tables::of(one, other);
    let here = tables.chance(one.hits);
    // Two tables that are alike but for the last digits count as alike.
    let as_far = tables
        .each()
        .map(|(_, chance)| chance)
        .filter(|one| *one <= here * (1.0 + 1e-7));
    as_far.sum::<f64>().min(1.0)
}

/// The same on one side: how often the first share is at least as high by chance alone.
pub fn fisher_higher(one: Count, other: Count) -> f64 {
    let tables = Tables::of(one, other);
    let as_far = tables.each().filter(|(hits, _)| *hits >= one.hits);
    as_far.map(|(_, chance)| chance).sum::<f64>().min(1.0)
}

/// The same where hits come in lots, as bad castings do in pours: hits of each lot on one side and
/// on the other. Lots are dealt anew to the two sides in every way, each whole, and the ways are
/// summed in which the hits on a side are no more likely than these. With lots of one each this is
/// [`fisher`]; where the hits of a lot hang together, counting them singly calls far more
/// different than its level says.
pub fn fisher_in_lots(one: &[usize], other: &[usize]) -> f64 {
    let (lots, wanted) = (one.len() + other.len(), one.len());
    let all: usize = one.iter().chain(other).sum();
    // How likely so many lots of those dealt so far lie on the one side, with so many hits.
    let mut dealt = vec![vec![0.0; all + 1]; wanted + 1];
    dealt[0][0] = 1.0;
    let with_hits = one.iter().chain(other).filter(|hits| **hits > 0);
    for (before, hits) in with_hits.enumerate() {
        let left = (lots - before) as f64;
        for has in (0..=wanted.min(before)).rev() {
            let to_one = (wanted - has) as f64 / left;
            for sum in (0..=all).rev() {
                let here = dealt[has][sum];
                if here == 0.0 {
                    continue;
                }
                dealt[has][sum] = here * (1.0 - to_one);
                if to_one > 0.0 {
                    dealt[has + 1][sum + hits] += here * to_one;
                }
            }
        }
    }
    let chance = |sum: usize| dealt.iter().map(|of_count| of_count[sum]).sum::<f64>();
    let here = chance(one.iter().sum());
    let as_far = (0..=all).map(chance);
    let as_far = as_far.filter(|one| *one <= here * (1.0 + 1e-7));
    as_far.sum::<f64>().min(1.0)
}

/// How often a trial with so many on each side shows that two shares differ, by [`fisher`] at this
/// level, where they are truly `from` and `to`.
pub fn power(each: usize, from: f64, to: f64, level: f64) -> f64 {
    let logs = logs_of_factorials(2 * each);
    let chances = |share: f64| -> Vec<f64> {
        let chance = |hits: usize| {
            let ways = logs[each] - logs[hits] - logs[each - hits];
            let (hits, misses) = (hits as f64, (each - hits) as f64);
            let part = |count: f64, share: f64| {
                if count == 0.0 {
                    0.0
                } else {
                    count * share.ln()
                }
            };
            (ways + part(hits, share) + part(misses, 1.0 - share)).exp()
        };
        (0..=each).map(chance).collect()
    };
    let (of_from, of_to) = (chances(from), chances(to));
    let mut shown = 0.0;
    for (a, chance_a) in of_from.iter().enumerate() {
        for (b, chance_b) in of_to.iter().enumerate() {
            let both = chance_a * chance_b;
            if both > 1e-12
                && fisher(Count { hits: a, of: each }, Count { hits: b, of: each }) <= level
            {
                shown += both;
            }
        }
    }
    shown
}

/// The smallest number on each side from which on [`power`] is reached, found near the number by
/// [`each_by_curve`]; nothing where it is more than a small shop makes.
pub fn each_for_power(from: f64, to: f64, level: f64, wanted: f64) -> Option<usize> {
    let near = each_by_curve(from, to, level, wanted)?;
    let start = (near * 4 / 5).max(2);
    (start..=MOST).find(|each| power(*each, from, to, level) >= wanted)
}

/// The number on each side by the normal curve, without correction: a first look, too few for
/// small numbers.
pub fn each_by_curve(from: f64, to: f64, level: f64, wanted: f64) -> Option<usize> {
    let within = |share: f64| (0.0..=1.0).contains(&share);
    if from == to || !within(from) || !within(to) {
        return None;
    }
    let middle = f64::midpoint(from, to);
    let alike = (2.0 * middle * (1.0 - middle)).sqrt();
    let apart = (from * (1.0 - from) + to * (1.0 - to)).sqrt();
    let [by_level, by_wanted] = [1.0 - level / 2.0, wanted].map(crate::chance::normal_at);
    let each = ((by_level * alike + by_wanted * apart) / (from - to))
        .powi(2)
        .ceil();
    (each <= MOST as f64).then_some(each.max(1.0) as usize)
}

/// Every table with the same margins.
struct Tables {
    logs: Vec<f64>,
    one: usize,
    other: usize,
    hits: usize,
}

impl Tables {
    fn of(one: Count, other: Count) -> Tables {
        Tables {
            logs: logs_of_factorials(one.of + other.of),
            one: one.of,
            other: other.of,
            hits: one.hits + other.hits,
        }
    }

    fn each(&self) -> impl Iterator<Item = (usize, f64)> {
        let least = self.hits.saturating_sub(self.other);
        (least..=self.hits.min(self.one)).map(|hits| (hits, self.chance(hits)))
    }

    fn chance(&self, hits: usize) -> f64 {
        let ways = |of: usize, hits: usize| self.logs[of] - self.logs[hits] - self.logs[of - hits];
        let all = ways(self.one + self.other, self.hits);
        (ways(self.one, hits) + ways(self.other, self.hits - hits) - all).exp()
    }
}

fn logs_of_factorials(most: usize) -> Vec<f64> {
    let mut logs = vec![0.0; most + 1];
    for number in 1..=most {
        logs[number] = logs[number - 1] + (number as f64).ln();
    }
    logs
}
