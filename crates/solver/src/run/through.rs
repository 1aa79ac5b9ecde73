//! The loop over time, wherever the steps are taken.

use super::ended::outcome;
use super::steps::{check_length, check_times, steps_to};
use super::{End, Moment, Outcome, Progress, SolveError, Standing, Wish};
use crate::case::Case;
use crate::elsewhere::{Elsewhere, Ran, Unable};
use crate::kept::Kept;
use crate::laid::Laid;
use crate::scheme::Scheme;

/// Why a run did not come to its end.
pub enum Halt {
    /// It was stopped, or cannot be run.
    Solve(SolveError),
    /// Its steps cannot be taken elsewhere.
    Unable(Unable),
}

impl From<SolveError> for Halt {
    fn from(error: SolveError) -> Halt {
        Halt::Solve(error)
    }
}

impl From<Unable> for Halt {
    fn from(unable: Unable) -> Halt {
        Halt::Unable(unable)
    }
}

/// Takes all steps here.
pub fn here(
    case: &Case,
    wish: &Wish,
    kept: Option<&Kept>,
    go_on: &mut dyn FnMut(&Progress, &Standing<'_>) -> bool,
) -> Result<Outcome, SolveError> {
    let mut scheme = Scheme::start(case, wish);
    let mut reached = Reached::at_start(scheme.joules());
    if let Some(kept) = kept {
        scheme.take_up(kept)?;
        reached = Reached::of(kept);
    }
    match through(scheme, (case, wish), reached, &mut None, go_on) {
        Ok(outcome) => Ok(outcome),
        Err(Halt::Solve(error)) => Err(error),
        // Nothing is taken elsewhere.
        Err(Halt::Unable(_)) => Err(SolveError::Stopped { time_s: 0.0 }),
    }
}

/// Takes all steps elsewhere; `rest` is the last state that was read.
pub fn away(
    on: &dyn Elsewhere,
    case: &Case,
    wish: &Wish,
    rest: &mut Option<Kept>,
    go_on: &mut dyn FnMut(&Progress, &Standing<'_>) -> bool,
) -> Result<Outcome, Halt> {
    let laid = Laid::of(case, wish);
    let start = laid.start();
    let (scheme, reached) = match rest {
        None => (
            Scheme::away(on, &laid, &start, None)?,
            Reached::at_start(laid.joules(&start)),
        ),
        Some(kept) => {
            let state = laid.take_up(kept).map_err(SolveError::from)?;
            (
                Scheme::away(on, &laid, &state, Some(kept))?,
                Reached::of(kept),
            )
        }
    };
    drop(start);
    let outcome = through(scheme, (case, wish), reached, rest, go_on)?;
    let ran = Some(Ran {
        on: on.name().to_owned(),
        fell_back: None,
    });
    Ok(Outcome { ran, ..outcome })
}

/// How far a run has come.
pub struct Reached {
    /// Time reached, s.
    pub time_s: f64,
    /// Steps so far.
    pub steps: usize,
    /// Heat in the box at the start, J.
    pub start_j: f64,
    /// Moments kept so far.
    pub moments: Vec<Moment>,
}

impl Reached {
    /// At the start.
    pub fn at_start(start_j: f64) -> Reached {
        Reached {
            time_s: 0.0,
            steps: 0,
            start_j,
            moments: Vec::new(),
        }
    }

    /// As far as what was kept.
    pub fn of(kept: &Kept) -> Reached {
        Reached {
            time_s: kept.time_s,
            steps: kept.steps as usize,
            start_j: kept.start_j,
            moments: kept.moments.clone(),
        }
    }
}

/// The loop over time, from moment to moment and on to the end.
fn through(
    mut scheme: Scheme,
    (case, wish): (&Case, &Wish),
    mut reached: Reached,
    rest: &mut Option<Kept>,
    go_on: &mut dyn FnMut(&Progress, &Standing<'_>) -> bool,
) -> Result<Outcome, Halt> {
    let end_s = check_times(wish)?;
    check_length(case, wish, &scheme, end_s)?;
    let until_solid = matches!(wish.end, End::Solid { .. });
    let solid = |scheme: &Scheme| until_solid && scheme.unfrozen() == 0;
    let ahead = |at: &f64| *at < end_s && *at >= reached.time_s;
    let mut stops: Vec<f64> = wish.moments_s.iter().copied().filter(ahead).collect();
    stops.push(end_s);
    'run: for &stop_s in &stops {
        while reached.time_s < stop_s {
            if reached.steps > 0 && solid(&scheme) {
                break 'run;
            }
            let steps = steps_to(
                stop_s,
                &scheme,
                (reached.time_s, reached.steps),
                until_solid,
            );
            let taken = scheme.advance(&steps)?;
            let Some(last) = taken.checked_sub(1) else {
                continue;
            };
            reached.time_s = steps[last].ends_s;
            reached.steps += taken;
            let standing = Standing {
                case,
                wish,
                scheme: &scheme,
                reached: &reached,
                rest: rest.as_ref(),
            };
            if !go_on(&standing.progress(), &standing) {
                let time_s = reached.time_s;
                return Err(SolveError::Stopped { time_s }.into());
            }
            if scheme.is_due() {
                *rest = Some(standing.keep());
            }
            if solid(&scheme) {
                break 'run;
            }
        }
        if wish.moments_s.contains(&stop_s) {
            reached.moments.push(scheme.moment(reached.time_s)?);
        }
    }
    let ended = scheme.end(reached.time_s)?;
    Ok(outcome(case, ended, reached))
}
