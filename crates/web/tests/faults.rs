//! What may go wrong around every address: other sites, ways out of the folder, too much, too slow,
//! a disk that says no.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use std::convert::Infallible;
use std::pin::Pin;
use std::sync::Arc;
use std::task::{Context, Poll};
use std::time::Duration;

use axum::body::{Body, Bytes};
use axum::http::{Request, StatusCode};
use futures_core::Stream;
use serde_json::{Value, json};
use shop::{JOB, PORT, Shop, host};
use tower::ServiceExt;
use utoipa::OpenApi;
use web::folder::ShopFolder;
use web::routes::{Described, routes_within};

/// Every address that is described, with its method, and something in the place of its parameters.
fn every_address(with: &str) -> Vec<(String, String)> {
    let described: Value = serde_json::from_str(&Described::openapi().to_json().unwrap()).unwrap();
    let mut found = Vec::new();
    for (way, methods) in described["paths"].as_object().unwrap() {
        let mut way = way.clone();
        while let (Some(from), Some(to)) = (way.find('{'), way.find('}')) {
            way.replace_range(from..=to, with);
        }
        for method in methods.as_object().unwrap().keys() {
            found.push((method.to_uppercase(), way.clone()));
        }
    }
    assert!(found.len() > 40, "{}", found.len());
    found
}

fn asked(method: &str, way: &str, heads: &[(&str, &str)], body: Body) -> Request<Body> {
    let mut request = Request::builder().method(method).uri(way);
    for (head, value) in heads {
        request = request.header(*head, *value);
    }
    request.body(body).unwrap()
}

/// A page of another site may neither read nor change anything, at no address, and none answers
/// under a name that was made to point here.
#[tokio::test]
async fn no_address_answers_another_site_or_a_strange_name() {
    let shop = Shop::new();
    let own = host();
    for (method, way) in every_address("x") {
        let strange_names = [
            "evil.example",
            "evil.example:7350",
            "127.0.0.1:80",
            "127.0.0.1.evil.example:7350",
            "127.0.0.1:7350@evil.example",
            "localhost.:7350",
            "0.0.0.0:7350",
        ];
        for name in strange_names {
            let request = asked(&method, &way, &[("host", name)], Body::empty());
            let status = shop.ask(request).await.status;
            assert_eq!(status, StatusCode::FORBIDDEN, "{method} {way} as {name}");
        }
        for heads in [
            [("host", own.as_str()), ("origin", "https://evil.example")],
            [("host", own.as_str()), ("origin", "http://127.0.0.1:80")],
            [("host", own.as_str()), ("origin", "null")],
            [("host", own.as_str()), ("sec-fetch-site", "cross-site")],
        ] {
            let request = asked(&method, &way, &heads, Body::empty());
            let status = shop.ask(request).await.status;
            assert_eq!(status, StatusCode::FORBIDDEN, "{method} {way}: {heads:?}");
        }
    }
    assert_eq!(shop.job_file(), JOB);
}

/// No way leads out of the folder, whichever address it is given to.
#[tokio::test]
async fn no_address_leads_out_of_the_folder() {
    let shop = Shop::new();
    let outside = shop.folder.path().parent().unwrap();
    let before = std::fs::read_dir(outside).unwrap().count();
    for with in [
        "..",
        "..%2F..%2Fetc",
        "%2Fetc%2Fpasswd",
        "2026%2Fblock%2F..%2F..%2F..",
        "%00",
    ] {
        for (method, way) in every_address(with) {
            if !way.contains(with) {
                continue;
            }
            let body = json!({"cells": 20_000, "changes": [], "batch": 1, "name": "x", "value": "1",
                              "key": "name", "was": null, "to": "x", "mix": null, "given": {}});
            let said = shop.send(&method, &way, body).await;
            assert!(
                said.status.is_client_error(),
                "{method} {way}: {}",
                said.status
            );
        }
    }
    assert_eq!(std::fs::read_dir(outside).unwrap().count(), before);
}

/// Only a mesh may be large.
#[tokio::test]
async fn too_much_is_refused_at_every_address() {
    let shop = Shop::new();
    let long = format!("{{\"name\": \"{}\"}}", "x".repeat(300_000));
    for (method, way) in every_address("x") {
        if ["GET", "DELETE"].contains(&method.as_str()) || way == "/api/v1/jobs" {
            continue;
        }
        let own = host();
        let heads = [("host", own.as_str()), ("content-type", "application/json")];
        let said = shop
            .ask(asked(&method, &way, &heads, Body::from(long.clone())))
            .await;
        let is_refused = said.status == StatusCode::PAYLOAD_TOO_LARGE
            // What takes no body at all does not read it.
            || said.status == StatusCode::NOT_FOUND;
        assert!(is_refused, "{method} {way}: {}", said.status);
    }
}

/// Who sends without an end is let go after a while.
#[tokio::test]
async fn what_never_ends_is_let_go() {
    let shop = Shop::new();
    let served = ShopFolder::at(shop.folder.path()).unwrap();
    let routes = routes_within(Arc::new(served), PORT, Duration::from_millis(50));
    let own = host();
    let heads = [("host", own.as_str()), ("content-type", "application/json")];
    let body = Body::from_stream(Endless);
    let request = asked("PUT", "/api/v1/shop/typed", &heads, body);
    let answer = routes.oneshot(request).await.unwrap();
    assert_eq!(answer.status(), StatusCode::SERVICE_UNAVAILABLE);
}

/// A body of which nothing ever comes.
struct Endless;

impl Stream for Endless {
    type Item = Result<Bytes, Infallible>;

    fn poll_next(self: Pin<&mut Self>, _: &mut Context<'_>) -> Poll<Option<Self::Item>> {
        Poll::Pending
    }
}

/// A disk that says no: the file is as it was, and it is said what to do.
#[tokio::test]
async fn a_disk_that_says_no_leaves_the_file_as_it_was() {
    let shop = Shop::new();
    // Nothing can be written where a folder stands in its place.
    std::fs::create_dir(shop.folder.path().join("2026/block/job.toml.part")).unwrap();
    let change = json!({"key": "metal.alloy", "was": "A356", "to": "gunmetal"});
    let said = shop.change(change).await;
    assert_eq!(said.status, StatusCode::INSUFFICIENT_STORAGE);
    assert!(
        said.json()["hint"]
            .as_str()
            .unwrap()
            .contains("nothing was changed")
    );
    assert_eq!(shop.job_file(), JOB);
    let sheet = shop.get("/api/v1/jobs/2026%2Fblock/sheet").await.json();
    assert!(sheet["blocks"].to_string().contains("A356"));
}

/// A page of a program that was renewed asks for files that are not there any more: it gets a plain
/// no, and the page itself is never kept by the browser without asking.
#[tokio::test]
async fn a_stale_page_is_told_so() {
    let shop = Shop::new();
    let said = shop.get("/assets/scene-0ld0ld0l.js").await;
    assert_eq!(said.status, StatusCode::NOT_FOUND);
    let own = host();
    let request = asked("GET", "/", &[("host", own.as_str())], Body::empty());
    let answer = shop.routes.clone().oneshot(request).await.unwrap();
    assert_eq!(answer.headers()["cache-control"], "no-cache");
}
