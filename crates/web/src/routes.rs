//! Every address there is.

use std::sync::Arc;
use std::time::Duration;

use axum::extract::DefaultBodyLimit;
use axum::http::StatusCode;
use axum::middleware::from_fn_with_state;
use axum::routing::{delete, get, post, put};
use axum::{Json, Router};
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::timeout::TimeoutLayer;
use utoipa::openapi::RefOr;
use utoipa::openapi::schema::Schema;
use utoipa::{Modify, OpenApi};

use crate::answers::{
    bench, bench_card, cards, change, charge, described_jobs, diagnosis, drawing, entries,
    experiments, feeder, freezing, glossary, jobs, lesson, log, log_entry, log_sheet, maps, paper,
    remarks, sand, sheets, shop, solids, trial_entry, typed_lines, why, words,
};
use crate::errors;
use crate::folder::ShopFolder;
use crate::guard::{Names, guarded};
use crate::page;

/// Most bytes of a change: a few words.
const MOST_WORDS: usize = 64 * 1024;

/// Most bytes of a mesh that is sent: that of a million facets in text.
pub const MOST_MESH: usize = 256 * 1024 * 1024;

/// Most bytes of entries sent at once: a pour with all its figures is a tenth of it.
const MOST_ENTRIES: usize = 256 * 1024;

/// What every address of answers begins with.
const ROOT: &str = "/api/v1";

/// Longest that an answer may take: the mould of the hardest part takes a tenth of it.
pub const LONGEST: Duration = Duration::from_secs(120);

/// What the addresses are and what they send, as OpenAPI.
#[derive(OpenApi)]
#[openapi(
    info(
        title = "Oddside",
        description = "The working sheet of a founder's shop."
    ),
    paths(
        words::words,
        jobs::jobs,
        jobs::new_job,
        described_jobs::shapes,
        described_jobs::describe,
        sheets::sheet,
        change::change,
        why::why,
        glossary::glossary,
        glossary::of_job,
        lesson::of_job,
        lesson::paper,
        lesson::of_class,
        lesson::class_paper,
        paper::paper,
        drawing::drawing,
        solids::solids,
        maps::map,
        freezing::freezing,
        freezing::follow,
        feeder::search,
        freezing::runs,
        freezing::stop,
        freezing::events,
        bench::asks,
        bench::ask,
        cards::cards,
        bench_card::card,
        bench_card::phone,
        entries::take_in,
        charge::of_job,
        experiments::experiments,
        experiments::experiment,
        experiments::cards,
        trial_entry::plan,
        trial_entry::enter,
        log::log,
        log::accept,
        log_sheet::log_sheet,
        log_sheet::change_log,
        log_entry::pour_planned,
        log_entry::pour,
        log_entry::defect,
        diagnosis::says,
        diagnosis::diagnose,
        sand::sand,
        sand::change_sand,
        shop::shop,
        shop::change_shop,
    ),
    components(schemas(
        solids::Head,
        maps::MapHead,
        typed_lines::TypedValue,
        remarks::Weight,
        errors::No
    )),
    modifiers(&Everything)
)]
pub struct Described;

/// All routes, guarded, for a server on this port.
pub fn routes(served: Arc<ShopFolder>, port: u16) -> Router {
    routes_within(served, port, LONGEST)
}

