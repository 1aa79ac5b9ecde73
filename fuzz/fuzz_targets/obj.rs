//! Any bytes as an OBJ file.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| oddside_fuzz::mesh("part.obj", bytes));
