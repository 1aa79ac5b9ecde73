//! The topics by which laws are listed, in the order of a founder's day.

/// A topic of the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Topic {
    /// How large and how tapered the pattern.
    Pattern,
    /// What is in the heap, and what it lacks.
    Sand,
    /// How the metal gets in.
    Gating,
    /// How long a section takes to freeze.
    Freezing,
    /// What feeds it while it shrinks.
    Feeding,
    /// What helps it to freeze in the right order.
    Helping,
    /// What holds the mould together.
    Holding,
    /// What to weigh out of which heap.
    Charging,
    /// What to charge, and what it takes to melt.
    Melting,
    /// Fuel, lining, cupola.
    Furnace,
    /// How big a job the crucible takes, how many heats.
    Heats,
    /// How hot, in which order.
    Pouring,
    /// When to open the mould, and what the heat leaves behind.
    Opening,
    /// Sound or hollow, and what heating again does.
    After,
    /// What to ask for it.
    Pricing,
}

impl Topic {
    /// All of them, in the order of the day.
    pub const ALL: [Topic; 15] = [
        Topic::Pattern,
        Topic::Sand,
        Topic::Gating,
        Topic::Freezing,
        Topic::Feeding,
        Topic::Helping,
        Topic::Holding,
        Topic::Charging,
        Topic::Melting,
        Topic::Furnace,
        Topic::Heats,
        Topic::Pouring,
        Topic::Opening,
        Topic::After,
        Topic::Pricing,
    ];

    /// As a heading.
    pub fn title(self) -> &'static str {
        match self {
            Topic::Pattern => "Pattern",
            Topic::Sand => "Sand",
            Topic::Gating => "Gating",
            Topic::Freezing => "Freezing",
            Topic::Feeding => "Feeding",
            Topic::Helping => "Necks, reach, chills",
            Topic::Holding => "Flask and cope",
            Topic::Charging => "Charge make-up",
            Topic::Melting => "Charge and melt",
            Topic::Furnace => "Furnace and fuel",
            Topic::Heats => "Crucible and heats",
            Topic::Pouring => "Pouring",
            Topic::Opening => "Opening",
            Topic::After => "After shake-out",
            Topic::Pricing => "Price",
        }
    }
}
