//! From what was seen and written down to causes.

pub mod case_file;
pub mod cause;
pub mod sight;
