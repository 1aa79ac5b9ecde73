//! Any bytes as a 3MF archive.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| oddside_fuzz::mesh("part.3mf", bytes));
