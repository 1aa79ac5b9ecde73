//! Any text as a job file.
#![no_main]

use job::job::{Job, mesh_unit};
use job::job_file::JobFile;

libfuzzer_sys::fuzz_target!(|text: &str| {
    let Some(file) = oddside_fuzz::typed_file::<JobFile>("job.toml", text) else {
        return;
    };
    if let Some(Err(error)) = file.part.unit.as_deref().map(mesh_unit) {
        assert!(!error.to_string().is_empty());
    }
    match Job::meant(&file) {
        Err(error) => assert!(!error.to_string().is_empty()),
        Ok(job) => assert!(job.count >= 1 && (0.0..=1.0).contains(&job.pig)),
    }
});
