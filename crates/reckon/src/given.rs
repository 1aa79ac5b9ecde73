//! What is given to a law at one point of its ranges.

use std::cell::RefCell;
use std::collections::BTreeMap;

use measure::band::Band;
use measure::text::ranged::Ranged;
use measure::text::shown::{Rounding, Shown, shown};
use measure::text::{System, TextError, Written, rounded};
use metal::alloy::Alloy;

use crate::refusal::Impossible;

/// Low, likely and high in SI units, with the system of the first unit typed.
pub(crate) type Ends = ([f64; 3], System);

/// A kind of quantity, with its type forgotten: how it is read, shown and filed.
#[derive(Clone, Copy)]
pub struct Kind {
    /// What it is, with its article.
    pub what: &'static str,
    /// How it may be typed.
    pub example: &'static str,
    pub(crate) read: fn(&str) -> Result<Ends, TextError>,
    pub(crate) show: fn([f64; 3], System, Rounding) -> Shown,
    pub(crate) filed: fn(f64) -> (f64, &'static str),
}

/// What is given to a law, each thing at one value.
pub struct Given<'a> {
    values: &'a BTreeMap<&'static str, Value>,
    doubts: RefCell<Vec<String>>,
}

/// One thing given.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A figure in SI units, a share, a number.
    Figure(f64),
    /// Several of them.
    Figures(Vec<f64>),
    /// A word or words.
    Words(String),
    /// An alloy.
    Metal(&'static Alloy),
}

impl Kind {
    /// One figure without a range, in SI units.
    pub fn read_one(&self, text: &str) -> Option<f64> {
        let (ends, _) = (self.read)(text).ok()?;
        (ends[0] == ends[2]).then_some(ends[1])
    }

    /// In the unit in which files carry it, to six figures.
    pub fn written(&self, si: f64) -> String {
        let (amount, unit) = (self.filed)(si);
        format!("{} {unit}", rounded(amount, 6))
    }

    /// The kind of a quantity.
    pub const fn of<Q: Written + 'static>() -> Kind {
        Kind {
            what: Q::WHAT,
            example: Q::EXAMPLE,
            read: read::<Q>,
            show: show::<Q>,
            filed: filed::<Q>,
        }
    }
}

impl<'a> Given<'a> {
    pub(crate) fn at(values: &'a BTreeMap<&'static str, Value>) -> Given<'a> {
        Given {
            values,
            doubts: RefCell::default(),
        }
    }

    /// A quantity. What is not there is no number, and no number is no answer.
    pub fn get<Q: Written>(&self, key: &str) -> Q {
        Q::from_si(self.number(key))
    }

    /// A quantity that need not be given.
    pub fn find<Q: Written>(&self, key: &str) -> Option<Q> {
        self.has(key).then(|| self.get(key))
    }

    /// Quantities.
    pub fn list<Q: Written>(&self, key: &str) -> Vec<Q> {
        self.numbers(key).into_iter().map(Q::from_si).collect()
    }

    /// A number, or a share as a part of one.
    pub fn number(&self, key: &str) -> f64 {
        match self.values.get(key) {
            Some(Value::Figure(amount)) => *amount,
            _ => f64::NAN,
        }
    }

    /// Numbers or shares.
    pub fn numbers(&self, key: &str) -> Vec<f64> {
        match self.values.get(key) {
            Some(Value::Figures(amounts)) => amounts.clone(),
            _ => Vec::new(),
        }
    }

    /// Words; none where nothing was typed.
    pub fn words(&self, key: &str) -> &'a str {
        match self.values.get(key) {
            Some(Value::Words(words)) => words,
            _ => "",
        }
    }

    /// The alloy typed under `metal`.
    pub fn alloy(&self) -> Option<&'static Alloy> {
        match self.values.get("metal") {
            Some(Value::Metal(alloy)) => Some(alloy),
            _ => None,
        }
    }

    /// Whether it is there.
    pub fn has(&self, key: &str) -> bool {
        self.values.contains_key(key)
    }

    /// Says beside the answer what makes it doubtful: outside the range of the law, or unlikely.
    pub fn doubt(&self, words: impl Into<String>) {
        let words = words.into();
        let mut doubts = self.doubts.borrow_mut();
        if !doubts.contains(&words) {
            doubts.push(words);
        }
    }

    /// Says why there is no answer.
    pub fn refuse<T>(
        &self,
        what: &'static str,
        why: impl Into<String>,
        advice: impl Into<String>,
    ) -> Result<T, Impossible> {
        Err(Impossible {
            what,
            why: why.into(),
            advice: advice.into(),
        })
    }

    pub(crate) fn doubts(self) -> Vec<String> {
        self.doubts.into_inner()
    }
}

fn read<Q: Written>(text: &str) -> Result<Ends, TextError> {
    let ranged: Ranged<Q> = text.parse()?;
    let band = ranged.band;
    let ends = [band.low().si(), band.likely().si(), band.high().si()];
    Ok((ends, ranged.system))
}

fn show<Q: Written>(ends: [f64; 3], system: System, rounding: Rounding) -> Shown {
    let [low, likely, high] = ends.map(Q::from_si);
    shown(&Band::new(low, likely, high), system, rounding)
}

fn filed<Q: Written>(si: f64) -> (f64, &'static str) {
    match Q::UNITS.first() {
        Some(unit) => ((si - unit.offset) / unit.si, unit.words[0]),
        None => (si, ""),
    }
}
