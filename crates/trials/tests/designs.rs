//! Plans of batches: the points they are chosen from, and how much they teach.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use nalgebra::DMatrix;
use trials::lattice::{centroid, grid, lattice};
use trials::model::{Bend, Blending, Model, mixture, on_day, surface, with_days};
use trials::optimal::{
    OptimalError, chosen, chosen_beside, efficiency, largest_variance, least_efficiency,
};
use trials::plan::{Extent, PlanError, plan};
use trials::region::{Component, Limit, Region, RegionError, SharesError, shares, unattainable};
use trials::settings::{central_composite, half_of_two_level, three_level, two_level};
use trials::vertices::{landmarks, vertices};

fn region(bounds: &[(f64, f64)]) -> Region {
    let component = |(at, (low, high)): (usize, &(f64, f64))| Component {
        name: format!("x{}", at + 1),
        low: *low,
        high: *high,
    };
    Region {
        components: bounds.iter().enumerate().map(component).collect(),
        limits: Vec::new(),
    }
}

fn assert_points(found: &[Vec<f64>], wanted: &[[f64; 3]]) {
    assert_eq!(found.len(), wanted.len(), "{found:?}");
    for (found, wanted) in found.iter().zip(wanted) {
        let near = found.iter().zip(wanted).all(|(a, b)| (a - b).abs() < 1e-6);
        assert!(near, "{found:?} for {wanted:?}");
    }
}

/// Lawson, Design and Analysis of Experiments with R; man/Xvert.Rd of the R package mixexp.
#[test]
fn corners_of_three_components() {
    let found = vertices(&region(&[(0.0, 0.8), (0.1, 0.95), (0.05, 0.5)])).unwrap();
    let wanted = [
        [0.0, 0.5, 0.5],
        [0.0, 0.95, 0.05],
        [0.4, 0.1, 0.5],
        [0.8, 0.1, 0.1],
        [0.8, 0.15, 0.05],
    ];
    assert_points(&found, &wanted);
}

/// Snee and Marquardt, Technometrics 18 (1976) 19: 182 corners (from memory; bounds in
/// man/Xvert.Rd of mixexp).
#[test]
fn corners_of_eight_components() {
    let bounds = [
        (0.1, 0.45),
        (0.05, 0.5),
        (0.0, 0.1),
        (0.0, 0.1),
        (0.1, 0.6),
        (0.05, 0.2),
        (0.0, 0.05),
        (0.0, 0.05),
    ];
    assert_eq!(vertices(&region(&bounds)).unwrap().len(), 182);
}

/// McLean and Anderson, Technometrics 8 (1966) 447: the flare has eight corners and six faces, and
/// the middles of the faces are the ones they ran (their data, from memory).
#[test]
fn faces_of_the_flare() {
    let flare = region(&[(0.4, 0.6), (0.1, 0.5), (0.1, 0.5), (0.03, 0.08)]);
    let found = landmarks(&flare).unwrap();
    assert_eq!(found.vertices.len(), 8);
    let wanted = [
        [0.5, 0.1, 0.345, 0.055],
        [0.5, 0.345, 0.1, 0.055],
        [0.4, 0.2725, 0.2725, 0.055],
        [0.6, 0.1725, 0.1725, 0.055],
        [0.5, 0.235, 0.235, 0.03],
        [0.5, 0.21, 0.21, 0.08],
    ];
    assert_eq!(found.faces.len(), 6);
    for face in wanted {
        let near = |one: &Vec<f64>| one.iter().zip(face).all(|(a, b)| (a - b).abs() < 1e-9);
        assert!(found.faces.iter().any(near), "{face:?}");
    }
    // A body with eight corners and six faces has twelve edges (Euler).
    assert_eq!(found.edges.len(), 12);
    assert_eq!(found.centre.len(), 4);
    assert!(found.all().iter().all(|mix| flare.holds(mix)));
}

