//! Reading and writing quantities as founders type them.
//!
//! `3/16"`, `1 1/2 in`, `4 lb 6 oz`, `950F`, `0,8 kg` are all read; what was typed is kept and
//! given back with the other system beside it.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer};
use thiserror::Error;

use crate::text::number::{Cursor, Piece};

mod number;
pub mod ranged;
pub mod shown;

/// The two systems of units that people mix.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum System {
    /// Millimetres, kilograms, degrees Celsius.
    Metric,
    /// Inches, pounds, degrees Fahrenheit.
    Inch,
}

impl System {
    /// The one that is not this one.
    pub fn other(self) -> System {
        match self {
            System::Metric => System::Inch,
            System::Inch => System::Metric,
        }
    }
}

/// A unit as it may be written, the SI units in one of it, and the SI value at its zero.
#[derive(Clone, Copy, Debug)]
pub struct UnitWord {
    /// The spellings taken, the one to print first.
    pub words: &'static [&'static str],
    /// SI units in one of this unit.
    pub si: f64,
    /// SI value at zero of this unit; zero for everything but temperatures.
    pub offset: f64,
    /// The system it belongs to.
    pub system: System,
}

/// A quantity that can be read from text and written to it.
pub trait Written: Copy + PartialOrd {
    /// What it is, with its article, for messages: "a length".
    const WHAT: &'static str;
    /// How it may be typed, for messages.
    const EXAMPLE: &'static str;
    /// The units taken.
    const UNITS: &'static [UnitWord];
    /// Whether a value below zero makes sense.
    const MAY_BE_NEGATIVE: bool = false;

    /// From SI units.
    fn from_si(amount: f64) -> Self;
    /// In SI units.
    fn si(self) -> f64;
}

/// Why a text is not the quantity wanted.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum TextError {
    /// Nothing was typed.
    #[error("{what} is missing: write it like {example}")]
    Empty {
        /// What was wanted.
        what: &'static str,
        /// How it may be typed.
        example: &'static str,
    },
    /// No number where one was wanted.
    #[error("\"{typed}\" has no number where {what} needs one: write it like {example}")]
    NoNumber {
        /// What was typed.
        typed: String,
        /// What was wanted.
        what: &'static str,
        /// How it may be typed.
        example: &'static str,
    },
    /// A bare number.
    #[error(
        "\"{typed}\" needs a unit, since {what} may be meant in several: write it like {example}"
    )]
    NoUnit {
        /// What was typed.
        typed: String,
        /// What was wanted.
        what: &'static str,
        /// How it may be typed.
        example: &'static str,
    },
    /// A unit that is not one of this quantity.
    #[error("\"{unit}\" in \"{typed}\" is not a unit of {what}; units taken: {taken}")]
    UnknownUnit {
        /// What was typed.
        typed: String,
        /// The word that was not understood.
        unit: String,
        /// What was wanted.
        what: &'static str,
        /// The units that are taken.
        taken: String,
    },
    /// One comma and three digits: a thousand or a decimal part.
    #[error(
        "\"{typed}\" can be read two ways: write 1234 for a thousand and more, \
         or 1.234 for a decimal part"
    )]
    TwoReadings {
        /// What was typed.
        typed: String,
    },
    /// Below zero, endless, or divided by zero.
    #[error("\"{typed}\" is not possible for {what}: it has to be a number {bound}")]
    Impossible {
        /// What was typed.
        typed: String,
        /// What was wanted.
        what: &'static str,
        /// What the number has to be.
        bound: &'static str,
    },
    /// A per cent that does not say of what, or something else that is not a share.
    #[error("\"{typed}\" is not {what}: write it like {example}")]
    NotThat {
        /// What was typed.
        typed: String,
        /// What was wanted.
        what: &'static str,
        /// How it may be typed.
        example: &'static str,
    },
}

/// A quantity together with the words in which it was typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Typed<Q> {
    /// What is meant.
    pub value: Q,
    /// What was typed, trimmed.
    pub typed: String,
    /// The system of the first unit typed.
    pub system: System,
}

impl<Q: Written> Typed<Q> {
    /// What was typed, with the other system beside it: `4 lb 6 oz (1.984 kg)`.
    pub fn given_back(&self) -> String {
        match show(self.value, self.system.other()) {
            Some(other) => format!("{} ({other})", self.typed),
            None => self.typed.clone(),
        }
    }
}

impl<Q: Written> FromStr for Typed<Q> {
    type Err = TextError;

    fn from_str(text: &str) -> Result<Typed<Q>, TextError> {
        let typed = text.trim();
        if typed.is_empty() {
            return Err(TextError::Empty {
                what: Q::WHAT,
                example: Q::EXAMPLE,
            });
        }
        let pieces = Cursor::new(typed)
            .pieces()
            .map_err(|fault| fault.explain::<Q>(typed))?;
        let (value, system) = sum::<Q>(&pieces, typed)?;
        if !value.is_finite() {
            return Err(impossible::<Q>(typed, "that is not endless"));
        }
        if value < 0.0 && !Q::MAY_BE_NEGATIVE {
            return Err(impossible::<Q>(typed, "of zero or more"));
        }
        Ok(Typed {
            value: Q::from_si(value),
            typed: typed.to_owned(),
            system,
        })
    }
}

impl<'de, Q: Written> Deserialize<'de> for Typed<Q> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Typed<Q>, D::Error> {
        struct Text<Q>(std::marker::PhantomData<Q>);

