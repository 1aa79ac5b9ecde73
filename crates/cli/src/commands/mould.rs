//! `oddside mould JOB`: the mould as solids.

use std::path::PathBuf;
use std::process::ExitCode;

use job::folder::{open, write_all_new};
use job::mould_solids::{MOULD_FOLDER, mould_files, mould_of};
use job::mould_told::{Noticed, fills, held, noticed, piece};
use job::words::Language;
use job::words::said::Said;

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

/// Builds the mould, tells what it holds, and writes its solids.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = open(&asked.job)?;
    settled(&opened)?;
    let language = opened.shop.words;
    let mould = {
        let _working = Working::on("building the mould");
        mould_of(&opened.job, &opened.shop, &opened.part)?
    };
    let mut table = print::table_in(language, &["", "mould-volume", "mould-mass"]);
    for solid in mould.solids() {
        let [volume, mass] = held(solid);
        table.add_row([language.say(&piece(&solid.piece)), volume, mass]);
    }
    let facts: String = noticed(&mould)
        .iter()
        .map(|noticed| line(noticed, language))
        .collect();
    print::out(&format!(
        "{}\n\n{table}\n\n{}\n{facts}{}",
        opened.job.name,
        language.say(&fills(&mould)),
        print::unread(language),
    ))?;
    let own = || opened.folder.join(MOULD_FOLDER);
    let out = asked.out.clone().unwrap_or_else(own);
    let files = mould_files(&mould);
    write_all_new(&out, &files, asked.force)?;
    let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    let written = Said::new("written-to")
        .with("folder", out.display().to_string())
        .with("files", names.join(", "));
    print::talk(&language.say(&written));
    Ok(ExitCode::SUCCESS)
}

fn line(noticed: &Noticed, language: Language) -> String {
    let level = print::level(noticed.level, language);
    format!("{level:<8} {}\n", language.say(&noticed.words))
}
