//! Grain fineness from a stack of sieves, and clay by washing.

use std::sync::LazyLock;

use measure::band::Band;
use measure::length::Length;
use measure::matter::Mass;
use measure::source::Law;
use measure::text::Typed;
use serde::Deserialize;
use thiserror::Error;

/// Grain fineness number: the mean of the sieves' factors over the sand kept.
///
/// The sum is divided by what was kept, clay washed out, not by the sample. Sieves left out of
/// the stack make their grains uncertain: each fraction is then given the coarsest and the
/// finest factor it may have, and the likely one lies in the middle.
pub const GRAIN_FINENESS: Law = Law {
    name: "sand::sieve::grain_fineness",
    formula: "GFN = Σ m f / Σ m",
    range: "dried, washed sand shaken to rest; an index of surface, not a mean grain size",
    sources: &["afs-mold-core-handbook", "heine-loper-rosenthal"],
};

/// Clay by washing and siphoning: the loss as a share of the dried sample.
pub const CLAY_BY_WASH: Law = Law {
    name: "sand::sieve::clay_by_wash",
    formula: "clay = (m_dry − m_washed) / m_dry",
    range: "what falls slower than 25 mm a minute, dead clay and silt with it",
    sources: &["clay-wash-page", "heine-loper-rosenthal"],
};

/// A test sieve.
#[derive(Clone, Debug, PartialEq)]
pub struct Sieve {
    /// Its number in the American series.
    pub number: u16,
    /// Opening of the mesh.
    pub opening: Length,
    /// Factor of the grains that passed the next coarser sieve and lie on this one.
    pub factor: f64,
}

/// The table of sieves.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SieveTable {
    /// The sieves, coarse to fine.
    pub sieves: Vec<Sieve>,
    /// Factor of what passes them all.
    pub pan_factor: f64,
}

/// What was kept on each sieve of a stack.
#[derive(Clone, Debug, PartialEq)]
pub struct Sieving {
    /// Numbers of the sieves and the sand on them, in any order.
    pub kept: Vec<(u16, Mass)>,
    /// Sand in the pan.
    pub pan: Mass,
}

/// Why a sieving gives no grain fineness.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum SievingError {
    /// A sieve that is not in the table.
    #[error("there is no sieve {number} in the table; sieves taken: {taken}")]
    UnknownSieve {
        /// The number given.
        number: u16,
        /// The numbers in the table.
        taken: String,
    },
    /// The same sieve twice.
    #[error("sieve {number} stands there twice: add the two weights")]
    Twice {
        /// The number given.
        number: u16,
    },
    /// No sand on the sieves and in the pan.
    #[error("nothing was weighed on the sieves or in the pan: give the grams on each")]
    NothingKept,
}

/// The table of sieves, coarse to fine.
pub fn table() -> &'static SieveTable {
    &TABLE
}

/// Reads a table of sieves.
pub fn read(text: &str) -> Result<SieveTable, toml::de::Error> {
    let typed: TableText = toml::from_str(text)?;
    let sieve = |sieve: SieveText| Sieve {
        number: sieve.number,
        opening: sieve.opening.value,
        factor: sieve.factor,
    };
    Ok(SieveTable {
        sieves: typed.sieve.into_iter().map(sieve).collect(),
        pan_factor: typed.pan_factor,
    })
}

/// Grain fineness number of a sieving, with the band that missing sieves leave open.
/// Law: [`GRAIN_FINENESS`].
pub fn grain_fineness(sieving: &Sieving) -> Result<Band<f64>, SievingError> {
    let mut products = [0.0; 3];
    let mut total = Mass::ZERO;
    for (factors, mass) in fractions(sieving)? {
        total += mass;
        let grams = mass.as_g();
        products[0] += grams * factors.low();
        products[1] += grams * factors.likely();
        products[2] += grams * factors.high();
    }
    if total <= Mass::ZERO {
        return Err(SievingError::NothingKept);
    }
    let [low, likely, high] = products.map(|product| product / total.as_g());
    Ok(Band::new(low, likely, high))
}

/// Clay that washed out, as a share of the dried sample. Law: [`CLAY_BY_WASH`].
pub fn clay_by_wash(dried: Mass, washed_and_dried: Mass) -> f64 {
    (dried - washed_and_dried) / dried
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/sieves.toml");

static TABLE: LazyLock<SieveTable> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    pan_factor: f64,
    sieve: Vec<SieveText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SieveText {
    number: u16,
    opening: Typed<Length>,
    factor: f64,
}

/// Each fraction of the stack, coarse to fine and the pan last, with the factors it may have.
fn fractions(sieving: &Sieving) -> Result<Vec<(Band<f64>, Mass)>, SievingError> {
    let mut fractions = Vec::new();
    let mut passed: Option<usize> = None;
    for (place, mass) in in_order(sieving)? {
        fractions.push((factors(passed, place), mass));
        passed = Some(place);
    }
    fractions.push((factors(passed, table().sieves.len()), sieving.pan));
    Ok(fractions)
}

/// The sieves of the stack by their places in the table, coarse to fine.
fn in_order(sieving: &Sieving) -> Result<Vec<(usize, Mass)>, SievingError> {
    let mut stack = Vec::new();
    for (number, mass) in &sieving.kept {
        let number = *number;
        let place = table().sieves.iter().position(|s| s.number == number);
        let place = place.ok_or_else(|| unknown(number))?;
        if stack.iter().any(|(taken, _)| *taken == place) {
            return Err(SievingError::Twice { number });
        }
        stack.push((place, *mass));
    }
    stack.sort_by_key(|(place, _)| *place);
    Ok(stack)
}

/// Factors of the grains between two sieves of the table, the coarser of them perhaps none and
/// the finer perhaps the pan. Grains above the first sieve of a stack were most likely riddled
/// to just above it: its own factor is the likely one.
fn factors(passed: Option<usize>, kept_on: usize) -> Band<f64> {
    let coarsest = factor(passed.map_or(0, |place| place + 1));
    let finest = factor(kept_on);
    let likely = match passed {
        Some(_) => (coarsest + finest) / 2.0,
        None => finest,
    };
    Band::new(coarsest, likely, finest)
}

fn factor(place: usize) -> f64 {
    let table = table();
    table
        .sieves
        .get(place)
        .map_or(table.pan_factor, |sieve| sieve.factor)
}

fn unknown(number: u16) -> SievingError {
    let numbers = table().sieves.iter().map(|sieve| sieve.number.to_string());
    SievingError::UnknownSieve {
        number,
        taken: numbers.collect::<Vec<_>>().join(", "),
    }
}
