//! Data on standard output, talk on standard error, tables and remarks readable without colour.

use std::io::{self, Write};

use bench::told::Told;
use comfy_table::Table;
use job::cores_told::Line;
use job::plan::Plan;
use job::remark::{Level, Remark};
use job::solved;
use job::words::Language;
use job::words::said::Said;
use measure::source::Source;
use measure::text::System;
use reckon::worked::Narrowing;

use crate::trouble::Trouble;

/// Prints data. A reader that has closed its end has all it wants.
pub fn out(text: &str) -> Result<(), Trouble> {
    let mut to = io::stdout().lock();
    match to.write_all(text.as_bytes()).and_then(|()| to.flush()) {
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Ok(()),
        Err(error) => Err(Trouble::Output(error)),
        Ok(()) => Ok(()),
    }
}

/// Prints talk. That nobody can hear it is no reason to stop.
pub fn talk(text: &str) {
    let _ = writeln!(io::stderr().lock(), "{text}");
}

/// A table without frames.
pub fn table(heads: &[&str]) -> Table {
    let mut table = Table::new();
    table.load_style(comfy_table::presets::NOTHING);
    table.set_header(heads);
    table
}

/// A table whose heads are messages; an empty id heads nothing.
pub fn table_in(language: Language, heads: &[&'static str]) -> Table {
    let heads: Vec<String> = heads.iter().map(|id| head(language, id)).collect();
    table(&heads.iter().map(String::as_str).collect::<Vec<_>>())
}

fn head(language: Language, id: &'static str) -> String {
    match id {
        "" => String::new(),
        id => language.word(id),
    }
}

/// Remarks, a paragraph each.
pub fn remarks(remarks: &[Remark], language: Language) -> String {
    remarks.iter().map(|told| remark(told, language)).collect()
}

/// The summary of a plan.
pub fn plan(plan: &Plan) -> String {
    let language = plan.words;
    let mut figures = table_in(language, &["", "likely", "head-between", "head-or"]);
    for figure in &plan.figures {
        let shown = figure.amount.shown(plan.units, figure.rounding);
        figures.add_row([
            language.say(&figure.label()),
            shown.likely.clone(),
            language.between(&shown).unwrap_or_default(),
            shown.other.unwrap_or_default(),
        ]);
    }
    let mut choices = table(&["", "", ""]);
    for choice in &plan.choices {
        choices.add_row([
            language.say(&choice.label()),
            language.say(&choice.chosen),
            language.say(&choice.because),
        ]);
    }
    let solved = plan.solved.as_ref().map(solved::told);
    let solved = solved.map_or_else(String::new, |said| language.say(&said) + "\n\n");
    let head = Said::new("plan-head")
        .with("count", plan.count)
        .with("job", plan.name.as_str())
        .with("alloy", plan.alloy_label());
    format!(
        "{}\n\n{figures}\n{choices}\n\n{solved}{}{}",
        language.say(&head),
        remarks(&plan.remarks, language),
        unread(language),
    )
}

/// What the bench says.
pub fn told(told: &Told, language: Language, units: System) -> String {
    let rows = told.figures.iter().map(|figure| {
        let shown = figure.shown(language, units);
        let beside = figure.beside.as_ref().map(|said| language.say(said));
        [
            language.say(&figure.label()),
            shown.likely.clone(),
            language.between(&shown).unwrap_or_default(),
            beside.or(shown.other).unwrap_or_default(),
        ]
    });
    let figures = filled(language, &rows.collect::<Vec<_>>());
    let lines = told.lines.iter().map(|told| line(told, language));
    let lines: String = lines.collect();
    let steps = told.steps.iter().zip(1..);
    let steps = steps.map(|(step, at)| format!("{at:<8} {}\n", language.say(step)));
    let steps: String = steps.collect();
    let gap = if steps.is_empty() { "" } else { "\n" };
    let head = language.say(&told.head);
    let unread = unread(language);
    format!("{head}\n\n{figures}{steps}{gap}{lines}{unread}")
}

/// A table of figures without the columns in which nothing stands; nothing at all without rows.
fn filled(language: Language, rows: &[[String; 4]]) -> String {
    if rows.is_empty() {
        return String::new();
    }
    let heads = ["", "likely", "head-between", "head-or"];
    let stands = |at: usize| rows.iter().any(|row| !row[at].is_empty());
    let kept: Vec<usize> = (0..heads.len()).filter(|at| stands(*at)).collect();
    let heads: Vec<&'static str> = kept.iter().map(|at| heads[*at]).collect();
    let mut table = table_in(language, &heads);
    for row in rows {
        table.add_row(kept.iter().map(|at| row[*at].as_str()));
    }
    format!("{table}\n\n")
}

/// A line at the end of what is told in a language that no founder has read.
pub fn unread(language: Language) -> String {
    match language.word("unread") {
        line if line.is_empty() => line,
        line => format!("\n{line}\n"),
    }
}

/// A line at the head of what is told in English to readers of another language.
pub fn in_english(language: Language) -> String {
    match language.word("in-english") {
        line if line.is_empty() => line,
        line => format!("{line}\n\n"),
    }
}

/// A line with its label before it.
pub fn paragraph(label: &str, words: &str) -> String {
    format!("{label:<9}  {words}\n")
}

/// What would make a figure surer, the two most helpful.
pub fn narrowing(narrowing: &[Narrowing], language: Language) -> String {
    let label = language.word("behind-narrower");
    let words = |narrowing: &Narrowing| {
        let told = match narrowing.how {
            "" => Said::new("behind-narrower-told"),
            how => Said::new("behind-narrower-how").with("how", language.of(how)),
        };
        let left = (narrowing.left * 100.0).round();
        let told = told
            .with("key", narrowing.key)
            .with("left", format!("{left} %"));
        paragraph(&label, &language.say(&told))
    };
    narrowing.iter().take(2).map(words).collect()
}

/// A source with where it was seen.
pub fn source(source: &Source, language: Language) -> String {
    let words = match source.title.contains(&source.seen) {
        true => source.title.clone(),
        false => format!("{}; {}", source.title, source.seen),
    };
    paragraph(&language.word("behind-source"), &words)
}

/// How much a remark weighs, in a word.
pub fn level(level: Level, language: Language) -> String {
    language.word(match level {
        Level::Stop => "told-stop",
        Level::Caution => "told-caution",
        Level::Note => "told-note",
    })
}

/// A line of what was noticed, with how much it weighs before it.
pub fn line(line: &Line, language: Language) -> String {
    let level = level(line.level, language);
    format!("{level:<8} {}\n", language.say(&line.words))
}

fn remark(remark: &Remark, language: Language) -> String {
    let level = level(remark.level, language);
    let place = remark.place.map_or_else(String::new, |[x, y, z]| {
        let at = Said::new("at-place").with("place", format!("{x}, {y}, {z} mm"));
        format!(" {}", language.say(&at))
    });
    format!(
        "{level:<8} {}{place}\n         {}\n",
        language.say(&remark.words),
        language.say(&remark.advice)
    )
}
