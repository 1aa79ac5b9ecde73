//! A scheme that runs, behind the same doors whichever it is.

use crate::case::Case;
use crate::elsewhere::{Course, Elsewhere, State, Step, Unable};
use crate::freezing::Freezing;
use crate::kept::{Kept, KeptError};
use crate::laid::Laid;
use crate::multirate::{Multirate, grown_s};
use crate::reference::Reference;
use crate::run::{Mode, Moment, Wish};

/// A scheme with its state; the reference with its longest step.
pub enum Scheme<'case> {
    Reference(Box<Reference<'case>>, Option<f64>),
    Multirate(Box<Multirate<'case>>),
    Away(Away<'case>),
}

/// The scheme for use with its steps taken elsewhere.
pub struct Away<'case> {
    laid: &'case Laid<'case>,
    course: Box<dyn Course + 'case>,
    step_s: f64,
    stages_before: usize,
}

/// What a scheme leaves at its end.
pub struct Ended {
    /// The last moment.
    pub last: Moment,
    /// What was written down.
    pub freezing: Freezing,
    /// Heat in all cells, J.
    pub end_j: f64,
    /// Heat that came in through all faces, J.
    pub through_j: f64,
    /// Cells that can freeze and are not solid.
    pub unfrozen: usize,
    /// Stages.
    pub stages: usize,
    /// Cells that went in them.
    pub quick_cells: usize,
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

    /// Stands at a state elsewhere, which is that of what was kept where there is that.
    pub fn away<'case>(
        on: &dyn Elsewhere,
        laid: &'case Laid<'case>,
        state: &State,
        kept: Option<&Kept>,
    ) -> Result<Scheme<'case>, Unable> {
        Ok(Scheme::Away(Away {
            laid,
            course: on.begin(laid, state)?,
            step_s: kept.map_or(laid.first_s, |kept| kept.step_s),
            stages_before: kept.map_or(0, |kept| kept.stages as usize),
        }))
    }

    /// Longest step, s.
    pub fn longest_s(&self) -> f64 {
        match self {
            Scheme::Reference(..) => self.step_s(),
            Scheme::Multirate(multirate) => multirate.longest_s(),
            Scheme::Away(away) => away.laid.longest_s,
        }
    }

    /// The step to take next, s.
    pub fn step_s(&self) -> f64 {
        match self {
            Scheme::Reference(reference, longest_s) => {
                reference.step_s.min(longest_s.unwrap_or(f64::INFINITY))
            }
            Scheme::Multirate(multirate) => multirate.step_s(),
            Scheme::Away(away) => away.step_s,
        }
    }

    /// The step after one that was to be so long, s.
    pub fn grown_s(&self, step_s: f64) -> f64 {
        match self {
            Scheme::Reference(..) => step_s,
            Scheme::Multirate(..) | Scheme::Away(..) => grown_s(step_s, self.longest_s()),
        }
    }

    /// Steps that are taken at once.
    pub fn at_once(&self) -> usize {
        match self {
            Scheme::Reference(..) | Scheme::Multirate(..) => 1,
            Scheme::Away(away) => away.course.at_once().max(1),
        }
    }

    /// Goes on by steps, and says how many of them were taken.
    pub fn advance(&mut self, steps: &[Step]) -> Result<usize, Unable> {
        match self {
            Scheme::Reference(reference, _) => {
                let each = steps.iter();
                each.for_each(|step| reference.advance(step.length_s, step.ends_s));
                Ok(steps.len())
            }
            Scheme::Multirate(multirate) => {
                let each = steps.iter();
                each.for_each(|step| multirate.advance(step.length_s, step.ends_s));
                Ok(steps.len())
            }
            Scheme::Away(away) => {
                let taken = away.course.advance(steps)?;
                for _ in 0..taken {
                    away.step_s = grown_s(away.step_s, away.laid.longest_s);
                }
                Ok(taken)
            }
        }
    }

    /// Heat in all cells, J, of a scheme whose steps are taken here.
    pub fn joules(&self) -> f64 {
        match self {
            Scheme::Reference(reference, _) => reference.joules(),
            Scheme::Multirate(multirate) => multirate.joules(),
            Scheme::Away(_) => 0.0,
        }
    }

    /// Cells that can freeze and are not solid yet.
    pub fn unfrozen(&self) -> usize {
        match self {
            Scheme::Reference(reference, _) => reference.unfrozen,
            Scheme::Multirate(multirate) => multirate.unfrozen(),
            Scheme::Away(away) => away.course.unfrozen(),
        }
    }

    /// Memory of what takes the steps elsewhere, bytes.
    pub fn bytes(&self) -> Option<f64> {
        match self {
            Scheme::Reference(..) | Scheme::Multirate(_) => None,
            Scheme::Away(away) => Some(away.course.bytes() as f64),
        }
    }

    /// Temperatures and heat contents as they stand.
    pub fn moment(&self, now_s: f64) -> Result<Moment, Unable> {
        Ok(match self {
            Scheme::Reference(reference, _) => reference.moment(now_s),
            Scheme::Multirate(multirate) => multirate.moment(now_s),
            Scheme::Away(away) => away.laid.moment(&away.course.state()?, now_s),
        })
    }

    /// Cells that go in stages.
    pub fn quick_cells(&self) -> usize {
        match self {
            Scheme::Reference(..) => 0,
            Scheme::Multirate(multirate) => multirate.stages().1,
            Scheme::Away(away) => away.laid.staged_count(),
        }
    }

    /// Whether the state should be read and put aside now, lest it is lost.
    pub fn is_due(&self) -> bool {
        match self {
            Scheme::Reference(..) | Scheme::Multirate(..) => false,
            Scheme::Away(away) => away.course.is_due(),
        }
    }

    /// Puts what it carries from step to step into what is kept.
    pub fn keep(&self, kept: &mut Kept) -> Result<(), Unable> {
        match self {
            Scheme::Reference(reference, _) => reference.keep(kept),
            Scheme::Multirate(multirate) => multirate.keep(kept),
            Scheme::Away(away) => {
                kept.step_s = away.step_s;
                kept.stages = away.stages() as u64;
                away.laid.keep(away.course.state()?, kept);
            }
        }
        Ok(())
    }

    /// Takes up what was kept of the same case, of a scheme whose steps are taken here.
    pub fn take_up(&mut self, kept: &Kept) -> Result<(), KeptError> {
        match self {
            Scheme::Reference(reference, _) => reference.take_up(kept),
            Scheme::Multirate(multirate) => multirate.take_up(kept),
            Scheme::Away(_) => Err(KeptError::OtherCase),
        }
    }

    /// What it leaves at its end.
    pub fn end(self, now_s: f64) -> Result<Ended, Unable> {
        let (unfrozen, quick_cells) = (self.unfrozen(), self.quick_cells());
        match self {
            Scheme::Reference(reference, _) => Ok(Ended {
                last: reference.moment(now_s),
                end_j: reference.joules(),
                through_j: reference.through_j,
                unfrozen,
                stages: 0,
                quick_cells,
                freezing: reference.freezing(),
            }),
            Scheme::Multirate(multirate) => {
                let (end_j, through_j) = (multirate.joules(), multirate.through_j());
                let stages = multirate.stages().0;
                let (last, freezing) = multirate.finish(now_s);
                Ok(Ended {
                    last,
                    freezing,
                    end_j,
                    through_j,
                    unfrozen,
                    stages,
                    quick_cells,
                })
            }
            Scheme::Away(away) => {
                let state = away.course.state()?;
                Ok(Ended {
                    last: away.laid.moment(&state, now_s),
                    end_j: away.laid.joules(&state),
                    through_j: state.through_j,
                    unfrozen,
                    stages: away.stages(),
                    quick_cells,
                    freezing: state.freezing,
                })
            }
        }
    }
}

impl Away<'_> {
    fn stages(&self) -> usize {
        self.stages_before + self.course.stages()
    }
}
