//! What the log says as a whole: its charts, what it teaches, what goes with bad castings.

use std::path::PathBuf;
use std::sync::Arc;

use axum::Json;
use axum::extract::State;
use job::folder::{SHOP_FILE, read_text, shop_above, shop_of, write_whole};
use job::shop::Shop;
use job::words::Language;
use job::words::said::Said;
use serde::{Deserialize, Serialize};
use shoplog::around_pour::pours;
use shoplog::chart::picture::pictures;
use shoplog::guard::changed;
use shoplog::guard_told::changes_told;
use shoplog::learn::accepted::{CONTACT, accepted, accepted_contact, has_key, name};
use shoplog::learn::apart::{Apart, apart};
use shoplog::learn::told::{apart_told, label, told};
use shoplog::learn::{Lesson, lessons};
use shoplog::log::{LOG_FILE, Log};
use shoplog::question::questions;
use utoipa::ToSchema;

use crate::answers::bench::{ToldAnswer, told_answer};
use crate::answers::experiments::PictureAnswer;
use crate::answers::typed_lines::OneChoice;
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// The log as a whole.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LogAnswer {
    /// Pours in it; none where there is no log yet.
    pub pours: usize,
    /// Whether a newer program wrote it, so that it is only read here.
    pub is_only_read: bool,
    /// What is asked about entries that contradict each other, a sentence each.
    pub asked: Vec<String>,
    /// Charts of it.
    pub charts: Vec<PictureAnswer>,
    /// What it teaches about the shop.
    pub learned: Option<ToldAnswer>,
    /// What of that may be put into the shop's file.
    pub suggested: Vec<OneChoice>,
    /// What changed from pour to pour, and what goes with bad castings.
    pub changes: Option<ToldAnswer>,
}

/// Something that the log teaches, accepted.
#[derive(Clone, Debug, Deserialize, ToSchema)]
pub struct Accept {
    /// The word by which it is known.
    pub name: String,
}

/// How far back is looked for what goes with bad castings.
const FAR_BACK: usize = 1000;

/// Most questions that are shown: whoever has more begins at the first.
const MOST_ASKED: usize = 20;

/// The log as a whole.
#[utoipa::path(get, path = "/api/v1/log", responses((status = 200, body = LogAnswer)))]
pub async fn log(State(shop): State<Arc<ShopFolder>>) -> Result<Json<LogAnswer>, WebError> {
    worked(shop, |shop| answer(shop).map(Json)).await
}

/// Puts something that the log teaches into the shop's file.
#[utoipa::path(
    post,
    path = "/api/v1/log/learned",
    request_body = Accept,
    responses((status = 200, body = LogAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn accept(
    State(shop): State<Arc<ShopFolder>>,
    Json(wanted): Json<Accept>,
) -> Result<Json<LogAnswer>, WebError> {
    worked(shop, move |shop| {
        {
            let _writing = shop.writing();
            let log = Log::open_to_read(&log_of(shop)?)?;
            put(shop, |text| with_lesson(&log, &wanted.name, text))?;
        }
        answer(shop).map(Json)
    })
    .await
}

/// Where the log of the shop lies, whether it is there yet or not.
///
/// # Errors
///
/// A shop's file that cannot be read.
pub fn log_of(shop: &ShopFolder) -> Result<PathBuf, WebError> {
    let (_, file) = shop_above(shop.root())?;
    let beside = file.unwrap_or_else(|| shop.root().join(SHOP_FILE));
    Ok(beside.with_file_name(LOG_FILE))
}

/// The language of the shop.
///
/// # Errors
///
/// A shop's file that cannot be read.
pub fn words_of(shop: &ShopFolder) -> Result<Language, WebError> {
    Ok(shop_above(shop.root())?.0.words)
}

/// Changes the text of the shop's file, and writes it where it can still be read after that.
fn put(
    shop: &ShopFolder,
    change: impl FnOnce(&str) -> Result<String, WebError>,
) -> Result<(), WebError> {
    let file = shop_above(shop.root())?.1;
    let file = file.ok_or_else(|| WebError::Refused {
        message: "the shop has no file yet: change something on the page of the shop".to_owned(),
        hint: None,
    })?;
    let text = change(&read_text(&file, "")?)?;
    shop_of(&file, &text)?;
    Ok(write_whole(&file, text.as_bytes())?)
}

/// The text of the shop's file with what the log teaches under a name.
fn with_lesson(log: &Log, wanted: &str, text: &str) -> Result<String, WebError> {
    let nothing = || WebError::NoSuch(format!("the log teaches nothing of {wanted}"));
    let with = match wanted {
        CONTACT => accepted_contact(text, &apart(log)?.ok_or_else(nothing)?),
        _ => {
            let lessons = lessons(log)?;
            let lesson = lessons.iter().find(|lesson| name(&lesson.of) == wanted);
            accepted(text, lesson.ok_or_else(nothing)?)
        }
    };
    with.map_err(|error| WebError::Refused {
        message: error.to_string(),
        hint: None,
    })
}

fn answer(shop: &ShopFolder) -> Result<LogAnswer, WebError> {
    let (own, _) = shop_above(shop.root())?;
    let path = log_of(shop)?;
    if !path.is_file() {
        return Ok(LogAnswer {
            pours: 0,
            is_only_read: false,
            asked: Vec::new(),
            charts: Vec::new(),
            learned: None,
            suggested: Vec::new(),
            changes: None,
        });
    }
    of_log(&Log::open_to_read(&path)?, &own)
}

fn of_log(log: &Log, own: &Shop) -> Result<LogAnswer, WebError> {
    let words = own.words;
    let pours = pours(log, FAR_BACK)?;
    let lessons = lessons(log)?;
    let charts = pictures(log, words)?.into_iter().map(|one| PictureAnswer {
        title: one.title,
        svg: one.svg,
    });
    let asked = questions(log)?.into_iter().take(MOST_ASKED);
    let apart = apart(log)?;
    let mut learned = told(&lessons);
    if let Some(apart) = &apart {
        apart_told(&mut learned, apart);
    }
    Ok(LogAnswer {
        pours: pours.len(),
        is_only_read: log.newer.is_some(),
        asked: asked
            .map(|question| {
                let about = format!("{} {}", question.table.one, question.number);
                format!("{about}: {}", words.say(&question.words))
            })
            .collect(),
        charts: charts.collect(),
        learned: Some(told_answer(&learned, own)),
        suggested: suggested(&lessons, apart.as_ref(), words),
        changes: Some(told_answer(&changes_told(&changed(&pours)), own)),
    })
}

/// What may be put into the shop's file: by which name, and what it is called.
fn suggested(lessons: &[Lesson], apart: Option<&Apart>, words: Language) -> Vec<OneChoice> {
    let sure = lessons
        .iter()
        .filter(|one| one.suggests() && has_key(&one.of));
    let sure = sure.map(|lesson| (name(&lesson.of), label(&lesson.of)));
    let contact = apart.filter(|apart| apart.told).map(|_| {
        let label = Said::new("log-apart-contact");
        (CONTACT.to_owned(), label)
    });
    let both = sure.chain(contact).map(|(value, label)| OneChoice {
        value,
        shown: words.say(&label),
    });
    both.collect()
}
