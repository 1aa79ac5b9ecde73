//! The printed sheet.

use std::sync::Arc;

use axum::extract::{Path, Query, State};
use axum::http::header::CONTENT_TYPE;
use axum::response::IntoResponse;
use job::mould_drawn::drawn;
use job::plan::Plan;
use serde::Deserialize;
use sheet::Paper;
use utoipa::IntoParams;

use crate::answers::sheets::planned;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;
use crate::lan::card_address;

/// The paper of a printed sheet.
#[derive(Clone, Debug, Default, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct PaperAsked {
    /// US Letter instead of A4.
    #[serde(default)]
    pub letter: bool,
}

impl PaperAsked {
    /// The paper.
    pub fn paper(&self) -> Paper {
        match self.letter {
            true => Paper::Letter,
            false => Paper::A4,
        }
    }
}

/// The printed sheet.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/sheet.pdf",
    params(("job" = String, Path), PaperAsked),
    responses((status = 200, content_type = "application/pdf"))
)]
pub async fn paper(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
    Query(asked): Query<PaperAsked>,
) -> Result<impl IntoResponse, WebError> {
    let paper = asked.paper();
    let bytes = worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        let mut plan = Plan::clone(&*planned(shop, &opened)?);
        if let Ok(mould) = shop.mould(&opened).as_ref() {
            plan.drawing = drawn(&plan.drawing, mould);
        }
        let mut page = sheet::page(&plan);
        if let Some(address) = card_address(&opened.folder) {
            page.code_text = address;
        }
        Ok(sheet::pdf(&page, paper)?)
    })
    .await?;
    Ok(([(CONTENT_TYPE, "application/pdf")], bytes))
}