/// As [`routes`], with another limit of how long an answer may take.
pub fn routes_within(served: Arc<ShopFolder>, port: u16, longest: Duration) -> Router {
    let answers = Router::new()
        .route("/words", get(words::words))
        .route("/jobs", get(jobs::jobs))
        .route("/shapes", get(described_jobs::shapes))
        .route("/jobs/described", post(described_jobs::describe))
        .route("/jobs/{job}/sheet", get(sheets::sheet))
        .route("/jobs/{job}/typed", put(change::change))
        .route("/jobs/{job}/why/{figure}", get(why::why))
        .route("/jobs/{job}/sheet.pdf", get(paper::paper))
        .route("/jobs/{job}/phone", get(bench_card::phone))
        .route("/glossary", get(glossary::glossary))
        .route("/jobs/{job}/glossary", get(glossary::of_job))
        .route("/jobs/{job}/lesson", get(lesson::of_job))
        .route("/jobs/{job}/lesson.pdf", get(lesson::paper))
        .route("/jobs/{job}/class", get(lesson::of_class))
        .route("/jobs/{job}/class.pdf", get(lesson::class_paper))
        .route("/jobs/{job}/drawing", get(drawing::drawing))
        .route("/jobs/{job}/solids", get(solids::solids))
        .route("/jobs/{job}/maps/{map}", get(maps::map))
        .route(
            "/jobs/{job}/freezing",
            get(freezing::freezing).post(freezing::follow),
        )
        .route("/jobs/{job}/feeder", post(feeder::search))
        .route("/jobs/{job}/charge", get(charge::of_job))
        .route("/experiments", get(experiments::experiments))
        .route("/experiments/{experiment}", get(experiments::experiment))
        .route(
            "/experiments/{experiment}/cards.pdf",
            get(experiments::cards),
        )
        .route("/experiments/{experiment}/batches", post(trial_entry::plan))
        .route(
            "/experiments/{experiment}/results",
            post(trial_entry::enter),
        )
        .route("/bench", get(bench::asks))
        .route("/bench/{ask}", post(bench::ask))
        .route("/jobs/{job}/pour", get(log_entry::pour_planned))
        .route("/log", get(log::log))
        .route("/log/learned", post(log::accept))
        .route("/log/sheet", get(log_sheet::log_sheet))
        .route("/log/typed", put(log_sheet::change_log))
        .route("/log/pours", post(log_entry::pour))
        .route("/log/defects", post(log_entry::defect))
        .route("/diagnosis", get(diagnosis::says).post(diagnosis::diagnose))
        .route("/sand", get(sand::sand))
        .route("/sand/{book}", put(sand::change_sand))
        .route("/shop", get(shop::shop))
        .route("/shop/typed", put(shop::change_shop))
        .route("/runs", get(freezing::runs))
        .route("/runs/events", get(freezing::events))
        .route("/runs/{id}", delete(freezing::stop))
        .route("/openapi.json", get(described))
        .layer(DefaultBodyLimit::max(MOST_WORDS))
        .merge(of_the_bench_card())
        .merge(
            Router::new()
                .route("/jobs", post(jobs::new_job))
                .layer(DefaultBodyLimit::max(MOST_MESH)),
        )
        .fallback(nothing);
    let all = Router::new()
        .nest(ROOT, answers)
        .fallback(get(page::file))
        .with_state(served);
    in_time(all, longest).layer(from_fn_with_state(Names::of_this_machine(port), guarded))
}

/// What a paired phone may ask: to read the cards, to have the bench work something out, to send
/// entries. Not guarded yet: the door does that, by the address at which the phone came in.
pub fn for_a_phone(served: Arc<ShopFolder>) -> Router {
    let answers = Router::new()
        .route("/bench/{ask}", post(bench::ask))
        .layer(DefaultBodyLimit::max(MOST_WORDS))
        .merge(of_the_bench_card())
        .fallback(nothing);
    Router::new().nest(ROOT, answers).with_state(served)
}

/// The addresses of the bench card, on this machine as on a phone.
fn of_the_bench_card() -> Router<Arc<ShopFolder>> {
    let entries = Router::new()
        .route("/entries", post(entries::take_in))
        .layer(DefaultBodyLimit::max(MOST_ENTRIES));
    Router::new()
        .route("/cards", get(cards::cards))
        .route("/jobs/{job}/card", get(bench_card::card))
        .merge(entries)
}

/// Answered in time, and a fault of ours is no end of the server.
pub fn in_time(routes: Router, longest: Duration) -> Router {
    let slow = StatusCode::SERVICE_UNAVAILABLE;
    routes
        .layer(TimeoutLayer::with_status_code(slow, longest))
        .layer(CatchPanicLayer::new())
}

/// Every answer says everything, also that there is nothing.
struct Everything;

impl Modify for Everything {
    fn modify(&self, described: &mut utoipa::openapi::OpenApi) {
        let schemas = described.components.iter_mut();
        for (_, schema) in schemas.flat_map(|known| &mut known.schemas) {
            if let RefOr::T(Schema::Object(object)) = schema {
                object.required = object.properties.keys().cloned().collect();
            }
        }
    }
}

async fn described() -> Json<utoipa::openapi::OpenApi> {
    Json(Described::openapi())
}

async fn nothing() -> StatusCode {
    StatusCode::NOT_FOUND
}
