//! What stands behind a figure.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use job::glossary::told_in;
use job::plan::Figure;
use job::why::why as behind;
use job::words::Language;
use job::words::said::Said;
use serde::Serialize;
use utoipa::ToSchema;

use crate::answers::glossary::{TermAnswer, terms};
use crate::answers::sheets::planned;
use crate::answers::{folder_of, worked};
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// Everything behind a figure.
#[derive(Clone, Debug, Default, Serialize, ToSchema)]
pub struct WhyAnswer {
    /// What it is called.
    pub label: String,
    /// The likely value.
    pub value: String,
    /// The range.
    pub band: Option<String>,
    /// What sets it.
    pub because: Option<String>,
    /// The law.
    pub formula: String,
    /// The law with the numbers in it.
    pub with_numbers: String,
    /// What went in: key, what it is, figure.
    pub given: Vec<(String, String, String)>,
    /// Where the law holds.
    pub range: String,
    /// What would narrow the figure, the most helpful first.
    pub narrowing: Vec<String>,
    /// What to mind with this law.
    pub mind: Vec<String>,
    /// Sources, each with where it was seen.
    pub sources: Vec<String>,
    /// Words of the trade in its name and in what went in.
    pub terms: Vec<TermAnswer>,
}

/// What stands behind a figure.
#[utoipa::path(
    get,
    path = "/api/v1/jobs/{job}/why/{figure}",
    params(("job" = String, Path), ("figure" = String, Path)),
    responses((status = 200, body = WhyAnswer))
)]
pub async fn why(
    State(shop): State<Arc<ShopFolder>>,
    Path((job, figure)): Path<(String, String)>,
) -> Result<Json<WhyAnswer>, WebError> {
    worked(shop, move |shop| {
        let opened = shop.open(&folder_of(shop, &job)?)?;
        let plan = planned(shop, &opened)?;
        let Some(found) = plan.figure(&figure) else {
            return Err(WebError::NoSuch(format!("the plan has no \"{figure}\"")));
        };
        let shown = found.amount.shown(plan.units, found.rounding);
        let mut answer = laws_words(found, plan.words.for_laws());
        answer.label = plan.words.say(&found.label());
        answer.band = plan.words.between(&shown);
        answer.value = shown.likely;
        answer.terms = terms_of(&answer, plan.words);
        answer.because = found
            .because
            .as_ref()
            .map(|because| plan.words.say(because));
        Ok(Json(answer))
    })
    .await
}

/// The words of the trade in the name of a figure and in what its law asks for; laws describe
/// themselves in English.
fn terms_of(answer: &WhyAnswer, language: Language) -> Vec<TermAnswer> {
    let mut found = told_in(&answer.label, language);
    for (_, about, _) in &answer.given {
        let more = told_in(about, language.for_laws());
        found.extend(
            more.into_iter()
                .filter(|term| !found.contains(term))
                .collect::<Vec<_>>(),
        );
    }
    terms(&found, language)
}

/// What the law says of itself.
fn laws_words(figure: &Figure, language: Language) -> WhyAnswer {
    let Some(why) = behind(figure) else {
        return WhyAnswer {
            formula: figure.law.formula.to_owned(),
            range: language.of(figure.law.range),
            ..WhyAnswer::default()
        };
    };
    let narrowing = why.narrowing.iter().take(2).map(|narrowing| {
        let told = match narrowing.how {
            "" => Said::new("behind-narrower-told"),
            how => Said::new("behind-narrower-how").with("how", language.of(how)),
        };
        let left = format!("{} %", (narrowing.left * 100.0).round());
        language.say(&told.with("key", narrowing.key).with("left", left))
    });
    let given = why.given.iter();
    WhyAnswer {
        formula: figure.law.formula.to_owned(),
        with_numbers: why.with_numbers.clone(),
        given: given
            .map(|(key, about, text)| (key.clone(), language.of(about), text.clone()))
            .collect(),
        range: language.of(figure.law.range),
        narrowing: narrowing.collect(),
        mind: why
            .reckoner
            .cautions
            .iter()
            .map(|mind| language.of(mind))
            .collect(),
        sources: why
            .sources
            .iter()
            .map(|source| match source.title.contains(&source.seen) {
                true => source.title.clone(),
                false => format!("{}; {}", source.title, source.seen),
            })
            .collect(),
        ..WhyAnswer::default()
    }
}
