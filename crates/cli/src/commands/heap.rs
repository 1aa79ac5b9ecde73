//! `oddside heap`: the book of a heap.

use std::path::Path;
use std::process::ExitCode;

use bench::book::file::{HeapFile, STARTER};
use bench::book::{pour, rescue, state};
use bench::given::Given;
use bench::trouble::BenchError;
use job::file_fault::read;
use job::folder::{FolderError, read_text, write_whole};

use crate::args::HeapCommand;
use crate::commands::sand::{Shown, new, shop, shown, tell, typed, written};
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
        HeapCommand::Rescue {
            given,
            out,
            letter,
            json,
        } => shown(
            &given,
            &rescue::KEYS,
            rescue::rescue,
            &Shown { json, out, letter },
        ),
    }
}

fn poured(given: &[String], file: &Path, look: bool, json: bool) -> Result<ExitCode, Trouble> {
    let shop = shop()?;
    let text = read_text(file, ADVICE)?;
    let name = file.display().to_string();
    let book: HeapFile = read(&name, &text).map_err(FolderError::from)?;
    let given = Given::read(given, &pour::KEYS, &shop.scoops).map_err(BenchError::from)?;
    let poured = pour::poured(&book, &text, &given)?;
    if !look {
        // What is written has to be a book again.
        let _: HeapFile = read(&name, &poured.book).map_err(FolderError::from)?;
        write_whole(file, poured.book.as_bytes())?;
        written(file, &shop);
    }
    tell(&poured.told, &shop, json)
}
