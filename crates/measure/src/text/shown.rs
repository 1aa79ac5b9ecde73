//! Bands as people read them: no more figures than are known, rounded to the safe side.

use std::fmt;

use crate::band::Band;
use crate::heat::Temperature;
use crate::text::{System, Written, rounded, show, show_in, unit_named};

/// Which way a shown figure may be rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest.
    Nearest,
    /// Never below the figure: what has to hold, to be enough, or not to run short.
    Up,
    /// Never above the figure: what may be borne, taken out or relied on.
    Down,
}

/// A figure as people read it.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// The likely value.
    pub likely: String,
    /// From low to high, where they differ.
    pub band: Option<Between>,
    /// The likely value in the other system, where there is one.
    pub other: Option<String>,
}

/// Both ends of a band, the unit once where both have the same: "3.4" and "4.6 s".
#[derive(Clone, Debug, PartialEq)]
pub struct Between {
    /// The low end.
    pub low: String,
    /// The high end.
    pub high: String,
}

/// In English.
impl fmt::Display for Between {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "{} to {}", self.low, self.high)
    }
}

/// Whether a band has a width.
fn differs<T: Copy + PartialOrd>(band: &Band<T>) -> bool {
    band.low() < band.high()
}

/// A band for people: the wanted system first, in as many figures as are known.
pub fn shown<Q: Written>(band: &Band<Q>, first: System, rounding: Rounding) -> Shown {
    let figures = figures_known(band.low().si(), band.likely().si(), band.high().si());
    let first = if show(band.likely(), first).is_some() {
        first
    } else {
        first.other()
    };
    let text =
        |value: Q, system: System| in_figures(value, band.likely(), system, figures, rounding);
    let likely = text(band.likely(), first).unwrap_or_default();
    let low = in_figures(band.low(), band.likely(), first, figures, at_low(rounding));
    let between = match (low, text(band.high(), first)) {
        (Some(low), Some(high)) if differs(band) && low != high => Some(joined(&low, &high)),
        _ => None,
    };
    Shown {
        likely,
        band: between,
        other: text(band.likely(), first.other()),
    }
}

/// Temperatures to the nearest five degrees: no shop reads them closer.
pub fn shown_temperature(band: &Band<Temperature>, first: System) -> Shown {
    let number = |at: Temperature, system: System| {
        let degrees = match system {
            System::Metric => at.as_celsius(),
            System::Inch => at.as_fahrenheit(),
        };
        format!("{:.0}", (degrees / 5.0).round() * 5.0)
    };
    let mark = |system: System| {
        if system == System::Metric {
            "°C"
        } else {
            "°F"
        }
    };
    let text = |at, system| format!("{} {}", number(at, system), mark(system));
    Shown {
        likely: text(band.likely(), first),
        band: differs(band).then(|| Between {
            low: number(band.low(), first),
            high: text(band.high(), first),
        }),
        other: Some(text(band.likely(), first.other())),
    }
}

/// A share, 0.01 for a per cent.
pub fn shown_share(band: &Band<f64>) -> Shown {
    let per_cent = shown_number(&band.map(|share| share * 100.0));
    Shown {
        likely: format!("{} %", per_cent.likely),
        band: per_cent.band.map(|between| Between {
            high: format!("{} %", between.high),
            ..between
        }),
        other: None,
    }
}

/// A number without a unit, in three figures.
pub fn shown_number(band: &Band<f64>) -> Shown {
    let text = |number: f64| rounded(number, 3);
    let (low, high) = (text(band.low()), text(band.high()));
    Shown {
        likely: text(band.likely()),
        band: (low != high).then_some(Between { low, high }),
        other: None,
    }
}

/// Two figures when the band is wider than a twentieth of the value, else three.
fn figures_known(low: f64, likely: f64, high: f64) -> u32 {
    if (high - low).abs() > 0.05 * likely.abs() {
        2
    } else {
        3
    }
}

/// A value in the unit that suits the likely one, so that a band has one unit.
fn in_figures<Q: Written>(
    value: Q,
    likely: Q,
    system: System,
    figures: u32,
    rounding: Rounding,
) -> Option<String> {
    let word = show(likely, system)?.rsplit_once(' ')?.1.to_owned();
    let unit = unit_named::<Q>(&word)?;
    let value = match rounding {
        Rounding::Nearest => value,
        Rounding::Up => Q::from_si(to_figures(value.si() / unit.si, figures, f64::ceil) * unit.si),
        Rounding::Down => {
            Q::from_si(to_figures(value.si() / unit.si, figures, f64::floor) * unit.si)
        }
    };
    Some(show_in(value, unit, figures.max(2)))
}

/// To so many figures in one direction.
fn to_figures(amount: f64, figures: u32, towards: fn(f64) -> f64) -> f64 {
    if amount <= 0.0 || !amount.is_finite() {
        return amount;
    }
    let step = 10f64.powi(amount.log10().floor() as i32 + 1 - figures as i32);
    let steps = amount / step;
    // A hair of slack, so that a figure already round is not pushed on by its last bit.
    match (steps - steps.round()).abs() < 1e-9 {
        true => steps.round() * step,
        false => towards(steps) * step,
    }
}

/// The low end is only told, not relied on, where the figure has to be enough; where it may be
/// relied on it is the end that counts.
fn at_low(rounding: Rounding) -> Rounding {
    match rounding {
        Rounding::Down => Rounding::Down,
        Rounding::Nearest | Rounding::Up => Rounding::Nearest,
    }
}

/// "3.4 s" and "4.6 s" to "3.4" and "4.6 s".
fn joined(low: &str, high: &str) -> Between {
    let low = match low.rsplit_once(' ') {
        Some((number, unit)) if high.ends_with(unit) => number,
        _ => low,
    };
    Between {
        low: low.to_owned(),
        high: high.to_owned(),
    }
}
