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

mod padded;
mod quick;
mod ramps;
mod record;
mod slow;
mod split;
mod stages;
mod wide;

use pulp::Arch;
use rayon::iter::{IndexedParallelIterator, IntoParallelIterator, ParallelIterator};

use crate::case::Case;
use crate::freezing::Freezing;
use crate::multirate::padded::{Padded, cuts, weights};
use crate::multirate::quick::Quick;
use crate::multirate::ramps::Table;
use crate::multirate::record::Record;
use crate::multirate::slow::{Before, Slow, wake_around};
use crate::multirate::split::{Kind, split};
use crate::multirate::stages::{Stage, weights_of};
use crate::multirate::wide::{OneStage, Prepare, Refresh, RefreshSlow, StepSlow};
use crate::run::Moment;

/// The state of a run.
pub struct Multirate<'case> {
    case: &'case Case,
    padded: Padded,
    tables: Vec<Table>,
    weights: [[Vec<f32>; 2]; 3],
    celsius: Vec<f32>,
    after: Vec<f32>,
    w_mk: Vec<f32>,
    heat: Vec<f32>,
    awake: Vec<bool>,
    slow: Vec<Slow>,
    slow_cuts: Vec<usize>,
    quick: Vec<Quick>,
    quick_cuts: Vec<usize>,
    record: Vec<Record>,
    arch: Arch,
    longest_s: f64,
    step_s: f64,
    stages: usize,
}

/// Growth of the step from one to the next: contact of hot and cold eases with the root of time.
const GROWTH: f64 = 1.03;

/// Share of the longest explicit step that a stage counts with, against overshoot in rounding.
const MARGIN: f64 = 0.95;

/// Fewest quick cells worth a thread of their own: below, waking it costs more than the work.
const QUICK_CELLS: usize = 4096;

/// Fewest slow cells worth a thread of their own.
const SLOW_CELLS: usize = 16384;

