//! A heap of metal as typed under `[[metal_heap]]` in `shop.toml`.

use std::collections::BTreeMap;

use measure::matter::Mass;
use measure::money::Price;
use measure::text::Typed;
use metal::alloy::Family;
use metal::charge_makeup::heap::{Heap, Mark, Origin};
use metal::charge_makeup::share_text::of_heap;
use metal::charge_makeup::stock::elements;
use serde::Deserialize;

/// A heap with the metals it goes into.
#[derive(Clone, Debug, PartialEq)]
pub struct MetalHeap {
    /// The heap.
    pub heap: Heap,
    /// The metals it goes into.
    pub goes_into: Vec<Family>,
}

/// `[[metal_heap]]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MetalHeapFile {
    name: String,
    goes_into: Vec<Family>,
    mass: Typed<Mass>,
    price: Option<String>,
    origin: Origin,
    #[serde(default)]
    marks: Vec<Mark>,
    elements: BTreeMap<String, String>,
    recovery: Option<String>,
    scale_step: Option<Typed<Mass>>,
}

impl MetalHeapFile {
    /// What is meant, or what is wrong, in a sentence.
    ///
    /// # Errors
    ///
    /// Where a price, an element or a share cannot be read.
    pub fn meant(self) -> Result<MetalHeap, String> {
        let name = self.name.clone();
        let wrong = |fault: &dyn std::fmt::Display| format!("metal_heap \"{name}\": {fault}");
        let price = self.price.as_deref().map(Price::read::<Mass>).transpose();
        let recovery = self.recovery.as_deref().map(of_heap).transpose();
        let heap = Heap {
            mass: self.mass.value,
            price: price.map_err(|fault| wrong(&fault))?,
            origin: self.origin,
            marks: self.marks,
            elements: elements(&self.elements).map_err(|fault| wrong(&fault))?,
            recovery: recovery.map_err(|fault| wrong(&fault))?,
            step: self.scale_step.map(|step| step.value),
            name: self.name,
        };
        Ok(MetalHeap {
            heap: heap.checked().map_err(|fault| fault.to_string())?,
            goes_into: self.goes_into,
        })
    }
}
