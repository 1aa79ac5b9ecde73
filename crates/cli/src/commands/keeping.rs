//! Keeping long work on the way, so that it can be stopped and go on later.

use std::process::ExitCode;
use std::time::{Duration, Instant};

use job::folder::FolderError;

use crate::progress::StopsAtStep;
use crate::trouble::Trouble;

/// How often a run is kept: seldom enough to cost nothing beside the run, often enough that nobody
/// minds what is lost.
const KEPT_EVERY: Duration = Duration::from_secs(10);

/// How a program ends that was stopped by Ctrl-C.
pub const STOPPED: u8 = 130;

/// Work that is kept every ten seconds, and once more when it is asked to stop.
pub struct Keeping {
    stop: StopsAtStep,
    last: Instant,
    is_kept: bool,
    trouble: Option<FolderError>,
}

impl Keeping {
    /// Begins.
    pub fn begin() -> Keeping {
        Keeping {
            stop: StopsAtStep::begin(),
            last: Instant::now(),
            is_kept: false,
            trouble: None,
        }
    }

    /// Keeps the work, where it is time or `is_through` with a part of it that was kept before;
    /// says whether to go on.
    pub fn goes_on(
        &mut self,
        is_through: bool,
        keep: impl FnOnce() -> Result<(), FolderError>,
    ) -> bool {
        let is_asked = self.stop.is_asked();
        let is_time = self.last.elapsed() >= KEPT_EVERY || (is_through && self.is_kept);
        if is_asked || is_time {
            self.trouble = keep().err();
            self.last = Instant::now();
            self.is_kept = true;
        }
        !is_asked && self.trouble.is_none()
    }

    /// Whether a stop is asked for.
    pub fn is_asked(&self) -> bool {
        self.stop.is_asked()
    }

    /// What came of the work: an error of the disk or an asked stop goes before its own error.
    pub fn ended<Answer, Error: Into<Trouble>>(
        self,
        answer: Result<Answer, Error>,
    ) -> Result<Ended<Answer>, Trouble> {
        match (self.trouble, answer) {
            (Some(trouble), _) => Err(trouble.into()),
            (None, Err(_)) if self.stop.is_asked() => Ok(Ended::Stopped(ExitCode::from(STOPPED))),
            (None, answer) => Ok(Ended::Through(answer.map_err(Into::into)?)),
        }
    }
}

/// How kept work ended.
pub enum Ended<Answer> {
    /// With its answer.
    Through(Answer),
    /// Stopped on the way, and kept.
    Stopped(ExitCode),
}
