//! A scheme that runs: one of the two behind the same doors.

use crate::case::Case;
use crate::freezing::Freezing;
use crate::kept::{Kept, KeptError};
use crate::multirate::Multirate;
use crate::reference::Reference;
use crate::run::{Mode, Moment, Wish};

/// A scheme with its state; the reference with its longest step.
pub enum Scheme<'case> {
    Reference(Box<Reference<'case>>, Option<f64>),
    Multirate(Box<Multirate<'case>>),
}

impl Scheme<'_> {
    /// Stands at the start of a case.
    pub fn start<'case>(case: &'case Case, wish: &Wish) -> Scheme<'case> {
        match wish.mode {
            Mode::Reference => {
                let reference = Box::new(Reference::start(case, wish));
                Scheme::Reference(reference, wish.longest_step_s)
            }
            Mode::Multirate => Scheme::Multirate(Box::new(Multirate::start(case, wish))),
        }
    }

    /// Longest step, s.
    pub fn longest_s(&self) -> f64 {
        match self {
            Scheme::Reference(..) => self.step_s(),
            Scheme::Multirate(multirate) => multirate.longest_s(),
        }
    }

    /// The step to take next, s.
    pub fn step_s(&self) -> f64 {
        match self {
            Scheme::Reference(reference, longest_s) => {
                reference.step_s.min(longest_s.unwrap_or(f64::INFINITY))
            }
            Scheme::Multirate(multirate) => multirate.step_s(),
        }
    }

    /// Goes on by a step, which ends at `now_s`.
    pub fn advance(&mut self, step_s: f64, now_s: f64) {
        match self {
            Scheme::Reference(reference, _) => reference.advance(step_s, now_s),
            Scheme::Multirate(multirate) => multirate.advance(step_s, now_s),
        }
    }

    /// Heat in all cells, J.
    pub fn joules(&self) -> f64 {
        match self {
            Scheme::Reference(reference, _) => reference.joules(),
            Scheme::Multirate(multirate) => multirate.joules(),
        }
    }

    /// Heat that came in through all faces so far, J.
    pub fn through_j(&self) -> f64 {
        match self {
            Scheme::Reference(reference, _) => reference.through_j,
            Scheme::Multirate(multirate) => multirate.through_j(),
        }
    }

    /// Cells that can freeze and are not solid yet.
    pub fn unfrozen(&self) -> usize {
        match self {
            Scheme::Reference(reference, _) => reference.unfrozen,
            Scheme::Multirate(multirate) => multirate.unfrozen(),
        }
    }

    /// Temperatures and heat contents as they stand.
    pub fn moment(&self, now_s: f64) -> Moment {
        match self {
            Scheme::Reference(reference, _) => reference.moment(now_s),
            Scheme::Multirate(multirate) => multirate.moment(now_s),
        }
    }

    /// Stages so far, and the cells that go in them.
    pub fn stages(&self) -> (usize, usize) {
        match self {
            Scheme::Reference(..) => (0, 0),
            Scheme::Multirate(multirate) => multirate.stages(),
        }
    }

    /// Puts what it carries from step to step into what is kept.
    pub fn keep(&self, kept: &mut Kept) {
        match self {
            Scheme::Reference(reference, _) => reference.keep(kept),
            Scheme::Multirate(multirate) => multirate.keep(kept),
        }
    }

    /// Takes up what was kept of the same case.
    pub fn take_up(&mut self, kept: &Kept) -> Result<(), KeptError> {
        match self {
            Scheme::Reference(reference, _) => reference.take_up(kept),
            Scheme::Multirate(multirate) => multirate.take_up(kept),
        }
    }

    /// The last moment and what was written down.
    pub fn finish(self, now_s: f64) -> (Moment, Freezing) {
        match self {
            Scheme::Reference(reference, _) => (reference.moment(now_s), reference.freezing()),
            Scheme::Multirate(multirate) => multirate.finish(now_s),
        }
    }
}
