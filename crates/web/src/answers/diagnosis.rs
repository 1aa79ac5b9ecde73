//! What a defect may come from: what can be said of it, and the causes ranked.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::Json;
use axum::extract::State;
use job::folder::shop_above;
use job::words::Language;
use job::words::said::Said;
use serde::{Deserialize, Serialize};
use shoplog::column::Holds;
use shoplog::diagnosis::answer::{AnswerError, answer};
use shoplog::diagnosis::sight::{CASTINGS, HOW_LARGE, LOOKS, METALS, PLACES, WALLS, WHENS};
use shoplog::log::Log;
use shoplog::table::melt::{HEATS, POURS};
use shoplog::table::mould::MOULDS;
use utoipa::ToSchema;

use crate::answers::bench::{ToldAnswer, told_answer};
use crate::answers::log::{log_of, words_of};
use crate::answers::typed_lines::OneChoice;
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// Something that may be said of a defect.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct SayOffered {
    /// The key.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// The words from which it is said.
    pub choices: Vec<OneChoice>,
    /// Whether several may be said at once.
    pub several: bool,
    /// Whether it was written down before, rather than seen: a pour of the log knows it.
    pub of_record: bool,
}

/// A defect, as seen and as written down.
#[derive(Clone, Debug, Deserialize, ToSchema)]
pub struct Seen {
    /// The id of a pour of the log, whose record is taken.
    pub pour: Option<String>,
    /// What is said, by its keys, with blanks between several words.
    pub given: BTreeMap<String, String>,
}

/// What went wrong.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct DiagnosisAnswer {
    /// Causes, check, change and gain.
    pub diagnosis: ToldAnswer,
    /// What differs from the last good pour; none where no pour is named or none was good.
    pub then_and_now: Option<ToldAnswer>,
}

/// What is seen: key, words, family of the words in the language, whether several may be said.
const SEEN: [(&str, &[&str], &str, bool); 7] = [
    ("look", LOOKS, "sight-look-", true),
    ("place", PLACES, "sight-place-", true),
    ("surface", WALLS, "sight-wall-", true),
    ("size", HOW_LARGE, "sight-size-", false),
    ("when", WHENS, "sight-when-", false),
    ("castings", CASTINGS, "sight-castings-", false),
    ("metal", METALS, "sight-metal-", false),
];

/// What was written down, by the table and the key of the log.
const RECORD: [(&shoplog::table::Table, &str, &str); 8] = [
    (&MOULDS, "vents", "vents"),
    (&MOULDS, "ramming", "ramming"),
    (&MOULDS, "core", "core"),
    (&MOULDS, "feeder", "feeder"),
    (&POURS, "how", "pour"),
    (&HEATS, "scrap", "scrap"),
    (&HEATS, "degassed", "degassed"),
    (&HEATS, "skimmed", "skimmed"),
];

/// What may be said of a defect.
#[utoipa::path(get, path = "/api/v1/diagnosis", responses((status = 200, body = Vec<SayOffered>)))]
pub async fn says(State(shop): State<Arc<ShopFolder>>) -> Result<Json<Vec<SayOffered>>, WebError> {
    let words = words_of(&shop)?;
    let seen = SEEN.iter().map(|(key, each, family, several)| SayOffered {
        key: (*key).to_owned(),
        label: words.say(&Said::new(format!("sight-{key}"))),
        choices: chosen(each, family, words),
        several: *several,
        of_record: false,
    });
    let record = RECORD.iter().filter_map(|(table, column, key)| {
        let choices = match table.column(column)?.holds {
            Holds::Word(each) => chosen(each, "log-word-", words),
            _ => ["yes", "no"]
                .map(|word| OneChoice {
                    value: word.to_owned(),
                    shown: words.say(&Said::new(format!("page-{word}"))),
                })
                .to_vec(),
        };
        Some(SayOffered {
            key: (*key).to_owned(),
            label: words.say(&Said::new(format!("log-key-{column}"))),
            choices,
            several: false,
            of_record: true,
        })
    });
    Ok(Json(seen.chain(record).collect()))
}

/// What a defect may come from, the likeliest first, and the cheapest check between the first two.
#[utoipa::path(
    post,
    path = "/api/v1/diagnosis",
    request_body = Seen,
    responses((status = 200, body = DiagnosisAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn diagnose(
    State(shop): State<Arc<ShopFolder>>,
    Json(seen): Json<Seen>,
) -> Result<Json<DiagnosisAnswer>, WebError> {
    worked(shop, move |shop| {
        let (own, _) = shop_above(shop.root())?;
        let given: Vec<(String, String)> = seen
            .given
            .into_iter()
            .filter(|(_, said)| !said.trim().is_empty())
            .collect();
        let found = match &seen.pour {
            Some(pour) => {
                let log = Log::open_to_read(&log_of(shop)?)?;
                let id = log.find(&POURS, pour)?;
                answer(Some((&log, &id)), &given)
            }
            None => answer(None, &given),
        }
        .map_err(no_answer)?;
        let then = found.then_and_now.as_ref();
        Ok(Json(DiagnosisAnswer {
            diagnosis: told_answer(&found.diagnosis, &own),
            then_and_now: then.map(|told| told_answer(told, &own)),
        }))
    })
    .await
}

fn no_answer(error: AnswerError) -> WebError {
    match error {
        AnswerError::Log(error) => error.into(),
        AnswerError::Table(_) => WebError::Broken(error.to_string()),
        AnswerError::Case(_) => WebError::Refused {
            message: error.to_string(),
            hint: None,
        },
    }
}

pub(super) fn chosen(each: &[&str], family: &str, words: Language) -> Vec<OneChoice> {
    let each = each.iter().map(|word| OneChoice {
        value: (*word).to_owned(),
        shown: words.say(&Said::new(format!("{family}{word}"))),
    });
    each.collect()
}
