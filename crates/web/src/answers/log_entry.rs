//! What is written into the log on the page: a pour from the plan of its job, a defect seen.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use job::plan_file::PlanFile;
use measure::text::rounded;
use serde::{Deserialize, Serialize};
use shoplog::entry::Fresh;
use shoplog::log::Log;
use shoplog::prefill::{Prefilled, of_plan};
use shoplog::table::castings::DEFECTS;
use shoplog::value::Value;
use shoplog::written_pour::write_pour;
use utoipa::ToSchema;

use crate::answers::log::log_of;
use crate::answers::log_sheet::answer;
use crate::answers::sheets::{SheetAnswer, planned};
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// A pour, as it was.
#[derive(Clone, Debug, Deserialize, ToSchema)]
pub struct Poured {
    /// The way to its job.
    pub job: String,
    /// What was not as planned, or is not planned: `poured`, `temperature`, `time`, `good`.
    pub given: BTreeMap<String, String>,
}

/// What is planned of a pour, for whoever writes it down.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct PourPlanned {
    /// How many castings there are in the mould.
    pub castings: usize,
    /// Figures of the plan with their units, by the keys of the entry.
    pub planned: BTreeMap<String, String>,
}

/// A defect, as seen.
#[derive(Clone, Debug, Deserialize, ToSchema)]
pub struct DefectSeen {
    /// The id of its casting.
    pub casting: String,
    /// What is seen of it: `look`, `place`, `surface`, `size`, `seen`.
    pub given: BTreeMap<String, String>,
}

/// Keys of a pour under which the plan has a figure as well.
const PLANNED: [&str; 5] = ["temperature", "time", "mass", "freezing", "opening"];

/// What the plan of a job has for an entry of its pour.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/pour",
    params(("job" = String, Path)),
    responses((status = 200, body = PourPlanned), (status = 422, body = crate::errors::No))
)]
pub async fn pour_planned(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<PourPlanned>, WebError> {
    worked(shop, move |shop| {
        let prefilled = prefilled(shop, &job)?;
        let pour = &prefilled.pour;
        let shown = PLANNED.iter().filter_map(|key| {
            let column = pour.table.column(&format!("planned_{key}"))?;
            let value = pour.values.get(&column.name())?.number()?;
            let (_, unit) = column.unit()?;
            Some(((*key).to_owned(), format!("{} {unit}", rounded(value, 3))))
        });
        Ok(Json(PourPlanned {
            castings: prefilled.castings,
            planned: shown.collect(),
        }))
    })
    .await
}

/// Writes a pour down, with its mould, its heat, its castings and all that was planned of them.
#[utoipa::path(
    post,
    path = "/api/v1/log/pours",
    request_body = Poured,
    responses((status = 200, body = SheetAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn pour(
    State(shop): State<Arc<ShopFolder>>,
    Json(poured): Json<Poured>,
) -> Result<Json<SheetAnswer>, WebError> {
    worked(shop, move |shop| {
        let prefilled = prefilled(shop, &poured.job)?;
        {
            let _writing = shop.writing();
            let mut log = Log::open(&log_of(shop)?)?;
            write_pour(&mut log, &prefilled, &filled(&poured.given))?;
        }
        answer(shop).map(Json)
    })
    .await
}

/// Writes a defect of a casting down.
#[utoipa::path(
    post,
    path = "/api/v1/log/defects",
    request_body = DefectSeen,
    responses((status = 200, body = SheetAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn defect(
    State(shop): State<Arc<ShopFolder>>,
    Json(seen): Json<DefectSeen>,
) -> Result<Json<SheetAnswer>, WebError> {
    worked(shop, move |shop| {
        {
            let _writing = shop.writing();
            let mut log = Log::open(&log_of(shop)?)?;
            let mut fresh = Fresh::of(&DEFECTS).with("casting", Value::Text(seen.casting));
            for (key, text) in filled(&seen.given) {
                fresh = fresh.typed(&log, &key, &text)?;
            }
            log.add(&[fresh])?;
        }
        answer(shop).map(Json)
    })
    .await
}

fn prefilled(shop: &ShopFolder, job: &str) -> Result<Prefilled, WebError> {
    let opened = shop.open(&folder_of(shop, job)?)?;
    let text = PlanFile::of(&*planned(shop, &opened)?).text();
    of_plan(&text).map_err(|error| WebError::Broken(error.to_string()))
}

/// What was filled in, by its keys.
fn filled(given: &BTreeMap<String, String>) -> Vec<(String, String)> {
    let filled = given.iter().filter(|(_, text)| !text.trim().is_empty());
    filled
        .map(|(key, text)| (key.clone(), text.clone()))
        .collect()
}
