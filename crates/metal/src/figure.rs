//! A figure from a table: its band, where it was seen, and what is to be said about it.

use measure::band::Band;
use measure::text::{TextError, Typed, Written};
use serde::Deserialize;
use thiserror::Error;

/// A figure of a table with everything that is known about where it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure<T> {
    /// The lowest, likely and highest value the sources give.
    pub band: Band<T>,
    /// Keys of the bibliography, the one of the likely value first.
    pub sources: Vec<String>,
    /// Table, section or page in those sources.
    pub place: String,
    /// Doubts, disagreements and how a value was worked out; empty where there is nothing to say.
    pub remark: String,
}

/// Why a figure of a table could not be read.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FigureError {
    /// Not the quantity it has to be.
    #[error("{field}: {fault}")]
    Quantity {
        /// Which figure.
        field: &'static str,
        /// What is wrong with the text.
        fault: TextError,
    },
    /// A per cent or a bare number was wanted.
    #[error("{field}: \"{typed}\" cannot be read: write it like {example}")]
    Share {
        /// Which figure.
        field: &'static str,
        /// What was typed.
        typed: String,
        /// How it may be typed.
        example: &'static str,
    },
    /// One of the three values is missing.
    #[error("{field}: the value \"{missing}\" is missing: write {missing} = \"…\" with its unit")]
    Missing {
        /// Which figure.
        field: &'static str,
        /// The key that is missing.
        missing: &'static str,
    },
    /// The likely value lies outside the outer two.
    #[error("{field}: low, likely and high are not in order")]
    Order {
        /// Which figure.
        field: &'static str,
    },
    /// No source was named.
    #[error("{field}: no source is named: write source = [\"…\"] with a key of the bibliography")]
    NoSource {
        /// Which figure.
        field: &'static str,
    },
}

/// A figure as it stands in a table file.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct FigureText {
    low: Option<String>,
    likely: Option<String>,
    high: Option<String>,
    source: Vec<String>,
    #[serde(rename = "where", default)]
    place: String,
    #[serde(default)]
    remark: String,
}

impl FigureText {
    /// A quantity with its unit; the outer values are the likely one where they are left out.
    pub(crate) fn quantity<Q: Written>(
        self,
        field: &'static str,
    ) -> Result<Figure<Q>, FigureError> {
        self.read(field, |text| quantity(text, field))
    }

    /// A number without a unit.
    pub(crate) fn number(self, field: &'static str) -> Result<Figure<f64>, FigureError> {
        self.read(field, |text| {
            let number = text
                .trim()
                .parse()
                .ok()
                .filter(|number: &f64| number.is_finite());
            number.ok_or_else(|| FigureError::Share {
                field,
                typed: text.to_owned(),
                example: "15.7",
            })
        })
    }

    /// A share of a whole, typed in per cent; may be below nought (a metal that grows).
    pub(crate) fn share(self, field: &'static str) -> Result<Figure<f64>, FigureError> {
        self.read(field, |text| share(text, "%", field, "5.2 %"))
    }

    /// A share lost for each kelvin, typed in per cent per 100 K.
    pub(crate) fn share_per_kelvin(self, field: &'static str) -> Result<Figure<f64>, FigureError> {
        self.read(field, |text| {
            let share = share(text, "% per 100 K", field, "1.31 % per 100 K")?;
            Ok(share / 100.0)
        })
    }

    /// A range of which only the ends are given: the likely one is the middle.
    pub(crate) fn quantity_range<Q: Written + Copy + PartialOrd>(
        self,
        field: &'static str,
    ) -> Result<Figure<Q>, FigureError> {
        self.range(
            field,
            |text| quantity(text, field),
            |low: Q, high: Q| Q::from_si((low.si() + high.si()) / 2.0),
        )
    }

    /// A range of shares of a whole, typed in per cent: the likely one is the middle.
    pub(crate) fn share_range(self, field: &'static str) -> Result<Figure<f64>, FigureError> {
        let read = |text: &str| share(text, "%", field, "0.2 %");
        self.range(field, read, |low, high| (low + high) / 2.0)
    }

    fn range<T: Copy + PartialOrd>(
        self,
        field: &'static str,
        parse: impl Fn(&str) -> Result<T, FigureError>,
        middle: impl Fn(T, T) -> T,
    ) -> Result<Figure<T>, FigureError> {
        self.sourced(field)?;
        let end = |text: &Option<String>, missing| match text {
            Some(text) => parse(text),
            None => Err(FigureError::Missing { field, missing }),
        };
        let (low, high) = (end(&self.low, "low")?, end(&self.high, "high")?);
        self.figure(field, low, middle(low, high), high)
    }

    fn read<T: Copy + PartialOrd>(
        self,
        field: &'static str,
        parse: impl Fn(&str) -> Result<T, FigureError>,
    ) -> Result<Figure<T>, FigureError> {
        self.sourced(field)?;
        let Some(likely) = self.likely.as_deref() else {
            let missing = "likely";
            return Err(FigureError::Missing { field, missing });
        };
        let likely = parse(likely)?;
        let end = |text: &Option<String>| text.as_deref().map_or(Ok(likely), &parse);
        let (low, high) = (end(&self.low)?, end(&self.high)?);
        self.figure(field, low, likely, high)
    }

    fn sourced(&self, field: &'static str) -> Result<(), FigureError> {
        match self.source.is_empty() {
            true => Err(FigureError::NoSource { field }),
            false => Ok(()),
        }
    }

    fn figure<T: Copy + PartialOrd>(
        self,
        field: &'static str,
        low: T,
        likely: T,
        high: T,
    ) -> Result<Figure<T>, FigureError> {
        if !(low <= likely && likely <= high) {
            return Err(FigureError::Order { field });
        }
        Ok(Figure {
            band: Band::new(low, likely, high),
            sources: self.source,
            place: self.place,
            remark: self.remark,
        })
    }
}

fn quantity<Q: Written>(text: &str, field: &'static str) -> Result<Q, FigureError> {
    match text.parse::<Typed<Q>>() {
        Ok(typed) => Ok(typed.value),
        Err(fault) => Err(FigureError::Quantity { field, fault }),
    }
}

/// The number before the unit, as a share of one; a share is never more than the whole.
fn share(
    text: &str,
    unit: &str,
    field: &'static str,
    example: &'static str,
) -> Result<f64, FigureError> {
    let number = text.trim().strip_suffix(unit).map(str::trim);
    match number.and_then(|number| number.parse::<f64>().ok()) {
        Some(number) if number.abs() <= 100.0 => Ok(number / 100.0),
        _ => Err(FigureError::Share {
            field,
            typed: text.to_owned(),
            example,
        }),
    }
}
