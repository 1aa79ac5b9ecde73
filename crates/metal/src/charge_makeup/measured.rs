//! What a target sets limits to: an element, or the carbon equivalent of an iron.

use std::fmt;

use crate::charge_makeup::element::{Element, UnknownElement};

/// Something that is measured of a melt as a share of its mass.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Measured {
    /// One element.
    Of(Element),
    /// Carbon with what acts like it: C + (Si + P) / 3.
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
            Measured::CarbonEquivalent => match element {
                Element::Carbon => 1.0,
                Element::Silicon | Element::Phosphorus => 1.0 / 3.0,
                _ => 0.0,
            },
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
