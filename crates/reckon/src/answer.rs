//! What a law gives.

use measure::heat::Temperature;
use measure::text::Written;
use measure::text::shown::Rounding;

use crate::given::Kind;

/// One figure or word that a law gives, at one point of its inputs.
#[derive(Clone)]
pub struct Answer {
    /// Its trade name.
    pub name: &'static str,
    /// What it is.
    pub outcome: Outcome,
    /// Which way it may be rounded for people.
    pub rounding: Rounding,
}

/// A figure or words.
#[derive(Clone)]
pub enum Outcome {
    /// Low, likely and high; SI units, or parts of one for shares.
    Figure {
        /// How it is read and shown.
        kind: FigureKind,
        /// The law's own margin; all three alike where it states none.
        ends: [f64; 3],
    },
    /// Words: a verdict, a choice.
    Words(String),
}

/// How a figure is shown.
#[derive(Clone, Copy)]
pub enum FigureKind {
    /// With a unit.
    Quantity(Kind),
    /// On a scale, to the nearest five degrees.
    Temperature,
    /// In per cent.
    Share,
    /// As it is.
    Number,
}

impl Answer {
    /// A quantity.
    pub fn of<Q: Written + 'static>(name: &'static str, value: Q) -> Answer {
        Answer::figure(name, FigureKind::Quantity(Kind::of::<Q>()), value.si())
    }

    /// A temperature.
    pub fn temperature(name: &'static str, value: Temperature) -> Answer {
        Answer::figure(name, FigureKind::Temperature, value.as_kelvin())
    }

    /// A share, 0.01 for a per cent.
    pub fn share(name: &'static str, share: f64) -> Answer {
        Answer::figure(name, FigureKind::Share, share)
    }

    /// A number without a unit.
    pub fn number(name: &'static str, number: f64) -> Answer {
        Answer::figure(name, FigureKind::Number, number)
    }

    /// Words.
    pub fn words(name: &'static str, words: impl Into<String>) -> Answer {
        Answer {
            name,
            outcome: Outcome::Words(words.into()),
            rounding: Rounding::Nearest,
        }
    }

    /// What has to be enough, or hold.
    pub fn rounded_up(mut self) -> Answer {
        self.rounding = Rounding::Up;
        self
    }

    /// What may be borne or relied on.
    pub fn rounded_down(mut self) -> Answer {
        self.rounding = Rounding::Down;
        self
    }

    /// With the law's own margin to either side, 0.1 for a tenth.
    pub fn give_or_take(self, margin: f64) -> Answer {
        self.times(1.0 - margin, 1.0 + margin)
    }

    /// With the law's own ends, as multiples of the figure.
    pub fn times(mut self, low: f64, high: f64) -> Answer {
        if let Outcome::Figure { ends, .. } = &mut self.outcome {
            let (a, b) = (ends[1] * low, ends[1] * high);
            *ends = [a.min(b), ends[1], a.max(b)];
        }
        self
    }

    /// With the law's own ends.
    pub fn between<Q: Written>(mut self, low: Q, high: Q) -> Answer {
        if let Outcome::Figure { ends, .. } = &mut self.outcome {
            *ends = [low.si().min(ends[1]), ends[1], high.si().max(ends[1])];
        }
        self
    }

    /// With the law's own ends, for shares and numbers.
    pub fn from_to(mut self, low: f64, high: f64) -> Answer {
        if let Outcome::Figure { ends, .. } = &mut self.outcome {
            *ends = [low.min(ends[1]), ends[1], high.max(ends[1])];
        }
        self
    }

    fn figure(name: &'static str, kind: FigureKind, value: f64) -> Answer {
        Answer {
            name,
            outcome: Outcome::Figure {
                kind,
                ends: [value; 3],
            },
            rounding: Rounding::Nearest,
        }
    }
}
