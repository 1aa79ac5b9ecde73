//! `oddside heap`: the book of a heap.

use std::path::Path;
use std::process::ExitCode;

use bench::book::file::{HeapFile, STARTER};
use bench::book::{pour, rescue, state};
use bench::given::Given;
use bench::trouble::BenchError;
use job::file_fault::read;
use job::folder::{FolderError, read_text, write_whole};
use job::solved_kept::heat_of_pour;

use crate::args::HeapCommand;
use crate::commands::sand::{new, on_paper, shop, tell, typed, written};
use crate::trouble::Trouble;

/// What to do where there is no book.
const ADVICE: &str = "start one with: oddside heap new";

/// Does what was asked for.
pub fn run(what: HeapCommand) -> Result<ExitCode, Trouble> {
    match what {
        HeapCommand::New { file } => new(&file, STARTER),
        HeapCommand::State { file, json } => {
            let typed: HeapFile = typed(&file, ADVICE)?;
            tell(&state::state(&typed)?, &shop()?, json)
        }
        HeapCommand::Pour {
            given,
            file,
            look,
            json,
        } => poured(&given, &file, look, json),
        HeapCommand::Rescue { given, shown } => {
            on_paper(&given, &rescue::KEYS, rescue::rescue, &shown)
        }
    }
}

fn poured(given: &[String], file: &Path, look: bool, json: bool) -> Result<ExitCode, Trouble> {
    let shop = shop()?;
    let text = read_text(file, ADVICE)?;
    let name = file.display().to_string();
    let book: HeapFile = read(&name, &text).map_err(FolderError::from)?;
    let was_followed = given
        .iter()
        .any(|pair| pair.trim_start().starts_with("freeze="));
    let keys = pour::keys(was_followed);
    let given = Given::read(given, &keys, &shop.scoops).map_err(BenchError::from)?;
    let followed = given
        .text(pour::FREEZE)
        .map(|path| heat_of_pour(Path::new(path)));
    let poured = pour::poured(&book, &text, &given, followed.transpose()?.as_ref())?;
    if !look {
        // What is written has to be a book again.
        let _: HeapFile = read(&name, &poured.book).map_err(FolderError::from)?;
        write_whole(file, poured.book.as_bytes())?;
        written(file, &shop);
    }
    tell(&poured.told, &shop, json)
}
