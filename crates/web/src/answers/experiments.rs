//! Experiments on a heap: which there are, their batches with what came out, and what that says.

use std::path::PathBuf;
use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, Query, State};
use axum::http::header::CONTENT_TYPE;
use axum::response::IntoResponse;
use bench::experiment::file::EXPERIMENT_FILE;
use bench::experiment::mixes;
use bench::experiment::opened::{Opened, opened};
use bench::experiment::picture::{Picture, pictures};
use bench::experiment::reading::read;
use bench::experiment::results::standing;
use bench::experiment::results_told::read_told;
use bench::experiment::session::{Session, SessionError, Wanted, session};
use bench::experiment::told::Told;
use bench::experiment::weighings::weighings;
use job::words::Language;
use job::words::said::Said;
use measure::matter::Mass;
use measure::text::rounded;
use serde::Serialize;
use utoipa::ToSchema;

use crate::answers::paper::PaperAsked;
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// An experiment of the list.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct ListedExperiment {
    /// The way to its folder, by which it is asked for.
    pub experiment: String,
    /// What it is called; its folder where its file cannot be read.
    pub name: String,
}

/// An experiment as a sheet.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ExperimentAnswer {
    /// The way to its folder.
    pub experiment: String,
    /// What it is called.
    pub name: String,
    /// Whether its batches are planned and kept.
    pub is_planned: bool,
    /// What the plan is, or would be, and what it can teach.
    pub plan: ToldBlock,
    /// The batches in the order of making.
    pub batches: Vec<TrialBatch>,
    /// What the results say, one thing after the other.
    pub told: Vec<ToldBlock>,
    /// Pictures of it.
    pub pictures: Vec<PictureAnswer>,
}

/// A batch: what goes into it and what came out.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct TrialBatch {
    /// Its number.
    pub number: usize,
    /// The day on which it is made.
    pub day: usize,
    /// Its mix, where named mixes are compared.
    pub mix: Option<String>,
    /// What to weigh out.
    pub parts: Vec<CellAnswer>,
    /// What is done with it, a few words each.
    pub settings: Vec<String>,
    /// What is measured on it.
    pub results: Vec<CellAnswer>,
}

/// A place of a batch into which something is typed.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct CellAnswer {
    /// The part or the response.
    pub name: String,
    /// What is planned; nothing of a response.
    pub planned: Option<String>,
    /// What was typed, with its unit; nothing yet.
    pub typed: Option<String>,
    /// The unit in which a bare number is taken.
    pub unit: String,
}

/// Something told.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct ToldBlock {
    /// Its head.
    pub head: String,
    /// What stands under it.
    pub lines: Vec<String>,
    /// What has to be minded.
    pub cautions: Vec<String>,
}

/// A picture.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct PictureAnswer {
    /// What it shows.
    pub title: String,
    /// Its SVG.
    pub svg: String,
}

/// Batches that are proposed beside what the results say: as many as one day takes.
const MORE: usize = 3;

/// Lines that say how to do with a command what the page does with a button.
const FOR_THE_TERMINAL: [&str; 2] = ["experiment-next-how", "experiment-mix-next-how"];

/// The experiments of this folder.
#[utoipa::path(
    get,
    path = "/api/v1/experiments",
    responses((status = 200, body = Vec<ListedExperiment>))
)]
pub async fn experiments(
    State(shop): State<Arc<ShopFolder>>,
) -> Result<Json<Vec<ListedExperiment>>, WebError> {
    worked(shop, |shop| {
        let ways = shop.ways_to(EXPERIMENT_FILE).into_iter();
        let listed = ways.map(|way| {
            let name = open(shop, &way).map(|opened| opened.experiment.name);
            ListedExperiment {
                name: name.unwrap_or_else(|_| way.clone()),
                experiment: way,
            }
        });
        Ok(Json(listed.collect()))
    })
    .await
}

/// An experiment with all that is known of it.
#[utoipa::path(
    get,
    path = "/api/v1/experiments/{experiment}",
    params(("experiment" = String, Path)),
    responses((status = 200, body = ExperimentAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn experiment(
    State(shop): State<Arc<ShopFolder>>,
    Path(way): Path<String>,
) -> Result<Json<ExperimentAnswer>, WebError> {
    worked(shop, move |shop| answer(shop, way).map(Json)).await
}

/// The cards of its batches.
#[utoipa::path(
    get,
    path = "/api/v1/experiments/{experiment}/cards.pdf",
    params(("experiment" = String, Path), PaperAsked),
    responses((status = 200, content_type = "application/pdf"))
)]
pub async fn cards(
    State(shop): State<Arc<ShopFolder>>,
    Path(way): Path<String>,
    Query(asked): Query<PaperAsked>,
) -> Result<impl IntoResponse, WebError> {
    let paper = asked.paper();
    let bytes = worked(shop, move |shop| {
        let opened = open(shop, &way)?;
        let Session {
            batches, weighed, ..
        } = session(&opened, Wanted::Planned)?;
        let experiment = &opened.experiment;
        Ok(sheet::batch_cards(
            experiment,
            &batches,
            &weighed,
            opened.words,
            paper,
        )?)
    })
    .await?;
    Ok(([(CONTENT_TYPE, "application/pdf")], bytes))
}

