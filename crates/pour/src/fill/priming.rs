//! How the running system fills before its gates run: along its way from the sprue, at the flow
//! that its gates will take.

use std::collections::VecDeque;

use super::cooling::Cooling;
use crate::cells::{MouldCells, Stuff};

/// What came to one cell of the running system.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Primed {
    /// Where it stands in the box.
    pub(super) place: usize,
    /// When, s from the first metal in the sprue.
    pub(super) at_s: f64,
    /// With what heat, J/m³.
    pub(super) j_m3: f64,
}

/// The cells of the running system in the order in which they fill from its highest cells, and
/// how long it takes, s; cells that do not hang together with the sprue are left out.
pub(super) fn primed(
    cells: &MouldCells,
    running: &[bool],
    flow_m3_s: f64,
    cooling: &Cooling,
    thick_mm: &[f32],
) -> (Vec<Primed>, f64) {
    let runs = |place: usize| running[place] && cells.stuff[place] == Stuff::Metal;
    let all = 0..running.len();
    let Some(highest) = all.clone().rev().find(|place| runs(*place)) else {
        return (Vec::new(), 0.0);
    };
    let layer = cells.cell(highest)[2];
    let mut spread = VecDeque::new();
    let mut is_seen = vec![false; running.len()];
    for place in all.filter(|place| runs(*place) && cells.cell(*place)[2] == layer) {
        is_seen[place] = true;
        spread.push_back((place, 0.0, cooling.poured_j_m3));
    }
    let cell_m3 = (cells.size_mm * 1e-3).powi(3);
    let (mut primed, mut lies_m3) = (Vec::new(), 0.0);
    while let Some((place, came_s, came_j_m3)) = spread.pop_front() {
        lies_m3 += cell_m3 * f64::from(cells.metal[place]);
        let at_s = lies_m3 / flow_m3_s;
        let per_m = 2e3 / f64::from(thick_mm[place]);
        let j_m3 = cooling.after(came_j_m3, per_m, [came_s, at_s]);
        primed.push(Primed { place, at_s, j_m3 });
        for next in cells.neighbours(place) {
            if runs(next) && !is_seen[next] {
                is_seen[next] = true;
                spread.push_back((next, at_s, j_m3));
            }
        }
    }
    (primed, lies_m3 / flow_m3_s)
}
