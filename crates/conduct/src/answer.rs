//! What comes out of a case, and how it stands to what its file expects.

use serde::Serialize;
use solver::case::Case;
use solver::elsewhere::Elsewhere;
use solver::run::{Moment, Outcome, Progress, SolveError, Standing, solve_on};
use thiserror::Error;

use crate::case_file::{ExpectFile, FigureFile};
use crate::reading::{Bare, Line, Told};

pub use solver::kept::{Kept, KeptError};

/// The answer to a case.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answer {
    /// What it is.
    pub title: String,
    /// Cells of the box.
    pub cells: usize,
    /// How many times the box stands for itself, by its planes of symmetry; heat is told for all.
    pub images: f64,
    /// Cells among them that went in stages.
    pub quick_cells: usize,
    /// Where the steps were taken, if not on the processor.
    pub on: Option<String>,
    /// Why they were not, or no longer, taken there.
    pub fell_back: Option<String>,
    /// Steps over the whole box.
    pub steps: usize,
    /// Stages over the quick cells.
    pub stages: usize,
    /// Time reached, s.
    pub end_s: f64,
    /// When the last cell was solid through, s; null where nothing froze.
    pub last_freeze_s: Option<f64>,
    /// Cells that can freeze and are not solid at the end.
    pub unfrozen: usize,
    /// Where the heat went.
    pub heat: Heat,
    /// How far a temperature lies beyond all that was given, K: more than some rounding says that
    /// the steps were too long.
    pub beyond_k: f64,
    /// Probes and fronts at each moment that was asked for, and at the end.
    pub moments: Vec<At>,
    /// What was expected.
    pub expected: Vec<Expected>,
}

/// Where the heat went, J, counted from the coldest temperature given.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Heat {
    /// In the box at the start.
    pub start_j: f64,
    /// In the box at the end.
    pub end_j: f64,
    /// What came in through faces.
    pub through_j: f64,
    /// What is missing or too much, as a share of the whole.
    pub drift: f64,
}

/// A moment.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct At {
    /// When, s.
    pub time_s: f64,
    /// Temperatures of the probes.
    pub probes: Vec<Probed>,
    /// Places of the fronts.
    pub fronts: Vec<Passed>,
}

/// The temperature of a probe.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Probed {
    /// What it is called.
    pub name: String,
    /// Its temperature, °C.
    pub celsius: f64,
}

/// The place of a front.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Passed {
    /// What it is called.
    pub name: String,
    /// How much is solid or where the temperature is passed, mm; null where it is passed nowhere.
    pub mm: Option<f64>,
}

/// An expectation with what came of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Expected {
    /// What is expected, in words.
    pub what: String,
    /// What was expected.
    pub is: f64,
    /// How far off it may be.
    pub within: f64,
    /// What came out; null where nothing did.
    pub got: Option<f64>,
    /// Whether it is near enough.
    pub holds: bool,
}

/// Why a case has no answer.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum NoAnswer {
    /// The solver gives none.
    #[error("not solved: {0}")]
    Solve(#[from] SolveError),
}

/// Runs a case. `go_on` is told of every step and stops the run by answering false.
pub fn run(bare: &Bare, go_on: &mut dyn FnMut(&Progress) -> bool) -> Result<Answer, NoAnswer> {
    run_on(None, bare, None, &mut |progress, _| go_on(progress))
}

