//! `oddside draw JOB`: which ways the part draws, where it parts, what is held, and where its skin
//! wants mending.

use std::process::ExitCode;

use job::draw_maps::told as skin_told;
use job::draw_maps::{MAPS_FOLDER, files, judged};

use job::draw_told::told;
use job::folder::open;
use job::mould_solids::NoMould;

use crate::commands::opened::settled;
use crate::commands::solids::{Asked, write};
use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

/// Tries the ways, tells of the best and of the skin, and writes maps of it where asked for.
pub fn run(asked: &Asked, with_maps: bool) -> Result<ExitCode, Trouble> {
    let opened = open(&asked.job)?;
    settled(&opened)?;
    let language = opened.shop.words;
    let looked = opened.part.looked().ok_or(NoMould::NoShape)?;
    let (told, skin) = {
        let _working = Working::on("trying ways to draw it");
        let told = told(&opened.job, &looked.mesh).map_err(Trouble::NoDraw)?;
        (told, judged(&opened.job, &looked.mesh)?)
    };
    let mut table = print::table_in(language, &told.heads);
    told.rows.iter().for_each(|row| _ = table.add_row(row));
    let lines: String = told
        .lines
        .iter()
        .chain(&skin_told(&skin))
        .map(|line| print::line(line, language))
        .collect();
    print::out(&format!(
        "{}\n\n{table}\n\n{lines}{}",
        opened.job.name,
        print::unread(language),
    ))?;
    if with_maps {
        let own = opened.folder.join(MAPS_FOLDER);
        write(asked, &own, &files(&skin), language)?;
    }
    Ok(ExitCode::SUCCESS)
}
