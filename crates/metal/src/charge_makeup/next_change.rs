//! The cheapest change to a charge that helps: surer, or less dear.

use measure::matter::Mass;
use measure::money::Money;

use crate::charge_makeup::chance::Chance;
use crate::charge_makeup::makeup::Bench;

/// A change to a charge.
#[derive(Clone, Debug, PartialEq)]
pub struct NextChange {
    /// What it is for.
    pub aim: Aim,
    /// What to take more of each heap, or less where it is below nought.
    pub steps: Vec<(String, f64)>,
    /// Heaps of which more would have to be there than is.
    pub beyond: Vec<(String, Mass)>,
    /// How sure the charge is then.
    pub chance: Chance,
    /// What it costs more, or less where it is below nought.
    pub dearer: Option<Money>,
}

/// What a change is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aim {
    /// To come out in target more surely.
    Surer,
    /// To pay less.
    Cheaper,
}

/// A charge this sure wants no change for the sake of its target.
const SURE_ENOUGH: f64 = 0.95;

/// A gain smaller than the error of the draws is none.
const LEAST_GAIN: f64 = 0.02;

/// A saving smaller than this share of the cost is not worth a trip.
const LEAST_SAVING: f64 = 0.01;

/// How far the heaps' own bands can be kept clear of the limits, in the steps that are tried.
const STEPS: [f64; 4] = [0.25, 0.5, 0.75, 1.0];

/// The cheapest change that helps, where there is one: with the heaps that are there if they can
/// do it, else with more of one of them.
pub(super) fn next_change(
    bench: &Bench,
    kg: &[f64],
    clearance: f64,
    now: Chance,
) -> Option<NextChange> {
    if now.share < SURE_ENOUGH {
        let there = bench.there();
        let plenty = with_plenty(bench, &(0..kg.len()).collect::<Vec<_>>());
        let surer = |there: &[f64]| surer(bench, kg, there, clearance, now);
        return surer(&there).or_else(|| surer(&plenty));
    }
    cheaper(bench, kg, clearance)
}

fn surer(
    bench: &Bench,
    kg: &[f64],
    there: &[f64],
    clearance: f64,
    now: Chance,
) -> Option<NextChange> {
    let sum = bench.sum(there);
    let more = STEPS.into_iter().filter(|step| *step > clearance);
    more.filter_map(|step| sum.cheapest(step))
        .map(|parts| change(bench, kg, &bench.in_kg(&parts), Aim::Surer))
        .find(|change| change.chance.share >= now.share + LEAST_GAIN)
}

/// More of one heap that is used up wholly, at the same clearance.
fn cheaper(bench: &Bench, kg: &[f64], clearance: f64) -> Option<NextChange> {
    let cost = bench.cost(kg)?.amount;
    let there = bench.there();
    let used_wholly = (0..kg.len()).filter(|at| kg[*at] > 0.0 && kg[*at] >= there[*at] - 1e-9);
    let changes = used_wholly.filter_map(|at| {
        let parts = bench.sum(&with_plenty(bench, &[at])).cheapest(clearance)?;
        Some(change(bench, kg, &bench.in_kg(&parts), Aim::Cheaper))
    });
    let saves = |change: &NextChange| change.dearer.as_ref().map_or(0.0, |more| -more.amount);
    changes
        .filter(|change| saves(change) > LEAST_SAVING * cost)
        .max_by(|a, b| saves(a).total_cmp(&saves(b)))
}

/// What is there, but of these heaps as much as the whole charge and more.
fn with_plenty(bench: &Bench, of: &[usize]) -> Vec<f64> {
    let mut there = bench.there();
    for at in of {
        there[*at] += 2.0 * bench.wish.melt().as_kg();
    }
    there
}

fn change(bench: &Bench, kg: &[f64], then: &[f64], aim: Aim) -> NextChange {
    let step_kg = |at: usize| {
        bench.heaps[at]
            .step
            .unwrap_or(bench.wish.scale_step)
            .as_kg()
    };
    let mut steps = Vec::new();
    let mut beyond = Vec::new();
    for (at, heap) in bench.heaps.iter().enumerate() {
        let more_kg = then[at] - kg[at];
        if more_kg.abs() >= step_kg(at) {
            steps.push((heap.name.clone(), more_kg));
        }
        if then[at] > heap.mass.as_kg() + step_kg(at) {
            beyond.push((heap.name.clone(), Mass::from_kg(then[at]) - heap.mass));
        }
    }
    let dearer = bench
        .cost(then)
        .zip(bench.cost(kg))
        .map(|(then, now)| Money {
            amount: then.amount - now.amount,
            currency: now.currency,
        });
    NextChange {
        aim,
        steps,
        beyond,
        chance: bench.chance(then),
        dearer,
    }
}
