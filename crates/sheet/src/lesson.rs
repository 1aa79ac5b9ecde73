//! A plan as a lesson on paper: the pupil's sheet with blanks, and the teacher's answers.

use std::collections::BTreeMap;

use job::lesson::{Lesson, Number, Task};
use job::words::Language;
use job::words::said::Said;
use serde::Serialize;

use crate::data::Paper;
use crate::typeset::{self, LESSON};
use crate::{SheetError, words};

/// For whom it is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reader {
    /// Blanks in the place of answers.
    Pupil,
    /// Answers, with the bands of the plan.
    Teacher,
}

/// What the template reads.
#[derive(Serialize)]
struct Given {
    paper: &'static str,
    lang: &'static str,
    words: BTreeMap<&'static str, String>,
    size_pt: f64,
    title: String,
    date: Option<String>,
    lead: String,
    tasks: Vec<GivenTask>,
    /// What is written down after the pour; nothing for the teacher.
    then: Vec<String>,
    foot: String,
}

#[derive(Serialize)]
struct GivenTask {
    wanted: String,
    rule: String,
    numbers: Vec<GivenNumber>,
    unit: String,
    /// Nothing for the pupil.
    answer: Option<String>,
    /// Nothing for the pupil.
    in_the_plan: Option<String>,
}

#[derive(Serialize)]
struct GivenNumber {
    label: String,
    /// The number, or whose answer it is.
    text: String,
    /// Whether it is an answer from further up.
    is_own: bool,
}

/// The template's own words.
const WORDS: [&str; 5] = [
    "date",
    "pupil-answer",
    "pupil-least-sure",
    "pupil-name",
    "pupil-then",
];

/// What is written down after the pour.
const THEN: [&str; 4] = [
    "pupil-weighed",
    "pupil-filled",
    "pupil-longest",
    "blank-happened",
];

/// Sizes of the type: what a class reads with ease down to what it still reads.
const SIZES_PT: [f64; 3] = [10.0, 9.5, 9.0];

/// The pupil's sheet or the teacher's answers as a PDF of exactly one page.
///
/// # Errors
///
/// [`SheetError::TooMuch`] where the tasks do not go on one side.
pub fn lesson(lesson: &Lesson, reader: Reader, paper: Paper) -> Result<Vec<u8>, SheetError> {
    let mut pages = 0;
    for size_pt in SIZES_PT {
        let mut value = serde_json::to_value(given(lesson, reader, paper, size_pt))?;
        words::clean(&mut value);
        let document = typeset::lay_out(LESSON, &value, Vec::new())?;
        pages = document.pages().len();
        if pages <= 1 {
            return typeset::write(&document, reader.title());
        }
    }
    Err(SheetError::TooMuch { pages })
}

fn given(lesson: &Lesson, reader: Reader, paper: Paper, size_pt: f64) -> Given {
    let language = lesson.words;
    let title = Said::new("paper-title")
        .with("paper", Said::new(reader.title()))
        .with("job", lesson.name.as_str());
    let made_by = format!("oddside {}", env!("CARGO_PKG_VERSION"));
    let [unread, foot] = language.each(["unread", "pupil-foot"]);
    Given {
        paper: paper.name(),
        lang: language.code(),
        words: words::of_template(language, &WORDS),
        size_pt,
        title: language.say(&title),
        date: lesson.date.clone(),
        lead: language.word(reader.lead()),
        tasks: lesson
            .tasks
            .iter()
            .map(|task| given_task(task, reader, language))
            .collect(),
        then: match reader {
            Reader::Pupil => language.each(THEN).to_vec(),
            Reader::Teacher => Vec::new(),
        },
        foot: format!("{made_by}. {foot} {unread}"),
    }
}

fn given_task(task: &Task, reader: Reader, language: Language) -> GivenTask {
    let is_shown = reader == Reader::Teacher;
    let in_the_plan = Said::new("answers-in-the-plan").with("band", task.in_the_plan.clone());
    GivenTask {
        wanted: language.say(&task.wanted),
        rule: language.say(&task.rule),
        numbers: task
            .numbers
            .iter()
            .map(|number| given_number(number, language))
            .collect(),
        unit: task.unit.clone(),
        answer: is_shown.then(|| task.answer.clone()),
        in_the_plan: is_shown.then(|| language.say(&in_the_plan)),
    }
}

fn given_number(number: &Number, language: Language) -> GivenNumber {
    let own = number.answer_of.map(|at| {
        let own = Said::new("pupil-your-answer").with("number", at.to_string());
        language.say(&own)
    });
    GivenNumber {
        label: language.say(&number.label),
        is_own: own.is_some(),
        text: own.or(number.given.clone()).unwrap_or_default(),
    }
}

impl Reader {
    fn title(self) -> &'static str {
        match self {
            Reader::Pupil => "pupil-title",
            Reader::Teacher => "answers-title",
        }
    }

    fn lead(self) -> &'static str {
        match self {
            Reader::Pupil => "pupil-lead",
            Reader::Teacher => "answers-lead",
        }
    }
}
