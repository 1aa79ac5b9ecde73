//! What is lost in the melt: by furnace, metal, form of the stock and minutes.

use std::sync::LazyLock;

use measure::band::Band;
use measure::flow::Duration;
use measure::source::Law;
use serde::Deserialize;

use crate::alloy::Family;
use crate::figure::{Figure, FigureError, FigureText};
use crate::furnace::{Furnace, practice};

/// Share of the charge that is skimmed off and burnt.
pub const MELT_LOSS: Law = Law {
    name: "metal::loss::melt_loss",
    formula: "l = l_clean + l_form + r t / 10 min",
    range: "clean metal of the furnace, form of the stock, minutes liquid beyond need; judgement",
    sources: &["doe-melting-2005", "cans-dross-thread", "common-practice"],
};

/// A form that stock comes in.
#[derive(Clone, Debug, PartialEq)]
pub struct Form {
    /// The word for it.
    pub name: String,
    /// What belongs to it.
    pub what: String,
    /// Share of the charge lost on top of what clean metal loses.
    pub loss: Figure<f64>,
}

/// What a metal loses while it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Holding {
    /// The metal.
    pub family: Family,
    /// Share of the charge lost in ten minutes.
    pub ten_minutes: Figure<f64>,
}

/// Melt loss from its three parts, never more than nine tenths. Law: [`MELT_LOSS`].
pub fn melt_loss(clean: f64, form: f64, ten_minutes: f64, standing: Duration) -> f64 {
    (clean + form + ten_minutes * standing.as_min() / 10.0).clamp(0.0, 0.9)
}

/// The melt loss over everything that is uncertain in its three parts, with the keys of their
/// sources; nothing where no furnace has a figure for the metal. Law: [`MELT_LOSS`].
pub fn loss_of_stock(
    furnace: Furnace,
    family: Family,
    form: &Form,
    standing: &Band<Duration>,
) -> Option<(Band<f64>, Vec<String>)> {
    let (clean, mut keys) = clean_loss(furnace, family)?;
    let rate = &holding(family)?.ten_minutes;
    let of = |end: fn(&Band<f64>) -> f64, standing| {
        let (form, rate) = (end(&form.loss.band), end(&rate.band));
        melt_loss(end(&clean), form, rate, standing)
    };
    let loss = Band::new(
        of(Band::low, standing.low()),
        of(Band::likely, standing.likely()),
        of(Band::high, standing.high()),
    );
    for key in form.loss.sources.iter().chain(&rate.sources) {
        if !keys.contains(key) {
            keys.push(key.clone());
        }
    }
    Some((loss, keys))
}

/// How long metal stands liquid beyond need where nobody has looked at the clock: from poured at
/// once to a mould that is not ready (common practice, no source).
pub fn usual_standing() -> Band<Duration> {
    let [least, likely, most] = [0.0, 5.0, 15.0].map(Duration::from_min);
    Band::new(least, likely, most)
}

/// What clean heavy metal loses in a furnace, with the keys of its sources. Where the pair is not
/// in the table, from the best case to the worst of the metal in any furnace.
pub fn clean_loss(furnace: Furnace, family: Family) -> Option<(Band<f64>, Vec<String>)> {
    if let Some(row) = practice(furnace, family) {
        return Some((row.loss.band, row.loss.sources.clone()));
    }
    let mut rows = crate::furnace::all()
        .iter()
        .filter(|row| row.family == family);
    let first = rows.next()?;
    let mut keys = first.loss.sources.clone();
    let band = rows.fold(first.loss.band, |band, row| {
        keys.extend(row.loss.sources.iter().cloned());
        band.or(&row.loss.band)
    });
    keys.sort();
    keys.dedup();
    Some((band, keys))
}

/// The form that goes by this word.
pub fn form(word: &str) -> Option<&'static Form> {
    forms().iter().find(|form| form.name == word.trim())
}

/// Every form of the table, the cleanest first.
pub fn forms() -> &'static [Form] {
    &TABLE.0
}

/// What a metal loses while it stands.
pub fn holding(family: Family) -> Option<&'static Holding> {
    TABLE.1.iter().find(|row| row.family == family)
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/loss.toml");

/// Why the table of losses could not be read.
#[derive(Debug, thiserror::Error)]
pub enum TableFault {
    /// Not such a table.
    #[error("loss.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// One of the figures is wrong.
    #[error("loss.toml: {0}")]
    Figure(#[from] FigureError),
}

/// Reads a table of losses.
pub fn read(text: &str) -> Result<(Vec<Form>, Vec<Holding>), TableFault> {
    let typed: TableText = toml::from_str(text)?;
    let forms = typed.form.into_iter().map(FormText::meant);
    let holding = typed.holding.into_iter().map(HoldingText::meant);
    Ok((
        forms.collect::<Result<_, _>>()?,
        holding.collect::<Result<_, _>>()?,
    ))
}

static TABLE: LazyLock<(Vec<Form>, Vec<Holding>)> =
    LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    form: Vec<FormText>,
    holding: Vec<HoldingText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FormText {
    name: String,
    what: String,
    loss: FigureText,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct HoldingText {
    family: Family,
    ten_minutes: FigureText,
}

impl FormText {
    fn meant(self) -> Result<Form, FigureError> {
        Ok(Form {
            name: self.name,
            what: self.what,
            loss: self.loss.share("loss")?,
        })
    }
}

impl HoldingText {
    fn meant(self) -> Result<Holding, FigureError> {
        Ok(Holding {
            family: self.family,
            ten_minutes: self.ten_minutes.share("ten_minutes")?,
        })
    }
}
