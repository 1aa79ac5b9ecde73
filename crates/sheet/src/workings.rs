//! Workings and sources: how each figure of a plan came about, to be checked with a pencil.

use job::plan::{Figure, Plan};
use job::why::why;
use serde::Serialize;

use crate::SheetError;
use crate::data::Paper;
use crate::typeset::{self, WORKINGS};

#[derive(Serialize)]
struct Given {
    paper: &'static str,
    title: String,
    code: String,
    made_by: String,
    limits: String,
    figures: Vec<Working>,
    sources: Vec<String>,
}

/// One figure with what stands behind it.
#[derive(Serialize)]
struct Working {
    name: String,
    value: String,
    because: Option<String>,
    formula: String,
    with_numbers: String,
    given: Vec<String>,
    range: String,
    /// Numbers of its sources in the list at the end.
    sources: Vec<usize>,
}

/// The workings of a plan as a PDF of as many pages as they take.
///
/// # Errors
///
/// Where the typesetter fails.
pub fn workings(plan: &Plan, paper: Paper) -> Result<Vec<u8>, SheetError> {
    let said = |text: &str| plan.words.of(text);
    let mut given = serde_json::to_value(Given {
        paper: paper.name(),
        title: plan.name.clone(),
        code: crate::of_plan::code(plan),
        made_by: format!("oddside {}", env!("CARGO_PKG_VERSION")),
        limits: said(crate::of_plan::LIMITS),
        figures: plan
            .figures
            .iter()
            .map(|figure| working(plan, figure))
            .collect(),
        sources: plan.sources.iter().map(|key| source(key)).collect(),
    })?;
    crate::words::clean(&mut given);
    let document = typeset::lay_out(WORKINGS, &given, Vec::new())?;
    typeset::write(&document, "workings")
}

fn working(plan: &Plan, figure: &Figure) -> Working {
    let said = |text: &str| plan.words.of(text);
    let shown = figure.amount.shown(plan.units, figure.rounding);
    let value = match shown.band {
        Some(band) => format!("{} ({band})", shown.likely),
        None => shown.likely,
    };
    let why = why(figure);
    let with_numbers = why.as_ref().map(|why| why.with_numbers.clone());
    let given = figure.inputs.iter().filter(|(_, text)| !text.is_empty());
    let number = |key: &String| plan.sources.iter().position(|known| known == key);
    Working {
        name: said(figure.name),
        value,
        because: figure.because.as_deref().map(said),
        formula: figure.law.formula.to_owned(),
        with_numbers: with_numbers
            .filter(|text| text != figure.law.formula)
            .unwrap_or_default(),
        given: given
            .map(|(name, text)| said(&format!("{} {text}", name.replace('_', " "))))
            .collect(),
        range: said(figure.law.range),
        sources: figure
            .sources
            .iter()
            .filter_map(number)
            .map(|at| at + 1)
            .collect(),
    }
}

fn source(key: &str) -> String {
    match measure::source::source(key) {
        Some(source) => format!("{}. Seen: {}", source.title, source.seen),
        None => key.to_owned(),
    }
}
