//! The same figures from statsmodels, scipy and numpy, wherever a Python with them is present.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a helper that fails fails its test, and one that is left out says so"
)]

use std::path::PathBuf;
use std::process::Command;

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use serde_json::{Value, json};
use trials::belief::{Likeness, belief, spans};
use trials::chance::{two_sided, upper_f};
use trials::fit::fit;
use trials::lattice::lattice;
use trials::model::{Bend, Blending, Model, added, crossed as crossed_model, mixture, surface};
use trials::region::{Component, Limit, Region};
use trials::settings::{crossed, three_level};
use trials::verdict::{Good, Measured, verdict};
use trials::vertices::{landmarks, vertices};

/// What Python says of the cases; none where it or one of its libraries is missing.
fn elsewhere(name: &str, mut asked: Value) -> Option<Value> {
    let kinds = [
        "fits", "beliefs", "corners", "students", "fishers", "pairs", "groups",
    ];
    for kind in kinds {
        if asked.get(kind).is_none() {
            asked[kind] = json!([]);
        }
    }
    let path = std::env::temp_dir().join(format!("{}-{name}.json", std::process::id()));
    std::fs::write(&path, asked.to_string()).unwrap();
    let tests = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests");
    let script = tests.join("independent/statistics.py");
    let ran = Command::new("python3").arg(script).arg(&path).output();
    std::fs::remove_file(&path).unwrap();
    let ran = ran.ok()?;
    if ran.status.code() == Some(3) {
        println!("{name}: left out, no Python with statsmodels and scipy");
        return None;
    }
    let said = String::from_utf8(ran.stderr).unwrap();
    assert!(ran.status.success(), "{said}");
    Some(serde_json::from_slice(&ran.stdout).unwrap())
}

fn assert_near(what: &str, found: &[f64], theirs: &Value, share: f64) {
    let theirs: Vec<f64> = serde_json::from_value(theirs.clone()).unwrap();
    assert_eq!(found.len(), theirs.len(), "{what}");
    let size = theirs.iter().fold(0.0_f64, |size, one| size.max(one.abs()));
    for (found, theirs) in found.iter().zip(&theirs) {
        let off = (found - theirs).abs();
        assert!(
            off <= share * theirs.abs().max(1e-6 * size),
            "{what}: {found}, {theirs}"
        );
    }
}

fn narrow() -> Region {
    let component = |(low, high)| Component {
        name: String::new(),
        low,
        high,
    };
    let bounds = [(0.78, 0.96), (0.03, 0.12), (0.02, 0.06), (0.01, 0.08)];
    Region {
        components: bounds.into_iter().map(component).collect(),
        limits: Vec::new(),
    }
}

/// Stirred propellants (R package mixexp, Burn): coarse, fine, binder, stirring, burning rate.
const BURN: &str = "
    0.624 0.166 0.21 -1 0.443; 0.704 0.166 0.13 -1 0.63; 0.664 0.176 0.16 1 0.536
    0.514 0.277 0.21 1 0.526; 0.581 0.289 0.13 1 0.62; 0.664 0.289 0.17 1 0.513
    0.521 0.308 0.171 -1 0.604; 0.521 0.308 0.171 1 0.546; 0.521 0.308 0.171 1 0.55
    0.521 0.308 0.171 0 0.601; 0.403 0.387 0.21 -1 0.571; 0.408 0.399 0.193 1 0.609
    0.413 0.412 0.175 -1 0.664; 0.436 0.412 0.153 1 0.666; 0.458 0.412 0.13 -1 0.701
";

/// Seven mixes at five pairs of settings (R package daewr, MPV).
const MIXES: &str = "
    0.0241 0.6018 0.3741; 0.0275 0.9725 0; 0.0275 0 0.9725; 0 0.6667 0.3333; 0 0.3333 0.6667
    0.0549 0.63 0.3151; 0.0549 0.3151 0.63
";
const AT_SETTINGS: &str = "
    -1 1 3010 8510 1600 4560 1930 1900 1780; 1 1 3480 5670 2580 4350 3080 4740 3750
    -1 -1 2780 7060 1660 3990 1810 2160 2000; 1 -1 4100 5210 2440 4130 3340 4330 3350
    0 0 3840 6320 2210 5210 2600 2780 3140
