//! The heat of the metal without a probe: what it looks like, and how long a spoonful takes to
//! freeze.

use std::sync::LazyLock;

use measure::band::Band;
use measure::flow::Duration;
use measure::heat::{Temperature, TemperatureDifference};
use measure::source::Law;
use serde::Deserialize;
use thiserror::Error;

use crate::alloy::Family;
use crate::figure::{Figure, FigureError, FigureText};

/// The narrowest margin that is given: a spoon is never filled twice alike. A judgement.
pub const LEAST_MARGIN: TemperatureDifference = TemperatureDifference::from_kelvin(30.0);

/// How well the probe that the spoon was set by is trusted.
pub const PROBE_MARGIN: TemperatureDifference = TemperatureDifference::from_kelvin(10.0);

/// How far past the two settings the line is drawn on, as a part of the way between them.
pub const FARTHEST: f64 = 0.25;

/// Temperature from the time in which a spoonful freezes.
pub const SPOON_TEMPERATURE: Law = Law {
    name: "metal::spoon::spoon_temperature",
    formula: "T = T_1 + (T_2 − T_1) (t − t_1) / (t_2 − t_1)",
    range: "the same spoon, warmed alike and filled alike, the same metal; between the two \
            settings and a quarter of their distance beyond",
    sources: &["common-practice"],
};

/// A spoonful timed beside a probe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// From the dip until the surface stands.
    pub time: Duration,
    /// What the probe said.
    pub temperature: Temperature,
}

/// Why a spoon tells nothing.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum SpoonError {
    /// Two settings alike, or the hotter metal frozen first.
    #[error(
        "the hotter spoonful has to take clearly longer than the cooler one: set the spoon \
             again at two temperatures some 80 K apart"
    )]
    NotSet,
    /// Too far from what the spoon was set at.
    #[error(
        "{seconds:.1} s lies too far from the times the spoon was set at: set it again nearer \
             to this heat"
    )]
    TooFar {
        /// The time that was read.
        seconds: f64,
    },
}

/// The temperature for a freezing time, from two settings, with its margin: that of the probe and
/// of the watch carried through, and never less than 30 K. Law: [`SPOON_TEMPERATURE`].
///
/// # Errors
///
/// Where the settings tell nothing, or the time lies far outside them.
pub fn spoon_temperature(
    settings: [Setting; 2],
    time: Duration,
    watch: Duration,
) -> Result<Band<Temperature>, SpoonError> {
    let [one, two] = settings;
    let apart = two.time - one.time;
    let slope = (two.temperature - one.temperature).as_kelvin() / apart.as_s();
    if !(slope > 0.0 && slope.is_finite() && apart.as_s().abs() > 2.0 * watch.as_s()) {
        return Err(SpoonError::NotSet);
    }
    let part = (time - one.time) / apart;
    if !(-FARTHEST..=1.0 + FARTHEST).contains(&part) {
        let seconds = time.as_s();
        return Err(SpoonError::TooFar { seconds });
    }
    let likely = one.temperature + (two.temperature - one.temperature) * part;
    let margin = margin(part, slope, watch.as_s());
    Ok(Band::new(likely - margin, likely, likely + margin))
}

/// Something seen on hot metal.
#[derive(Clone, Debug, PartialEq)]
pub struct Cue {
    /// The metal it is seen on.
    pub family: Family,
    /// What is seen.
    pub seen: String,
    /// Between which temperatures.
    pub between: Figure<Temperature>,
}

/// The cue card of a metal, from cool to hot.
pub fn cues(family: Family) -> impl Iterator<Item = &'static Cue> {
    TABLE.iter().filter(move |cue| cue.family == family)
}

/// Reads a table of cues.
///
/// # Errors
///
/// Where it is no such table, or a figure in it is wrong.
pub fn read(text: &str) -> Result<Vec<Cue>, CueFault> {
    let typed: TableText = toml::from_str(text)?;
    let rows = typed.cue.into_iter().map(CueText::meant);
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Why the table of cues could not be read.
#[derive(Debug, Error)]
pub enum CueFault {
    /// Not such a table.
    #[error("cues.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// One of the figures is wrong.
    #[error("cues.toml: {0}")]
    Figure(#[from] FigureError),
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/cues.toml");

static TABLE: LazyLock<Vec<Cue>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

/// Errors of the three timings and the two probe readings, taken as independent.
fn margin(part: f64, slope: f64, watch: f64) -> TemperatureDifference {
    let by_watch = slope * watch;
    let by_probe = PROBE_MARGIN.as_kelvin();
    let each = by_watch * by_watch + by_probe * by_probe;
    let of_settings = each * (part * part + (1.0 - part) * (1.0 - part));
    let whole = (of_settings + by_watch * by_watch).sqrt();
    TemperatureDifference::from_kelvin(whole.max(LEAST_MARGIN.as_kelvin()))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    cue: Vec<CueText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct CueText {
    family: Family,
    seen: String,
    between: FigureText,
}

impl CueText {
    fn meant(self) -> Result<Cue, FigureError> {
        Ok(Cue {
            family: self.family,
            seen: self.seen,
            between: self.between.quantity_range("between")?,
        })
    }
}
