//! A run on a card: steps are recorded a batch at a time, and only then looked at.
//!
//! How many stages a step takes is found by the card itself, from the highest rate of any cell. A
//! batch is recorded with as many as the last rate asks for and a little more; a step that wants
//! still more stops all that is behind it in the batch before it has changed anything, and is
//! recorded again. The same goes for steps behind the one after which all is solid.

use std::cell::Cell;
use std::ops::Range;
use std::sync::Arc;
use std::time::{Duration, Instant};

use solver::elsewhere::{Course, MARGIN, State, Step, Unable, stages};
use solver::laid::Laid;
use wgpu::{BindGroup, Buffer, BufferBinding, CommandEncoder, ComputePass};

use crate::device::Device;
use crate::groups::{Groups, Slab};
use crate::lists::{Lists, needed_bytes};
use crate::packed::Packed;
use crate::programs::{Program, Programs, group, pass};
use crate::shape::{RUN, slabs};
use crate::steps::{End, STEP_BYTES, StepFigures, Told};

/// A run on a card.
#[derive(Debug)]
pub struct OnCard<'case> {
    laid: &'case Laid<'case>,
    device: Arc<Device>,
    programs: Arc<Programs>,
    packed: Packed,
    lists: Lists,
    slabs: Vec<Slab>,
    groups: Vec<Groups>,
    /// Steps of a batch, and how they are picked one at a time, without and with the stage.
    steps: Buffer,
    of_step: [BindGroup; 2],
    told: Told,
    /// Which of both lists holds the temperatures.
    current: usize,
    unfrozen: usize,
    stages: usize,
    /// Highest rate of any cell as last seen, 1/s.
    rate: f64,
    /// Stages are counted for no lower rate, 1/s.
    least_rate: f64,
    /// Heat that came in through faces before, J.
    before_j: f64,
    /// When the state was last known here, and how long it took to read it.
    known: Cell<(Instant, Duration)>,
}

/// Most steps of a batch: with more, news of the run comes seldom; with fewer, the card waits for
/// the processor between them.
const MOST_STEPS: usize = 48;

/// Steps that are handed over at a time, so that the card begins while the rest is recorded.
const HANDED_OVER: usize = 8;

/// Most stages of a step; more than a case of the trade has ever asked for.
const MOST_STAGES: usize = 512;

/// How much higher than the last the rate may become within a batch without stopping it: it rises
/// by two thirds over a whole freezing, as metal conducts better when it is solid.
const SPARE: f64 = 1.04;

/// How often a step may be recorded anew before the card is given up.
const TRIES: usize = 3;

/// How long a run goes on until its state is read, so that no more is lost with a card.
const KNOWN_FOR: Duration = Duration::from_secs(10);

/// How many times longer than reading it takes a run goes on at least: reading then costs a run at
/// most a thirtieth.
const READINGS: u32 = 30;

/// Threads of a group, and of one of a stage: each of the latter carries more, and so fewer of them
/// go together.
const GROUP: usize = 256;
const GROUP_OF_STAGE: usize = 128;

/// Most groups along one axis that every card takes, and a power of two.
const WIDE: usize = 32768;

