//! A new job from a part that nobody has drawn: a plain solid, or five sizes.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::Json;
use axum::extract::State;
use job::described::{LIKE, SHAPES, Shape, described};
use job::folder::shop_above;
use job::words::Language;
use job::words::said::Said;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::answers::bench::KeyOffered;
use crate::answers::jobs::{MadeJob, way_of, written};
use crate::answers::typed_lines::OneChoice;
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// A way to describe a part.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct ShapeOffered {
    /// Its word.
    pub kind: String,
    /// What it is called.
    pub label: String,
    /// What is said of it with a figure.
    pub keys: Vec<KeyOffered>,
    /// What it may be like; empty where that is not asked.
    pub like: Vec<OneChoice>,
}

/// A part that is described.
#[derive(Clone, Debug, Deserialize, ToSchema)]
pub struct DescribedJob {
    /// What the job is called.
    pub name: String,
    /// The alloy, by its name in the table.
    pub alloy: String,
    /// The way in which the part is described.
    pub kind: String,
    /// What is said of it, by its keys.
    pub given: BTreeMap<String, String>,
}

/// The key under which it is said what five sizes are like.
const LIKE_KEY: &str = "shape";

/// How each size is typed.
const EXAMPLES: [(&str, &str); 9] = [
    ("length", "140 mm"),
    ("width", "90 mm"),
    ("height", "40 mm"),
    ("thickest", "24 mm"),
    ("thinnest", "6 mm"),
    ("diameter", "60 mm"),
    ("bore", "20 mm"),
    ("top", "30 mm"),
    ("thickness", "10 mm"),
];

/// The ways to describe a part.
#[utoipa::path(get, path = "/api/v1/shapes", responses((status = 200, body = Vec<ShapeOffered>)))]
pub async fn shapes(
    State(shop): State<Arc<ShopFolder>>,
) -> Result<Json<Vec<ShapeOffered>>, WebError> {
    let words = shop_above(shop.root())?.0.words;
    let offered = SHAPES.iter().map(|shape| offered(shape, words));
    Ok(Json(offered.collect()))
}

/// A new job from a part that is described.
#[utoipa::path(
    post,
    path = "/api/v1/jobs/described",
    request_body = DescribedJob,
    responses((status = 200, body = MadeJob), (status = 409, body = crate::errors::No),
              (status = 422, body = crate::errors::No))
)]
pub async fn describe(
    State(shop): State<Arc<ShopFolder>>,
    Json(wanted): Json<DescribedJob>,
) -> Result<Json<MadeJob>, WebError> {
    worked(shop, move |shop| {
        let way = way_of(&wanted.name)?;
        let text = described(&wanted.kind, &wanted.given).map_err(|error| WebError::Refused {
            message: error.to_string(),
            hint: None,
        })?;
        written(shop, way, (&wanted.name, &wanted.alloy), &text, None)
    })
    .await
}

fn offered(shape: &Shape, words: Language) -> ShapeOffered {
    let said = |family: &str, word: &str| words.say(&Said::new(format!("{family}-{word}")));
    let keys = EXAMPLES.iter().filter(|(key, _)| shape.keys.contains(key));
    let mut keys: Vec<KeyOffered> = keys
        .map(|(key, example)| KeyOffered {
            key: (*key).to_owned(),
            label: said("size", key),
            example: (*example).to_owned(),
        })
        .collect();
    keys.sort_by_key(|one| shape.keys.iter().position(|key| *key == one.key));
    let is_like = shape.keys.contains(&LIKE_KEY);
    let like = LIKE.iter().filter(|_| is_like).map(|word| OneChoice {
        value: (*word).to_owned(),
        shown: said("shape", word),
    });
    ShapeOffered {
        kind: shape.kind.to_owned(),
        label: said("shape", shape.kind),
        keys,
        like: like.collect(),
    }
}
