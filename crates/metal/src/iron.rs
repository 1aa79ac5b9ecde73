//! Grey iron: carbon equivalent, whether a wall comes out white, inoculant and its fading.
//!
//! All shares are parts of one: 0.034 for 3.4 % carbon.

use std::sync::LazyLock;

use measure::band::Band;
use measure::flow::Duration;
use measure::length::Length;
use measure::matter::Mass;
use measure::source::Law;
use serde::Deserialize;

use crate::figure::{Figure, FigureError, FigureText};

/// Carbon that the silicon and phosphorus are worth.
pub const CARBON_EQUIVALENT: Law = Law {
    name: "metal::iron::carbon_equivalent",
    formula: "CE = C + (Si + P) / 3",
    range: "grey iron, C 2 to 4.3 %, Si 1 to 3 %; the eutectic lies at 4.3 %",
    sources: &["iron-compositions-page", "heine-loper-rosenthal"],
};

/// What makes iron run: silicon counts for less, phosphorus for more than in the carbon equivalent.
pub const COMPOSITION_FACTOR: Law = Law {
    name: "metal::iron::composition_factor",
    formula: "CF = C + Si / 4 + P / 2",
    range: "grey iron below the eutectic",
    sources: &["fluidity-page", "heine-loper-rosenthal"],
};

/// The carbon equivalent that a wall wants so that it can be filed.
pub const WANTED_EQUIVALENT: Law = Law {
    name: "metal::iron::wanted_equivalent",
    formula: "CE from the table of walls, between its rows by ln t",
    range: "inoculated iron in sand, walls 3 to 25 mm; a band of 0.3 % and more",
    sources: &["iron-grade-page", "foundry-handbooks-iron"],
};

/// The thinnest wall in which an iron still comes out grey.
pub const GREY_WALL: Law = Law {
    name: "metal::iron::grey_wall",
    formula: "t = t_table(CE) (1 + (1 − e) / 2)",
    range: "sand; half as much again either way; e is the part of the inoculation that is left",
    sources: &["foundry-handbooks-iron", "common-practice"],
};

/// The thinnest wall that comes out grey, from the white tip of a chill wedge.
pub const WEDGE: Law = Law {
    name: "metal::iron::wall_from_wedge",
    formula: "t = k b",
    range: "wedge in the same sand, broken cold; b where the clear white ends, k of 1.5 to 3",
    sources: &["chill-wedge-standard", "common-practice"],
};

/// Inoculant for a ladle.
pub const INOCULANT: Law = Law {
    name: "metal::iron::inoculant",
    formula: "m_inoculant = s m",
    range: "ferrosilicon with 75 % Si, s of 0.2 to 0.4 %; dry, pea to rice size, in the stream",
    sources: &["inoculant-dose-page", "foundry-handbooks-iron"],
};

/// What is left of an inoculation.
pub const FADE: Law = Law {
    name: "metal::iron::effect_left",
    formula: "e = 2^(−t / t_half)",
    range: "t_half of some 3 to 8 min for plain ferrosilicon; all inoculants fade from the start",
    sources: &[
        "fading-page",
        "inoculant-time-page",
        "foundry-handbooks-iron",
    ],
};

/// What white of a wedge stands for in a wall: low, likely, high. Below, a corner of the casting
/// comes out white; above, good iron is thrown back.
pub const WALL_PER_WHITE: [f64; 3] = [1.5, 2.0, 3.0];

/// How far a real iron lies beside the table of walls, as a factor either way.
pub const TABLE_MARGIN: f64 = 1.5;

/// Carbon equivalent at which iron freezes all at once.
pub const EUTECTIC: f64 = 0.043;

/// How a wall is likely to come out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ChillRisk {
    /// Grey, can be filed.
    Low,
    /// May be white at edges and tips: the wedge decides.
    Doubtful,
    /// White and hard.
    High,
}

impl ChillRisk {
    /// The risk of a wall where the thinnest grey one is known, within the margin of the table.
    pub fn of(wall: Length, grey: Length) -> ChillRisk {
        match wall / grey {
            times if times >= TABLE_MARGIN => ChillRisk::Low,
            times if times >= 1.0 / TABLE_MARGIN => ChillRisk::Doubtful,
            _ => ChillRisk::High,
        }
    }

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            ChillRisk::Low => "grey, if it is inoculated and poured at once",
            ChillRisk::Doubtful => {
                "doubtful: edges and tips may be white, pour a chill wedge first"
            }
            ChillRisk::High => "white and too hard to file: raise silicon or carbon, or the wall",
        }
    }
}

/// A row of the table of walls.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// The wall.
    pub wall: Length,
    /// The carbon equivalent that it wants.
    pub carbon_equivalent: Figure<f64>,
}

