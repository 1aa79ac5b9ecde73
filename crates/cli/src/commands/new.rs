//! `oddside new DIR`: a job folder to start from.

use std::path::Path;
use std::process::ExitCode;

use crate::print;
use crate::trouble::Trouble;

/// Writes the starter files and says what to do next.
pub fn run(dir: &Path) -> Result<ExitCode, Trouble> {
    for written in job::folder::new(dir)? {
        print::out(&format!("{}\n", written.display()))?;
    }
    let next = dir.display();
    print::talk(&format!(
        "put the mesh beside job.toml, name it there, list your own things in shop.toml, then:\n  \
         oddside plan {next}"
    ));
    Ok(ExitCode::SUCCESS)
}
