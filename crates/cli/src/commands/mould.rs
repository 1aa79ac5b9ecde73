//! `oddside mould JOB`: the mould as solids.

use std::process::ExitCode;

use job::folder::open;
use job::mould_solids::{MOULD_FOLDER, mould_files, mould_of};
use job::mould_told::{Noticed, fills, held, joint, noticed, piece};
use job::words::Language;

use crate::commands::opened::settled;
use crate::commands::solids::{Asked, write};
use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

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
        "{}\n\n{table}\n\n{}\n{}\n{facts}{}",
        opened.job.name,
        language.say(&joint(&mould)),
        language.say(&fills(&mould)),
        print::unread(language),
    ))?;
    let own = opened.folder.join(MOULD_FOLDER);
    write(asked, &own, &mould_files(&mould), language)?;
    Ok(ExitCode::SUCCESS)
}

fn line(noticed: &Noticed, language: Language) -> String {
    let level = print::level(noticed.level, language);
    format!("{level:<8} {}\n", language.say(&noticed.words))
}
