//! The jobs of the shop, and a new one from a mesh.

use std::path::Path as FilePath;
use std::sync::Arc;

use axum::Json;
use axum::body::Bytes;
use axum::extract::{Query, State};
use job::changed::{Typed, changed};
use job::folder::{JOB_FILE, STARTER_JOB, is_mesh, noted_of, shop_above, write_whole};
use job::typed_key::typed_key;
use job::words::Language;
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};

use crate::answers::change::no_change;
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// A job of the list.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct ListedJob {
    /// The way to its folder, by which it is asked for.
    pub job: String,
    /// What it is called; its folder where its file cannot be read.
    pub name: String,
    /// The alloy; none where its file cannot be read.
    pub alloy: Option<String>,
}

/// What a new job is made from.
#[derive(Clone, Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct NewJob {
    /// What it is called.
    pub name: String,
    /// Name of the mesh file that is sent.
    pub file: String,
    /// The alloy, by its name in the table.
    pub alloy: String,
}

/// Where a new job lies.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct MadeJob {
    /// The way to its folder.
    pub job: String,
}

/// The jobs of this folder.
#[utoipa::path(get, path = "/api/v1/jobs", responses((status = 200, body = Vec<ListedJob>)))]
pub async fn jobs(State(shop): State<Arc<ShopFolder>>) -> Result<Json<Vec<ListedJob>>, WebError> {
    worked(shop, |shop| {
        let words = shop_above(shop.root())?.0.words;
        let jobs = shop.jobs().into_iter();
        let listed = jobs.map(|way| listed(shop, way, words));
        Ok(Json(listed.collect()))
    })
    .await
}

/// A new job from a mesh, which is the body of the request.
#[utoipa::path(
    post,
    path = "/api/v1/jobs",
    params(NewJob),
    request_body(content = Vec<u8>, content_type = "application/octet-stream"),
    responses((status = 200, body = MadeJob), (status = 409, body = crate::errors::No),
              (status = 422, body = crate::errors::No))
)]
pub async fn new_job(
    State(shop): State<Arc<ShopFolder>>,
    Query(wanted): Query<NewJob>,
    mesh: Bytes,
) -> Result<Json<MadeJob>, WebError> {
    worked(shop, move |shop| make(shop, &wanted, &mesh)).await
}

/// A job as it is listed.
pub(super) fn listed(shop: &ShopFolder, way: String, words: Language) -> ListedJob {
    let named = shop.job(&way).and_then(|folder| shop.named(&folder));
    let label = |alloy: &str| words.say(&job::plan::alloy_label(alloy));
    ListedJob {
        alloy: named.as_ref().map(|named| label(&named.alloy)),
        name: named.map_or_else(|| way.clone(), |named| named.name),
        job: way,
    }
}

fn make(shop: &ShopFolder, wanted: &NewJob, mesh: &[u8]) -> Result<Json<MadeJob>, WebError> {
    let file = FilePath::new(&wanted.file);
    let file = file
        .file_name()
        .map(|name| name.to_string_lossy().into_owned());
    let Some(file) = file.filter(|file| is_mesh(FilePath::new(file))) else {
        return Err(refused(
            "this file is no mesh that is read here",
            "give an STL, OBJ, PLY or 3MF file",
        ));
    };
    let way = way_of(&wanted.name)?;
    // Looked at before anything is written: what cannot be read makes no job.
    pattern::look::look(&file, mesh, None).map_err(|error| WebError::Refused {
        message: error.to_string(),
        hint: None,
    })?;
    let ending = FilePath::new(&file)
        .extension()
        .map(|ending| ending.to_string_lossy());
    let mesh_file = format!("part.{}", ending.unwrap_or_default().to_lowercase());
    let text = STARTER_JOB.replace("\"part.stl\"", &format!("\"{mesh_file}\""));
    let named = (wanted.name.as_str(), wanted.alloy.as_str());
    written(shop, way, named, &text, Some((&mesh_file, mesh)))
}

/// The way to the folder of a new job.
///
/// # Errors
///
/// A name without letters and numbers.
pub fn way_of(name: &str) -> Result<String, WebError> {
    let way = plain(name);
    match way.is_empty() {
        true => Err(refused(
            "a job needs a name",
            "type one with letters or numbers in it",
        )),
        false => Ok(way),
    }
}

/// Writes a new job with its name and alloy, and its mesh where it has one.
///
/// # Errors
///
/// What would be no job, and a folder that is there already.
pub fn written(
    shop: &ShopFolder,
    way: String,
    (name, alloy): (&str, &str),
    text: &str,
    mesh: Option<(&str, &[u8])>,
) -> Result<Json<MadeJob>, WebError> {
    let text = set(text, "name", name)?;
    let text = set(&text, "metal.alloy", alloy)?;
    let folder = shop.root().join(&way);
    noted_of(&folder.join(JOB_FILE), &text).map_err(|error| no_change(error.into()))?;
    let _writing = shop.writing();
    job::folder::make_new(&folder)?;
    if let Some((file, bytes)) = mesh {
        write_whole(&folder.join(file), bytes)?;
    }
    // The job file last: a folder without one is no job.
    write_whole(&folder.join(JOB_FILE), text.as_bytes())?;
    Ok(Json(MadeJob { job: way }))
}

fn refused(message: &str, hint: &str) -> WebError {
    WebError::Refused {
        message: message.to_owned(),
        hint: Some(hint.to_owned()),
    }
}

fn set(text: &str, path: &str, to: &str) -> Result<String, WebError> {
    let Some(key) = typed_key(path) else {
        return Err(WebError::NoSuch(format!("{path} is not changed here")));
    };
    Ok(changed(text, key, Some(&Typed::Text(to.to_owned())))?)
}

/// A name as that of a folder: small letters, numbers and hyphens.
fn plain(name: &str) -> String {
    let mut plain = String::new();
    for letter in name.chars().flat_map(char::to_lowercase) {
        match letter.is_alphanumeric() {
            true => plain.push(letter),
            false if !plain.is_empty() && !plain.ends_with('-') => plain.push('-'),
            false => {}
        }
    }
    plain.trim_end_matches('-').chars().take(60).collect()
}
