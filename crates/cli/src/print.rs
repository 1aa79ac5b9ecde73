//! Data on standard output, talk on standard error, tables and remarks readable without colour.

use std::io::{self, Write};

use comfy_table::Table;
use job::plan::Plan;
use job::remark::{Level, Remark};
use job::words::Language;
use measure::source::Source;
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

/// Remarks, a paragraph each.
pub fn remarks(remarks: &[Remark], language: Language) -> String {
    remarks.iter().map(|told| remark(told, language)).collect()
}

/// The summary of a plan.
pub fn plan(plan: &Plan) -> String {
    let mut figures = table(&["", "likely", "between", "or"]);
    for figure in &plan.figures {
        let shown = figure.amount.shown(plan.units, figure.rounding);
        figures.add_row([
            figure.name.to_owned(),
            shown.likely,
            shown.band.unwrap_or_default(),
            shown.other.unwrap_or_default(),
        ]);
    }
    let mut choices = table(&["", "", ""]);
    for choice in &plan.choices {
        choices.add_row([choice.name, &choice.chosen, &choice.because]);
    }
    let head = match plan.count {
        1 => format!("{}, in {}", plan.name, plan.alloy),
        count => format!("{}, {count} castings in {}", plan.name, plan.alloy),
    };
    let text = plan
        .words
        .of(&format!("{head}\n\n{figures}\n{choices}\n\n"));
    text + &remarks(&plan.remarks, plan.words)
}

/// A line with its label before it.
pub fn paragraph(label: &str, words: &str) -> String {
    format!("{label:<9}  {words}\n")
}

/// What would make a figure surer, the two most helpful.
pub fn narrowing(narrowing: &[Narrowing]) -> String {
    let words = |narrowing: &Narrowing| {
        let left = (narrowing.left * 100.0).round();
        let how = match narrowing.how {
            "" => String::new(),
            how => format!(" ({how})"),
        };
        let key = narrowing.key;
        paragraph(
            "narrower",
            &format!("{key} known exactly leaves {left} % of the band{how}"),
        )
    };
    narrowing.iter().take(2).map(words).collect()
}

/// A source with where it was seen.
pub fn source(source: &Source) -> String {
    let words = match source.title.contains(&source.seen) {
        true => source.title.clone(),
        false => format!("{}; {}", source.title, source.seen),
    };
    paragraph("source", &words)
}

fn remark(remark: &Remark, language: Language) -> String {
    let level = match remark.level {
        Level::Stop => "STOP   ",
        Level::Caution => "caution",
        Level::Note => "note   ",
    };
    let place = remark
        .place
        .map_or_else(String::new, |[x, y, z]| format!(" at {x}, {y}, {z} mm"));
    format!(
        "{level}  {}{place}\n         {}\n",
        language.say(&remark.words),
        language.say(&remark.advice)
    )
}