";

/// Brilliance of 81 fireworks (R package compositions, Aitchison's data 13). Their mixes are all
/// those whose first four shares over the fifth are 1/e, 1 or e.
const BRILLIANCE: &str = "
    6.2 10.7 13.4 7.4 20 8.7 16.6 18.1 12.9 14 13.5 12.5 13.3 10 15.1 12.8 15.4 10.3
    14.9 16.7 27.2 16.6 19 20.6 20.4 16.3 21.6 12.6 11.3 11.9 6.5 3.1 12.8 14.2 15.6 22.2
    18.5 10.7 12.9 10.2 15.1 14 10.4 15.1 14.5 28.3 16.9 22 15.7 9.4 9.5 17.9 7.5 12.2
    9 11.3 20.4 15.4 18.1 13.3 17.4 15.4 14.3 13.1 18.9 22.2 9.3 8.5 14.4 8.3 10.3 13.1
    24.8 23.9 25.2 19.2 11.3 15.8 6.7 17.3 17
";

fn rows(text: &str) -> Vec<Vec<f64>> {
    let lines = text
        .split(['\n', ';'])
        .filter(|line| !line.trim().is_empty());
    let numbers = |line: &str| {
        line.split_whitespace()
            .map(|one| one.parse().unwrap())
            .collect()
    };
    lines.map(numbers).collect()
}

/// Published sets of which no coefficients were printed: model, points, responses.
fn published() -> Vec<(Model, Vec<Vec<f64>>, Vec<f64>)> {
    let linear = mixture(&["a", "b", "c"], Blending::Linear);
    let quadratic = mixture(&["a", "b", "c"], Blending::Quadratic);
    let stirring = surface(&["z"], Bend::Flat);
    let burn = rows(BURN);
    let burn_points = burn.iter().map(|row| row[..4].to_vec()).collect();
    let mixes = rows(MIXES);
    let (mut points, mut measured) = (Vec::new(), Vec::new());
    for row in rows(AT_SETTINGS) {
        points.extend(mixes.iter().map(|mix| [mix.as_slice(), &row[..2]].concat()));
        measured.extend_from_slice(&row[2..]);
    }
    let fireworks = three_level(4).into_iter().map(|ratios| {
        let parts: Vec<f64> = ratios.iter().map(|one| one.exp()).chain([1.0]).collect();
        let sum: f64 = parts.iter().sum();
        parts.iter().map(|part| part / sum).collect()
    });
    let five = mixture(&["a", "b", "c", "d", "e"], Blending::Quadratic);
    vec![
        (
            crossed_model(&linear, &stirring),
            burn_points,
            burn.iter().map(|row| row[4]).collect(),
        ),
        (
            added(&quadratic, &surface(&["y", "z"], Bend::Twisted)),
            points,
            measured,
        ),
        (five, fireworks.collect(), rows(BRILLIANCE).concat()),
    ]
}

/// Models with points that teach them, from easy to nearly collinear.
fn cases() -> Vec<(Model, Vec<Vec<f64>>)> {
    let three = mixture(&["a", "b", "c"], Blending::SpecialCubic);
    let four = mixture(&["a", "b", "c", "d"], Blending::Quadratic);
    let settings = surface(&["y", "z"], Bend::Bent);
    vec![
        (surface(&["x", "y", "z"], Bend::Bent), three_level(3)),
        (three.clone(), lattice(3, 4)),
        (
            added(&three, &settings),
            crossed(&lattice(3, 3), &three_level(2)),
        ),
        (four, landmarks(&narrow()).unwrap().all()),
    ]
}