/// Limits cut a triangle down, worked out by hand.
#[test]
fn a_limit_cuts_a_corner() {
    let mut whole = Region::whole(&["x1", "x2", "x3"]);
    whole
        .limits
        .push(limit("both", [1.0, 1.0, 0.0], f64::NEG_INFINITY, 0.8));
    let found = vertices(&whole).unwrap();
    let wanted = [[0.0, 0.0, 1.0], [0.0, 0.8, 0.2], [0.8, 0.0, 0.2]];
    assert_points(&found, &wanted);
    whole.limits.push(limit(
        "less of the first",
        [1.0, -1.0, 0.0],
        f64::NEG_INFINITY,
        0.0,
    ));
    let found = vertices(&whole).unwrap();
    assert_points(&found, &[[0.0, 0.0, 1.0], [0.0, 0.8, 0.2], [0.4, 0.4, 0.2]]);
    assert!(grid(&whole, 10).unwrap().iter().all(|mix| whole.holds(mix)));
}

fn limit(name: &str, weights: [f64; 3], low: f64, high: f64) -> Limit {
    Limit {
        name: name.to_owned(),
        weights: weights.to_vec(),
        low,
        high,
    }
}

#[test]
fn regions_that_are_none_are_told() {
    let said = |bounds: &[(f64, f64)]| vertices(&region(bounds)).unwrap_err().to_string();
    assert!(said(&[(0.6, 0.7), (0.5, 0.6)]).contains("add up to 110.00 %, more than the whole"));
    assert!(said(&[(0.0, 0.3), (0.0, 0.6)]).contains("add up to 90.00 %, less than the whole"));
    assert!(said(&[(0.4, 0.3), (0.0, 0.6)]).contains("x1 from 0.4 to 0.3 is no range"));
    assert!(said(&[(f64::NAN, 0.3), (0.0, 1.0)]).contains("no range of shares"));
    assert!(said(&[(0.0, 1.0)]).contains("two components at least"));
    assert!(said(&[(0.0, 1.0); 30]).contains("30 components are too many"));
    let mut none = Region::whole(&["x1", "x2", "x3"]);
    none.limits
        .push(limit("too much", [1.0, 1.0, 1.0], 1.5, 2.0));
    let names = vec!["too much".to_owned()];
    assert_eq!(vertices(&none).unwrap_err(), RegionError::NoMixMeets(names));
    none.limits[0].weights.pop();
    assert!(
        vertices(&none)
            .unwrap_err()
            .to_string()
            .contains("one weight for each of 3")
    );
}

#[test]
fn bounds_out_of_reach_are_told() {
    let found = unattainable(&region(&[(0.5, 0.9), (0.2, 0.4), (0.0, 0.1)]));
    let told: Vec<_> = found
        .iter()
        .map(|one| (one.name.as_str(), one.bound))
        .collect();
    assert_eq!(told, [("x1", 0.9)]);
    assert!((found[0].reachable - 0.8).abs() < 1e-12);
}

