//! Something that changes for itself: an amount, a range of a setting, one of some choices.

use crate::experiment::Setting;

/// Something that changes for itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Axis {
    /// What it is.
    pub of: Of,
    /// What it is called.
    pub name: String,
    /// Its unit, or nothing.
    pub unit: String,
    /// Low end.
    pub low: f64,
    /// High end.
    pub high: f64,
    /// Whether there is nothing between the ends.
    pub is_choice: bool,
    /// Whether it goes by even factors, and its numbers by logarithms.
    pub by_factors: bool,
    /// Whether it changes only in the second session.
    pub later: bool,
}

/// What an axis is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// The amount of the part at this place.
    Part(usize),
    /// The setting at this place.
    Setting(usize),
    /// Whether the setting at this place is its choice of this place, of three and more; the first
    /// is where none of the others is.
    Choice(usize, usize),
}

impl Axis {
    /// The coded value of an amount or a setting.
    pub fn coded(&self, value: f64) -> f64 {
        let [low, high, value] = match self.by_factors {
            true => [self.low, self.high, value].map(f64::ln),
            false => [self.low, self.high, value],
        };
        (2.0 * value - low - high) / (high - low)
    }

    /// The amount or the setting of a coded value.
    pub fn in_unit(&self, coded: f64) -> f64 {
        let between = |low: f64, high: f64| (low + high + coded * (high - low)) / 2.0;
        match self.by_factors {
            true => between(self.low.ln(), self.high.ln()).exp(),
            false => between(self.low, self.high),
        }
    }
}

impl Of {
    /// Whether two are choices of one setting.
    pub(super) fn is_beside(self, other: Of) -> bool {
        match (self, other) {
            (Of::Choice(one, _), Of::Choice(another, _)) => one == another,
            _ => false,
        }
    }
}

/// The axes of a setting: one for a range or two choices, one for each further choice.
pub(super) fn axes_of(at: usize, setting: &Setting) -> Vec<Axis> {
    let axis = |of: Of, name: String, high: f64| Axis {
        of,
        name,
        unit: setting.unit.clone(),
        low: setting.low,
        high,
        is_choice: setting.choices.is_some(),
        by_factors: setting.by_factors,
        later: false,
    };
    match &setting.choices {
        Some(ways) if ways.len() > 2 => {
            let further = ways.iter().enumerate().skip(1);
            let further = further.map(|(which, way)| {
                let name = format!("{} {way}", setting.name);
                axis(Of::Choice(at, which), name, 1.0)
            });
            further.collect()
        }
        _ => vec![axis(Of::Setting(at), setting.name.clone(), setting.high)],
    }
}
