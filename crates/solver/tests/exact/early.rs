//! Coarse cells where metal meets sand: what the first moments of contact cost, and what is left of
//! it where half a cell of sand counts less at first.
//!
//! The errors of a wall, 6.0, 1.4 and 0.6 % with two, four and six cells across it, and 2.1, 0.4
//! and 0.2 % corrected, are those of programs that share no line with this one; they hang on the
//! cells across the wall alone.

use solver::case::Case;
use solver::grid::Grid;
use solver::material::{Material, Phase};
use solver::run::{End, Mode, Outcome, Wish, solve};

use crate::column::{assert_near, even};
use crate::materials::metal;

const SAND: Phase = Phase {
    j_m3k: 1.7e6,
    w_mk: 0.6,
};

/// Cells across a wall, its error in per cent without and with the correction.
const ERRORS: [(usize, f64, f64); 3] = [(2, 6.0, 2.1), (4, 1.4, 0.4), (6, 0.6, 0.2)];

#[test]
fn a_wall_of_few_cells_freezes_in_nearly_its_time() {
    let fine_s = last_s(&wall(64), Mode::Multirate, false);
    for (across, plain, corrected) in ERRORS {
        for mode in [Mode::Reference, Mode::Multirate] {
            let error = |early| 100.0 * (last_s(&wall(across), mode, early) / fine_s - 1.0);
            let what = format!("{mode:?}, {across} cells");
            assert_near(&what, error(false), plain, 0.1);
            // As good or better: the correction is taken as its mean over each step here.
            let left = error(true);
            assert!(left.abs() <= corrected, "{what}: {left} %");
        }
    }
}

/// Sand whose face jumps to a temperature has taken `2 b (T - T0) sqrt(t / pi)` after a time, with
/// `b` the root of conductivity times heat capacity: so it has from metal whose temperature hardly
/// falls, before heat has crossed half of its first cell of 8 mm, which takes 14 s.
#[test]
fn sand_takes_its_heat_from_the_first_moment_on() {
    let mut case = wall(4);
    case.materials[1] = Material::plain(
        "endless",
        Phase {
            j_m3k: 1e11,
            w_mk: 1e4,
        },
    );
    // Something has to freeze for a face to be one of those; it never gets there.
    case.materials[1].knots[0].solid = 1.0;
    case.materials[1].knots[1].solid = 0.5;
    let b = (SAND.j_m3k * SAND.w_mk).sqrt();
    for s in [0.5, 2.0, 6.0] {
        let exact_j_m2 = 2.0 * b * 675.0 * (s / std::f64::consts::PI).sqrt();
        let taken = |early| {
            let outcome = run(&case, Mode::Multirate, End::At { s }, early);
            let sand = (0..case.cells.len()).filter(|&cell| case.cells[cell] == 0);
            let j_m2 = |cell: usize| {
                let risen_k = f64::from(outcome.last.celsius[cell]) - 25.0;
                SAND.j_m3k * risen_k * case.grid.width(0, cell)
            };
            sand.map(j_m2).sum::<f64>() / exact_j_m2
        };
        let (plain, corrected) = (taken(false), taken(true));
        assert!(
            (corrected - 1.0).abs() < 0.1,
            "{corrected} of it after {s} s"
        );
        assert!(
            plain < 0.35,
            "{plain} of it after {s} s: nothing to correct"
        );
    }
}

fn last_s(case: &Case, mode: Mode, early: bool) -> f64 {
    let outcome = run(case, mode, End::Solid { latest_s: 4000.0 }, early);
    outcome.freezing.last_s().expect("it froze")
}

fn run(case: &Case, mode: Mode, end: End, early_contact: bool) -> Outcome {
    let wish = Wish {
        mode,
        longest_step_s: Some(0.25),
        early_contact,
        ..Wish::until(end)
    };
    let outcome = solve(case, &wish, &mut |_| true).expect("a sound case");
    assert!(outcome.balance.drift < 1e-5, "{:?}", outcome.balance);
    outcome
}

/// Half a wall of 32 mm behind 400 mm of sand, with cells across the whole of it.
fn wall(across: usize) -> Case {
    let cell_m = 0.032 / across as f64;
    let sand = (0.4 / cell_m).round() as usize;
    let grid = Grid {
        edges_m: [
            even(sand + across / 2, cell_m),
            vec![0.0, 0.01],
            vec![0.0, 0.01],
        ],
    };
    let mut case = Case::filled(grid, Material::plain("sand", SAND), 25.0);
    case.materials.push(metal());
    case.cells[sand..].fill(1);
    case.start_c[sand..].fill(700.0);
    case
}
