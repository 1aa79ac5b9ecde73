//! What a law gave, and how far that is from the figure it had to give.

use measure::heat::{Temperature, TemperatureDifference};
use measure::text::{Typed, Written, show_in, unit_named};
use thiserror::Error;

use crate::given::per_cent;

/// One figure that a law gave.
pub struct Answer {
    /// Its name in the row.
    pub name: &'static str,
    amount: f64,
    kind: Kind,
}

/// How far an answer is off.
#[derive(Clone, Debug, PartialEq)]
pub struct Deviation {
    /// The answer, in the unit of the figure expected.
    pub got: String,
    /// How far off it is, as the tolerance is written: in per cent or as an amount.
    pub off: String,
    /// Whether that is more than the row allows.
    pub too_far: bool,
}

/// Why an answer cannot be compared.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum AnswerError {
    /// The figure expected is not of the kind that the law gives.
    #[error("\"{0}\" is not what the law gives: write it with a unit of that quantity")]
    Expected(String),
    /// The tolerance is neither a per cent nor an amount.
    #[error("\"{0}\" is no tolerance: write a per cent or an amount with its unit")]
    Within(String),
}

/// How the texts of an answer are read; each returns SI units, or shares as parts of one.
struct Kind {
    read: fn(&str) -> Option<f64>,
    read_step: fn(&str) -> Option<f64>,
    write: fn(f64, &str) -> String,
}

impl Answer {
    /// A quantity with a unit.
    pub fn quantity<Q: Written>(name: &'static str, value: Q) -> Answer {
        let kind = Kind {
            read: read_quantity::<Q>,
            read_step: read_quantity::<Q>,
            write: write_quantity::<Q>,
        };
        let amount = value.si();
        Answer { name, amount, kind }
    }

    /// A temperature, counted in degrees Celsius: a per cent of kelvin would be the kinder measure.
    pub fn temperature(name: &'static str, value: Temperature) -> Answer {
        let kind = Kind {
            read: |text| {
                let typed = text.parse::<Typed<Temperature>>().ok()?;
                Some(typed.value.as_celsius())
            },
            read_step: read_quantity::<TemperatureDifference>,
            write: |degrees, _| format!("{} C", figures(degrees)),
        };
        let amount = value.as_celsius();
        Answer { name, amount, kind }
    }

    /// A share of one.
    pub fn share(name: &'static str, amount: f64) -> Answer {
        let kind = Kind {
            read: per_cent,
            read_step: |_| None,
            write: |share, _| format!("{} %", figures(share * 100.0)),
        };
        Answer { name, amount, kind }
    }

    /// A number without a unit.
    pub fn number(name: &'static str, amount: f64) -> Answer {
        let kind = Kind {
            read: |text| text.parse().ok(),
            read_step: |text| text.parse().ok(),
            write: |number, _| figures(number),
        };
        Answer { name, amount, kind }
    }

    /// How far the answer is from the figure expected.
    ///
    /// A tolerance in per cent is one of the figure expected, so that a nought is only met by a
    /// nought; any other is an amount and has to carry the unit.
    pub fn against(&self, expected: &str, within: &str) -> Result<Deviation, AnswerError> {
        let wanted =
            (self.kind.read)(expected).ok_or_else(|| AnswerError::Expected(expected.to_owned()))?;
        let apart = (self.amount - wanted).abs();
        let (allowed, off) = match per_cent(within) {
            Some(share) => (share * wanted.abs(), relative(apart, wanted)),
            None => {
                let step = (self.kind.read_step)(within)
                    .ok_or_else(|| AnswerError::Within(within.to_owned()))?;
                (step, figures(apart))
            }
        };
        // A NaN is never close enough.
        let close = apart <= allowed + ROUNDING * wanted.abs();
        Ok(Deviation {
            got: (self.kind.write)(self.amount, expected),
            off,
            too_far: !close,
        })
    }
}

/// What sums of 64-bit numbers leave over; printed as nought, and forgiven where a row says 0 %.
const ROUNDING: f64 = 1e-12;

fn relative(apart: f64, wanted: f64) -> String {
    if apart == 0.0 {
        return "0 %".to_owned();
    }
    format!(
        "{} %",
        measure::text::rounded(100.0 * apart / wanted.abs(), 2)
    )
}

fn read_quantity<Q: Written>(text: &str) -> Option<f64> {
    text.parse::<Typed<Q>>().ok().map(|typed| typed.value.si())
}

/// In the unit in which the figure expected is written.
fn write_quantity<Q: Written>(amount: f64, expected: &str) -> String {
    let word = expected.split_whitespace().last().and_then(unit_named::<Q>);
    match word.or(Q::UNITS.first()) {
        Some(unit) => show_in(Q::from_si(amount), unit, 6),
        None => figures(amount),
    }
}

fn figures(number: f64) -> String {
    measure::text::rounded(number, 6)
}
