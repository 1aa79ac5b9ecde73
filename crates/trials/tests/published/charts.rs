//! Control charts and gauge studies.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use trials::chart::{
    ChartError, DEVIATION_OF_RANGE, RANGE_OVER_DEVIATION, Signal, counts, individuals,
    means_and_ranges, shares, signals, weighted,
};
use trials::gauge::{GaugeError, repeatability, study};

use crate::printed::{assert_printed, numbers, rows};

/// NIST/SEMATECH e-Handbook 6.3.2.2 (from memory).
#[test]
fn single_readings() {
    let readings = numbers("49.6 47.6 49.9 51.3 47.8 51.2 52.6 52.4 53.6 52.1");
    let found = individuals(&readings).unwrap();
    let limits = found.readings;
    let figures = [limits.centre, found.steps.centre, limits.high, limits.low];
    assert_printed("readings", &figures, "50.81 1.8778 55.8041 45.8159");
    // The usual factors for steps and readings, 3.267 and 2.66, of any table.
    assert_printed("steps", &[found.steps.high / found.steps.centre], "3.27");
    assert_printed(
        "readings",
        &[(limits.high - 50.81) / found.steps.centre],
        "2.66",
    );
}

/// NIST/SEMATECH e-Handbook 6.3.2.4, whose weighted means are printed to two digits, not all
/// of them rounded to the nearest.
#[test]
fn weighted_means() {
    let readings = numbers(
        "52.0 47.0 53.0 49.3 50.1 47.0 51.0 50.1 51.2 50.5 49.6 47.6 49.9 51.3 47.8 51.2 52.6 52.4
         53.6 52.1",
    );
    let printed = numbers(
        "50.60 49.52 50.56 50.18 50.16 49.21 49.75 49.85 50.26 50.33 50.11 49.36 49.52 50.05 49.38
         49.92 50.73 51.23 51.94 51.99",
    );
    let found = weighted(&readings, 50.0, 2.0539, 0.3, 3.0).unwrap();
    for (found, printed) in found.iter().zip(printed) {
        assert!(
            (found.value - printed).abs() <= 0.011,
            "{found:?} for {printed}"
        );
    }
    let last = found[19].limits;
    assert!((last.high - 52.5884).abs() <= 1e-4 && (last.low - 47.4115).abs() <= 1e-4);
    // The first mean is the target and 0.3 of one reading: limits 3·0.3 deviations away.
    assert!((found[0].limits.high - 50.0 - 0.9 * 2.0539).abs() < 1e-9);
}

/// NIST/SEMATECH e-Handbook 6.3.3.1; data in dataplot, MONITOR-6_3_3_1.DAT.
#[test]
fn faults_counted() {
    let found = counts(&numbers(
        "16 14 28 16 12 20 10 12 10 17 19 17 14 16 15 13 14 16 11 20 11 19 16 31 13",
    ))
    .unwrap();
    assert_printed(
        "counts",
        &[found.centre, found.high, found.low],
        "16.00 28.00 4.00",
    );
}

/// NIST/SEMATECH e-Handbook 6.3.3.2; data in dataplot, MONITOR-6_3_3_2.DAT.
#[test]
fn shares_of_fifty() {
    let found = shares(
        &numbers(
            "0.24 0.3 0.16 0.2 0.08 0.14 0.32 0.18 0.28 0.2 0.1 0.12 0.34 0.24 0.44 0.16 0.2 0.1
             0.26 0.22 0.4 0.36 0.48 0.3 0.18 0.24 0.14 0.26 0.18 0.12",
        ),
        50,
    )
    .unwrap();
    assert_printed(
        "shares",
        &[found.centre, found.high, found.low],
        "0.2313 0.4102 0.0524",
    );
}

/// Sharma, A Textbook of Production Engineering, example 21.1: samples of five.
#[test]
fn means_and_ranges_of_five() {
    let means = numbers("11.274 11.246 11.204 11.294 11.252 11.238 11.23 11.276 11.208 11.266");
    let ranges = numbers("0.15 0.2 0.33 0.46 0.1 0.15 0.2 0.23 0.5 0.3");
    let (of_means, of_ranges) = means_and_ranges(&means, &ranges, 5).unwrap();
    let figures = [of_means.high, of_means.low, of_ranges.high];
    for (found, printed) in figures.into_iter().zip([11.4, 11.1, 0.554]) {
        assert!((found - printed).abs() <= 0.005, "{found} for {printed}");
    }
    assert_eq!(of_ranges.low, 0.0);
}

