//! What lies over the drawing: maps as raw numbers, gates and feeders that are moved, and the
//! freezing that is followed from the page.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use axum::http::StatusCode;
use serde_json::{Value, json};
use shop::Shop;

const JOB: &str = "/api/v1/jobs/2026%2Fblock";

/// The head of raw numbers, and the bytes behind it.
fn parted(bytes: &[u8]) -> (Value, &[u8]) {
    let length = u32::from_le_bytes(bytes[..4].try_into().unwrap()) as usize;
    let head = serde_json::from_slice(&bytes[4..4 + length]).unwrap();
    (head, &bytes[4 + length..])
}

fn floats(bytes: &[u8]) -> Vec<f32> {
    let fours = bytes.chunks_exact(4);
    fours
        .map(|four| f32::from_le_bytes(four.try_into().unwrap()))
        .collect()
}

fn handle<'a>(drawing: &'a Value, key: &str) -> &'a Value {
    let mut all = drawing["handles"].as_array().unwrap().iter();
    all.find(|handle| handle["key"] == key).unwrap()
}

#[tokio::test]
async fn maps_come_with_a_scale_and_a_value_for_every_corner() {
    let shop = Shop::new();
    let drawing = shop.get(&format!("{JOB}/drawing")).await.json();
    let offered = drawing["maps"].as_array().unwrap();
    let names: Vec<&str> = offered
        .iter()
        .map(|map| map["name"].as_str().unwrap())
        .collect();
    assert_eq!(names, ["wall", "draught", "undercut", "modulus"]);
    for name in names {
        let map = shop.get(&format!("{JOB}/maps/{name}")).await.body;
        let (head, numbers) = parted(&map);
        assert!(head["tells"].as_str().unwrap().len() > 20, "{name}");
        let count = |key: &str| head["skin"][key].as_u64().unwrap() as usize;
        let (points, facets) = (count("points"), count("facets"));
        let cells = head["field"]["count"].as_array().map_or(0, |count| {
            count
                .iter()
                .map(|along| along.as_u64().unwrap() as usize)
                .product()
        });
        assert_eq!(
            numbers.len(),
            4 * (3 * points + 6 * facets + cells),
            "{name}"
        );
        let values = floats(&numbers[4 * (3 * points + 3 * facets)..][..12 * facets]);
        let finite: Vec<f32> = values
            .into_iter()
            .filter(|value| value.is_finite())
            .collect();
        assert!(finite.len() > facets / 4, "{name}");
        let high = head["high"].as_f64().unwrap() as f32;
        let beyond = head["beyond"].as_bool().unwrap();
        assert!(
            beyond || finite.iter().all(|value| *value <= high * 1.001),
            "{name}"
        );
        let lines: Vec<f64> = serde_json::from_value(head["lines"].clone()).unwrap();
        assert!(lines.is_sorted() && lines.iter().all(|line| *line < f64::from(high)));
    }
    for strange in ["luck", "freezing"] {
        let said = shop.get(&format!("{JOB}/maps/{strange}")).await;
        assert_eq!(said.status, StatusCode::NOT_FOUND, "{strange}");
    }
}

/// A feeder is moved to where it is wanted, and one outside of the flask is refused before it is
/// written.
#[tokio::test]
async fn a_gate_is_moved_and_a_place_that_cannot_be_is_refused() {
    let shop = Shop::new();
    let before = shop.get(&format!("{JOB}/drawing")).await.json();
    let gate = handle(&before, "mould.place.gates");
    let at: [f64; 2] = serde_json::from_value(gate["at_mm"].clone()).unwrap();
    let inside: [f64; 2] = serde_json::from_value(before["plan"]["inside_mm"].clone()).unwrap();
    assert!(at[0] > 0.0 && at[0] < inside[0] && at[1] > 0.0 && at[1] < inside[1]);
    // As it stands it may stand as typed.
    let key = "mould.place.gates";
    let stands = json!([gate["text"]]);
    let said = shop
        .change(json!({"key": key, "was": null, "to": stands}))
        .await;
    assert_eq!(said.status, StatusCode::OK);
    let moved = format!("{}, {}", at[0] + 3.0, at[1]);
    let said = shop
        .change(json!({"key": key, "was": stands, "to": [moved]}))
        .await;
    assert_eq!(said.status, StatusCode::OK);
    let after = shop.get(&format!("{JOB}/drawing")).await.json();
    let now: [f64; 2] = serde_json::from_value(handle(&after, key)["at_mm"].clone()).unwrap();
    assert!(
        (now[0] - at[0] - 3.0).abs() < 1e-6 && (now[1] - at[1]).abs() < 1e-6,
        "{now:?}"
    );
    assert_ne!(before["svg"], after["svg"]);
    let file = shop.job_file();
    let said = shop
        .change(json!({"key": key, "was": [moved], "to": ["9000, 50"]}))
        .await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(said.json()["message"].as_str().unwrap().contains("9000"));
    assert_eq!(shop.job_file(), file);
}

/// Waits until the only run is over.
async fn over(shop: &Shop) -> Value {
    loop {
        let runs = shop.get("/api/v1/runs").await.json();
        let run = runs[0].clone();
        if !["waits", "under-way"].contains(&run["state"].as_str().unwrap()) {
            return run;
        }
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    }
}