/// Coefficients, errors, intervals, leverages and predictions: nine digits agree, and seven in the
/// nearly collinear region.
#[test]
fn fits_agree() {
    let mut die = ChaCha8Rng::seed_from_u64(11);
    let measured = |points: &[Vec<f64>], die: &mut ChaCha8Rng| {
        let one = |point: &Vec<f64>| {
            let slope: f64 = point
                .iter()
                .enumerate()
                .map(|(at, x)| (at as f64 + 1.0) * x)
                .sum();
            10.0 + slope + die.random::<f64>()
        };
        points.iter().map(one).collect::<Vec<f64>>()
    };
    let cases: Vec<_> = cases()
        .into_iter()
        .map(|(model, points)| {
            let measured = measured(&points, &mut die);
            (model, points, measured)
        })
        .chain(published())
        .collect();
    let asked = cases.iter().map(|(model, points, measured)| {
        let rows: Vec<_> = points.iter().map(|point| model.row(point)).collect();
        json!({ "new": rows[..3], "rows": rows, "measured": measured })
    });
    let asked: Vec<Value> = asked.collect();
    let Some(theirs) = elsewhere("fits", json!({ "fits": asked })) else {
        return;
    };
    for (at, (model, points, measured)) in cases.iter().enumerate() {
        let share = if at == 3 { 1e-7 } else { 1e-9 };
        let own = fit(model, points, measured).unwrap();
        let theirs = &theirs["fits"][at];
        let sure = |of: fn(&trials::fit::Sure) -> f64| {
            let each = own.coefficients.iter().map(|one| of(&one.sure.unwrap()));
            each.collect::<Vec<f64>>()
        };
        let ahead: Vec<_> = points[..3].iter().map(|point| own.at(point)).collect();
        let told =
            |of: fn(&trials::fit::Prediction) -> f64| ahead.iter().map(of).collect::<Vec<_>>();
        let near = |what: &str, found: &[f64]| {
            assert_near(&format!("case {at}, {what}"), found, &theirs[what], share);
        };
        near("values", &own.values());
        near("errors", &sure(|one| one.error));
        near("lows", &sure(|one| one.low));
        near("highs", &sure(|one| one.high));
        near("chances", &sure(|one| one.chance));
        near("leverages", &own.leverages);
        near("mean", &told(|one| one.value));
        near("mean_low", &told(|one| one.mean.unwrap().0));
        near("batch_high", &told(|one| one.batch.unwrap().1));
        let single = |what: &str, found: Option<f64>| {
            let wanted = theirs[what].as_f64().unwrap();
            assert!(
                (found.unwrap() / wanted - 1.0).abs() <= share,
                "case {at}, {what}"
            );
        };
        single("noise", own.noise);
        single("taken_up", own.taken_up);
        single("foretold", own.foretold);
    }
}

#[test]
fn tails_agree() {
    let students = [
        (0.5, 1),
        (2.0, 3),
        (2.228, 10),
        (4.0, 30),
        (-7.0, 5),
        (12.0, 20),
    ];
    let fishers = [(0.3, 2, 5), (3.3, 4, 10), (9.0, 1, 30), (25.0, 6, 3)];
    let asked = json!({ "students": students, "fishers": fishers });
    let Some(theirs) = elsewhere("tails", asked) else {
        return;
    };
    let own: Vec<f64> = students
        .iter()
        .map(|(t, degrees)| two_sided(*t, *degrees))
        .collect();
    assert_near("Student", &own, &theirs["students"], 1e-8);
    let own: Vec<f64> = fishers
        .iter()
        .map(|(f, a, b)| upper_f(*f, *a, *b))
        .collect();
    assert_near("Fisher", &own, &theirs["fishers"], 1e-8);
}

#[test]
fn verdicts_agree() {
    let mut die = ChaCha8Rng::seed_from_u64(3);
    let sets: Vec<Vec<Vec<f64>>> = (0..20)
        .map(|set| {
            let mixes = 2 + set % 4;
            let one = |mix: usize, die: &mut ChaCha8Rng| {
                let repeats = 2 + (set + mix) % 3;
                (0..repeats)
                    .map(|_| mix as f64 / 3.0 + die.random::<f64>())
                    .collect()
            };
            (0..mixes).map(|mix| one(mix, &mut die)).collect()
        })
        .collect();
    let pairs: Vec<_> = sets.iter().filter(|set| set.len() == 2).collect();
    let asked = json!({ "groups": sets, "pairs": pairs });
    let Some(theirs) = elsewhere("verdicts", asked) else {
        return;
    };
    let judged = |set: &Vec<Vec<f64>>| {
        let all = set.iter().enumerate();
        let batches = all.flat_map(|(mix, responses)| {
            responses.iter().map(move |response| Measured {
                mix,
                day: 0,
                response: *response,
            })
        });
        verdict(&batches.collect::<Vec<_>>(), Good::High, 0.0).unwrap()
    };
    let alike: Vec<f64> = sets.iter().map(|set| judged(set).chance_of_alike).collect();
    assert_near("all alike", &alike, &theirs["alike"], 1e-8);
    let two: Vec<f64> = pairs.iter().map(|set| judged(set).chance).collect();
    assert_near("pairs", &two, &theirs["pairs"], 1e-8);
}