/// Mean and deviation of the range of so many normal readings, by the integrals that define them:
/// E R = ∫ 1 − Φⁿ − (1 − Φ)ⁿ, E R² = 2∬ over x < y of 1 − Φ(y)ⁿ − (1 − Φ(x))ⁿ + (Φ(y) − Φ(x))ⁿ.
#[test]
fn constants_are_their_integrals() {
    let step = 0.02;
    let normal = |at: i32| statrs_free_normal(f64::from(at) * step);
    let below: Vec<f64> = (-400..=400).map(normal).collect();
    for (row, (over, spread)) in RANGE_OVER_DEVIATION
        .iter()
        .zip(DEVIATION_OF_RANGE)
        .enumerate()
    {
        let count = i32::try_from(row).unwrap() + 2;
        let one = |p: &f64| 1.0 - p.powi(count) - (1.0 - p).powi(count);
        let mean: f64 = below.iter().map(one).sum::<f64>() * step;
        let mut square = 0.0;
        for (at, low) in below.iter().enumerate() {
            for high in &below[at..] {
                let both =
                    1.0 - high.powi(count) - (1.0 - low).powi(count) + (high - low).powi(count);
                square += 2.0 * both * step * step;
            }
        }
        let deviation = (square - mean * step - mean * mean).sqrt();
        assert!((mean - over).abs() <= 6e-4, "{count}: {mean} for {over}");
        assert!(
            (deviation - spread).abs() <= 1.1e-3,
            "{count}: {deviation} for {spread}"
        );
    }
}

/// The normal distribution by its series, apart from the library under test.
fn statrs_free_normal(z: f64) -> f64 {
    let (mut term, mut sum, mut odd) = (z, z, 1.0);
    while term.abs() > 1e-17 * sum.abs() && odd < 400.0 {
        odd += 2.0;
        term *= z * z / odd;
        sum += term;
    }
    match z.abs() < 7.0 {
        true => 0.5 + sum * (-z * z / 2.0).exp() / std::f64::consts::TAU.sqrt(),
        false => f64::from(u8::from(z > 0.0)),
    }
}

#[test]
fn changes_are_seen() {
    let seen = |readings: &str| signals(&numbers(readings), 0.0, 1.0);
    assert_eq!(seen("0.5 -0.4 3.1 0.2"), [(2, Signal::Beyond)]);
    assert_eq!(seen("2.1 0.3 -2.2 0.1"), []);
    assert_eq!(seen("2.1 -0.3 2.2 0.1"), [(2, Signal::TwoOfThree)]);
    assert_eq!(seen("1.1 1.2 -0.1 1.3 1.1"), [(4, Signal::FourOfFive)]);
    assert_eq!(
        seen("-.1 -.2 -.1 -.3 -.1 -.2 -.1 -.3"),
        [(7, Signal::Eight)]
    );
    assert_eq!(seen("-.5 -.3 -.1 .1 .3 .5"), [(5, Signal::Six)]);
    assert_eq!(seen("-.5 -.3 -.1 .1 .1 .5"), []);
}

/// Champ and Woodall (1987): readings that only vary go 91.75 on average until one of the first
/// four rules calls. Four thousand runs know that to within two per cent or so.
#[test]
fn false_signals_are_as_seldom_as_published() {
    let mut die = ChaCha8Rng::seed_from_u64(5);
    let mut normal = || {
        let (one, other): (f64, f64) = (die.random(), die.random());
        (-2.0 * (1.0 - one).ln()).sqrt() * (std::f64::consts::TAU * other).cos()
    };
    let runs = 4000;
    let mut all = 0;
    for _ in 0..runs {
        let mut readings = Vec::new();
        loop {
            readings.push(normal());
            let latest = &readings[readings.len().saturating_sub(8)..];
            let called = signals(latest, 0.0, 1.0).into_iter();
            let mut called = called.filter(|(at, _)| at + 1 == latest.len());
            if called.any(|(_, rule)| rule != Signal::Six) {
                break;
            }
        }
        all += readings.len();
    }
    let mean = all as f64 / f64::from(runs);
    assert!((mean / 91.75 - 1.0).abs() < 0.05, "{mean}");
}

