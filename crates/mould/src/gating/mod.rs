//! Everything the metal runs through before it reaches the casting.

pub mod aspiration;
pub mod balance;
pub mod basin;
pub mod choke;
pub mod cutter;
pub mod fill_rules;
pub mod filling;
pub mod friction;
pub mod gate_speed;
pub mod network;
pub mod pour_time;
pub mod reach;
mod root;
pub mod running_system;
pub mod slag_trap;
mod solver;
pub mod sprue;
pub mod trapped_air;
