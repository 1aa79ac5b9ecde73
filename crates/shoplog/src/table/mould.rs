//! Moulds, and what the plan had said about them.

use crate::column::Holds;
use crate::table::{Table, may, wanted};

/// Moulds as they were made.
pub const MOULDS: Table = Table {
    name: "moulds",
    one: "mould",
    says: "a mould as it was made",
    columns: &[
        wanted("job", Holds::Text, "the job, as its file calls it"),
        may("alloy", Holds::Text, "the metal it was planned for"),
        may("castings", Holds::Whole, "castings in it"),
        may("pattern", Holds::Text, "which pattern, which repair of it"),
        may("flask", Holds::Text, "which flask"),
        may("heap", Holds::Entry("heaps"), "the sand"),
        may("batch", Holds::Entry("batches"), "the batch of sand"),
        may("rammed", Holds::Time, "when it was rammed"),
        may("closed", Holds::Time, "when it was closed"),
        may("opened", Holds::Time, "when it was opened"),
        wanted("moisture", Holds::Percent, "of its sand, of wet mass"),
        may(
            "ramming",
            Holds::Word(&["soft", "even", "hard"]),
            "how hard it was rammed",
        ),
        may(
            "vents",
            Holds::Word(&["none", "few", "many"]),
            "how it was vented",
        ),
        may("gates", Holds::Text, "which gating, where it was changed"),
        may(
            "feeder",
            Holds::Word(&["none", "small", "enough"]),
            "feeders",
        ),
        may(
            "core",
            Holds::Word(&["well-baked", "baked-short", "damp", "unvented", "none"]),
            "the state of its cores",
        ),
        may("facing", Holds::Text, "facing sand or wash"),
        may("weights", Holds::Mass, "laid on the cope"),
        may(
            "allowance_x",
            Holds::Percent,
            "contraction built into the pattern along x",
        ),
        may("allowance_y", Holds::Percent, "along y"),
        may("allowance_z", Holds::Percent, "along z"),
        may(
            "found",
            Holds::Text,
            "what the plan had found, in its own words",
        ),
        may("note", Holds::Text, "anything else"),
    ],
};

/// Figures of the plan, kept as they stood when the mould was made.
pub const PLANNED: Table = Table {
    name: "planned",
    one: "planned-figure",
    says: "a figure of the plan as it stood when the mould was made",
    columns: &[
        wanted("mould", Holds::Entry("moulds"), "of which mould"),
        wanted("figure", Holds::Text, "what the plan calls it"),
        wanted("low", Holds::Number, "its lowest value"),
        wanted("likely", Holds::Number, "its likely value"),
        wanted("high", Holds::Number, "its highest value"),
        may("unit", Holds::Text, "the unit of the three"),
    ],
};
