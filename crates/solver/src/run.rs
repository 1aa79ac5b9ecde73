//! The loop over time: what is wished, what is told on the way, what comes out.

mod ended;
mod steps;
mod through;

use thiserror::Error;

use self::steps::check_times;
use self::through::{Halt, Reached, away, here};
use crate::budget::{MOST_BYTES, MOST_HOURS, TooLarge, estimate, within};
use crate::case::{Case, CaseError};
use crate::elsewhere::{Elsewhere, Ran};
use crate::freezing::Freezing;
use crate::kept::{Kept, KeptError, mark_of};
use crate::scheme::Scheme;

/// Which scheme.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mode {
    /// Plain explicit steps in double precision: to check by.
    Reference,
    /// Many small stages where heat is quick, one step elsewhere: for use.
    Multirate,
}

/// When a run ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum End {
    /// At a time.
    At {
        /// The time, s.
        s: f64,
    },
    /// When every cell that can freeze is solid.
    Solid {
        /// Not later than this, s.
        latest_s: f64,
    },
}

/// What is wished of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Wish {
    /// Which scheme.
    pub mode: Mode,
    /// When it ends.
    pub end: End,
    /// Moments to be kept whole, s, rising.
    pub moments_s: Vec<f64>,
    /// Longest step, s. A four-hundredth of the freezing time keeps freezing times within a
    /// thousandth; twice that costs half and errs three times as much.
    pub longest_step_s: Option<f64>,
    /// Solid share at which a passing is written down.
    pub passing_share: f64,
    /// Most memory, bytes.
    pub most_bytes: f64,
    /// Whether half a cell beside what freezes counts less in the first moments of contact. Times
    /// then come out nearer to those of finer cells, and no longer as plain steps give them.
    pub early_contact: bool,
}

impl Wish {
    /// The scheme for use, until an end.
    pub fn until(end: End) -> Wish {
        Wish {
            mode: Mode::Multirate,
            end,
            moments_s: Vec::new(),
            longest_step_s: None,
            passing_share: 0.65,
            most_bytes: MOST_BYTES,
            early_contact: false,
        }
    }
}

/// What is told after each step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Progress {
    /// Time reached, s.
    pub time_s: f64,
    /// Steps so far.
    pub steps: usize,
    /// Cells that can freeze and are not solid yet.
    pub unfrozen: usize,
    /// All cells of the box.
    pub cells: usize,
    /// Memory of the run where its steps are taken, bytes, roughly.
    pub bytes: f64,
}

/// Temperatures and heat contents at one moment, one entry a cell.
#[derive(Debug, Clone, PartialEq)]
pub struct Moment {
    /// When, s.
    pub time_s: f64,
    /// Temperature, °C; in a void, that of the start.
    pub celsius: Vec<f32>,
    /// Heat content, J/m³, counted as in the table of the material; 0 in a void.
    pub j_m3: Vec<f32>,
}

/// Where the heat went.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Balance {
    /// In the box at the start, J, counted from the coldest temperature given.
    pub start_j: f64,
    /// In the box at the end, J, counted alike.
    pub end_j: f64,
    /// What came in through faces, J; negative went out.
    pub through_j: f64,
    /// What is missing or too much, as a share of the larger of start, end and passage.
    pub drift: f64,
}

/// What a run took.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Work {
    /// Steps over the whole box.
    pub steps: usize,
    /// Stages over the quick cells; 0 for the reference.
    pub stages: usize,
    /// Cells that are solved.
    pub cells: usize,
    /// Cells among them that go in stages; 0 for the reference.
    pub quick_cells: usize,
}

/// What comes out of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// The end.
    pub last: Moment,
    /// Moments that were asked for.
    pub moments: Vec<Moment>,
    /// What froze when.
    pub freezing: Freezing,
    /// Cells that can freeze and are not solid at the end.
    pub unfrozen: usize,
    /// Where the heat went.
    pub balance: Balance,
    /// How far a temperature lies beyond all that was given, at the end or at a moment asked for,
    /// K: more than rounding says that the steps were too long.
    pub beyond_k: f64,
    /// What it took.
    pub work: Work,
    /// What became of the wish to have the steps taken elsewhere, where that was worth it.
    pub ran: Option<Ran>,
}

