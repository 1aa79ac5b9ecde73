//! Damp sand against a hot wall: a front where its water boils away.

use solver::case::Case;
use solver::material::{Knot, Material};
use solver::run::{Mode, Moment};

use crate::column::{assert_near, celsius_at, column, even, front_errors, moments, order};

const LATENT: f64 = 122_442_250.0;
const WET: f64 = 1_932_090.5;

/// Moment, front mm, flux at the wall W/m², a place m with its temperature.
const ANSWERS: [(f64, f64, f64, (f64, f64)); 2] = [
    (
        60.0,
        7.914_681_419_48,
        47_393.055_007_4,
        (0.005, 240.700_431_964),
    ),
    (
        300.0,
        17.697_765_674_2,
        21_194.818_531_6,
        (0.02, 86.002_165_062_8),
    ),
];

#[test]
fn the_dry_front_comes_right_in_steps_and_in_stages() {
    // As a material that freezes it goes in stages, as one that does not in single steps.
    for (mode, wet) in [
        (Mode::Reference, 1.0),
        (Mode::Multirate, 1.0),
        (Mode::Multirate, 0.0),
    ] {
        let case = case(50, wet);
        let (moments, outcome) = moments(&case, mode, &[60.0, 300.0], 0.3);
        for ((s, front_mm, _, (at_m, celsius)), moment) in ANSWERS.into_iter().zip(&moments) {
            let what = format!("{mode:?}, {s} s");
            assert_near(&what, dry_mm(&case, moment), front_mm, 0.01 * front_mm);
            let got = celsius_at(&case, moment, at_m);
            assert_near(&what, got, celsius, 0.005 * (600.0 - 25.0));
        }
        let taken_j = 2.0 * ANSWERS[1].2 * 300.0 * 1e-4;
        assert_near("heat", outcome.balance.through_j, taken_j, 0.01 * taken_j);
        assert!(
            outcome.balance.drift < 1e-5,
            "{mode:?}: {:?}",
            outcome.balance
        );
    }
}

#[test]
fn errors_fall_with_the_cells() {
    let (last_s, front_mm, ..) = ANSWERS[1];
    let errors = [25, 50, 100].map(|cells| {
        let case = case(cells, 1.0);
        front_errors(last_s, |times| {
            let (moments, _) = moments(&case, Mode::Reference, times, last_s);
            let fronts = moments.iter().map(|moment| dry_mm(&case, moment));
            fronts
                .zip(times)
                .map(|(front, s)| front - front_mm * (s / last_s).sqrt())
                .collect()
        })
    });
    let order = order(&errors);
    assert!(order >= 0.9, "order {order} from {errors:?}");
}

/// Length that is dry, mm.
fn dry_mm(case: &Case, moment: &Moment) -> f64 {
    let widths = (0..case.cells.len()).map(|cell| case.grid.width(0, cell));
    let shares = moment
        .j_m3
        .iter()
        .map(|heat| ((f64::from(*heat) - WET * 100.0) / LATENT).clamp(0.0, 1.0));
    1e3 * widths
        .zip(shares)
        .map(|(width, share)| width * share)
        .sum::<f64>()
}

/// `dry` is the solid share of dry sand: the front is then one between solid and liquid to the
/// solver, or no such thing.
fn case(cells_to_front: usize, dry: f64) -> Case {
    let knot = |celsius, j_m3, w_mk, solid| Knot {
        celsius,
        j_m3,
        w_mk,
        solid,
    };
    let boiled = WET * 100.0 + LATENT;
    let sand = Material {
        name: "damp sand".to_owned(),
        knots: vec![
            knot(0.0, 0.0, 1.0, 1.0),
            knot(100.0, WET * 100.0, 1.0, 1.0),
            knot(100.0, boiled, 0.6, dry),
            knot(1100.0, boiled + 1.7e9, 0.6, dry),
        ],
    };
    let cell_m = 1e-3 * ANSWERS[1].1 / cells_to_front as f64;
    column(even(5 * cells_to_front, cell_m), sand, 25.0, 600.0)
}
