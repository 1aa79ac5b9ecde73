//! Watching readings from batch to batch: single readings, their steps and weighted means.

use std::fmt::Write as _;

use job::words::said::Said;
use measure::band::Band;
use measure::text::rounded;
use trials::chart::{FEWEST, Individuals, Signal, Weighted, individuals, signals, weighted};

use crate::tested::readings::{Reading, ReadingsFile, Test, value_of};
use crate::told::Told;
use crate::trouble::{BenchError, Refused};

pub mod drawn;

/// How much the newest reading weighs in the weighted mean: 0.2, the usual choice for small
/// lasting changes (NIST/SEMATECH e-Handbook 6.3.2.4 names 0.2 to 0.3).
const WEIGHT: f64 = 0.2;

/// How many deviations the limits of the weighted mean are wide, as there.
const WIDTH: f64 = 3.0;

/// Fewer readings than this leave the limits a third off either way.
const ENOUGH: usize = 20;

/// A chart of one test.
#[derive(Clone, Debug, PartialEq)]
pub struct Watched {
    /// The readings, oldest first.
    pub readings: Vec<Reading>,
    /// Limits.
    pub limits: Individuals,
    /// Weighted means with their limits.
    pub means: Vec<Weighted>,
    /// Which reading speaks of a change, counted from nought, and why.
    pub signals: Vec<(usize, Signal)>,
}

/// The chart of a test, with limits from the good days where there are enough of them.
///
/// # Errors
///
/// No reading of the test, and too few for limits.
pub fn watched(test: &Test, book: &ReadingsFile) -> Result<Watched, BenchError> {
    let of_test = book.reading.iter().filter(|one| one.test == test.name);
    let readings: Vec<Reading> = of_test.cloned().collect();
    if readings.is_empty() {
        let mut known: Vec<&str> = book.reading.iter().map(|one| one.test.as_str()).collect();
        known.dedup();
        return Err(Refused::NoReadings {
            test: test.name.to_owned(),
            known: known.join(", "),
        }
        .into());
    }
    let values: Vec<f64> = readings.iter().map(|one| one.value).collect();
    let good = readings.iter().filter(|one| one.good).map(|one| one.value);
    let good: Vec<f64> = good.collect();
    let limits = individuals(if good.len() >= FEWEST { &good } else { &values })?;
    let centre = limits.readings.centre;
    Ok(Watched {
        means: weighted(&values, centre, limits.deviation, WEIGHT, WIDTH)?,
        signals: signals(&values, centre, limits.deviation),
        limits,
        readings,
    })
}

/// The chart in figures and lines.
pub fn told(test: &Test, chart: &Watched) -> Told {
    let mut told = Told::new(
        Said::new("bench-watch-head")
            .with("test", test.name)
            .with("count", chart.readings.len()),
    );
    let limits = chart.limits.readings;
    let band = Band::new(limits.low, limits.centre, limits.high);
    told.figures.push(value_of(test, "bench-limits", band));
    let steps = chart.limits.steps;
    let band = Band::new(0.0, steps.centre, steps.high);
    told.figures.push(value_of(test, "bench-step-limits", band));
    if chart.readings.len() < ENOUGH {
        told.note(Said::new("bench-few-readings").with("count", chart.readings.len()));
    }
    for (at, signal) in &chart.signals {
        let said = Said::new(signal_id(*signal)).with("day", chart.readings[*at].day.as_str());
        told.caution(said);
    }
    for (reading, mean) in chart.readings.iter().zip(&chart.means) {
        if mean.value < mean.limits.low || mean.value > mean.limits.high {
            told.caution(Said::new("bench-mean-beyond").with("day", reading.day.as_str()));
            break;
        }
    }
    for (two, at) in chart.readings.windows(2).zip(1..) {
        if (two[1].value - two[0].value).abs() > steps.high {
            let day = chart.readings[at].day.as_str();
            told.caution(Said::new("bench-step-beyond").with("day", day));
        }
    }
    if told
        .lines
        .iter()
        .all(|line| line.level == job::remark::Level::Note)
    {
        told.note(Said::new("bench-in-hand"));
    }
    told
}

/// The chart as lines for a terminal: one for each reading, its place between the limits (`|`),
/// the middle (`:`), the reading (`o`, or `#` where it speaks of a change) and its weighted mean
/// (`~`).
pub fn lines(chart: &Watched) -> String {
    const WIDE: usize = 48;
    let limits = chart.limits.readings;
    let values = chart.readings.iter().map(|one| one.value);
    let least = values.clone().fold(limits.low, f64::min);
    let most = values.fold(limits.high, f64::max);
    let at = |value: f64| {
        let along = (value - least) / (most - least);
        (along * (WIDE - 1) as f64).round() as usize
    };
    let longest = chart
        .readings
        .iter()
        .map(|one| one.day.chars().count())
        .max();
    let width = longest.unwrap_or(0);
    let mut text = String::new();
    for (place, (reading, mean)) in chart.readings.iter().zip(&chart.means).enumerate() {
        let mut line = vec![' '; WIDE];
        line[at(limits.low)] = '|';
        line[at(limits.high)] = '|';
        line[at(limits.centre)] = ':';
        line[at(mean.value.clamp(least, most))] = '~';
        let speaks = chart.signals.iter().any(|(signal, _)| *signal == place);
        line[at(reading.value)] = if speaks { '#' } else { 'o' };
        let line: String = line.into_iter().collect();
        // Writing into a string does not fail.
        let _ = writeln!(
            text,
            "{:width$}  {line}  {}",
            reading.day,
            rounded(reading.value, 4)
        );
    }
    text
}

fn signal_id(signal: Signal) -> &'static str {
    match signal {
        Signal::Beyond => "bench-signal-beyond",
        Signal::TwoOfThree => "bench-signal-two-of-three",
        Signal::FourOfFive => "bench-signal-four-of-five",
        Signal::Eight => "bench-signal-eight",
        Signal::Six => "bench-signal-six",
    }
}
