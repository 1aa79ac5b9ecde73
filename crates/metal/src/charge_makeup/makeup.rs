//! The charge made up: what to weigh out, what it comes to, how sure that is.

use std::collections::BTreeMap;

use measure::band::Band;
use measure::matter::Mass;
use measure::money::{Money, MoneyError};
use thiserror::Error;

use crate::charge_makeup::chance::{Chance, drawn};
use crate::charge_makeup::cheapest::{Sum, bounds};
use crate::charge_makeup::composition::{Measure, share, things};
use crate::charge_makeup::element::Element;
use crate::charge_makeup::heap::Heap;
use crate::charge_makeup::infeasible::{Infeasible, why};
use crate::charge_makeup::limit::{Limit, Side};
use crate::charge_makeup::measured::Measured;
use crate::charge_makeup::mix::Mix;
use crate::charge_makeup::next_change::{NextChange, next_change};
use crate::charge_makeup::target::Target;
use crate::charge_makeup::weigh::to_scale;

/// What is wanted.
#[derive(Clone, Debug, PartialEq)]
pub struct Wish {
    /// What it has to come to.
    pub target: Target,
    /// Liquid metal wanted at the spout.
    pub metal: Mass,
    /// Share of the melt that goes with dross and skimmings, all elements alike.
    pub melt_loss: f64,
    /// Share of each element that burns off besides.
    pub losses: BTreeMap<Element, Band<f64>>,
    /// What has to go in whether it is the cheapest or not.
    pub use_up: Vec<UseUp>,
    /// How much of the heaps' own bands is kept clear of the limits, from 0 (the likely
    /// composition may stand on a limit) to 1 (no corner of the bands lies outside); left out,
    /// as much up to [`CLEARANCES`] as the heaps allow.
    pub clearance: Option<f64>,
    /// What the scale tells apart.
    pub scale_step: Mass,
    /// Where the drawing of lots begins.
    pub seed: u64,
}

/// A heap that has to be used up, at least so much of it.
#[derive(Clone, Debug, PartialEq)]
pub struct UseUp {
    /// The heap.
    pub heap: String,
    /// How much.
    pub at_least: Mass,
}

/// A charge made up.
#[derive(Clone, Debug, PartialEq)]
pub struct MakeUp {
    /// What to weigh out, in the order of the heaps.
    pub weighed: Vec<Weighed>,
    /// What goes into the crucible.
    pub charged: Mass,
    /// Liquid metal at the spout, likely.
    pub metal: Mass,
    /// What it costs; nothing where no heap has a price.
    pub cost: Option<Money>,
    /// What it comes to: what the target limits first.
    pub composition: Vec<Measure>,
    /// How sure it is to come out in target.
    pub chance: Chance,
    /// How much of the heaps' own bands was kept clear of the limits.
    pub clearance: f64,
    /// What stands in the way of a cheaper charge.
    pub binding: Vec<Binding>,
    /// What the step of the scale pushes out of target, likely values.
    pub off_by_scale: Vec<Measured>,
    /// The cheapest change that helps.
    pub next: Option<NextChange>,
    /// Elements of the target that a heap used does not state, by heap.
    pub unstated: Vec<(String, Vec<Element>)>,
}

/// What is taken of a heap.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// Place of the heap in the list given.
    pub heap: usize,
    /// Its name.
    pub name: String,
    /// What to weigh out, a whole number of scale steps or all there is.
    pub mass: Mass,
    /// What that costs.
    pub cost: Option<Money>,
}

/// What binds a charge.
#[derive(Clone, Debug, PartialEq)]
pub enum Binding {
    /// A limit of the target, with the clearance kept of it.
    Limit(Measured, Side),
    /// A heap of which there is no more.
    AllOf(String),
    /// A heap that has to be used up.
    UseUp(String),
}

/// Why there is no charge.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum MakeUpError {
    /// No heap at all.
    #[error("no heap of metal is listed: write a [[metal_heap]] with its elements in shop.toml")]
    NoHeaps,
    /// No metal wanted.
    #[error("no metal is wanted: give a mass above nought")]
    NoMetal,
    /// A melt loss that leaves nothing.
    #[error("a melt loss of {0} leaves nothing to pour")]
    MeltLoss(String),
    /// A heap to use up that is not there.
    #[error("use up \"{typed}\": no heap of that name; heaps: {known}")]
    UnknownHeap {
        /// What was typed.
        typed: String,
        /// The names there are.
        known: String,
    },
    /// Two currencies.
    #[error("prices of heaps: {0}")]
    Money(#[from] MoneyError),
    /// The heaps cannot do it.
    #[error("no charge from these heaps meets the target")]
    Infeasible(Box<Infeasible>),
}

