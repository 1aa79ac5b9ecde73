//! `oddside pattern JOB`: make the pattern, and write it as solids.

use std::process::ExitCode;

use job::folder::open;
use job::making::files::files;
use job::making::told::{Told, told};
use job::making::{MakingError, make};
use job::words::Language;
use job::words::said::Said;

use crate::commands::opened::settled;
use crate::commands::solids::{Asked, write};
use crate::print;
use crate::progress::Working;
use crate::trouble::Trouble;

/// Name of the folder written, in the job folder.
const FOLDER: &str = "pattern";

/// Makes, writes, tells.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = {
        let _working = Working::on("reading the mesh");
        open(&asked.job)?
    };
    settled(&opened)?;
    let looked = opened.part.looked().ok_or(MakingError::NoMesh)?;
    let making = {
        let _working = Working::on("making the pattern");
        make(&opened.job, &opened.shop, &looked.mesh)?
    };
    let language = opened.shop.words;
    print::out(&text(&told(&making, opened.shop.units, language), language))?;
    write(
        asked,
        &opened.folder.join(FOLDER),
        &files(&making)?,
        language,
    )?;
    Ok(ExitCode::SUCCESS)
}

fn text(told: &Told, language: Language) -> String {
    let lines =
        |said: &[Said]| -> String { said.iter().map(|line| language.say(line) + "\n").collect() };
    let mut steps = print::table_in(language, &["making-step", "making-volume", "making-change"]);
    told.steps.iter().for_each(|row| _ = steps.add_row(row));
    let heads = [
        "making-piece",
        "making-size",
        "making-volume",
        "making-plastic",
    ];
    let mut pieces = print::table_in(language, &heads);
    told.pieces.iter().for_each(|row| _ = pieces.add_row(row));
    let mut text = format!("{}\n{steps}\n\n{pieces}\n\n", lines(&told.head));
    if !told.gauge.is_empty() {
        let heads = ["making-station", "", "", "making-height", "making-slope"];
        let mut gauge = print::table_in(language, &heads);
        told.gauge.iter().for_each(|row| _ = gauge.add_row(row));
        text += &format!("{}\n{gauge}\n\n", language.word("making-gauge"));
    }
    text + &lines(&told.lines) + &print::remarks(&told.remarks, language) + &print::unread(language)
}
