//! Workings and sources: how each figure of a plan came about, to be checked with a pencil.

use std::collections::BTreeMap;

use job::plan::{Figure, Plan};
use job::solved;
use job::why::why;
use job::words::said::Said;
use serde::Serialize;

use crate::SheetError;
use crate::data::Paper;
use crate::typeset::{self, Picture, SECTION, WORKINGS};

/// The template's own words.
const WORDS: [&str; 4] = [
    "workings-section",
    "workings-section-told",
    "workings-sources",
    "workings-title",
];

#[derive(Serialize)]
struct Given {
    paper: &'static str,
    /// Why the page is in English, for readers of another language.
    in_english: String,
    words: BTreeMap<&'static str, String>,
    title: String,
    foot: String,
    limits: String,
    figures: Vec<Working>,
    sources: Vec<String>,
    /// The times by the heat in the mould.
    solved: Option<String>,
    /// Name of the section of the freezing.
    section: Option<&'static str>,
}

/// One figure with what stands behind it.
#[derive(Serialize)]
struct Working {
    name: String,
    value: String,
    formula: String,
    with_numbers: String,
    /// What went in, what sets it, where it holds, its sources by their numbers in the list at the
    /// end: a sentence each.
    told: Vec<String>,
}

/// The workings of a plan as a PDF of as many pages as they take; with the section of a freezing
/// as SVG, where there is one, on a page of its own.
///
/// # Errors
///
/// Where the typesetter fails.
pub fn workings(plan: &Plan, section: Option<&str>, paper: Paper) -> Result<Vec<u8>, SheetError> {
    let language = plan.words.for_laws();
    let title = Said::new("paper-title")
        .with("paper", Said::new("workings-title"))
        .with("job", plan.name.as_str());
    let foot = Said::new("workings-sheet")
        .with("job", plan.name.as_str())
        .with("code", crate::of_plan::code(plan))
        .with("by", format!("oddside {}", env!("CARGO_PKG_VERSION")));
    let mut given = serde_json::to_value(Given {
        paper: paper.name(),
        in_english: plan.words.word("in-english"),
        words: crate::words::of_template(language, &WORDS),
        title: language.say(&title),
        foot: language.say(&foot),
        limits: crate::of_plan::limits(language),
        figures: plan
            .figures
            .iter()
            .map(|figure| working(plan, figure))
            .collect(),
        sources: plan.sources.iter().map(|key| source(key)).collect(),
        solved: plan
            .solved
            .as_ref()
            .map(|times| language.say(&solved::told(times))),
        section: section.map(|_| SECTION),
    })?;
    crate::words::clean(&mut given);
    let pictures = section.into_iter().map(|svg| Picture {
        name: SECTION,
        svg: svg.to_owned(),
    });
    let document = typeset::lay_out(WORKINGS, &given, pictures.collect())?;
    typeset::write(&document, "workings")
}

fn working(plan: &Plan, figure: &Figure) -> Working {
    let language = plan.words.for_laws();
    let shown = figure.amount.shown(plan.units, figure.rounding);
    let value = match language.between(&shown) {
        Some(band) => format!("{} ({band})", shown.likely),
        None => shown.likely,
    };
    let why = why(figure);
    let with_numbers = why.as_ref().map(|why| why.with_numbers.clone());
    Working {
        name: language.say(&figure.label()),
        value,
        formula: figure.law.formula.to_owned(),
        with_numbers: with_numbers
            .filter(|text| text != figure.law.formula)
            .unwrap_or_default(),
        told: told(plan, figure)
            .iter()
            .map(|said| language.say(said))
            .collect(),
    }
}

/// The sentences under the formula of a figure.
fn told(plan: &Plan, figure: &Figure) -> Vec<Said> {
    let language = plan.words.for_laws();
    let given = figure.inputs.iter().filter(|(_, text)| !text.is_empty());
    let given: Vec<String> = given
        .map(|(name, text)| language.of(&format!("{} {text}", name.replace('_', " "))))
        .collect();
    let given = Some(given.join("; ")).filter(|given| !given.is_empty());
    let because = figure.because.clone();
    let number = |key: &String| plan.sources.iter().position(|known| known == key);
    let numbers = figure.sources.iter().filter_map(number);
    let numbers: Vec<String> = numbers.map(|at| (at + 1).to_string()).collect();
    let numbers = Some(numbers.join(", ")).filter(|numbers| !numbers.is_empty());
    let range = Said::new("workings-range").with("range", language.of(figure.law.range));
    let sentences = [
        given.map(|given| Said::new("workings-given").with("given", given)),
        because.map(|because| Said::new("workings-because").with("because", because)),
        Some(range),
        numbers.map(|numbers| Said::new("workings-numbers").with("numbers", numbers)),
    ];
    sentences.into_iter().flatten().collect()
}

fn source(key: &str) -> String {
    match measure::source::source(key) {
        Some(source) => format!("{}. Seen: {}", source.title, source.seen),
        None => key.to_owned(),
    }
}
