//! What came of an ask, as it is written for programs: the counterpart of [`Worked`] at the door.

use serde::Serialize;

use crate::answer::Outcome;
use crate::worked::{Figure, Worked};

/// The one object that is printed.
#[derive(Clone, Debug, Serialize)]
pub struct ReckonedFile<'a> {
    /// The name it was called by.
    pub name: &'a str,
    /// The question it answers.
    pub question: &'a str,
    /// What it gives.
    pub answers: Vec<AnswerFile>,
    /// The formula.
    pub formula: &'a str,
    /// The formula with the likely numbers in the place of its symbols.
    pub with_numbers: &'a str,
    /// Where it holds.
    pub range: &'a str,
    /// What went in.
    pub given: Vec<GivenFile<'a>>,
    /// What would narrow the first answer, the most helpful first.
    pub narrowing: Vec<NarrowingFile<'a>>,
    /// What makes the answer doubtful.
    pub doubts: &'a [String],
    /// What to mind where this is done.
    pub cautions: &'a [&'a str],
    /// Every source.
    pub sources: Vec<SourceFile<'a>>,
}

/// One answer: three figures with their unit, or words.
#[derive(Clone, Debug, Serialize)]
pub struct AnswerFile {
    /// Its trade name.
    pub name: &'static str,
    /// The lowest value.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<f64>,
    /// The likely value.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub likely: Option<f64>,
    /// The highest value.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<f64>,
    /// The unit of the three; empty for plain numbers.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<&'static str>,
    /// The words, where it is no figure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub words: Option<String>,
}

/// Something that went in.
#[derive(Clone, Debug, Serialize)]
pub struct GivenFile<'a> {
    /// Its key.
    pub key: &'a str,
    /// What it is.
    pub about: &'a str,
    /// As typed or taken.
    pub text: &'a str,
    /// Whether it was typed.
    pub typed: bool,
}

/// How much one input would narrow the band.
#[derive(Clone, Debug, Serialize)]
pub struct NarrowingFile<'a> {
    /// The input.
    pub key: &'a str,
    /// The part of the band that would be left.
    pub left: f64,
    /// How to know it better.
    pub how: &'a str,
}

/// A source.
#[derive(Clone, Debug, Serialize)]
pub struct SourceFile<'a> {
    /// Its key.
    pub key: &'a str,
    /// What it is.
    pub title: &'a str,
    /// Where it was seen.
    pub seen: &'a str,
}

impl<'a> ReckonedFile<'a> {
    /// The file of what came of an ask.
    pub fn of(worked: &'a Worked) -> ReckonedFile<'a> {
        let reckoner = worked.reckoner;
        let given = worked.given.iter().map(|back| GivenFile {
            key: back.key,
            about: back.about,
            text: &back.text,
            typed: back.typed,
        });
        let narrowing = worked.narrowing.iter().map(|narrowing| NarrowingFile {
            key: narrowing.key,
            left: six_figures(narrowing.left),
            how: narrowing.how,
        });
        let sources = worked.sources.iter().map(|(key, source)| SourceFile {
            key,
            title: &source.title,
            seen: &source.seen,
        });
        ReckonedFile {
            name: reckoner.name,
            question: reckoner.question,
            answers: worked.answers.iter().map(answer).collect(),
            formula: reckoner.law.formula,
            with_numbers: &worked.with_numbers,
            range: reckoner.law.range,
            given: given.collect(),
            narrowing: narrowing.collect(),
            doubts: &worked.doubts,
            cautions: reckoner.cautions,
            sources: sources.collect(),
        }
    }
}

fn answer(figure: &Figure) -> AnswerFile {
    let filed = figure.filed();
    let ends = filed.map(|(ends, _)| ends.map(six_figures));
    AnswerFile {
        name: figure.name,
        low: ends.map(|ends| ends[0]),
        likely: ends.map(|ends| ends[1]),
        high: ends.map(|ends| ends[2]),
        unit: filed.map(|(_, unit)| unit),
        words: match &figure.outcome {
            Outcome::Words(words) => Some(words.clone()),
            Outcome::Figure { .. } => None,
        },
    }
}

/// Six figures are more than anything here is known to, and keep the file free of last bits.
fn six_figures(value: f64) -> f64 {
    measure::text::rounded(value, 6).parse().unwrap_or(value)
}
