//! What has to hold of any case: heat is kept, nothing gets hotter than the hottest, mirrored cases
//! have mirrored answers, and the number of threads changes nothing.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

mod any_case;
#[path = "block/materials.rs"]
mod materials;

use any_case::{cases, fillings};
use proptest::prelude::{prop_assert, prop_assert_eq, proptest};
use proptest::test_runner::Config;
use solver::case::{Case, Condition, Contact, Partial};
use solver::grid::Grid;
use solver::run::{End, Mode, Outcome, Wish, solve};

fn run(case: &Case, mode: Mode, s: f64) -> Outcome {
    let wish = Wish {
        mode,
        ..Wish::until(End::At { s })
    };
    solve(case, &wish, &mut |_| true).expect("a sound case")
}

proptest! {
    #![proptest_config(Config { cases: 48, failure_persistence: None, ..Config::default() })]

    #[test]
    fn heat_is_kept(case in cases()) {
        for (mode, drift) in [(Mode::Reference, 1e-12), (Mode::Multirate, 2e-6)] {
            let outcome = run(&case, mode, 3.0);
            prop_assert!(outcome.balance.drift < drift, "{mode:?} {:?}", outcome.balance);
            prop_assert_eq!(outcome.balance.through_j, 0.0);
        }
    }

    #[test]
    fn no_cell_leaves_the_extremes(case in cases(), s in 0.05_f64..40.0) {
        for mode in [Mode::Reference, Mode::Multirate] {
            let outcome = run(&case, mode, s);
            prop_assert!(outcome.beyond_k <= 0.001, "{mode:?}: {}", outcome.beyond_k);
            for (cell, &celsius) in outcome.last.celsius.iter().enumerate() {
                let within = (24.999..=700.001).contains(&celsius);
                prop_assert!(within, "{mode:?}: cell {cell} at {celsius}");
            }
        }
    }

    #[test]
    fn what_leaves_through_the_faces_is_counted(case in cases(), face in 0_usize..6) {
        let mut case = case;
        let air = Condition::Exchange { w_m2k: 20.0, celsius: 25.0, emissivity: 0.3 };
        case.voids = vec![air];
        case.faces[face] = Condition::Held { celsius: 25.0 };
        case.faces[(face + 1) % 6] = air;
        case.faces[(face + 2) % 6] = Condition::Flux { w_m2: 1e4 };
        for (mode, drift) in [(Mode::Reference, 1e-12), (Mode::Multirate, 1e-5)] {
            let outcome = run(&case, mode, 3.0);
            prop_assert!(outcome.balance.drift < drift, "{mode:?} {:?}", outcome.balance);
        }
    }

    #[test]
    fn a_mirrored_case_has_a_mirrored_answer(case in cases(), axis in 0_usize..3) {
        let mut case = case;
        case.partial = None;
        let twin = mirrored(&case, axis);
        for (mode, within) in [(Mode::Reference, 1e-3), (Mode::Multirate, 0.05)] {
            let (one, other) = (run(&case, mode, 1.0), run(&twin, mode, 1.0));
            for cell in 0..case.cells.len() {
                let image = image(&case.grid, axis, cell);
                let off = (one.last.celsius[cell] - other.last.celsius[image]).abs();
                prop_assert!(off < within, "{mode:?}: {off} K");
            }
        }
    }

    #[test]
    fn both_schemes_agree(case in cases()) {
        let short = |mode| {
            let longest_step_s = Some(0.002);
            let wish = Wish { mode, longest_step_s, ..Wish::until(End::At { s: 3.0 }) };
            solve(&case, &wish, &mut |_| true).expect("a sound case")
        };
        let (plain, quick) = (short(Mode::Reference), short(Mode::Multirate));
        let span_k = 675.0;
        for (one, other) in plain.last.celsius.iter().zip(&quick.last.celsius) {
            prop_assert!((one - other).abs() < 0.003 * span_k, "{one} and {other}");
        }
    }
}

#[test]
fn threads_change_nothing() {
    let sand = fillings().remove(0);
    let mut case = Case::filled(Grid::uniform([40; 3], 0.004), sand, 25.0);
    case.materials = fillings();
    for cell in 0..case.cells.len() {
        let [x, y, z] = case.grid.place(cell);
        if (8..32).contains(&x) && (8..32).contains(&y) && (4..36).contains(&z) {
            case.cells[cell] = 1;
            case.start_c[cell] = 700.0;
        }
    }
    let with = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        pool.expect("threads")
            .install(|| run(&case, Mode::Multirate, 40.0))
    };
    let (one, two) = (with(1), with(3));
    assert_eq!(one.last, two.last);
    assert_eq!(one.work, two.work);
}

