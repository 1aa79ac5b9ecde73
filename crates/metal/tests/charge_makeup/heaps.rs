//! Heaps and wishes to try a charge on.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use std::collections::BTreeMap;

use measure::matter::Mass;
use measure::money::Price;
use metal::alloy::Family;
use metal::charge_makeup::element::Element;
use metal::charge_makeup::heap::{Heap, Origin};
use metal::charge_makeup::makeup::{MakeUp, UseUp, Wish};
use metal::charge_makeup::measured::Measured;
use metal::charge_makeup::share_text::of_heap;
use metal::charge_makeup::target::Target;

/// A heap of scrap, so many kilograms at a price for each (none where it is empty).
pub fn heap(name: &str, kg: f64, price: &str, elements: &[(&str, &str)]) -> Heap {
    let element =
        |(symbol, share): &(&str, &str)| (Element::read(symbol).unwrap(), of_heap(share).unwrap());
    let heap = Heap {
        name: name.to_owned(),
        mass: Mass::from_kg(kg),
        price: (!price.is_empty()).then(|| Price::read::<Mass>(price).unwrap()),
        origin: Origin::Scrap,
        marks: Vec::new(),
        elements: elements.iter().map(element).collect(),
        recovery: None,
        step: None,
    };
    heap.checked().unwrap()
}

/// So much iron within these limits, nothing lost on the way, on a scale that tells a milligram.
pub fn iron(kg: f64, limits: &[(&str, &str)]) -> Wish {
    let typed: BTreeMap<String, String> = limits
        .iter()
        .map(|(of, range)| ((*of).to_owned(), (*range).to_owned()))
        .collect();
    Wish {
        target: Target::own(Family::Iron, &typed).unwrap(),
        metal: Mass::from_kg(kg),
        melt_loss: 0.0,
        losses: BTreeMap::new(),
        use_up: Vec::new(),
        clearance: None,
        scale_step: Mass::from_g(0.001),
        seed: 1,
    }
}

/// With so much of a heap to use up.
pub fn using_up(mut wish: Wish, heap: &str, kg: f64) -> Wish {
    wish.use_up.push(UseUp {
        heap: heap.to_owned(),
        at_least: Mass::from_kg(kg),
    });
    wish
}

/// What was weighed out of a heap, in kilograms.
pub fn taken(made: &MakeUp, heap: &str) -> f64 {
    let of_heap = made.weighed.iter().filter(|weighed| weighed.name == heap);
    of_heap.map(|weighed| weighed.mass.as_kg()).sum()
}

/// The likely share of something in what was made up, in per cent.
pub fn likely(made: &MakeUp, of: &str) -> f64 {
    let of = Measured::read(of).unwrap();
    let measured = made.composition.iter().find(|measure| measure.of == of);
    measured.unwrap().share.likely() * 100.0
}
