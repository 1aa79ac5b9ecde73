//! What is believed from few batches, and which batch is worth making next.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use trials::belief::{Belief, BeliefError, Likeness, belief, spans};
use trials::desirability::{Wanted, Wish};
use trials::fit::fit;
use trials::lattice::lattice;
use trials::model::{Bend, surface};
use trials::next::{best_believed, expected_improvement, next_batches, next_for_all};
use trials::verdict::Good;

/// Points along one variable from −1 to 1.
fn line(count: u32) -> Vec<Vec<f64>> {
    let step = |at: u32| 2.0 * f64::from(at) / f64::from(count - 1) - 1.0;
    (0..count).map(|at| vec![step(at)]).collect()
}

fn smooth(points: &[Vec<f64>], responses: &[f64]) -> Belief {
    belief(&Likeness::Smooth, points, responses, &[(-1.0, 1.0)]).unwrap()
}

/// The integral of max(y − b, 0) over the normal curve, by small steps.
#[test]
fn expected_improvement_is_its_integral() {
    for (mean, deviation, best) in [(1.0, 2.0, 1.5), (0.0, 0.3, 1.0), (3.0, 1.0, 0.0)] {
        let step = 1e-4;
        let parts = (-100_000..100_000).map(|at| {
            let z = f64::from(at) * step;
            let height = (-z * z / 2.0).exp() / std::f64::consts::TAU.sqrt();
            (mean + z * deviation - best).max(0.0) * height * step
        });
        let integral: f64 = parts.sum();
        let found = expected_improvement(mean, deviation, best);
        assert!((found - integral).abs() < 1e-6, "{found} for {integral}");
    }
    assert_eq!(expected_improvement(2.0, 0.0, 1.5), 0.5);
    assert_eq!(expected_improvement(1.0, 0.0, 1.5), 0.0);
}

/// A smooth response with hardly any noise is believed everywhere between its batches.
#[test]
fn a_smooth_response_is_learnt() {
    let points = line(9);
    let responses: Vec<f64> = points.iter().map(|x| (2.0 * x[0]).sin()).collect();
    let found = smooth(&points, &responses);
    for point in line(33) {
        let off = found.at(&point).mean - (2.0 * point[0]).sin();
        assert!(off.abs() < 0.02, "{point:?}: {off}");
    }
    let inside = found.at(&[0.1]).deviation;
    let outside = found.at(&[3.0]).deviation;
    assert!(outside > 5.0 * inside, "{inside} inside, {outside} outside");
}

/// The doubt is of the right size: of responses drawn with noise, about 95 in 100 true values lie
/// within 1.96 deviations; fewer than 85 or all of them would be a false claim.
#[test]
fn doubt_is_neither_too_small_nor_too_large() {
    use rand::{RngExt, SeedableRng};
    let mut die = rand_chacha::ChaCha8Rng::seed_from_u64(7);
    let (mut held, mut all) = (0, 0);
    for _ in 0..60 {
        let phase: f64 = die.random::<f64>() * 6.0;
        let truth = |x: f64| (1.5 * x + phase).sin();
        let points = line(12);
        let mut noise = || (0..12).map(|_| die.random::<f64>() - 0.5).sum::<f64>() * 0.1;
        let responses: Vec<f64> = points.iter().map(|x| truth(x[0]) + noise()).collect();
        let found = smooth(&points, &responses);
        for point in line(21) {
            let believed = found.at(&point);
            let off = (believed.mean - truth(point[0])).abs();
            held += usize::from(off <= 1.96 * believed.deviation);
            all += 1;
        }
    }
    let share = f64::from(held as u32) / f64::from(all as u32);
    assert!((0.85..0.995).contains(&share), "{share}");
}

