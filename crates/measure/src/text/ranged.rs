//! A figure or a range of it: `3 to 5 mm`, `100 mm ± 2 mm`, `2.6 g/cm3 ± 4 %`.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer};

use crate::band::Band;
use crate::text::number::Cursor;
use crate::text::{System, TextError, Typed, Written, plain_number};

/// A quantity with its margin, together with the words in which it was typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Ranged<Q> {
    /// What is meant.
    pub band: Band<Q>,
    /// What was typed, trimmed.
    pub typed: String,
    /// The system of the first unit typed.
    pub system: System,
}

/// The parts of a text that may be a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spread<'a> {
    /// One figure.
    One(&'a str),
    /// A low and a high one, and a likely one where it is told.
    Between {
        /// The low end.
        low: &'a str,
        /// The high end.
        high: &'a str,
        /// `, likely …`
        likely: Option<&'a str>,
    },
    /// A likely one with its margin to either side.
    Around {
        /// The middle.
        likely: &'a str,
        /// The margin.
        margin: &'a str,
    },
}

/// Takes a text apart at `to`, `..`, `…`, `–`, `±`, `+/-`.
pub fn spread(text: &str) -> Spread<'_> {
    for mark in ["±", "+/-", "+-"] {
        if let Some((likely, margin)) = text.split_once(mark) {
            let (likely, margin) = (likely.trim(), margin.trim());
            return Spread::Around { likely, margin };
        }
    }
    let (range, likely) = match text.split_once(", likely ") {
        Some((range, likely)) => (range, Some(likely.trim())),
        None => (text, None),
    };
    for mark in [" to ", "..", "…", "–"] {
        if let Some((low, high)) = range.split_once(mark) {
            let (low, high) = (low.trim(), high.trim());
            return Spread::Between { low, high, likely };
        }
    }
    Spread::One(text.trim())
}

/// A band of numbers without a unit, each read by `read`; a margin in per cent is one of the
/// middle.
///
/// # Errors
///
/// What `read` says of the first part it cannot read.
pub fn numbers<E>(text: &str, read: impl Fn(&str) -> Result<f64, E>) -> Result<Band<f64>, E> {
    Ok(match spread(text) {
        Spread::One(one) => Band::exact(read(one)?),
        Spread::Between { low, high, likely } => {
            let (low, high) = (read(low)?, read(high)?);
            let likely = likely.map_or(Ok((low + high) / 2.0), read)?;
            Band::new(low, likely, high)
        }
        Spread::Around { likely, margin } => {
            let likely = read(likely)?;
            let step = match share(margin) {
                Some(share) => likely.abs() * share,
                None => read(margin)?,
            };
            Band::new(likely - step, likely, likely + step)
        }
    })
}

impl<Q: Written> Ranged<Q> {
    /// A quantity without a margin.
    pub fn exact(typed: Typed<Q>) -> Ranged<Q> {
        Ranged {
            band: Band::exact(typed.value),
            typed: typed.typed,
            system: typed.system,
        }
    }
}

impl<Q: Written> FromStr for Ranged<Q> {
    type Err = TextError;

    fn from_str(text: &str) -> Result<Ranged<Q>, TextError> {
        let typed = text.trim();
        let (band, system) = match spread(typed) {
            Spread::One(one) => return one.parse().map(Ranged::exact),
            Spread::Between { low, high, likely } => between::<Q>(low, high, likely)?,
            Spread::Around { likely, margin } => around::<Q>(likely, margin)?,
        };
        Ok(Ranged {
            band,
            typed: typed.to_owned(),
            system,
        })
    }
}

impl<'de, Q: Written> Deserialize<'de> for Ranged<Q> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Ranged<Q>, D::Error> {
        struct Text<Q>(std::marker::PhantomData<Q>);

        impl<Q: Written> serde::de::Visitor<'_> for Text<Q> {
            type Value = Ranged<Q>;

            fn expecting(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
                let (what, example) = (Q::WHAT, Q::EXAMPLE);
                write!(to, "{what} or a range of it in quotes, like \"{example}\"")
            }

            fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Ranged<Q>, E> {
                text.parse().map_err(E::custom)
            }
        }

        from.deserialize_str(Text(std::marker::PhantomData))
    }
}

fn between<Q: Written>(
    low: &str,
    high: &str,
    likely: Option<&str>,
) -> Result<(Band<Q>, System), TextError> {
    let unit = unit_of(high);
    let high: Typed<Q> = high.parse()?;
    let low: Typed<Q> = with_unit(low, &unit).parse()?;
    let likely = match likely {
        Some(likely) => with_unit(likely, &unit).parse::<Typed<Q>>()?.value,
        None => Q::from_si((low.value.si() + high.value.si()) / 2.0),
    };
    Ok((Band::new(low.value, likely, high.value), low.system))
}

fn around<Q: Written>(likely: &str, margin: &str) -> Result<(Band<Q>, System), TextError> {
    // "100 ± 2 mm" has its unit behind the margin.
    let behind = share(margin).map_or_else(|| unit_of(margin), |_| String::new());
    let likely: Typed<Q> = with_unit(likely, &behind).parse()?;
    let step = match share(margin) {
        Some(share) => share * above_nought(&likely)?,
        None => step::<Q>(margin, &unit_of(&likely.typed))?,
    };
    let end = |towards: f64| Q::from_si(likely.value.si() + towards * step);
    let least = match Q::MAY_BE_NEGATIVE {
        true => end(-1.0),
        false => Q::from_si(end(-1.0).si().max(0.0)),
    };
    Ok((Band::new(least, likely.value, end(1.0)), likely.system))
}

/// What a per cent is of: degrees as they were typed, 20 of 20 °C, and not of the 293 K that they
/// are, which nobody who writes a per cent behind a thermometer means.
fn above_nought<Q: Written>(typed: &Typed<Q>) -> Result<f64, TextError> {
    let nought: Typed<Q> = with_unit("0", &unit_of(&typed.typed)).parse()?;
    Ok((typed.value.si() - nought.value.si()).abs())
}

/// The margin as an amount: the zero of its scale (0 °C) does not count.
fn step<Q: Written>(margin: &str, unit: &str) -> Result<f64, TextError> {
    let margin = with_unit(margin, unit);
    let typed: Typed<Q> = margin.parse()?;
    let nought: Typed<Q> = with_unit("0", &unit_of(&margin)).parse()?;
    Ok((typed.value.si() - nought.value.si()).abs())
}

fn with_unit(text: &str, unit: &str) -> String {
    match plain_number(text) {
        Some(_) if !unit.is_empty() => format!("{text} {unit}"),
        _ => text.to_owned(),
    }
}

/// The unit behind the first number; none where there is no number or no unit.
fn unit_of(text: &str) -> String {
    let pieces = Cursor::new(text).pieces().unwrap_or_default();
    pieces
        .into_iter()
        .next()
        .map(|piece| piece.unit)
        .unwrap_or_default()
}

fn share(text: &str) -> Option<f64> {
    plain_number(text.strip_suffix('%')?).map(|per_cent| per_cent / 100.0)
}
