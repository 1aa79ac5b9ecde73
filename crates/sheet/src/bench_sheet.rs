//! What the sand bench says, on paper: what to weigh out, the steps to tick, what to mind.

use bench::told::{Figure, Told};
use job::remark::Level;
use job::words::Language;
use measure::text::System;
use serde::Serialize;

use crate::data::Paper;
use crate::typeset::{self, BENCH_SHEET};
use crate::{SheetError, words};

/// What the template reads.
#[derive(Serialize)]
struct Given {
    paper: &'static str,
    lang: &'static str,
    title: String,
    mind: String,
    minded: Vec<String>,
    amount: String,
    weighed: String,
    rows: Vec<Row>,
    in_order: String,
    steps: Vec<String>,
    notes_head: String,
    notes: Vec<String>,
    blanks: Vec<String>,
    foot: String,
}

#[derive(Serialize)]
struct Row {
    name: String,
    value: String,
    beside: String,
    /// Whether there is room for what the scale said.
    weighed_out: bool,
}

/// Boxes to fill in by hand.
const BLANKS: [&str; 6] = [
    "bench-paper-blank-date",
    "bench-paper-blank-start",
    "bench-paper-blank-squeeze",
    "bench-paper-blank-drop",
    "bench-paper-blank-bottle",
    "bench-paper-blank-seen",
];

/// What the bench says as a PDF.
///
/// # Errors
///
/// When the typesetter refuses.
pub fn bench_sheet(
    told: &Told,
    units: System,
    language: Language,
    paper: Paper,
) -> Result<Vec<u8>, SheetError> {
    let mut value = serde_json::to_value(given(told, units, language, paper))?;
    words::clean(&mut value);
    let document = typeset::lay_out(BENCH_SHEET, &value, Vec::new())?;
    typeset::write(&document, "bench sheet")
}

fn given(told: &Told, units: System, language: Language, paper: Paper) -> Given {
    let [mind, amount, weighed, in_order, notes_head] = language.each([
        "bench-paper-mind",
        "bench-paper-amount",
        "bench-paper-made",
        "bench-paper-steps",
        "bench-paper-notes",
    ]);
    let lines = |is_note: bool| {
        let lines = told.lines.iter();
        let lines = lines.filter(move |line| (line.level == Level::Note) == is_note);
        lines
            .map(|line| language.say(&line.words))
            .collect::<Vec<_>>()
    };
    Given {
        paper: paper.name(),
        lang: language.code(),
        title: language.say(&told.head),
        mind,
        minded: lines(false),
        amount,
        weighed,
        rows: told
            .figures
            .iter()
            .map(|figure| row(figure, units, language))
            .collect(),
        in_order,
        steps: told.steps.iter().map(|step| language.say(step)).collect(),
        notes_head,
        notes: lines(true),
        blanks: language.each(BLANKS).to_vec(),
        foot: format!(
            "oddside {}. {}",
            env!("CARGO_PKG_VERSION"),
            language.word("unread")
        ),
    }
}

fn row(figure: &Figure, units: System, language: Language) -> Row {
    let shown = figure.shown(language, units);
    let own = figure.beside.as_ref().map(|said| language.say(said));
    let between = language.between(&shown);
    let beside = [between, own.or(shown.other)];
    let beside: Vec<String> = beside.into_iter().flatten().collect();
    Row {
        name: language.say(&figure.label()),
        value: shown.likely,
        beside: beside.join("; "),
        weighed_out: figure.weighed_out,
    }
}
