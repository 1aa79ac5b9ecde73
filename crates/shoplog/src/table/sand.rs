//! Heaps, batches and the tests of their sand.

use crate::column::Holds;
use crate::table::{Table, may, wanted};

/// Heaps of moulding sand.
pub const HEAPS: Table = Table {
    name: "heaps",
    one: "heap",
    says: "a heap of moulding sand",
    columns: &[
        wanted("name", Holds::Text, "what it is called"),
        may("mass", Holds::Mass, "as it lay when its book began"),
        may(
            "bond",
            Holds::Word(&["bentonite", "natural", "oil", "other"]),
            "what binds it",
        ),
        may("clay", Holds::Text, "which clay, from where"),
        may(
            "grain",
            Holds::Word(&["fine", "medium", "coarse"]),
            "how coarse it is",
        ),
        may("begun", Holds::Time, "since when"),
        may("renewed", Holds::Time, "when much of it was last made new"),
        may("note", Holds::Text, "anything else"),
    ],
};

/// Batches mixed or tempered.
pub const BATCHES: Table = Table {
    name: "batches",
    one: "batch",
    says: "a batch of sand mixed, tempered or renewed",
    columns: &[
        may("heap", Holds::Entry("heaps"), "from which heap"),
        wanted("mixed", Holds::Time, "when"),
        may("sand", Holds::Mass, "new sand"),
        may("clay", Holds::Mass, "new clay"),
        may(
            "binder",
            Holds::Mass,
            "new sugar, flour or oil, without water",
        ),
        may("water", Holds::Mass, "water put in"),
        may("mulled", Holds::Minutes, "how long it was worked"),
        wanted("moisture", Holds::Percent, "of wet mass"),
        may(
            "planned_drying",
            Holds::Hours,
            "drying time as the tool had it",
        ),
        may("drying", Holds::Hours, "drying time as it was"),
        may(
            "clay_burnt",
            Holds::Percent,
            "of the heap, by the pour before",
        ),
        may(
            "organic_burnt",
            Holds::Percent,
            "of the heap, by the pour before",
        ),
        may("dried", Holds::Percent, "of the heap, by the pour before"),
        may("core_sand", Holds::Mass, "grains of cores that fell in"),
        may("core_binder", Holds::Mass, "unburnt binder on them"),
        may("parting", Holds::Mass, "parting dust used"),
        may(
            "crust_out",
            Holds::Percent,
            "of the burnt crust, thrown out",
        ),
        may("heap_out", Holds::Percent, "of the mixed heap, thrown out"),
        may("note", Holds::Text, "anything else"),
    ],
};

/// Tests of sand.
pub const SAND_TESTS: Table = Table {
    name: "sand_tests",
    one: "sand-test",
    says: "a test of the sand",
    columns: &[
        may("heap", Holds::Entry("heaps"), "of which heap"),
        may("batch", Holds::Entry("batches"), "of which batch"),
        wanted(
            "day",
            Holds::Text,
            "the day, or whatever tells batches apart",
        ),
        wanted("test", Holds::Text, "which test"),
        wanted(
            "value",
            Holds::Number,
            "what it came to, in the unit beside it",
        ),
        may("unit", Holds::Text, "kPa, %, or none"),
        may(
            "good",
            Holds::Flag,
            "whether the sand of that day moulded well",
        ),
        may("who", Holds::Text, "who tested"),
        may("note", Holds::Text, "anything else"),
    ],
};
