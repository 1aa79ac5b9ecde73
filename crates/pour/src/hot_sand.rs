//! How much sand got how hot: what the heap loses of its clay, its binder and its water.

use serde::{Deserialize, Serialize};
use solver::case::Case;

use crate::case::{CORE, SAND};

/// Temperatures that sand is told apart by, °C. The first lies just above the plateau at which
/// water boils away, the last above the death of every clay (`sand-death-memory`).
pub const MARKS_C: [f64; 13] = [
    105.0, 150.0, 200.0, 250.0, 300.0, 350.0, 400.0, 450.0, 500.0, 550.0, 600.0, 650.0, 700.0,
];

/// Sand that was at some moment hotter than each of some temperatures.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct HotSand {
    /// The temperatures, °C, rising.
    pub above_c: Vec<f64>,
    /// Sand of the mould that was hotter than each, mm³.
    pub mould_mm3: Vec<f64>,
    /// Sand of cores that was hotter than each, mm³.
    pub cores_mm3: Vec<f64>,
    /// Metal against sand, mm².
    pub surface_mm2: f64,
}

/// Sand by how hot it got, from the highest temperature of every cell of the case of a mould, to
/// the walls of the flask.
///
/// A cell counts with the part of it that lies above the mark if the heat falls evenly across it,
/// so that a depth is told finer than a cell is wide.
pub fn hot_sand(case: &Case, highest_c: &[f32], surface_mm2: f64) -> HotSand {
    let above = |sand: u8| {
        let mut sums = vec![0.0; MARKS_C.len()];
        for cell in (0..highest_c.len()).filter(|&cell| case.cells[cell] == sand) {
            let held = held_mm3(case, cell);
            let middle = f64::from(highest_c[cell]);
            let fall = fall_across(case, highest_c, cell);
            for (sum, mark) in sums.iter_mut().zip(MARKS_C) {
                *sum += held * part_above(middle, fall, mark);
            }
        }
        sums
    };
    HotSand {
        above_c: MARKS_C.to_vec(),
        mould_mm3: above(SAND),
        cores_mm3: above(CORE),
        surface_mm2,
    }
}

impl HotSand {
    /// Depth of sand, of mould and cores, that was above a mark, over the surface of the metal, mm.
    pub fn depth_mm(&self, mark_c: f64) -> f64 {
        let all = self.at(&self.mould_mm3, mark_c) + self.at(&self.cores_mm3, mark_c);
        all / self.surface_mm2
    }

    /// Sand of the mould that was above a mark, mm³.
    pub fn of_mould_mm3(&self, mark_c: f64) -> f64 {
        self.at(&self.mould_mm3, mark_c)
    }

    /// A figure over the temperatures at a mark, evenly between two of them; that of the nearest
    /// beyond them.
    fn at(&self, over: &[f64], mark_c: f64) -> f64 {
        let marks = &self.above_c;
        let after = marks.partition_point(|known| *known < mark_c);
        let (Some(low), Some(high)) = (after.checked_sub(1), marks.get(after)) else {
            let nearest = after.min(over.len().saturating_sub(1));
            return over.get(nearest).copied().unwrap_or(0.0);
        };
        let share = (mark_c - marks[low]) / (high - marks[low]);
        over[low] * (1.0 - share) + over[after] * share
    }

    /// Whether the lists belong together: temperatures that rise, as many figures as temperatures.
    pub fn is_whole(&self) -> bool {
        let marks = &self.above_c;
        let lengths = [self.mould_mm3.len(), self.cores_mm3.len()];
        let rises = marks.windows(2).all(|pair| pair[0] < pair[1]);
        !marks.is_empty() && rises && lengths == [marks.len(); 2] && self.surface_mm2 > 0.0
    }
}

/// Sand in a cell, mm³.
fn held_mm3(case: &Case, cell: usize) -> f64 {
    let filled = case.partial.as_ref();
    let filled = filled.map_or(1.0, |partial| f64::from(partial.filled[cell]));
    case.grid.volume(case.grid.place(cell)) * 1e9 * filled
}

/// How far the temperature falls across a cell of sand, K: along the steepest of the three axes,
/// by its neighbours of sand.
fn fall_across(case: &Case, celsius: &[f32], cell: usize) -> f64 {
    let at = case.grid.place(cell);
    let fall = |axis: usize| {
        let beside = |other: usize| {
            let mut place = at;
            place[axis] = other;
            let index = case.grid.index(place);
            let is_sand = [SAND, CORE].contains(&case.cells[index]);
            is_sand.then(|| (case.grid.middle(axis, other), f64::from(celsius[index])))
        };
        let below = at[axis].checked_sub(1).and_then(beside);
        let above = (at[axis] + 1 < case.grid.counts()[axis])
            .then(|| beside(at[axis] + 1))
            .flatten();
        let here = (case.grid.middle(axis, at[axis]), f64::from(celsius[cell]));
        let (low, high) = (below.unwrap_or(here), above.unwrap_or(here));
        match high.0 > low.0 {
            true => (high.1 - low.1).abs() / (high.0 - low.0) * case.grid.width(axis, at[axis]),
            false => 0.0,
        }
    };
    (0..3).map(fall).fold(0.0, f64::max)
}

/// Part of a cell above a mark whose middle is this hot and across which the heat falls so far.
fn part_above(middle: f64, fall: f64, mark: f64) -> f64 {
    if fall <= 0.0 {
        return if middle > mark { 1.0 } else { 0.0 };
    }
    ((middle - mark) / fall + 0.5).clamp(0.0, 1.0)
}
