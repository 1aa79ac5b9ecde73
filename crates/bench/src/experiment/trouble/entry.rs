//! What keeps results and masses from being taken in.

use thiserror::Error;

use crate::experiment::trouble::BatchesError;

/// What is wrong with what was entered.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum EntryError {
    /// No such batch.
    #[error("there is no batch {number}: the plan has batches 1 to {last}")]
    NoBatch {
        /// What was typed.
        number: String,
        /// The last there is.
        last: usize,
    },
    /// No such response.
    #[error("\"{typed}\" is not measured in this experiment: it has {known}")]
    NoResponse {
        /// What was typed.
        typed: String,
        /// What there is.
        known: String,
    },
    /// Not a number.
    #[error("{name} of batch {batch}: \"{typed}\" is not a number in {unit}")]
    NotANumber {
        /// The response.
        name: String,
        /// The batch.
        batch: usize,
        /// What was typed.
        typed: String,
        /// The unit.
        unit: String,
    },
    /// Another result is there already.
    #[error(
        "{name} of batch {batch} is {before} already, and now {now}: say --replace if the first was \
         wrong (it stays in the file), or --again if the batch was measured a second time"
    )]
    Differs {
        /// The response.
        name: String,
        /// The batch.
        batch: usize,
        /// What stands there.
        before: String,
        /// What was typed.
        now: String,
    },
    /// A result far from all others.
    #[error(
        "{name} of batch {batch}: {now} lies far from all others ({low} to {high}): say --sure if it \
         is right"
    )]
    Far {
        /// The response.
        name: String,
        /// The batch.
        batch: usize,
        /// What was typed.
        now: String,
        /// The least so far.
        low: String,
        /// The most so far.
        high: String,
    },
    /// Nothing to replace.
    #[error("{name} of batch {batch} has no result yet, so there is nothing to replace")]
    NothingToReplace {
        /// The response.
        name: String,
        /// The batch.
        batch: usize,
    },
    /// A mass that is none.
    #[error(
        "{name} of batch {batch}: \"{typed}\" is no mass: write what the scale said, like 182 g"
    )]
    NotWeighed {
        /// The part.
        name: String,
        /// The batch.
        batch: usize,
        /// What was typed.
        typed: String,
    },
    /// A mass far from the plan.
    #[error(
        "{name} of batch {batch}: {now} weighed, and {planned} planned: say --sure if it is right"
    )]
    OffPlan {
        /// The part.
        name: String,
        /// The batch.
        batch: usize,
        /// What was typed.
        now: String,
        /// What was planned.
        planned: String,
    },
    /// A batch that cannot be counted.
    #[error(transparent)]
    Batch(#[from] BatchesError),
    /// Not a pair.
    #[error("\"{0}\" gives no result a name: write it like strength=45")]
    NotAPair(
        /// What was typed.
        String,
    ),
    /// A table without its head.
    #[error("the table needs a first line with batch and the names of what was measured: {0}")]
    NoHead(
        /// What it should look like.
        String,
    ),
    /// Too many cells.
    #[error("line {line} has {has} cells where the first line has {wants}")]
    Cells {
        /// The line, counted from one.
        line: usize,
        /// How many it has.
        has: usize,
        /// How many it should have.
        wants: usize,
    },
    /// A results file that was changed by hand so that it cannot be read.
    #[error("line {line} of the results is \"{text}\": a line is batch, what, value and note")]
    Line {
        /// The line, counted from one.
        line: usize,
        /// What stands there.
        text: String,
    },
}

impl EntryError {
    /// Whether it is only asked how something is meant.
    pub fn asks(&self) -> bool {
        matches!(
            self,
            EntryError::Differs { .. } | EntryError::Far { .. } | EntryError::OffPlan { .. }
        )
    }
}
