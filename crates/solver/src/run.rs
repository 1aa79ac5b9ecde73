//! The loop over time: what is wished, what is told on the way, what comes out.

use thiserror::Error;

use crate::budget::{MOST_BYTES, MOST_HOURS, TooLarge, hours, within};
use crate::case::{Case, CaseError};
use crate::freezing::Freezing;
use crate::kept::{Kept, KeptError, mark_of};
use crate::link::{beyond_k, coldest_c};
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
    moments: &'run [Moment],
    start_j: f64,
    progress: Progress,
}

impl Standing<'_> {
    /// Whether this is what was kept of a run of the same case and wish.
    pub fn is_of(&self, kept: &Kept) -> bool {
        kept.of == mark_of(self.case, self.wish)
    }

    /// What it needs to go on from here later.
    pub fn keep(&self) -> Kept {
        let mut kept = Kept {
            of: mark_of(self.case, self.wish),
            time_s: self.progress.time_s,
            steps: self.progress.steps as u64,
            start_j: self.start_j,
            moments: self.moments.to_vec(),
            ..Kept::default()
        };
        self.scheme.keep(&mut kept);
        kept
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
    case.check()?;
    within(
        case.grid.cells(),
        wish.mode,
        wish.moments_s.len(),
        wish.most_bytes,
    )?;
    let end_s = check_times(wish)?;
    let mut scheme = Scheme::start(case, wish);
    check_length(case, wish, &scheme, end_s)?;
    let start_j = kept.map_or_else(|| scheme.joules(), |kept| kept.start_j);
    let (mut time_s, mut steps) = (0.0, 0);
    let mut moments = Vec::new();
    if let Some(kept) = kept {
        if kept.of != mark_of(case, wish) {
            return Err(KeptError::OtherCase.into());
        }
        scheme.take_up(kept)?;
        (time_s, steps) = (kept.time_s, kept.steps as usize);
        moments.clone_from(&kept.moments);
    }
    let solid = |scheme: &Scheme| matches!(wish.end, End::Solid { .. }) && scheme.unfrozen() == 0;
    let ahead = |at: &f64| *at < end_s && *at >= time_s;
    let mut stops: Vec<f64> = wish.moments_s.iter().copied().filter(ahead).collect();
    stops.push(end_s);
    'run: for &stop_s in &stops {
        while time_s < stop_s {
            if steps > 0 && solid(&scheme) {
                break 'run;
            }
            // Equal steps up to the next moment, so that none is a sliver.
            let left_s = stop_s - time_s;
            let pieces = (left_s / scheme.step_s() - 1e-9).ceil().max(1.0);
            let step_s = left_s / pieces;
            time_s = if pieces > 1.0 {
                time_s + step_s
            } else {
                stop_s
            };
            scheme.advance(step_s, time_s);
            steps += 1;
            let progress = Progress {
                time_s,
                steps,
                unfrozen: scheme.unfrozen(),
            };
            let standing = Standing {
                case,
                wish,
                scheme: &scheme,
                moments: &moments,
                start_j,
                progress,
            };
            if !go_on(&progress, &standing) {
                return Err(SolveError::Stopped { time_s });
            }
            if solid(&scheme) {
                break 'run;
            }
        }
        if wish.moments_s.contains(&stop_s) {
            moments.push(scheme.moment(time_s));
        }
    }
    Ok(outcome(case, scheme, (time_s, steps), start_j, moments))
}

fn outcome(
    case: &Case,
    scheme: Scheme,
    (time_s, steps): (f64, usize),
    start_j: f64,
    moments: Vec<Moment>,
) -> Outcome {
    let balance = balance(case, start_j, scheme.joules(), scheme.through_j());
    let cells = (0..case.grid.cells())
        .filter(|&cell| case.material(cell).is_some())
        .count();
    let (stages, quick_cells) = scheme.stages();
    let unfrozen = scheme.unfrozen();
    let (last, freezing) = scheme.finish(time_s);
    Outcome {
        beyond_k: {
            let moments = moments.iter().chain([&last]);
            beyond_k(case, moments.map(|moment| moment.celsius.as_slice()))
        },
        last,
        moments,
        unfrozen,
        balance,
        work: Work {
            steps,
            stages,
            cells,
            quick_cells,
        },
        freezing,
    }
}

/// Refuses a run that would not end.
fn check_length(case: &Case, wish: &Wish, scheme: &Scheme, end_s: f64) -> Result<(), SolveError> {
    let step_s = scheme.longest_s();
    let steps = end_s / step_s.min(end_s);
    let hours = hours(wish.mode, steps, case.grid.cells(), scheme.stages().1);
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
fn check_times(wish: &Wish) -> Result<f64, SolveError> {
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

/// The balance, with both contents counted from the coldest temperature given.
fn balance(case: &Case, start_j: f64, end_j: f64, through_j: f64) -> Balance {
    let coldest = coldest_c(case);
    let mut volumes_m3 = vec![0.0; case.materials.len()];
    let [_, rows, planes] = case.grid.counts();
    for place in (0..planes).flat_map(|z| (0..rows).map(move |y| [y, z])) {
        let first = case.grid.index([0, place[0], place[1]]);
        for (number, volume_m3) in case.cells[first..].iter().zip(case.volumes(place)) {
            if let Some(sum) = volumes_m3.get_mut(usize::from(*number)) {
                *sum += volume_m3;
            }
        }
    }
    let cold_j = case.materials.iter().zip(volumes_m3);
    let cold_j: f64 = cold_j.map(|(m, m3)| m.heat_at(coldest) * m3).sum();
    let (start_j, end_j) = (start_j - cold_j, end_j - cold_j);
    let most = start_j.abs().max(end_j.abs()).max(through_j.abs());
    let missing = (end_j - start_j - through_j).abs();
    let drift = if most > 0.0 { missing / most } else { 0.0 };
    Balance {
        start_j,
        end_j,
        through_j,
        drift,
    }
}
