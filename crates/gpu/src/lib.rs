//! The graphics cards of this machine.
//!
//! - [`adapters`]: which there are, with their drivers and what they take.

pub mod adapters;
