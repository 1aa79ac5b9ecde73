//! Shares: per cents that say of what, and contraction as it is said in the trade.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer};

use crate::text::TextError;

/// A share of something named: `4.1 % of wet mass`.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// The share, 0.041 for 4.1 %.
    pub ratio: f64,
    /// What it is a share of, as typed: "wet mass".
    pub of: String,
    /// What was typed, trimmed.
    pub typed: String,
}

impl FromStr for Share {
    type Err = TextError;

    fn from_str(text: &str) -> Result<Share, TextError> {
        let typed = text.trim();
        let refused = || TextError::NotThat {
            typed: typed.to_owned(),
            what: "a per cent that says of what",
            example: "4.1 % of wet mass",
        };
        let (number, of) = typed.split_once('%').ok_or_else(refused)?;
        let of = of.trim().strip_prefix("of ").ok_or_else(refused)?.trim();
        let ratio = percent(number).ok_or_else(refused)?;
        if of.is_empty() {
            return Err(refused());
        }
        Ok(Share {
            ratio,
            of: of.to_owned(),
            typed: typed.to_owned(),
        })
    }
}

impl fmt::Display for Share {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "{}", self.typed)
    }
}

/// Linear contraction, or the growth that makes up for it: `1.3 %`, `5/32 per ft`, `1 in 75`.
#[derive(Clone, Debug, PartialEq)]
pub struct Contraction {
    /// The part of each length, 0.013 for 1.3 %.
    pub ratio: f64,
    /// What was typed, trimmed.
    pub typed: String,
}

impl FromStr for Contraction {
    type Err = TextError;

    fn from_str(text: &str) -> Result<Contraction, TextError> {
        let typed = text.trim();
        let ratio = contraction(typed).filter(|ratio| (0.0..0.2).contains(ratio));
        match ratio {
            Some(ratio) => Ok(Contraction {
                ratio,
                typed: typed.to_owned(),
            }),
            None => Err(TextError::NotThat {
                typed: typed.to_owned(),
                what: "a contraction below 20 %",
                example: "1.3 %, 5/32 per ft or 1 in 75",
            }),
        }
    }
}

impl Contraction {
    /// What was typed, with the per cent or the inches in each foot beside it.
    pub fn given_back(&self) -> String {
        let per_cent = crate::text::rounded(self.ratio * 100.0, 3);
        match self.typed.contains('%') {
            true => {
                let per_foot = crate::text::rounded(self.ratio * 12.0, 3);
                format!("{} ({per_foot} in per ft)", self.typed)
            }
            false => format!("{} ({per_cent} %)", self.typed),
        }
    }
}

fn contraction(typed: &str) -> Option<f64> {
    if let Some(number) = typed.strip_suffix('%') {
        return percent(number);
    }
    for tail in [
        "in per ft",
        "in per foot",
        "in/ft",
        "\" per ft",
        "per ft",
        "per foot",
    ] {
        if let Some(inches) = typed.strip_suffix(tail) {
            return number(inches).map(|inches| inches / 12.0);
        }
    }
    let (part, whole) = typed.split_once(" in ")?;
    let (part, whole) = (number(part)?, number(whole)?);
    (whole > 0.0).then_some(part / whole)
}

fn percent(text: &str) -> Option<f64> {
    let ratio = number(text)? / 100.0;
    (0.0..=1.0).contains(&ratio).then_some(ratio)
}

fn number(text: &str) -> Option<f64> {
    crate::text::plain_number(text)
}

/// Reads a `FromStr` type from a string of a job file.
macro_rules! read_as_text {
    ($($name:ident: $wanted:literal;)+) => { $(
        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(from: D) -> Result<$name, D::Error> {
                struct Text;
                impl serde::de::Visitor<'_> for Text {
                    type Value = $name;
                    fn expecting(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
                        write!(to, $wanted)
                    }
                    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<$name, E> {
                        text.parse().map_err(E::custom)
                    }
                }
                from.deserialize_str(Text)
            }
        }
    )+ };
}

read_as_text! {
    Share: "a per cent that says of what, in quotes, like \"4.1 % of wet mass\"";
    Contraction: "a contraction in quotes, like \"1.3 %\", \"5/32 per ft\" or \"1 in 75\"";
}
