//! Any text as a job file.
#![no_main]

use job::given_part::given_part;
use job::job::{Job, mesh_unit};
use job::job_file::JobFile;

libfuzzer_sys::fuzz_target!(|text: &str| {
    let Some(file) = oddside_fuzz::typed_file::<JobFile>("job.toml", text) else {
        return;
    };
    let unit = file.part.get_ref().unit.as_ref();
    if let Some(Err(error)) = unit.map(|unit| mesh_unit(unit.get_ref())) {
        assert!(!error.to_string().is_empty());
    }
    if let Err(fault) = given_part(&file) {
        assert!(!fault.to_string().is_empty() && fault.span.end <= text.len());
    }
    match Job::meant(&file) {
        Err(error) => assert!(!error.to_string().is_empty()),
        Ok(job) => assert!(job.count >= 1 && (0.0..=1.0).contains(&job.pig)),
    }
});
