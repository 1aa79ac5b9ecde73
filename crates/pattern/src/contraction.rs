//! How much larger than the part the pattern has to be.
//!
//! The solid metal contracts on the way from its freezing point to the room; the pattern is made
//! larger by as much. Sources differ for every metal, cores hold the metal back, and rapping
//! widens the mould, so a single figure is the wrong shape of answer: one's own measured castings
//! narrow it best.

use std::sync::LazyLock;

use measure::band::Band;
use measure::length::Length;
use measure::share::Contraction;
use measure::source::{Law, Sourced};
use measure::text::Typed;
use serde::Deserialize;
use thiserror::Error;

use crate::cast_metal::CastMetal;

/// Size of the pattern from the size wanted and the linear contraction.
pub const PATTERN_LENGTH: Law = Law {
    name: "pattern::contraction::pattern_length",
    formula: "L_pattern = L_part (1 + s)",
    range: "s up to some 3 %; free contraction, less where cores or hard sand hold it back",
    sources: &["hobbicast-223", "dooley-426"],
};

/// Size of the pattern where the two shrinkages by volume are known: freezing and cooling solid.
pub const PATTERN_LENGTH_BY_VOLUME: Law = Law {
    name: "pattern::contraction::pattern_length_by_volume",
    formula: "L_pattern = L_part / ((1 - s_freezing) (1 - s_cooling))^(1/3)",
    range: "no feeder: a fed casting does not shrink on freezing, take s_freezing = 0",
    sources: &["exam-2025-pattern"],
};

/// Size of the casting that a given pattern gives: an original used as it is comes out smaller.
pub const CASTING_LENGTH: Law = Law {
    name: "pattern::contraction::casting_length",
    formula: "L_casting = L_pattern / (1 + s)",
    range: "s up to some 3 %; no rapping; single dimensions scatter by some 0.3 % beside it",
    sources: &["hobbicast-223", "dooley-426", "shop-handbook-figures"],
};

/// Size across the pattern where rapping is counted on to widen the mould.
///
/// Rapping widens the mould sideways and never deepens it: on small patterns it makes up for the
/// whole contraction sideways, while the depth still needs all of it.
pub const RAPPED_LENGTH: Law = Law {
    name: "pattern::contraction::rapped_length",
    formula: "L_pattern = L_part (1 + s) − p",
    range: "across the draw, patterns up to about 75 mm; the depth takes L_part (1 + s)",
    sources: &["mechanical-text-book-58"],
};

/// Contraction by metal, size, and whether cores hold the casting back.
pub const BY_SIZE: Law = Law {
    name: "pattern::contraction::by_size",
    formula: "s = table (metal, L, open or cored)",
    range: "sand moulds; steel, grey iron and aluminium by size, brass and bronze at all sizes",
    sources: &["heine-loper-rosenthal"],
};

/// Contraction from one's own castings: the mean, and how far it can be trusted.
///
/// The margin holds the mean four times in five (Student's t over the castings measured) and
/// never leaves what was measured.
pub const FROM_CASTINGS: Law = Law {
    name: "pattern::contraction::from_castings",
    formula: "s = Σ (L_pattern / L_casting − 1) / n ± t S / √n",
    range: "the same metal, sand and kind of casting; from three castings on",
    sources: &["student-1908"],
};

/// Largest size at which rapping is counted on to take the place of contraction sideways:
/// `mechanical-text-book-58`.
pub const SMALL_PATTERN: Length = Length::from_mm(75.0);

/// Scatter of any one dimension of a sand casting beside its contraction, a share of the length:
/// `shop-handbook-figures`.
pub const SCATTER: f64 = 0.003;

/// Fewest castings from which a contraction of one's own is taken: two have no scatter to speak of.
pub const FEWEST_CASTINGS: usize = 3;

/// Whether anything within the casting holds it back while it contracts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Build {
    /// Free to contract.
    Open,
    /// Cores, or deep hard-rammed pockets, hold it back.
    Cored,
}

/// One casting measured against its pattern.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// The length on the pattern.
    pub pattern: Length,
    /// The same length on the casting.
    pub casting: Length,
}

/// Why the castings measured give no contraction.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum MeasuredError {
    /// Too few of them.
    #[error(
        "{given} casting(s) measured: measure the same length on {FEWEST_CASTINGS} or more, \
         since fewer show no scatter"
    )]
    TooFew {
        /// How many there are.
        given: usize,
    },
    /// A length of nought, or a casting so unlike its pattern that another length was measured.
    #[error(
        "casting {number}: {pattern_mm:.2} mm on the pattern against {casting_mm:.2} mm cast is no \
         contraction between −1 and 5 %: measure the same length on both"
    )]
    NotTheSameLength {
        /// Which casting, from one.
        number: usize,
        /// Length on the pattern, mm.
        pattern_mm: f64,
        /// Length on the casting, mm.
        casting_mm: f64,
    },
}

