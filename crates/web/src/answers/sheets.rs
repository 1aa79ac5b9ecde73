//! The pour sheet of a job: what stands on it, and what was typed for it.

use std::sync::Arc;

use axum::body::Bytes;
use axum::extract::{Path, State};
use axum::http::HeaderName;
use axum::http::header::CONTENT_TYPE;
use job::freezing::FREEZE_FOLDER;
use job::plan::Plan;
use job::remark::of_mesh;
use job::solved;
use job::solved_kept::{FINDINGS_FILE, Kept, kept};
use job::typed_key::TypedKey;
use serde::Serialize;
use sheet::{Block, Row};
use utoipa::ToSchema;

use crate::answers::remarks::{RemarkAnswer, remarks};
use crate::answers::typed_lines::{Lines, TypedLine};
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;
use crate::opened_job::OpenedJob;

/// Everything on a sheet, in the words of the shop.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct SheetAnswer {
    /// The way to the job.
    pub job: String,
    /// Its name.
    pub name: String,
    /// Code of the language.
    pub language: String,
    /// Short code of this very plan; none while the mesh has to be settled.
    pub code: Option<String>,
    /// What must be true before metal is melted.
    pub red_lines: Vec<String>,
    /// Reasons not to pour it as it stands.
    pub stops: Vec<String>,
    /// What is typed in the head of the sheet.
    pub head: Vec<TypedLine>,
    /// The sheet in the order of the day.
    pub blocks: Vec<BlockAnswer>,
    /// Every remark, the weightiest first.
    pub remarks: Vec<RemarkAnswer>,
    /// What the sheet cannot promise.
    pub limits: String,
    /// What has to be chosen before there is a plan.
    pub unsettled: Option<Unsettled>,
}

/// One part of the day.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct BlockAnswer {
    /// By which it is known.
    pub id: String,
    /// Heading.
    pub heading: String,
    /// What follows from what is typed.
    pub rows: Vec<RowAnswer>,
    /// What is typed for it and is no row of its own.
    pub typed: Vec<TypedLine>,
}

/// A figure or a choice.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct RowAnswer {
    /// What it is.
    pub name: String,
    /// The likely value with its unit.
    pub value: String,
    /// The range.
    pub band: Option<String>,
    /// In the other system of units.
    pub other: Option<String>,
    /// A sentence to it.
    pub note: Option<String>,
    /// Whether it is read with something in the hands.
    pub large: bool,
    /// Its name as it may be asked why; none where nothing is behind it.
    pub figure: Option<String>,
    /// What is typed to set it by hand.
    pub typed: Option<TypedLine>,
}

/// A mesh that has to be settled.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Unsettled {
    /// What was found in it.
    pub remarks: Vec<RemarkAnswer>,
    /// The sizes it would have, where its unit has to be chosen.
    pub units: Vec<UnitChoice>,
}

/// A unit and the size that the part has in it.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct UnitChoice {
    /// As typed.
    pub unit: String,
    /// Extents, mm.
    pub extents_mm: [f64; 3],
}

/// The sheet of a job.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/sheet",
    params(("job" = String, Path)),
    responses((status = 200, body = SheetAnswer))
)]
pub async fn sheet(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<SentSheet, WebError> {
    worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        sent(shop, &job, &opened)
    })
    .await
}

/// The sheet of a job as it is sent; it is made once, and kept until something changes.
///
/// # Errors
///
/// A job that cannot be read.
pub fn sent(shop: &ShopFolder, job: &str, opened: &OpenedJob) -> Result<SentSheet, WebError> {
    let bytes = opened.sheet(|opened| {
        let answer = answer(shop, job, opened)?;
        serde_json::to_vec(&answer).map_err(|error| WebError::Broken(error.to_string()))
    })?;
    Ok(([(CONTENT_TYPE, "application/json")], bytes))
}

/// A sheet as it is sent.
pub type SentSheet = ([(HeaderName, &'static str); 1], Bytes);

/// The plan of a job whose mesh is settled, with the times of a freezing where they were kept.
pub fn planned(shop: &ShopFolder, opened: &OpenedJob) -> Result<Arc<Plan>, WebError> {
    if opened.part.unsettled().is_some() {
        return Err(WebError::Refused {
            message: "there is no plan before the mesh is settled".to_owned(),
            hint: None,
        });
    }
    let plan = shop.plan(opened);
    if !opened
        .folder
        .join(FREEZE_FOLDER)
        .join(FINDINGS_FILE)
        .is_file()
    {
        return Ok(plan);
    }
    let print = shop.print(opened);
    let mut beside = Plan::clone(&plan);
    match kept(&opened.folder, &print) {
        Kept::None => return Ok(plan),
        Kept::Stale => solved::told_stale(&mut beside),
        Kept::Fresh { times, .. } => solved::beside(&mut beside, times),
    }
    Ok(Arc::new(beside))
}

fn answer(shop: &ShopFolder, job: &str, opened: &OpenedJob) -> Result<SheetAnswer, WebError> {
    let lines = Lines {
        opened,
        text: &opened.text,
    };
    let words = opened.shop.words;
    let mut answer = SheetAnswer {
        job: job.to_owned(),
        name: opened.job.name.clone(),
        language: words.code().to_owned(),
        code: None,
        red_lines: Vec::new(),
        stops: Vec::new(),
        head: lines.of_block(None, |_| true)?,
        blocks: Vec::new(),
        remarks: Vec::new(),
        limits: String::new(),
        unsettled: None,
    };
    if let Some(looked) = opened.part.unsettled() {
        answer.unsettled = Some(Unsettled {
            remarks: remarks(&of_mesh::remarks(looked), words),
            units: looked
                .choices
                .iter()
                .map(|choice| UnitChoice {
                    unit: choice.unit.sign().to_owned(),
                    extents_mm: choice.extents_mm,
                })
                .collect(),
        });
        return Ok(answer);
    }
    let plan = planned(shop, opened)?;
    let page = sheet::page(&plan);
    let blocks = page.blocks.into_iter();
    answer.blocks = blocks
        .map(|block| of_block(&plan, &lines, block))
        .collect::<Result<_, _>>()?;
    answer.code = Some(page.job_code);
    answer.red_lines = page.red_lines;
    answer.stops = page.stops;
    answer.remarks = remarks(&plan.remarks, words);
    answer.limits = page.limits;
    Ok(answer)
}

fn of_block(plan: &Plan, lines: &Lines<'_>, block: Block) -> Result<BlockAnswer, WebError> {
    let on_rows: Vec<&str> = block.rows.iter().filter_map(|row| row.behind).collect();
    let stands_alone = |key: &TypedKey| key.sets.is_none_or(|sets| !on_rows.contains(&sets));
    let typed = lines.of_block(Some(block.id), stands_alone)?;
    let rows = block.rows.into_iter();
    let rows = rows.map(|row| of_row(plan, lines, row));
    Ok(BlockAnswer {
        id: block.id.to_owned(),
        heading: block.heading,
        rows: rows.collect::<Result<_, _>>()?,
        typed,
    })
}

fn of_row(plan: &Plan, lines: &Lines<'_>, row: Row) -> Result<RowAnswer, WebError> {
    let figure = row.behind.filter(|name| plan.figure(name).is_some());
    Ok(RowAnswer {
        typed: lines.setting(row.behind)?,
        name: row.name,
        value: row.value,
        band: row.band,
        other: row.other,
        note: row.note,
        large: row.read_while_holding,
        figure: figure.map(str::to_owned),
    })
}