#[test]
fn beliefs_agree() {
    let mut die = ChaCha8Rng::seed_from_u64(21);
    let region = narrow();
    let points = landmarks(&region).unwrap().drawn_in(0.7);
    let spans = spans(&vertices(&region).unwrap());
    let response = |point: &Vec<f64>, die: &mut ChaCha8Rng| {
        (20.0 * point[1]).sin() - 30.0 * (point[2] - 0.04).powi(2) + 0.05 * die.random::<f64>()
    };
    let responses: Vec<f64> = points
        .iter()
        .map(|point| response(point, &mut die))
        .collect();
    let own = belief(&Likeness::Smooth, &points, &responses, &spans).unwrap();
    let new = landmarks(&region).unwrap().all();
    let asked = json!({
        "points": points, "responses": responses, "spans": spans, "new": new,
        "reaches": own.reaches, "noise": own.noise, "swing": own.swing,
    });
    let Some(theirs) = elsewhere("beliefs", json!({ "beliefs": [asked] })) else {
        return;
    };
    let at: Vec<_> = new.iter().map(|point| own.at(point)).collect();
    let theirs = &theirs["beliefs"][0];
    let means: Vec<f64> = at.iter().map(|one| one.mean).collect();
    assert_near("mean", &means, &theirs["mean"], 1e-6);
    let deviations: Vec<f64> = at.iter().map(|one| one.deviation).collect();
    assert_near("deviation", &deviations, &theirs["deviation"], 1e-5);
}

/// A linear programme ends at a corner: over many directions the least and the largest value of the
/// corners have to be those that the programme finds.
#[test]
fn corners_agree_with_linear_programmes() {
    let mut die = ChaCha8Rng::seed_from_u64(4);
    let mut region = narrow();
    region.limits.push(Limit {
        name: "wet".to_owned(),
        weights: vec![0.0, -0.4, 1.0, 0.2],
        low: f64::NEG_INFINITY,
        high: 0.025,
    });
    region.limits.push(Limit {
        name: "small".to_owned(),
        weights: vec![0.0, 1.0, 1.0, 1.0],
        low: f64::NEG_INFINITY,
        high: 0.2,
    });
    let corners = vertices(&region).unwrap();
    let directions: Vec<Vec<f64>> = (0..40)
        .map(|_| (0..4).map(|_| die.random::<f64>() - 0.5).collect())
        .collect();
    let bounds: Vec<(f64, f64)> = region
        .components
        .iter()
        .map(|one| (one.low, one.high))
        .collect();
    let limits: Vec<_> = region
        .limits
        .iter()
        .map(|one| one.weights.clone())
        .collect();
    let highs: Vec<f64> = region.limits.iter().map(|one| one.high).collect();
    let asked = directions.iter().map(|direction| {
        json!({ "direction": direction, "bounds": bounds, "limits": limits, "highs": highs })
    });
    let asked: Vec<Value> = asked.collect();
    let Some(theirs) = elsewhere("corners", json!({ "corners": asked })) else {
        return;
    };
    for (at, direction) in directions.iter().enumerate() {
        let along = |mix: &Vec<f64>| mix.iter().zip(direction).map(|(a, b)| a * b).sum::<f64>();
        let least = corners.iter().map(along).fold(f64::INFINITY, f64::min);
        let most = corners.iter().map(along).fold(f64::NEG_INFINITY, f64::max);
        assert_near("ends", &[least, most], &theirs["corners"][at], 1e-7);
    }
}
