//! Everything that gives metal to the casting while it freezes.

pub mod feeder;
