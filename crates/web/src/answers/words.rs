//! The page's own words, in the language of the shop.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::Json;
use axum::extract::State;
use job::folder::shop_above;
use metal::alloys;
use serde::Serialize;
use utoipa::ToSchema;

use crate::errors::WebError;
use crate::folder::ShopFolder;

/// Words of the page, by their ids.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct Words {
    /// Code of the language.
    pub language: String,
    /// The words.
    pub words: BTreeMap<&'static str, String>,
    /// Alloys of the table, by name and as they are shown.
    pub alloys: Vec<(String, String)>,
    /// Version of the program.
    pub version: &'static str,
}

/// Every message of the page.
const WORDS: &[&str] = &[
    "block-metal",
    "experiment-batch",
    "experiment-day",
    "log-key-mass",
    "log-key-opening",
    "log-key-poured",
    "log-key-temperature",
    "log-key-time",
    "log-newer",
    "page-all-jobs",
    "page-another-change",
    "page-apart",
    "page-as-mesh",
    "page-ask-fill",
    "page-ask-go",
    "page-because",
    "page-beside-hand",
    "page-beside-pencil",
    "page-blank",
    "page-change",
    "page-choose-mesh",
    "page-close",
    "page-cut",
    "page-cut-across",
    "page-cut-along",
    "page-described",
    "page-draw-halt",
    "page-draw-out",
    "page-draw-play",
    "page-draw-tells",
    "page-drop-mesh",
    "page-empty-leaves",
    "page-farther",
    "page-feeder",
    "page-feeder-search",
    "page-feeder-tells",
    "page-flat",
    "page-follow",
    "page-follow-tells",
    "page-formula",
    "page-freezing",
    "page-furnace",
    "page-give-up",
    "page-given",
    "page-handles",
    "page-heap",
    "page-in-metal",
    "page-is-changed",
    "page-keep",
    "page-keep-theirs",
    "page-like",
    "page-like-what",
    "page-loading",
    "page-log",
    "page-log-accept",
    "page-log-asked",
    "page-log-causes",
    "page-log-empty",
    "page-log-good",
    "page-log-look",
    "page-log-new",
    "page-log-of-job",
    "page-log-planned",
    "page-log-record",
    "page-log-write",
    "page-log-written",
    "page-log-wrong",
    "page-make",
    "page-map-beyond",
    "page-map-cross",
    "page-map-darker",
    "page-map-legend",
    "page-map-mould",
    "page-map-nothing",
    "page-map-of",
    "page-mind",
    "page-mine",
    "page-name-of-job",
    "page-narrow",
    "page-nearer",
    "page-no",
    "page-no-jobs",
    "page-no-solid-view",
    "page-on-paper",
    "page-part",
    "page-pictures",
    "page-point-at",
    "page-print",
    "page-put-back",
    "page-range",
    "page-red-lines",
    "page-redo",
    "page-remarks",
    "page-run-done",
    "page-run-failed",
    "page-run-fresh",
    "page-run-given-up",
    "page-run-left",
    "page-run-stale",
    "page-run-stop",
    "page-run-stopped",
    "page-run-under-way",
    "page-run-waits",
    "page-runs",
    "page-sand",
    "page-sand-book",
    "page-sand-nothing",
    "page-sand-tests",
    "page-save-picture",
    "page-server-gone",
    "page-settings",
    "page-shop",
    "page-sources",
    "page-stale",
    "page-start",
    "page-stops",
    "page-taken-as",
    "page-the-mould",
    "page-theirs",
    "page-tip-down",
    "page-tip-up",
    "page-trial-cards",
    "page-trial-more",
    "page-trial-none",
    "page-trial-open",
    "page-trial-plan",
    "page-trials",
    "page-turn-left",
    "page-turn-right",
    "page-turning",
    "page-typed-for",
    "page-undo",
    "page-unit-of-mesh",
    "page-unit-unknown",
    "page-unreadable",
    "page-unset",
    "page-unsettled",
    "page-use-mine",
    "page-what-to-do",
    "page-why",
    "page-with-numbers",
    "page-working",
    "page-yes",
    "told-caution",
];

/// The words of the page.
#[utoipa::path(get, path = "/api/v1/words", responses((status = 200, body = Words)))]
pub async fn words(State(shop): State<Arc<ShopFolder>>) -> Result<Json<Words>, WebError> {
    let (own, _) = shop_above(shop.root())?;
    let alloys = alloys::all().iter().map(|alloy| {
        let shown = own.words.say(&job::plan::alloy_label(&alloy.name));
        (alloy.name.clone(), shown)
    });
    Ok(Json(Words {
        language: own.words.code().to_owned(),
        words: WORDS.iter().map(|id| (*id, own.words.word(id))).collect(),
        alloys: alloys.collect(),
        version: env!("CARGO_PKG_VERSION"),
    }))
}
