//! Rows of quick cells: plain loops, as wide as the registers of the machine.

use std::ops::Range;

use super::{Quick, Run};
use crate::link::SIDES;
use crate::multirate::padded::Padded;
use crate::multirate::stages::Stage;

/// Conductances of a run to all sides, for a unit volume, as if all were of one material.
#[inline(always)]
pub fn conduct(
    run: &Run,
    weights: &[[Vec<f32>; 2]; 3],
    padded: &Padded,
    w_mk: &[f32],
    conductances: &mut [Vec<f32>; 6],
) {
    let (at, len) = (run.at as usize, run.len as usize);
    let [x, y, z] = run.place.map(|at| at as usize);
    let own = &w_mk[at..at + len];
    let away = [1, padded.row, padded.plane];
    for (axis, high) in SIDES {
        let from = if high == 0 {
            at - away[axis]
        } else {
            at + away[axis]
        };
        let other = &w_mk[from..from + len];
        let sums = &mut conductances[2 * axis + high][run.packed()];
        let weights = &weights[axis][high];
        match axis {
            0 => {
                let weights = &weights[x..x + len];
                for i in 0..len {
                    sums[i] = weights[i] * (own[i] + other[i]);
                }
            }
            _ => {
                let weight = weights[if axis == 1 { y } else { z }];
                for i in 0..len {
                    sums[i] = weight * (own[i] + other[i]);
                }
            }
        }
    }
}

/// A stage of a run but for its surroundings; `next` holds the older changes before it.
#[inline(always)]
pub fn step_run(
    quick: &Quick,
    run: &Run,
    stage: Stage,
    padded: &Padded,
    celsius: &[f32],
    next: &mut [f32],
) {
    let (at, len) = (run.at as usize, run.len as usize);
    let row = |from: usize| &celsius[from..from + len];
    let own = row(at);
    let (left, right) = (row(at - 1), row(at + 1));
    let (front, back) = (row(at - padded.row), row(at + padded.row));
    let (below, above) = (row(at - padded.plane), row(at + padded.plane));
    let cells = run.packed();
    let [g0, g1, g2, g3, g4, g5] = &quick.conductances;
    let (g0, g1) = (&g0[cells.clone()], &g1[cells.clone()]);
    let (g2, g3) = (&g2[cells.clone()], &g3[cells.clone()]);
    let (g4, g5) = (&g4[cells.clone()], &g5[cells.clone()]);
    let source = &quick.source[cells.clone()];
    let change = &quick.change[cells];
    let Stage { lean, step_s } = stage;
    for i in 0..len {
        let t = own[i];
        let rate = source[i]
            + g0[i] * (left[i] - t)
            + g1[i] * (right[i] - t)
            + g2[i] * (front[i] - t)
            + g3[i] * (back[i] - t)
            + g4[i] * (below[i] - t)
            + g5[i] * (above[i] - t);
        next[i] = change[i] + (lean * (change[i] - next[i]) + step_s * rate);
    }
}

/// Adds what comes from surroundings to a run, and tells how much that is, W.
pub fn add_around(
    quick: &Quick,
    dense: usize,
    stage: Stage,
    celsius: &[f32],
    next: &mut [f32],
) -> f64 {
    let mut inflow_w = 0.0;
    for (i, next) in next.iter_mut().enumerate() {
        let rate = quick.around_rate[dense + i];
        if rate > 0.0 {
            let gain = rate * (quick.around_c[dense + i] - celsius[i]);
            *next += stage.step_s * gain;
            inflow_w += f64::from(gain) * f64::from(quick.around_m3[dense + i]);
        }
    }
    inflow_w
}

/// The largest sum of the six conductances over some cells.
#[inline(always)]
pub fn sum_of_six(conductances: &[Vec<f32>; 6], cells: Range<usize>) -> f32 {
    const LANES: usize = 8;
    let [g0, g1, g2, g3, g4, g5] = conductances;
    let len = cells.len();
    let (g0, g1) = (&g0[cells.clone()], &g1[cells.clone()]);
    let (g2, g3) = (&g2[cells.clone()], &g3[cells.clone()]);
    let (g4, g5) = (&g4[cells.clone()], &g5[cells]);
    let sum = |i: usize| g0[i] + g1[i] + g2[i] + g3[i] + g4[i] + g5[i];
    let mut most = [0.0_f32; LANES];
    let whole = len / LANES * LANES;
    for from in (0..whole).step_by(LANES) {
        for (lane, most) in most.iter_mut().enumerate() {
            let sum = sum(from + lane);
            *most = if sum > *most { sum } else { *most };
        }
    }
    let rest = (whole..len).map(sum).fold(0.0, f32::max);
    most.into_iter().fold(rest, f32::max)
}