        impl<Q: Written> serde::de::Visitor<'_> for Text<Q> {
            type Value = Typed<Q>;

            fn expecting(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(
                    to,
                    "{} with its unit in quotes, like \"{}\"",
                    Q::WHAT,
                    Q::EXAMPLE
                )
            }

            fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Typed<Q>, E> {
                text.parse().map_err(E::custom)
            }
        }

        from.deserialize_str(Text(std::marker::PhantomData))
    }
}

/// A quantity in the unit of a system that suits its size, rounded to three figures; nothing
/// where that system has no unit of its own for it (seconds).
pub fn show<Q: Written>(quantity: Q, system: System) -> Option<String> {
    let unit = suiting_unit::<Q>(quantity, system)?;
    Some(show_in(quantity, unit, 3))
}

/// A quantity in a given unit, rounded to so many significant figures.
pub fn show_in<Q: Written>(quantity: Q, unit: &UnitWord, figures: u32) -> String {
    let amount = (quantity.si() - unit.offset) / unit.si;
    format!("{} {}", rounded(amount, figures), unit.words[0])
}

/// The unit of a quantity that goes by this word.
pub fn unit_named<Q: Written>(word: &str) -> Option<&'static UnitWord> {
    let exact = Q::UNITS.iter().find(|unit| unit.words.contains(&word));
    exact.or_else(|| {
        Q::UNITS
            .iter()
            .find(|unit| unit.words.iter().any(|w| w.eq_ignore_ascii_case(word)))
    })
}

/// A number without a unit, as people write it, or nothing.
pub fn plain_number(text: &str) -> Option<f64> {
    let mut cursor = Cursor::new(text.trim());
    let number = cursor.number().ok()?;
    (cursor.rest().is_empty() && number.is_finite()).then_some(number)
}

/// A number with so many significant figures, without a trailing row of noughts after the point.
pub fn rounded(amount: f64, figures: u32) -> String {
    if amount == 0.0 || !amount.is_finite() {
        return format!("{amount}").replace("-0", "0");
    }
    let magnitude = amount.abs().log10().floor() as i32;
    let decimals = figures as i32 - 1 - magnitude;
    if decimals <= 0 {
        let step = 10f64.powi(-decimals);
        return format!("{:.0}", (amount / step).round() * step);
    }
    let text = format!("{amount:.*}", decimals as usize);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

fn sum<Q: Written>(pieces: &[Piece], typed: &str) -> Result<(f64, System), TextError> {
    let mut total = 0.0;
    let mut system = None;
    let negative = pieces
        .first()
        .is_some_and(|piece| piece.amount.is_sign_negative());
    for piece in pieces {
        let unit = unit_of::<Q>(piece, typed)?;
        let part = piece.amount * unit.si;
        total += if negative && system.is_some() {
            -part
        } else {
            part
        };
        if system.is_none() {
            total += unit.offset;
        }
        system.get_or_insert(unit.system);
    }
    Ok((total, system.unwrap_or(System::Metric)))
}

fn unit_of<Q: Written>(piece: &Piece, typed: &str) -> Result<&'static UnitWord, TextError> {
    if piece.unit.is_empty() {
        return Err(TextError::NoUnit {
            typed: typed.to_owned(),
            what: Q::WHAT,
            example: Q::EXAMPLE,
        });
    }
    unit_named::<Q>(&piece.unit).ok_or_else(|| TextError::UnknownUnit {
        typed: typed.to_owned(),
        unit: piece.unit.clone(),
        what: Q::WHAT,
        taken: Q::UNITS
            .iter()
            .map(|unit| unit.words[0])
            .collect::<Vec<_>>()
            .join(", "),
    })
}

fn impossible<Q: Written>(typed: &str, bound: &'static str) -> TextError {
    TextError::Impossible {
        typed: typed.to_owned(),
        what: Q::WHAT,
        bound,
    }
}

/// The largest unit of the system in which the quantity is at least one, else the smallest; the
/// rarely spoken units (cm, µm, feet, tonnes, kelvin) are left to those who type them.
fn suiting_unit<Q: Written>(quantity: Q, system: System) -> Option<&'static UnitWord> {
    const SELDOM: [&str; 32] = [
        "cm", "um", "t", "ft", "m²", "m³", "ft²", "ft³", "mm³", "K", "gal", "qt", "pt", "cup",
        "fl oz", "tbsp", "tsp", "imp gal", "imp pt", "mbar", "bar", "cmH2O", "mmHg", "atm",
        "kgf/cm2", "day", "g/s", "kg/h", "lb/h", "kgf", "mm/s", "mm3/s",
    ];
    let of_system = || Q::UNITS.iter().filter(move |unit| unit.system == system);
    let mut units: Vec<_> = of_system()
        .filter(|unit| !SELDOM.contains(&unit.words[0]))
        .collect();
    if units.is_empty() {
        units = of_system().collect();
    }
    units.sort_by(|a, b| a.si.total_cmp(&b.si));
    let from = |unit: &UnitWord| match unit.words[0] {
        "m" | "cm²" => 10.0 * unit.si,
        _ => unit.si,
    };
    let fits = |unit: &&&UnitWord| (quantity.si() - unit.offset).abs() >= from(unit);
    units.iter().rev().find(fits).or(units.first()).copied()
}
