//! Which steps are taken next, and whether a run would end.

use super::{End, SolveError, Wish};
use crate::budget::{MOST_HOURS, hours};
use crate::case::Case;
use crate::elsewhere::Step;
use crate::scheme::Scheme;

/// The steps to take next, up to a stop: as many as the scheme takes at once, each as long as the
/// scheme would have it by then.
pub fn steps_to(
    stop_s: f64,
    scheme: &Scheme,
    (mut time_s, taken): (f64, usize),
    until_solid: bool,
) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut wished_s = scheme.step_s();
    while steps.len() < scheme.at_once() && time_s < stop_s {
        // Equal steps up to the next moment, so that none is a sliver.
        let left_s = stop_s - time_s;
        let pieces = (left_s / wished_s - 1e-9).ceil().max(1.0);
        let length_s = left_s / pieces;
        time_s = match pieces > 1.0 {
            true => time_s + length_s,
            false => stop_s,
        };
        steps.push(Step {
            ends_s: time_s,
            length_s,
            while_freezing: until_solid && taken + steps.len() > 0,
        });
        wished_s = scheme.grown_s(wished_s);
    }
    steps
}

/// Refuses a run that would not end.
pub fn check_length(
    case: &Case,
    wish: &Wish,
    scheme: &Scheme,
    end_s: f64,
) -> Result<(), SolveError> {
    let step_s = scheme.longest_s();
    let steps = end_s / step_s.min(end_s);
    let hours = hours(wish.mode, steps, case.grid.cells(), scheme.quick_cells());
    match hours.is_nan() || hours > MOST_HOURS {
        true => Err(SolveError::Endless {
            steps,
            step_s,
            hours,
        }),
        false => Ok(()),
    }
}

/// Looks the times over and gives the latest end.
pub fn check_times(wish: &Wish) -> Result<f64, SolveError> {
    let sound = |s: f64| s.is_finite() && s > 0.0;
    let end_s = match wish.end {
        End::At { s } => s,
        End::Solid { latest_s } => latest_s,
    };
    if !sound(end_s) {
        return Err(SolveError::Time { what: "the end" });
    }
    let rising = wish.moments_s.windows(2).all(|pair| pair[1] > pair[0]);
    if !rising || wish.moments_s.iter().any(|&at| !sound(at)) {
        return Err(SolveError::Time {
            what: "every moment, each later than the one before,",
        });
    }
    if wish.longest_step_s.is_some_and(|longest| !sound(longest)) {
        return Err(SolveError::Time {
            what: "the longest step",
        });
    }
    match wish.passing_share > 0.0 && wish.passing_share < 1.0 {
        true => Ok(end_s),
        false => Err(SolveError::Share),
    }
}
