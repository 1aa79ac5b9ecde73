//! The pour sheet of a job: what stands on it, what was typed for it, and one change at a time.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, Query, State};
use axum::http::header::CONTENT_TYPE;
use axum::response::IntoResponse;
use job::changed::{Typed, typed};
use job::folder::{JOB_FILE, Opened, read_text};
use job::mould_drawn::drawn;
use job::plan::{Plan, alloy_label};
use job::remark::{Level, Remark, of_mesh};
use job::rewritten::{RewriteError, rewrite};
use job::typed_key::{KeyKind, TYPED_KEYS, TypedKey, typed_key};
use job::words::said::{Said, slug};
use serde::{Deserialize, Serialize};
use sheet::{Block, Paper, Row};
use utoipa::ToSchema;

use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;

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

/// What stands in the job's file.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct TypedLine {
    /// The key.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// What stands there; none where it is left to the program.
    #[schema(value_type = Option<Object>)]
    pub value: Option<Typed>,
    /// What is typed: text, count, yes, one-of, place, places.
    pub kind: String,
    /// What it may be, where it is one of a few.
    pub choices: Vec<OneChoice>,
    /// How it is typed.
    pub example: Option<String>,
    /// What is taken where nothing stands there; none where it is worked out or does not count.
    pub otherwise: Option<String>,
}

/// One of a few words.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct OneChoice {
    /// As the file has it.
    pub value: String,
    /// As it is shown.
    pub shown: String,
}

/// A remark.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct RemarkAnswer {
    /// stop, caution or note.
    #[schema(value_type = String)]
    pub level: Level,
    /// The weight in a word of the shop's language.
    pub weight: String,
    /// The block that it stands beside.
    pub block: String,
    /// What was found.
    pub words: String,
    /// What to do about it.
    pub advice: String,
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

/// A change.
#[derive(Clone, Debug, Deserialize, ToSchema)]
pub struct Change {
    /// The key.
    pub key: String,
    /// What stood there when it was looked at.
    #[schema(value_type = Option<Object>)]
    pub was: Option<Typed>,
    /// What is to stand there; nothing leaves it to the program.
    #[schema(value_type = Option<Object>)]
    pub to: Option<Typed>,
}

/// The paper of a printed sheet.
#[derive(Clone, Debug, Default, Deserialize)]
pub struct PaperAsked {
    /// US Letter instead of A4.
    #[serde(default)]
    pub letter: bool,
}

/// The sheet of a job.
#[utoipa::path(get, path = "/api/v1/jobs/{job}/sheet", responses((status = 200, body = SheetAnswer)))]
pub async fn sheet(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<SheetAnswer>, WebError> {
    worked(shop, move |shop| answer(shop, &job).map(Json)).await
}

/// Changes one thing typed, and gives the sheet that follows.
#[utoipa::path(
    put,
    path = "/api/v1/jobs/{job}/typed",
    request_body = Change,
    responses((status = 200, body = SheetAnswer), (status = 409, body = crate::errors::No),
              (status = 422, body = crate::errors::No))
)]
pub async fn change(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
    Json(change): Json<Change>,
) -> Result<Json<SheetAnswer>, WebError> {
    worked(shop, move |shop| {
        let folder = folder_of(shop, &job)?;
        let key = typed_key(&change.key)
            .ok_or_else(|| WebError::NoSuch(format!("{} is not changed here", change.key)))?;
        {
            let _writing = shop.writing();
            rewrite(&folder, key, change.was.as_ref(), change.to.as_ref()).map_err(no_change)?;
        }
        answer(shop, &job).map(Json)
    })
    .await
}

/// The printed sheet.
#[utoipa::path(get, path = "/api/v1/jobs/{job}/sheet.pdf", responses((status = 200, content_type = "application/pdf")))]
pub async fn paper(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
    Query(asked): Query<PaperAsked>,
) -> Result<impl IntoResponse, WebError> {
    let paper = match asked.letter {
        true => Paper::Letter,
        false => Paper::A4,
    };
    let bytes = worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        let mut plan = Plan::clone(&*planned(shop, &opened)?);
        if let Ok(mould) = shop.mould(&opened).as_ref() {
            plan.drawing = drawn(&plan.drawing, mould);
        }
        Ok(sheet::pdf(&sheet::page(&plan), paper)?)
    })
    .await?;
    Ok(([(CONTENT_TYPE, "application/pdf")], bytes))
}

/// The plan of a job whose mesh is settled.
pub fn planned(shop: &ShopFolder, opened: &Opened) -> Result<Arc<Plan>, WebError> {
    if opened.part.unsettled().is_some() {
        return Err(WebError::Refused {
            message: "there is no plan before the mesh is settled".to_owned(),
            hint: None,
        });
    }
    Ok(shop.plan(opened))
}

