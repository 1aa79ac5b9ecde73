//! Entries of the log as a phone sends them: each with an id of its own, written once however often
//! it is sent.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use axum::Json;
use axum::extract::State;
use bench::tested::heap_reading::value;
use bench::tested::readings::named;
use job::folder::shop_above;
use serde::{Deserialize, Serialize};
use shoplog::column::is_time;
use shoplog::error::LogError;
use shoplog::log::{LOG_FILE, Log};
use shoplog::sent::{Sent, take};
use utoipa::ToSchema;

use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// An entry as a phone sends it: everything as it was typed, with its unit.
#[derive(Clone, Debug, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SentEntry {
    /// The table: "sand_tests".
    pub table: String,
    /// The id that the phone has drawn, 32 hexadecimal digits.
    pub id: String,
    /// When it was written down, in universal time.
    pub written: String,
    /// What it says, by key. A link is the id of an entry that was sent before. A reading of a test
    /// may stand under `read.KEY`, and its value is worked out here.
    pub says: BTreeMap<String, String>,
}

/// What became of an entry.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct TakenEntry {
    /// Its id.
    pub id: String,
    /// Its number in the log; none where it was refused.
    pub number: Option<i64>,
    /// Why it was refused; then it is not in the log and stays on the phone.
    pub refused: Option<String>,
}

/// Most entries at once: a pour is some sixty. More are sent in several lots.
const MOST: usize = 400;

/// The tables that a phone writes to. Photos and files have bytes beside them, and what was changed
/// is written down by the log itself.
const TABLES: [&str; 10] = [
    "weather",
    "heaps",
    "batches",
    "sand_tests",
    "moulds",
    "planned",
    "heats",
    "pours",
    "castings",
    "defects",
];

/// What opens the key of a reading.
const READ: &str = "read.";

/// Takes entries into the log, in the order in which they are sent.
#[utoipa::path(
    post,
    path = "/api/v1/entries",
    request_body = Vec<SentEntry>,
    responses((status = 200, body = Vec<TakenEntry>), (status = 422, body = crate::errors::No),
              (status = 507, body = crate::errors::No))
)]
pub async fn take_in(
    State(shop): State<Arc<ShopFolder>>,
    Json(sent): Json<Vec<SentEntry>>,
) -> Result<Json<Vec<TakenEntry>>, WebError> {
    if sent.len() > MOST {
        return Err(WebError::Refused {
            message: format!("{} entries are too many at once", sent.len()),
            hint: Some(format!("send {MOST} at most")),
        });
    }
    worked(shop, move |shop| {
        let mut log = Log::open(&log_of(shop.root())?)?;
        let taken = sent.into_iter().map(|one| taken(&mut log, one));
        Ok(Json(taken.collect::<Result<_, _>>()?))
    })
    .await
}

/// Where the log of a shop lies: beside the shop's file, as in the terminal.
fn log_of(root: &Path) -> Result<PathBuf, WebError> {
    let beside = shop_above(root)?.1.unwrap_or_else(|| root.join(LOG_FILE));
    Ok(beside.with_file_name(LOG_FILE))
}

/// Takes one entry. What is wrong with the entry itself is said of it alone; what is wrong with the
/// log ends the lot, to be sent again.
fn taken(log: &mut Log, sent: SentEntry) -> Result<TakenEntry, WebError> {
    let id = sent.id.clone();
    let refused = |why: String| TakenEntry {
        id: id.clone(),
        number: None,
        refused: Some(why),
    };
    let sent = match meant(sent) {
        Ok(sent) => sent,
        Err(why) => return Ok(refused(why)),
    };
    match take(log, &[sent]) {
        Ok(added) => Ok(TakenEntry {
            number: added.first().map(|added| added.number),
            refused: None,
            id,
        }),
        Err(error) if is_of_the_entry(&error) => Ok(refused(error.to_string())),
        Err(error) => Err(error.into()),
    }
}

fn is_of_the_entry(error: &LogError) -> bool {
    matches!(
        error,
        LogError::NoTable { .. }
            | LogError::NoColumn { .. }
            | LogError::Value(_)
            | LogError::NoEntry { .. }
            | LogError::NotOne { .. }
            | LogError::BadId(_)
            | LogError::Dangling { .. }
    )
}

/// The entry as the log takes it, its reading worked out.
fn meant(sent: SentEntry) -> Result<Sent, String> {
    if !TABLES.contains(&sent.table.as_str()) {
        return Err(format!("a phone writes nothing to \"{}\"", sent.table));
    }
    if !is_time(&sent.written) {
        return Err(format!(
            "\"{}\" is no time like 2026-05-03T14:20:05Z",
            sent.written
        ));
    }
    let (read, mut says): (BTreeMap<_, _>, BTreeMap<_, _>) = sent
        .says
        .into_iter()
        .partition(|(key, _)| key.starts_with(READ));
    if !read.is_empty() {
        with_its_value(&mut says, &read)?;
    }
    Ok(Sent {
        table: sent.table,
        id: sent.id,
        written: sent.written,
        says,
    })
}

/// Puts what a reading comes to beside it, and what was read off into the note.
fn with_its_value(
    says: &mut BTreeMap<String, String>,
    read: &BTreeMap<String, String>,
) -> Result<(), String> {
    let name = says.get("test").map(String::as_str).unwrap_or_default();
    let test = named(name).map_err(|error| error.to_string())?;
    let given = read.iter().map(|(key, text)| {
        let key = key.trim_start_matches(READ);
        (key.to_owned(), text.clone())
    });
    let given: Vec<(String, String)> = given.collect();
    let found = value(test, &given).map_err(|error| error.to_string())?;
    let typed: Vec<String> = given
        .iter()
        .map(|(key, text)| format!("{key} {text}"))
        .collect();
    says.insert("value".to_owned(), format!("{found:.6}"));
    says.insert("unit".to_owned(), test.unit.to_owned());
    says.insert("note".to_owned(), typed.join("; "));
    Ok(())
}
