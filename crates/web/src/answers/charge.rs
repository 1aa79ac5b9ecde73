//! What to weigh out for the melt of a job, from the shop's own heaps.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use job::charge::told::told;
use job::charge::{Asked, charge, metal_of};
use job::melt_loss::melt_loss;
use job::remark::Remark;
use job::remark::of_charge::ChargeFact;
use serde::Serialize;
use utoipa::ToSchema;

use crate::answers::remarks::{RemarkAnswer, remarks};
use crate::answers::sheets::planned;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// The charge of a job.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ChargeAnswer {
    /// The name of the job.
    pub name: String,
    /// What it is, in a line.
    pub head: String,
    /// What to weigh out, in the order of charging.
    pub weigh_out: TableAnswer,
    /// What it comes to.
    pub composition: TableAnswer,
    /// Chance, what binds, the next change, a sentence each.
    pub lines: Vec<String>,
    /// Remarks, the weightiest first.
    pub remarks: Vec<RemarkAnswer>,
}

/// A table.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct TableAnswer {
    /// What stands above its columns.
    pub heads: Vec<String>,
    /// Its rows.
    pub rows: Vec<Vec<String>>,
}

/// The charge of a job.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/charge",
    params(("job" = String, Path)),
    responses((status = 200, body = ChargeAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn of_job(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<ChargeAnswer>, WebError> {
    worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        let (job, own) = (&opened.job, &opened.shop);
        let words = own.words;
        let refused = |message: String| WebError::Refused {
            message,
            hint: None,
        };
        let typed = job.charge.as_ref().and_then(|wish| wish.metal);
        let metal = match typed {
            Some(metal) => metal,
            None => metal_of(&*planned(shop, &opened)?, &melt_loss(job, own))
                .ok_or_else(|| refused("the plan has no charge to make up".to_owned()))?,
        };
        let wanted = Asked::of_job(job, own, metal).map_err(|error| refused(error.to_string()))?;
        let made = charge(&wanted, own).map_err(|error| {
            let remark = Remark::from(ChargeFact::from(error));
            WebError::Refused {
                message: words.say(&remark.words),
                hint: Some(words.say(&remark.advice)),
            }
        })?;
        let told = told(&made, own.units, words);
        let table = |heads: &[&'static str], rows: &[[String; 5]]| TableAnswer {
            heads: heads
                .iter()
                .map(|id| {
                    if id.is_empty() {
                        String::new()
                    } else {
                        words.word(id)
                    }
                })
                .collect(),
            rows: rows.iter().map(|row| row.to_vec()).collect(),
        };
        Ok(Json(ChargeAnswer {
            name: job.name.clone(),
            head: told.head,
            weigh_out: table(
                &["", "charge-weigh-out", "", "head-or", "charge-cost"],
                &told.weigh_out,
            ),
            composition: table(
                &[
                    "",
                    "likely",
                    "charge-usual",
                    "charge-at-worst",
                    "charge-target",
                ],
                &told.composition,
            ),
            lines: told.lines,
            remarks: remarks(&told.remarks, words),
        }))
    })
    .await
}