/// Rows so long that a plane is swept in several belts, over the rows as they stood before: what
/// comes out is what plain steps of the same length say.
#[test]
fn long_rows_are_swept_as_plain_steps_go() {
    let sand = fillings().remove(0);
    let mut case = Case::filled(Grid::uniform([6000, 20, 4], 0.004), sand, 25.0);
    case.materials = fillings();
    for cell in 0..case.cells.len() {
        // Uneven all over, so that every neighbour tells.
        case.start_c[cell] = 20.0 + (cell * 7919 % 997) as f32 / 10.0;
        if case.grid.place(cell)[1] >= 13 {
            case.cells[cell] = 2;
        }
    }
    let ran = |mode| {
        let wish = Wish {
            mode,
            longest_step_s: Some(1.0),
            ..Wish::until(End::At { s: 12.0 })
        };
        solve(&case, &wish, &mut |_| true).expect("a sound case")
    };
    let plain = ran(Mode::Reference);
    assert_eq!(plain.work.steps, 12);
    for threads in [1, 3] {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        let swept = pool.expect("threads").install(|| ran(Mode::Multirate));
        assert_eq!((swept.work.steps, swept.work.stages), (12, 0));
        for (one, other) in plain.last.celsius.iter().zip(&swept.last.celsius) {
            assert!((one - other).abs() < 1e-3, "{one} and {other}");
        }
    }
}

fn mirrored(case: &Case, axis: usize) -> Case {
    let mut twin = case.clone();
    let end_m = case.grid.edges_m[axis].last().copied().expect("edges");
    twin.grid.edges_m[axis] = case.grid.edges_m[axis]
        .iter()
        .rev()
        .map(|edge| end_m - edge)
        .collect();
    for cell in 0..case.cells.len() {
        let image = image(&case.grid, axis, cell);
        twin.cells[image] = case.cells[cell];
        twin.start_c[image] = case.start_c[cell];
    }
    twin
}

fn image(grid: &Grid, axis: usize, cell: usize) -> usize {
    let mut place = grid.place(cell);
    place[axis] = grid.counts()[axis] - 1 - place[axis];
    grid.index(place)
}

/// A millimetre of sand beside a millimetre of metal settles in a second or two: a first step that
/// is longer turns what is between them into its opposite, 58 K beyond the metal once.
#[test]
fn two_small_cells_settle_without_turning_over() {
    let edges_m = [vec![0.0, 1e-3, 2.17e-3], vec![0.0, 1e-3], vec![0.0, 1e-3]];
    let mut case = box_of(edges_m, &[1, 0]);
    case.contacts = vec![Contact {
        between: [1, 0],
        w_m2k: 800.0,
    }];
    case.partial = Some(Partial {
        filled: vec![1.0, 0.656],
        open: [vec![1.0, 1.684], vec![1.0; 2], vec![1.0; 2]],
    });
    assert!(run(&case, Mode::Multirate, 3.0).beyond_k < 0.001);
    follows_plain_steps(&case, 12.0);
}

/// A layer of iron a millimetre thick touches metal, so it goes in stages, and lies between two
/// layers as thick as it and more, which do not: what passes between them once a step carried it
/// past them, ever further.
#[test]
fn a_thin_layer_between_thick_ones_stays_between_them() {
    let edges_m = [
        vec![0.0, 3.0e-3, 7.0e-3, 8.05e-3],
        vec![0.0, 1.163e-3],
        vec![0.0, 1.6e-3, 2.65e-3, 3.85e-3],
    ];
    follows_plain_steps(&box_of(edges_m, &[1, 3, 3, 4, 1, 3, 4, 4, 3]), 3.0);
}

/// The same where it takes a quarter of a minute to show.
#[test]
fn cells_of_many_sizes_stay_between_their_neighbours() {
    let edges_m = [
        vec![0.0, 1.727e-3, 2.94e-3, 4.127e-3],
        vec![0.0, 2.945e-3, 4.194e-3, 7.959e-3, 10.345e-3],
        vec![0.0, 1.4e-3, 4.494e-3],
    ];
    let cells = [
        1, 3, 2, 4, 0, 2, 4, 0, 3, 1, 3, 3, 0, 2, 0, 0, 3, 3, 3, 4, 3, 4, 3, 3,
    ];
    follows_plain_steps(&box_of(edges_m, &cells), 40.0);
}

/// Nothing leaves the extremes, and what comes out is what plain steps say, within a fiftieth of
/// all that was between hot and cold: steps are as long as they come.
fn follows_plain_steps(case: &Case, s: f64) {
    let (plain, quick) = (run(case, Mode::Reference, s), run(case, Mode::Multirate, s));
    assert!(quick.beyond_k < 0.001, "{}", quick.beyond_k);
    for (one, other) in plain.last.celsius.iter().zip(&quick.last.celsius) {
        assert!((one - other).abs() < 0.02 * 675.0, "{one} and {other}");
    }
}

/// A box of the materials of these tests, metal at 700 °C and all else at 25 °C.
fn box_of(edges_m: [Vec<f64>; 3], cells: &[u8]) -> Case {
    let mut case = Case::filled(Grid { edges_m }, fillings().remove(0), 25.0);
    case.materials = fillings();
    case.voids = vec![Condition::Insulated];
    case.cells = cells.to_vec();
    let starts = cells
        .iter()
        .map(|&number| if number == 1 { 700.0 } else { 25.0 });
    case.start_c = starts.collect();
    case
}