/// With little noise the linear model believes what least squares fit.
#[test]
fn terms_agree_with_least_squares() {
    let model = surface(&["x"], Bend::Bent);
    let points = line(7);
    let responses = [1.0, 2.2, 3.1, 3.4, 3.3, 2.4, 1.5];
    let fitted = fit(&model, &points, &responses).unwrap();
    let likeness = Likeness::Terms(model);
    let found = belief(&likeness, &points, &responses, &[(-1.0, 1.0)]).unwrap();
    for point in line(21) {
        let off = found.at(&point).mean - fitted.at(&point).value;
        assert!(off.abs() < 0.05, "{point:?}: {off}");
    }
    assert!((found.noise / fitted.noise.unwrap() - 1.0).abs() < 0.25);
}

/// What would be known after one more batch does not change what is expected, and takes doubt away
/// most where the batch is made.
#[test]
fn supposing_a_batch_takes_doubt_away() {
    let points = line(5);
    let found = smooth(&points, &[0.0, 0.9, 1.1, 0.4, -0.3]);
    let after = found.supposing(&[0.25]);
    for point in line(11) {
        let (before, after) = (found.at(&point), after.at(&point));
        assert!((before.mean - after.mean).abs() < 1e-9);
        assert!(after.deviation <= before.deviation * (1.0 + 1e-6));
    }
    assert!(after.at(&[0.25]).deviation < 0.95 * found.at(&[0.25]).deviation);
}

#[test]
fn the_next_batch_lies_where_the_top_may_be() {
    let points = line(5);
    let rising = smooth(&points, &[0.0, 0.5, 0.9, 1.0, 0.8]);
    let candidates = line(41);
    let session = next_batches(&rising, &candidates, Good::High, 3);
    assert_eq!(session.len(), 3);
    assert!(session[0].point[0] > 0.0 && session[0].improvement > 0.0);
    assert!(session[1].improvement <= session[0].improvement);
    let (best, _) = best_believed(&rising, &candidates, Good::High).unwrap();
    assert!((0.2..0.8).contains(&best[0]), "{best:?}");
    let (least, _) = best_believed(&rising, &candidates, Good::Low).unwrap();
    assert!(least[0] < -0.8, "{least:?}");
    assert!(next_batches(&rising, &[], Good::High, 3).is_empty());
    assert!(best_believed(&rising, &[], Good::High).is_none());
}

/// One response wants the left end, the other the right: together they want the middle.
#[test]
fn several_wishes_meet_in_the_middle() {
    let points = line(7);
    let falling: Vec<f64> = points.iter().map(|x| 1.0 - x[0]).collect();
    let rising: Vec<f64> = points.iter().map(|x| 1.0 + x[0]).collect();
    let beliefs = [smooth(&points, &falling), smooth(&points, &rising)];
    let wish = Wanted {
        wish: Wish::More {
            worthless: 0.0,
            good: 2.0,
        },
        sharpness: 1.0,
        weight: 1.0,
    };
    let found = next_for_all(&beliefs, &[wish; 2], &line(41), 2, 3);
    assert_eq!(found, next_for_all(&beliefs, &[wish; 2], &line(41), 2, 3));
    assert!(found[0].point[0].abs() < 0.35, "{:?}", found[0]);
    assert!(found[0].met > 0.45);
}

#[test]
fn results_that_teach_nothing_are_told() {
    let refused = |points: &[Vec<f64>], responses: &[f64]| {
        belief(&Likeness::Smooth, points, responses, &[(-1.0, 1.0)]).unwrap_err()
    };
    assert_eq!(refused(&line(2), &[1.0, 2.0]), BeliefError::TooFew(2));
    assert_eq!(
        refused(&line(3), &[1.0, f64::NAN, 2.0]),
        BeliefError::Broken(2)
    );
    assert_eq!(refused(&line(3), &[1.0, 2.0]), BeliefError::Broken(3));
    assert_eq!(refused(&line(3), &[1.0; 3]), BeliefError::AllAlike);
    let wide = vec![vec![0.0, 1.0]; 3];
    assert_eq!(refused(&wide, &[1.0, 2.0, 3.0]), BeliefError::Broken(1));
    assert!(spans(&lattice(3, 2)).iter().all(|span| *span == (0.0, 1.0)));
}
