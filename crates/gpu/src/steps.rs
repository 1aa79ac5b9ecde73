//! A step as it goes to the programs, and what they leave of it.

use bytemuck::{Pod, Zeroable};
use solver::elsewhere::{MARGIN, Step, root_of};

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

/// What the programs leave of a step.
#[derive(Debug, Clone, Copy, Default, Pod, Zeroable)]
#[repr(C)]
pub struct Slot {
    /// Whether it is reached.
    pub reached: u32,
    /// Cells that can freeze and are not solid as it begins.
    pub unfrozen: u32,
    /// Highest rate of any cell, 1/s.
    pub rate: f32,
    /// Nothing: entries are as long as the programs count.
    pub unused: u32,
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
