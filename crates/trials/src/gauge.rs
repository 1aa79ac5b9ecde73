//! How well a test repeats: the same batch tested again, by one hand or by several.
//!
//! A test that breaks its specimen cannot repeat it; then batches are split, and what is told is
//! the test and the unevenness within a batch together.

use thiserror::Error;

use crate::chart::{DEVIATION_OF_RANGE, RANGE_OVER_DEVIATION};
use crate::repeats::{Noise, about_mean};

/// How well a test repeats beside how much the batches differ.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Repeatability {
    /// Standard deviation of one test of the same batch.
    pub test: Noise,
    /// Standard deviation between batches, the test taken out; nought if it drowns in the test.
    pub batches: f64,
    /// The test as a share of everything that varies: below 0.1 good, to 0.3 bearable (the usual
    /// limits of gauge studies), above that mean of several tests.
    pub share: f64,
    /// The difference that two single tests exceed once in twenty although the batch is the same.
    pub smallest_difference: f64,
}

/// A study of several people who each test the same batches several times, by averages and ranges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Study {
    /// Mean range of the repeats.
    pub mean_range: f64,
    /// Deviation of the repeats of one person.
    pub repeats: f64,
    /// Deviation between people, nought if it drowns in the repeats.
    pub people: f64,
    /// Deviation of the test as a whole.
    pub test: f64,
    /// Deviation between batches.
    pub batches: f64,
    /// The test as a share of all.
    pub share: f64,
    /// How many kinds of batch the test tells apart: 1.41 batches/test.
    pub kinds: f64,
}

/// Why a test is not judged.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum GaugeError {
    /// Fewer than two batches.
    #[error("test two batches at least, so that the test can be seen beside what it measures")]
    FewBatches,
    /// No batch was tested twice.
    #[error("no batch was tested twice: test one again without changing anything")]
    NothingRepeated,
    /// A batch without a reading.
    #[error("batch {0} has no reading, or one that is not a number: test it again or leave it out")]
    Broken(
        /// The batch, counted from one.
        usize,
    ),
    /// People who did not all do the same.
    #[error("every person has to test every batch equally often, 2 to 10 times, 2 to 10 in all")]
    Uneven,
}

/// Judges a test by batches that were each tested more than once, one list of readings a batch.
///
/// # Errors
/// When nothing was repeated.
pub fn repeatability(batches: &[Vec<f64>]) -> Result<Repeatability, GaugeError> {
    if batches.len() < 2 {
        return Err(GaugeError::FewBatches);
    }
    let broken = |one: &Vec<f64>| one.is_empty() || one.iter().any(|value| !value.is_finite());
    if let Some(at) = batches.iter().position(broken) {
        return Err(GaugeError::Broken(at + 1));
    }
    let within = batches.iter().map(|one| about_mean(one));
    let (squares, degrees) = within.fold((0.0, 0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
    if degrees == 0 {
        return Err(GaugeError::NothingRepeated);
    }
    let test = Noise::of(squares, degrees);
    let between = between(batches, test.deviation);
    let all = test.deviation.hypot(between);
    Ok(Repeatability {
        test,
        batches: between,
        share: if all > 0.0 { test.deviation / all } else { 0.0 },
        smallest_difference: 1.96 * 2.0_f64.sqrt() * test.deviation,
    })
}

/// Judges a test by several people: readings by person, then by repeat, then by batch.
///
/// # Errors
/// When the people did not all test the same batches equally often.
pub fn study(readings: &[Vec<Vec<f64>>]) -> Result<Study, GaugeError> {
    let people = readings.len();
    let repeats = readings.first().map_or(0, Vec::len);
    let batches = readings
        .first()
        .and_then(|one| one.first())
        .map_or(0, Vec::len);
    let whole = |one: &Vec<Vec<f64>>| {
        one.len() == repeats && one.iter().all(|batch| batch.len() == batches)
    };
    let constant = |of: usize| {
        of.checked_sub(2)
            .and_then(|at| RANGE_OVER_DEVIATION.get(at))
    };
    let (Some(over), true) = (constant(repeats), readings.iter().all(whole)) else {
        return Err(GaugeError::Uneven);
    };
    let (Some(of_people), Some(of_batches)) = (over_one(people), over_one(batches)) else {
        return Err(GaugeError::Uneven);
    };
    if let Some(at) = readings
        .iter()
        .flatten()
        .flatten()
        .position(|one| !one.is_finite())
    {
        return Err(GaugeError::Broken(at % batches + 1));
    }
    let cells = (0..people).flat_map(|who| (0..batches).map(move |batch| (who, batch)));
    let ranges: Vec<f64> = cells
        .map(|(who, batch)| range(readings[who].iter().map(|one| one[batch])))
        .collect();
    let mean_range = ranges.iter().sum::<f64>() / ranges.len() as f64;
    let repeat = mean_range / over;
    let of_person = |who: usize| mean(readings[who].iter().flatten().copied());
    let apart = range((0..people).map(of_person)) / of_people;
    let person = (apart.powi(2) - repeat.powi(2) / (batches * repeats) as f64)
        .max(0.0)
        .sqrt();
    let of_batch = |batch: usize| mean(readings.iter().flatten().map(move |one| one[batch]));
    let between = range((0..batches).map(of_batch)) / of_batches;
    let test = repeat.hypot(person);
    let all = test.hypot(between);
    Ok(Study {
        mean_range,
        repeats: repeat,
        people: person,
        test,
        batches: between,
        share: if all > 0.0 { test / all } else { 0.0 },
        kinds: 1.41 * between / test,
    })
}

/// Root mean square range over deviation for so many readings: what a single range is divided by
/// (d₂*, the reciprocals of K₂ and K₃ of the usual study sheets).
fn over_one(of: usize) -> Option<f64> {
    let at = of.checked_sub(2)?;
    let known = RANGE_OVER_DEVIATION.get(at).zip(DEVIATION_OF_RANGE.get(at));
    known.map(|(over, spread)| over.hypot(*spread))
}

/// Deviation between batches by the analysis of variance with unlike numbers of repeats.
fn between(batches: &[Vec<f64>], test: f64) -> f64 {
    let all: usize = batches.iter().map(Vec::len).sum();
    let whole = mean(batches.iter().flatten().copied());
    let squares = batches.iter().map(|one| {
        let off = mean(one.iter().copied()) - whole;
        one.len() as f64 * off * off
    });
    let variance = squares.sum::<f64>() / (batches.len() - 1) as f64;
    let squared: usize = batches.iter().map(|one| one.len() * one.len()).sum();
    let repeats = (all as f64 - squared as f64 / all as f64) / (batches.len() - 1) as f64;
    ((variance - test * test) / repeats).max(0.0).sqrt()
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0), |(sum, count), one| (sum + one, count + 1));
    sum / f64::from(count.max(1))
}

fn range(values: impl Iterator<Item = f64> + Clone) -> f64 {
    let most = values.clone().fold(f64::NEG_INFINITY, f64::max);
    most - values.fold(f64::INFINITY, f64::min)
}
