//! What is put into an experiment on the page: its plan, more batches, results as they come out.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use bench::experiment::batches::text;
use bench::experiment::entry::{Meant, entered};
use bench::experiment::results::with;
use bench::experiment::session::{SessionError, Wanted, session};
use bench::experiment::trouble::EntryError;
use job::folder::write_whole;
use job::words::Language;
use job::words::said::Said;
use serde::Deserialize;
use utoipa::ToSchema;

use crate::answers::experiments::{ExperimentAnswer, answer, open};
use crate::answers::worked;
use crate::errors::{WayMeant, WebError};
use crate::folder::ShopFolder;

/// Batches that are wanted.
#[derive(Clone, Copy, Debug, Default, Deserialize, ToSchema)]
pub struct BatchesAsked {
    /// So many beside those there are; left out, the first plan.
    pub more: Option<usize>,
}

/// A result of a batch, or what was really weighed of a part.
#[derive(Clone, Debug, Deserialize, ToSchema)]
pub struct ResultEntered {
    /// Number of the batch.
    pub batch: usize,
    /// The response or the part.
    pub name: String,
    /// As typed.
    pub value: String,
    /// How it is meant where it is in doubt: `replace`, `again`, `sure`.
    #[serde(default)]
    pub ways: Vec<String>,
}

const REPLACE: &str = "replace";
const AGAIN: &str = "again";
const SURE: &str = "sure";

/// Most batches that are added at once: a day takes fewer.
const MOST_MORE: usize = 20;

/// Plans the batches, or adds more that the results speak for.
#[utoipa::path(
    post,
    path = "/api/v1/experiments/{experiment}/batches",
    params(("experiment" = String, Path)),
    request_body = BatchesAsked,
    responses((status = 200, body = ExperimentAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn plan(
    State(shop): State<Arc<ShopFolder>>,
    Path(way): Path<String>,
    Json(asked): Json<BatchesAsked>,
) -> Result<Json<ExperimentAnswer>, WebError> {
    worked(shop, move |shop| {
        {
            let _writing = shop.writing();
            let opened = open(shop, &way)?;
            let wanted = match asked.more {
                None => Wanted::Planned,
                Some(more) => Wanted::More(more.clamp(1, MOST_MORE)),
            };
            let planned = match session(&opened, wanted) {
                // A day has to hold each of the mixes that are not told apart.
                Err(SessionError::TooFewMore(each)) => session(&opened, Wanted::More(each)),
                planned => planned,
            }?;
            if planned.batches != opened.batches {
                let text = text(&opened.experiment, &planned.batches);
                write_whole(&opened.batches_file, text.as_bytes())?;
            }
        }
        answer(shop, way).map(Json)
    })
    .await
}

/// Takes a result in. One in doubt is asked about and not kept.
#[utoipa::path(
    post,
    path = "/api/v1/experiments/{experiment}/results",
    params(("experiment" = String, Path)),
    request_body = ResultEntered,
    responses((status = 200, body = ExperimentAnswer), (status = 409, body = crate::errors::No),
              (status = 422, body = crate::errors::No))
)]
pub async fn enter(
    State(shop): State<Arc<ShopFolder>>,
    Path(way): Path<String>,
    Json(result): Json<ResultEntered>,
) -> Result<Json<ExperimentAnswer>, WebError> {
    worked(shop, move |shop| {
        {
            let _writing = shop.writing();
            keep(shop, &way, &result)?;
        }
        answer(shop, way).map(Json)
    })
    .await
}

fn keep(shop: &ShopFolder, way: &str, result: &ResultEntered) -> Result<(), WebError> {
    let opened = open(shop, way)?;
    if opened.batches.is_empty() {
        return Err(SessionError::NotPlanned.into());
    }
    let is = |word: &str| result.ways.iter().any(|way| way == word);
    let meant = Meant {
        replace: is(REPLACE),
        again: is(AGAIN),
        sure: is(SURE),
    };
    let taken = entered(
        &opened.experiment,
        &opened.batches,
        &opened.readings,
        &result.batch.to_string(),
        &[format!("{}={}", result.name, result.value)],
        meant,
    )
    .map_err(|error| in_doubt(&error, opened.words))?;
    if taken.readings.is_empty() && taken.weighings.is_empty() {
        return Ok(());
    }
    let text = with(
        &opened.results,
        &opened.experiment,
        &taken.readings,
        &taken.weighings,
    );
    Ok(write_whole(&opened.results_file, text.as_bytes())?)
}

/// What is said of a result that is not taken, or asked about one in doubt.
fn in_doubt(error: &EntryError, words: Language) -> WebError {
    let way = |way: &str, id: &'static str| WayMeant {
        way: way.to_owned(),
        shown: words.word(id),
    };
    let said = |id: &'static str, name: &str, batch: usize, now: &str| {
        let said = Said::new(id).with("name", name).with("now", now);
        said.with("batch", batch.to_string())
    };
    let right = || vec![way(SURE, "page-trial-sure")];
    let (message, ways) = match error {
        EntryError::Differs {
            name,
            batch,
            before,
            now,
        } => (
            said("page-trial-differs", name, *batch, now).with("before", before.as_str()),
            vec![
                way(REPLACE, "page-trial-replace"),
                way(AGAIN, "page-trial-again"),
            ],
        ),
        EntryError::Far {
            name,
            batch,
            now,
            low,
            high,
        } => {
            let said = said("page-trial-far", name, *batch, now);
            let said = said.with("low", low.as_str()).with("high", high.as_str());
            (said, right())
        }
        EntryError::OffPlan {
            name,
            batch,
            now,
            planned,
        } => {
            let said = said("page-trial-off-plan", name, *batch, now);
            (said.with("planned", planned.as_str()), right())
        }
        other => {
            return WebError::Refused {
                message: other.to_string(),
                hint: None,
            };
        }
    };
    WebError::HowMeant {
        message: words.say(&message),
        ways,
    }
}