fn no_change(error: RewriteError) -> WebError {
    match error {
        RewriteError::Folder(job::folder::FolderError::Job { error, .. }) => WebError::Refused {
            message: error.to_string(),
            hint: None,
        },
        RewriteError::Folder(job::folder::FolderError::File(fault)) => fault.into(),
        RewriteError::Folder(error) => error.into(),
        RewriteError::Change(error) => error.into(),
        RewriteError::Meanwhile { now } => WebError::ChangedMeanwhile { now },
    }
}

fn answer(shop: &ShopFolder, job: &str) -> Result<SheetAnswer, WebError> {
    let folder = folder_of(shop, job)?;
    let opened = shop.open(&folder)?;
    let text = read_text(&folder.join(JOB_FILE), "")?;
    let lines = Lines {
        opened: &opened,
        text: &text,
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
    let plan = planned(shop, &opened)?;
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

/// What is typed in a job's file.
struct Lines<'a> {
    opened: &'a Opened,
    text: &'a str,
}

impl Lines<'_> {
    /// Those of a block that are wanted.
    fn of_block(
        &self,
        block: Option<&str>,
        wanted: impl Fn(&TypedKey) -> bool,
    ) -> Result<Vec<TypedLine>, WebError> {
        let has_mesh = self
            .opened
            .part
            .looked()
            .is_some_and(|looked| looked.format.is_some());
        let keys = TYPED_KEYS
            .iter()
            .filter(|key| key.block == block && wanted(key));
        keys.filter(|key| has_mesh || key.path != "part.unit")
            .map(|key| self.line(key))
            .collect()
    }

    /// The line that sets a figure or a choice by itself.
    fn setting(&self, behind: Option<&str>) -> Result<Option<TypedLine>, WebError> {
        let key = TYPED_KEYS
            .iter()
            .find(|key| key.sets.is_some() && key.sets == behind);
        key.map(|key| self.line(key)).transpose()
    }

    fn line(&self, key: &TypedKey) -> Result<TypedLine, WebError> {
        let (kind, choices) = kind(key, self.opened);
        Ok(TypedLine {
            key: key.path.to_owned(),
            label: self.opened.shop.words.word(key.label),
            value: typed(self.text, key)?,
            kind: kind.to_owned(),
            choices,
            example: key.example.map(str::to_owned),
            otherwise: key.otherwise.map(str::to_owned),
        })
    }
}

/// What is typed for a key, and what it may be where it is one of a few.
fn kind(key: &TypedKey, opened: &Opened) -> (&'static str, Vec<OneChoice>) {
    let itself = |value: &str| OneChoice {
        value: value.to_owned(),
        shown: value.to_owned(),
    };
    let said = |value: &str, said: Said| OneChoice {
        value: value.to_owned(),
        shown: opened.shop.words.say(&said),
    };
    match key.kind {
        KeyKind::Text => ("text", Vec::new()),
        KeyKind::Count => ("count", Vec::new()),
        KeyKind::Yes => ("yes", Vec::new()),
        KeyKind::Place => ("place", Vec::new()),
        KeyKind::Places => ("places", Vec::new()),
        KeyKind::Signs(signs) => ("one-of", signs.iter().map(|sign| itself(sign)).collect()),
        KeyKind::OneOf(words) => {
            let words = words.iter();
            let each = words.map(|word| said(word, Said::new(format!("said-{}", slug(word)))));
            ("one-of", each.collect())
        }
        KeyKind::Alloy => {
            let all = metal::alloys::all().iter();
            let each = all.map(|alloy| said(&alloy.name, alloy_label(&alloy.name)));
            ("one-of", each.collect())
        }
        KeyKind::Flask => {
            let flasks = opened.shop.flasks.iter();
            ("one-of", flasks.map(|flask| itself(&flask.name)).collect())
        }
    }
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

fn remarks(remarks: &[Remark], words: job::words::Language) -> Vec<RemarkAnswer> {
    remarks
        .iter()
        .map(|remark| RemarkAnswer {
            level: remark.level,
            weight: words.word(match remark.level {
                Level::Stop => "told-stop",
                Level::Caution => "told-caution",
                Level::Note => "told-note",
            }),
            block: block_of(remark.about).to_owned(),
            words: words.say(&remark.words),
            advice: words.say(&remark.advice),
        })
        .collect()
}

/// The block beside which a remark stands.
fn block_of(about: &str) -> &'static str {
    match about {
        "metal" | "charge" | "crucible" => "block-metal",
        "sand" | "flask" => "block-sand",
        "mould" | "gates" | "feeder" | "feeding" | "core" => "block-mould",
        "weights" => "block-weights",
        "pour" | "opening" => "block-pour",
        _ => "block-pattern",
    }
}
