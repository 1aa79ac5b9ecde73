//! A job as a lesson: what a pupil works out, the plan for a class, and the papers of both. The
//! answers are printed apart and stand in no answer of the page, where a class may be looking on.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, Query, State};
use axum::http::HeaderName;
use axum::http::header::CONTENT_TYPE;
use bench::class::{ADULTS, Class, MINUTES, NoClass, SESSIONS, class};
use bench::told::Told;
use job::lesson::{Lesson, NoLesson, Number, Task, lesson};
use job::plan::Plan;
use job::words::Language;
use job::words::said::Said;
use serde::{Deserialize, Serialize};
use sheet::Reader;
use utoipa::{IntoParams, ToSchema};

use crate::answers::bench::{ToldAnswer, told_answer};
use crate::answers::paper::PaperAsked;
use crate::answers::sheets::planned;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;
use crate::opened_job::OpenedJob;

/// What a pupil works out of a job.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LessonAnswer {
    /// What the job is called.
    pub name: String,
    /// What to do with it, as on the pupil's sheet.
    pub lead: String,
    /// The tasks, in the order in which they are worked out.
    pub tasks: Vec<TaskAnswer>,
    /// The class that is taken where nobody says otherwise.
    pub class: ClassOffered,
}

/// One thing to work out, without its answer.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct TaskAnswer {
    /// What is wanted.
    pub wanted: String,
    /// The rule in words.
    pub rule: String,
    /// The numbers that go into it: what each is, and the number or the task whose answer it is.
    pub numbers: Vec<(String, String)>,
    /// The unit of the answer.
    pub unit: String,
}

/// What a class has where nobody says otherwise.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ClassOffered {
    /// Lessons in which it comes.
    pub sessions: usize,
    /// Minutes of one.
    pub minutes: f64,
    /// Grown-ups at the fire.
    pub adults: usize,
}

/// A class, and the paper on which its plan is printed.
#[derive(Clone, Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct ClassAsked {
    /// Pupils, each of whom gets a casting.
    pub pupils: usize,
    /// Lessons in which they come.
    #[serde(default = "sessions")]
    pub sessions: usize,
    /// Minutes of one.
    #[serde(default = "minutes")]
    pub minutes: f64,
    /// Grown-ups at the fire.
    #[serde(default = "adults")]
    pub adults: usize,
    /// Flasks of the size of the plan; left out, those of the shop's file.
    pub flasks: Option<usize>,
    /// US Letter instead of A4.
    #[serde(default)]
    pub letter: bool,
}

/// Whose paper is asked for.
#[derive(Clone, Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct PupilPaper {
    /// The answers, for the teacher, instead of the pupil's sheet.
    #[serde(default)]
    pub answers: bool,
    /// US Letter instead of A4.
    #[serde(default)]
    pub letter: bool,
}

/// A paper as it is sent.
type SentPaper = ([(HeaderName, &'static str); 1], Vec<u8>);

/// What a pupil works out of a job.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/lesson",
    params(("job" = String, Path)),
    responses((status = 200, body = LessonAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn of_job(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<LessonAnswer>, WebError> {
    worked(shop, move |shop| {
        let (opened, plan) = open(shop, &job)?;
        let words = opened.shop.words;
        let lesson = lesson(&plan)?;
        Ok(Json(LessonAnswer {
            name: lesson.name.clone(),
            lead: words.word("pupil-lead"),
            tasks: lesson.tasks.iter().map(|one| task(one, words)).collect(),
            class: ClassOffered {
                sessions: SESSIONS,
                minutes: MINUTES,
                adults: ADULTS,
            },
        }))
    })
    .await
}

/// The pupil's sheet of a job, or the answers to it.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/lesson.pdf",
    params(("job" = String, Path), PupilPaper),
    responses((status = 200, content_type = "application/pdf"))
)]
pub async fn paper(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
    Query(asked): Query<PupilPaper>,
) -> Result<SentPaper, WebError> {
    worked(shop, move |shop| {
        let (_, plan) = open(shop, &job)?;
        let lesson: Lesson = lesson(&plan)?;
        let reader = match asked.answers {
            true => Reader::Teacher,
            false => Reader::Pupil,
        };
        let letter = asked.letter;
        let bytes = sheet::lesson(&lesson, reader, PaperAsked { letter }.paper())?;
        Ok(([(CONTENT_TYPE, "application/pdf")], bytes))
    })
    .await
}

/// The plan of a job for a class: groups, roles, what happens when.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/class",
    params(("job" = String, Path), ClassAsked),
    responses((status = 200, body = ToldAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn of_class(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
    Query(asked): Query<ClassAsked>,
) -> Result<Json<ToldAnswer>, WebError> {
    worked(shop, move |shop| {
        let (opened, told) = set_of(shop, &job, &asked)?;
        Ok(Json(told_answer(&told, &opened.shop)))
    })
    .await
}

/// The same on paper.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/class.pdf",
    params(("job" = String, Path), ClassAsked),
    responses((status = 200, content_type = "application/pdf"))
)]
pub async fn class_paper(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
    Query(asked): Query<ClassAsked>,
) -> Result<SentPaper, WebError> {
    worked(shop, move |shop| {
        let (opened, told) = set_of(shop, &job, &asked)?;
        let (units, words, letter) = (opened.shop.units, opened.shop.words, asked.letter);
        let bytes = sheet::bench_sheet(&told, units, words, PaperAsked { letter }.paper())?;
        Ok(([(CONTENT_TYPE, "application/pdf")], bytes))
    })
    .await
}

fn open(shop: &ShopFolder, job: &str) -> Result<(Arc<OpenedJob>, Arc<Plan>), WebError> {
    let opened = shop.open(&folder_of(shop, job)?)?;
    let plan = planned(shop, &opened)?;
    Ok((opened, plan))
}

fn set_of(
    shop: &ShopFolder,
    job: &str,
    asked: &ClassAsked,
) -> Result<(Arc<OpenedJob>, Told), WebError> {
    let (opened, plan) = open(shop, job)?;
    let wanted = Class {
        pupils: asked.pupils,
        sessions: asked.sessions,
        minutes: asked.minutes,
        adults: asked.adults,
        flasks: asked.flasks,
    };
    let told = class(&plan, &opened.shop, &wanted)?;
    Ok((opened, told))
}

fn task(task: &Task, words: Language) -> TaskAnswer {
    TaskAnswer {
        wanted: words.say(&task.wanted),
        rule: words.say(&task.rule),
        numbers: task.numbers.iter().map(|one| number(one, words)).collect(),
        unit: task.unit.clone(),
    }
}

fn number(number: &Number, words: Language) -> (String, String) {
    let given = match (&number.given, number.answer_of) {
        (Some(given), _) => given.clone(),
        (None, Some(at)) => {
            words.say(&Said::new("pupil-your-answer").with("number", at.to_string()))
        }
        (None, None) => String::new(),
    };
    (words.say(&number.label), given)
}

fn sessions() -> usize {
    SESSIONS
}

fn minutes() -> f64 {
    MINUTES
}

fn adults() -> usize {
    ADULTS
}

impl From<NoLesson> for WebError {
    fn from(error: NoLesson) -> WebError {
        WebError::Refused {
            message: error.to_string(),
            hint: None,
        }
    }
}

impl From<NoClass> for WebError {
    fn from(error: NoClass) -> WebError {
        WebError::Refused {
            message: error.to_string(),
            hint: None,
        }
    }
}
