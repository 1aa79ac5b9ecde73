//! A column of cells along x, and what is read off it.

use solver::case::{Case, Condition};
use solver::grid::Grid;
use solver::material::Material;
use solver::run::{End, Mode, Moment, Outcome, Wish, solve};

/// A column of one material at one temperature, its low end held at another.
pub fn column(edges_m: Vec<f64>, material: Material, start_c: f64, wall_c: f64) -> Case {
    let grid = Grid {
        edges_m: [edges_m, vec![0.0, 0.01], vec![0.0, 0.01]],
    };
    let mut case = Case::filled(grid, material, start_c as f32);
    case.faces[0] = Condition::Held { celsius: wall_c };
    case
}

/// Even edges.
pub fn even(cells: usize, cell_m: f64) -> Vec<f64> {
    (0..=cells).map(|at| at as f64 * cell_m).collect()
}

/// Runs until the last of some moments and gives all of them.
pub fn moments(
    case: &Case,
    mode: Mode,
    moments_s: &[f64],
    longest_step_s: f64,
) -> (Vec<Moment>, Outcome) {
    let (last_s, before) = moments_s.split_last().expect("a moment");
    let wish = Wish {
        mode,
        moments_s: before.to_vec(),
        longest_step_s: Some(longest_step_s),
        ..Wish::until(End::At { s: *last_s })
    };
    let outcome = solve(case, &wish, &mut |_| true).expect("a sound case");
    let mut all = outcome.moments.clone();
    all.push(outcome.last.clone());
    (all, outcome)
}

/// Length that is solid along the column, m, of the cells of one material.
pub fn solid_m(case: &Case, material: u8, moment: &Moment) -> f64 {
    let cells = (0..case.cells.len()).filter(|&cell| case.cells[cell] == material);
    cells
        .map(|cell| {
            let heat = f64::from(moment.j_m3[cell]);
            let solid = case.materials[usize::from(material)].at(heat).solid;
            solid * case.grid.width(0, cell)
        })
        .sum()
}

/// Temperature at a place along the column, °C, straight between the middles of cells.
pub fn celsius_at(case: &Case, moment: &Moment, x_m: f64) -> f64 {
    let middle = |cell: usize| case.grid.middle(0, cell);
    let high = (1..case.cells.len() - 1).find(|&cell| middle(cell) >= x_m);
    let high = high.unwrap_or(case.cells.len() - 1);
    let (low_m, high_m) = (middle(high - 1), middle(high));
    let (low, high) = (
        f64::from(moment.celsius[high - 1]),
        f64::from(moment.celsius[high]),
    );
    low + (x_m - low_m) / (high_m - low_m) * (high - low)
}

/// Asserts that one figure is near another.
pub fn assert_near(what: &str, got: f64, expected: f64, within: f64) {
    let off = got - expected;
    assert!(
        off.abs() <= within,
        "{what}: {got} for {expected}, off by {off:.3e} over {within:.1e}"
    );
}

/// Root of the mean square of errors at forty moments in the second half of a run: at a single one,
/// where in its cell a sharp front stands says more than the width of the cells.
pub fn front_errors(last_s: f64, errors: impl Fn(&[f64]) -> Vec<f64>) -> f64 {
    let times: Vec<f64> = (1..=40)
        .map(|at| last_s * (0.5 + f64::from(at) / 80.0))
        .collect();
    let errors = errors(&times);
    let squares: f64 = errors.iter().map(|error| error * error).sum();
    (squares / errors.len() as f64).sqrt()
}

/// The order with which errors fall as cells halve, from the first to the last.
pub fn order(errors: &[f64]) -> f64 {
    let halvings = (errors.len() - 1) as f64;
    (errors[0] / errors[errors.len() - 1]).abs().log2() / halvings
}
