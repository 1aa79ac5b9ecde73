//! One change at a time of what is typed in a job's file.

use std::path::Path as FilePath;
use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use job::changed::{Typed, changed};
use job::folder::{JOB_FILE, noted_of, read_text};
use job::rewritten::{RewriteError, rewrite};
use job::typed_key::{TypedKey, typed_key};
use serde::Deserialize;
use utoipa::ToSchema;

use crate::answers::sheets::{SentSheet, SheetAnswer, sent};
use crate::answers::typed_lines::TypedValue;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// A change.
#[derive(Clone, Debug, Deserialize, ToSchema)]
pub struct Change {
    /// The key.
    pub key: String,
    /// What stood there when it was looked at.
    #[schema(value_type = Option<TypedValue>)]
    pub was: Option<Typed>,
    /// What is to stand there; nothing leaves it to the program.
    #[schema(value_type = Option<TypedValue>)]
    pub to: Option<Typed>,
}

/// Changes one thing typed, and gives the sheet that follows.
#[utoipa::path(
    put,
    path = "/api/v1/jobs/{job}/typed",
    params(("job" = String, Path)),
    request_body = Change,
    responses((status = 200, body = SheetAnswer), (status = 409, body = crate::errors::No),
              (status = 422, body = crate::errors::No))
)]
pub async fn change(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
    Json(change): Json<Change>,
) -> Result<SentSheet, WebError> {
    worked(shop, move |shop| {
        let folder = folder_of(shop, &job)?;
        let key = typed_key(&change.key)
            .ok_or_else(|| WebError::NoSuch(format!("{} is not changed here", change.key)))?;
        let opened = {
            let _writing = shop.writing();
            if key.path.starts_with(PLACES) {
                check_place(shop, &folder, key, change.to.as_ref())?;
            }
            let changed = rewrite(&folder, key, change.was.as_ref(), change.to.as_ref());
            shop.open_changed(&folder, changed.map_err(no_change)?)?
        };
        sent(shop, &job, &opened)
    })
    .await
}

/// Keys of places in the mould begin so.
const PLACES: &str = "mould.place.";

/// Refuses a place at which no mould can be built any more, before it is written: it can then be
/// moved on from where it stood.
fn check_place(
    shop: &ShopFolder,
    folder: &FilePath,
    key: &TypedKey,
    to: Option<&Typed>,
) -> Result<(), WebError> {
    let now = shop.open(folder)?;
    if now.part.unsettled().is_some() || shop.mould(&now).is_err() {
        return Ok(());
    }
    let file = folder.join(JOB_FILE);
    let new = changed(&read_text(&file, "the job is gone from here")?, key, to)?;
    let noted = noted_of(&file, &new).map_err(|error| no_change(error.into()))?;
    match shop.mould(&shop.look_on(noted)?).as_ref() {
        Ok(_) => Ok(()),
        Err(error) => Err(WebError::Refused {
            message: error.to_string(),
            hint: None,
        }),
    }
}

/// What is said of a change that is not made.
pub fn no_change(error: RewriteError) -> WebError {
    match error {
        RewriteError::Folder(job::folder::FolderError::Job { error, .. }) => WebError::Refused {
            message: error.to_string(),
            hint: None,
        },
        RewriteError::Folder(job::folder::FolderError::File(fault)) => fault.into(),
        RewriteError::Folder(error) => error.into(),
        RewriteError::Change(error) => error.into(),
        RewriteError::Meanwhile { now } => WebError::ChangedMeanwhile { now },
    }
}
