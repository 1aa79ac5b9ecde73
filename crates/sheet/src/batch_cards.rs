//! Batch cards on paper: what to weigh out for each batch, and blanks for what came out.

use bench::experiment::batches::Batch;
use bench::experiment::weighing::Weighed;
use bench::experiment::{Basis, Experiment};
use job::words::Language;
use job::words::said::Said;
use measure::matter::Mass;
use measure::text::rounded;
use serde::Serialize;

use crate::data::Paper;
use crate::typeset::{self, BATCH_CARDS};
use crate::{SheetError, words};

/// What the template reads.
#[derive(Serialize)]
struct Given {
    paper: &'static str,
    lang: &'static str,
    title: String,
    basis: String,
    in_order: String,
    mask: String,
    weighed: String,
    notes: String,
    columns: usize,
    rows: usize,
    cards: Vec<Card>,
    foot: String,
}

#[derive(Serialize)]
struct Card {
    head: String,
    day: String,
    parts: Vec<[String; 3]>,
    settings: Vec<[String; 2]>,
    /// What is measured, with its unit.
    blanks: Vec<[String; 2]>,
}

/// Most lines of a card of which four go on a page, and of which two do: with more, the blanks get
/// too low to write in.
const LINES: [usize; 2] = [11, 20];

/// The cards of all batches as a PDF, four on a page where their lines allow it.
///
/// # Errors
///
/// When the typesetter refuses.
pub fn batch_cards(
    experiment: &Experiment,
    batches: &[Batch],
    weighed: &[Vec<Weighed>],
    language: Language,
    paper: Paper,
) -> Result<Vec<u8>, SheetError> {
    let given = given(experiment, batches, weighed, language, paper);
    let mut value = serde_json::to_value(given)?;
    words::clean(&mut value);
    let document = typeset::lay_out(BATCH_CARDS, &value, Vec::new())?;
    typeset::write(&document, "batch cards")
}

fn given(
    experiment: &Experiment,
    batches: &[Batch],
    weighed: &[Vec<Weighed>],
    language: Language,
    paper: Paper,
) -> Given {
    let mix = usize::from(experiment.mixes.is_some());
    let lines =
        experiment.parts.len() + experiment.settings.len() + experiment.responses.len() + mix;
    let (columns, rows) = match lines {
        few if few <= LINES[0] => (2, 2),
        some if some <= LINES[1] => (1, 2),
        _ => (1, 1),
    };
    let title = Said::new("paper-title")
        .with("paper", Said::new("experiment-card-title"))
        .with("job", experiment.name.as_str());
    let basis = match experiment.basis {
        Basis::Dry => "experiment-basis-dry",
        Basis::AsItLies => "experiment-basis-lies",
    };
    let each = batches.iter().zip(weighed);
    Given {
        paper: paper.name(),
        lang: language.code(),
        title: language.say(&title),
        basis: language.word(basis),
        in_order: language.word("experiment-card-in-order"),
        mask: language.word("experiment-card-mask"),
        weighed: language.word("experiment-card-made"),
        notes: language.word("experiment-card-notes"),
        columns,
        rows,
        cards: each
            .map(|(batch, rows)| card(experiment, batch, rows, language))
            .collect(),
        foot: format!(
            "oddside {}. {}",
            env!("CARGO_PKG_VERSION"),
            language.word("unread")
        ),
    }
}

fn card(experiment: &Experiment, batch: &Batch, rows: &[Weighed], language: Language) -> Card {
    let head = Said::new("experiment-card-batch").with("number", batch.number);
    let day = Said::new("experiment-card-day").with("day", batch.day);
    let part = |row: &Weighed| {
        let holds = match row.holds > Mass::from_g(0.0) {
            true => {
                let water = format!("{} g", rounded(row.holds.as_g(), 2));
                language.say(&Said::new("experiment-card-holds").with("water", water))
            }
            false => String::new(),
        };
        [
            row.name.clone(),
            format!("{} g", rounded(row.weigh.as_g(), 4)),
            holds,
        ]
    };
    let settings = experiment.settings.iter().zip(&batch.settings);
    let settings = settings.map(|(one, value)| [one.name.clone(), one.shown(*value)]);
    let mix = experiment.mix_of(batch);
    let mix = mix.map(|mix| [language.word("experiment-mix"), mix.name.clone()]);
    let blanks = experiment.responses.iter();
    Card {
        head: language.say(&head),
        day: language.say(&day),
        parts: rows.iter().map(part).collect(),
        settings: mix.into_iter().chain(settings).collect(),
        blanks: blanks
            .map(|one| [one.name.clone(), one.unit.clone()])
            .collect(),
    }
}
