//! Maps on the drawing, as raw numbers behind a short head.
//!
//! Four bytes with the length of the head, the head as JSON, then, where the map lies on a skin of
//! its own, points (32-bit floats, mm), facets (32-bit numbers of points) and the values at the
//! three corners of each facet (32-bit floats), then the values of the field (32-bit floats), where
//! there is one. All little-endian; the head is filled with blanks to a whole four bytes. What has
//! no value is not a number.

use std::sync::Arc;

use axum::extract::{Path, State};
use axum::http::header::CONTENT_TYPE;
use axum::response::IntoResponse;
use job::freezing_map::freezing_map;
use job::map_scale::{MapScale, Mark};
use job::part_maps::{PartMap, PartMapKind, part_map};
use job::solved_kept::{Kept, kept};
use job::words::said::Said;
use pour::vti_read::Field;
use serde::Serialize;
use utoipa::ToSchema;

use crate::answers::{folder_of, packed, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;
use crate::opened_job::OpenedJob;

/// A map that may be asked for.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct MapOffered {
    /// By which it is asked for.
    pub name: String,
    /// What it is called.
    pub label: String,
}

/// The head of a map.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct MapHead {
    /// What it shows, in a sentence.
    pub tells: String,
    /// Sign of its unit.
    pub unit: String,
    /// The lowest value of its scale.
    pub low: f64,
    /// The highest.
    pub high: f64,
    /// Whether there are values beyond the highest.
    pub beyond: bool,
    /// Values of its lines, the lowest first.
    pub lines: Vec<f64>,
    /// Places that are marked with their value.
    pub marks: Vec<MarkAnswer>,
    /// The skin that it lies on; none where it lies in the metal of the mould.
    pub skin: Option<SkinHead>,
    /// Values within the metal, where it has them.
    pub field: Option<FieldHead>,
}

/// A marked place.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct MarkAnswer {
    /// Where, mm.
    pub at_mm: [f64; 3],
    /// The value there.
    pub value: f64,
}

/// A skin that follows.
#[derive(Clone, Copy, Debug, Serialize, ToSchema)]
pub struct SkinHead {
    /// How many points it has.
    pub points: usize,
    /// How many facets.
    pub facets: usize,
}

/// A box of equal cubes, x quickest.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct FieldHead {
    /// Cells along x, y, z.
    pub count: [usize; 3],
    /// Low corner of the first cell, mm.
    pub origin_mm: [f64; 3],
    /// Edge of a cell, mm.
    pub size_mm: f64,
}

/// Name of the map of the freezing.
const FREEZING: &str = "freezing";

/// A map.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/maps/{map}",
    params(("job" = String, Path), ("map" = String, Path)),
    responses((status = 200, content_type = "application/octet-stream"))
)]
pub async fn map(
    State(shop): State<Arc<ShopFolder>>,
    Path((job, map)): Path<(String, String)>,
) -> Result<impl IntoResponse, WebError> {
    let bytes = worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        match PartMapKind::ALL.into_iter().find(|kind| kind.name() == map) {
            Some(kind) => of_part(shop, &opened, kind),
            None if map == FREEZING => of_freezing(shop, &opened),
            None => Err(WebError::NoSuch(format!("there is no map \"{map}\""))),
        }
    })
    .await?;
    Ok(([(CONTENT_TYPE, "application/octet-stream")], bytes))
}

/// The maps that a job has now.
pub fn offered(shop: &ShopFolder, opened: &OpenedJob) -> Vec<MapOffered> {
    let words = opened.shop.words;
    let one = |name: &str, label: Said| MapOffered {
        name: name.to_owned(),
        label: words.say(&label),
    };
    let mut all = Vec::new();
    if opened.part.looked().is_some() {
        all.extend(PartMapKind::ALL.map(|kind| one(kind.name(), kind.label())));
    }
    let print = shop.print(opened);
    if let Kept::Fresh { .. } = kept(&opened.folder, &print) {
        all.push(one(FREEZING, Said::new("map-freezing")));
    }
    all
}

fn of_part(shop: &ShopFolder, opened: &OpenedJob, kind: PartMapKind) -> Result<Vec<u8>, WebError> {
    let (Some(looked), Some(skin)) = (opened.part.looked(), shop.skin(opened)) else {
        return Err(WebError::NoSuch(
            "the part is known by its sizes only, which have no skin".to_owned(),
        ));
    };
    let judged = skin.as_ref().as_ref().map_err(Clone::clone)?;
    let PartMap {
        mesh,
        corners,
        field,
        scale,
        marks,
        tells,
    } = part_map(&opened.job, &looked.mesh, judged, kind);
    let mut head = head(&scale, &marks, opened.shop.words.say(&tells));
    head.skin = Some(SkinHead {
        points: mesh.points.len(),
        facets: mesh.triangles.len(),
    });
    head.field = field.as_ref().map(FieldHead::of);
    let mut bytes = packed::head(&head);
    packed::skin(&mut bytes, &mesh);
    packed::floats(&mut bytes, corners.as_flattened());
    if let Some(field) = &field {
        packed::floats(&mut bytes, &field.values);
    }
    Ok(bytes)
}

fn of_freezing(shop: &ShopFolder, opened: &OpenedJob) -> Result<Vec<u8>, WebError> {
    let print = shop.print(opened);
    if !matches!(kept(&opened.folder, &print), Kept::Fresh { .. }) {
        return Err(WebError::NoSuch(
            "the freezing of this very job was not followed yet".to_owned(),
        ));
    }
    let map = freezing_map(&opened.folder)?;
    let marks: Vec<Mark> = map.last.into_iter().collect();
    let mut head = head(&map.scale, &marks, opened.shop.words.say(&map.tells));
    head.field = Some(FieldHead::of(&map.field));
    let mut bytes = packed::head(&head);
    packed::floats(&mut bytes, &map.field.values);
    Ok(bytes)
}

fn head(scale: &MapScale, marks: &[Mark], tells: String) -> MapHead {
    let marks = marks.iter().map(|mark| MarkAnswer {
        at_mm: mark.at_mm,
        value: mark.value,
    });
    MapHead {
        tells,
        unit: scale.unit.to_owned(),
        low: scale.low,
        high: scale.high,
        beyond: scale.beyond,
        lines: scale.lines.clone(),
        marks: marks.collect(),
        skin: None,
        field: None,
    }
}

impl FieldHead {
    fn of(field: &Field) -> FieldHead {
        FieldHead {
            count: field.count,
            origin_mm: field.origin_mm,
            size_mm: field.size_mm,
        }
    }
}
