//! The chemical elements that make or spoil a casting metal.

use std::fmt;

use thiserror::Error;

/// An element.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Element {
    /// C
    Carbon,
    /// Si
    Silicon,
    /// Mn
    Manganese,
    /// P
    Phosphorus,
    /// S
    Sulphur,
    /// Cr
    Chromium,
    /// Fe
    Iron,
    /// Al
    Aluminium,
    /// Mg
    Magnesium,
    /// Cu
    Copper,
    /// Zn
    Zinc,
    /// Sn
    Tin,
    /// Pb
    Lead,
    /// Ni
    Nickel,
    /// Ti
    Titanium,
    /// Sb
    Antimony,
    /// Cd
    Cadmium,
    /// Bi
    Bismuth,
}

/// Symbol and name of each element, in the order of the variants.
const TABLE: [(Element, &str, &str); 18] = [
    (Element::Carbon, "C", "carbon"),
    (Element::Silicon, "Si", "silicon"),
    (Element::Manganese, "Mn", "manganese"),
    (Element::Phosphorus, "P", "phosphorus"),
    (Element::Sulphur, "S", "sulphur"),
    (Element::Chromium, "Cr", "chromium"),
    (Element::Iron, "Fe", "iron"),
    (Element::Aluminium, "Al", "aluminium"),
    (Element::Magnesium, "Mg", "magnesium"),
    (Element::Copper, "Cu", "copper"),
    (Element::Zinc, "Zn", "zinc"),
    (Element::Tin, "Sn", "tin"),
    (Element::Lead, "Pb", "lead"),
    (Element::Nickel, "Ni", "nickel"),
    (Element::Titanium, "Ti", "titanium"),
    (Element::Antimony, "Sb", "antimony"),
    (Element::Cadmium, "Cd", "cadmium"),
    (Element::Bismuth, "Bi", "bismuth"),
];

/// A word that is no element of this table.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("\"{typed}\" is no element known here; known: {known}")]
pub struct UnknownElement {
    /// What was typed.
    pub typed: String,
    /// The symbols there are.
    pub known: String,
}

impl Element {
    /// The element of a symbol or a name; case does not count for names, and not for symbols
    /// where nothing else is meant.
    ///
    /// # Errors
    ///
    /// Where no element goes by that word.
    pub fn read(typed: &str) -> Result<Element, UnknownElement> {
        let word = typed.trim();
        let same = |a: &str| a.eq_ignore_ascii_case(word);
        let found = TABLE
            .iter()
            .find(|(_, symbol, name)| same(symbol) || same(name));
        found.map(|row| row.0).ok_or_else(|| UnknownElement {
            typed: word.to_owned(),
            known: TABLE.map(|row| row.1).join(", "),
        })
    }

    /// Its symbol: "Si".
    pub fn symbol(self) -> &'static str {
        TABLE[self as usize].1
    }

    /// Its name: "silicon".
    pub fn name(self) -> &'static str {
        TABLE[self as usize].2
    }
}

impl fmt::Display for Element {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        to.write_str(self.symbol())
    }
}

#[cfg(test)]
mod tests {
    use super::{Element, TABLE};

    #[test]
    fn the_table_stands_in_the_order_of_the_variants() {
        for (at, (element, symbol, name)) in TABLE.iter().enumerate() {
            assert_eq!(*element as usize, at, "{symbol}");
            assert_eq!(Element::read(symbol), Ok(*element));
            assert_eq!(Element::read(&name.to_uppercase()), Ok(*element));
        }
        assert!(Element::read("Xx").is_err());
    }
}
