//! Why no charge meets the target, and what to add so that one does.

use measure::matter::Mass;

use crate::alloy::Family;
use crate::charge_makeup::cheapest::Sum;
use crate::charge_makeup::composition::likely;
use crate::charge_makeup::heap::Heap;
use crate::charge_makeup::limit::Side;
use crate::charge_makeup::makeup::Bench;
use crate::charge_makeup::measured::Measured;
use crate::charge_makeup::mix::Mix;
use crate::charge_makeup::programme::Row;
use crate::charge_makeup::stock::{Stock, of_family};

/// Why no charge meets the target.
#[derive(Clone, Debug, PartialEq)]
pub struct Infeasible {
    /// The metal it is about.
    pub family: Family,
    /// What stands in the way.
    pub cause: Cause,
    /// The least of ordinary stock that makes it possible; nothing where none does.
    pub help: Vec<Help>,
}

/// What stands in the way of a charge.
#[derive(Clone, Debug, PartialEq)]
pub enum Cause {
    /// There is not metal enough.
    TooLittle {
        /// What the heaps give.
        there: Mass,
        /// What is wanted, before it is skimmed.
        wanted: Mass,
    },
    /// What has to be used up is more than the charge, or than there is of it.
    UseUp,
    /// Limits that cannot be reached, each by itself.
    OutOfReach(Vec<OutOfReach>),
    /// Limits that can be reached one by one and not together.
    NotTogether(Option<OutOfReach>),
}

/// A limit that cannot be reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfReach {
    /// Of what.
    pub of: Measured,
    /// On which side.
    pub side: Side,
    /// What the target wants, in parts of one.
    pub wanted: f64,
    /// The nearest these heaps come to it.
    pub nearest: f64,
    /// Whether no heap at all stands on the right side of it.
    pub by_every_heap: bool,
}

/// Ordinary stock that helps.
#[derive(Clone, Debug, PartialEq)]
pub struct Help {
    /// The stock.
    pub stock: &'static Stock,
    /// The least of it.
    pub mass: Mass,
}

/// Why a sum has no answer.
pub(super) fn why(bench: &Bench, sum: &Sum) -> Infeasible {
    Infeasible {
        family: bench.wish.target.family,
        cause: cause(bench, sum),
        help: help(bench),
    }
}

fn cause(bench: &Bench, sum: &Sum) -> Cause {
    let there: Vec<f64> = bench.there();
    let whole = |kg: &[f64]| {
        bench
            .mix
            .charge(kg, |_, column| bench.mix.likely(column))
            .whole
    };
    let wanted = bench.wish.melt();
    if whole(&there) < wanted.as_kg() * (1.0 - 1e-9) {
        let there = Mass::from_kg(whole(&there));
        return Cause::TooLittle { there, wanted };
    }
    if sum.programme().solve().is_none() {
        return Cause::UseUp;
    }
    let ends = || {
        let limits = sum.limits.iter();
        limits.flat_map(|limit| limit.ends().map(|(side, end)| (limit.of, side, end)))
    };
    let alone: Vec<OutOfReach> = ends()
        .filter_map(|(of, side, wanted)| nearest(sum, of, side, wanted, &[]))
        .collect();
    if !alone.is_empty() {
        return Cause::OutOfReach(alone);
    }
    let rest = |of: Measured, side: Side| -> Vec<(Measured, Side, f64)> {
        ends().filter(|end| (end.0, end.1) != (of, side)).collect()
    };
    let together =
        ends().filter_map(|(of, side, wanted)| nearest(sum, of, side, wanted, &rest(of, side)));
    let far = |out: &OutOfReach| (out.nearest - out.wanted).abs() / out.wanted.max(1e-4);
    Cause::NotTogether(together.min_by(|a, b| far(a).total_cmp(&far(b))))
}

