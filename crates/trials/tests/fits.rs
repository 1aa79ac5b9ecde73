//! Fits of runs: what they say, and what they refuse to say.

use trials::alias::aliases;
use trials::choice::{best_foretelling, reduced};
use trials::fit::{FitError, fit};
use trials::model::{Bend, Blending, Term, mixture, on_mean_day, surface, with_days};
use trials::rank::indistinct;
use trials::repeats::{LackOfFitError, lack_of_fit, noise};

/// Anscombe's first set (The American Statistician 27 (1973) 17, from memory): intercept 3.00,
/// slope 0.500, their errors 1.125 and 0.118, R² 0.667, as printed there.
#[test]
fn a_straight_line() {
    let x = [10.0, 8.0, 13.0, 9.0, 11.0, 14.0, 6.0, 4.0, 12.0, 7.0, 5.0];
    let y = [
        8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68,
    ];
    let points: Vec<Vec<f64>> = x.iter().map(|x| vec![*x]).collect();
    let found = fit(&surface(&["x"], Bend::Flat), &points, &y).unwrap();
    let error = |at: usize| found.coefficients[at].sure.unwrap().error;
    assert!((found.coefficients[0].value - 3.00).abs() < 0.005);
    assert!((found.coefficients[1].value - 0.500).abs() < 0.0005);
    assert!((error(0) - 1.125).abs() < 0.0005 && (error(1) - 0.118).abs() < 0.0005);
    assert!((found.taken_up.unwrap() - 0.667).abs() < 0.0005);
    // The F test of one slope is its t test.
    let slope = found.coefficients[1].sure.unwrap().chance;
    assert!((found.chance_of_flat.unwrap() - slope).abs() < 1e-12);
    assert!(found.at(&[20.0]).unknown && !found.at(&[9.0]).unknown);
}

/// Runs foretold from the others, by leaving each out in turn and fitting the rest.
#[test]
fn what_is_foretold_is_what_the_others_say() {
    let points: Vec<Vec<f64>> = (0..8).map(|at| vec![f64::from(at * at) / 10.0]).collect();
    let measured = [1.0, 1.3, 0.9, 2.2, 2.0, 3.9, 3.2, 6.0];
    let model = surface(&["x"], Bend::Flat);
    let found = fit(&model, &points, &measured).unwrap();
    let mean = measured.iter().sum::<f64>() / 8.0;
    let about: f64 = measured.iter().map(|one| (one - mean).powi(2)).sum();
    let missed = (0..8).map(|out| {
        let rest = |at: &usize| *at != out;
        let points_of_rest: Vec<_> = (0..8).filter(rest).map(|at| points[at].clone()).collect();
        let measured_of_rest: Vec<_> = (0..8).filter(rest).map(|at| measured[at]).collect();
        let without = fit(&model, &points_of_rest, &measured_of_rest).unwrap();
        (measured[out] - without.at(&points[out]).value).powi(2)
    });
    let missed: f64 = missed.sum();
    assert!((found.foretold.unwrap() - (1.0 - missed / about)).abs() < 1e-9);
}

#[test]
fn what_cannot_be_fitted_is_said() {
    let line = surface(&["clay", "water"], Bend::Flat);
    let refused = |points: &[Vec<f64>], measured: &[f64]| {
        fit(&line, points, measured).unwrap_err().to_string()
    };
    let never = refused(
        &[vec![1.0, 4.0], vec![2.0, 4.0], vec![3.0, 4.0]],
        &[1.0, 2.0, 3.0],
    );
    assert!(never.contains("water was 4 in every run"), "{never}");
    let few = refused(&[vec![1.0, 4.0], vec![2.0, 5.0]], &[1.0, 2.0]);
    assert!(
        few.contains("2 runs cannot teach 3 terms: make 1 more"),
        "{few}"
    );
    let alike = refused(
        &[vec![1.0, 4.0], vec![2.0, 5.0], vec![2.0, 5.0]],
        &[1.0, 2.0, 3.0],
    );
    assert!(alike.contains("only 2 different ones"), "{alike}");
    let tied = refused(
        &[vec![1.0, 2.0], vec![2.0, 4.0], vec![3.0, 6.0]],
        &[1.0, 2.0, 3.0],
    );
    assert!(
        tied.contains("water moved only together with clay"),
        "{tied}"
    );
    let broken = refused(&[vec![1.0, f64::NAN]], &[1.0]);
    assert!(
        broken.contains("run 1 holds something that is not a number"),
        "{broken}"
    );
    assert!(refused(&[vec![1.0]], &[1.0]).contains("1 numbers where the model has 2"));
    assert!(refused(&[], &[1.0]).contains("0 runs but 1 responses"));
    assert!(refused(&[], &[]).contains("0 runs cannot teach 3 terms"));
}

