//! `oddside cores JOB`: cores, prints and core boxes as solids.

use std::path::PathBuf;
use std::process::ExitCode;

use job::cores_told::told;
use job::folder::{open, write_all_new};
use job::made_cores::{CORES_FOLDER, cores_files, made_cores};
use job::words::said::Said;
use job::work_out::mould_given;

use crate::commands::opened::settled;
use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

/// What was asked for.
pub struct Asked {
    /// The job folder.
    pub job: PathBuf,
    /// Where to write.
    pub out: Option<PathBuf>,
    /// Whether files that are there are written over.
    pub force: bool,
}

/// Makes the cores, tells of them, and writes their solids.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = open(&asked.job)?;
    settled(&opened)?;
    let language = opened.shop.words;
    let made = {
        let _working = Working::on("making the cores");
        let given = mould_given(&opened.job, &opened.shop, &opened.part);
        let given = given.ok_or(job::mould_solids::NoMould::NoShape)?;
        made_cores(&opened.job, &given.casting.mesh).map_err(Trouble::NoCores)?
    };
    let lines = told(&made);
    let lines = lines.iter().map(|line| {
        let level = print::level(line.level, language);
        format!("{level:<8} {}\n", language.say(&line.words))
    });
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
    let own = || opened.folder.join(CORES_FOLDER);
    let out = asked.out.clone().unwrap_or_else(own);
    write_all_new(&out, &files, asked.force)?;
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    let written = Said::new("written-to")
        .with("folder", out.display().to_string())
        .with("files", names.join(", "));
    print::talk(&language.say(&written));
    Ok(ExitCode::SUCCESS)
}
