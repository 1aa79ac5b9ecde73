//! What keeps an experiment from being planned, entered or read.

use thiserror::Error;
use trials::fit::FitError;
use trials::plan::PlanError;
use trials::region::RegionError;
use trials::settings::SettingError;

use crate::experiment::mixes::trouble::MixError;

pub use self::entry::EntryError;

mod entry;

/// What is wrong with an experiment as typed.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum ExperimentError {
    /// No basis was given.
    #[error(
        "it is not said how parts are counted: write basis = \"dry\" (each part without the water \
         it holds, all water as water) or basis = \"as it lies\""
    )]
    NoBasis,
    /// A basis that is none.
    #[error("basis = \"{0}\" is not known: write \"dry\" or \"as it lies\"")]
    Basis(
        /// What was typed.
        String,
    ),
    /// A word that is not one of those taken.
    #[error("{key} = \"{typed}\" is not known: write {taken}")]
    Word {
        /// The key.
        key: &'static str,
        /// What was typed.
        typed: String,
        /// What is taken.
        taken: &'static str,
    },
    /// A name that cannot stand in a table.
    #[error(
        "the name \"{0}\" cannot be used: use letters, digits and blanks, at least one of them"
    )]
    Name(
        /// The name.
        String,
    ),
    /// A name given twice.
    #[error("\"{0}\" is there twice: give each part, setting, response and mix a name of its own")]
    Twice(
        /// The name.
        String,
    ),
    /// An amount that is none.
    #[error(
        "{name}: amount \"{typed}\" is not understood: write 100, \"12 to 24\" or \"5 to 9 %\""
    )]
    Amount {
        /// The part.
        name: String,
        /// What was typed.
        typed: String,
    },
    /// Parts and per cent in one mix.
    #[error(
        "{percent} is in per cent and {parts} in parts: write all of them in per cent of the whole \
         mix, or all in parts"
    )]
    PartsAndPercent {
        /// A part in per cent.
        percent: String,
        /// A part in parts.
        parts: String,
    },
    /// Per cents that do not make a whole.
    #[error("per cent of the mix: {0}")]
    Percent(
        /// What is wrong with them.
        RegionError,
    ),
    /// Fixed per cents that do not add up.
    #[error(
        "the per cents add up to {0} % instead of 100 %: one of them is wrong, or missing, or meant \
         per cent of something else"
    )]
    DoNotAddUp(
        /// Their sum.
        String,
    ),
    /// One share alone cannot change.
    #[error("of the per cents only that of {0} may change, so none can: give another one a range")]
    OneVaries(
        /// The part.
        String,
    ),
    /// Too few parts.
    #[error("a mix needs two parts at least: add a [[part]]")]
    TooFewParts,
    /// Parts that weigh nothing.
    #[error("no part has an amount above nought in every batch: give one, such as amount = 100")]
    NothingFixed,
    /// Nothing changes.
    #[error("nothing changes from batch to batch: give a part or a setting a range")]
    NothingVaries,
    /// A range by factors that begins at nought.
    #[error("{0}: a range in even factors has to begin above nought, like \"0.2 to 20\"")]
    FactorsFromNought(
        /// The part or setting.
        String,
    ),
    /// Factors among per cents.
    #[error(
        "{0}: even factors go with parts beside each other: write all amounts in parts, the sand 100"
    )]
    FactorsInPercent(
        /// The part.
        String,
    ),
    /// A setting without or with two ways to vary.
    #[error(
        "{0}: give either range = \"3 to 9\", or two to six different choices = [\"by foot\", \"by \
         drill\"]"
    )]
    SettingHow(
        /// The setting.
        String,
    ),
    /// Ends that do not rise or too many settings.
    #[error(transparent)]
    Setting(#[from] SettingError),
    /// No response.
    #[error("nothing is measured: add a [[response]] with a name and want = \"high\"")]
    NoResponse,
    /// A wish that is none.
    #[error(
        "{name}: want = \"{typed}\" is not understood: write high, low or a range like 40 to 60"
    )]
    Want {
        /// The response.
        name: String,
        /// What was typed.
        typed: String,
    },
    /// Limits of a wish that do not fit it.
    #[error("{name}: {words}")]
    Wish {
        /// The response.
        name: String,
        /// What is wrong.
        words: String,
    },
    /// A number that has to be above nought.
    #[error("{name}: {key} has to be a number above nought")]
    NotAboveNought {
        /// Whose it is.
        name: String,
        /// The key.
        key: &'static str,
    },
    /// Moisture where it does not count.
    #[error(
        "{0}: moisture is only taken off with basis = \"dry\"; with basis = \"as it lies\" parts \
         are weighed as they are"
    )]
    MoistureAsItLies(
        /// The part.
        String,
    ),
    /// Water held, and no water in the mix to count it to.
    #[error("{0} holds water, and no part is marked is_water = true to count it to: mark one")]
    NoWater(
        /// The part.
        String,
    ),
    /// More than one water.
    #[error("{0} and {1} are both marked is_water: mark one")]
    TwoWaters(
        /// One.
        String,
        /// The other.
        String,
    ),
    /// Moisture that is not below the whole, or of what it is not said.
    #[error("{0}: write moisture as \"5.2 % of wet mass\" or \"5.5 % of dry mass\"")]
    Moisture(
        /// The part.
        String,
    ),
    /// A later session without a part for it, or the other way round.
    #[error(
        "a second session needs both [later] with its batches and a part marked later = true, \
         in a mix counted in parts, with days = 1"
    )]
    Later,
    /// A range whose ends fall.
    #[error("{name}: \"{typed}\" goes down: write its low end first")]
    Falling {
        /// The part.
        name: String,
        /// What was typed.
        typed: String,
    },
    /// Fewer different batches than what they are to teach takes.
    #[error(
        "{batches} batches of which {repeats} repeat another leave {different} different mixes, and \
         {shape} takes {terms} numbers to know: write batches = {} or more{plainer}",
        terms + repeats
    )]
    FewerThanTerms {
        /// All batches.
        batches: usize,
        /// How many of them repeat another.
        repeats: usize,
        /// Different ones.
        different: usize,
        /// The shape, in words.
        shape: &'static str,
        /// How many numbers the shape has.
        terms: usize,
        /// A plainer shape to ask for, in words; nothing below the plainest.
        plainer: &'static str,
    },
    /// The plan is not possible.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// Ranges without a number of batches.
    #[error("it is not said how many batches to make: write batches = 9")]
    NoBatches,
    /// A part without an amount.
    #[error("{0} has no amount: write amount = 100 or amount = \"12 to 24\"")]
    NoAmount(
        /// The part.
        String,
    ),
    /// Named mixes that cannot be compared.
    #[error(transparent)]
    Mixes(#[from] MixError),
    /// The runs cannot teach the model.
    #[error(transparent)]
    Fit(#[from] FitError),
}

/// What is wrong with the list of batches.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum BatchesError {
    /// Nothing that the rest is counted beside.
    #[error(
        "batch {0} has nothing left of the parts that never change, so the others are parts of \
         nothing: weigh them again"
    )]
    NothingBeside(
        /// The batch.
        usize,
    ),
    /// A batch without an amount.
    #[error(
        "batch {batch} says nothing of {name}, which the experiment has now: plan a new experiment \
         in another folder, or give each batch its {name}"
    )]
    Missing {
        /// The batch.
        batch: usize,
        /// The part or setting.
        name: String,
    },
    /// A batch with something that the experiment does not have.
    #[error(
        "batch {batch} holds {name}, which the experiment no longer has: put it back under \
         [[part]] or [[setting]]"
    )]
    Unknown {
        /// The batch.
        batch: usize,
        /// The part or setting.
        name: String,
    },
    /// A batch of a mix in an experiment of ranges.
    #[error(
        "batch {0} is of a named mix, and the experiment has ranges now: plan a new experiment in \
         another folder"
    )]
    MixInRanges(
        /// The batch.
        usize,
    ),
    /// A batch of no mix among mixes.
    #[error(
        "batch {0} names no mix, and the experiment compares mixes now: plan a new experiment in \
         another folder"
    )]
    NoMix(
        /// The batch.
        usize,
    ),
    /// A batch of a mix that is gone.
    #[error(
        "batch {batch} is of the mix \"{name}\", which the experiment no longer has: put that \
         [[mix]] back"
    )]
    UnknownMix {
        /// The batch.
        batch: usize,
        /// The mix.
        name: String,
    },
    /// Numbers of batches that do not run on.
    #[error("batch {0} is not numbered in its turn: batches are numbered from 1 without gaps")]
    Number(
        /// The number.
        usize,
    ),
    /// A part that brings more water than the batch may hold.
    #[error(
        "batch {batch}: {name} brings {brought} of water, more than the {wanted} the batch may hold: \
         dry it first, or raise the range of the water"
    )]
    TooWet {
        /// The batch.
        batch: usize,
        /// The wettest part.
        name: String,
        /// The water brought.
        brought: String,
        /// The water wanted.
        wanted: String,
    },
}