/// Why there is no outcome.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SolveError {
    /// The case is not sound.
    #[error(transparent)]
    Case(#[from] CaseError),
    /// The case is too large.
    #[error(transparent)]
    TooLarge(#[from] TooLarge),
    /// An end, a moment or a step that is none.
    #[error("{what} has to be a time above 0 s")]
    Time {
        /// Which.
        what: &'static str,
    },
    /// A share that is none.
    #[error("the solid share to watch for has to lie between 0 and 1")]
    Share,
    /// A run that would not end.
    #[error(
        "{steps:.2e} steps of {step_s:.2e} s would take about {hours:.0} hours, and at most \
         {MOST_HOURS:.0} are begun: use wider cells, or end sooner"
    )]
    Endless {
        /// Steps.
        steps: f64,
        /// Their length, s.
        step_s: f64,
        /// How long they would take, h.
        hours: f64,
    },
    /// What was kept is of no use.
    #[error(transparent)]
    Kept(#[from] KeptError),
    /// Stopped from outside.
    #[error("stopped at {time_s:.1} s")]
    Stopped {
        /// Time reached, s.
        time_s: f64,
    },
}

/// A run as it stands between two steps.
pub struct Standing<'run> {
    case: &'run Case,
    wish: &'run Wish,
    scheme: &'run Scheme<'run>,
    reached: &'run Reached,
    rest: Option<&'run Kept>,
}

impl Standing<'_> {
    /// Whether this is what was kept of a run of the same case and wish.
    pub fn is_of(&self, kept: &Kept) -> bool {
        kept.of == mark_of(self.case, self.wish)
    }

    /// What it needs to go on from here later; from the last state that could be read, where steps
    /// are taken elsewhere and nothing is there any more.
    pub fn keep(&self) -> Kept {
        let at = |reached: &Reached| Kept {
            of: mark_of(self.case, self.wish),
            time_s: reached.time_s,
            steps: reached.steps as u64,
            start_j: reached.start_j,
            moments: reached.moments.clone(),
            ..Kept::default()
        };
        let mut kept = at(self.reached);
        if self.scheme.keep(&mut kept).is_ok() {
            return kept;
        }
        self.rest.cloned().unwrap_or_else(|| {
            let start = Scheme::start(self.case, self.wish);
            let mut kept = at(&Reached::at_start(start.joules()));
            // Here there is always a state to read.
            let _ = start.keep(&mut kept);
            kept
        })
    }

    fn progress(&self) -> Progress {
        let cells = self.case.grid.cells();
        let here = || estimate(cells, self.wish.mode, self.wish.moments_s.len()).bytes;
        Progress {
            cells,
            bytes: self.scheme.bytes().unwrap_or_else(here),
            time_s: self.reached.time_s,
            steps: self.reached.steps,
            unfrozen: self.scheme.unfrozen(),
        }
    }
}

/// Runs a case. `go_on` is told of every step and stops the run by answering false.
pub fn solve(
    case: &Case,
    wish: &Wish,
    go_on: &mut dyn FnMut(&Progress) -> bool,
) -> Result<Outcome, SolveError> {
    solve_from(case, wish, None, &mut |progress, _| go_on(progress))
}

/// Runs a case, from what was kept of an earlier run of it where there is that. `go_on` is told of
/// every step, may keep the run as it stands then, and stops it by answering false.
pub fn solve_from(
    case: &Case,
    wish: &Wish,
    kept: Option<&Kept>,
    go_on: &mut dyn FnMut(&Progress, &Standing<'_>) -> bool,
) -> Result<Outcome, SolveError> {
    solve_on(None, case, wish, kept, go_on)
}

/// As [`solve_from`], with the steps taken elsewhere where that is given and worth it; `go_on` is
/// then told of several steps at a time. What keeps them from being taken there is told beside the
/// outcome, and they are taken here from the last state that was read: time may then be told twice.
pub fn solve_on(
    on: Option<&dyn Elsewhere>,
    case: &Case,
    wish: &Wish,
    kept: Option<&Kept>,
    go_on: &mut dyn FnMut(&Progress, &Standing<'_>) -> bool,
) -> Result<Outcome, SolveError> {
    case.check()?;
    let cells = case.grid.cells();
    within(cells, wish.mode, wish.moments_s.len(), wish.most_bytes)?;
    check_times(wish)?;
    if kept.is_some_and(|kept| kept.of != mark_of(case, wish)) {
        return Err(KeptError::OtherCase.into());
    }
    let on = on.filter(|on| wish.mode == Mode::Multirate && on.is_worth(cells));
    let Some(on) = on else {
        return here(case, wish, kept, go_on);
    };
    let mut rest = kept.cloned();
    let unable = match away(on, case, wish, &mut rest, go_on) {
        Ok(outcome) => return Ok(outcome),
        Err(Halt::Solve(error)) => return Err(error),
        Err(Halt::Unable(unable)) => unable,
    };
    let from_s = rest.as_ref().map_or(0.0, |rest| rest.time_s);
    let ran = Some(Ran {
        on: on.name().to_owned(),
        fell_back: Some((unable, from_s)),
    });
    let outcome = here(case, wish, rest.as_ref(), go_on)?;
    Ok(Outcome { ran, ..outcome })
}