#[test]
fn percent_have_to_add_up() {
    let typed = shares(&[88.0, 7.0, 4.9]).unwrap();
    assert!((typed.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    let off = shares(&[100.0, 8.0, 4.0]).unwrap_err();
    assert_eq!(off, SharesError::DoNotAddUp { sum: 112.0 });
    assert!(off.to_string().contains("112.00 % instead of 100 %"));
    assert!(
        shares(&[103.0, -3.0])
            .unwrap_err()
            .to_string()
            .contains("part 2 is -3")
    );
    assert!(shares(&[]).is_err() && shares(&[f64::NAN, 100.0]).is_err());
}

/// NIST/SEMATECH e-Handbook 5.5.4.2, table 5.3: ten points for three components in three steps.
#[test]
fn sizes_of_even_patterns() {
    assert_eq!(lattice(3, 3).len(), 10);
    assert_eq!(lattice(4, 2).len(), 10);
    assert_eq!(centroid(3).len(), 7);
    assert_eq!(centroid(4).len(), 15);
    assert!(
        lattice(3, 3)
            .iter()
            .chain(&centroid(4))
            .all(|mix| { (mix.iter().sum::<f64>() - 1.0).abs() < 1e-12 })
    );
    assert_eq!(two_level(3).len(), 8);
    assert_eq!(half_of_two_level(4).len(), 8);
    assert_eq!(central_composite(3, 1.633, 6).len(), 20);
}

/// Kiefer 1961 (from memory): for the quadratic the six points of the lattice in equal parts are
/// the best plan of all, at which no variance exceeds the number of terms.
#[test]
fn the_lattice_is_best_for_the_quadratic() {
    let model = mixture(&["a", "b", "c"], Blending::Quadratic);
    let candidates = lattice(3, 20);
    let six = lattice(3, 2);
    assert!((largest_variance(&model, &six, &candidates) - 6.0).abs() < 1e-6);
    assert!((least_efficiency(&model, &six, &candidates) - 1.0).abs() < 1e-6);
    for seed in 0..20 {
        let found = chosen(&model, &candidates, 6, seed).unwrap();
        let found: Vec<_> = found.iter().map(|at| candidates[*at].clone()).collect();
        assert!(
            (efficiency(&model, &found, &six) - 1.0).abs() < 1e-9,
            "{found:?}"
        );
    }
}

/// The largest determinants of matrices of −1 and 1 (Hadamard's problem; OEIS A003433, from
/// memory): 48, 160, 576 and 4096 for five to eight rows. A plan of so many runs for a
/// plane of one setting less reaches its square and no more.
#[test]
fn two_level_plans_reach_the_largest_determinants() {
    let names = ["a", "b", "c", "d", "e", "f"];
    for (runs, largest) in [(5, 48.0_f64), (6, 160.0), (7, 576.0)] {
        let model = surface(&names[..runs - 1], Bend::Flat);
        let candidates = two_level(runs - 1);
        let found = chosen(&model, &candidates, runs, 1).unwrap();
        let determinant = determinant(&model, &candidates, &found);
        let share = (determinant / largest.powi(2)).powf(1.0 / runs as f64);
        assert!((share - 1.0).abs() < 1e-9, "{runs} runs: {share}");
    }
    // Twelve runs of five settings: no plan exceeds 12⁶ (Hadamard's bound), and one reaches it.
    let model = surface(&names[..5], Bend::Flat);
    let candidates = two_level(5);
    let found = chosen(&model, &candidates, 12, 1).unwrap();
    let share = determinant(&model, &candidates, &found) / 12f64.powi(6);
    assert!((share - 1.0).abs() < 1e-9, "{share}");
}

/// Two settings, squares and all: the best weights over the nine points are 0.1458 at each corner,
/// 0.0802 at each side and 0.0962 in the middle (Farrell, Kiefer and Walbran 1965, from memory).
/// No plan of whole runs exceeds them; ours of 24 stays within two per cent.
#[test]
fn a_plan_for_squares_comes_near_the_best_weights() {
    let model = surface(&["x", "y"], Bend::Bent);
    let candidates = three_level(2);
    let weight = |point: &Vec<f64>| match point.iter().filter(|one| **one == 0.0).count() {
        0 => 1458,
        1 => 802,
        _ => 962,
    };
    let best: Vec<_> = candidates
        .iter()
        .flat_map(|point| vec![point.clone(); weight(point)])
        .collect();
    assert!((largest_variance(&model, &best, &candidates) - 6.0).abs() < 0.01);
    for (runs, wanted) in [(9, 0.97), (24, 0.98)] {
        let found = chosen(&model, &candidates, runs, 3).unwrap();
        let found: Vec<_> = found.iter().map(|at| candidates[*at].clone()).collect();
        let share = efficiency(&model, &found, &best);
        assert!(wanted < share && share < 1.0 + 1e-6, "{runs} runs: {share}");
        assert!(least_efficiency(&model, &found, &candidates) <= share + 1e-9);
    }
}

fn determinant(model: &Model, candidates: &[Vec<f64>], chosen: &[usize]) -> f64 {
    let rows = chosen.iter().flat_map(|at| model.row(&candidates[*at]));
    let whole = DMatrix::from_row_iterator(chosen.len(), model.terms.len(), rows);
    (whole.transpose() * whole).determinant()
}

/// Three small parts in much sand: the kind of region that is planned for at the bench.
fn narrow() -> Vec<Vec<f64>> {
    let bounds = [(0.78, 0.96), (0.03, 0.12), (0.02, 0.06), (0.01, 0.08)];
    landmarks(&region(&bounds)).unwrap().all()
}

#[test]
fn a_plan_repeats_spreads_and_draws_its_order() {
    let model = mixture(&["s", "c", "w", "m"], Blending::Quadratic);
    let extent = |seed| Extent {
        runs: 16,
        repeats: 3,
        days: 2,
        seed,
    };
    let found = plan(&model, &narrow(), extent(5)).unwrap();
    assert_eq!(found, plan(&model, &narrow(), extent(5)).unwrap());
    assert_ne!(found, plan(&model, &narrow(), extent(6)).unwrap());
    let on = |day: usize| found.batches.iter().filter(|one| one.day == day).count();
    assert_eq!((on(0), on(1)), (8, 8));
    let repeated = found.batches.iter().enumerate().filter(|(at, one)| {
        found.batches[..*at]
            .iter()
            .any(|other| other.point == one.point)
    });
    assert!(repeated.count() >= 3);
    assert!(found.least_efficiency > 0.5, "{}", found.least_efficiency);
    let rows = found
        .batches
        .iter()
        .map(|one| on_day(&one.point, one.day, 2));
    let rows: Vec<_> = rows.collect();
    assert_eq!(trials::rank::indistinct(&with_days(&model, 2), &rows), []);
}

/// Days hide least when each has the same runs: of a two-level plan in two days no effect is lost.
#[test]
fn days_hide_nothing_that_they_need_not() {
    let model = surface(&["a", "b", "c"], Bend::Twisted);
    for seed in 0..10 {
        let batches = trials::plan::spread(&model, two_level(3), 2, seed);
        let rows = batches.iter().map(|one| on_day(&one.point, one.day, 2));
        let rows: Vec<_> = rows.collect();
        let day = |row: &Vec<f64>| 2.0 * row[3] - 1.0;
        for term in &model.terms {
            let value = |row: &Vec<f64>| term.factors.iter().map(|at| row[*at]).product::<f64>();
            let shared: f64 = rows.iter().map(|row| value(row) * day(row)).sum();
            assert_eq!(shared, 0.0, "{}", model.name(term));
        }
    }
}

#[test]
fn plans_that_cannot_be_are_told() {
    let model = mixture(&["s", "c", "w", "m"], Blending::Quadratic);
    let said = |runs, repeats, days| {
        let extent = Extent {
            runs,
            repeats,
            days,
            seed: 1,
        };
        plan(&model, &narrow(), extent).unwrap_err()
    };
    let few = said(12, 3, 1).to_string();
    assert!(
        few.contains("9 different batches cannot teach 10 terms"),
        "{few}"
    );
    assert!(
        said(12, 12, 1)
            .to_string()
            .contains("12 cannot repeat another")
    );
    let days = 0;
    assert_eq!(said(12, 2, 0), PlanError::Days { runs: 12, days });
    let flat = vec![
        vec![0.5, 0.5, 0.0],
        vec![0.4, 0.6, 0.0],
        vec![0.3, 0.7, 0.0],
    ];
    let thin = chosen(&mixture(&["a", "b", "c"], Blending::Linear), &flat, 3, 1).unwrap_err();
    assert!(matches!(thin, OptimalError::NotToldApart(_)), "{thin}");
    let none = chosen(&mixture(&["a", "b", "c"], Blending::Linear), &[], 3, 1).unwrap_err();
    assert!(matches!(none, OptimalError::NotToldApart(_)), "{none}");
}

/// The promise: any plan above within a second. The largest is eight components with all their
/// pairs, 44 batches out of a thousand points.
#[test]
fn the_largest_plan_takes_less_than_a_second() {
    let bounds = [
        (0.1, 0.45),
        (0.05, 0.5),
        (0.0, 0.1),
        (0.0, 0.1),
        (0.1, 0.6),
        (0.05, 0.2),
        (0.0, 0.05),
        (0.0, 0.05),
    ];
    let model = mixture(
        &["1", "2", "3", "4", "5", "6", "7", "8"],
        Blending::Quadratic,
    );
    let extent = Extent {
        runs: 44,
        repeats: 6,
        days: 3,
        seed: 1,
    };
    let start = std::time::Instant::now();
    let points = landmarks(&region(&bounds)).unwrap().all();
    let found = plan(&model, &points, extent).unwrap();
    let seconds = start.elapsed().as_secs_f64();
    assert_eq!(found.batches.len(), 44);
    assert!(seconds < 1.0, "{} points, {seconds:.2} s", points.len());
}

/// Seven batches for two settings, nine where each bends: two repeats, and a surer model than as
/// many batches in which one setting is changed at a time and the middle is repeated.
#[test]
fn few_batches_teach_more_than_one_thing_at_a_time() {
    let levels = three_level(2);
    let alone = |runs: &[Vec<f64>]| {
        let on_axis = runs.iter().filter(|run| run[0] * run[1] == 0.0);
        on_axis
            .cloned()
            .chain(vec![vec![0.0; 2]; 2])
            .collect::<Vec<_>>()
    };
    let judged = |model: &Model, runs: usize, against: &[Vec<f64>]| {
        let extent = Extent {
            runs,
            repeats: 2,
            days: 1,
            seed: 2,
        };
        let found = plan(model, &levels, extent).unwrap().batches;
        let points: Vec<_> = found.into_iter().map(|one| one.point).collect();
        let mut different = points.clone();
        different.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
        different.dedup();
        assert!(different.len() + 2 <= runs, "{points:?}");
        efficiency(model, &points, against)
    };
    let flat = surface(&["x", "y"], Bend::Flat);
    assert_eq!(alone(&levels).len(), 7);
    let share = judged(&flat, 7, &alone(&levels));
    assert!(share > 1.5, "{share}");
    // Bent, but not twisted: one thing at a time cannot see a twist at all.
    let mut bent = surface(&["x", "y"], Bend::Bent);
    bent.terms.retain(|term| term.factors != [0, 1]);
    let nine = [alone(&levels), alone(&levels)[..2].to_vec()].concat();
    let share = judged(&bent, 9, &nine);
    assert!(share > 1.2, "{share}");
}

/// A second session beside a first: together they teach as much as both planned at once, nearly,
/// and more than the first twice over.
#[test]
fn a_second_session_fills_what_the_first_left_open() {
    let model = surface(&["a", "b"], Bend::Bent);
    let candidates = three_level(2);
    let points = |places: Vec<usize>| -> Vec<Vec<f64>> {
        places
            .into_iter()
            .map(|at| candidates[at].clone())
            .collect()
    };
    let first = points(chosen(&model, &candidates, 6, 1).unwrap());
    let second = points(chosen_beside(&model, &first, &candidates, 4, 1).unwrap());
    let at_once = points(chosen(&model, &candidates, 10, 1).unwrap());
    let both = [first.clone(), second].concat();
    let near = efficiency(&model, &both, &at_once);
    assert!((0.97..=1.0 + 1e-9).contains(&near), "{near}");
    let twice = [first.clone(), first[..4].to_vec()].concat();
    assert!(efficiency(&model, &both, &twice) > 1.0);
    let one_left_out = chosen_beside(&model, &first[..5], &candidates, 1, 1).unwrap();
    assert!(
        efficiency(
            &model,
            &[&first[..5], &points(one_left_out)].concat(),
            &first
        ) >= 1.0 - 1e-9
    );
}
