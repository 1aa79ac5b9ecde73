//! An experiment on the page: its plan, results typed in place, what they say.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use std::fs;
use std::path::Path;

use axum::http::StatusCode;
use serde_json::json;
use shop::Shop;

const WAY: &str = "/api/v1/experiments/trials%2Fheap";

/// A shop with the experiment of the examples, without its results where none are wanted.
fn with_experiment(files: &[&str]) -> Shop {
    let shop = Shop::new();
    let to = shop.folder.path().join("trials/heap");
    fs::create_dir_all(&to).unwrap();
    let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/village-heap");
    for file in files {
        fs::copy(from.join(file), to.join(file)).unwrap();
    }
    shop
}

fn text(shop: &Shop, file: &str) -> String {
    fs::read_to_string(shop.folder.path().join("trials/heap").join(file)).unwrap_or_default()
}

#[tokio::test]
async fn an_experiment_is_read_with_its_charts() {
    let shop = with_experiment(&["experiment.toml", "batches.toml", "results.csv"]);
    let listed = shop.get("/api/v1/experiments").await.json();
    assert_eq!(listed[0]["experiment"], "trials/heap");
    let sheet = shop.get(WAY).await.json();
    assert_eq!(sheet["is_planned"], true);
    let batches = sheet["batches"].as_array().unwrap();
    let kept = text(&shop, "batches.toml").matches("[[batch]]").count();
    assert_eq!(batches.len(), kept);
    // Each result of the file stands beside its batch.
    for line in text(&shop, "results.csv").lines().skip(1) {
        let cells: Vec<&str> = line.split(',').collect();
        let number: usize = cells[0].parse().unwrap();
        let results = batches[number - 1]["results"].as_array().unwrap();
        let result = results.iter().find(|one| one["name"] == cells[1]).unwrap();
        let shown = result["typed"].as_str().unwrap();
        let value: f64 = cells[2].parse().unwrap();
        let first: f64 = shown.split([' ', ';']).next().unwrap().parse().unwrap();
        assert!(
            (first - value).abs() <= 1e-3 * value.abs(),
            "{line}: {shown}"
        );
    }
    assert!(!sheet["told"].as_array().unwrap().is_empty());
    let pictures = sheet["pictures"].as_array().unwrap();
    assert!(!pictures.is_empty());
    for picture in pictures {
        assert!(picture["svg"].as_str().unwrap().starts_with("<svg"));
        assert!(!picture["title"].as_str().unwrap().is_empty());
    }
    let told = sheet["told"].to_string();
    assert!(!told.contains("oddside experiment"), "{told}");
    let cards = shop.get(&format!("{WAY}/cards.pdf")).await;
    assert!(cards.body.starts_with(b"%PDF-"));
}

#[tokio::test]
async fn a_plan_is_kept_and_results_in_doubt_are_asked_about() {
    let shop = with_experiment(&["experiment.toml"]);
    let sheet = shop.get(WAY).await.json();
    assert_eq!(sheet["is_planned"], false);
    assert_eq!(text(&shop, "batches.toml"), "", "a look writes nothing");
    let results = format!("{WAY}/results");
    let said = shop
        .send(
            "POST",
            &results,
            json!({"batch": 1, "name": "strength", "value": "40"}),
        )
        .await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    let planned = shop
        .send("POST", &format!("{WAY}/batches"), json!({}))
        .await;
    assert_eq!(planned.json()["is_planned"], true);
    assert_eq!(planned.json()["batches"], sheet["batches"]);
    let name = sheet["batches"][0]["results"][0]["name"].clone();
    let enter = |value: &str, ways: &[&str]| {
        let body = json!({"batch": 1, "name": name, "value": value, "ways": ways});
        shop.send("POST", &results, body)
    };
    assert_eq!(enter("40", &[]).await.status, StatusCode::OK);
    let before = text(&shop, "results.csv");
    // The same once more is known; another is asked about, and nothing is written meanwhile.
    assert_eq!(enter("40", &[]).await.status, StatusCode::OK);
    let asked = enter("44", &[]).await;
    assert_eq!(asked.status, StatusCode::CONFLICT);
    let ways = asked.json()["ways"].as_array().unwrap().clone();
    let ways: Vec<&str> = ways
        .iter()
        .map(|way| way["way"].as_str().unwrap())
        .collect();
    assert_eq!(ways, ["replace", "again"]);
    assert_eq!(text(&shop, "results.csv"), before);
    let again = enter("44", &["again"]).await.json();
    let typed = again["batches"][0]["results"][0]["typed"].as_str().unwrap();
    assert!(typed.starts_with("40; 44"), "{typed}");
    assert!(text(&shop, "results.csv").starts_with(before.trim_end()));
    for wrong in ["forty", "", "40 kN"] {
        let status = enter(wrong, &[]).await.status;
        assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{wrong}");
    }
}

#[tokio::test]
async fn what_the_scale_said_is_kept_and_a_slip_is_asked_about() {
    let shop = with_experiment(&["experiment.toml", "batches.toml"]);
    let sheet = shop.get(WAY).await.json();
    let part = &sheet["batches"][0]["parts"][0];
    let planned: f64 = part["planned"].as_str().unwrap()[..]
        .trim_end_matches(" g")
        .parse()
        .unwrap();
    let results = format!("{WAY}/results");
    let weighed = |grams: f64| {
        let body = json!({"batch": 1, "name": part["name"], "value": format!("{grams} g")});
        shop.send("POST", &results, body)
    };
    let slip = weighed(2.0 * planned).await;
    assert_eq!(slip.status, StatusCode::CONFLICT);
    assert_eq!(slip.json()["ways"][0]["way"], "sure");
    let kept = weighed(planned + 1.0).await.json();
    let typed = kept["batches"][0]["parts"][0]["typed"].as_str().unwrap();
    let shown: f64 = typed.trim_end_matches(" g").parse().unwrap();
    assert!((shown - planned - 1.0).abs() < 0.51, "{typed} of {planned}");
}

#[tokio::test]
async fn ways_out_of_the_folder_lead_to_no_experiment() {
    let shop = with_experiment(&["experiment.toml"]);
    for way in ["..", "trials", "trials%2Fheap%2F..%2Fheap", "nowhere"] {
        let said = shop.get(&format!("/api/v1/experiments/{way}")).await;
        assert_eq!(said.status, StatusCode::NOT_FOUND, "{way}");
    }
}
