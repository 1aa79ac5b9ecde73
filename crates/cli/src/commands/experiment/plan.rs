//! `oddside experiment plan`: which batches to make, in which order, and their cards.

use std::path::PathBuf;
use std::process::ExitCode;

use bench::experiment::batches::{Batch, text};
use bench::experiment::session::{Wanted, session};
use bench::experiment::weighing::Weighed;
use bench::experiment::{Counted, Experiment};
use comfy_table::Table;
use job::folder::write_whole;
use job::words::Language;
use measure::text::rounded;
use sheet::Paper;

use crate::commands::experiment::{block, opened};
use crate::print;
use crate::trouble::Trouble;

/// Name of the cards in an experiment's folder.
const CARDS_FILE: &str = "batch-cards.pdf";

/// What was asked for.
pub struct Asked {
    /// An experiment's folder or file.
    pub experiment: PathBuf,
    /// Folder for the cards.
    pub out: Option<PathBuf>,
    /// Print them for US Letter.
    pub letter: bool,
    /// Batches to add that the results speak for.
    pub more: Option<usize>,
    /// Plan anew although there is a plan.
    pub force: bool,
}

/// Plans and tells.
pub fn run(asked: &Asked) -> Result<ExitCode, Trouble> {
    let opened = opened(&asked.experiment)?;
    let experiment = &opened.experiment;
    let wanted = match asked.more {
        Some(count) => Wanted::More(count),
        None if asked.force => Wanted::Anew,
        None => Wanted::Planned,
    };
    let session = session(&opened, wanted)?;
    let (batches, rows) = (&session.batches, &session.weighed);
    if *batches != opened.batches || asked.more.is_some() {
        let text = text(experiment, batches);
        write_whole(&opened.batches_file, text.as_bytes())?;
        print::talk(&format!("wrote {}", opened.batches_file.display()));
    }
    let told = block(&session.told, opened.words);
    let table = table(experiment, batches, rows, opened.words);
    let unread = print::unread(opened.words);
    print::out(&format!("{told}\n{table}\n{unread}"))?;
    let paper = if asked.letter {
        Paper::Letter
    } else {
        Paper::A4
    };
    let cards = sheet::batch_cards(experiment, batches, rows, opened.words, paper)?;
    let out = asked
        .out
        .as_ref()
        .unwrap_or(&opened.folder)
        .join(CARDS_FILE);
    write_whole(&out, &cards)?;
    print::talk(&format!("wrote {}", out.display()));
    Ok(ExitCode::SUCCESS)
}

fn table(
    experiment: &Experiment,
    batches: &[Batch],
    rows: &[Vec<Weighed>],
    language: Language,
) -> Table {
    let mut heads = vec!["experiment-batch", "experiment-day"];
    heads.extend(experiment.mixes.as_ref().map(|_| "experiment-mix"));
    let heads = heads.into_iter().map(|id| language.word(id));
    let parts = experiment.parts.iter().map(|one| one.name.clone());
    let settings = experiment.settings.iter().map(|one| one.name.clone());
    let heads: Vec<String> = heads.chain(parts).chain(settings).collect();
    let mut table = print::table(&heads.iter().map(String::as_str).collect::<Vec<_>>());
    for (one, rows) in batches.iter().zip(rows) {
        let mut cells = vec![one.number.to_string(), one.day.to_string()];
        cells.extend(experiment.mix_of(one).map(|mix| mix.name.clone()));
        cells.extend(rows.iter().zip(&one.amounts).map(|(row, amount)| {
            let unit = if experiment.counted == Counted::Percent {
                " %"
            } else {
                ""
            };
            let amount = rounded(*amount, 3);
            format!("{} g ({amount}{unit})", grams(row))
        }));
        let settings = experiment.settings.iter().zip(&one.settings);
        cells.extend(settings.map(|(setting, value)| setting.shown(*value)));
        table.add_row(cells);
    }
    table
}

/// Grams as a scale shows them.
fn grams(row: &Weighed) -> String {
    rounded(row.weigh.as_g(), 4)
}
