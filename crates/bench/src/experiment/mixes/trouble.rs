//! What keeps named mixes from being compared.

use thiserror::Error;

use crate::experiment::trouble::ExperimentError;

/// What is wrong with named mixes as typed.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum MixError {
    /// Too few or too many named mixes.
    #[error("{0} mixes cannot be compared here: name two to eight, each with a [[mix]]")]
    Count(
        /// How many there are.
        usize,
    ),
    /// Something in a named mix.
    #[error("mix \"{mix}\": {error}")]
    InMix {
        /// The mix.
        mix: String,
        /// What is wrong with it.
        error: Box<ExperimentError>,
    },
    /// A mix of something that is no part.
    #[error("{0} is no part: add a [[part]] of that name, or spell it as it stands there")]
    NoSuchPart(
        /// What was typed.
        String,
    ),
    /// A setting that is none.
    #[error("{0} is no setting: add a [[setting]] of that name, or spell it as it stands there")]
    NoSuchSetting(
        /// What was typed.
        String,
    ),
    /// A mix without a setting.
    #[error("nothing is said of {0}: write settings = {{ {0} = ... }} in each [[mix]]")]
    NoSetting(
        /// The setting.
        String,
    ),
    /// A setting with a range or choices of its own.
    #[error("{0}: leave range and choices out, since each [[mix]] says how it is done")]
    SettingOfMixes(
        /// The setting.
        String,
    ),
    /// A range among mixes.
    #[error("{0} has a range, and a named mix is one mix: give it one amount")]
    RangeInMix(
        /// The part.
        String,
    ),
    /// A key that means nothing beside mixes.
    #[error("{0} belongs to ranges: leave it out where each [[mix]] is named")]
    BesideMixes(
        /// The key.
        &'static str,
    ),
    /// How often each mix is made, where no mix is named.
    #[error("times says how often each [[mix]] is made, and none is named: name them, or drop it")]
    TimesWithoutMixes,
    /// A mix made too seldom or too often.
    #[error("times = {0}: make each mix 2 to 20 times; made once, noise cannot be told")]
    Times(
        /// What was typed.
        usize,
    ),
    /// More days than each mix is made.
    #[error(
        "days = {days}: every day holds each mix once at least, and each is made {times} times \
         only: write days = 1 to {times}, or raise times"
    )]
    Days {
        /// The days.
        days: usize,
        /// How often each mix is made.
        times: usize,
    },
}
