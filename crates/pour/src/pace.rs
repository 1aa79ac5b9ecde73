//! How long a mould may take to freeze, guessed before it is followed: the solver's steps and its
//! end go by it.

use crate::case::Filling;
use crate::cells::Stuff;
use crate::meshing::Meshed;
use crate::solved::metal_cells;

/// How a run goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pace {
    /// Freezing time guessed, s.
    pub guess_s: f64,
    /// Longest step, s.
    pub step_s: f64,
    /// When it is given up, s.
    pub latest_s: f64,
}

/// Steps over the freezing: with a fourth of them times differ by a hundredth, with twice as many
/// by less than a thousandth, which the grid does not deserve.
const STEPS: f64 = 250.0;

/// How many times the guess is waited for. The guess knows the heaviest place by its depth alone
/// and may be five times off; a mould that runs hot throughout takes longer still.
const WAITED: f64 = 60.0;

/// The pace of a mould with this filling and start.
pub fn pace(meshed: &Meshed, filling: &Filling, start_c: f64) -> Pace {
    let modulus_m = 0.5 * depth_mm(meshed) * 1e-3;
    let metal = &filling.metal;
    let begins = metal.heat_at_solid(1.0).unwrap_or(0.0);
    let solidus_c = metal.at(begins).celsius;
    let to_lose = metal.heat_at(start_c) - begins;
    let fall_k = (solidus_c - filling.air_c).max(1.0);
    let root =
        std::f64::consts::PI.sqrt() / 2.0 * to_lose * modulus_m / (filling.sand.thirst() * fall_k);
    let guess_s = root * root + to_lose * modulus_m / (filling.contact_w_m2k * fall_k);
    Pace {
        guess_s,
        step_s: guess_s / STEPS,
        latest_s: WAITED * guess_s,
    }
}

/// Depth of the deepest metal under the sand, mm, counted in cells.
fn depth_mm(meshed: &Meshed) -> f64 {
    let cells = &meshed.cells;
    let mut deep = vec![false; cells.stuff.len()];
    let mut sheet: Vec<usize> = metal_cells(meshed)
        .filter(|&cell| {
            let beside = cells.neighbours(cell);
            beside
                .into_iter()
                .any(|next| cells.stuff[next] != Stuff::Metal)
        })
        .collect();
    let mut sheets = 0.0;
    while !sheet.is_empty() {
        sheets += 1.0;
        sheet.iter().for_each(|&cell| deep[cell] = true);
        let mut next: Vec<usize> = sheet
            .iter()
            .flat_map(|&cell| cells.neighbours(cell))
            .filter(|&cell| cells.stuff[cell] == Stuff::Metal && !deep[cell])
            .collect();
        next.sort_unstable();
        next.dedup();
        sheet = next;
    }
    (sheets - 0.5) * cells.size_mm
}
