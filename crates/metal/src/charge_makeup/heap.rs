//! A heap of metal: how much lies there, what it may hold, and where it comes from.

use std::collections::BTreeMap;

use measure::band::Band;
use measure::matter::Mass;
use measure::money::Price;
use serde::Deserialize;
use thiserror::Error;

use crate::charge_makeup::element::Element;

/// A heap of metal.
///
/// Invariant, held by [`Heap::checked`]: the likely shares do not add up to more than the whole.
/// What they leave is the base metal of the charge, unless the base metal is among them.
#[derive(Clone, Debug, PartialEq)]
pub struct Heap {
    /// What it is called.
    pub name: String,
    /// How much lies there.
    pub mass: Mass,
    /// What a kilogram costs; nothing where it costs nothing or nobody knows.
    pub price: Option<Price>,
    /// Where it comes from.
    pub origin: Origin,
    /// What clings to it or hides in it.
    pub marks: Vec<Mark>,
    /// What it holds, in parts of one.
    pub elements: BTreeMap<Element, Band<f64>>,
    /// Of an addition, the share of its elements that reaches the melt.
    pub recovery: Option<Band<f64>>,
    /// The scale step it is weighed out to, where it has a finer scale than the rest.
    pub step: Option<Mass>,
}

/// Where a heap comes from, which says how clean it is and when it is charged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Origin {
    /// Ingot or pig of known make-up.
    Ingot,
    /// Own sprues, feeders and spoilt castings.
    Returns,
    /// Bought or found.
    Scrap,
    /// Put into the melt at the end: ferrosilicon, magnesium, phosphor copper.
    Addition,
}

/// What clings to a heap or hides in it, as far as it hurts people or metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Mark {
    /// Coated with zinc.
    Galvanised,
    /// Holds lead.
    Leaded,
    /// Painted or coated.
    Painted,
    /// Oily, greasy or full of swarf coolant.
    Oily,
    /// Plated with chromium, nickel or cadmium.
    Plated,
    /// Has lain in the wet, or may hold water in hollows.
    Damp,
}

/// What is wrong with a heap.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum HeapError {
    /// More than the whole.
    #[error(
        "heap \"{heap}\": its elements add up to {per_cent} %: write shares that leave room for \
         the base metal"
    )]
    MoreThanWhole {
        /// The heap.
        heap: String,
        /// What they add up to.
        per_cent: String,
    },
    /// A recovery that is none.
    #[error("heap \"{heap}\": a recovery belongs to origin = \"addition\" only")]
    Recovery {
        /// The heap.
        heap: String,
    },
    /// A step that no scale has.
    #[error("heap \"{heap}\": a scale step of nothing weighs nothing: write one like 1 g")]
    Step {
        /// The heap.
        heap: String,
    },
}

impl Heap {
    /// The heap itself where it can be.
    ///
    /// # Errors
    ///
    /// Where its shares, its recovery or its scale step are impossible.
    pub fn checked(self) -> Result<Heap, HeapError> {
        let heap = self.name.clone();
        let likely: f64 = self.elements.values().map(Band::likely).sum();
        if likely > 1.0 + 1e-9 {
            let per_cent = measure::text::rounded(likely * 100.0, 4);
            return Err(HeapError::MoreThanWhole { heap, per_cent });
        }
        if self.recovery.is_some() && self.origin != Origin::Addition {
            return Err(HeapError::Recovery { heap });
        }
        if self.step.is_some_and(|step| step <= Mass::ZERO) {
            return Err(HeapError::Step { heap });
        }
        Ok(self)
    }
}
