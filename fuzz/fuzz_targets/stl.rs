//! Any bytes as an STL file, text or binary.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| oddside_fuzz::mesh("part.stl", bytes));
