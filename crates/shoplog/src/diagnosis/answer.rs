//! The whole answer to what went wrong: ranked causes, the check that parts them, one change and
//! what it may gain, and what differs from the last good pour.

use bench::told::Told;

use crate::around_pour::pours;
use crate::diagnosis::from_log::{CaseError, case};
use crate::diagnosis::gain::{gain, tell};
use crate::diagnosis::ranked::{named, ranked};
use crate::diagnosis::told::told;
use crate::error::LogError;
use crate::guard_told::then_and_now_told;
use crate::log::Log;
use crate::table::melt::POURS;
use crate::then_and_now::{FAR_BACK, then_and_now};

/// What is told of a fault.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Causes, check, change and gain.
    pub diagnosis: Told,
    /// What differs from the last good pour; nothing where no pour was named or none was good.
    pub then_and_now: Option<Told>,
}

/// Why there is no answer.
#[derive(Debug, thiserror::Error)]
pub enum AnswerError {
    /// No case comes of what was said.
    #[error(transparent)]
    Case(#[from] CaseError),
    /// The log says no.
    #[error(transparent)]
    Log(#[from] LogError),
    /// A table of this program that is not sound.
    #[error("a table of the diagnosis is not sound: {0}")]
    Table(#[from] toml::de::Error),
}

/// The answer about a pour of the log by its id, about what was typed, or about both.
///
/// # Errors
///
/// What is no case, a log that says no.
pub fn answer(
    log: Option<(&Log, &str)>,
    typed: &[(String, String)],
) -> Result<Answer, AnswerError> {
    let ranked = ranked(&case(log, typed)?)?;
    let mut diagnosis = told(&ranked)?;
    let Some((log, pour)) = log else {
        return Ok(Answer {
            diagnosis,
            then_and_now: None,
        });
    };
    if let Some(first) = named(&ranked).next()
        && let Some(gain) = gain(log, pour, first.share)?
    {
        tell(&mut diagnosis, &gain);
    }
    let (number, pours) = (log.number(&POURS, pour)?, pours(log, FAR_BACK)?);
    let then_and_now = then_and_now(&pours, number).map(|both| then_and_now_told(&both));
    Ok(Answer {
        diagnosis,
        then_and_now,
    })
}