/// Length of the pattern for a length of the part. Law: [`PATTERN_LENGTH`].
pub fn pattern_length(part: Length, contraction: f64) -> Length {
    part * (1.0 + contraction)
}

/// Length of the pattern from shrinkages by volume. Law: [`PATTERN_LENGTH_BY_VOLUME`].
pub fn pattern_length_by_volume(part: Length, freezing: f64, cooling: f64) -> Length {
    part * (1.0 / ((1.0 - freezing) * (1.0 - cooling))).cbrt()
}

/// Length of the casting from that of its pattern. Law: [`CASTING_LENGTH`].
pub fn casting_length(pattern: Length, contraction: f64) -> Length {
    pattern * (1.0 / (1.0 + contraction))
}

/// Length across the pattern where rapping widens the mould by `play` in all.
/// Law: [`RAPPED_LENGTH`].
pub fn rapped_length(part: Length, contraction: f64, play: Length) -> Length {
    pattern_length(part, contraction) - play
}

/// Growth of a pattern across the draw, a share of the part's length. Up to [`SMALL_PATTERN`]
/// rapping most likely makes up for all of the contraction; a careful draw leaves all of it.
pub fn growth_sideways(part: Length, contraction: &Band<f64>) -> Band<f64> {
    match part <= SMALL_PATTERN {
        true => Band::new(0.0, 0.0, contraction.high()),
        false => *contraction,
    }
}

/// Contraction of a metal at a size, where the table has one. Law: [`BY_SIZE`].
pub fn by_size(metal: CastMetal, size: Length, build: Build) -> Option<Sourced<Band<f64>>> {
    let of_metal = |row: &&Row| row.metal == metal && row.build.is_none_or(|own| own == build);
    let row = TABLE
        .row
        .iter()
        .filter(of_metal)
        .find(|row| row.to.as_ref().is_none_or(|to| size <= to.value))?;
    let high = row.or.as_ref().unwrap_or(&row.contraction);
    Some(Sourced {
        value: Band::new(row.contraction.ratio, row.contraction.ratio, high.ratio),
        source: TABLE.source.clone(),
    })
}

/// Contraction from castings measured against their patterns. Law: [`FROM_CASTINGS`].
pub fn from_castings(measured: &[Measured]) -> Result<Band<f64>, MeasuredError> {
    if measured.len() < FEWEST_CASTINGS {
        return Err(MeasuredError::TooFew {
            given: measured.len(),
        });
    }
    let mut each = Vec::new();
    for (place, one) in measured.iter().enumerate() {
        each.push(contraction_of(place + 1, one)?);
    }
    let count = each.len() as f64;
    let mean = each.iter().sum::<f64>() / count;
    let squares: f64 = each.iter().map(|one| (one - mean).powi(2)).sum();
    let deviation = (squares / (count - 1.0)).sqrt();
    let margin = student_t(each.len() - 1) * deviation / count.sqrt();
    let least = each.iter().copied().fold(f64::INFINITY, f64::min);
    let most = each.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    Ok(Band::new(
        (mean - margin).max(least),
        mean,
        (mean + margin).min(most),
    ))
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/contraction.toml");

static TABLE: LazyLock<Table> = LazyLock::new(|| toml::from_str(BUILT_IN).unwrap_or_default());

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    source: String,
    row: Vec<Row>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    metal: CastMetal,
    build: Option<Build>,
    to: Option<Typed<Length>>,
    contraction: Contraction,
    or: Option<Contraction>,
}

fn contraction_of(number: usize, one: &Measured) -> Result<f64, MeasuredError> {
    let contraction = one.pattern / one.casting - 1.0;
    let possible = one.casting > Length::ZERO && (-0.01..=0.05).contains(&contraction);
    match possible {
        true => Ok(contraction),
        false => Err(MeasuredError::NotTheSameLength {
            number,
            pattern_mm: one.pattern.as_mm(),
            casting_mm: one.casting.as_mm(),
        }),
    }
}

/// Student's t that holds four times in five, by the degrees of freedom: `student-1908`.
fn student_t(freedom: usize) -> f64 {
    const TWO_SIDED_80: [f64; 10] = [
        3.078, 1.886, 1.638, 1.533, 1.476, 1.440, 1.415, 1.397, 1.383, 1.372,
    ];
    // Beyond ten the value of ten is kept: at most a fifteenth too wide.
    TWO_SIDED_80[freedom.clamp(1, TWO_SIDED_80.len()) - 1]
}
