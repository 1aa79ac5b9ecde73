//! The one table from the name of a law to its calculation.

use std::collections::BTreeMap;

use checks::answer::Answer;
use checks::given::{Given, GivenError};

/// Works a row out with the law's own function.
pub type Calculation = fn(&Given<'_>) -> Result<Vec<Answer>, GivenError>;

/// Every calculation by the name of its law.
pub fn calculations() -> BTreeMap<&'static str, Calculation> {
    [
        crate::of_pattern::CALCULATIONS,
        crate::of_metal::CALCULATIONS,
        crate::of_sand::CALCULATIONS,
        crate::of_mould::CALCULATIONS,
    ]
    .into_iter()
    .flatten()
    .copied()
    .collect()
}
