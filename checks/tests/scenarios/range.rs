//! Ranges as the scenarios write them, and how a figure lies in one.

/// A range in some unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Range {
    /// Lowest.
    pub low: f64,
    /// Highest.
    pub high: f64,
    /// The unit, nothing for plain numbers.
    pub unit: String,
}

/// How a band lies in a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lies {
    /// The likely value lies in it.
    Inside,
    /// The likely value lies outside, and the band reaches into it.
    Overlaps,
    /// Nothing of the band lies in it.
    Outside,
}

/// Units of the hand sums in those that files carry.
const UNITS: [(&str, &str, f64); 8] = [
    ("kgf", "N", 9.806_65),
    ("min", "s", 60.0),
    ("h", "s", 3600.0),
    ("g", "kg", 0.001),
    ("kg", "g", 1000.0),
    ("kPa", "Pa", 1000.0),
    ("cm2", "mm2", 100.0),
    ("cm3", "mm3", 1000.0),
];

impl Range {
    /// Reads "3.9 to 4.7 kg".
    pub fn read(text: &str) -> Option<Range> {
        let (low, rest) = text.split_once(" to ")?;
        let (high, unit) = rest.split_once(' ').unwrap_or((rest, ""));
        let (low, high) = (low.parse().ok()?, high.parse().ok()?);
        let unit = unit.to_owned();
        (low <= high).then_some(Range { low, high, unit })
    }

    /// The same range in another unit, where the two measure the same.
    pub fn within_unit(&self, unit: &str) -> Option<Range> {
        let plain = unit.replace('²', "2").replace('³', "3");
        let same = self.unit == plain;
        let known = UNITS
            .iter()
            .find(|(from, to, _)| *from == self.unit && *to == plain);
        let factor = if same { 1.0 } else { known?.2 };
        Some(Range {
            low: self.low * factor,
            high: self.high * factor,
            unit: unit.to_owned(),
        })
    }

    /// How a band of the same unit lies in it.
    pub fn holds(&self, [low, likely, high]: [f64; 3]) -> Lies {
        if (self.low..=self.high).contains(&likely) {
            Lies::Inside
        } else if low <= self.high && self.low <= high {
            Lies::Overlaps
        } else {
            Lies::Outside
        }
    }
}