impl<'case> OnCard<'case> {
    /// Makes ready for a case at a state.
    ///
    /// # Errors
    ///
    /// A case that is too large, or a card that is no longer there.
    pub fn begin(
        device: &Arc<Device>,
        programs: &Arc<Programs>,
        laid: &'case Laid<'case>,
        state: &State,
    ) -> Result<OnCard<'case>, Unable> {
        let packed = Packed::of(laid)?;
        let slabs = slabs(&packed.shape, &packed.starts, device.bounds.seen_bytes)?;
        let lists = Lists::of(device, laid, &packed).map_err(|unable| match unable {
            Unable::Memory { .. } => Unable::Memory {
                needed_bytes: needed_bytes(laid, &packed),
            },
            other => other,
        })?;
        lists.fill(device, laid, &packed, state);
        let stride = u64::from(device.stride);
        let steps = device.figures("steps", stride * MOST_STEPS as u64);
        let turns = device.figures("turns", stride * MOST_STAGES as u64);
        for turn in 0..MOST_STAGES as u32 {
            let number = [turn + 1, 0, 0, 0];
            device.queue.write_buffer(
                &turns,
                stride * u64::from(turn),
                bytemuck::bytes_of(&number),
            );
        }
        let told = Told::of(device, MOST_STEPS);
        let slabs: Vec<Slab> = slabs
            .into_iter()
            .map(|planes| Slab::of(&packed, &lists, planes))
            .collect();
        let groups = slabs
            .iter()
            .map(|slab| Groups::of(device, programs, &packed, (&lists, &told), slab))
            .collect();
        let one = |buffer, size| {
            wgpu::BindingResource::Buffer(BufferBinding {
                buffer,
                offset: 0,
                size: std::num::NonZeroU64::new(size),
            })
        };
        let of_step = [
            group(device, &programs.of_step[0], &[one(&steps, STEP_BYTES)]),
            group(
                device,
                &programs.of_step[1],
                &[one(&steps, STEP_BYTES), one(&turns, 16)],
            ),
        ];
        device.wait()?;
        Ok(OnCard {
            unfrozen: laid.unfrozen(state),
            rate: 1.0 / laid.quickest_s,
            least_rate: 1.0 / laid.borders_s,
            before_j: state.through_j,
            known: Cell::new((Instant::now(), Duration::ZERO)),
            device: Arc::clone(device),
            programs: Arc::clone(programs),
            stages: 0,
            current: 0,
            laid,
            packed,
            lists,
            slabs,
            groups,
            steps,
            of_step,
            told,
        })
    }

    /// Records and runs steps, and gives what they left: an end for each and one for the last, and
    /// their rates, 1/s.
    fn run(&mut self, steps: &[Step], stages: &[usize]) -> Result<(Vec<End>, Vec<f32>), Unable> {
        let stride = self.device.stride as usize;
        let mut figures = vec![0_u8; stride * steps.len()];
        let each = figures.chunks_mut(stride).zip(steps).zip(stages).zip(0..);
        for (((bytes, step), stages), number) in each {
            let figures = StepFigures::of(step, *stages, number, self.least_rate);
            bytes[..size_of::<StepFigures>()].copy_from_slice(bytemuck::bytes_of(&figures));
        }
        self.device.queue.write_buffer(&self.steps, 0, &figures);
        self.told.begin(&self.device, steps.len(), self.unfrozen);
        for first in (0..steps.len()).step_by(HANDED_OVER) {
            let these = first..steps.len().min(first + HANDED_OVER);
            let last = these.end == steps.len();
            let mut encoder = self
                .device
                .inner
                .create_command_encoder(&Default::default());
            self.record(&mut encoder, these, stages);
            if last {
                self.told.copy(&mut encoder);
            }
            self.device.queue.submit([encoder.finish()]);
        }
        self.told.read(&self.device, steps.len())
    }

    fn record(&self, encoder: &mut CommandEncoder, these: Range<usize>, stages: &[usize]) {
        let mut on = encoder.begin_compute_pass(&pass());
        for number in these {
            let from = (self.current + number) % 2;
            let offset = number as u32 * self.device.stride;
            if !self.lists.plain {
                self.sweep(&mut on, &self.programs.conduct, offset, |groups| {
                    &groups.conduct
                });
            }
            // Both ends of a step are always told, be there a staged cell or not.
            self.staged(&mut on, &self.programs.prepare, &[offset], |groups| {
                &groups.prepare[from]
            });
            let program = match self.lists.plain {
                true => &self.programs.sweep,
                false => &self.programs.sweep_changing,
            };
            self.sweep(&mut on, program, offset, |groups| &groups.sweep[from]);
            let has_staged = !self.packed.runs.is_empty();
            for stage in 0..if has_staged { stages[number] } else { 0 } {
                let turn = stage as u32 * self.device.stride;
                self.staged(
                    &mut on,
                    &self.programs.stage,
                    &[offset, turn],
                    |groups| match stage {
                        0 => &groups.first[from],
                        _ => &groups.stage[stage % 2],
                    },
                );
            }
            self.staged(&mut on, &self.programs.settle, &[offset], |groups| {
                &groups.settle[from]
            });
        }
    }

    /// Stages that cover a step at a rate, 1/s.
    fn stages_of(&self, step: &Step, rate: f64) -> usize {
        stages(step.length_s, MARGIN / rate.max(self.least_rate))
    }

    /// Runs a program over the staged cells of all slabs.
    fn staged<'of>(
        &'of self,
        on: &mut ComputePass<'_>,
        program: &Program,
        offsets: &[u32],
        group: impl Fn(&'of Groups) -> &'of BindGroup,
    ) {
        on.set_pipeline(&program.pipeline);
        on.set_bind_group(1, &self.of_step[offsets.len() - 1], offsets);
        for (slab, groups) in self.slabs.iter().zip(&self.groups) {
            // Threads of a stage take four cells each.
            let (of_run, group_of) = match offsets.len() {
                1 => (RUN, GROUP),
                _ => (RUN / 4, GROUP_OF_STAGE),
            };
            let count = (slab.figures.run_count as usize * of_run)
                .div_ceil(group_of)
                .max(1);
            let wide = count.min(WIDE);
            on.set_bind_group(0, group(groups), &[]);
            on.dispatch_workgroups(wide as u32, count.div_ceil(wide) as u32, 1);
        }
    }

    /// Runs a program over the cells of all slabs.
    fn sweep<'of>(
        &'of self,
        on: &mut ComputePass<'_>,
        program: &Program,
        offset: u32,
        group: impl Fn(&'of Groups) -> &'of BindGroup,
    ) {
        on.set_pipeline(&program.pipeline);
        on.set_bind_group(1, &self.of_step[0], &[offset]);
        let [along, rows, _] = self.packed.shape.counts;
        // Threads of the plain sweep take four cells each, sixteen by eight of them a group.
        let [x, y] = match self.lists.plain {
            true => [along.div_ceil(64), rows.div_ceil(8)],
            false => [along.div_ceil(64), rows.div_ceil(2)],
        };
        for (slab, groups) in self.slabs.iter().zip(&self.groups) {
            let z = slab.figures.nz.div_ceil(slab.figures.chunk);
            on.set_bind_group(0, group(groups), &[]);
            on.dispatch_workgroups(x as u32, y as u32, z);
        }
    }
}

