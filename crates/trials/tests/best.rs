//! The best mix of an experiment: named when it is shown, and mapped with its unknown part.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use trials::best::{best, chance_of_flat_within_days};
use trials::fit::{Fit, fit};
use trials::lattice::{grid, lattice};
use trials::map::{square, triangle};
use trials::model::{Bend, Blending, Model, mixture, on_day, surface, with_days};
use trials::region::{Component, Region, RegionError};
use trials::repeats::noise_within_days;
use trials::settings::central_composite;
use trials::verdict::Good;

fn quadratic() -> Model {
    mixture(&["a", "b", "c"], Blending::Quadratic)
}

/// The lattice of three components with a middle, each point twice: fourteen batches.
fn runs() -> Vec<Vec<f64>> {
    let middle = vec![1.0 / 3.0; 3];
    let once: Vec<_> = lattice(3, 2).into_iter().chain([middle]).collect();
    once.iter().chain(&once).cloned().collect()
}

fn read(truth: impl Fn(&[f64]) -> f64, seed: u64) -> Fit {
    let mut die = ChaCha8Rng::seed_from_u64(seed);
    let mut noise = || {
        let (one, other): (f64, f64) = (die.random(), die.random());
        (-2.0 * (1.0 - one).ln()).sqrt() * (std::f64::consts::TAU * other).cos()
    };
    let points = runs();
    let measured: Vec<f64> = points.iter().map(|mix| truth(mix) + noise()).collect();
    fit(&quadratic(), &points, &measured).unwrap()
}

/// The promise for mixes along a model: at most 70 of 1,000 sets of pure noise have a winner.
#[test]
fn pure_noise_has_hardly_a_best_mix() {
    let everywhere = lattice(3, 10);
    let named = (0..1000).filter(|seed| {
        let found = best(&read(|_| 50.0, *seed), &everywhere, Good::High).unwrap();
        found.shown
    });
    let named = named.count();
    assert!((20..=70).contains(&named), "{named}");
}

/// A blend of a and b that is better by five deviations is shown, and found near its place.
#[test]
fn a_true_blend_is_shown() {
    let everywhere = lattice(3, 10);
    let truth = |mix: &[f64]| 50.0 + 20.0 * mix[0] * mix[1];
    let (mut shown, mut near) = (0, 0);
    for seed in 0..200 {
        let found = best(&read(truth, seed), &everywhere, Good::High).unwrap();
        shown += usize::from(found.shown);
        near += usize::from(truth(&everywhere[found.at]) >= 54.0);
        assert_eq!(found.unknown, 0);
    }
    assert!(shown >= 160, "{shown}");
    assert!(near >= 160, "{near}");
}

#[test]
fn what_lies_beyond_the_runs_is_no_best_mix() {
    let points = [
        [0.2, 0.5, 0.3],
        [0.3, 0.4, 0.3],
        [0.2, 0.4, 0.4],
        [0.3, 0.5, 0.2],
    ];
    let points: Vec<Vec<f64>> = points.iter().map(|point| point.to_vec()).collect();
    let rising = fit(
        &mixture(&["a", "b", "c"], Blending::Linear),
        &points,
        &[2.1, 3.0, 1.9, 3.1],
    )
    .unwrap();
    let everywhere = lattice(3, 10);
    let found = best(&rising, &everywhere, Good::High).unwrap();
    assert!(found.unknown > 50, "{found:?}");
    assert!((everywhere[found.at][0] - 0.3).abs() < 0.11, "{found:?}");
    assert!(best(&rising, &[vec![1.0, 0.0, 0.0]], Good::High).is_none());
    assert!(best(&rising, &[], Good::Low).is_none());
}

#[test]
fn a_triangle_is_mapped_within_its_region() {
    let found = read(|mix| mix[0], 1);
    let mut region = Region::whole(&["a", "b", "c"]);
    let all = triangle(&found, &region, [0, 1, 2], &[0.2, 0.3, 0.5], &[], 20);
    assert_eq!(all.len(), 231);
    let top = all.iter().find(|place| place.point[0] == 1.0).unwrap();
    assert_eq!((top.across, top.up), (0.5, 3.0_f64.sqrt() / 2.0));
    assert_eq!(top.height, found.at(&[1.0, 0.0, 0.0]).value);
    assert!(all.iter().all(|place| !place.unknown));
    region.components[0].high = 0.5;
    let half = triangle(&found, &region, [0, 1, 2], &[0.2, 0.3, 0.5], &[], 20);
    assert_eq!(half.len(), 176);
}