/// The experiment at a way.
///
/// # Errors
///
/// One that is not there or cannot be read.
pub fn open(shop: &ShopFolder, way: &str) -> Result<Opened, WebError> {
    let folder: PathBuf = shop
        .folder_with(way, EXPERIMENT_FILE)
        .ok_or_else(|| WebError::NoSuch(format!("there is no experiment \"{way}\" any more")))?;
    Ok(opened(&folder.join(EXPERIMENT_FILE))?)
}

/// An experiment as it is now.
///
/// # Errors
///
/// One that cannot be read or planned.
pub fn answer(shop: &ShopFolder, way: String) -> Result<ExperimentAnswer, WebError> {
    let opened = open(shop, &way)?;
    let session = session(&opened, Wanted::Planned)?;
    let is_planned = !opened.batches.is_empty();
    let (told, pictures) = match is_planned {
        true => said(&opened)?,
        false => (Vec::new(), Vec::new()),
    };
    let pictures = pictures.into_iter().map(|picture| PictureAnswer {
        title: picture.title,
        svg: picture.svg,
    });
    Ok(ExperimentAnswer {
        experiment: way,
        name: opened.experiment.name.clone(),
        is_planned,
        plan: block(&session.told, opened.words),
        batches: batches(&opened, &session)?,
        told: told.iter().map(|told| block(told, opened.words)).collect(),
        pictures: pictures.collect(),
    })
}

fn said(opened: &Opened) -> Result<(Vec<Told>, Vec<Picture>), WebError> {
    let (experiment, batches, readings) = (&opened.experiment, &opened.batches, &opened.readings);
    if let Some(named) = &experiment.mixes {
        let found = mixes::reading::compared(experiment, named, batches, readings);
        let told = mixes::told::read_told(experiment, named, batches, &found);
        let drawn = mixes::picture::pictures(experiment, named, batches, &found, opened.words);
        return Ok((told, drawn));
    }
    let found = read(experiment, batches, readings, MORE).map_err(|error| WebError::Refused {
        message: error.to_string(),
        hint: None,
    })?;
    let told = read_told(experiment, batches, &found);
    Ok((told, pictures(experiment, batches, &found, opened.words)))
}

fn block(told: &Told, words: Language) -> ToldBlock {
    let each = |all: &[Said]| {
        let shown = all
            .iter()
            .filter(|one| !FOR_THE_TERMINAL.contains(&one.id()));
        shown.map(|one| words.say(one)).collect()
    };
    ToldBlock {
        head: words.say(&told.head),
        lines: each(&told.lines),
        cautions: each(&told.cautions),
    }
}

fn batches(opened: &Opened, session: &Session) -> Result<Vec<TrialBatch>, WebError> {
    let experiment = &opened.experiment;
    let own = weighings(&opened.results, experiment, &opened.batches);
    let own = own.map_err(|error| WebError::Refused {
        message: error.to_string(),
        hint: None,
    })?;
    let each = session.batches.iter().zip(&session.weighed);
    let answers = each.map(|(batch, rows)| {
        let parts = rows.iter().enumerate().map(|(at, row)| {
            let mut scale = own
                .iter()
                .filter(|one| one.batch == batch.number && one.part == at);
            CellAnswer {
                name: row.name.clone(),
                planned: Some(grams(row.weigh)),
                typed: scale.next_back().map(|one| grams(one.mass)),
                unit: "g".to_owned(),
            }
        });
        let settings = experiment.settings.iter().zip(&batch.settings);
        let settings = settings.map(|(one, value)| format!("{} {}", one.name, one.shown(*value)));
        let responses = experiment.responses.iter().enumerate();
        let results = responses.map(|(at, response)| {
            let readings = standing(&opened.readings, batch.number, at);
            let shown: Vec<String> = readings.iter().map(|one| rounded(*one, 4)).collect();
            let shown = (!shown.is_empty()).then(|| shown.join("; "));
            CellAnswer {
                name: response.name.clone(),
                planned: None,
                typed: shown.map(|shown| format!("{shown} {}", response.unit).trim().to_owned()),
                unit: response.unit.clone(),
            }
        });
        TrialBatch {
            number: batch.number,
            day: batch.day,
            mix: experiment.mix_of(batch).map(|mix| mix.name.clone()),
            parts: parts.collect(),
            settings: settings.collect(),
            results: results.collect(),
        }
    });
    Ok(answers.collect())
}

/// Grams as a scale shows them.
fn grams(mass: Mass) -> String {
    format!("{} g", rounded(mass.as_g(), 4))
}

impl From<SessionError> for WebError {
    fn from(error: SessionError) -> WebError {
        WebError::Refused {
            message: error.to_string(),
            hint: None,
        }
    }
}
