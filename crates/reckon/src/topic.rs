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
    /// What holds the mould together.
    Holding,
    /// What to weigh out of which heap.
    Charging,
    /// What to charge, and what it takes to melt.
    Melting,
    /// How hot, in which order.
    Pouring,
}

impl Topic {
    /// All of them, in the order of the day.
    pub const ALL: [Topic; 9] = [
        Topic::Pattern,
        Topic::Sand,
        Topic::Gating,
        Topic::Freezing,
        Topic::Feeding,
        Topic::Holding,
        Topic::Charging,
        Topic::Melting,
        Topic::Pouring,
    ];

    /// As a heading.
    pub fn title(self) -> &'static str {
        match self {
            Topic::Pattern => "Pattern",
            Topic::Sand => "Sand",
            Topic::Gating => "Gating",
            Topic::Freezing => "Freezing",
            Topic::Feeding => "Feeding",
            Topic::Holding => "Flask and cope",
            Topic::Charging => "Charge make-up",
            Topic::Melting => "Charge and melt",
            Topic::Pouring => "Pouring",
        }
    }
}
