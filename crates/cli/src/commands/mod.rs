//! One file a command.

pub mod look;
pub mod new;
pub mod plan;
pub mod schema;
