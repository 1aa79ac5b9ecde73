//! Flows and levels carried on together over one step.

use crate::fill::network::NetworkError;
use crate::fill::network::step::{Held, State, step};

/// The state after flows have run on as they are.
pub(super) fn run_on(held: &Held<'_>, state: &State, into: &[f64], length_s: f64) -> State {
    let poured_m3 = into.iter().sum::<f64>() * length_s;
    let sunk = held.network.sinking_m2.map_or(0.0, |area| poured_m3 / area);
    State {
        flows: state.flows.clone(),
        basin_m: state.basin_m - sunk,
        pools_m3: into.iter().map(|flow| flow * length_s).collect(),
        poured_m3,
    }
}

/// Turns in which the length of a step is found at which the first pool has what was left to it.
const TURNS: usize = 8;

/// The state at which the first pool has come to what was left, or after the whole length, and the
/// length taken.
pub(super) fn meet(
    held: &Held<'_>,
    state: &State,
    length_s: f64,
    left: &[f64],
) -> Result<(State, f64), NetworkError> {
    let mut took_s = length_s;
    let mut ended = step(held, state, took_s)?;
    for _ in 0..TURNS {
        let into = held.into_pools(&ended.flows);
        let over = |at: &usize| ended.pools_m3[*at] > left[*at] * (1.0 + 1e-10);
        // A pool that has come too far says how much sooner; one just short of it, how much later.
        let soon = |at: &usize| ended.pools_m3[*at] > 0.9 * left[*at] && took_s < length_s * 4.0;
        let speeds = (0..left.len()).filter(|at| into[*at] > 0.0);
        let near = speeds.filter(|at| over(at) || (!held.inertia && soon(at)));
        let later = |at: usize| (left[at] - ended.pools_m3[at]) / into[at];
        let change_s = near.map(later).fold(f64::INFINITY, f64::min);
        if !change_s.is_finite() || change_s.abs() <= 1e-12 * took_s {
            break;
        }
        took_s = (took_s + change_s).clamp(0.25 * took_s, 4.0 * took_s);
        ended = step(held, state, took_s)?;
    }
    Ok((ended, took_s))
}
