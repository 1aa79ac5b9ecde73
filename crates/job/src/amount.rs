//! An amount of any kind with its band, as figures are kept, written to files and shown to people.

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::Temperature;
use measure::length::{Area, Length, Volume};
use measure::matter::{Force, Mass};
use measure::text::{System, Written, show, show_in, unit_named};

/// A band of some quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// A length.
    Length(Band<Length>),
    /// An area.
    Area(Band<Area>),
    /// A volume.
    Volume(Band<Volume>),
    /// A mass.
    Mass(Band<Mass>),
    /// A force.
    Force(Band<Force>),
    /// A time.
    Duration(Band<Duration>),
    /// A temperature.
    Temperature(Band<Temperature>),
    /// A share of something, 0.01 for a per cent.
    Share(Band<f64>),
}

/// Which way a shown figure may be rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest.
    Nearest,
    /// Never below the figure: what has to hold, to be enough, or not to run short.
    Up,
}

/// A figure as people read it.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// The likely value.
    pub likely: String,
    /// From low to high, where they differ.
    pub band: Option<String>,
    /// The likely value in the other system, where there is one.
    pub other: Option<String>,
}

impl Amount {
    /// Low, likely and high in the unit of [`Amount::unit`].
    pub fn values(&self) -> [f64; 3] {
        match self {
            Amount::Length(band) => ends(band, Length::as_mm),
            Amount::Area(band) => ends(band, Area::as_mm2),
            Amount::Volume(band) => ends(band, Volume::as_cm3),
            Amount::Mass(band) => ends(band, Mass::as_kg),
            Amount::Force(band) => ends(band, Force::as_n),
            Amount::Duration(band) => ends(band, Duration::as_s),
            Amount::Temperature(band) => ends(band, Temperature::as_celsius),
            Amount::Share(band) => ends(band, |share| share * 100.0),
        }
    }

    /// The unit in which files carry it.
    pub fn unit(&self) -> &'static str {
        match self {
            Amount::Length(_) => "mm",
            Amount::Area(_) => "mm2",
            Amount::Volume(_) => "cm3",
            Amount::Mass(_) => "kg",
            Amount::Force(_) => "N",
            Amount::Duration(_) => "s",
            Amount::Temperature(_) => "C",
            Amount::Share(_) => "%",
        }
    }

    /// The figure for people, the wanted system first.
    pub fn shown(&self, first: System, rounding: Rounding) -> Shown {
        match self {
            Amount::Length(band) => shown(band, first, rounding),
            Amount::Area(band) => shown(band, first, rounding),
            Amount::Volume(band) => shown(band, first, rounding),
            Amount::Mass(band) => shown(band, first, rounding),
            Amount::Force(band) => shown(&band.map(Force::held_by), first, rounding),
            Amount::Duration(band) => shown(band, first, rounding),
            Amount::Temperature(band) => shown_temperature(band, first),
            Amount::Share(band) => {
                let text = |share: f64| measure::text::rounded(share * 100.0, 3);
                Shown {
                    likely: format!("{} %", text(band.likely())),
                    band: differs(band)
                        .then(|| format!("{} to {} %", text(band.low()), text(band.high()))),
                    other: None,
                }
            }
        }
    }
}

fn ends<T: Copy + PartialOrd>(band: &Band<T>, get: impl Fn(T) -> f64) -> [f64; 3] {
    [get(band.low()), get(band.likely()), get(band.high())]
}

fn differs<T: Copy + PartialOrd>(band: &Band<T>) -> bool {
    band.low() < band.high()
}

fn shown<Q: Written>(band: &Band<Q>, first: System, rounding: Rounding) -> Shown {
    let figures = figures_known(band.low().si(), band.likely().si(), band.high().si());
    let first = if show(band.likely(), first).is_some() {
        first
    } else {
        first.other()
    };
    let text =
        |value: Q, system: System| in_figures(value, band.likely(), system, figures, rounding);
    let likely = text(band.likely(), first).unwrap_or_default();
    let low = in_figures(band.low(), band.likely(), first, figures, Rounding::Nearest);
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
        Rounding::Up => Q::from_si(up_to_figures(value.si() / unit.si, figures) * unit.si),
    };
    Some(show_in(value, unit, figures.max(2)))
}

fn up_to_figures(amount: f64, figures: u32) -> f64 {
    if amount <= 0.0 {
        return amount;
    }
    let step = 10f64.powi(amount.log10().floor() as i32 + 1 - figures as i32);
    // A hair of slack, so that a figure already round is not pushed up by its last bit.
    ((amount / step - 1e-9).ceil()) * step
}

/// "3.4 s" and "4.6 s" to "3.4 to 4.6 s".
fn joined(low: &str, high: &str) -> String {
    match low.rsplit_once(' ') {
        Some((number, unit)) if high.ends_with(unit) => format!("{number} to {high}"),
        _ => format!("{low} to {high}"),
    }
}

/// Temperatures to the nearest five degrees: no shop reads them closer.
fn shown_temperature(band: &Band<Temperature>, first: System) -> Shown {
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
        band: differs(band).then(|| {
            format!(
                "{} to {}",
                number(band.low(), first),
                text(band.high(), first)
            )
        }),
        other: Some(text(band.likely(), first.other())),
    }
}
