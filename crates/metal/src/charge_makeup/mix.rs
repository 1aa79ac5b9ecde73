//! The heaps as columns of figures: what a kilogram of each brings into the melt.

use std::collections::{BTreeMap, BTreeSet};

use measure::band::Band;

use crate::charge_makeup::element::Element;
use crate::charge_makeup::heap::Heap;
use crate::charge_makeup::limit::{Limit, Side};
use crate::charge_makeup::measured::Measured;

/// All heaps over the same elements.
///
/// Invariant: every list by element is as long as `elements`, and the base is one of them.
pub(super) struct Mix {
    pub(super) elements: Vec<Element>,
    base: usize,
    /// What the melt keeps of each element.
    pub(super) kept: Vec<Band<f64>>,
    pub(super) columns: Vec<Column>,
}

/// One heap.
pub(super) struct Column {
    /// What it holds of each element; nought where it does not say.
    pub(super) shares: Vec<Band<f64>>,
    /// What reaches the melt of the elements it names, instead of what the melt keeps.
    pub(super) recovery: Option<Band<f64>>,
    /// Which elements it names.
    pub(super) named: Vec<bool>,
}

/// What a kilogram of a heap, or a whole charge, brings into the melt.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Brought {
    /// Kilograms of each element.
    pub(super) of: Vec<f64>,
    /// Kilograms in all.
    pub(super) whole: f64,
}

impl Mix {
    /// The columns of these heaps, over their elements and those of the limits.
    pub(super) fn of(
        heaps: &[Heap],
        limits: &[Limit],
        base: Element,
        losses: &BTreeMap<Element, Band<f64>>,
    ) -> Mix {
        let mut all: BTreeSet<Element> = heaps
            .iter()
            .flat_map(|heap| heap.elements.keys())
            .copied()
            .collect();
        all.extend(limits.iter().flat_map(|limit| named_by(limit.of)));
        all.insert(base);
        let elements: Vec<Element> = all.into_iter().collect();
        let kept = |element| match losses.get(element) {
            Some(loss) => loss.map(|loss| 1.0 - loss),
            None => Band::exact(1.0),
        };
        Mix {
            base: elements.iter().position(|of| *of == base).unwrap_or(0),
            kept: elements.iter().map(kept).collect(),
            columns: heaps
                .iter()
                .map(|heap| Column::of(heap, &elements))
                .collect(),
            elements,
        }
    }

    /// What a kilogram of a column brings at these shares, this much of each element kept.
    pub(super) fn brings(
        &self,
        column: &Column,
        shares: impl Fn(usize) -> f64,
        kept: impl Fn(usize) -> f64,
    ) -> Brought {
        let mut of = vec![0.0; self.elements.len()];
        let mut named = 0.0;
        for at in (0..of.len()).filter(|at| column.named[*at]) {
            let share = shares(at);
            named += share;
            of[at] = share * kept(at);
        }
        let rest = (1.0 - named).max(0.0);
        if column.named[self.base] {
            let whole = of.iter().sum::<f64>() + rest;
            return Brought { of, whole };
        }
        of[self.base] = rest * self.kept[self.base].likely();
        let whole = of.iter().sum();
        Brought { of, whole }
    }

    /// What a kilogram of a column brings at its likely shares.
    pub(super) fn likely(&self, column: &Column) -> Brought {
        self.brings(
            column,
            |at| column.shares[at].likely(),
            |at| self.kept_of(column, at).likely(),
        )
    }

    /// What is kept of an element of a column.
    pub(super) fn kept_of(&self, column: &Column, at: usize) -> Band<f64> {
        column.recovery.unwrap_or(self.kept[at])
    }

    /// What a kilogram of a column brings where it is worst for a limit on one side: the things
    /// measured as far out as they go, everything else burnt off so that they weigh the more, or
    /// kept so that they weigh the less.
    pub(super) fn worst(&self, column: &Column, of: Measured, side: Side) -> Brought {
        let weighs = |at: usize| of.weight(self.elements[at]) > 0.0;
        let base_counts = weighs(self.base) && !column.named[self.base];
        let towards = |band: Band<f64>, up: bool| if up { band.high() } else { band.low() };
        let up = side == Side::High;
        let share = |at: usize| {
            let band = column.shares[at];
            match weighs(at) {
                true => towards(band, up),
                // The rest is the base: the less of the others, the more of it.
                false if base_counts => towards(band, !up),
                false => self.share_that_shifts_most(column, at, up),
            }
        };
        let kept = |at: usize| towards(self.kept_of(column, at), up == weighs(at));
        self.brings(column, share, kept)
    }

    /// How much of what is measured a brought lot holds, in kilograms.
    pub(super) fn measured(&self, brought: &Brought, of: Measured) -> f64 {
        let weighed = self.elements.iter().zip(&brought.of);
        weighed.map(|(element, kg)| of.weight(*element) * kg).sum()
    }

    /// What a whole charge brings, `kg` of each heap.
    pub(super) fn charge(
        &self,
        kg: &[f64],
        of_heap: impl Fn(usize, &Column) -> Brought,
    ) -> Brought {
        let mut sum = Brought {
            of: vec![0.0; self.elements.len()],
            whole: 0.0,
        };
        let used = self.columns.iter().zip(kg).enumerate();
        for (at, (column, kg)) in used.filter(|(_, (_, kg))| **kg > 0.0) {
            let brought = of_heap(at, column);
            for (into, from) in sum.of.iter_mut().zip(&brought.of) {
                *into += kg * from;
            }
            sum.whole += kg * brought.whole;
        }
        sum
    }

    /// Of an element that is not measured: the share with which most of it (upwards) or least of
    /// it (downwards) is lost.
    fn share_that_shifts_most(&self, column: &Column, at: usize, up: bool) -> f64 {
        let band = column.shares[at];
        let kept = self.kept_of(column, at);
        let loss = 1.0 - if up { kept.low() } else { kept.high() };
        match loss == 0.0 {
            true => band.likely(),
            false if (loss > 0.0) == up => band.high(),
            false => band.low(),
        }
    }
}

impl Column {
    fn of(heap: &Heap, elements: &[Element]) -> Column {
        let share = |element| heap.elements.get(element).copied();
        Column {
            shares: elements
                .iter()
                .map(|element| share(element).unwrap_or(Band::exact(0.0)))
                .collect(),
            recovery: heap.recovery,
            named: elements
                .iter()
                .map(|element| share(element).is_some())
                .collect(),
        }
    }
}

/// The elements that count towards a thing measured.
fn named_by(of: Measured) -> Vec<Element> {
    match of {
        Measured::Of(element) => vec![element],
        Measured::CarbonEquivalent => {
            vec![Element::Carbon, Element::Silicon, Element::Phosphorus]
        }
    }
}