#[test]
fn charts_that_cannot_be_are_told() {
    assert_eq!(
        individuals(&[1.0, 2.0]).unwrap_err(),
        ChartError::TooFew { has: 2 }
    );
    assert_eq!(individuals(&[1.0; 9]).unwrap_err(), ChartError::AllAlike);
    let odd = [1.0, f64::NAN, 2.0, 3.0, 1.0];
    assert_eq!(individuals(&odd).unwrap_err(), ChartError::NotANumber(2));
    assert_eq!(
        weighted(&odd, 0.0, 1.0, 0.0, 3.0).unwrap_err(),
        ChartError::Weight(0.0)
    );
    assert_eq!(
        counts(&[1.0, 2.0, -1.0, 3.0, 1.0]).unwrap_err(),
        ChartError::Count(3)
    );
    assert_eq!(
        shares(&[0.1, 0.2, 1.1, 0.3, 0.1], 5).unwrap_err(),
        ChartError::Count(3)
    );
    let (means, ranges) = ([1.0; 5], [0.1; 5]);
    let refused = means_and_ranges(&means, &ranges, 11).unwrap_err();
    assert_eq!(refused, ChartError::Sample(11));
}

/// A study sheet of ten parts, three people, three trials: intermediate answers as printed there,
/// the deviations carried on by the method (1.41 batches/test is 97.6).
#[test]
fn three_people_test_ten_parts() {
    let person = |text: &str| rows(text);
    let readings = [
        person(
            "9.75 10.15 9.99 10.13 10.18 9.7 10.0 10.03 9.86 9.95
             9.75 10.15 9.99 10.13 10.18 9.71 10.0 10.03 9.86 9.95
             9.75 10.14 9.99 10.13 10.17 9.7 10.0 10.02 9.85 9.96",
        ),
        person(
            "9.75 10.15 9.98 10.13 10.18 9.7 10.0 10.03 9.86 9.95
             9.75 10.15 9.99 10.13 10.18 9.7 10.0 10.03 9.86 9.95
             9.76 10.15 9.99 10.13 10.17 9.7 10.0 10.03 9.86 9.95",
        ),
        person(
            "9.75 10.15 9.99 10.13 10.18 9.7 10.0 10.03 9.86 9.95
             9.75 10.15 9.99 10.13 10.18 9.7 9.99 10.03 9.86 9.95
             9.75 10.14 9.99 10.13 10.18 9.7 10.0 10.03 9.86 9.95",
        ),
    ];
    let found = study(&readings).unwrap();
    assert_printed("mean range", &[found.mean_range], "0.00367");
    assert_printed("repeats", &[found.repeats], "0.002166");
    assert_eq!(found.people, 0.0);
    assert!(
        (found.batches / 0.149959 - 1.0).abs() < 5e-4,
        "{}",
        found.batches
    );
    assert_printed("share", &[100.0 * found.share], "1.44");
    assert!((found.kinds - 97.6).abs() < 0.1, "{}", found.kinds);
    let mut uneven = readings.to_vec();
    uneven[1].pop();
    assert_eq!(study(&uneven).unwrap_err(), GaugeError::Uneven);
    assert_eq!(study(&[]).unwrap_err(), GaugeError::Uneven);
}

/// Two batches tested three times each, by hand: variance within 1, mean square of the means 12,
/// hence between batches (12 − 1)/3.
#[test]
fn a_test_beside_its_batches() {
    let apart = 8.0_f64.sqrt();
    let batch = |middle: f64| vec![middle - 1.0, middle, middle + 1.0];
    let found = repeatability(&[batch(10.0), batch(10.0 + apart)]).unwrap();
    assert!((found.test.deviation - 1.0).abs() < 1e-12);
    assert!((found.batches.powi(2) - 11.0 / 3.0).abs() < 1e-9);
    assert!((found.share - (3.0_f64 / 14.0).sqrt()).abs() < 1e-9);
    assert!((found.smallest_difference - 2.772).abs() < 1e-3);
    assert_eq!(
        repeatability(&[batch(1.0)]).unwrap_err(),
        GaugeError::FewBatches
    );
    let once = [vec![1.0], vec![2.0]];
    assert_eq!(
        repeatability(&once).unwrap_err(),
        GaugeError::NothingRepeated
    );
    assert_eq!(
        repeatability(&[batch(1.0), vec![]]).unwrap_err(),
        GaugeError::Broken(2)
    );
}
