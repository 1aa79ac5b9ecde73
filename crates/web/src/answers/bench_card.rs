//! The bench card of a job: the pour one step at a time, and its entries filled from the plan.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use job::plan::Plan;
use job::plan_file::PlanFile;
use serde::Serialize;
use shoplog::entry::Fresh;
use shoplog::prefill::{Prefilled, of_plan};
use utoipa::ToSchema;

use crate::answers::pour_steps::{StepAnswer, steps};
use crate::answers::sheets::planned;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;
use crate::lan::card_address;

/// A job as the phone carries it.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CardAnswer {
    /// The way to it.
    pub job: String,
    /// Its name.
    pub name: String,
    /// Short code of this very plan, as it stands on paper.
    pub code: String,
    /// The metal, as it is called.
    pub alloy: String,
    /// Castings in the mould.
    pub castings: u64,
    /// Why it is not to be poured; then there are no steps.
    pub stopped: Option<String>,
    /// The pour, one step after the other.
    pub steps: Vec<StepAnswer>,
    /// What was planned, as it is offered where it is written down.
    pub offered: OfferedAnswer,
    /// What goes into the log, filled from the plan.
    pub lot: LotAnswer,
}

/// Where a phone finds the card of a job.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct PhoneAnswer {
    /// The address; none where no phone is let in.
    pub address: Option<String>,
    /// The same as squares for the camera of the phone, as SVG.
    pub squares: Option<String>,
}

/// What the plan offers where something is written down.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct OfferedAnswer {
    /// Metal poured.
    pub mass: Option<String>,
    /// How hot.
    pub temperature: Option<String>,
}

/// Entries of a pour by what they say, links between them left to whoever draws their ids.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct LotAnswer {
    /// The mould.
    pub mould: BTreeMap<String, String>,
    /// Each figure of the plan.
    pub planned: Vec<BTreeMap<String, String>>,
    /// The heat.
    pub heat: BTreeMap<String, String>,
    /// The pour.
    pub pour: BTreeMap<String, String>,
    /// One casting.
    pub casting: BTreeMap<String, String>,
}

/// Where a phone finds the card of a job, once phones are let in.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/phone",
    params(("job" = String, Path)),
    responses((status = 200, body = PhoneAnswer))
)]
pub async fn phone(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<PhoneAnswer>, WebError> {
    worked(shop, move |shop| {
        let folder = folder_of(shop, &job)?;
        let address = shop
            .lets_phones_in
            .get()
            .and_then(|()| card_address(&folder));
        Ok(Json(PhoneAnswer {
            squares: address.as_deref().and_then(sheet::squares),
            address,
        }))
    })
    .await
}

/// The bench card of a job.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/card",
    params(("job" = String, Path)),
    responses((status = 200, body = CardAnswer), (status = 404, body = crate::errors::No),
              (status = 422, body = crate::errors::No))
)]
pub async fn card(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<CardAnswer>, WebError> {
    worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        let plan = planned(shop, &opened)?;
        let (steps, stopped) = match steps(&plan, &opened.job.pour) {
            Ok(steps) => (steps, None),
            Err(no) => (Vec::new(), Some(no)),
        };
        let lot = of_plan(&PlanFile::of(&plan).text());
        let lot = lot.map_err(|error| WebError::Broken(error.to_string()))?;
        Ok(Json(CardAnswer {
            job,
            name: plan.name.clone(),
            code: sheet::page(&plan).job_code,
            alloy: plan.words.say(&plan.alloy_label()),
            castings: plan.count as u64,
            stopped,
            steps,
            offered: OfferedAnswer {
                mass: likely(&plan, "poured mass"),
                temperature: likely(&plan, "pouring temperature"),
            },
            lot: lot_answer(&lot),
        }))
    })
    .await
}

/// A figure of the plan as people write it.
fn likely(plan: &Plan, name: &str) -> Option<String> {
    let figure = plan.figure(name)?;
    Some(figure.amount.shown(plan.units, figure.rounding).likely)
}

fn lot_answer(lot: &Prefilled) -> LotAnswer {
    LotAnswer {
        mould: says(&lot.mould),
        planned: lot.planned.iter().map(says).collect(),
        heat: says(&lot.heat),
        pour: says(&lot.pour),
        casting: says(&lot.casting),
    }
}

/// What an entry says, by the full names of its columns, as it may be typed again.
fn says(fresh: &Fresh) -> BTreeMap<String, String> {
    let values = fresh.values.iter();
    values
        .map(|(column, value)| (column.clone(), value.to_string()))
        .collect()
}
