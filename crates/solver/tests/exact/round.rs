//! Slab, cylinder and ball of melt at its melting point, the wall held cold: stairs of cells.
//!
//! How long it takes until the front has gone nine tenths of the way to the middle, as a share of
//! R²/alpha, by a front-fixing scheme and extrapolation (good to 1e-3). An eighth is solved.

use solver::case::{Case, Condition};
use solver::grid::Grid;
use solver::material::{Freezes, Material, Phase};
use solver::run::{Mode, Moment};

use crate::column::moments;

/// Within 3 % at 20 cells to the radius and 1.5 % at 40, where the Stefan number is one.
#[test]
fn a_cylinder_freezes_through() {
    assert_tau(2, 1.0, 20, 0.348_579, 0.03);
    assert_tau(2, 1.0, 40, 0.348_579, 0.015);
    assert_tau(2, 0.5, 20, 0.594_276, 0.03);
}

#[test]
fn a_ball_freezes_through() {
    assert_tau(3, 1.0, 20, 0.260_401, 0.03);
    assert_tau(3, 1.0, 40, 0.260_401, 0.015);
    assert_tau(3, 2.0, 20, 0.168_910, 0.03);
}

#[test]
fn a_slab_freezes_through() {
    assert_tau(1, 1.0, 40, 0.526_689, 0.015);
    assert_tau(1, 0.5, 40, 0.937_388, 0.015);
}

/// Capacity and conductivity 1, radius 1 and a fall of one kelvin: time counts in R²/alpha.
fn assert_tau(dimensions: usize, stefan: f64, cells: usize, expected: f64, within: f64) {
    let case = case(dimensions, stefan, cells);
    let times: Vec<f64> = (60..=140)
        .map(|at| f64::from(at) / 100.0 * expected)
        .collect();
    let (moments, _) = moments(&case, Mode::Multirate, &times, expected / 800.0);
    let liquid = |moment: &Moment| liquid_radius(&case, dimensions, moment);
    let after = moments.iter().position(|moment| liquid(moment) <= 0.1);
    let after = after.expect("it freezes in time");
    let (early, late) = (&moments[after - 1], &moments[after]);
    let share = (liquid(early) - 0.1) / (liquid(early) - liquid(late));
    let tau = early.time_s + share * (late.time_s - early.time_s);
    let off = tau / expected - 1.0;
    assert!(
        off.abs() <= within,
        "{dimensions}, {stefan}, {cells}: {tau} for {expected}, {off:.4}"
    );
}

/// Radius of the body that is still liquid, from its volume.
fn liquid_radius(case: &Case, dimensions: usize, moment: &Moment) -> f64 {
    let solved = (0..case.cells.len()).filter(|&cell| case.cells[cell] == 0);
    let liquid: f64 = solved
        .map(|cell| {
            let heat = f64::from(moment.j_m3[cell]);
            (1.0 - case.materials[0].at(heat).solid) * case.volume(cell)
        })
        .sum();
    let across: f64 = (dimensions..3)
        .map(|axis| case.grid.edges_m[axis][1])
        .product();
    let parts = [1.0, 4.0 / std::f64::consts::PI, 6.0 / std::f64::consts::PI];
    (liquid / across * parts[dimensions - 1]).powf(1.0 / dimensions as f64)
}

fn case(dimensions: usize, stefan: f64, cells: usize) -> Case {
    let phase = Phase {
        j_m3k: 1.0,
        w_mk: 1.0,
    };
    let freezes = Freezes {
        solid: phase,
        liquid: phase,
        latent_j_m3: 1.0 / stefan,
        solidus_c: 1.0,
        liquidus_c: 1.0,
    };
    let counts = [0, 1, 2].map(|axis| if axis < dimensions { cells } else { 1 });
    let grid = Grid::uniform(counts, 1.0 / cells as f64);
    let mut case = Case::filled(grid, Material::freezing("melt", freezes), 1.0);
    let held = Condition::Held { celsius: 0.0 };
    case.voids.push(held);
    (0..dimensions).for_each(|axis| case.faces[2 * axis + 1] = held);
    for cell in 0..case.cells.len() {
        let centre = case.grid.centre(case.grid.place(cell));
        let away: f64 = centre[..dimensions].iter().map(|way| way * way).sum();
        case.cells[cell] = u8::from(away > 1.0);
    }
    case
}
