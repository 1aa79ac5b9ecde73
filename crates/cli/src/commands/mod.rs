//! One file a command.

pub mod card;
pub mod charge;
pub mod completions;
pub mod conduct;
pub mod cores;
pub mod draw;
pub mod experiment;
pub mod freeze;
pub mod freeze_feeder;
pub mod heap;
pub mod keeping;
pub mod lesson;
pub mod log;
pub mod look;
pub mod man;
pub mod mould;
pub mod new;
pub mod opened;
pub mod pattern;
pub mod plan;
pub mod reckon;
pub mod sand;
pub mod schema;
pub mod serve;
pub mod solids;
pub mod why;
