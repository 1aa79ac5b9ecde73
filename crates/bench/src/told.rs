//! What the bench says: figures with their bands, lines with their weight, for people and machines.

use job::amount::Amount;
use job::cores_told::Line;
use job::remark::Level;
use job::words::Language;
use job::words::said::Said;
use measure::band::Band;
use measure::text::System;
use measure::text::shown::{Rounding, Shown, shown_number};
use serde_json::{Map, Value as Json, json};

/// Everything that came of one ask.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// The line on top.
    pub head: Said,
    /// Figures, in the order in which they are told.
    pub figures: Vec<Figure>,
    /// What to do, one after the other.
    pub steps: Vec<Said>,
    /// What to mind and what to do, in order.
    pub lines: Vec<Line>,
}

/// A figure under the id of its label.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Id of its label; without its first word it is the key in JSON.
    pub id: &'static str,
    /// Its label, where the id alone is not one: a part of a mix.
    pub label: Option<Said>,
    /// What it is.
    pub value: Value,
    /// Which way it may be rounded.
    pub rounding: Rounding,
    /// What stands behind it in a line of people's words: scoops, a price.
    pub beside: Option<Said>,
    /// Whether it is weighed out, so that paper leaves room for what the scale said.
    pub weighed_out: bool,
}

/// What a figure is.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// An amount with its unit.
    Amount(Amount),
    /// A number without one.
    Number(Band<f64>),
    /// Words.
    Words(Said),
}

impl Told {
    /// Nothing but a line on top.
    pub fn new(head: Said) -> Told {
        Told {
            head,
            figures: Vec::new(),
            steps: Vec::new(),
            lines: Vec::new(),
        }
    }

    /// Adds an amount.
    pub fn amount(&mut self, id: &'static str, amount: Amount) {
        self.figures.push(Figure::new(id, Value::Amount(amount)));
    }

    /// Adds a share of something, 0.01 for a per cent.
    pub fn share(&mut self, id: &'static str, share: Band<f64>) {
        self.amount(id, Amount::Share(share));
    }

    /// Adds a number without a unit.
    pub fn number(&mut self, id: &'static str, number: Band<f64>) {
        self.figures.push(Figure::new(id, Value::Number(number)));
    }

    /// Adds words.
    pub fn words(&mut self, id: &'static str, words: Said) {
        self.figures.push(Figure::new(id, Value::Words(words)));
    }

    /// Adds what to do next.
    pub fn step(&mut self, words: Said) {
        self.steps.push(words);
    }

    /// Adds a note.
    pub fn note(&mut self, words: Said) {
        self.line(Level::Note, words);
    }

    /// Adds something to mind.
    pub fn caution(&mut self, words: Said) {
        self.line(Level::Caution, words);
    }

    /// Adds what forbids the next step.
    pub fn stop(&mut self, words: Said) {
        self.line(Level::Stop, words);
    }

    /// As one JSON object, its words in British English: figures by key with low, likely, high and
    /// unit, steps in order, and lines with their weight.
    pub fn json(&self) -> String {
        let figures: Map<String, Json> = self.figures.iter().map(Figure::json).collect();
        let lines = self.lines.iter().map(|line| {
            json!({
                "code": line.words.id(),
                "level": line.level,
                "words": Language::Uk.say(&line.words),
            })
        });
        let lines: Vec<Json> = lines.collect();
        let head = Language::Uk.say(&self.head);
        let steps = self.steps.iter().map(|step| Language::Uk.say(step));
        let steps: Vec<String> = steps.collect();
        format!(
            "{:#}\n",
            json!({ "head": head, "figures": figures, "steps": steps, "lines": lines })
        )
    }

    fn line(&mut self, level: Level, words: Said) {
        let line = Line { level, words };
        if !self.lines.contains(&line) {
            self.lines.push(line);
        }
    }
}

impl Figure {
    /// A figure rounded to the nearest.
    pub fn new(id: &'static str, value: Value) -> Figure {
        Figure {
            id,
            label: None,
            value,
            rounding: Rounding::Nearest,
            beside: None,
            weighed_out: false,
        }
    }

    /// Its label.
    pub fn label(&self) -> Said {
        self.label.clone().unwrap_or_else(|| Said::new(self.id))
    }

    /// As people read it.
    pub fn shown(&self, language: Language, units: System) -> Shown {
        match &self.value {
            Value::Amount(amount) => amount.shown(units, self.rounding),
            Value::Number(band) => shown_number(band),
            Value::Words(said) => Shown {
                likely: language.say(said),
                band: None,
                other: None,
            },
        }
    }

    fn json(&self) -> (String, Json) {
        let key = match &self.label {
            Some(label) => Language::Uk.say(label).replace(' ', "_"),
            None => self.id.trim_start_matches("bench-").replace('-', "_"),
        };
        let value = match &self.value {
            Value::Amount(amount) => {
                let [low, likely, high] = amount.values();
                json!({ "low": low, "likely": likely, "high": high, "unit": amount.unit() })
            }
            Value::Number(band) => {
                json!({ "low": band.low(), "likely": band.likely(), "high": band.high() })
            }
            Value::Words(said) => json!(Language::Uk.say(said)),
        };
        (key, value)
    }
}
