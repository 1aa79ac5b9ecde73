//! The shop's own file, the sand bench and the charge of a job, as the page asks for them.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use axum::http::StatusCode;
use serde_json::{Value, json};
use shop::Shop;

fn typed<'a>(sheet: &'a Value, key: &str) -> &'a Value {
    let blocks = sheet["blocks"].as_array().unwrap().iter();
    let mut lines = blocks.flat_map(|block| block["typed"].as_array().unwrap());
    lines.find(|line| line["key"] == key).unwrap()
}

#[tokio::test]
async fn units_and_words_of_the_shop_are_changed_and_its_file_is_made_where_there_is_none() {
    let shop = Shop::new();
    let file = shop.folder.path().join("shop.toml");
    let sheet = shop.get("/api/v1/shop").await.json();
    assert!(!file.exists());
    let was = typed(&sheet, "words")["value"].clone();
    let change = json!({"key": "words", "was": was, "to": "fr"});
    let said = shop.send("PUT", "/api/v1/shop/typed", change).await;
    assert_eq!(said.status, StatusCode::OK);
    assert_eq!(said.json()["language"], "fr");
    assert_eq!(said.json()["name"], "Atelier");
    assert!(
        std::fs::read_to_string(&file)
            .unwrap()
            .contains("words = \"fr\"")
    );
    // The sheet of a job speaks it too.
    let job = shop.get("/api/v1/jobs/2026%2Fblock/sheet").await.json();
    assert_eq!(job["language"], "fr");
    // What stands there otherwise is asked for, what cannot be is refused.
    let late = json!({"key": "words", "was": was, "to": "us"});
    let said = shop.send("PUT", "/api/v1/shop/typed", late).await;
    assert_eq!(said.status, StatusCode::CONFLICT);
    assert_eq!(said.json()["now"], "fr");
    let before = std::fs::read_to_string(&file).unwrap();
    for wrong in [
        json!({"key": "words", "was": "fr", "to": "klingon"}),
        json!({"key": "heap.mass", "was": typed(&sheet, "heap.mass")["value"], "to": "much"}),
    ] {
        let said = shop.send("PUT", "/api/v1/shop/typed", wrong).await;
        assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    }
    let strange = json!({"key": "flask", "was": null, "to": "A"});
    let said = shop.send("PUT", "/api/v1/shop/typed", strange).await;
    assert_eq!(said.status, StatusCode::NOT_FOUND);
    assert_eq!(std::fs::read_to_string(&file).unwrap(), before);
}

/// 200 g wet and 190 g dry are 10 g of water: 5 % of the wet mass.
#[tokio::test]
async fn the_bench_answers_what_is_filled_in() {
    let shop = Shop::new();
    let asks = shop.get("/api/v1/bench").await.json();
    let names: Vec<&str> = asks
        .as_array()
        .unwrap()
        .iter()
        .map(|ask| ask["name"].as_str().unwrap())
        .collect();
    assert_eq!(names, ["water", "dry", "stand", "recipe"]);
    let given = json!({"mix": null, "given": {"wet": "200 g", "dry": "190 g", "sand": ""}});
    let said = shop.send("POST", "/api/v1/bench/water", given).await;
    assert_eq!(said.status, StatusCode::OK);
    let told = said.json();
    let figures = told["figures"].as_array().unwrap();
    let shown: Vec<&str> = figures
        .iter()
        .map(|figure| figure["value"].as_str().unwrap())
        .collect();
    assert!(
        shown.iter().any(|value| value.starts_with('5')),
        "{shown:?}"
    );
    let mix = asks[3]["mixes"][0]["value"].clone();
    let given = json!({"mix": mix, "given": {"dry_sand": "10 kg", "moisture": "0 % of wet mass"}});
    let said = shop.send("POST", "/api/v1/bench/recipe", given).await;
    assert_eq!(said.status, StatusCode::OK, "{}", said.json());
    assert!(said.json()["figures"].as_array().unwrap().len() > 1);
    for (ask, given) in [
        (
            "water",
            json!({"mix": null, "given": {"wet": "190 g", "dry": "200 g"}}),
        ),
        ("water", json!({"mix": null, "given": {"wet": "some"}})),
        ("recipe", json!({"mix": "mud", "given": {}})),
    ] {
        let said = shop
            .send("POST", &format!("/api/v1/bench/{ask}"), given)
            .await;
        assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY, "{ask}");
    }
    let said = shop
        .send(
            "POST",
            "/api/v1/bench/luck",
            json!({"mix": null, "given": {}}),
        )
        .await;
    assert_eq!(said.status, StatusCode::NOT_FOUND);
}

/// Without heaps of metal nothing can be made up, and it is said what to write; with them the
/// charge of the job is told.
#[tokio::test]
async fn the_charge_of_a_job_is_made_up_from_the_heaps() {
    let shop = Shop::new();
    let way = "/api/v1/jobs/2026%2Fblock/charge";
    let said = shop.get(way).await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(!said.json()["message"].as_str().unwrap().is_empty());
    let examples = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let from = examples.join("housing-from-scrap");
    let to = shop.folder.path().join("2026/scrap");
    std::fs::create_dir_all(&to).unwrap();
    for entry in std::fs::read_dir(&from).unwrap().flatten() {
        if entry.file_type().unwrap().is_file() {
            std::fs::copy(entry.path(), to.join(entry.file_name())).unwrap();
        }
    }
    let mesh = "motor_housing_metres.stl";
    std::fs::create_dir_all(shop.folder.path().join("2026/meshes")).unwrap();
    let there = shop.folder.path().join("2026/meshes").join(mesh);
    std::fs::copy(examples.join("meshes").join(mesh), there).unwrap();
    let told = shop.get("/api/v1/jobs/2026%2Fscrap/charge").await.json();
    assert!(
        told["weigh_out"]["rows"]
            .as_array()
            .is_some_and(|rows| !rows.is_empty()),
        "{told}"
    );
    assert_eq!(told["weigh_out"]["heads"].as_array().unwrap().len(), 5);
    assert!(!told["composition"]["rows"].as_array().unwrap().is_empty());
}
