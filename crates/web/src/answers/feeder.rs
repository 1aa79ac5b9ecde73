//! The smallest feeder that still feeds, searched for from the sheet.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use gpu::card::elsewhere;
use job::feeder_search::{MOST_CELLS, smallest_feeder};
use job::feeder_told::told;

use crate::answers::sheets::planned;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;
use crate::heat_on::{HeatOn, card_for};
use crate::runs::{Run, RunOf};

/// Begins to look for the smallest feeder of a job that still feeds, or tells of the run that is
/// under way for it. What was found stands with the run.
#[utoipa::path(
    post,
    path = "/api/v1/jobs/{job}/feeder",
    params(("job" = String, Path)),
    responses((status = 200, body = Run), (status = 422, body = crate::errors::No))
)]
pub async fn search(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<Run>, WebError> {
    worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        planned(shop, &opened)?;
        let run = shop.runs.begin(&job, RunOf::Feeder, move |report| {
            let (job, shop, part) = (&opened.job, &opened.shop, &opened.part);
            let words = shop.words;
            let card = card_for(HeatOn::Faster, MOST_CELLS, words, report)?;
            let on = elsewhere(card.as_ref());
            let found = smallest_feeder(job, shop, part, on, &mut |look| {
                report.reached(look.done as f64 / look.most as f64)
            });
            let found = found.map_err(|error| error.to_string())?;
            Ok(told(&found).iter().map(|said| words.say(said)).collect())
        });
        Ok(Json(run))
    })
    .await
}
