//! A column of the log: what it holds, in which unit, and how it is typed.

use measure::flow::{Duration, Speed};
use measure::heat::Temperature;
use measure::length::{Area, Length};
use measure::matter::{Mass, Pressure};
use measure::text::{TextError, Typed, plain_number};

use crate::value::Value;

/// A column of a table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Column {
    /// The word by which it is typed: `temperature`.
    pub key: &'static str,
    /// What it holds.
    pub holds: Holds,
    /// What it says, in a line.
    pub says: &'static str,
    /// Whether an entry without it is half-filled.
    pub wanted: bool,
}

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Holds {
    /// Any words.
    Text,
    /// One of these words.
    Word(&'static [&'static str]),
    /// Several of these words, with blanks between.
    Words(&'static [&'static str]),
    /// Yes or no, kept as 1 or 0.
    Flag,
    /// A whole number.
    Whole,
    /// A number without a unit.
    Number,
    /// Kilograms.
    Mass,
    /// Degrees Celsius.
    Temperature,
    /// Seconds.
    Seconds,
    /// Minutes.
    Minutes,
    /// Hours.
    Hours,
    /// Millimetres.
    Length,
    /// Square millimetres.
    Area,
    /// Per cent.
    Percent,
    /// Kilopascals.
    Pressure,
    /// Metres a second.
    Speed,
    /// A day, or a day with the time: 2026-05-03T14:20.
    Time,
    /// An entry of another table.
    Entry(&'static str),
}

/// Why a value was not taken.
#[derive(Clone, Debug, thiserror::Error, PartialEq)]
pub enum ColumnError {
    /// An amount that is not understood.
    #[error("{key}: {error}")]
    Amount {
        /// The key.
        key: String,
        /// What is wrong.
        error: TextError,
    },
    /// Something else is wanted.
    #[error("{key}: \"{typed}\" is not {what}")]
    NotThat {
        /// The key.
        key: String,
        /// What was typed.
        typed: String,
        /// What is wanted, with an example.
        what: String,
    },
}

impl Column {
    /// The name in the file and in every export: the key with its unit.
    pub fn name(&self) -> String {
        match self.unit() {
            Some((suffix, _)) => format!("{}_{suffix}", self.key),
            None => self.key.to_owned(),
        }
    }

    /// The unit as it ends the name, and as people write it.
    pub fn unit(&self) -> Option<(&'static str, &'static str)> {
        match self.holds {
            Holds::Mass => Some(("kg", "kg")),
            Holds::Temperature => Some(("c", "°C")),
            Holds::Seconds => Some(("s", "s")),
            Holds::Minutes => Some(("min", "min")),
            Holds::Hours => Some(("h", "h")),
            Holds::Length => Some(("mm", "mm")),
            Holds::Area => Some(("mm2", "mm²")),
            Holds::Percent => Some(("percent", "%")),
            Holds::Pressure => Some(("kpa", "kPa")),
            Holds::Speed => Some(("m_per_s", "m/s")),
            _ => None,
        }
    }

