//! Furnaces: what they waste of the fuel and of the metal.

use std::sync::LazyLock;

use serde::Deserialize;

use crate::alloy::Family;
use crate::figure::{Figure, FigureError, FigureText};

/// A kind of furnace.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Furnace {
    /// A crucible over gas, oil or charcoal.
    FuelCrucible,
    /// A crucible heated by electric elements.
    ElectricCrucible,
    /// Induction.
    Induction,
    /// A cupola.
    Cupola,
}

impl Furnace {
    /// Every kind.
    pub const ALL: [Furnace; 4] = [
        Furnace::FuelCrucible,
        Furnace::ElectricCrucible,
        Furnace::Induction,
        Furnace::Cupola,
    ];

    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Furnace::FuelCrucible => "fuel",
            Furnace::ElectricCrucible => "electric",
            Furnace::Induction => "induction",
            Furnace::Cupola => "cupola",
        }
    }

    /// The furnace of a word, whether a crucible is named with it or not.
    pub fn named(word: &str) -> Option<Furnace> {
        let word = word.trim();
        let word = word.strip_suffix("-crucible").unwrap_or(word);
        Furnace::ALL
            .into_iter()
            .find(|furnace| furnace.word() == word)
    }
}

/// What a furnace does with a metal.
#[derive(Clone, Debug, PartialEq)]
pub struct Practice {
    /// The furnace.
    pub furnace: Furnace,
    /// The metal.
    pub family: Family,
    /// Share of a charge of clean heavy metal that is lost; what the form of the stock adds stands
    /// in [`crate::loss`].
    pub loss: Figure<f64>,
    /// Share of the fuel's heat that reaches the metal, where a source gives it.
    pub efficiency: Option<Figure<f64>>,
}

/// What a furnace does with a metal, or nothing where the pair is not in the table: weigh what
/// goes in and what comes out.
pub fn practice(furnace: Furnace, family: Family) -> Option<&'static Practice> {
    all()
        .iter()
        .find(|row| row.furnace == furnace && row.family == family)
}

/// Every row of the built-in table.
pub fn all() -> &'static [Practice] {
    &TABLE
}

/// Reads a table of furnaces.
pub fn read(text: &str) -> Result<Vec<Practice>, TableFault> {
    let typed: TableText = toml::from_str(text)?;
    let rows = typed.practice.into_iter().map(PracticeText::meant);
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Why the table of furnaces could not be read.
#[derive(Debug, thiserror::Error)]
pub enum TableFault {
    /// Not such a table.
    #[error("furnaces.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// One of the figures is wrong.
    #[error("furnaces.toml: {0}")]
    Figure(#[from] FigureError),
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/furnaces.toml");

static TABLE: LazyLock<Vec<Practice>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    practice: Vec<PracticeText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct PracticeText {
    furnace: Furnace,
    family: Family,
    loss: FigureText,
    efficiency: Option<FigureText>,
}

impl PracticeText {
    fn meant(self) -> Result<Practice, FigureError> {
        let efficiency = self.efficiency.map(|figure| figure.share("efficiency"));
        Ok(Practice {
            furnace: self.furnace,
            family: self.family,
            loss: self.loss.share("loss")?,
            efficiency: efficiency.transpose()?,
        })
    }
}
