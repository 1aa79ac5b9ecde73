//! Surfaces of settings, their summits, their days, and several responses together.

use trials::desirability::{Wanted, Wish, met, together};
use trials::fit::Fit;
use trials::model::{Bend, Model, Term, on_day, surface, with_days};
use trials::repeats::lack_of_fit;
use trials::summit::{SummitKind, summit};

use crate::elsewhere::fit;
use crate::printed::{assert_printed, numbers, rows};

/// Keeps the terms that multiply these variables, in this order.
fn only(model: &Model, terms: &[&[usize]]) -> Model {
    let terms = terms.iter().map(|one| Term {
        factors: one.to_vec(),
    });
    Model {
        variables: model.variables.clone(),
        terms: terms.collect(),
    }
}

/// NIST/SEMATECH e-Handbook 5.4.7.3 (coefficients from memory); data from Czitrom and Spagon 1997
/// in dataplot, IMPROVE-5_4_7_3.DAT. Pressure, ratio, uniformity, stress.
const ETCHER: &str = "
    80 6 4.6 8.04; 42 6 6.2 7.78; 68.87 3.17 3.4 7.58; 15.13 8.83 6.9 7.27; 4 6 7.3 6.49
    42 6 6.4 7.69; 15.13 3.17 8.6 6.66; 42 2 6.3 7.16; 68.87 8.83 5.1 8.33; 42 10 5.4 8.19
    42 6 5.0 7.90
";

#[test]
fn uniformity_and_stress() {
    let rows = rows(ETCHER);
    let coded = |row: &Vec<f64>| vec![(row[0] - 42.0) / 38.0, (row[1] - 6.0) / 4.0];
    let points: Vec<Vec<f64>> = rows.iter().map(coded).collect();
    let of = |column: usize, terms: &[&[usize]]| {
        let measured: Vec<f64> = rows.iter().map(|row| row[column]).collect();
        let model = only(&surface(&["pressure", "ratio"], Bend::Bent), terms);
        fit(&model, &points, &measured).unwrap().values()
    };
    let near = |found: Vec<f64>, printed: [f64; 4]| {
        for (found, printed) in found.iter().zip(printed) {
            assert!((found - printed).abs() <= 0.006, "{found} for {printed}");
        }
    };
    near(
        of(2, &[&[], &[0], &[1], &[0, 1]]),
        [5.93, -1.91, -0.22, 1.70],
    );
    near(
        of(3, &[&[], &[0], &[1], &[0, 0]]),
        [7.73, 0.74, 0.50, -0.49],
    );
}

/// Myers, Montgomery and Anderson-Cook, Response Surface Methodology, 3rd ed., table 7.6, in two
/// blocks; conclusions in Lenth, J. Stat. Softw. 32(7) 2009 (coefficients from memory).
const REACTION: &str = "
    80 170 0 80.5; 80 180 0 81.5; 90 170 0 82.0; 90 180 0 83.5; 85 175 0 83.9; 85 175 0 84.3
    85 175 0 84.0; 85 175 1 79.7; 85 175 1 79.8; 85 175 1 79.5; 92.07 175 1 78.4
    77.93 175 1 75.6; 85 182.07 1 78.5; 85 167.93 1 77.0
";

fn reaction() -> (Vec<Vec<f64>>, Vec<f64>) {
    let rows = rows(REACTION);
    let point = |row: &Vec<f64>| {
        on_day(
            &[(row[0] - 85.0) / 5.0, (row[1] - 175.0) / 5.0],
            row[2] as usize,
            2,
        )
    };
    (
        rows.iter().map(point).collect(),
        rows.iter().map(|row| row[3]).collect(),
    )
}

#[test]
fn reaction_in_two_blocks() {
    let (points, measured) = reaction();
    let model = with_days(&surface(&["time", "temperature"], Bend::Bent), 2);
    let found = fit(&model, &points, &measured).unwrap();
    let order = ["constant", "day 2", "time", "temperature"];
    let order = order
        .into_iter()
        .chain(["time·temperature", "time²", "temperature²"]);
    let printed = [84.0954, -4.4575, 0.9325, 0.5777, 0.125, -1.3086, -0.9334];
    for (name, printed) in order.zip(printed) {
        let one = found
            .coefficients
            .iter()
            .find(|one| one.name == name)
            .unwrap();
        assert!(
            (one.value - printed).abs() <= 0.0006,
            "{name} {} for {printed}",
            one.value
        );
    }
    let top = summit(&found, 2, &points).unwrap();
    assert_eq!((top.kind, top.beyond), (SummitKind::Top, false));
    assert!((top.point[0] - 0.37).abs() <= 0.006 && (top.point[1] - 0.33).abs() <= 0.006);
    assert!((85.0 + 5.0 * top.point[0] - 87.0).abs() <= 0.5);
    assert!((175.0 + 5.0 * top.point[1] - 177.0).abs() <= 0.5);
    let lack = lack_of_fit(&found, &points, &measured).unwrap();
    assert!((lack.chance - 0.69).abs() <= 0.006, "{}", lack.chance);
}