    /// The type that the file keeps it under.
    pub fn kept_as(&self) -> &'static str {
        match self.holds {
            Holds::Flag | Holds::Whole => "INTEGER",
            Holds::Number => "REAL",
            _ if self.unit().is_some() => "REAL",
            _ => "TEXT",
        }
    }

    /// Reads what was typed. A bare number is taken in the unit of the column.
    ///
    /// # Errors
    ///
    /// What is not understood, with an example.
    pub fn read(&self, typed: &str) -> Result<Value, ColumnError> {
        let typed = typed.trim();
        if let (Some(_), Some(bare)) = (self.unit(), plain_number(typed)) {
            return Ok(Value::Real(bare));
        }
        match self.holds {
            Holds::Mass => self.amount(typed, Mass::as_kg),
            Holds::Temperature => self.amount(typed, Temperature::as_celsius),
            Holds::Seconds => self.amount(typed, Duration::as_s),
            Holds::Minutes => self.amount(typed, Duration::as_min),
            Holds::Hours => self.amount(typed, |time: Duration| time.as_min() / 60.0),
            Holds::Length => self.amount(typed, Length::as_mm),
            Holds::Area => self.amount(typed, Area::as_mm2),
            Holds::Pressure => self.amount(typed, Pressure::as_kpa),
            Holds::Speed => self.amount(typed, Speed::as_m_per_s),
            Holds::Percent => {
                let bare = typed.split('%').next().and_then(plain_number);
                let found = bare.filter(|_| typed.contains('%'));
                found
                    .map(Value::Real)
                    .ok_or_else(|| self.not("a per cent, like 4.5 %"))
            }
            Holds::Number => plain_number(typed)
                .map(Value::Real)
                .ok_or_else(|| self.not("a number")),
            Holds::Whole => match typed.parse() {
                Ok(whole) => Ok(Value::Whole(whole)),
                Err(_) => Err(self.not("a whole number")),
            },
            Holds::Flag => match typed {
                "yes" | "1" | "true" => Ok(Value::Whole(1)),
                "no" | "0" | "false" => Ok(Value::Whole(0)),
                _ => Err(self.not("yes or no")),
            },
            Holds::Word(words) if words.contains(&typed) => Ok(Value::Text(typed.to_owned())),
            Holds::Word(words) => Err(self.not(&format!("one of {}", words.join(", ")))),
            Holds::Words(words) => match typed.split_whitespace().all(|word| words.contains(&word))
            {
                true if !typed.is_empty() => Ok(Value::Text(typed.to_owned())),
                _ => Err(self.not(&format!("made of {}", words.join(", ")))),
            },
            Holds::Time if is_time(typed) => Ok(Value::Text(typed.to_owned())),
            Holds::Time => Err(self.not("a day or time, like 2026-05-03 or 2026-05-03T14:20")),
            Holds::Text | Holds::Entry(_) => Ok(Value::Text(typed.to_owned())),
        }
        .map_err(|error| match error {
            ColumnError::NotThat { key, what, .. } => {
                let typed = typed.to_owned();
                ColumnError::NotThat { key, typed, what }
            }
            other => other,
        })
    }

    fn amount<Q: measure::text::Written>(
        &self,
        typed: &str,
        amount: impl Fn(Q) -> f64,
    ) -> Result<Value, ColumnError> {
        let read: Result<Typed<Q>, TextError> = typed.parse();
        match read {
            Ok(read) => Ok(Value::Real(amount(read.value))),
            Err(error) => Err(ColumnError::Amount {
                key: self.key.to_owned(),
                error,
            }),
        }
    }

    fn not(&self, what: &str) -> ColumnError {
        ColumnError::NotThat {
            key: self.key.to_owned(),
            typed: String::new(),
            what: what.to_owned(),
        }
    }
}

/// Whether this is a day of the calendar, alone or with the time of the day behind a T.
pub fn is_time(text: &str) -> bool {
    let (day, time) = match text.split_once(['T', ' ']) {
        Some((day, time)) => (day, Some(time.trim_end_matches('Z'))),
        None => (text, None),
    };
    let day: Vec<&str> = day.split('-').collect();
    let [year, month, of_month] = day[..] else {
        return false;
    };
    let number = |text: &str, digits: usize| {
        let whole = text.len() == digits && text.bytes().all(|byte| byte.is_ascii_digit());
        whole.then(|| text.parse::<u32>().unwrap_or(0))
    };
    let Some((year, month)) = number(year, 4).zip(number(month, 2)) else {
        return false;
    };
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => return false,
    };
    let sound = number(of_month, 2).is_some_and(|day| (1..=days).contains(&day));
    sound && time.is_none_or(is_time_of_day)
}

fn is_time_of_day(time: &str) -> bool {
    let parts: Vec<&str> = time.splitn(3, ':').collect();
    let below = |text: &str, most: f64| {
        let digits = text.len() >= 2 && text.starts_with(|first: char| first.is_ascii_digit());
        digits
            && text
                .parse::<f64>()
                .is_ok_and(|number| (0.0..most).contains(&number))
    };
    match parts[..] {
        [hour, minute] => below(hour, 24.0) && below(minute, 60.0),
        [hour, minute, second] => below(hour, 24.0) && below(minute, 60.0) && below(second, 61.0),
        _ => false,
    }
}
