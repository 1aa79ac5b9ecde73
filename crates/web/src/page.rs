//! The page itself, carried in the program.

use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::http::{StatusCode, Uri};
use axum::response::{IntoResponse, Response};
use rust_embed::RustEmbed;

/// What the front end was built into.
#[derive(RustEmbed)]
#[folder = "$WEB_DIST_DIR"]
struct Built;

/// Name of the page.
const INDEX: &str = "index.html";

/// Name of the page of the bench card, which is small and stands alone.
const BENCH: &str = "bench.html";

/// The way to the bench card, and what follows it is the job.
const BENCH_WAY: &str = "bench";

/// What the bench card is made of beside its page and what is in `assets/`.
const OF_BENCH: [&str; 4] = [
    "bench-worker.js",
    "bench-files.json",
    "bench.webmanifest",
    "mark.svg",
];

/// A file of the page; any other way without a dot in it is the page, which reads its own address.
pub async fn file(uri: Uri) -> Response {
    let way = uri.path().trim_start_matches('/');
    let is_page = way.is_empty() || !way.contains('.');
    match (is_page, is_bench(way)) {
        (true, true) => built(BENCH),
        (true, false) => built(INDEX),
        _ => built(way),
    }
}

/// A file of the bench card, and nothing of any other page.
pub async fn bench_file(uri: Uri) -> Response {
    let way = uri.path().trim_start_matches('/');
    match () {
        () if is_bench(way) => built(BENCH),
        () if way.starts_with("assets/") || OF_BENCH.contains(&way) => built(way),
        () => nothing(),
    }
}

/// By which the bench card knows whether it is of this program; empty where it was not built with
/// the rest.
pub fn bench_build() -> String {
    #[derive(serde::Deserialize)]
    struct Files {
        build: String,
    }
    let listed = Built::get("bench-files.json");
    let listed = listed.and_then(|file| serde_json::from_slice::<Files>(&file.data).ok());
    listed.map_or_else(String::new, |files| files.build)
}

fn is_bench(way: &str) -> bool {
    let behind = way.strip_prefix(BENCH_WAY);
    behind.is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
}

fn nothing() -> Response {
    (StatusCode::NOT_FOUND, "There is nothing at this address.").into_response()
}

fn built(name: &str) -> Response {
    let Some(file) = Built::get(name) else {
        return nothing();
    };
    // Names of built files hold a digest of what is in them; the page itself is asked for anew.
    let kept = match name.starts_with("assets/") {
        true => "public, max-age=31536000, immutable",
        false => "no-cache",
    };
    let kind = file.metadata.mimetype().to_owned();
    (
        [(CONTENT_TYPE, kind), (CACHE_CONTROL, kept.to_owned())],
        file.data,
    )
        .into_response()
}
