//! From a sum to the scale: masses that can be weighed out and still keep the target.

use measure::matter::Mass;

use crate::charge_makeup::composition::likely;
use crate::charge_makeup::makeup::Bench;

/// More heaps than this are rounded one by one: every way of rounding ten is a thousand sums.
const MOST_TRIED: usize = 10;

/// How far off a way of rounding is, the gravest first: short of metal, out of target, dear, and
/// away from the sum.
type Off = [f64; 4];

/// Each mass as a whole number of steps of its scale, up or down, or all there is of the heap:
/// the way that gives metal enough, keeps the target and costs least.
pub(super) fn to_scale(bench: &Bench, kg: &[f64]) -> Vec<f64> {
    let ways: Vec<[f64; 2]> = (0..kg.len()).map(|at| ways(bench, at, kg[at])).collect();
    let used: Vec<usize> = (0..kg.len())
        .filter(|at| ways[*at][0] < ways[*at][1])
        .collect();
    let up: Vec<f64> = ways.iter().map(|[_, up]| *up).collect();
    if used.len() > MOST_TRIED {
        return up;
    }
    let mut best = (off(bench, kg, &up), up.clone());
    for choice in 0..(1_usize << used.len()) {
        let mut tried = up.clone();
        for (bit, at) in used.iter().enumerate() {
            tried[*at] = ways[*at][choice >> bit & 1];
        }
        let how = off(bench, kg, &tried);
        if how
            .partial_cmp(&best.0)
            .is_some_and(std::cmp::Ordering::is_lt)
        {
            best = (how, tried);
        }
    }
    best.1
}

/// The two masses next to a sum that the scale can weigh and the heap can give; what has to be
/// used up is not rounded below that.
fn ways(bench: &Bench, at: usize, kg: f64) -> [f64; 2] {
    let heap = &bench.heaps[at];
    let there = heap.mass.as_kg();
    let step = heap
        .step
        .unwrap_or(bench.wish.scale_step)
        .as_kg()
        .max(LEAST_STEP.as_kg());
    let steps = kg / step;
    let [down, up] = [(steps + SLACK).floor(), (steps - SLACK).ceil()];
    let used_up = bench
        .wish
        .use_up
        .iter()
        .filter(|used| used.heap == heap.name);
    let least: f64 = used_up.map(|used| used.at_least.as_kg()).sum();
    let up = (up * step).min(there).max(least.min(there));
    let down = down * step;
    [
        if down + SLACK < least {
            up
        } else {
            down.min(up)
        },
        up,
    ]
}

/// A hair, so that a mass already on the scale is not pushed a step by its last bit.
const SLACK: f64 = 1e-6;

/// No bench scale tells less.
const LEAST_STEP: Mass = Mass::from_kg(1e-7);

fn off(bench: &Bench, wanted: &[f64], kg: &[f64]) -> Off {
    let melt_kg = bench.wish.melt().as_kg();
    let brought = bench.mix.charge(kg, |_, column| bench.mix.likely(column));
    let short = (melt_kg - brought.whole).max(0.0);
    let out: f64 = bench
        .wish
        .target
        .limits
        .iter()
        .map(|limit| {
            let share = likely(&bench.mix, kg, limit.of);
            let below = limit.low.map_or(0.0, |low| (low - share).max(0.0));
            let above = limit.high.map_or(0.0, |high| (share - high).max(0.0));
            below + above
        })
        .sum();
    let cost = bench.cost(kg).map_or(0.0, |cost| cost.amount);
    let away: f64 = wanted.iter().zip(kg).map(|(a, b)| (a - b).abs()).sum();
    [noticeable(short / melt_kg), noticeable(out), cost, away]
}

/// What a sum of 64-bit numbers leaves over is nought.
fn noticeable(amount: f64) -> f64 {
    if amount < 1e-9 { 0.0 } else { amount }
}
