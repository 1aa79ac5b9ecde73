//! Words of the trade, each explained in a sentence: all, those sought, those of a sheet.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, Query, State};
use job::folder::shop_above;
use job::glossary::{Term, all, found, told_in};
use job::plan::Plan;
use job::words::Language;
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};

use crate::answers::sheets::planned;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// A word of the trade.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, ToSchema)]
pub struct TermAnswer {
    /// The word.
    pub word: String,
    /// What it means, in a sentence.
    pub meaning: String,
    /// What the sentence rests on.
    pub source: String,
}

/// Which words are sought.
#[derive(Clone, Debug, Default, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
pub struct Sought {
    /// A word in any of the languages, or a part of one; left out, all words are told.
    #[serde(default)]
    pub word: String,
}

/// The words that are sought; none where no entry has them.
#[utoipa::path(
    get,
    path = "/api/v1/glossary",
    params(Sought),
    responses((status = 200, body = Vec<TermAnswer>))
)]
pub async fn glossary(
    State(shop): State<Arc<ShopFolder>>,
    Query(sought): Query<Sought>,
) -> Result<Json<Vec<TermAnswer>>, WebError> {
    let language = shop_above(shop.root())?.0.words;
    let found = match sought.word.trim() {
        "" => all(language),
        word => found(word, language),
    };
    Ok(Json(terms(&found, language)))
}

/// The words of the trade that stand on the sheet of a job.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/glossary",
    params(("job" = String, Path)),
    responses((status = 200, body = Vec<TermAnswer>), (status = 422, body = crate::errors::No))
)]
pub async fn of_job(
    State(shop): State<Arc<ShopFolder>>,
    Path(job): Path<String>,
) -> Result<Json<Vec<TermAnswer>>, WebError> {
    worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        let plan = planned(shop, &opened)?;
        let found = told_in(&all_words(&plan), plan.words);
        Ok(Json(terms(&found, plan.words)))
    })
    .await
}

/// Terms in a language.
pub fn terms(terms: &[Term], language: Language) -> Vec<TermAnswer> {
    let terms = terms.iter().map(|term| TermAnswer {
        word: language.say(&term.word()),
        meaning: language.say(&term.meaning()),
        source: term.rests_on().to_owned(),
    });
    terms.collect()
}

/// All that a sheet says, one after the other.
fn all_words(plan: &Plan) -> String {
    let page = sheet::page(plan);
    let rows = page.blocks.iter().flat_map(|block| &block.rows);
    let rows = rows.flat_map(|row| [Some(&row.name), row.note.as_ref()]);
    let mut words: Vec<String> = rows.flatten().cloned().collect();
    words.extend(page.blocks.iter().map(|block| block.heading.clone()));
    words.extend(page.red_lines.iter().cloned());
    for remark in &plan.remarks {
        words.push(plan.words.say(&remark.words));
        words.push(remark.advice_on_sheet(plan.words));
    }
    words.join("\n")
}