#[test]
fn a_plane_does_not_fit_the_first_block() {
    let (points, measured) = reaction();
    let points: Vec<Vec<f64>> = points[..7]
        .iter()
        .map(|point| point[..2].to_vec())
        .collect();
    let plane = fit(&surface(&["x", "y"], Bend::Flat), &points, &measured[..7]).unwrap();
    let lack = lack_of_fit(&plane, &points, &measured[..7]).unwrap();
    assert!((lack.chance - 0.01).abs() <= 0.001, "{}", lack.chance);
}

/// Derringer and Suich, J. Quality Technology 12 (1980) 214; data in the R package qualityTools;
/// coefficients and optimum from memory.
const TREAD: &str = "
    -1 -1 -1 103 490 640 62.5; 1 -1 -1 120 860 410 65; -1 1 -1 117 800 570 77.5
    1 1 -1 139 1090 380 70; -1 -1 1 102 900 470 67.5; 1 -1 1 132 1289 270 67
    -1 1 1 132 1270 410 78; 1 1 1 198 2294 240 74.5; -1.633 0 0 102 770 590 76
    1.633 0 0 154 1690 260 70; 0 -1.633 0 96 700 520 63; 0 1.633 0 163 1540 380 75
    0 0 -1.633 116 2184 520 65; 0 0 1.633 153 1784 290 71; 0 0 0 133 1300 380 70
    0 0 0 133 1300 380 68.5; 0 0 0 140 1145 430 68; 0 0 0 142 1090 430 68
    0 0 0 145 1260 390 69; 0 0 0 142 1344 390 70
";

fn tread(response: usize) -> Fit {
    let rows = rows(TREAD);
    let points: Vec<Vec<f64>> = rows.iter().map(|row| row[..3].to_vec()).collect();
    let measured: Vec<f64> = rows.iter().map(|row| row[3 + response]).collect();
    fit(&surface(&["1", "2", "3"], Bend::Bent), &points, &measured).unwrap()
}

#[test]
fn tread_coefficients() {
    let order: [&[usize]; 10] = [
        &[],
        &[0],
        &[1],
        &[2],
        &[0, 0],
        &[1, 1],
        &[2, 2],
        &[0, 1],
        &[0, 2],
        &[1, 2],
    ];
    let check = |response: usize, printed: [f64; 10]| {
        let found = tread(response);
        for (factors, printed) in order.iter().zip(printed) {
            let term = |term: &Term| term.factors == *factors;
            let one = found
                .coefficients
                .iter()
                .find(|one| term(&one.term))
                .unwrap();
            assert!(
                (one.value - printed).abs() <= 0.011,
                "{} for {printed}",
                one.value
            );
        }
    };
    check(
        0,
        [
            139.12, 16.49, 17.88, 10.91, -4.01, -3.45, -1.57, 5.13, 7.13, 7.88,
        ],
    );
    check(
        2,
        [
            400.38, -99.67, -31.4, -73.92, 7.93, 17.31, 0.43, 8.75, 6.25, 1.25,
        ],
    );
}

/// The four wishes of the paper.
fn wishes() -> [Wanted; 4] {
    let straight = |wish: Wish| Wanted {
        wish,
        sharpness: 1.0,
        weight: 1.0,
    };
    [
        straight(Wish::More {
            worthless: 120.0,
            good: 170.0,
        }),
        straight(Wish::More {
            worthless: 1000.0,
            good: 1300.0,
        }),
        straight(Wish::Near {
            low: 400.0,
            target: 500.0,
            high: 600.0,
        }),
        straight(Wish::Near {
            low: 60.0,
            target: 67.5,
            high: 75.0,
        }),
    ]
}

#[test]
fn tread_desirability() {
    let wanted = wishes();
    let point = [-0.05, 0.145, -0.868];
    let found: Vec<f64> = (0..4)
        .map(|response| tread(response).at(&point).value)
        .collect();
    for (found, printed) in found.iter().zip([129.5, 1300.0, 465.7, 68.0]) {
        assert!(
            (found / printed - 1.0).abs() <= 0.002,
            "{found} for {printed}"
        );
    }
    assert!((together(&wanted, &found) - 0.583).abs() <= 0.001);
    assert_eq!(met(&wanted[0], 120.0), 0.0);
    assert_eq!(together(&wanted, &[119.0, 1300.0, 500.0, 67.5]), 0.0);
}

