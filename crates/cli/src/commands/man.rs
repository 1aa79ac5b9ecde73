//! `oddside man`: the man page.

use std::process::ExitCode;

use clap::CommandFactory;
use clap_mangen::Man;

use crate::args::Args;
use crate::print;
use crate::trouble::Trouble;

/// Prints the page of the program and, after it, those of its commands.
pub fn run() -> Result<ExitCode, Trouble> {
    let mut page = Vec::new();
    let mut program = Args::command();
    program.build();
    Man::new(program.clone())
        .render(&mut page)
        .map_err(Trouble::Output)?;
    for command in program.get_subcommands() {
        let name = format!("oddside-{}", command.get_name());
        let command = command.clone().name(name.clone()).display_name(name);
        Man::new(command)
            .render(&mut page)
            .map_err(Trouble::Output)?;
    }
    print::out(&String::from_utf8_lossy(&page))?;
    Ok(ExitCode::SUCCESS)
}
