//! What burns off, element by element.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use measure::band::Band;
use serde::Deserialize;
use thiserror::Error;

use crate::alloy::Family;
use crate::charge_makeup::element::{Element, UnknownElement};
use crate::figure::{Figure, FigureError, FigureText};
use crate::furnace::Furnace;

/// How much of an element a melt loses.
#[derive(Clone, Debug, PartialEq)]
pub struct ElementLoss {
    /// The metal it is lost from.
    pub family: Family,
    /// The furnace; nothing where it holds for all that are not named.
    pub furnace: Option<Furnace>,
    /// The element.
    pub element: Element,
    /// Share of the element charged that is gone; below nought where the melt takes it up.
    pub loss: Figure<f64>,
}

/// Why the table of losses could not be read.
#[derive(Debug, Error)]
pub enum LossFault {
    /// Not such a table.
    #[error("element_losses.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// One of the figures is wrong.
    #[error("element_losses.toml: {0}")]
    Figure(#[from] FigureError),
    /// No such element.
    #[error("element_losses.toml: {0}")]
    Element(#[from] UnknownElement),
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../../data/element_losses.toml");

/// The losses of a metal in a furnace: the row of the furnace, else the one for all others.
pub fn of_melt(family: Family, furnace: Furnace) -> Vec<&'static ElementLoss> {
    let mut found: BTreeMap<Element, &ElementLoss> = BTreeMap::new();
    for row in TABLE.iter().filter(|row| row.family == family) {
        match row.furnace {
            Some(of_row) if of_row == furnace => {
                found.insert(row.element, row);
            }
            Some(_) => {}
            None => {
                found.entry(row.element).or_insert(row);
            }
        }
    }
    found.into_values().collect()
}

/// The bands of losses alone, as a charge is worked out with.
pub fn bands(rows: &[&ElementLoss]) -> BTreeMap<Element, Band<f64>> {
    rows.iter()
        .map(|row| (row.element, row.loss.band))
        .collect()
}

/// Reads a table of losses.
///
/// # Errors
///
/// Where it is no such table.
pub fn read(text: &str) -> Result<Vec<ElementLoss>, LossFault> {
    let typed: TableText = toml::from_str(text)?;
    typed.loss.into_iter().map(LossText::meant).collect()
}

static TABLE: LazyLock<Vec<ElementLoss>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    loss: Vec<LossText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct LossText {
    family: Family,
    furnace: Option<Furnace>,
    element: String,
    share: FigureText,
}

impl LossText {
    fn meant(self) -> Result<ElementLoss, LossFault> {
        Ok(ElementLoss {
            family: self.family,
            furnace: self.furnace,
            element: Element::read(&self.element)?,
            loss: self.share.share("share")?,
        })
    }
}
