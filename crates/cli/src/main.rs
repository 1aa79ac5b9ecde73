//! The oddside binary.
fn main() {}
