//! A step as it goes to the programs, and what they leave of it.

use bytemuck::{Pod, Zeroable};
use solver::elsewhere::{MARGIN, Step, Unable, root_of};
use wgpu::{Buffer, BufferDescriptor, BufferUsages, CommandEncoder};

use crate::device::Device;

/// A step as the programs read it.
#[derive(Debug, Clone, Copy, Pod, Zeroable)]
#[repr(C)]
pub struct StepFigures {
    number: u32,
    most_stages: u32,
    while_freezing: u32,
    zero: u32,
    length_s: f32,
    begins_s: f32,
    root_s: f32,
    margin: f32,
    least_rate: f32,
    unused: [f32; 3],
}

/// Bytes of a step.
pub const STEP_BYTES: u64 = size_of::<StepFigures>() as u64;

/// What the programs tell of the steps of a batch, in two lists of the card.
#[derive(Debug)]
pub struct Told {
    /// How each step ended, and what the first begins with.
    pub ends: Buffer,
    /// The highest rate of any cell in each step, 1/s; nought where it was not reached.
    pub rates: Buffer,
    /// Where both are read.
    room: Buffer,
}

/// How things stand as a step begins.
#[derive(Debug, Clone, Copy, Default, Pod, Zeroable)]
#[repr(C)]
pub struct End {
    /// Whether it is reached.
    pub reached: u32,
    /// Cells that can freeze and are not solid.
    pub unfrozen: u32,
}

impl Told {
    /// For batches of so many steps.
    pub fn of(device: &Device, steps: usize) -> Told {
        let ends = device.list("ends", ((steps + 1) * size_of::<End>()) as u64);
        let rates = device.list("rates", (steps * size_of::<f32>()) as u64);
        let room = device.inner.create_buffer(&BufferDescriptor {
            label: Some("room"),
            size: ends.size() + rates.size(),
            usage: BufferUsages::MAP_READ | BufferUsages::COPY_DST,
            mapped_at_creation: false,
        });
        Told { ends, rates, room }
    }

    /// Begins a batch of so many steps with so many cells that are not solid.
    pub fn begin(&self, device: &Device, steps: usize, unfrozen: usize) {
        let mut ends = vec![End::default(); steps + 1];
        ends[0] = End {
            reached: 1,
            unfrozen: unfrozen as u32,
        };
        device.put(&self.ends, 0, &ends);
        device.put(&self.rates, 0, &vec![0.0_f32; steps]);
    }

    /// Records that both lists are copied to where they are read.
    pub fn copy(&self, encoder: &mut CommandEncoder) {
        let (ends, rates) = (self.ends.size(), self.rates.size());
        encoder.copy_buffer_to_buffer(&self.ends, 0, &self.room, 0, ends);
        encoder.copy_buffer_to_buffer(&self.rates, 0, &self.room, ends, rates);
    }

    /// Reads what so many steps have left, once all is done that was asked for: an end for each and
    /// one for the last, and their rates, 1/s.
    ///
    /// # Errors
    ///
    /// A card that is no longer there.
    pub fn read(&self, device: &Device, steps: usize) -> Result<(Vec<End>, Vec<f32>), Unable> {
        let mut words = vec![0_u32; (self.room.size() / 4) as usize];
        device.read(&self.room, bytemuck::cast_slice_mut(&mut words))?;
        let (ends, rates) = words.split_at((self.ends.size() / 4) as usize);
        Ok((
            bytemuck::cast_slice(ends)[..=steps].to_vec(),
            bytemuck::cast_slice(rates)[..steps].to_vec(),
        ))
    }
}

impl StepFigures {
    /// Of a step with so many stages made ready, by its number within a batch.
    pub fn of(step: &Step, stages: usize, number: u32, least_rate: f64) -> StepFigures {
        let begins_s = step.ends_s - step.length_s;
        StepFigures {
            number,
            most_stages: stages as u32,
            while_freezing: u32::from(step.while_freezing),
            zero: 0,
            length_s: step.length_s as f32,
            begins_s: begins_s as f32,
            root_s: root_of(begins_s, step.ends_s) as f32,
            margin: MARGIN as f32,
            least_rate: least_rate as f32,
            unused: [0.0; 3],
        }
    }
}
