//! The scheme for use: many small stages where heat is quick, one step elsewhere.
//!
//! Metal conducts a hundred times as fast as what surrounds it, and an explicit step over all cells
//! would have to be as short as the quickest of them allows. So the cells are split: the slow ones
//! go in one explicit step as long as they allow, the quick ones and a ring of their neighbours
//! cover the same step in a dozen stages of a method whose stability grows with the square of the
//! stages (Runge, Kutta and Legendre, first order: Meyer, Balsara and Aslam 2012, from memory).
//!
//! 1. What passes between quick and slow cells is taken once, at the start of a step, and given to
//!    both: heat is kept to rounding.
//! 2. Conductances are taken once a step, at the temperatures it starts from.
//! 3. A stage is written in increments of what the step has changed,
//!    `y + lean (y - older) + w M(y)`. In the form of the books, with weights that add up to one
//!    only before rounding, single precision loses heat.
//! 4. Sums are in double precision, and over pieces in their order: the number of threads changes
//!    the balance in its last digits and the temperatures not at all.

mod contents;
mod fetch;
mod filled;
mod keeping;
pub mod padded;
mod pieces;
pub mod quick;
pub mod ramps;
mod record;
mod slow;
pub mod split;
pub mod stages;
mod wide;
mod work;

use pulp::Arch;

use crate::case::Case;
use crate::early::{Early, root_of};
use crate::freezing::Freezing;
use crate::multirate::padded::{Padded, cuts, weights};
use crate::multirate::pieces::{each, work};
use crate::multirate::quick::{Given, Plan, Quick, Told};
use crate::multirate::ramps::Table;
use crate::multirate::record::{Record, Step};
use crate::multirate::slow::{Borders, Slow, Step as SlowStep};
use crate::multirate::split::split;
use crate::multirate::stages::{Stage, weights_of};
use crate::multirate::work::{FillQuick, OneStage, Prepare, RefreshSlow, Settle, StepSlow};
use crate::run::{Moment, Wish};

/// The state of a run.
pub struct Multirate<'case> {
    case: &'case Case,
    padded: Padded,
    tables: Vec<Table>,
    weights: [[Vec<f32>; 2]; 3],
    celsius: Vec<f32>,
    /// Temperatures of quick cells after every other stage.
    between: Vec<f32>,
    w_mk: Vec<f32>,
    heat: Vec<f32>,
    awake: Vec<bool>,
    slow: Vec<Slow>,
    slow_cuts: Vec<usize>,
    borders: Vec<Borders>,
    quick: Vec<Quick>,
    quick_cuts: Vec<usize>,
    quick_cells: usize,
    record: Vec<Record>,
    arch: Arch,
    longest_s: f64,
    borders_s: f64,
    step_s: f64,
    stages: usize,
    /// What came in through faces before the run was taken up, J.
    before_j: f64,
}

/// Growth of the step from one to the next: contact of hot and cold eases with the root of time.
const GROWTH: f64 = 1.03;

/// The step after one that was to be so long, s.
pub fn grown_s(step_s: f64, longest_s: f64) -> f64 {
    (step_s * GROWTH).min(longest_s)
}

/// Share of the longest explicit step that a stage counts with, against overshoot in rounding.
pub const MARGIN: f64 = 0.95;

/// Fewest quick cells worth a thread of their own: below, waking it costs more than the work.
const QUICK_CELLS: usize = 4096;

/// Fewest slow cells worth a thread of their own.
const SLOW_CELLS: usize = 16384;