#[test]
fn a_component_that_never_varied_is_named() {
    let points = [
        [0.1, 0.7, 0.2],
        [0.1, 0.6, 0.3],
        [0.1, 0.5, 0.4],
        [0.1, 0.4, 0.5],
    ];
    let points: Vec<Vec<f64>> = points.iter().map(|point| point.to_vec()).collect();
    let model = mixture(&["clay", "sand", "water"], Blending::Linear);
    let refused = fit(&model, &points, &[1.0, 2.0, 3.0, 4.0]).unwrap_err();
    let name = "clay".to_owned();
    assert_eq!(refused, FitError::NeverVaried { name, value: 0.1 });
}

/// The half of a two-level design with c = ab (Box, Hunter and Hunter, Statistics for
/// Experimenters, from memory): each effect is the sum of itself and of one pair.
#[test]
fn a_half_design_hides_pairs_behind_single_settings() {
    let ends = [-1.0, 1.0];
    let both = |a: f64| ends.into_iter().map(move |b| vec![a, b, a * b]);
    let points: Vec<Vec<f64>> = ends.into_iter().flat_map(both).collect();
    let flat = surface(&["a", "b", "c"], Bend::Flat);
    let pairs = [vec![0, 1], vec![0, 2], vec![1, 2]].map(|factors| Term { factors });
    let found = aliases(&flat, &points, &pairs).unwrap();
    let named: Vec<_> = found
        .iter()
        .map(|one| (one.left_out.as_str(), &one.falsifies))
        .collect();
    for ((pair, falsifies), (wanted, behind)) in
        named.iter().zip([("a·b", "c"), ("a·c", "b"), ("b·c", "a")])
    {
        assert_eq!(*pair, wanted);
        assert_eq!(falsifies.len(), 1);
        assert_eq!(falsifies[0].0, behind);
        assert!((falsifies[0].1 - 1.0).abs() < 1e-12);
    }
    let tied = indistinct(&surface(&["a", "b", "c"], Bend::Twisted), &points);
    let tied: Vec<_> = tied.iter().map(|one| one.term.as_str()).collect();
    assert_eq!(tied, ["a·b", "a·c", "b·c"]);
}

/// A straight response measured with a little noise: the squares and pairs fall away.
#[test]
fn terms_without_a_word_for_them_are_dropped() {
    let levels = [-1.0, 0.0, 1.0];
    let along = |x: f64| levels.into_iter().map(move |y| vec![x, y]);
    let points: Vec<Vec<f64>> = levels.into_iter().flat_map(along).collect();
    let off = [0.1, -0.2, 0.1, 0.0, 0.2, -0.1, -0.1, 0.1, -0.1];
    let measured: Vec<f64> = points
        .iter()
        .zip(off)
        .map(|(point, off)| 5.0 + 3.0 * point[0] - 2.0 * point[1] + off)
        .collect();
    let found = reduced(&surface(&["x", "y"], Bend::Bent), &points, &measured, 0.1).unwrap();
    let kept: Vec<_> = found
        .fit
        .coefficients
        .iter()
        .map(|one| one.name.as_str())
        .collect();
    assert_eq!(kept, ["constant", "x", "y"]);
    assert_eq!(found.dropped.len(), 3);
    let models = [Bend::Flat, Bend::Twisted, Bend::Bent].map(|bend| surface(&["x", "y"], bend));
    let best = best_foretelling(&models, &points, &measured).unwrap();
    assert_eq!(best.model, models[0]);
}

#[test]
fn lack_of_fit_asks_for_repeats() {
    let points = [0.0, 1.0, 2.0, 3.0].map(|x| vec![x]);
    let line = surface(&["x"], Bend::Flat);
    let measured = [0.0, 1.2, 1.9, 3.1];
    let found = fit(&line, &points, &measured).unwrap();
    let refused = lack_of_fit(&found, &points, &measured).unwrap_err();
    assert_eq!(refused, LackOfFitError::NothingRepeated);
    assert_eq!(noise(&points, &measured), None);
    let twice = [0.0, 0.0, 2.0, 2.0].map(|x| vec![x]);
    let found = fit(&line, &twice, &measured).unwrap();
    let refused = lack_of_fit(&found, &twice, &measured).unwrap_err();
    assert_eq!(refused, LackOfFitError::NoPointLeft);
}

/// The interval of a deviation from ten readings is 0.688 to 1.826 of it (chi squared 19.023 and
/// 2.700 with 9 degrees, from any table).
#[test]
fn noise_has_its_own_interval() {
    let readings = [4.9, 5.3, 5.0, 4.8, 5.1, 5.2, 5.4, 4.7, 5.0, 5.1];
    let found = noise(&vec![vec![1.0]; 10], &readings).unwrap();
    assert_eq!(found.degrees, 9);
    assert!((found.low / found.deviation - 0.688).abs() < 5e-4);
    assert!((found.high / found.deviation - 1.826).abs() < 1e-3);
}

#[test]
fn a_mean_day_lies_between_the_days() {
    let points = [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [1.0, 1.0]].map(|point| point.to_vec());
    let model = with_days(&surface(&["x"], Bend::Flat), 2);
    let found = fit(&model, &points, &[1.0, 2.0, 3.0, 4.0]).unwrap();
    assert!((found.at(&on_mean_day(&[0.0], 2)).value - 2.0).abs() < 1e-12);
}
