//! `oddside schema`: the JSON schema of plan.json.

use std::process::ExitCode;

use crate::print;
use crate::trouble::Trouble;

/// Prints the schema.
pub fn run() -> Result<ExitCode, Trouble> {
    print::out(&job::plan_file::schema())?;
    Ok(ExitCode::SUCCESS)
}