/// Runs in a ball teach little about the corners of its cube.
#[test]
fn the_corners_of_a_square_are_unknown() {
    let points = central_composite(2, 1.0, 3);
    let points: Vec<_> = points
        .into_iter()
        .filter(|run| run[0] * run[1] == 0.0)
        .collect();
    let measured = [1.0, 3.0, 2.0, 2.5, 3.5, 3.4, 3.6];
    let found = fit(&surface(&["x", "y"], Bend::Flat), &points, &measured).unwrap();
    let map = square(&found, [0, 1], [(-1.0, 1.0); 2], &[0.0, 0.0], 10);
    assert_eq!(map.len(), 121);
    let unknown = |x: f64, y: f64| {
        let here = |one: &&trials::map::Place| one.point == [x, y];
        map.iter().find(here).unwrap().unknown
    };
    assert!(unknown(-1.0, -1.0) && unknown(1.0, 1.0));
    assert!(!unknown(0.0, 0.0) && !unknown(1.0, 0.0));
}

#[test]
fn a_grid_too_fine_is_told() {
    let component = |_| Component {
        name: String::new(),
        low: 0.0,
        high: 1.0,
    };
    let region = Region {
        components: (0..8).map(component).collect(),
        limits: Vec::new(),
    };
    let refused = grid(&region, 20).unwrap_err();
    assert_eq!(refused, RegionError::TooFine(21_usize.pow(7)));
    assert!(grid(&region, 2).unwrap().len() > 8);
}

/// Four runs on two days, worked by hand; the tail of F with 1 and 1 degrees of freedom is
/// 1 − (2/π)·atan(√F).
#[test]
fn days_are_taken_off_before_mixes_are_judged() {
    let model = with_days(&surface(&["a"], Bend::Flat), 2);
    let runs = [
        (-1.0, 0, 8.9),
        (1.0, 0, 11.1),
        (-1.0, 1, 19.1),
        (1.0, 1, 20.9),
    ];
    let points: Vec<Vec<f64>> = runs
        .iter()
        .map(|(a, day, _)| on_day(&[*a], *day, 2))
        .collect();
    let responses: Vec<f64> = runs.iter().map(|one| one.2).collect();
    let found = fit(&model, &points, &responses).unwrap();
    let chance = chance_of_flat_within_days(&found, &[0, 0, 1, 1], 2, &responses).unwrap();
    // About their days' means the squares are 2·(1.1² + 0.9²) = 4.04; a slope of 1 takes 4 of them.
    let ratio: f64 = 4.0 / 0.04;
    let by_hand = 1.0 - ratio.sqrt().atan() * 2.0 / std::f64::consts::PI;
    assert!(
        (chance.unwrap() - by_hand).abs() < 1e-6,
        "{chance:?} for {by_hand}"
    );
}

/// Three mixes on each of two days, worked by hand.
#[test]
fn a_mix_made_again_on_another_day_is_a_repeat() {
    let runs = [
        (0.0, 0, 5.0),
        (0.0, 1, 15.3),
        (1.0, 0, 8.0),
        (1.0, 1, 18.0),
        (2.0, 0, 6.0),
        (2.0, 1, 15.7),
    ];
    let points: Vec<Vec<f64>> = runs.iter().map(|one| vec![one.0]).collect();
    let days: Vec<usize> = runs.iter().map(|one| one.1).collect();
    let responses: Vec<f64> = runs.iter().map(|one| one.2).collect();
    let noise = noise_within_days(&points, &days, 2, &responses).unwrap();
    // Differences of the days are 10.3, 10.0 and 9.7; about their mean 10 half their squares is
    // 0.09, with two degrees of freedom.
    assert_eq!(noise.degrees, 2);
    assert!(
        (noise.deviation - (0.09_f64 / 2.0).sqrt()).abs() < 1e-9,
        "{noise:?}"
    );
    assert!(noise_within_days(&points[..3], &days[..3], 2, &responses[..3]).is_none());
}
