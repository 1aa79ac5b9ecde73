//! The hour on the wall, for what is to be done later.

use std::fmt;

use measure::flow::Duration;

use crate::given::GivenError;

/// An hour and a minute of some day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Clock {
    /// Minutes since midnight.
    pub minutes: u32,
}

/// Reads `13:05`.
///
/// # Errors
///
/// [`GivenError::NotThat`] for anything else.
pub fn clock(text: &str) -> Result<Clock, GivenError> {
    let read = || {
        let (hours, minutes) = text.split_once(':')?;
        let (hours, minutes): (u32, u32) = (hours.parse().ok()?, minutes.parse().ok()?);
        (hours < 24 && minutes < 60).then_some(Clock {
            minutes: hours * 60 + minutes,
        })
    };
    read().ok_or_else(|| GivenError::NotThat {
        key: "started".to_owned(),
        typed: text.to_owned(),
        what: "hour of the day, like 13:05",
    })
}

impl Clock {
    /// So much later; past midnight the day begins anew.
    #[must_use]
    pub fn later(self, time: Duration) -> Clock {
        let minutes = f64::from(self.minutes) + time.as_min().round();
        Clock {
            minutes: (minutes.rem_euclid(1440.0)) as u32,
        }
    }
}

impl fmt::Display for Clock {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "{:02}:{:02}", self.minutes / 60, self.minutes % 60)
    }
}