/// The parts of the heaps' own bands that are tried to be kept clear of the limits, most first:
/// half a band to either side makes most charges come out in target nine times in ten without
/// paying for corners that never meet.
pub const CLEARANCES: [f64; 3] = [0.5, 0.25, 0.0];

impl Wish {
    /// What has to be liquid in the crucible before it is skimmed.
    pub fn melt(&self) -> Mass {
        self.metal / (1.0 - self.melt_loss)
    }
}

/// Everything a charge is worked out from.
pub(super) struct Bench<'a> {
    pub(super) heaps: &'a [Heap],
    pub(super) wish: &'a Wish,
    pub(super) mix: Mix,
    pub(super) currency: Option<String>,
}

/// The cheapest charge, or, where no heap has a price, the one nearest the middle of its target.
///
/// # Errors
///
/// Where nothing is wanted or there, prices do not go together, or no charge meets the target.
pub fn make_up(heaps: &[Heap], wish: &Wish) -> Result<MakeUp, MakeUpError> {
    let bench = Bench::of(heaps, wish)?;
    let there = bench.there();
    let sum = bench.sum(&there);
    let tried = wish
        .clearance
        .map_or(CLEARANCES.to_vec(), |only| vec![only]);
    let found = tried
        .into_iter()
        .find_map(|clearance| Some((clearance, sum.cheapest(clearance)?)));
    let Some((clearance, parts)) = found else {
        return Err(MakeUpError::Infeasible(Box::new(why(&bench, &sum))));
    };
    let binding = bench.binding(&sum, &parts, clearance);
    let kg = to_scale(&bench, &bench.in_kg(&parts));
    Ok(bench.told(&kg, clearance, binding))
}

