//! What the founder wants otherwise than the rules place it. What is left out follows the rules.

/// Places that override the rules, mm in the mould's coordinates.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Placement {
    /// Middle of the sprue.
    pub sprue_mm: Option<[f64; 2]>,
    /// Where gates enter castings: each point is of the casting nearest to it, and a casting
    /// without a point keeps its own gates.
    pub gates_mm: Option<Vec<[f64; 2]>>,
    /// Feeders; an empty list stands for none.
    pub feeders: Option<Vec<FeederAt>>,
}

/// Where a feeder is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FeederAt {
    /// With its middle here, mm: on the casting it stands on it, beside it it feeds through a
    /// neck.
    Point([f64; 2]),
    /// At this section of every casting, counted from one, the heaviest first.
    Section(usize),
}
