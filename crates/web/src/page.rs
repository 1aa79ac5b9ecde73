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

/// A file of the page; any other way without a dot in it is the page, which reads its own address.
pub async fn file(uri: Uri) -> Response {
    let way = uri.path().trim_start_matches('/');
    let is_page = way.is_empty() || !way.contains('.');
    let name = if is_page { INDEX } else { way };
    let Some(file) = Built::get(name) else {
        return (StatusCode::NOT_FOUND, "There is nothing at this address.").into_response();
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