/// Runs a case, its steps taken elsewhere where that is given and worth it, from what was kept of
/// an earlier run of it where there is that. `go_on` is told of every step or of several at once,
/// may keep the run as it stands, and stops it by answering false.
pub fn run_on(
    on: Option<&dyn Elsewhere>,
    bare: &Bare,
    kept: Option<Kept>,
    go_on: &mut dyn FnMut(&Progress, &Standing<'_>) -> bool,
) -> Result<Answer, NoAnswer> {
    let outcome = solve_on(on, &bare.case, &bare.wish, kept.as_ref(), go_on)?;
    let whole = outcome.moments.iter().chain([&outcome.last]);
    let moments: Vec<_> = whole.map(|moment| at(bare, moment)).collect();
    let expected = bare
        .expects
        .iter()
        .map(|expect| expected(expect, &moments, (&outcome, bare.images)));
    let balance = outcome.balance;
    Ok(Answer {
        title: bare.title.clone(),
        cells: bare.case.grid.cells(),
        images: bare.images,
        quick_cells: outcome.work.quick_cells,
        on: outcome.ran.as_ref().map(|ran| ran.on.clone()),
        fell_back: outcome.ran.as_ref().and_then(|ran| {
            let (unable, from_s) = ran.fell_back.as_ref()?;
            Some(format!("{unable}: from {from_s:.4} s on the processor"))
        }),
        steps: outcome.work.steps,
        stages: outcome.work.stages,
        end_s: outcome.last.time_s,
        last_freeze_s: outcome.freezing.last_s(),
        unfrozen: outcome.unfrozen,
        beyond_k: outcome.beyond_k,
        heat: Heat {
            start_j: bare.images * balance.start_j,
            end_j: bare.images * balance.end_j,
            through_j: bare.images * balance.through_j,
            drift: balance.drift,
        },
        expected: expected.collect(),
        moments,
    })
}

fn at(bare: &Bare, moment: &Moment) -> At {
    let probed = |(name, at_m): &(String, [f64; 3])| Probed {
        name: name.clone(),
        celsius: celsius_at(&bare.case, moment, *at_m),
    };
    let passed = |(name, line): &(String, Line)| Passed {
        name: name.clone(),
        mm: place_mm(&bare.case, moment, line),
    };
    At {
        time_s: moment.time_s,
        probes: bare.probes.iter().map(probed).collect(),
        fronts: bare.fronts.iter().map(passed).collect(),
    }
}

fn expected(expect: &ExpectFile, moments: &[At], (outcome, images): (&Outcome, f64)) -> Expected {
    let moment = moments
        .iter()
        .find(|at| expect.at_s.is_none_or(|s| at.time_s == s));
    let moment = if expect.at_s.is_none() {
        moments.last()
    } else {
        moment
    };
    let probe = expect.probe.as_ref().map(|name| {
        let probe = moment.and_then(|at| at.probes.iter().find(|probe| probe.name == *name));
        (format!("{name}, °C"), probe.map(|probe| probe.celsius))
    });
    let front = expect.front.as_ref().map(|name| {
        let front = moment.and_then(|at| at.fronts.iter().find(|front| front.name == *name));
        (format!("{name}, mm"), front.and_then(|front| front.mm))
    });
    let figure = expect.figure.map(|figure| match figure {
        FigureFile::LastFreezeS => ("last_freeze_s".to_owned(), outcome.freezing.last_s()),
        FigureFile::ThroughJ => (
            "through_j".to_owned(),
            Some(images * outcome.balance.through_j),
        ),
    });
    let (what, got) = probe.or(front).or(figure).unwrap_or_default();
    let what = match expect.at_s {
        Some(s) => format!("{what} at {s} s"),
        None => what,
    };
    let holds = got.is_some_and(|got| (got - expect.is).abs() <= expect.within);
    Expected {
        what,
        is: expect.is,
        within: expect.within,
        got,
        holds,
    }
}

/// Temperature at a point, straight between the middles of the cells around it that are solved.
fn celsius_at(case: &Case, moment: &Moment, at_m: [f64; 3]) -> f64 {
    let around = [0, 1, 2].map(|axis: usize| between(case, axis, at_m[axis]));
    let (mut sum, mut weights) = (0.0, 0.0);
    for corner in 0..8 {
        let high = |axis: usize| corner >> axis & 1 == 1;
        let place = [0, 1, 2].map(|axis: usize| around[axis].0 + usize::from(high(axis)));
        let weight: f64 = (0..3)
            .map(|axis| {
                if high(axis) {
                    around[axis].1
                } else {
                    1.0 - around[axis].1
                }
            })
            .product();
        if weight == 0.0 {
            continue;
        }
        let cell = case.grid.index(place);
        if case.material(cell).is_some() {
            sum += weight * f64::from(moment.celsius[cell]);
            weights += weight;
        }
    }
    sum / weights
}

/// The cell whose middle lies below a place along an axis, and the share of the way to the next.
fn between(case: &Case, axis: usize, at_m: f64) -> (usize, f64) {
    let count = case.grid.counts()[axis];
    let above = (0..count).find(|&cell| case.grid.middle(axis, cell) > at_m);
    match above {
        Some(0) => (0, 0.0),
        None => (count - 1, 0.0),
        Some(high) => {
            let (low_m, high_m) = (
                case.grid.middle(axis, high - 1),
                case.grid.middle(axis, high),
            );
            (high - 1, (at_m - low_m) / (high_m - low_m))
        }
    }
}

fn place_mm(case: &Case, moment: &Moment, line: &Line) -> Option<f64> {
    let cells: Vec<usize> = (0..case.grid.counts()[line.axis])
        .map(|at| {
            let mut place = line.cell;
            place[line.axis] = at;
            case.grid.index(place)
        })
        .collect();
    match line.told {
        Told::Solid(material) => {
            let of_cell = |(at, cell): (usize, &usize)| {
                let solid = case.materials[usize::from(material)].at(f64::from(moment.j_m3[*cell]));
                match case.cells[*cell] == material {
                    true => solid.solid * case.grid.width(line.axis, at),
                    false => 0.0,
                }
            };
            Some(1e3 * cells.iter().enumerate().map(of_cell).sum::<f64>())
        }
        Told::Passing(celsius) => {
            let warm = |at: usize| f64::from(moment.celsius[cells[at]]) - celsius;
            let high = (1..cells.len())
                .find(|&at| warm(at - 1) * warm(at) <= 0.0 && warm(at) != warm(at - 1))?;
            let share = warm(high - 1) / (warm(high - 1) - warm(high));
            let middle = |at| case.grid.middle(line.axis, at);
            Some(1e3 * (middle(high - 1) + share * (middle(high) - middle(high - 1))))
        }
    }
}
