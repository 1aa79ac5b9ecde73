//! What is put into the melt: doses, order, and what is not worth the bother.

use std::sync::LazyLock;

use measure::matter::Mass;
use measure::source::Law;
use serde::Deserialize;

use crate::alloy::Family;
use crate::figure::{Figure, FigureError, FigureText};

/// A dose for a melt.
pub const DOSE: Law = Law {
    name: "metal::treatment::dose",
    formula: "m_dose = s m",
    range: "doses of the table; dry and warm, whatever it is",
    sources: &["degasser-page", "degasser-page-2", "asm-handbook-15"],
};

/// Something put into a melt.
#[derive(Clone, Debug, PartialEq)]
pub struct Treatment {
    /// The word for it.
    pub name: String,
    /// The metals that it is for.
    pub families: Vec<Family>,
    /// Its turn: 2 flux, 3 make-up, 4 gas out, 5 the last before pouring.
    pub turn: u8,
    /// Share of the melt.
    pub dose: Figure<f64>,
    /// How it is done.
    pub how: String,
    /// What to mind.
    pub mind: String,
}

/// What is talked of for degassing and does little or harm, with the reason. Common practice.
pub const NOT_WORTH_IT: &[(&str, &str)] = &[
    (
        "washing soda",
        "its steam puts in the gas it is to drive out",
    ),
    ("a raw potato", "steam and flying metal"),
    ("table salt", "skims better, takes no gas out"),
    (
        "stirring long",
        "folds skin in and takes up more gas than it lets go",
    ),
    (
        "cooling slowly and heating again",
        "helps a little and burns metal: once at most",
    ),
];

/// Dose for a melt. Law: [`DOSE`].
pub fn dose(melt: Mass, share: f64) -> Mass {
    melt * share
}

/// What the table holds for a metal, in the order in which it is done.
pub fn for_family(family: Family) -> Vec<&'static Treatment> {
    let mut found: Vec<&Treatment> = all()
        .iter()
        .filter(|treatment| treatment.families.contains(&family))
        .collect();
    found.sort_by_key(|treatment| treatment.turn);
    found
}

/// The treatment that goes by this word.
pub fn named(word: &str) -> Option<&'static Treatment> {
    let wanted = word.trim().to_lowercase();
    all().iter().find(|treatment| treatment.name == wanted)
}

/// Every treatment of the table.
pub fn all() -> &'static [Treatment] {
    &TABLE
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/melt_treatments.toml");

/// Why the table of treatments could not be read.
#[derive(Debug, thiserror::Error)]
pub enum TableFault {
    /// Not such a table.
    #[error("melt_treatments.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// One of the figures is wrong.
    #[error("melt_treatments.toml: {0}")]
    Figure(#[from] FigureError),
}

/// Reads a table of treatments.
pub fn read(text: &str) -> Result<Vec<Treatment>, TableFault> {
    let typed: TableText = toml::from_str(text)?;
    let rows = typed.treatment.into_iter().map(TreatmentText::meant);
    Ok(rows.collect::<Result<_, _>>()?)
}

static TABLE: LazyLock<Vec<Treatment>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    treatment: Vec<TreatmentText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TreatmentText {
    name: String,
    families: Vec<Family>,
    turn: u8,
    dose: FigureText,
    how: String,
    mind: String,
}

impl TreatmentText {
    fn meant(self) -> Result<Treatment, FigureError> {
        Ok(Treatment {
            name: self.name,
            families: self.families,
            turn: self.turn,
            dose: self.dose.share_range("dose")?,
            how: self.how,
            mind: self.mind,
        })
    }
}
