//! Everything the metal runs through before it reaches the casting.

pub mod choke;
pub mod cutter;
pub mod pour_time;
pub mod running_system;
pub mod sprue;
