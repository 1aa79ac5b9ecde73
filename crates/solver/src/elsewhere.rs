//! A run whose steps are taken elsewhere than on the cores of this machine, behind the same doors.
//!
//! Whoever takes the steps is handed the case as it was [`Laid`] out and gives back the
//! [`State`] that it has come to. The loop over time, what is written down, the balance and what is
//! kept stay here: a run that was begun elsewhere goes on here from its last state, and the other
//! way round.

use std::fmt::Debug;

use thiserror::Error;

use crate::freezing::Freezing;
use crate::laid::Laid;

pub use crate::early::root_of;
pub use crate::multirate::MARGIN;
pub use crate::multirate::stages::count as stages;

/// Where else steps can be taken.
pub trait Elsewhere: Debug + Sync {
    /// What it is called.
    fn name(&self) -> &str;

    /// Whether a box of so many cells is better taken there.
    fn is_worth(&self, cells: usize) -> bool;

    /// Makes ready for a case that stands at a state.
    ///
    /// # Errors
    ///
    /// A case that is too large for it or more than it can do, or nothing there any more.
    fn begin<'case>(
        &self,
        laid: &'case Laid<'case>,
        state: &State,
    ) -> Result<Box<dyn Course + 'case>, Unable>;
}

/// A run under way elsewhere.
pub trait Course {
    /// Steps that are wished for at once.
    fn at_once(&self) -> usize;

    /// Goes on by these steps one after the other, and says how many of them were taken: fewer
    /// where nothing is left to freeze, or where it wants to be asked again for the rest. Steps
    /// that were not taken leave no trace.
    ///
    /// # Errors
    ///
    /// Whatever keeps it from going on.
    fn advance(&mut self, steps: &[Step]) -> Result<usize, Unable>;

    /// Cells that can freeze and are not solid yet.
    fn unfrozen(&self) -> usize;

    /// Stages that were taken so far.
    fn stages(&self) -> usize;

    /// Memory that it takes there, bytes.
    fn bytes(&self) -> u64;

    /// Whether so much was done that the state should be read now, lest it is lost.
    fn is_due(&self) -> bool;

    /// The state as it stands.
    ///
    /// # Errors
    ///
    /// Nothing there any more.
    fn state(&self) -> Result<State, Unable>;
}

/// A step to be taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// When it ends, s.
    pub ends_s: f64,
    /// Its length, s.
    pub length_s: f64,
    /// Whether it is left out where nothing is left to freeze.
    pub while_freezing: bool,
}

/// What a run carries from step to step.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct State {
    /// Temperatures of all cells, °C.
    pub celsius: Vec<f32>,
    /// Heat contents of swept cells above the base of their material, J/m³, one entry for every
    /// cell of the box; empty where all such materials are plain.
    pub swept_j_m3: Vec<f32>,
    /// Heat contents of staged cells above the base of their material, J/m³, in their order.
    pub staged_j_m3: Vec<f32>,
    /// What rounding has left of their last change, J/m³.
    pub lost_j_m3: Vec<f32>,
    /// What froze when.
    pub freezing: Freezing,
    /// Heat that came in through all faces so far, J.
    pub through_j: f64,
}

/// Why steps cannot be taken elsewhere.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum Unable {
    /// Nothing there.
    #[error("there is none")]
    Absent,
    /// It refuses to do what is asked.
    #[error("its driver refuses: {words}")]
    Refused {
        /// What it says.
        words: String,
    },
    /// Larger than it takes.
    #[error(
        "{what} would take {:.2} GiB ({needed_bytes} bytes) and it has {:.2} GiB ({had_bytes} \
         bytes) for that",
        gib(*needed_bytes), gib(*had_bytes)
    )]
    TooLarge {
        /// What is too large.
        what: &'static str,
        /// Bytes needed.
        needed_bytes: u64,
        /// Bytes there are.
        had_bytes: u64,
    },
    /// No memory left.
    #[error(
        "it has not enough memory left for what is needed, {:.2} GiB ({needed_bytes} bytes)",
        gib(*needed_bytes)
    )]
    Memory {
        /// Bytes needed.
        needed_bytes: u64,
    },
    /// More stages than it takes.
    #[error("a step would take {stages} stages and it takes at most {most}")]
    Stages {
        /// Stages of a step.
        stages: usize,
        /// The most it takes.
        most: usize,
    },
    /// More materials than it takes.
    #[error("{count} materials lie in cells that go in one step and it takes at most {most}")]
    Materials {
        /// How many there are.
        count: usize,
        /// The most it takes.
        most: usize,
    },
    /// It is gone.
    #[error("it was lost on the way: {words}")]
    Lost {
        /// What was said last.
        words: String,
    },
}

/// What became of the wish to take steps elsewhere.
#[derive(Debug, Clone, PartialEq)]
pub struct Ran {
    /// Where steps were taken, if not here.
    pub on: String,
    /// Why they were not, or no longer, and the time from which they were taken here, s.
    pub fell_back: Option<(Unable, f64)>,
}

fn gib(bytes: u64) -> f64 {
    bytes as f64 / (1024.0 * 1024.0 * 1024.0)
}
