//! When the metal in its mould has fallen below a temperature, and how deep the sand was burnt.
//!
//! Followed on wide cells and for long: cooling goes on for an hour where freezing took minutes,
//! and what it asks for is slow. Moments are kept closer at first; between two of them the
//! hottest place is taken to cool evenly with the logarithm of time.

use solver::run::{End, Wish, solve_on};

use crate::case::{CORE, Filling, SAND};
use crate::held::{Held, look};
use crate::hot_sand::{HotSand, hot_sand};
use crate::meshing::Meshed;
use crate::no_freeze::FreezeError;
use crate::pace::pace;
use crate::solved::{Poured, case_of, metal_cells};

/// How a mould cools.
#[derive(Clone, Debug, PartialEq)]
pub struct Cooled {
    /// Moments, s, and the hottest place of the castings and of all metal, °C.
    pub hottest: Vec<(f64, [f64; 2])>,
    /// Sand by how hot it got until then.
    pub hot_sand: HotSand,
    /// Each casting as its last place is just solid; none where it was not followed so far.
    pub held: Vec<Held>,
    /// The hottest that any sand was at a moment that was kept, °C.
    pub sand_c: f64,
    /// The hottest that any core was, °C; none without cores.
    pub core_c: Option<f64>,
}

/// Moments that are kept: with fewer a mark on the clock is off by more than a twentieth.
const MOMENTS: usize = 36;

/// First moment, as a share of the whole.
const FIRST: f64 = 0.004;

/// Steps over the guessed freezing: the later cooling is slow and does not ask for more.
const STEPS: f64 = 60.0;

/// Follows a mould in wide cells for so long.
pub fn cooled(
    meshed: &Meshed,
    poured: &Poured<'_>,
    filling: &Filling,
    for_s: f64,
    go_on: &mut dyn FnMut(f64) -> bool,
) -> Result<Cooled, FreezeError> {
    let built = case_of(meshed, poured, filling);
    let pace = pace(
        meshed,
        filling,
        filling.metal.knots.last().map_or(0.0, |knot| knot.celsius),
    );
    let moments_s: Vec<f64> = (0..MOMENTS)
        .map(|at| for_s * FIRST.powf(1.0 - at as f64 / MOMENTS as f64))
        .collect();
    let wish = Wish {
        moments_s,
        longest_step_s: Some(pace.guess_s.max(1e-3) / STEPS),
        ..Wish::until(End::At { s: for_s })
    };
    let outcome = solve_on(poured.on, &built.case, &wish, None, &mut |told, _| {
        go_on(told.time_s)
    })?;
    let is_casting = |cell: usize| {
        let piece = &meshed.pieces[usize::from(meshed.piece[cell])];
        matches!(piece, rigging::piece::Piece::Casting(_))
    };
    let solidus_c = filling.metal.heat_at_solid(1.0);
    let solidus_c = solidus_c.map_or(f64::NAN, |heat| filling.metal.at(heat).celsius);
    let (mut hottest, mut held) = (Vec::new(), Vec::new());
    let mut highest = vec![f32::NEG_INFINITY; built.case.grid.cells()];
    for moment in outcome.moments.iter().chain([&outcome.last]) {
        let (mut casting, mut metal) = (f64::NEG_INFINITY, f64::NEG_INFINITY);
        for (highest, celsius) in highest.iter_mut().zip(&moment.celsius) {
            *highest = highest.max(*celsius);
        }
        for cell in metal_cells(meshed) {
            let celsius = f64::from(moment.celsius[built.of_cell(&meshed.cells, cell)]);
            metal = metal.max(celsius);
            if is_casting(cell) {
                casting = casting.max(celsius);
            }
        }
        hottest.push((moment.time_s, [casting, metal]));
        let celsius = |cell: usize| f64::from(moment.celsius[built.of_cell(&meshed.cells, cell)]);
        look(meshed, moment.time_s, &celsius, solidus_c, &mut held);
    }
    let surface_mm2 = metal_cells(meshed)
        .map(|cell| f64::from(meshed.surface_mm2[cell]))
        .sum();
    let is_sand = |cell: &usize| [SAND, CORE].contains(&built.case.cells[*cell]);
    Ok(Cooled {
        hot_sand: hot_sand(&built.case, &highest, surface_mm2),
        sand_c: (0..highest.len())
            .filter(is_sand)
            .map(|cell| f64::from(highest[cell]))
            .fold(f64::NEG_INFINITY, f64::max),
        core_c: (0..highest.len())
            .filter(|&cell| built.case.cells[cell] == CORE)
            .map(|cell| f64::from(highest[cell]))
            .reduce(f64::max),
        hottest,
        held,
    })
}

impl Cooled {
    /// When the castings (or all metal) were below a temperature, s; none where it was not
    /// followed so far.
    pub fn below_s(&self, mark_c: f64, all_metal: bool) -> Option<f64> {
        let of = |at: usize| self.hottest[at].1[usize::from(all_metal)];
        let at = (0..self.hottest.len()).find(|&at| of(at) < mark_c)?;
        let after = self.hottest[at].0;
        let Some(before) = at.checked_sub(1) else {
            return Some(after);
        };
        let share = (of(before) - mark_c) / (of(before) - of(at));
        let from = self.hottest[before].0;
        Some(from * (after / from).powf(share))
    }
}
