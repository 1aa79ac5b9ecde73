//! `oddside completions SHELL`: what a command shell needs to finish our words.

use std::process::ExitCode;

use clap::CommandFactory;
use clap_complete::{Shell, generate};

use crate::args::Args;
use crate::print;
use crate::trouble::Trouble;

/// Prints the completions of a shell.
pub fn run(shell: Shell) -> Result<ExitCode, Trouble> {
    let mut script = Vec::new();
    generate(shell, &mut Args::command(), "oddside", &mut script);
    print::out(&String::from_utf8_lossy(&script))?;
    Ok(ExitCode::SUCCESS)
}
