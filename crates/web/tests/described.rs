//! What is described: `ui/openapi.json`, from which the types of the page are made, is what the
//! addresses really send.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use std::path::Path;

use utoipa::OpenApi;
use web::routes::Described;

#[test]
fn the_page_is_made_for_what_is_sent() {
    let now = Described::openapi().to_pretty_json().unwrap() + "\n";
    let written = Path::new(env!("CARGO_MANIFEST_DIR")).join("ui/openapi.json");
    let fresh = Path::new(env!("CARGO_TARGET_TMPDIR")).join("openapi.json");
    std::fs::write(&fresh, &now).unwrap();
    assert!(
        std::fs::read_to_string(&written).unwrap_or_default() == now,
        "{} is not what is sent any more: copy {} over it, then run `npm run types` in ui",
        written.display(),
        fresh.display()
    );
}