impl Course for OnCard<'_> {
    fn at_once(&self) -> usize {
        MOST_STEPS
    }

    fn advance(&mut self, steps: &[Step]) -> Result<usize, Unable> {
        let steps = &steps[..steps.len().min(MOST_STEPS)];
        for _ in 0..TRIES {
            let stages: Vec<usize> = steps
                .iter()
                .map(|step| self.stages_of(step, self.rate * SPARE))
                .collect();
            if let Some(&stages) = stages.iter().find(|stages| **stages > MOST_STAGES) {
                return Err(Unable::Stages {
                    stages,
                    most: MOST_STAGES,
                });
            }
            let (ends, rates) = self.run(steps, &stages).map_err(lost)?;
            let reached = ends[1..].iter().take_while(|end| end.reached != 0);
            let taken = reached.count();
            for (step, rate) in steps.iter().zip(&rates[..taken]) {
                self.stages += self.stages_of(step, f64::from(*rate));
            }
            // The rate of the step that was not taken is the one that it was not taken for.
            let seen = &rates[..rates.len().min(taken + 1)];
            let seen = seen.iter().rev().find(|rate| rate.is_normal());
            self.rate = seen.map_or(self.rate, |rate| f64::from(*rate));
            self.unfrozen = ends[taken].unfrozen as usize;
            self.current = (self.current + taken) % 2;
            if taken > 0 {
                return Ok(taken);
            }
        }
        Err(Unable::Lost {
            words: "a step was recorded anew and again and not taken".to_owned(),
        })
    }

    fn unfrozen(&self) -> usize {
        self.unfrozen
    }

    fn stages(&self) -> usize {
        self.stages
    }

    fn bytes(&self) -> u64 {
        needed_bytes(self.laid, &self.packed)
    }

    fn is_due(&self) -> bool {
        let (known, took) = self.known.get();
        known.elapsed() > KNOWN_FOR.max(READINGS * took)
    }

    fn state(&self) -> Result<State, Unable> {
        let begun = Instant::now();
        let (device, lists) = (&self.device, &self.lists);
        let state = lists.state(device, self.laid, &self.packed, self.current);
        let mut state = state.map_err(lost)?;
        state.through_j += self.before_j;
        self.known.set((Instant::now(), begun.elapsed()));
        Ok(state)
    }
}

/// A card that was ready and refuses what it did before is lost, whatever its driver says.
fn lost(unable: Unable) -> Unable {
    match unable {
        Unable::Refused { words } => Unable::Lost { words },
        other => other,
    }
}
