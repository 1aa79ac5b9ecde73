//! A plan as a lesson: what a pupil works out with a pencil, and the answers for the teacher.
//!
//! Each task is a figure of the plan with its own law. The numbers on the pupil's sheet are single
//! ones, the likely values of the plan in three figures, and an answer found further up goes on
//! into the tasks below it. The teacher's answers are worked out from those very numbers, so that
//! they tally with the pencil; the band of the plan stands beside them.

use measure::band::Band;
use measure::matter::Force;
use measure::text::shown::{Rounding, shown};
use measure::text::{System, Written};
use reckon::answer::Outcome;
use reckon::ask::Ask;
use reckon::worked::{Worked, likely_typed, work_out};
use thiserror::Error;

use crate::amount::Amount;
use crate::plan::{Figure, Plan};
use crate::why::{ask, reckoner_of};
use crate::words::Language;
use crate::words::said::{Said, slug};

/// The tasks of a plan, in the order in which they are worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Lesson {
    /// What the job is called.
    pub name: String,
    /// Day of the pour, as printed.
    pub date: Option<String>,
    /// The tasks.
    pub tasks: Vec<Task>,
    /// The language of the sheet.
    pub words: Language,
}

/// One thing to work out.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// What is wanted.
    pub wanted: Said,
    /// The rule in words.
    pub rule: Said,
    /// The numbers that go into it.
    pub numbers: Vec<Number>,
    /// The unit of the answer.
    pub unit: String,
    /// The answer with the numbers given.
    pub answer: String,
    /// The figure of the plan with its band.
    pub in_the_plan: Said,
}

/// A number that goes into a task.
#[derive(Clone, Debug, PartialEq)]
pub struct Number {
    /// What it is.
    pub label: Said,
    /// The number with its unit; nothing where it is the answer of a task further up.
    pub given: Option<String>,
    /// The task whose answer it is, counted from one.
    pub answer_of: Option<usize>,
}

/// Why there is no lesson.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum NoLesson {
    /// The plan holds none of the figures.
    #[error("no lesson: the plan of {job} holds no figure that is one sum with a pencil")]
    NothingToReckon {
        /// The job.
        job: String,
    },
}

/// What is asked for, and which of the numbers that go into it are answers of tasks further up.
struct Asked {
    /// The figure of the plan.
    figure: &'static str,
    /// Key of a number, and the figure whose answer it is.
    from: &'static [(&'static str, &'static str)],
    /// Whether the fall of the metal is part of the rule.
    falls: bool,
}

/// A task that stands, and its answer as the next law is asked with it.
struct Found {
    figure: &'static str,
    task: Task,
    asked: String,
}

/// The tasks in the order of the day.
const ASKED: [Asked; 10] = [
    Asked::of("pattern length"),
    Asked::of("casting mass"),
    Asked::of("poured mass").from(&[("casting", "casting mass")]),
    Asked::of("charge").from(&[("poured", "poured mass")]),
    Asked::of("sand to fill the flask"),
    Asked::of("sand to have ready").from(&[("rammed", "sand to fill the flask")]),
    Asked::of("choke area")
        .from(&[("poured", "poured mass")])
        .falling(),
    Asked::of("cope lift"),
    Asked::of("weight on the cope").from(&[("lift", "cope lift")]),
    Asked::of("freezing time of the heaviest section"),
];

/// The lesson of a plan.
///
/// # Errors
///
/// Where the plan holds none of the figures that a pencil can work out.
pub fn lesson(plan: &Plan) -> Result<Lesson, NoLesson> {
    let mut found: Vec<Found> = Vec::new();
    for asked in &ASKED {
        found.extend(task(asked, plan, &found));
    }
    if found.is_empty() {
        return Err(NoLesson::NothingToReckon {
            job: plan.name.clone(),
        });
    }
    Ok(Lesson {
        name: plan.name.clone(),
        date: plan.date.clone(),
        tasks: found.into_iter().map(|found| found.task).collect(),
        words: plan.words,
    })
}

/// A task; nothing where the plan has no such figure, where it is more than its one law, or where a
/// number that goes into it was to be found further up and was not.
fn task(asked: &Asked, plan: &Plan, found: &[Found]) -> Option<Found> {
    let figure = plan.figure(asked.figure).filter(|figure| !figure.in_part)?;
    let reckoner = reckoner_of(figure)?;
    let mut again = Ask::new(reckoner.name);
    let mut numbers = Vec::new();
    for (key, likely) in likely_typed(&ask(reckoner, figure), plan.units).ok()? {
        let above = match asked.from.iter().find(|(of, _)| *of == key) {
            Some((_, from)) => Some(found.iter().position(|found| found.figure == *from)?),
            None => None,
        };
        again = again.give(key, above.map_or(&likely, |at| &found[at].asked));
        numbers.push(Number {
            label: Said::new(format!("pencil-number-{}", slug(key))),
            given: above.is_none().then_some(likely),
            answer_of: above.map(|at| at + 1),
        });
    }
    numbers.extend(asked.falls.then(|| gravity(plan.units)));
    let (answer, asked_next) = answer(&work_out(&again).ok()?, figure, plan.units)?;
    let (_, unit) = answer.split_once(' ').unwrap_or((&answer, ""));
    let task = Task {
        wanted: figure.label(),
        rule: Said::new(format!("pencil-{}", slug(asked.figure))),
        numbers,
        unit: unit.to_owned(),
        in_the_plan: in_the_plan(figure, plan),
        answer,
    };
    Some(Found {
        figure: asked.figure,
        task,
        asked: asked_next,
    })
}

/// The answer of a law without its band, as people read it and as the next law is asked with it.
///
/// A force is told by the mass that it just lifts, as on the pour sheet: the rule then does without
/// the fall of bodies, in kilograms as in pounds.
fn answer(worked: &Worked, figure: &Figure, units: System) -> Option<(String, String)> {
    let answer = worked.answer(figure.answer)?;
    match (&figure.amount, &answer.outcome) {
        (Amount::Force(_), Outcome::Figure { ends, .. }) => {
            let lifted = Band::exact(Force::from_si(ends[1]).held_by());
            let text = shown(&lifted, units, Rounding::Nearest).likely;
            let asked = format!("{text}f");
            Some((text, asked))
        }
        _ => {
            let text = answer.shown(units).likely;
            Some((text.clone(), text))
        }
    }
}

/// The fall of bodies (standard gravity, exact by definition: 9.80665 m/s²).
fn gravity(units: System) -> Number {
    let text = match units {
        System::Metric => "9.81 m/s²",
        System::Inch => "386 in/s²",
    };
    Number {
        label: Said::new("pencil-fall"),
        given: Some(text.to_owned()),
        answer_of: None,
    }
}

fn in_the_plan(figure: &Figure, plan: &Plan) -> Said {
    let shown = figure.amount.shown(plan.units, figure.rounding);
    match &shown.band {
        Some(band) => Said::from(band),
        None => Said::typed(shown.likely),
    }
}

impl Asked {
    const fn of(figure: &'static str) -> Asked {
        Asked {
            figure,
            from: &[],
            falls: false,
        }
    }

    const fn from(mut self, from: &'static [(&'static str, &'static str)]) -> Asked {
        self.from = from;
        self
    }

    const fn falling(mut self) -> Asked {
        self.falls = true;
        self
    }
}
