//! `oddside cores JOB`: cores, prints and core boxes as solids.

use std::process::ExitCode;

use job::cores_told::told;
use job::folder::open;
use job::made_cores::{CORES_FOLDER, cores_files, made_cores};
use job::work_out::mould_given;

use crate::commands::opened::settled;
use crate::commands::solids::{Asked, write};
use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

/// Makes the cores, tells of them, and writes their solids.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = open(&asked.job)?;
    settled(&opened)?;
    let language = opened.shop.words;
    let made = {
        let _working = Working::on("making the cores");
        let given = mould_given(&opened.job, &opened.shop, &opened.part);
        let given = given.ok_or(job::mould_solids::NoMould::NoShape)?;
        made_cores(&opened.job, &opened.shop, &given.casting.mesh).map_err(Trouble::NoCores)?
    };
    let lines = told(&made);
    let lines = lines.iter().map(|line| print::line(line, language));
    print::out(&format!(
        "{}\n\n{}{}",
        opened.job.name,
        lines.collect::<String>(),
        print::unread(language),
    ))?;
    let files = cores_files(&opened.job, &made)?;
    if files.is_empty() {
        return Ok(ExitCode::SUCCESS);
    }
    write(asked, &opened.folder.join(CORES_FOLDER), &files, language)?;
    Ok(ExitCode::SUCCESS)
}
