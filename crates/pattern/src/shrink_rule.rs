//! The contraction rule: how a contraction is spoken of, and where the marks of a rule lie.

use measure::length::Length;
use measure::source::Law;

use crate::contraction::pattern_length;

/// A contraction as inches in each foot.
pub const PER_FOOT: Law = Law {
    name: "pattern::shrink_rule::per_foot",
    formula: "a = 12 s",
    range: "a in inches, growth of each foot of the part",
    sources: &["hobbicast-223", "dooley-426"],
};

/// A contraction as one in so many.
pub const ONE_IN: Law = Law {
    name: "pattern::shrink_rule::one_in",
    formula: "N = 1 / s",
    range: "s above nought; one part of growth on N parts of the part's length",
    sources: &["contraction-rule-sold"],
};

/// A mark of a contraction rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// Which mark it is, nought at the end of the rule.
    pub number: usize,
    /// What is read there: a size of the part.
    pub reads: Length,
    /// How far it lies from the end of the rule: the size of the pattern.
    pub at: Length,
}

/// Inches of growth in each foot. Law: [`PER_FOOT`].
pub fn per_foot(contraction: f64) -> f64 {
    12.0 * contraction
}

/// Parts of length to one part of growth. Law: [`ONE_IN`].
pub fn one_in(contraction: f64) -> f64 {
    1.0 / contraction
}

/// The marks of a rule that reads `step` by `step` up to `longest` and is longer by the
/// contraction, both ends with a mark. Law: [`crate::contraction::PATTERN_LENGTH`].
///
/// Each mark is placed from the end of the rule, so that no error adds up along it. No marks
/// where the step is not above nought.
pub fn marks(longest: Length, step: Length, contraction: f64) -> impl Iterator<Item = Mark> {
    // A hair more than the quotient, which may fall just short of a whole number.
    let steps = (longest / step + 1e-9).floor();
    let count = match step > Length::ZERO && steps.is_finite() && steps >= 0.0 {
        true => steps as usize + 1,
        false => 0,
    };
    (0..count).map(move |number| {
        let reads = step * number as f64;
        Mark {
            number,
            reads,
            at: pattern_length(reads, contraction),
        }
    })
}
