//! Heats and pours.

use crate::column::Holds;
use crate::table::{Table, may, wanted};

/// Heats: one crucible melted once.
pub const HEATS: Table = Table {
    name: "heats",
    one: "heat",
    says: "one crucible melted once",
    columns: &[
        wanted("alloy", Holds::Text, "the metal"),
        may("furnace", Holds::Text, "which furnace"),
        may("fuel_kind", Holds::Text, "what it burnt"),
        may("planned_charge", Holds::Mass, "what the plan asked for"),
        wanted("charge", Holds::Mass, "what was charged"),
        may("charge_of", Holds::Text, "what it was made of"),
        may(
            "scrap",
            Holds::Word(&["clean", "dirty", "damp"]),
            "the state of the stock",
        ),
        may("planned_fuel", Holds::Mass, "fuel that the plan asked for"),
        may(
            "planned_efficiency",
            Holds::Percent,
            "efficiency that this fuel was reckoned with",
        ),
        may("fuel", Holds::Mass, "fuel that was burnt"),
        may("lit", Holds::Time, "when the furnace was lit"),
        wanted("melted", Holds::Time, "when all was liquid"),
        may("molten", Holds::Minutes, "how long it was held liquid"),
        may("degassed", Holds::Flag, "whether it was degassed"),
        may("skimmed", Holds::Flag, "whether it was skimmed"),
        may("dross", Holds::Mass, "skimmed off"),
        may("left", Holds::Mass, "metal left over, poured into ingots"),
        may(
            "planned_loss",
            Holds::Percent,
            "melt loss that the plan reckoned with",
        ),
        may(
            "probe",
            Holds::Text,
            "which probe or how the heat was judged",
        ),
        may("note", Holds::Text, "anything else"),
    ],
};

/// Pours: one mould filled once.
pub const POURS: Table = Table {
    name: "pours",
    one: "pour",
    says: "one mould filled once",
    columns: &[
        wanted("heat", Holds::Entry("heats"), "from which heat"),
        wanted("mould", Holds::Entry("moulds"), "into which mould"),
        wanted("poured", Holds::Time, "when"),
        may("planned_temperature", Holds::Temperature, "as planned"),
        wanted("temperature", Holds::Temperature, "as it was"),
        may(
            "planned_time",
            Holds::Seconds,
            "time to fill it, as planned",
        ),
        wanted("time", Holds::Seconds, "time to fill it, as it was"),
        may("planned_mass", Holds::Mass, "poured, as planned"),
        may("mass", Holds::Mass, "poured, as it was"),
        may(
            "planned_freezing",
            Holds::Minutes,
            "of the heaviest section, as planned",
        ),
        may(
            "freezing",
            Holds::Minutes,
            "as it was, felt with a wire or read off a probe",
        ),
        may(
            "planned_opening",
            Holds::Minutes,
            "from the pour to the open mould, as planned",
        ),
        may("opening", Holds::Minutes, "as it was"),
        may("planned_gate_speed", Holds::Speed, "as planned"),
        may(
            "how",
            Holds::Word(&["steady", "broken", "splashed", "slow", "ran-short"]),
            "how it went",
        ),
        may("weather", Holds::Entry("weather"), "the weather"),
        may("who", Holds::Text, "who poured"),
        may("note", Holds::Text, "anything else"),
    ],
};