/// No point of a fine grid within the runs meets the wishes clearly better than the published one,
/// and those that meet them as well lie around it.
#[test]
fn the_published_optimum_is_the_best_of_a_grid() {
    let (wanted, fits) = (wishes(), [0, 1, 2, 3].map(tread));
    let met = |point: &[f64]| {
        let found: Vec<f64> = fits.iter().map(|fit| fit.at(point).value).collect();
        together(&wanted, &found)
    };
    let ends = (-20..=20).map(|step| f64::from(step) * 0.05);
    let mut best = (0.0, [0.0; 3]);
    for x in ends.clone() {
        for y in ends.clone() {
            for z in ends.clone() {
                let found = met(&[x, y, z]);
                if found > best.0 {
                    best = (found, [x, y, z]);
                }
            }
        }
    }
    let published = [-0.05, 0.145, -0.868];
    assert!(best.0 <= met(&published) + 0.002, "{best:?}");
    let near = best
        .1
        .iter()
        .zip(published)
        .all(|(a, b)| (a - b).abs() < 0.1);
    assert!(near, "{best:?}");
}

/// Workability of cement, a design in two blocks (R package daewr); coefficients by ordinary least
/// squares with another library.
const CEMENT: &str = "
     1 -1 -1 -1 109.5
     1 1 -1 -1 117
     1 -1 1 -1 110.5
     1 1 1 -1 121
     1 -1 -1 1 120
     1 1 -1 1 130
     1 -1 1 1 124
     1 1 1 1 132
     1 0 0 0 117
     1 0 0 0 117
     1 0 0 0 115
     2 -1.68179 0 0 109.5
     2 1.68179 0 0 132
     2 0 -1.68179 0 120
     2 0 1.68179 0 121
     2 0 0 -1.68179 115
     2 0 0 1.68179 127
     2 0 0 0 116
     2 0 0 0 117
     2 0 0 0 117
";

fn cement(days: usize) -> (Fit, Vec<Vec<f64>>) {
    let rows = rows(CEMENT);
    let point = |row: &Vec<f64>| on_day(&row[1..4], (row[0] as usize - 1) % days, days);
    let points: Vec<Vec<f64>> = rows.iter().map(point).collect();
    let measured: Vec<f64> = rows.iter().map(|row| row[4]).collect();
    let model = with_days(&surface(&["1", "2", "3"], Bend::Bent), days);
    (fit(&model, &points, &measured).unwrap(), points)
}

#[test]
fn cement_with_its_days() {
    let (found, _) = cement(2);
    let printed = "116.280 5.407 0.929 4.992 0.125 0.000 0.125 1.413 1.325 1.502 0.444";
    assert_printed("cement", &found.values(), printed);
    assert_printed("cement, noise", &[found.noise.unwrap()], "2.256");
    assert_printed("cement, taken up", &[found.taken_up.unwrap()], "0.947");
}

#[test]
fn cement_is_least_beyond_what_was_tried() {
    let (found, points) = cement(1);
    let printed = "116.516 5.407 0.929 4.992 0.125 0.000 0.125 1.395 1.307 1.484";
    assert_printed("cement", &found.values(), printed);
    assert_printed("cement, noise", &[found.noise.unwrap()], "2.163");
    let least = summit(&found, 3, &points).unwrap();
    assert_printed("cement, where", &least.point, "-1.93 -0.18 -1.67");
    assert_printed("cement, bends", &least.bends, "1.26 1.42 1.51");
    assert_eq!((least.kind, least.beyond), (SummitKind::Bottom, true));
}

/// Carbon monoxide, three by three settings twice (R package rsm): a rising ridge whose summit the
/// authors place near (−15, 15), far outside of what was tried.
#[test]
fn a_ridge_is_not_a_summit() {
    let measured = numbers(
        "61.9 65.6 80.9 78 89.7 93.8 72.1 67.3 80.1 81.4 77.8 74.8 66.4 68.2 68.9 66 60.2 57.9",
    );
    let levels = [-1.0, 0.0, 1.0];
    let along = |y: f64| levels.into_iter().flat_map(move |x| vec![vec![x, y]; 2]);
    let points: Vec<Vec<f64>> = levels.into_iter().flat_map(along).collect();
    let found = fit(&surface(&["x", "y"], Bend::Bent), &points, &measured).unwrap();
    let printed = "78.633 4.392 -6.858 -9.063 -4.575 -4.125";
    assert_printed("monoxide", &found.values(), printed);
    let ridge = summit(&found, 2, &points).unwrap();
    assert_printed("monoxide, bends", &ridge.bends, "-8.887 0.187");
    assert_printed("monoxide, where", &ridge.point, "-14.8 15.4");
    assert_eq!((ridge.kind, ridge.beyond), (SummitKind::Ridge, true));
}
