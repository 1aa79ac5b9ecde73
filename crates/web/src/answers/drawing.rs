//! The mould from above and cut through, as it stands on the printed sheet.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use job::mould_drawn::drawn;
use job::plan::Plan;
use job::words::Language;
use serde::Serialize;
use utoipa::ToSchema;

use crate::answers::handles::{Handle, handles};
use crate::answers::maps::{MapOffered, offered};
use crate::answers::sheets::planned;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// A drawing.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct DrawingAnswer {
    /// Plan and section, as SVG in mm of paper.
    pub svg: String,
    /// A sentence that says what it shows.
    pub caption: String,
    /// Its scale, as written on paper.
    pub scale: String,
    /// Why the mould could not be built of solids, where it could not.
    pub unbuilt: Option<String>,
    /// Where the plan lies in it.
    pub plan: PlanAnswer,
    /// Gates and feeders that can be moved on the plan.
    pub handles: Vec<Handle>,
    /// Maps that may be laid over it.
    pub maps: Vec<MapOffered>,
}

/// Where the plan lies in the drawing.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct PlanAnswer {
    /// The front left inside corner of the flask, from the left and from the top, mm of paper.
    pub corner_mm: [f64; 2],
    /// Width and height of the whole drawing, mm of paper.
    pub size_mm: [f64; 2],
    /// How much smaller than life it is.
    pub smaller: f64,
    /// Inside length and width of the flask, mm.
    pub inside_mm: [f64; 2],
}

/// Room for the drawing, mm: as wide as the sheet between its margins.
const ROOM_MM: [f64; 2] = [186.0, 120.0];

/// Plan and section of the mould.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/drawing",
    params(("job" = String, Path)),
    responses((status = 200, body = DrawingAnswer))
)]
pub async fn drawing(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<DrawingAnswer>, WebError> {
    worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        let mut plan = Plan::clone(&*planned(shop, &opened)?);
        let built = shop.mould(&opened);
        if let Ok(mould) = built.as_ref() {
            plan.drawing = drawn(&plan.drawing, mould);
        }
        let page = sheet::page(&plan);
        let Some(drawing) = &page.drawing else {
            return Err(WebError::NoSuch("there is nothing to draw".to_owned()));
        };
        let (svg, scale) = sheet::svg(drawing, ROOM_MM, plan.words)?;
        let place = sheet::plan_on_paper(drawing, ROOM_MM, plan.words);
        Ok(Json(DrawingAnswer {
            svg,
            caption: on_sheet(&page.drawing_caption, plan.words),
            scale: scale.to_string(),
            unbuilt: built.as_ref().as_ref().err().map(ToString::to_string),
            plan: PlanAnswer {
                corner_mm: place.corner_mm,
                size_mm: place.size_mm,
                smaller: 1.0 / place.scale.on_paper(1.0),
                inside_mm: drawing.flask_inside_mm,
            },
            handles: built
                .as_ref()
                .as_ref()
                .map_or_else(|_| Vec::new(), |mould| handles(&opened, mould)),
            maps: offered(shop, &opened),
        }))
    })
    .await
}

/// A caption of the paper for a sheet on which things are moved by hand.
fn on_sheet(caption: &str, words: Language) -> String {
    let typed = words.word("drawing-moved");
    caption.replace(&typed, &words.word("drawing-moved.sheet"))
}