/// Carbon equivalent. Law: [`CARBON_EQUIVALENT`].
pub fn carbon_equivalent(carbon: f64, silicon: f64, phosphorus: f64) -> f64 {
    carbon + (silicon + phosphorus) / 3.0
}

/// Composition factor. Law: [`COMPOSITION_FACTOR`].
pub fn composition_factor(carbon: f64, silicon: f64, phosphorus: f64) -> f64 {
    carbon + silicon / 4.0 + phosphorus / 2.0
}

/// The carbon equivalents that a wall wants, low, middle and high; outside the table, those of its
/// nearest row. Law: [`WANTED_EQUIVALENT`].
pub fn wanted_equivalent(wall: Length) -> Option<Band<f64>> {
    let at = wall.as_mm().ln();
    let end = |of: fn(&Band<f64>) -> f64| {
        between(sections(), at, |row| {
            (row.wall.as_mm().ln(), of(&row.carbon_equivalent.band))
        })
    };
    Some(Band::new(
        end(Band::low)?,
        end(Band::likely)?,
        end(Band::high)?,
    ))
}

/// The thinnest wall that comes out grey from an iron, with a part `effect` of its inoculation
/// left, one for all of it. Law: [`GREY_WALL`].
pub fn grey_wall(carbon_equivalent: f64, effect: f64) -> Option<Length> {
    // The table runs from high to low equivalents: turned round, so that it rises.
    let wall = between(sections(), -carbon_equivalent, |row| {
        let likely = row.carbon_equivalent.band.likely();
        (-likely, row.wall.as_mm().ln())
    })?;
    Some(Length::from_mm(wall.exp()) * (1.0 + (1.0 - effect) / 2.0))
}

/// The thinnest wall that comes out grey, from the width of the white in a wedge. Law: [`WEDGE`].
pub fn wall_from_wedge(white: Length, per_white: f64) -> Length {
    white * per_white
}

/// The carbon equivalent that an iron behaves as, from the thinnest wall that came out grey.
pub fn behaves_as(grey: Length) -> Option<f64> {
    wanted_equivalent(grey).map(|band| band.likely())
}

/// Inoculant for iron in the ladle. Law: [`INOCULANT`].
pub fn inoculant(iron: Mass, share: f64) -> Mass {
    iron * share
}

/// The dose of inoculant: a share of the iron.
pub fn inoculant_dose() -> Band<f64> {
    Band::new(0.002, 0.003, 0.004)
}

/// The time in which an inoculation fades to half, from memory.
pub fn half_life() -> Band<Duration> {
    Band::new(
        Duration::from_min(3.0),
        Duration::from_min(5.0),
        Duration::from_min(8.0),
    )
}

/// The part of an inoculation that is left. Law: [`FADE`].
pub fn effect_left(since: Duration, half_life: Duration) -> f64 {
    (-(since / half_life)).exp2()
}

/// The table of walls, the thinnest first.
pub fn sections() -> &'static [Section] {
    &TABLE
}

/// On a straight line between the rows of a table that rises in its first column; the nearest row
/// beyond its ends.
fn between(rows: &[Section], at: f64, columns: impl Fn(&Section) -> (f64, f64)) -> Option<f64> {
    let points: Vec<(f64, f64)> = rows.iter().map(columns).collect();
    let (first, last) = (points.first()?, points.last()?);
    if at <= first.0 {
        return Some(first.1);
    }
    let step = points.windows(2).find(|step| at <= step[1].0);
    Some(step.map_or(last.1, |step| {
        let part = (at - step[0].0) / (step[1].0 - step[0].0);
        step[0].1 + (step[1].1 - step[0].1) * part
    }))
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/iron.toml");

/// Why the table of walls could not be read.
#[derive(Debug, thiserror::Error)]
pub enum TableFault {
    /// Not such a table.
    #[error("iron.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// One of the figures is wrong.
    #[error("iron.toml: {0}")]
    Figure(#[from] FigureError),
    /// A wall that is no length.
    #[error("iron.toml: {0}")]
    Wall(#[from] measure::text::TextError),
}

/// Reads a table of walls.
pub fn read(text: &str) -> Result<Vec<Section>, TableFault> {
    let typed: TableText = toml::from_str(text)?;
    typed.section.into_iter().map(SectionText::meant).collect()
}

static TABLE: LazyLock<Vec<Section>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    section: Vec<SectionText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SectionText {
    wall: String,
    carbon_equivalent: FigureText,
}

impl SectionText {
    fn meant(self) -> Result<Section, TableFault> {
        let wall: measure::text::Typed<Length> = self.wall.parse()?;
        Ok(Section {
            wall: wall.value,
            carbon_equivalent: self.carbon_equivalent.share_range("carbon_equivalent")?,
        })
    }
}
