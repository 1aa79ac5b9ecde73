//! What a target sets limits to: an element, or the carbon equivalent of an iron.

use std::fmt;

use crate::charge_makeup::element::{Element, UnknownElement};
use crate::iron::carbon_equivalent;

/// Something that is measured of a melt as a share of its mass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Measured {
    /// One element.
    Of(Element),
    /// Carbon with what acts like it. Law: [`crate::iron::CARBON_EQUIVALENT`].
    CarbonEquivalent,
}

impl Measured {
    /// Reads `Si`, `silicon`, `CE` or `carbon equivalent`.
    ///
    /// # Errors
    ///
    /// Where it is neither.
    pub fn read(typed: &str) -> Result<Measured, UnknownElement> {
        match typed.trim() {
            "CE" | "ce" | "carbon equivalent" | "carbon_equivalent" => {
                Ok(Measured::CarbonEquivalent)
            }
            word => Element::read(word).map(Measured::Of),
        }
    }

    /// How much a per cent of an element counts towards it.
    pub fn weight(self, element: Element) -> f64 {
        match self {
            Measured::Of(wanted) => f64::from(u8::from(wanted == element)),
            Measured::CarbonEquivalent => {
                let of = |one: Element| f64::from(u8::from(one == element));
                carbon_equivalent(
                    of(Element::Carbon),
                    of(Element::Silicon),
                    of(Element::Phosphorus),
                )
            }
        }
    }

    /// Its symbol: "Si", "CE".
    pub fn symbol(self) -> &'static str {
        match self {
            Measured::Of(element) => element.symbol(),
            Measured::CarbonEquivalent => "CE",
        }
    }

    /// Its name: "silicon", "carbon equivalent".
    pub fn name(self) -> &'static str {
        match self {
            Measured::Of(element) => element.name(),
            Measured::CarbonEquivalent => "carbon equivalent",
        }
    }
}

impl fmt::Display for Measured {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        to.write_str(self.symbol())
    }
}
