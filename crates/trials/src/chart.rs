//! Watching a reading from batch to batch: charts whose limits tell a change from noise.
//!
//! Limits come from a stretch of batches taken when all was well. Readings of one stock hang
//! together from batch to batch, and limits from fewer than about twenty batches are too narrow.

use thiserror::Error;

/// Limits of a chart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// The middle.
    pub centre: f64,
    /// Below this a point speaks of a change.
    pub low: f64,
    /// Above this a point speaks of a change.
    pub high: f64,
}

/// Limits of single readings and of their steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Individuals {
    /// For the readings.
    pub readings: Limits,
    /// For the steps from one reading to the next.
    pub steps: Limits,
    /// Standard deviation by the mean step.
    pub deviation: f64,
}

/// A point on a chart of weighted means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighted {
    /// The weighted mean up to this reading.
    pub value: f64,
    /// Its limits, which open over the first readings.
    pub limits: Limits,
}

/// Why a reading speaks of a change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Signal {
    /// One reading beyond three deviations.
    Beyond,
    /// Two of three beyond two deviations on one side.
    TwoOfThree,
    /// Four of five beyond one deviation on one side.
    FourOfFive,
    /// Eight in a row on one side of the middle.
    Eight,
    /// Six in a row that rise, or that fall.
    Six,
}

/// Why there is no chart.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
pub enum ChartError {
    /// Too few readings.
    #[error("{has} readings are too few for limits: enter {} more at least", FEWEST - has)]
    TooFew {
        /// How many there are.
        has: usize,
    },
    /// A reading that is none.
    #[error("reading {0} is not a number: read it again, or leave it out")]
    NotANumber(
        /// The reading, counted from one.
        usize,
    ),
    /// All readings alike.
    #[error("all readings are the same, so the limits have no width: read one digit finer")]
    AllAlike,
    /// A weight that is none.
    #[error("a weight of {0} is none: use more than 0 and at most 1, usually 0.2 to 0.3")]
    Weight(
        /// The weight.
        f64,
    ),
    /// Samples of a size that the tables lack.
    #[error("for samples of {0} there are no constants: take 2 to 10 readings a sample")]
    Sample(
        /// Readings in a sample.
        usize,
    ),
    /// A count or share that is none.
    #[error("count {0} is below 0 or above its sample: count again")]
    Count(
        /// The count, counted from one.
        usize,
    ),
}

/// Fewest readings that limits are worked out from. With five the limits are still off by a third
/// either way; with fewer they say nothing.
pub const FEWEST: usize = 5;

/// Mean range over standard deviation for samples of 2 to 10 (d₂, standard tables; each is checked
/// against its integral in the tests).
pub const RANGE_OVER_DEVIATION: [f64; 9] = [
    1.128, 1.693, 2.059, 2.326, 2.534, 2.704, 2.847, 2.970, 3.078,
];

/// Deviation of the range over standard deviation for samples of 2 to 10 (d₃, standard tables).
pub const DEVIATION_OF_RANGE: [f64; 9] = [
    0.853, 0.888, 0.880, 0.864, 0.848, 0.833, 0.820, 0.808, 0.797,
];

/// Limits of single readings: mean ± 3 mean steps/1.128, steps up to 3.267 times their mean
/// (NIST/SEMATECH e-Handbook 6.3.2.2).
///
/// # Errors
/// When the readings are too few or all alike.
pub fn individuals(readings: &[f64]) -> Result<Individuals, ChartError> {
    sound(readings)?;
    let centre = mean(readings);
    let steps: Vec<f64> = readings
        .windows(2)
        .map(|two| (two[1] - two[0]).abs())
        .collect();
    let step = mean(&steps);
    if step <= 0.0 {
        return Err(ChartError::AllAlike);
    }
    let (over, spread) = (RANGE_OVER_DEVIATION[0], DEVIATION_OF_RANGE[0]);
    let deviation = step / over;
    Ok(Individuals {
        readings: Limits::around(centre, 3.0 * deviation),
        steps: Limits {
            centre: step,
            low: 0.0,
            high: step * (1.0 + 3.0 * spread / over),
        },
        deviation,
    })
}

/// Weighted means z = λx + (1 − λ)z from a target, with limits kσ√(λ/(2 − λ)·(1 − (1 − λ)²ᵗ)) away:
/// small lasting changes show sooner than on the readings (NIST/SEMATECH e-Handbook 6.3.2.4, which
/// gives the limits for late readings).
///
/// # Errors
/// When the weight is none or a reading is no number.
pub fn weighted(
    readings: &[f64],
    target: f64,
    deviation: f64,
    weight: f64,
    width: f64,
) -> Result<Vec<Weighted>, ChartError> {
    if !(weight > 0.0 && weight <= 1.0) {
        return Err(ChartError::Weight(weight));
    }
    numbers(readings)?;
    let mut value = target;
    let mut fading = 1.0;
    let points = readings.iter().map(|reading| {
        value = weight * reading + (1.0 - weight) * value;
        fading *= (1.0 - weight) * (1.0 - weight);
        let variance = weight / (2.0 - weight) * (1.0 - fading);
        Weighted {
            value,
            limits: Limits::around(target, width * deviation * variance.sqrt()),
        }
    });
    Ok(points.collect())
}