#[tokio::test]
async fn a_freezing_is_followed_kept_and_taken_up() {
    let shop = Shop::new();
    let way = format!("{JOB}/freezing");
    assert_eq!(shop.get(&way).await.json()["kept"], "none");
    let run = shop.send("POST", &way, json!({"cells": 20000.0})).await;
    assert_eq!(run.status, StatusCode::OK);
    let again = shop.send("POST", &way, json!({})).await.json();
    assert_eq!(again["id"], run.json()["id"], "one run a job");
    let done = over(&shop).await;
    assert_eq!(done["state"], "done", "{done}");
    let kept = shop.get(&way).await.json();
    assert_eq!(kept["kept"], "fresh");
    assert!(kept["section"].as_str().unwrap().starts_with("<svg"));
    let map = shop.get(&format!("{JOB}/maps/freezing")).await.body;
    let (head, numbers) = parted(&map);
    let values = floats(numbers);
    let last = values
        .iter()
        .copied()
        .filter(|value| value.is_finite())
        .fold(0.0, f32::max);
    assert!((f64::from(last) - head["high"].as_f64().unwrap()).abs() < 1e-4);
    // Of another plan it is told to be stale, and the map is not shown.
    let said = shop
        .change(json!({"key": "metal.alloy", "was": "A356", "to": "gunmetal"}))
        .await;
    assert_eq!(said.status, StatusCode::OK);
    assert_eq!(shop.get(&way).await.json()["kept"], "stale");
    let said = shop.get(&format!("{JOB}/maps/freezing")).await;
    assert_eq!(said.status, StatusCode::NOT_FOUND);
}

/// On the processor, and on a card where one was asked for by name: the times are the same to a
/// hundredth, as single precision leaves them.
#[tokio::test]
async fn a_freezing_says_on_what_it_is_followed() {
    let shop = Shop::new();
    let way = format!("{JOB}/freezing");
    let mut told = Vec::new();
    let needed = std::env::var_os("ODDSIDE_NEEDS_CARD").is_some();
    for on in ["cpu", "gpu"] {
        let wish = json!({"cells": 10000.0, "on": on});
        assert_eq!(shop.send("POST", &way, wish).await.status, StatusCode::OK);
        let done = over(&shop).await;
        if on == "gpu" && !needed && done["state"] == "failed" {
            return;
        }
        assert_eq!(done["state"], "done", "{done}");
        let says = done["told"][0].as_str().unwrap().to_owned();
        assert_eq!(says.contains("processor"), on == "cpu", "{says}");
        assert_eq!(done["told"].as_array().unwrap().len(), 1, "{done}");
        told.push(shop.get(&way).await.json()["told"].clone());
    }
    assert_eq!(told[0], told[1]);
    let said = shop.send("POST", &way, json!({"on": "abacus"})).await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test]
async fn a_run_that_waits_is_stopped_and_leaves_nothing() {
    let shop = Shop::new();
    let way = format!("{JOB}/freezing");
    let run = shop.send("POST", &way, json!({"cells": 2e6})).await.json();
    let stop = format!("/api/v1/runs/{}", run["id"]);
    let said = shop.send("DELETE", &stop, Value::Null).await;
    assert_eq!(said.status, StatusCode::NO_CONTENT);
    assert_eq!(over(&shop).await["state"], "stopped");
    let folder = shop.folder.path().join("2026/block/freeze");
    assert!(!folder.join("findings.json").exists());
    assert!(!folder.join("asked-on-the-page").exists());
    let said = shop.send("DELETE", "/api/v1/runs/77", Value::Null).await;
    assert_eq!(said.status, StatusCode::NOT_FOUND);
    let said = shop.send("POST", &way, json!({"cells": 3.0})).await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
}

/// A server that is killed in the middle leaves what was asked for and what was kept of it; the
/// next one goes on by itself.
#[tokio::test]
async fn what_was_under_way_when_the_program_was_killed_goes_on() {
    let shop = Shop::new();
    let folder = shop.folder.path().join("2026/block/freeze");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(
        folder.join("asked-on-the-page"),
        r#"{"cells":20000.0,"on":"faster"}"#,
    )
    .unwrap();
    // Cut off in the middle of writing: passed over.
    std::fs::write(folder.join("run-1.kept"), b"half").unwrap();
    let served = web::folder::ShopFolder::at(shop.folder.path()).unwrap();
    web::followed::go_on(&served);
    while served.runs.list()[0].left_s.is_some() || served.runs.list()[0].share < 1.0 {
        assert_ne!(served.runs.list()[0].trouble, Some(String::new()));
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    }
    assert!(folder.join("findings.json").is_file());
    assert!(!folder.join("asked-on-the-page").exists());
    assert!(!folder.join("run-1.kept").exists());
    let kept = shop.get(&format!("{JOB}/freezing")).await.json();
    assert_eq!(kept["kept"], "fresh");
}

#[tokio::test]
async fn the_smallest_feeder_is_searched_for_and_the_search_is_stopped() {
    let shop = Shop::new();
    let run = shop
        .send("POST", &format!("{JOB}/feeder"), Value::Null)
        .await
        .json();
    assert_eq!(run["of"], "feeder");
    let stop = format!("/api/v1/runs/{}", run["id"]);
    shop.send("DELETE", &stop, Value::Null).await;
    assert_eq!(over(&shop).await["state"], "stopped");
}

#[tokio::test]
async fn runs_are_told_as_events_with_numbers() {
    use http_body_util::BodyExt;
    use tower::ServiceExt;
    let shop = Shop::new();
    let request = axum::http::Request::get("/api/v1/runs/events").header("host", shop::host());
    let request = request.body(axum::body::Body::empty()).unwrap();
    let mut events = shop
        .routes
        .clone()
        .oneshot(request)
        .await
        .unwrap()
        .into_body();
    let first = events.frame().await.unwrap().unwrap().into_data().unwrap();
    let text = String::from_utf8(first.to_vec()).unwrap();
    assert!(text.contains("id:") && text.contains("data: []"), "{text}");
}
