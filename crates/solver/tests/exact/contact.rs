//! Metal against a half-space of sand: the face between them keeps one temperature (Schwarz).

use solver::case::{Case, Contact};
use solver::grid::Grid;
use solver::material::{Freezes, Material, Phase};
use solver::run::{Mode, Moment};

use crate::column::{assert_near, celsius_at, front_errors, moments, order, solid_m};

/// A problem with its answer.
struct Against {
    iron: bool,
    start_c: f64,
    face_c: f64,
    /// Front at 30 s and at 120 s, mm.
    fronts_mm: [f64; 2],
    /// Temperature in the sand after 120 s at some ways from the face, mm.
    sand_c: &'static [(f64, f64)],
}

const S1: Against = Against {
    iron: false,
    start_c: 660.0,
    face_c: 658.514_439_702,
    fronts_mm: [4.378_775_781_46, 8.757_551_562_91],
    sand_c: &[
        (5.0, 414.274_122_704),
        (10.0, 223.756_505_918),
        (20.0, 52.825_781_121_8),
    ],
};

const S2: Against = Against {
    iron: false,
    start_c: 680.0,
    face_c: 659.232_401_993,
    fronts_mm: [2.258_927_737_17, 4.517_855_474_33],
    sand_c: &[],
};

const S3: Against = Against {
    iron: true,
    start_c: 1500.0,
    face_c: 1_465.808_129_93,
    fronts_mm: [5.540_678_069_89, 11.081_356_138_1],
    sand_c: &[
        (5.0, 961.059_583_692),
        (10.0, 548.957_123_912),
        (20.0, 124.762_769_493),
    ],
};

#[test]
fn aluminium_without_superheat() {
    holds(&S1);
}

#[test]
fn aluminium_with_superheat() {
    holds(&S2);
}

#[test]
fn iron_without_superheat() {
    holds(&S3);
}

/// With 60 K of superheat the face stays above the melting point (675.998920581 °C): nothing may
/// freeze, and it is the trap for a scheme that lets it.
#[test]
fn too_much_superheat_freezes_nothing() {
    let case = case(
        &Against {
            start_c: 720.0,
            ..S1
        },
        50,
    );
    let (moments, _) = moments(&case, Mode::Multirate, &[30.0, 120.0], 0.3);
    for moment in &moments {
        assert_eq!(solid_m(&case, METAL, moment), 0.0);
    }
    assert_near(
        "face",
        first_metal_c(&case, &moments[1]),
        675.998_920_581,
        1.0,
    );
}

/// Between equal half-spaces that start apart, a contact lets heat over at the mean of both, and at
/// once as much as its conductance times their difference: `q = h dT exp(a^2 t) erfc(a sqrt t)`
/// with `a = 2 h / sqrt(k rho c)` (the half-space with a film, Carslaw and Jaeger, from memory).
/// The heat that has passed is `h dT / a^2 (exp(a^2 t) erfc(a sqrt t) - 1 + 2 a sqrt(t / pi))`.
#[test]
fn a_contact_lets_over_what_it_should() {
    let (w_m2k, s) = (500.0, 60.0_f64);
    let phase = Phase {
        j_m3k: 2e6,
        w_mk: 2.0,
    };
    let edges = (0..=400).map(|at| f64::from(at) * 0.25e-3).collect();
    let grid = Grid {
        edges_m: [edges, vec![0.0, 0.01], vec![0.0, 0.01]],
    };
    let mut case = Case::filled(grid, Material::plain("hot", phase), 100.0);
    case.materials.push(Material::plain("cold", phase));
    case.cells[200..].fill(1);
    case.start_c[200..].fill(0.0);
    case.contacts.push(Contact {
        between: [0, 1],
        w_m2k,
    });
    let a = 2.0 * w_m2k / (phase.j_m3k * phase.w_mk).sqrt();
    // exp(x²) erfc(x) at x = a sqrt(60) = 3.872983346: 0.1413153 (its series of inverse powers).
    let x = a * s.sqrt();
    let tail = scaled_erfc(x);
    let root = (s / std::f64::consts::PI).sqrt();
    let passed_j_m2 = w_m2k * 100.0 / (a * a) * (tail - 1.0 + 2.0 * a * root);
    for mode in [Mode::Reference, Mode::Multirate] {
        let (moments, _) = moments(&case, mode, &[s], 0.05);
        let gained: f64 = moments[0].j_m3[200..]
            .iter()
            .map(|heat| f64::from(*heat) * 0.25e-3)
            .sum();
        assert_near(
            &format!("{mode:?}, heat over"),
            gained,
            passed_j_m2,
            0.005 * passed_j_m2,
        );
    }
}

/// exp(x²) erfc(x) by its continued fraction, good to ten digits above 2.
fn scaled_erfc(x: f64) -> f64 {
    let tail = (1..200)
        .rev()
        .fold(0.0, |tail, n| 0.5 * f64::from(n) / (x + tail));
    1.0 / ((x + tail) * std::f64::consts::PI.sqrt())
}

