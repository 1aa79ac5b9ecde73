//! A pattern that was itself cast, and a worn original used as the pattern.
//!
//! Whatever is moulded comes out smaller by the contraction of the metal. A pattern cast in metal
//! has contracted once before the casting contracts again; an original used as it is gives a part
//! that is too small by the contraction and by its wear.

use measure::length::Length;
use measure::source::Law;

/// Size of the master where the working pattern is itself cast: contraction twice over.
pub const MASTER_LENGTH: Law = Law {
    name: "pattern::original::master_length",
    formula: "L_master = L_part (1 + s_part) (1 + s_pattern)",
    range: "a working pattern cast in metal from a master; each contraction of its own metal",
    sources: &["mechanical-text-book-58"],
};

/// Size to which a worn original has to be built up to serve as the pattern.
pub const BUILT_UP_LENGTH: Law = Law {
    name: "pattern::original::built_up_length",
    formula: "L_pattern = (L_original + w + z) (1 + s)",
    range: "w worn off and z to be machined off, each over the whole length",
    sources: &["mechanical-text-book-58", "hobbicast-223"],
};

/// What is laid on the faces at the ends of a length of an original, in all.
pub const SHIM: Law = Law {
    name: "pattern::original::shim",
    formula: "t = L_pattern − L_original",
    range: "split between the two faces as wear and machining fall on them; shared alike, half each",
    sources: &["common-practice"],
};

/// Length of the master for a length of the part: `of_part` contracts in the part's metal,
/// `of_pattern` in the working pattern's. Law: [`MASTER_LENGTH`].
pub fn master_length(part: Length, of_part: f64, of_pattern: f64) -> Length {
    part * ((1.0 + of_part) * (1.0 + of_pattern))
}

/// Length of an original built up for wear, machining and contraction; wear and machining over
/// the whole length. Law: [`BUILT_UP_LENGTH`].
pub fn built_up_length(
    original: Length,
    wear: Length,
    machining: Length,
    contraction: f64,
) -> Length {
    (original + wear + machining) * (1.0 + contraction)
}

/// What has to be laid on the two faces of a length together. Law: [`SHIM`].
pub fn shim(pattern: Length, original: Length) -> Length {
    pattern - original
}
