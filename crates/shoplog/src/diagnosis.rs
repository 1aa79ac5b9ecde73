//! From what was seen and written down to causes.

pub mod answer;
pub mod case_file;
pub mod cause;
pub mod check;
pub mod facts;
pub mod from_log;
pub mod gain;
pub mod heat;
pub mod ranked;
pub mod sight;
pub mod told;
