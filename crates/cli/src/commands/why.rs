//! `oddside why FIGURE`: what stands behind a figure of a plan.

use std::path::Path;
use std::process::ExitCode;

use job::folder::open;
use job::plan::{Figure, Plan};
use job::why::{Why, why};

use crate::commands::opened::plan_of;
use crate::print;
use crate::trouble::Trouble;

/// Explains one figure, or lists those there are.
pub fn run(figure: Option<&str>, job: &Path) -> Result<ExitCode, Trouble> {
    let opened = open(job)?;
    let plan = plan_of(&opened)?;
    let Some(name) = figure else {
        let names: Vec<&str> = plan.figures.iter().map(|figure| figure.name).collect();
        print::out(&plan.words.of(&format!("{}\n", names.join("\n"))))?;
        return Ok(ExitCode::SUCCESS);
    };
    let figure = named(&plan, name).ok_or_else(|| Trouble::NoSuchFigure {
        name: name.to_owned(),
        near: nearest(&plan, name),
    })?;
    print::out(&plan.words.of(&told(&plan, figure)))?;
    Ok(ExitCode::SUCCESS)
}

/// By its own name or that in the other English.
fn named<'a>(plan: &'a Plan, name: &str) -> Option<&'a Figure> {
    let wanted = name.to_lowercase();
    let mut figures = plan.figures.iter();
    figures
        .find(|figure| figure.name == wanted || plan.words.of(figure.name).to_lowercase() == wanted)
}

fn nearest(plan: &Plan, name: &str) -> String {
    let words: Vec<String> = name
        .to_lowercase()
        .split_whitespace()
        .map(str::to_owned)
        .collect();
    let shares = |figure: &&Figure| words.iter().any(|word| figure.name.contains(word.as_str()));
    let near: Vec<&str> = plan.figures.iter().filter(shares).map(|f| f.name).collect();
    match near.is_empty() {
        true => "oddside why lists them".to_owned(),
        false => format!("did you mean {}?", near.join(", or ")),
    }
}

fn told(plan: &Plan, figure: &Figure) -> String {
    let shown = figure.amount.shown(plan.units, figure.rounding);
    let mut text = format!("{}: {}", figure.name, shown.likely);
    if let Some(band) = shown.band {
        text += &format!(", between {band}");
    }
    if let Some(other) = shown.other {
        text += &format!(", or {other}");
    }
    text += "\n";
    if let Some(because) = &figure.because {
        text += &print::paragraph("because", because);
    }
    match why(figure) {
        Some(why) => text + &behind(&why),
        None => text,
    }
}

fn behind(why: &Why) -> String {
    let law = why.reckoner.law;
    let mut text = format!("\n  {}\n", law.formula);
    if why.with_numbers != law.formula {
        text += &format!("  {}\n", why.with_numbers);
    }
    text += "\n";
    for (key, about, given) in &why.given {
        let about = if about.is_empty() {
            String::new()
        } else {
            format!(": {about}")
        };
        text += &print::paragraph("given", &format!("{key} {given}{about}"));
    }
    text += &print::paragraph("holds for", law.range);
    text += &print::narrowing(&why.narrowing);
    for caution in why.reckoner.cautions {
        text += &print::paragraph("mind", caution);
    }
    for source in &why.sources {
        text += &print::source(source);
    }
    text += &print::paragraph("again", &format!("oddside reckon {}", why.reckoner.name));
    text
}
