//! Castings, their sizes and their defects.

use crate::column::Holds;
use crate::diagnosis::sight::{HOW_LARGE, LOOKS, PLACES, WALLS, WHENS};
use crate::table::{Table, may, wanted};

/// Castings as they came out.
pub const CASTINGS: Table = Table {
    name: "castings",
    one: "casting",
    says: "a casting as it came out",
    columns: &[
        wanted("pour", Holds::Entry("pours"), "of which pour"),
        may(
            "mark",
            Holds::Text,
            "what is written on it, or where it lay",
        ),
        wanted(
            "good",
            Holds::Flag,
            "whether it can be used for what it was made for",
        ),
        may("planned_mass", Holds::Mass, "as planned"),
        may(
            "mass",
            Holds::Mass,
            "on the scale, without gates and feeders",
        ),
        may("use", Holds::Text, "what it is for"),
        may("note", Holds::Text, "anything else"),
    ],
};

/// Sizes measured.
pub const SIZES: Table = Table {
    name: "sizes",
    one: "size",
    says: "a size measured on a casting and on its pattern",
    columns: &[
        wanted("casting", Holds::Entry("castings"), "of which casting"),
        may("what", Holds::Text, "which size"),
        wanted(
            "along",
            Holds::Word(&["x", "y", "z"]),
            "which way it lies, as drawn",
        ),
        wanted("pattern", Holds::Length, "on the pattern"),
        wanted("measured", Holds::Length, "on the cold casting"),
        may(
            "held",
            Holds::Flag,
            "whether a core or the mould held it while it shrank",
        ),
        may("note", Holds::Text, "anything else"),
    ],
};

/// Defects seen.
pub const DEFECTS: Table = Table {
    name: "defects",
    one: "defect",
    says: "a defect seen on a casting",
    columns: &[
        wanted("casting", Holds::Entry("castings"), "on which casting"),
        wanted("look", Holds::Words(LOOKS), "what is seen"),
        may("place", Holds::Words(PLACES), "where"),
        may("size", Holds::Word(HOW_LARGE), "under 1, 1 to 5, over 5 mm"),
        may(
            "surface",
            Holds::Words(WALLS),
            "the wall of a hole, or the skin of the fault",
        ),
        may("seen", Holds::Word(WHENS), "when it was seen"),
        may("sprue", Holds::Flag, "whether the sprue shows it too"),
        may(
            "cause",
            Holds::Text,
            "the cause that was settled on, if any",
        ),
        may("note", Holds::Text, "anything else"),
    ],
};
