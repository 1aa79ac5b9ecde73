//! `oddside why FIGURE`: what stands behind a figure of a plan.

use std::path::Path;
use std::process::ExitCode;

use job::folder::open;
use job::plan::{Figure, Plan};
use job::why::{Why, why};
use job::words::Language;

use crate::commands::opened::plan_of;
use crate::print;
use crate::trouble::Trouble;

/// Explains one figure, or lists those there are.
pub fn run(figure: Option<&str>, job: &Path) -> Result<ExitCode, Trouble> {
    let opened = open(job)?;
    let plan = plan_of(&opened)?;
    let Some(name) = figure else {
        let figures = plan.figures.iter();
        let labels = figures.map(|figure| plan.words.say(&figure.label()) + "\n");
        print::out(&labels.collect::<String>())?;
        return Ok(ExitCode::SUCCESS);
    };
    let figure = named(&plan, name).ok_or_else(|| Trouble::NoSuchFigure {
        name: name.to_owned(),
        near: nearest(&plan, name),
    })?;
    print::out(&told(&plan, figure))?;
    Ok(ExitCode::SUCCESS)
}

/// By its own name or by the label that the shop's language gives it.
fn named<'a>(plan: &'a Plan, name: &str) -> Option<&'a Figure> {
    let wanted = name.to_lowercase();
    let label = |figure: &Figure| plan.words.say(&figure.label()).to_lowercase();
    let mut figures = plan.figures.iter();
    figures.find(|figure| figure.name == wanted || label(figure) == wanted)
}

fn nearest(plan: &Plan, name: &str) -> String {
    let name = name.to_lowercase();
    let words: Vec<&str> = name.split_whitespace().collect();
    let labels = plan
        .figures
        .iter()
        .map(|figure| plan.words.say(&figure.label()));
    let shares = |label: &String| words.iter().any(|word| label.to_lowercase().contains(word));
    let near: Vec<String> = labels.filter(shares).collect();
    match near.is_empty() {
        true => "oddside why lists them".to_owned(),
        false => format!("did you mean {}?", near.join(", or ")),
    }
}

fn told(plan: &Plan, figure: &Figure) -> String {
    let language = plan.words.for_laws();
    let shown = figure.amount.shown(plan.units, figure.rounding);
    let label = language.say(&figure.label());
    let mut text = format!("{}{label}: {}", print::in_english(plan.words), shown.likely);
    if let Some(band) = language.between(&shown) {
        text += &format!(", {} {band}", language.word("head-between"));
    }
    if let Some(other) = shown.other {
        text += &format!(", {} {other}", language.word("head-or"));
    }
    text += "\n";
    if let Some(because) = &figure.because {
        text += &print::paragraph(&language.word("behind-because"), &language.say(because));
    }
    match why(figure) {
        Some(why) => text + &behind(&why, language),
        None => text,
    }
}

fn behind(why: &Why, language: Language) -> String {
    let line = |label, words: &str| print::paragraph(&language.word(label), &language.of(words));
    let law = why.reckoner.law;
    let mut text = format!("\n  {}\n", law.formula);
    if why.with_numbers != law.formula {
        text += &format!("  {}\n", why.with_numbers);
    }
    text += "\n";
    for (key, about, given) in &why.given {
        let about = match about.as_str() {
            "" => String::new(),
            about => format!(": {about}"),
        };
        text += &line("behind-given", &format!("{key} {given}{about}"));
    }
    text += &line("behind-range", law.range);
    text += &print::narrowing(&why.narrowing, language);
    for caution in why.reckoner.cautions {
        text += &line("behind-mind", caution);
    }
    for source in &why.sources {
        text += &print::source(source, language);
    }
    text + &line(
        "behind-again",
        &format!("oddside reckon {}", why.reckoner.name),
    )
}