impl<'a> Bench<'a> {
    fn of(heaps: &'a [Heap], wish: &'a Wish) -> Result<Bench<'a>, MakeUpError> {
        if heaps.is_empty() {
            return Err(MakeUpError::NoHeaps);
        }
        if wish.metal <= Mass::ZERO {
            return Err(MakeUpError::NoMetal);
        }
        if !(0.0..=0.9).contains(&wish.melt_loss) {
            let per_cent = format!("{} %", measure::text::rounded(wish.melt_loss * 100.0, 3));
            return Err(MakeUpError::MeltLoss(per_cent));
        }
        for used in &wish.use_up {
            if !heaps.iter().any(|heap| heap.name == used.heap) {
                let known: Vec<_> = heaps.iter().map(|heap| heap.name.as_str()).collect();
                return Err(MakeUpError::UnknownHeap {
                    typed: used.heap.clone(),
                    known: known.join(", "),
                });
            }
        }
        Ok(Bench {
            heaps,
            wish,
            mix: Mix::of(heaps, &wish.target.limits, wish.target.base(), &wish.losses),
            currency: currency(heaps)?,
        })
    }

    /// What is there of each heap, in kilograms.
    pub(super) fn there(&self) -> Vec<f64> {
        self.heaps.iter().map(|heap| heap.mass.as_kg()).collect()
    }

    /// The sum over these amounts.
    pub(super) fn sum(&self, there: &[f64]) -> Sum<'_> {
        let names: Vec<_> = self.heaps.iter().map(|heap| heap.name.as_str()).collect();
        Sum {
            mix: &self.mix,
            prices: self.currency.is_some().then(|| self.prices()),
            bounds: bounds(there, self.wish, &names),
            limits: self.wish.target.limits.clone(),
        }
    }

    /// What a kilogram of each heap costs; a heap without a price costs nothing.
    pub(super) fn prices(&self) -> Vec<f64> {
        let price = |heap: &Heap| heap.price.as_ref().map_or(0.0, |price| price.per_si);
        self.heaps.iter().map(price).collect()
    }

    /// What so much of each heap costs; nothing where no heap has a price.
    pub(super) fn cost(&self, kg: &[f64]) -> Option<Money> {
        let of_each = self
            .prices()
            .into_iter()
            .zip(kg)
            .map(|(price, kg)| price * kg);
        let amount = of_each.sum();
        let currency = self.currency.clone()?;
        Some(Money { amount, currency })
    }

    /// Parts of a kilogram of melt to kilograms of the charge wanted.
    pub(super) fn in_kg(&self, parts: &[f64]) -> Vec<f64> {
        let melt_kg = self.wish.melt().as_kg();
        parts.iter().map(|part| part * melt_kg).collect()
    }

    /// How sure a charge is.
    pub(super) fn chance(&self, kg: &[f64]) -> Chance {
        let limits = &self.wish.target.limits;
        drawn(&self.mix, kg, limits, &[], self.wish.seed).chance
    }

    fn binding(&self, sum: &Sum, parts: &[f64], clearance: f64) -> Vec<Binding> {
        let mut binding = Vec::new();
        for limit in &sum.limits {
            for (side, end) in limit.ends() {
                let row = sum.row(limit.of, side, end, clearance);
                let beyond: f64 = row.sum.iter().zip(parts).map(|(of, part)| of * part).sum();
                if beyond.abs() < BINDS {
                    binding.push(Binding::Limit(limit.of, side));
                }
            }
        }
        for ((heap, part), (least, most)) in self.heaps.iter().zip(parts).zip(&sum.bounds) {
            if *part > 0.0 && most - part < BINDS {
                binding.push(Binding::AllOf(heap.name.clone()));
            } else if *least > 0.0 && part - least < BINDS {
                binding.push(Binding::UseUp(heap.name.clone()));
            }
        }
        binding
    }

    fn told(&self, kg: &[f64], clearance: f64, binding: Vec<Binding>) -> MakeUp {
        let limits = &self.wish.target.limits;
        let things = things(&self.mix, limits);
        let drawn = drawn(&self.mix, kg, limits, &things, self.wish.seed);
        let limit = |of| limits.iter().find(|limit: &&Limit| limit.of == of).copied();
        let measured = things.iter().zip(&drawn.usual).map(|(of, usual)| Measure {
            of: *of,
            share: share(&self.mix, kg, *of),
            usual: *usual,
            limit: limit(*of),
        });
        let composition: Vec<Measure> = measured.collect();
        let off = |of: &Measure| {
            of.limit
                .is_some_and(|limit| !limit.holds(of.share.likely()))
        };
        let off: Vec<_> = composition
            .iter()
            .filter(|of| off(of))
            .map(|of| of.of)
            .collect();
        let whole = self
            .mix
            .charge(kg, |_, column| self.mix.likely(column))
            .whole;
        MakeUp {
            weighed: self.weighed(kg),
            charged: Mass::from_kg(kg.iter().sum()),
            metal: Mass::from_kg(whole) * (1.0 - self.wish.melt_loss),
            cost: self.cost(kg),
            composition,
            chance: drawn.chance,
            clearance,
            binding,
            off_by_scale: off,
            next: next_change(self, kg, clearance, drawn.chance),
            unstated: self.unstated(kg),
        }
    }

    fn weighed(&self, kg: &[f64]) -> Vec<Weighed> {
        let taken = self.heaps.iter().zip(kg).enumerate();
        taken
            .filter(|(_, (_, kg))| **kg > 0.0)
            .map(|(at, (heap, kg))| Weighed {
                heap: at,
                name: heap.name.clone(),
                mass: Mass::from_kg(*kg),
                cost: heap
                    .price
                    .as_ref()
                    .map(|price| price.of(Mass::from_kg(*kg))),
            })
            .collect()
    }

    fn unstated(&self, kg: &[f64]) -> Vec<(String, Vec<Element>)> {
        let base = self.wish.target.base();
        let limited = self
            .wish
            .target
            .limits
            .iter()
            .filter_map(|limit| match limit.of {
                Measured::Of(element) if element != base => Some(element),
                _ => None,
            });
        let limited: Vec<Element> = limited.collect();
        let taken = self.heaps.iter().zip(kg).filter(|(_, kg)| **kg > 0.0);
        taken
            .filter_map(|(heap, _)| {
                let states = |element: &&Element| !heap.elements.contains_key(element);
                let silent: Vec<_> = limited.iter().filter(states).copied().collect();
                (!silent.is_empty()).then(|| (heap.name.clone(), silent))
            })
            .collect()
    }
}

/// What counts as standing on a limit, in per cent of the melt or parts of it.
const BINDS: f64 = 1e-6;

/// The one currency of all prices.
fn currency(heaps: &[Heap]) -> Result<Option<String>, MoneyError> {
    let mut prices = heaps.iter().filter_map(|heap| heap.price.as_ref());
    let Some(first) = prices.next() else {
        return Ok(None);
    };
    match prices.find(|price| price.currency != first.currency) {
        Some(other) => Err(MoneyError::TwoCurrencies {
            one: first.currency.clone(),
            other: other.currency.clone(),
        }),
        None => Ok(Some(first.currency.clone())),
    }
}