/// Fronts within 1 % and temperatures within 0.5 % of their range at 50 cells to the last front.
fn holds(against: &Against) {
    for mode in [Mode::Multirate, Mode::Reference] {
        // A reference run takes a million steps where the front goes least far.
        if mode == Mode::Multirate || against.iron {
            check(against, mode);
        }
    }
    let errors = [6, 12, 24].map(|cells| {
        let case = case(against, cells);
        front_errors(120.0, |times| {
            let (moments, _) = moments(&case, Mode::Reference, times, 120.0);
            let fronts = moments
                .iter()
                .map(|moment| 1e3 * solid_m(&case, METAL, moment));
            let exact = times
                .iter()
                .map(|s| against.fronts_mm[1] * (s / 120.0).sqrt());
            fronts
                .zip(exact)
                .map(|(front, exact)| front - exact)
                .collect()
        })
    });
    let order = order(&errors);
    assert!(order >= 0.9, "order {order} from {errors:?}");
}

fn check(against: &Against, mode: Mode) {
    let case = case(against, 50);
    let (moments, outcome) = moments(&case, mode, &[30.0, 120.0], 0.05);
    for (moment, front_mm) in moments.iter().zip(against.fronts_mm) {
        let got = 1e3 * solid_m(&case, METAL, moment);
        assert_near(
            &format!("{mode:?}, front at {} s", moment.time_s),
            got,
            front_mm,
            0.01 * front_mm,
        );
    }
    let range_k = against.start_c - 25.0;
    let near = |mm: f64, celsius: f64| {
        let got = celsius_at(&case, &moments[1], FACE_M - 1e-3 * mm);
        assert_near(
            &format!("{mode:?}, sand at {mm} mm"),
            got,
            celsius,
            0.005 * range_k,
        );
    };
    let face_c = first_metal_c(&case, &moments[1]);
    assert_near(
        &format!("{mode:?}, face"),
        face_c,
        against.face_c,
        0.005 * range_k,
    );
    against
        .sand_c
        .iter()
        .for_each(|&(mm, celsius)| near(mm, celsius));
    assert!(outcome.balance.drift < 1e-5, "{:?}", outcome.balance);
}

/// Temperature of the metal beside the face, which hardly falls within it, °C.
fn first_metal_c(case: &Case, moment: &Moment) -> f64 {
    let first = case.cells.iter().position(|&number| number == METAL);
    f64::from(moment.celsius[first.expect("there is metal")])
}

const METAL: u8 = 1;

/// Where sand ends and metal begins.
const FACE_M: f64 = 0.1;

/// Sand up to the face, metal beyond; cells widen away from the region that matters.
fn case(against: &Against, cells_to_front: usize) -> Case {
    let phase = |density: f64, j_kgk: f64, w_mk| Phase {
        j_m3k: density * j_kgk,
        w_mk,
    };
    let (sand, solid, liquid, latent_j_m3, melts_c) = match against.iron {
        true => {
            let iron = phase(7200.0, 750.0, 30.0);
            (
                phase(1550.0, 1150.0, 0.9),
                iron,
                iron,
                7200.0 * 2.7e5,
                1500.0,
            )
        }
        false => {
            let (solid, liquid) = (phase(2500.0, 1000.0, 210.0), phase(2500.0, 1100.0, 95.0));
            (
                phase(1550.0, 1100.0, 0.7),
                solid,
                liquid,
                2500.0 * 3.9e5,
                660.0,
            )
        }
    };
    let freezes = Freezes {
        solid,
        liquid,
        latent_j_m3,
        solidus_c: melts_c,
        liquidus_c: melts_c,
    };
    let cell_m = 1e-3 * against.fronts_mm[1] / cells_to_front as f64;
    let to_sand = widening(cell_m, 2 * cells_to_front, FACE_M);
    let to_metal = widening(cell_m, 2 * cells_to_front, 0.6);
    let mut edges: Vec<f64> = to_sand.iter().rev().map(|way| FACE_M - way).collect();
    let sand_cells = edges.len() - 1;
    edges.extend(to_metal[1..].iter().map(|way| FACE_M + way));
    let grid = Grid {
        edges_m: [edges, vec![0.0, 0.01], vec![0.0, 0.01]],
    };
    let mut case = Case::filled(grid, Material::plain("sand", sand), 25.0);
    case.materials.push(Material::freezing("metal", freezes));
    case.cells[sand_cells..].fill(METAL);
    case.start_c[sand_cells..].fill(against.start_c as f32);
    case
}

/// Ways from the face: even cells first, then each a fiftieth wider than the one before.
fn widening(cell_m: f64, even: usize, reach_m: f64) -> Vec<f64> {
    let mut ways = vec![0.0];
    let mut width = cell_m;
    while ways[ways.len() - 1] < reach_m {
        if ways.len() > even {
            width *= 1.02;
        }
        ways.push(ways[ways.len() - 1] + width);
    }
    ways
}
