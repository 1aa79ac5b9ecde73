//! Money and prices, in whatever currency the founder counts in.
//!
//! No rate of exchange is known here: two currencies never meet in one sum.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer};
use thiserror::Error;

use crate::text::{Written, plain_number, unit_named};

/// An amount of money: `12.50 EUR`, `$3`, `KSh 850`.
#[derive(Clone, Debug, PartialEq)]
pub struct Money {
    /// How much.
    pub amount: f64,
    /// The word or sign of the currency, as typed.
    pub currency: String,
}

/// The price of some quantity: `1.20 EUR/kg`, `KSh 85 per kg`, `$1.10/lb`.
#[derive(Clone, Debug, PartialEq)]
pub struct Price {
    /// How much for one unit in SI: a kilogram, a second, a joule.
    pub per_si: f64,
    /// The word or sign of the currency, as typed.
    pub currency: String,
    /// What was typed, trimmed.
    pub typed: String,
}

/// Why a text is no money or no price.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum MoneyError {
    /// No amount with a currency.
    #[error("\"{0}\" is no amount of money: write a currency with it, like 12.50 EUR or $3")]
    NotMoney(String),
    /// No unit of the quantity it is the price of.
    #[error("\"{typed}\" does not say what it is the price of: write it like 1.20 EUR/{unit}")]
    NotPer {
        /// What was typed.
        typed: String,
        /// A unit that would do.
        unit: &'static str,
    },
    /// Two currencies in one sum.
    #[error("{one} and {other} are two currencies: write every price in one of them")]
    TwoCurrencies {
        /// One.
        one: String,
        /// The other.
        other: String,
    },
}

impl Money {
    /// Both together.
    ///
    /// # Errors
    ///
    /// Where the currencies differ.
    pub fn plus(&self, other: &Money) -> Result<Money, MoneyError> {
        if self.currency != other.currency {
            return Err(MoneyError::TwoCurrencies {
                one: self.currency.clone(),
                other: other.currency.clone(),
            });
        }
        Ok(Money {
            amount: self.amount + other.amount,
            currency: self.currency.clone(),
        })
    }
}

impl FromStr for Money {
    type Err = MoneyError;

    fn from_str(text: &str) -> Result<Money, MoneyError> {
        let typed = text.trim();
        let refused = || MoneyError::NotMoney(typed.to_owned());
        let digit = |c: char| c.is_ascii_digit();
        let first = typed.find(digit).ok_or_else(refused)?;
        let last = typed.rfind(digit).ok_or_else(refused)?;
        let (before, number, after) = (&typed[..first], &typed[first..=last], &typed[last + 1..]);
        let currency = match (before.trim(), after.trim()) {
            ("", after) => after,
            (before, "") => before,
            _ => return Err(refused()),
        };
        let is_word = currency
            .chars()
            .all(|c| !c.is_ascii_digit() && c != '-' && c != '%');
        let amount = plain_number(number).ok_or_else(refused)?;
        if currency.is_empty() || !is_word {
            return Err(refused());
        }
        Ok(Money {
            amount,
            currency: currency.to_owned(),
        })
    }
}

impl fmt::Display for Money {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        let is_sign = self.currency.chars().count() == 1;
        match is_sign {
            true => write!(to, "{}{:.2}", self.currency, self.amount),
            false => write!(to, "{:.2} {}", self.amount, self.currency),
        }
    }
}

impl Price {
    /// Reads the price of a quantity.
    ///
    /// # Errors
    ///
    /// Where no amount with a currency, or no unit of the quantity, is found.
    pub fn read<Q: Written>(text: &str) -> Result<Price, MoneyError> {
        let typed = text.trim();
        let unit_wanted = Q::UNITS.first().map_or("", |unit| unit.words[0]);
        let refused = || MoneyError::NotPer {
            typed: typed.to_owned(),
            unit: unit_wanted,
        };
        let parts = typed.split_once(" per ").or_else(|| typed.split_once('/'));
        let (money, unit) = parts.ok_or_else(refused)?;
        let money: Money = money.parse()?;
        let unit = unit_named::<Q>(unit.trim()).ok_or_else(refused)?;
        Ok(Price {
            per_si: money.amount / unit.si,
            currency: money.currency,
            typed: typed.to_owned(),
        })
    }

    /// What so much of it costs.
    pub fn of<Q: Written>(&self, quantity: Q) -> Money {
        Money {
            amount: self.per_si * quantity.si(),
            currency: self.currency.clone(),
        }
    }
}

impl<'de> Deserialize<'de> for Money {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Money, D::Error> {
        let text = String::deserialize(from)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}