impl Multirate<'_> {
    /// Stands at the start of a case.
    pub fn start<'case>(case: &'case Case, wish: &Wish) -> Multirate<'case> {
        let split = split(case, wish.longest_step_s);
        let padded = Padded::around(&case.grid, split.overhang);
        let tables: Vec<_> = case.materials.iter().map(Table::of).collect();
        let threads = rayon::current_num_threads();
        let (slow_work, quick_work) = work(case, &split.kinds);
        let slow_cuts = cuts(&slow_work, threads, SLOW_CELLS);
        let quick_cuts = cuts(&quick_work, threads, QUICK_CELLS);
        let slow = slow_cuts
            .windows(2)
            .map(|pair| Slow::of(case, &split.kinds, &padded, pair[0]..pair[1]));
        let plan = Plan {
            case,
            kinds: &split.kinds,
            early: &Early::of(case, wish.early_contact),
            tables: &tables,
            padded: &padded,
        };
        let quick: Vec<_> = (quick_cuts.windows(2))
            .map(|pair| Quick::of(&plan, pair[0]..pair[1]))
            .collect();
        let record =
            (quick.iter()).map(|quick| Record::of(case, &tables, quick, wish.passing_share));
        let mut multirate = Multirate {
            case,
            celsius: vec![0.0; padded.len()],
            between: vec![0.0; padded.len()],
            w_mk: Vec::new(),
            heat: Vec::new(),
            awake: vec![false; padded.len() / padded.row],
            slow: slow.collect(),
            record: record.collect(),
            quick_cells: quick.iter().map(Quick::cells).sum(),
            weights: weights(case),
            arch: Arch::new(),
            longest_s: split.longest_s,
            borders_s: split.borders_s,
            step_s: split.first_s,
            stages: 0,
            before_j: 0.0,
            padded,
            tables,
            borders: vec![Borders::default(); slow_cuts.len() - 1],
            slow_cuts,
            quick,
            quick_cuts,
        };
        multirate.fill(split);
        multirate
    }

    /// Longest step, s.
    pub fn longest_s(&self) -> f64 {
        self.longest_s
    }

    /// The step to take next, s.
    pub fn step_s(&self) -> f64 {
        self.step_s
    }

    /// Goes on by a step, which ends at `now_s`.
    pub fn advance(&mut self, step_s: f64, now_s: f64) {
        if self.slow_cuts.len() > 2 || self.quick_cuts.len() > 2 {
            // Among the threads, handing out work costs far less than from outside.
            rayon::scope(|_| self.step(step_s, now_s));
        } else {
            self.step(step_s, now_s);
        }
    }

    fn step(&mut self, step_s: f64, now_s: f64) {
        self.refresh();
        let root_s = root_of(now_s - step_s, now_s);
        let fastest = 1.0 / f64::from(self.prepare(root_s as f32));
        let limit_s = MARGIN * fastest.min(self.borders_s);
        self.step_slow(step_s);
        let count = if self.quick_cells > 0 {
            stages::count(step_s, limit_s)
        } else {
            0
        };
        for stage in 1..=count {
            self.stage(weights_of(stage, count, step_s));
            std::mem::swap(&mut self.celsius, &mut self.between);
        }
        self.settle(step_s, now_s);
        if count % 2 == 1 {
            // The slow cells stand in the other list: the quick ones follow them there.
            std::mem::swap(&mut self.celsius, &mut self.between);
            self.fill_quick_temperatures();
        }
        self.stages += count;
        self.step_s = grown_s(self.step_s, self.longest_s);
    }

    /// Heat that came in through all faces so far, J.
    pub fn through_j(&self) -> f64 {
        let slow: f64 = self.slow.iter().map(|slow| slow.through_j).sum();
        self.before_j + slow + self.quick.iter().map(|quick| quick.through_j).sum::<f64>()
    }

    /// Cells that can freeze and are not solid yet.
    pub fn unfrozen(&self) -> usize {
        self.record.iter().map(|record| record.unfrozen).sum()
    }

    /// Stages so far, and the cells that go in them.
    pub fn stages(&self) -> (usize, usize) {
        (self.stages, self.quick_cells)
    }

    /// The last moment and what was written down; what is no longer needed makes room for it.
    pub fn finish(mut self, now_s: f64) -> (Moment, Freezing) {
        self.between = Vec::new();
        self.w_mk = Vec::new();
        self.slow = Vec::new();
        let freezing = self.freezing();
        self.record = Vec::new();
        (self.into_moment(now_s), freezing)
    }

    /// What was written down.
    fn freezing(&self) -> Freezing {
        let mut all = Freezing::default();
        for (record, quick) in self.record.iter().zip(&self.quick) {
            record.add_to(quick, self.case, &self.padded, &mut all);
        }
        all
    }

    /// Temperatures of quick cells, read off their heat contents.
    fn fill_quick_temperatures(&mut self) {
        let pieces = self.padded.pieces(&mut self.celsius, &self.quick_cuts);
        let (arch, tables) = (self.arch, self.tables.as_slice());
        let quick = self.quick.iter().zip(pieces).collect();
        each(quick, |(quick, figures)| {
            arch.dispatch(FillQuick {
                quick,
                told: Told::Celsius,
                tables,
                figures,
            });
        });
    }

    /// Conductivities as they stand: into a list of their own where slow cells change theirs,
    /// else into the temperatures between stages, which are not taken yet.
    fn refresh(&mut self) {
        let list = match self.w_mk.is_empty() {
            true => &mut self.between,
            false => &mut self.w_mk,
        };
        let pieces = self.padded.pieces(list, &self.quick_cuts);
        let (arch, tables) = (self.arch, self.tables.as_slice());
        let quick = self.quick.iter().zip(pieces).collect();
        each(quick, |(quick, figures)| {
            arch.dispatch(FillQuick {
                quick,
                told: Told::Conductivity,
                tables,
                figures,
            });
        });
        if !self.heat.is_empty() && !self.w_mk.is_empty() {
            let pieces = self.padded.pieces(&mut self.w_mk, &self.slow_cuts);
            let heats = self.padded.pieces(&mut self.heat, &self.slow_cuts);
            let slow = self.slow.iter().zip(heats).zip(pieces).collect();
            let (padded, awake) = (&self.padded, self.awake.as_slice());
            each(slow, |((slow, heat), w_mk): ((&Slow, &mut [f32]), _)| {
                arch.dispatch(RefreshSlow {
                    slow,
                    tables,
                    padded,
                    awake,
                    heat,
                    w_mk,
                });
            });
        }
    }

    /// Takes what stands still during a step and gives the highest rate, 1/s.
    fn prepare(&mut self, root_s: f32) -> f32 {
        let arch = self.arch;
        let given = Given {
            tables: &self.tables,
            weights: &self.weights,
            padded: &self.padded,
            celsius: &self.celsius,
            w_mk: match self.w_mk.is_empty() {
                true => &self.between,
                false => &self.w_mk,
            },
            root_s,
        };
        let given = &given;
        let rates = each(self.quick.iter_mut().collect(), |quick| {
            arch.dispatch(Prepare { quick, given })
        });
        rates.into_iter().fold(0.0, f32::max)
    }

    /// Takes the slow cells through a step, in place.
    fn step_slow(&mut self, step_s: f64) {
        let arch = self.arch;
        let step = &SlowStep {
            tables: &self.tables,
            weights: &self.weights,
            padded: &self.padded,
            w_mk: &self.w_mk,
            awake: &self.awake,
            step_s,
        };
        if self.slow.iter().any(Slow::has_mixed) {
            let celsius = self.celsius.as_slice();
            each(self.slow.iter_mut().collect(), |slow| {
                slow.gather(step, celsius)
            });
        }
        Borders::take(
            &self.padded,
            &self.celsius,
            &self.slow_cuts,
            &mut self.borders,
        );
        let pieces = self.padded.pieces(&mut self.celsius, &self.slow_cuts);
        let heats: Vec<&mut [f32]> = match self.heat.is_empty() {
            true => pieces.iter().map(|_| Default::default()).collect(),
            false => self.padded.pieces(&mut self.heat, &self.slow_cuts),
        };
        let slow = self
            .slow
            .iter_mut()
            .zip(&self.borders)
            .zip(heats)
            .zip(pieces);
        each(slow.collect(), |(((slow, borders), heat), celsius)| {
            arch.dispatch(StepSlow {
                slow,
                step,
                borders,
                heat,
                celsius,
            });
        });
        for slow in &mut self.slow {
            slow.wake(&self.padded, &mut self.awake);
        }
    }

    fn stage(&mut self, stage: Stage) {
        let pieces = self.padded.pieces(&mut self.between, &self.quick_cuts);
        let (arch, given) = (self.arch, (self.tables.as_slice(), &self.padded));
        let celsius = &self.celsius;
        let quick = self.quick.iter_mut().zip(pieces).collect();
        each(quick, |(quick, after)| {
            arch.dispatch(OneStage {
                quick,
                stage,
                given,
                celsius,
                after,
            });
        });
    }

    /// Ends a step of the quick cells.
    fn settle(&mut self, step_s: f64, now_s: f64) {
        let step = Step {
            tables: &self.tables,
            case: self.case,
            padded: &self.padded,
            celsius: &self.celsius,
            step_s,
            now_s,
        };
        let (arch, step) = (self.arch, &step);
        let quick = self.quick.iter_mut().zip(&mut self.record).collect();
        each(quick, |(quick, record)| {
            arch.dispatch(Settle {
                quick,
                record,
                step,
            });
        });
    }
}