/// Limits of counts per unit (c chart): mean ± 3√mean, not below nought.
///
/// # Errors
/// When the counts are too few or below nought.
pub fn counts(counts: &[f64]) -> Result<Limits, ChartError> {
    sound(counts)?;
    if let Some(at) = counts.iter().position(|one| *one < 0.0) {
        return Err(ChartError::Count(at + 1));
    }
    let centre = mean(counts);
    Ok(Limits::around(centre, 3.0 * centre.sqrt()).from(0.0, f64::INFINITY))
}

/// Limits of shares of samples of one size (p chart): mean ± 3√(p(1 − p)/n), within 0 and 1.
///
/// # Errors
/// When the shares are too few or none.
pub fn shares(shares: &[f64], sample: usize) -> Result<Limits, ChartError> {
    sound(shares)?;
    if let Some(at) = shares.iter().position(|one| !(0.0..=1.0).contains(one)) {
        return Err(ChartError::Count(at + 1));
    }
    Ok(share_limits(mean(shares), sample))
}

/// Limits of the share of one sample, by its own size, round a share that is known (p chart for
/// samples of several sizes): p ± 3√(p(1 − p)/n), within 0 and 1.
pub fn share_limits(centre: f64, sample: usize) -> Limits {
    let deviation = (centre * (1.0 - centre) / sample.max(1) as f64).sqrt();
    Limits::around(centre, 3.0 * deviation).from(0.0, 1.0)
}

/// Limits of the means and of the ranges of samples of 2 to 10 readings: those of means first.
///
/// # Errors
/// When the samples are too few, or of another size than the tables hold.
pub fn means_and_ranges(
    means: &[f64],
    ranges: &[f64],
    sample: usize,
) -> Result<(Limits, Limits), ChartError> {
    sound(means)?;
    sound(ranges)?;
    let row = sample.wrapping_sub(2);
    let constants = RANGE_OVER_DEVIATION
        .get(row)
        .zip(DEVIATION_OF_RANGE.get(row));
    let (over, spread) = constants.ok_or(ChartError::Sample(sample))?;
    let range = mean(ranges);
    let half = 3.0 * range / over / (sample as f64).sqrt();
    let of_ranges = Limits::around(range, 3.0 * range * spread / over);
    Ok((
        Limits::around(mean(means), half),
        of_ranges.from(0.0, f64::INFINITY),
    ))
}

/// Every signal in a run of readings: the place of the reading that gives it, counted from nought,
/// and which. The first four rules are those of the Western Electric handbook (from memory);
/// together they give a false signal once in 92 readings on average (Champ and Woodall,
/// Technometrics 29 (1987) 393, from memory). The fifth, six in a row that rise or fall, sees a
/// slow drift.
pub fn signals(readings: &[f64], centre: f64, deviation: f64) -> Vec<(usize, Signal)> {
    let away: Vec<f64> = readings
        .iter()
        .map(|one| (one - centre) / deviation)
        .collect();
    let mut found = Vec::new();
    for at in 0..away.len() {
        let last = |count: usize| (at + 1 >= count).then(|| &away[at + 1 - count..=at]);
        let on_a_side = |count: usize, of: usize, beyond: f64| {
            let enough = |side: f64| {
                let counted =
                    |last: &[f64]| last.iter().filter(|one| **one * side > beyond).count();
                let here = away[at] * side > beyond;
                here && last(of)
                    .or(Some(&away[..=at]))
                    .is_some_and(|last| counted(last) >= count)
            };
            enough(1.0) || enough(-1.0)
        };
        let slope = |way: f64| {
            let rises = |two: &[f64]| (two[1] - two[0]) * way > 0.0;
            last(6).is_some_and(|last| last.windows(2).all(rises))
        };
        let rules = [
            (Signal::Beyond, away[at].abs() > 3.0),
            (Signal::TwoOfThree, on_a_side(2, 3, 2.0)),
            (Signal::FourOfFive, on_a_side(4, 5, 1.0)),
            (Signal::Eight, on_a_side(8, 8, 0.0)),
            (Signal::Six, slope(1.0) || slope(-1.0)),
        ];
        found.extend(
            rules
                .into_iter()
                .filter(|(_, given)| *given)
                .map(|(rule, _)| (at, rule)),
        );
    }
    found
}

impl Limits {
    fn around(centre: f64, half: f64) -> Limits {
        Limits {
            centre,
            low: centre - half,
            high: centre + half,
        }
    }

    fn from(self, least: f64, most: f64) -> Limits {
        Limits {
            low: self.low.max(least),
            high: self.high.min(most),
            ..self
        }
    }
}

fn sound(readings: &[f64]) -> Result<(), ChartError> {
    numbers(readings)?;
    match readings.len() {
        has if has < FEWEST => Err(ChartError::TooFew { has }),
        _ => Ok(()),
    }
}

fn numbers(readings: &[f64]) -> Result<(), ChartError> {
    let odd = readings.iter().position(|one| !one.is_finite());
    odd.map_or(Ok(()), |at| Err(ChartError::NotANumber(at + 1)))
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}
