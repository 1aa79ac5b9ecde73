//! `oddside draw JOB`: which ways the part draws, where it parts, and what is held.

use std::path::Path;
use std::process::ExitCode;

use job::draw_told::told;
use job::folder::open;
use job::mould_solids::NoMould;

use crate::commands::opened::settled;
use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

/// Tries the ways, and tells of the best.
pub fn run(job: &Path) -> Result<ExitCode, Trouble> {
    let opened = open(job)?;
    settled(&opened)?;
    let language = opened.shop.words;
    let looked = opened.part.looked().ok_or(NoMould::NoShape)?;
    let told = {
        let _working = Working::on("trying ways to draw it");
        told(&opened.job, &looked.mesh).map_err(Trouble::NoDraw)?
    };
    let mut table = print::table_in(language, &told.heads);
    told.rows.iter().for_each(|row| _ = table.add_row(row));
    let lines: String = told
        .lines
        .iter()
        .map(|line| print::line(line, language))
        .collect();
    print::out(&format!(
        "{}\n\n{table}\n\n{lines}{}",
        opened.job.name,
        print::unread(language),
    ))?;
    Ok(ExitCode::SUCCESS)
}
