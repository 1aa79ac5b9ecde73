//! `oddside card JOB…`: the pour card, once everything is dry.

use std::path::PathBuf;
use std::process::ExitCode;

use job::folder::{open, write_whole};
use job::pour_card::pour_card;
use job::words::said::Said;

use crate::commands::opened::plan_of;
use crate::print;
use crate::trouble::Trouble;

/// What was asked for.
pub struct Asked {
    /// Job folders, one for each mould.
    pub jobs: Vec<PathBuf>,
    /// Points ticked as dry.
    pub dry: Vec<String>,
    /// US Letter.
    pub letter: bool,
    /// Where to write it.
    pub out: Option<PathBuf>,
}

/// Name of the file written.
const CARD_FILE: &str = "pour-card.pdf";

/// Works the jobs out, and writes the card if it may be had.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let mut plans = Vec::new();
    let mut folder = PathBuf::from(".");
    for job in &asked.jobs {
        let opened = open(job)?;
        plans.push((plan_of(&opened)?, opened.job.pour));
        folder = opened.folder;
    }
    let card = pour_card(&plans, &asked.dry)?;
    let paper = match asked.letter {
        true => sheet::Paper::Letter,
        false => sheet::Paper::A4,
    };
    let pdf = sheet::card(&card, paper)?;
    // A card of one mould lies with its job, one of several where the founder stands.
    let beside = if plans.len() == 1 {
        folder
    } else {
        PathBuf::from(".")
    };
    let file = asked.out.clone().unwrap_or_else(|| beside.join(CARD_FILE));
    write_whole(&file, &pdf)?;
    for (at, turn) in card.turns.iter().enumerate() {
        let line = format!("{}  {}  {}  {}\n", at + 1, turn.name, turn.at, turn.poured);
        print::out(&line)?;
    }
    let written = Said::new("written").with("file", file.display().to_string());
    print::talk(&card.words.say(&written));
    Ok(ExitCode::SUCCESS)
}