/// The nearest a charge comes to an end of a limit while it keeps the others; nothing where it
/// reaches it, or where the others cannot be kept.
fn nearest(
    sum: &Sum,
    of: Measured,
    side: Side,
    wanted: f64,
    others: &[(Measured, Side, f64)],
) -> Option<OutOfReach> {
    let mut programme = sum.programme();
    let kept = others
        .iter()
        .map(|(of, side, end)| sum.row(*of, *side, *end, 0.0));
    programme.rows.extend(kept);
    let row = sum.row(of, side, wanted, 0.0);
    let towards = if side == Side::High { 1.0 } else { -1.0 };
    programme.cost = row.sum.iter().map(|beyond| towards * beyond).collect();
    let parts = programme.solve()?;
    let share = likely(sum.mix, &parts, of);
    let out = towards * (share - wanted) > REACHED;
    out.then(|| OutOfReach {
        of,
        side,
        wanted,
        nearest: share,
        by_every_heap: row.sum.iter().all(|beyond| towards * beyond > 0.0),
    })
}

/// A share this near is reached.
const REACHED: f64 = 1e-8;

/// The least mass of ordinary stock, taken from all there is of it, with which a charge exists.
/// Stock counts with the end of its range that helps least, so that the advice is enough.
fn help(bench: &Bench) -> Vec<Help> {
    let stock: Vec<&'static Stock> = of_family(bench.wish.target.family).collect();
    let mut heaps = bench.heaps.to_vec();
    heaps.extend(stock.iter().map(|stock| as_heap(stock)));
    let wish = bench.wish;
    let mix = Mix::of(
        &heaps,
        &wish.target.limits,
        wish.target.base(),
        &wish.losses,
    );
    let mut bounds = bench.sum(&bench.there()).bounds;
    bounds.extend(stock.iter().map(|_| (0.0, PLENTY)));
    let sum = Sum {
        mix: &mix,
        prices: None,
        bounds,
        limits: wish.target.limits.clone(),
    };
    let mut programme = sum.programme();
    programme.rows.extend(rows(&sum, bench.heaps.len()));
    programme.cost = (0..heaps.len())
        .map(|at| f64::from(u8::from(at >= bench.heaps.len())))
        .collect();
    let Some(parts) = programme.solve() else {
        return Vec::new();
    };
    let melt = wish.melt();
    let added = stock.iter().zip(parts.iter().skip(bench.heaps.len()));
    added
        .filter(|(_, part)| **part > 1e-7)
        .map(|(stock, part)| Help {
            stock,
            mass: melt * *part,
        })
        .collect()
}

/// Kilograms of a stock for a kilogram of melt that no charge exceeds.
const PLENTY: f64 = 3.0;

/// The limits, with the founder's heaps at their likely values and the stock at its worst.
fn rows(sum: &Sum, own: usize) -> Vec<Row> {
    let limits = sum.limits.iter();
    let ends = limits.flat_map(|limit| limit.ends().map(|(side, end)| (limit.of, side, end)));
    ends.map(|(of, side, end)| {
        let likely = sum.row(of, side, end, 0.0);
        let worst = sum.row(of, side, end, 1.0);
        let own_and_stock = likely.sum[..own].iter().chain(&worst.sum[own..]);
        Row {
            sum: own_and_stock.copied().collect(),
            is: likely.is,
            than: 0.0,
        }
    })
    .collect()
}

fn as_heap(stock: &Stock) -> Heap {
    Heap {
        name: stock.name.clone(),
        mass: Mass::ZERO,
        price: None,
        origin: stock.origin,
        marks: Vec::new(),
        elements: stock.elements.clone(),
        recovery: stock.recovery,
        step: None,
    }
}

impl Infeasible {
    /// The limit that a stock helps with, and the share of it in that stock at its worst: high
    /// enough where the limit is too little of it, low enough where it is too much.
    pub fn helped_by(&self, stock: &Stock) -> Option<(OutOfReach, f64)> {
        let out = match &self.cause {
            Cause::OutOfReach(all) => *all.first()?,
            Cause::NotTogether(Some(out)) => *out,
            _ => return None,
        };
        let weighed = |get: fn(&measure::band::Band<f64>) -> f64| -> f64 {
            let elements = stock.elements.iter();
            elements
                .map(|(element, band)| out.of.weight(*element) * get(band))
                .sum()
        };
        let (high, low) = (weighed(|band| band.high()), weighed(|band| band.low()));
        match out.side {
            Side::High if high < out.wanted => Some((out, high)),
            Side::Low if low > out.wanted => Some((out, low)),
            _ => None,
        }
    }
}
