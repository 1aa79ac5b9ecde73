//! The freezing of a job: what was kept of it, and a run that follows it anew.

use std::future::Future;
use std::pin::Pin;
use std::sync::Arc;
use std::task::{Context, Poll};

use axum::Json;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::response::Sse;
use axum::response::sse::{Event, KeepAlive};
use futures_core::Stream;
use job::freezing::FreezingWish;
use job::solved::told;
use job::solved_kept::{Kept, kept};
use serde::{Deserialize, Serialize};
use tokio::sync::watch;
use utoipa::ToSchema;

use crate::answers::sheets::planned;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;
use crate::followed::{Asked, begin};
use crate::heat_on::HeatOn;
use crate::runs::{Run, Runs};

/// What is known of the freezing of a job.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct FreezingAnswer {
    /// Whether findings were kept, and of which plan.
    pub kept: FreezingKept,
    /// The times in a sentence, where they are those of this very plan.
    pub told: Option<String>,
    /// The upright section through the place that freezes last, as SVG.
    pub section: Option<String>,
}

/// Whether findings were kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "lowercase")]
pub enum FreezingKept {
    /// None.
    None,
    /// Of another plan.
    Stale,
    /// Of this one.
    Fresh,
}

/// How a freezing is to be followed.
#[derive(Clone, Copy, Debug, Default, Deserialize, ToSchema)]
pub struct FreezingAsked {
    /// Most cells of the box around the metal; left out, as many as the program thinks right.
    pub cells: Option<f64>,
    /// Where it is followed; left out, on whichever is faster.
    #[serde(default)]
    pub on: HeatOn,
}

/// Fewer cells show no wall, more take hours.
const CELLS: [f64; 2] = [10_000.0, 5_000_000.0];

/// What was kept of the freezing of a job.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/freezing",
    params(("job" = String, Path)),
    responses((status = 200, body = FreezingAnswer))
)]
pub async fn freezing(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<FreezingAnswer>, WebError> {
    worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        let print = shop.print(&opened);
        Ok(Json(match kept(&opened.folder, &print) {
            Kept::None => FreezingAnswer::without(FreezingKept::None),
            Kept::Stale => FreezingAnswer::without(FreezingKept::Stale),
            Kept::Fresh { times, section } => FreezingAnswer {
                kept: FreezingKept::Fresh,
                told: Some(opened.shop.words.say(&told(&times))),
                section,
            },
        }))
    })
    .await
}

/// Begins to follow the freezing of a job, or tells of the run that does so already.
#[utoipa::path(
    post,
    path = "/api/v1/jobs/{job}/freezing",
    params(("job" = String, Path)),
    request_body = FreezingAsked,
    responses((status = 200, body = Run), (status = 422, body = crate::errors::No))
)]
pub async fn follow(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
    Json(asked): Json<FreezingAsked>,
) -> Result<Json<Run>, WebError> {
    let cells = asked.cells.unwrap_or(FreezingWish::default().cells);
    if !(CELLS[0]..=CELLS[1]).contains(&cells) {
        let [low, high] = CELLS;
        return Err(WebError::Refused {
            message: format!("cells have to be between {low} and {high}"),
            hint: None,
        });
    }
    worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        planned(shop, &opened)?;
        let on = asked.on;
        Ok(Json(begin(shop, &job, opened, Asked { cells, on })))
    })
    .await
}

/// All runs since the program was started.
#[utoipa::path(get, path = "/api/v1/runs", responses((status = 200, body = Vec<Run>)))]
pub async fn runs(State(shop): State<Arc<ShopFolder>>) -> Json<Vec<Run>> {
    Json(shop.runs.list())
}

/// Stops a run. A freezing that is followed again goes on from there.
#[utoipa::path(
    delete,
    path = "/api/v1/runs/{id}",
    params(("id" = u64, Path)),
    responses((status = 204), (status = 404, body = crate::errors::No))
)]
pub async fn stop(
    State(shop): State<Arc<ShopFolder>>,
    Path(id): Path<u64>,
) -> Result<StatusCode, WebError> {
    let stopped = shop.runs.stop(id);
    stopped.ok_or_else(|| WebError::NoSuch(format!("there is no run {id}")))?;
    Ok(StatusCode::NO_CONTENT)
}

/// All runs, and all of them again whenever one changes, as events with the number of the change.
#[utoipa::path(
    get,
    path = "/api/v1/runs/events",
    responses((status = 200, content_type = "text/event-stream"))
)]
pub async fn events(
    State(shop): State<Arc<ShopFolder>>,
) -> Sse<impl Stream<Item = Result<Event, axum::Error>>> {
    let runs = Arc::clone(&shop.runs);
    let mut changes = runs.changes();
    changes.mark_changed();
    let next = Box::pin(next_event(runs, changes));
    Sse::new(Events { next }).keep_alive(KeepAlive::default())
}

impl FreezingAnswer {
    fn without(kept: FreezingKept) -> FreezingAnswer {
        FreezingAnswer {
            kept,
            told: None,
            section: None,
        }
    }
}

type Told = Option<(Event, Arc<Runs>, watch::Receiver<u64>)>;

/// The runs as they are told, one event after the other.
struct Events {
    next: Pin<Box<dyn Future<Output = Told> + Send>>,
}

impl Stream for Events {
    type Item = Result<Event, axum::Error>;

    fn poll_next(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Option<Self::Item>> {
        match self.next.as_mut().poll(context) {
            Poll::Pending => Poll::Pending,
            Poll::Ready(None) => Poll::Ready(None),
            Poll::Ready(Some((event, runs, changes))) => {
                self.next = Box::pin(next_event(runs, changes));
                Poll::Ready(Some(Ok(event)))
            }
        }
    }
}

async fn next_event(runs: Arc<Runs>, mut changes: watch::Receiver<u64>) -> Told {
    changes.changed().await.ok()?;
    let number = *changes.borrow_and_update();
    let told = serde_json::to_string(&runs.list()).ok()?;
    Some((
        Event::default().id(number.to_string()).data(told),
        runs,
        changes,
    ))
}