impl Multirate<'_> {
    /// Stands at the start of a case.
    pub fn start(case: &Case, share: f64, wished_s: Option<f64>) -> Multirate<'_> {
        let split = split(case, wished_s);
        let padded = Padded::around(&case.grid);
        let tables: Vec<_> = case.materials.iter().map(Table::of).collect();
        let threads = rayon::current_num_threads();
        let (slow_work, quick_work) = work(case, &split.kinds);
        let slow_cuts = cuts(&slow_work, threads, SLOW_CELLS);
        let quick_cuts = cuts(&quick_work, threads, QUICK_CELLS);
        let slow = slow_cuts
            .windows(2)
            .map(|pair| Slow::of(case, &split.kinds, &padded, pair[0]..pair[1]));
        let quick: Vec<_> = (quick_cuts.windows(2))
            .map(|pair| Quick::of(case, &split.kinds, &tables, &padded, pair[0]..pair[1]))
            .collect();
        let record = quick.iter().map(|quick| Record::of(case, quick, share));
        let mut multirate = Multirate {
            case,
            celsius: vec![0.0; padded.len()],
            after: Vec::new(),
            w_mk: vec![0.0; padded.len()],
            heat: Vec::new(),
            awake: vec![false; padded.len() / padded.row],
            slow: slow.collect(),
            record: record.collect(),
            weights: weights(case),
            arch: Arch::new(),
            longest_s: split.longest_s,
            step_s: split.first_s,
            stages: 0,
            padded,
            tables,
            slow_cuts,
            quick,
            quick_cuts,
        };
        multirate.fill(&split.kinds);
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
        self.refresh();
        let limit_s = MARGIN / f64::from(self.prepare());
        self.step_slow(step_s);
        let count = if self.quick_cells() > 0 {
            stages::count(step_s, limit_s)
        } else {
            0
        };
        for stage in 1..=count {
            self.stage(weights_of(stage, count, step_s));
            std::mem::swap(&mut self.celsius, &mut self.after);
        }
        for (record, quick) in self.record.iter_mut().zip(&self.quick) {
            let temperatures = (&self.padded, self.celsius.as_slice());
            record.step(quick, &self.tables, self.case, temperatures, step_s, now_s);
        }
        self.quick.iter_mut().for_each(Quick::settle);
        if count % 2 == 0 {
            // The slow cells stand in the other list: the quick ones follow them there.
            let pieces = self.padded.pieces(&mut self.after, &self.quick_cuts);
            for (quick, piece) in self.quick.iter().zip(pieces) {
                quick.temperatures(&self.tables, piece);
            }
            std::mem::swap(&mut self.celsius, &mut self.after);
        }
        self.stages += count;
        self.step_s = (self.step_s * GROWTH).min(self.longest_s);
    }

    /// Heat in all cells, J.
    pub fn joules(&self) -> f64 {
        let mut joules = vec![0.0; self.case.grid.counts()[2]];
        self.each_heat(&mut |cell, heat| {
            joules[self.case.grid.place(cell)[2]] += heat * self.case.volume(cell);
        });
        joules.iter().sum()
    }

    /// Heat that came in through all faces so far, J.
    pub fn through_j(&self) -> f64 {
        let slow: f64 = self.slow.iter().map(|slow| slow.through_j).sum();
        slow + self.quick.iter().map(|quick| quick.through_j).sum::<f64>()
    }

    /// Cells that can freeze and are not solid yet.
    pub fn unfrozen(&self) -> usize {
        self.record.iter().map(|record| record.unfrozen).sum()
    }

    /// Stages so far, and the cells that go in them.
    pub fn stages(&self) -> (usize, usize) {
        (self.stages, self.quick_cells())
    }

    /// Temperatures and heat contents as they stand.
    pub fn moment(&self, now_s: f64) -> Moment {
        let cells = self.case.grid.cells();
        let mut moment = Moment {
            time_s: now_s,
            celsius: self.case.start_c.clone(),
            j_m3: vec![0.0; cells],
        };
        self.each_heat(&mut |cell, heat| {
            let at = self.padded.at(self.case.grid.place(cell));
            moment.celsius[cell] = self.celsius[at];
            moment.j_m3[cell] = heat as f32;
        });
        moment
    }

    /// What was written down.
    pub fn freezing(&self) -> Freezing {
        let mut all = Freezing::default();
        for (record, quick) in self.record.iter().zip(&self.quick) {
            record.add_to(quick, self.case, &self.padded, &mut all);
        }
        all
    }

    fn quick_cells(&self) -> usize {
        self.quick.iter().map(Quick::cells).sum()
    }

    fn fill(&mut self, kinds: &[Kind]) {
        let changing = |cell: usize| {
            let table = &self.tables[usize::from(self.case.cells[cell])];
            table.plain_j_m3k.is_none() && kinds[cell] != Kind::Quick
        };
        let solved = |cell: &usize| kinds[*cell] != Kind::Void;
        if (0..kinds.len()).filter(solved).any(changing) {
            self.heat = vec![0.0; self.padded.len()];
        }
        for cell in (0..kinds.len()).filter(solved) {
            let at = self.padded.at(self.case.grid.place(cell));
            let number = usize::from(self.case.cells[cell]);
            self.celsius[at] = self.case.start_c[cell];
            let table = &self.tables[number];
            let heat = self.case.materials[number].heat_at(f64::from(self.case.start_c[cell]));
            let heat = (heat - table.base_j_m3) as f32;
            self.w_mk[at] = table.w_mk.at(heat);
            if !self.heat.is_empty() {
                self.heat[at] = heat;
            }
        }
        let pieces = self.padded.pieces(&mut self.celsius, &self.quick_cuts);
        for (quick, piece) in self.quick.iter().zip(pieces) {
            quick.temperatures(&self.tables, piece);
        }
        for slow in &self.slow {
            slow.wake_uneven(&self.padded, &self.celsius, &mut self.awake);
        }
        for span in self.quick.iter().flat_map(|quick| &quick.spans) {
            wake_around(
                span.at as usize / self.padded.row,
                &self.padded,
                &mut self.awake,
            );
        }
        self.after = self.celsius.clone();
    }

    fn refresh(&mut self) {
        let pieces = self.padded.pieces(&mut self.w_mk, &self.quick_cuts);
        let (arch, tables) = (self.arch, &self.tables);
        each(
            self.quick.iter_mut().zip(pieces).collect(),
            |(quick, w_mk)| {
                arch.dispatch(Refresh {
                    quick,
                    tables,
                    w_mk,
                });
            },
        );
        if !self.heat.is_empty() {
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
    fn prepare(&mut self) -> f32 {
        let arch = self.arch;
        let (tables, weights, padded) = (&self.tables, &self.weights, &self.padded);
        let (celsius, w_mk) = (&self.celsius, &self.w_mk);
        let rates = each(self.quick.iter_mut().collect(), |quick| {
            arch.dispatch(Prepare {
                quick,
                tables,
                weights,
                padded,
                celsius,
                w_mk,
            })
        });
        rates.into_iter().fold(0.0, f32::max)
    }

    fn step_slow(&mut self, step_s: f64) {
        let before = Before {
            celsius: &self.celsius,
            w_mk: &self.w_mk,
            tables: &self.tables,
            weights: &self.weights,
            awake: &self.awake,
            step_s,
        };
        let (arch, padded, before) = (self.arch, &self.padded, &before);
        let pieces = self.padded.pieces(&mut self.after, &self.slow_cuts);
        let heats: Vec<&mut [f32]> = match self.heat.is_empty() {
            true => pieces.iter().map(|_| Default::default()).collect(),
            false => self.padded.pieces(&mut self.heat, &self.slow_cuts),
        };
        let slow = self.slow.iter_mut().zip(heats).zip(pieces).collect();
        each(slow, |((slow, heat), after)| {
            arch.dispatch(StepSlow {
                slow,
                before,
                padded,
                heat,
                after,
            });
        });
        for slow in &mut self.slow {
            slow.wake(&self.padded, &mut self.awake);
        }
    }

    fn stage(&mut self, stage: Stage) {
        let pieces = self.padded.pieces(&mut self.after, &self.quick_cuts);
        let (arch, tables, padded) = (self.arch, &self.tables, &self.padded);
        let celsius = &self.celsius;
        each(
            self.quick.iter_mut().zip(pieces).collect(),
            |(quick, after)| {
                arch.dispatch(OneStage {
                    quick,
                    stage,
                    tables,
                    padded,
                    celsius,
                    after,
                });
            },
        );
    }

    /// Calls with each solved cell and its heat content, J/m³, counted as in its table. Spans of
    /// quick cells stand in the order of the cells and are passed as the cells go by.
    fn each_heat(&self, call: &mut dyn FnMut(usize, f64)) {
        let mut spans = (self.quick.iter())
            .flat_map(|quick| quick.spans.iter().map(move |span| (&quick.heat, span)));
        let mut next = spans.next();
        for cell in 0..self.case.grid.cells() {
            let Some(material) = self.case.material(cell) else {
                continue;
            };
            let table = &self.tables[usize::from(self.case.cells[cell])];
            let at = self.padded.at(self.case.grid.place(cell));
            while next.is_some_and(|(_, span)| span.within(0).end <= at) {
                next = spans.next();
            }
            let quick = next.filter(|(_, span)| span.within(0).start <= at);
            let heat = match quick {
                Some((heat, span)) => {
                    f64::from(heat[span.from as usize + at - span.at as usize]) + table.base_j_m3
                }
                None if table.plain_j_m3k.is_none() => f64::from(self.heat[at]) + table.base_j_m3,
                None => material.heat_at(f64::from(self.celsius[at])),
            };
            call(cell, heat);
        }
    }
}

/// Slow and quick cells of each plane.
fn work(case: &Case, kinds: &[Kind]) -> (Vec<usize>, Vec<usize>) {
    let [along, rows, planes] = case.grid.counts();
    let (mut slow, mut quick) = (vec![0; planes], vec![0; planes]);
    for (cell, kind) in kinds.iter().enumerate() {
        let plane = cell / (along * rows);
        match kind {
            Kind::Even | Kind::Mixed => slow[plane] += 1,
            Kind::Quick => quick[plane] += 1,
            Kind::Void => {}
        }
    }
    (slow, quick)
}

/// Does some work for each piece, side by side where there are several.
fn each<Piece: Send, Answer: Send>(
    mut pieces: Vec<Piece>,
    work: impl Fn(Piece) -> Answer + Sync + Send,
) -> Vec<Answer> {
    match pieces.len() {
        1 => pieces.pop().map(work).into_iter().collect(),
        _ => pieces.into_par_iter().with_max_len(1).map(work).collect(),
    }
}
