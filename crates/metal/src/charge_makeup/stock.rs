//! Metal that is sold or found everywhere, to name where the heaps on hand will not do.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use measure::band::Band;
use serde::Deserialize;
use thiserror::Error;

use crate::alloy::Family;
use crate::charge_makeup::element::{Element, UnknownElement};
use crate::charge_makeup::heap::Origin;
use crate::charge_makeup::share_text::{ShareFault, of_heap};

/// An ordinary stock metal.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// What it is called: "steel scrap".
    pub name: String,
    /// The metals it goes into.
    pub families: Vec<Family>,
    /// Where it comes from.
    pub origin: Origin,
    /// What it holds, in parts of one.
    pub elements: BTreeMap<Element, Band<f64>>,
    /// Of an addition, the share of its elements that reaches the melt.
    pub recovery: Option<Band<f64>>,
    /// Keys of the bibliography.
    pub sources: Vec<String>,
}

/// Why the table of stock could not be read.
#[derive(Debug, Error)]
pub enum StockFault {
    /// Not such a table.
    #[error("charge_stock.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// No such element.
    #[error("charge_stock.toml: {0}")]
    Element(#[from] UnknownElement),
    /// No share.
    #[error("charge_stock.toml: {0}")]
    Share(#[from] ShareFault),
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../../data/charge_stock.toml");

/// The stock that goes into a metal.
pub fn of_family(family: Family) -> impl Iterator<Item = &'static Stock> {
    let goes_in = move |stock: &&Stock| stock.families.contains(&family);
    TABLE.iter().filter(goes_in)
}

/// Reads a table of stock.
///
/// # Errors
///
/// Where it is no such table.
pub fn read(text: &str) -> Result<Vec<Stock>, StockFault> {
    let typed: TableText = toml::from_str(text)?;
    typed.stock.into_iter().map(StockText::meant).collect()
}

/// Elements as typed, symbol by text.
///
/// # Errors
///
/// Where a symbol is no element or a text no share.
pub fn elements(
    typed: &BTreeMap<String, String>,
) -> Result<BTreeMap<Element, Band<f64>>, StockFault> {
    let pair = |(symbol, share): (&String, &String)| Ok((Element::read(symbol)?, of_heap(share)?));
    typed.iter().map(pair).collect()
}

static TABLE: LazyLock<Vec<Stock>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    stock: Vec<StockText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StockText {
    name: String,
    families: Vec<Family>,
    origin: Origin,
    elements: BTreeMap<String, String>,
    recovery: Option<String>,
    source: Vec<String>,
}

impl StockText {
    fn meant(self) -> Result<Stock, StockFault> {
        Ok(Stock {
            elements: elements(&self.elements)?,
            recovery: self.recovery.as_deref().map(of_heap).transpose()?,
            name: self.name,
            families: self.families,
            origin: self.origin,
            sources: self.source,
        })
    }
}
