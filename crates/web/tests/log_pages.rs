//! The log, the diagnosis and the sand on the page.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use axum::http::StatusCode;
use serde_json::{Value, json};
use shop::Shop;

/// A pour of the shop's only job, two castings of which one is good.
async fn poured(shop: &Shop, given: Value) -> Value {
    let body = json!({"job": "2026/block", "given": given});
    let said = shop.send("POST", "/api/v1/log/pours", body).await;
    assert_eq!(said.status, StatusCode::OK, "{}", said.json());
    said.json()
}

fn block<'a>(sheet: &'a Value, of: &str) -> &'a Value {
    let blocks = sheet["blocks"].as_array().unwrap();
    let own = |block: &&Value| block["id"].as_str().unwrap().starts_with(of);
    blocks.iter().find(own).unwrap()
}

fn line<'a>(block: &'a Value, key: &str) -> &'a Value {
    let lines = block["typed"].as_array().unwrap();
    let own = |line: &&Value| line["key"].as_str().unwrap().ends_with(&format!("/{key}"));
    lines.iter().find(own).unwrap()
}

#[tokio::test]
async fn a_pour_is_written_from_its_plan_and_changed_where_it_stands() {
    let shop = Shop::new();
    let empty = shop.get("/api/v1/log/sheet").await.json();
    assert_eq!(empty["blocks"], json!([]));
    assert!(
        !shop.folder.path().join("log.sqlite").exists(),
        "a look makes none"
    );
    let planned = shop.get("/api/v1/jobs/2026%2Fblock/pour").await.json();
    assert_eq!(planned["castings"], 1);
    assert!(
        planned["planned"]["temperature"]
            .as_str()
            .unwrap()
            .ends_with("°C")
    );
    let given = json!({"poured": "2026-11-30T10:00", "temperature": "700 °C", "time": "",
                       "good": "1"});
    let sheet = poured(&shop, given).await;
    let pour = block(&sheet, "pour-");
    assert_eq!(line(pour, "temperature")["value"], "700 °C");
    assert_eq!(line(pour, "time")["value"], Value::Null);
    assert_eq!(line(block(&sheet, "casting-"), "good")["value"], true);
    assert!(block(&sheet, "heat-")["heading"].is_string());
    // One thing of it is changed; what stands otherwise by then is asked about.
    let key = line(pour, "temperature")["key"].clone();
    let change = json!({"key": key, "was": "700 °C", "to": "1310 F"});
    let said = shop.send("PUT", "/api/v1/log/typed", change.clone()).await;
    let now = line(block(&said.json(), "pour-"), "temperature")["value"].clone();
    assert_eq!(now, "710 °C");
    let late = shop.send("PUT", "/api/v1/log/typed", change).await;
    assert_eq!(late.status, StatusCode::CONFLICT);
    assert_eq!(late.json()["now"], "710 °C");
    for wrong in [
        json!({"key": key, "was": now, "to": "hot"}),
        json!({"key": key, "was": now, "to": "7 kg"}),
    ] {
        let said = shop.send("PUT", "/api/v1/log/typed", wrong).await;
        assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    }
    for strange in [
        "pours/x/temperature",
        "pours//id",
        "changes/1/was",
        "temperature",
    ] {
        let wrong = json!({"key": strange, "was": null, "to": "1"});
        let said = shop.send("PUT", "/api/v1/log/typed", wrong).await;
        assert!(said.status.is_client_error(), "{strange}: {}", said.status);
    }
}

#[tokio::test]
async fn what_contradicts_itself_is_asked_beside_its_pour() {
    let shop = Shop::new();
    // The plan of this alloy pours some 400 K below it: read in Fahrenheit.
    let given = json!({"poured": "2026-11-30T10:00", "temperature": "1300 °C"});
    let sheet = poured(&shop, given).await;
    let remarks = sheet["remarks"].as_array().unwrap();
    assert_eq!(remarks.len(), 1, "{remarks:?}");
    assert_eq!(remarks[0]["block"], block(&sheet, "pour-")["id"]);
    let log = shop.get("/api/v1/log").await.json();
    assert_eq!(log["asked"].as_array().unwrap().len(), 1);
    assert_eq!(log["pours"], 1);
}

#[tokio::test]
async fn a_defect_is_written_down_and_traced_to_its_causes() {
    let shop = Shop::new();
    poured(&shop, json!({"poured": "2026-10-30", "good": "yes"})).await;
    let sheet = poured(&shop, json!({"poured": "2026-11-30", "good": "no"})).await;
    let log = shop.get("/api/v1/log").await.json();
    let drawn = log["charts"][0]["svg"].as_str().unwrap();
    assert!(drawn.starts_with("<svg"));
    let casting = block(&sheet, "casting-")["id"].as_str().unwrap();
    let casting = casting.strip_prefix("casting-").unwrap();
    let seen = json!({"casting": casting, "given": {"look": "round-holes", "place": "cope-face"}});
    let sheet = shop.send("POST", "/api/v1/log/defects", seen).await.json();
    let rows = block(&sheet, "casting-")["rows"].as_array().unwrap();
    assert_eq!(rows[0]["value"], "round holes");
    assert_eq!(rows[0]["band"], "on top");
    let wrong = json!({"casting": casting, "given": {"look": "ghosts"}});
    let said = shop.send("POST", "/api/v1/log/defects", wrong).await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    // Everything that is offered is understood, one word at a time.
    let says = shop.get("/api/v1/diagnosis").await.json();
    for say in says.as_array().unwrap() {
        for choice in say["choices"].as_array().unwrap() {
            let shown = choice["shown"].as_str().unwrap();
            assert!(
                !shown.starts_with("sight-") && !shown.starts_with("log-"),
                "{shown}"
            );
            let mut given = json!({"look": "round-holes"});
            given[say["key"].as_str().unwrap()] = choice["value"].clone();
            let body = json!({"pour": null, "given": given});
            let said = shop.send("POST", "/api/v1/diagnosis", body).await;
            assert_eq!(said.status, StatusCode::OK, "{choice}: {}", said.json());
        }
    }
    let given = json!({"look": "offset", "place": "joint", "castings": "all"});
    let body = json!({"pour": null, "given": given});
    let told = shop.send("POST", "/api/v1/diagnosis", body).await.json();
    let told = &told["diagnosis"];
    assert!(!told["figures"].as_array().unwrap().is_empty(), "{told}");
    assert!(
        !told["steps"].as_array().unwrap().is_empty(),
        "a check is named"
    );
    let body = json!({"pour": null, "given": {}});
    let said = shop.send("POST", "/api/v1/diagnosis", body).await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
}

/// A log that is damaged is said to be so, and left as it is.
#[tokio::test]
async fn a_damaged_log_is_told_and_not_written_over() {
    let shop = Shop::new();
    let file = shop.folder.path().join("log.sqlite");
    std::fs::write(&file, vec![7; 5000]).unwrap();
    for way in ["/api/v1/log", "/api/v1/log/sheet"] {
        let said = shop.get(way).await;
        assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY, "{way}");
        assert!(
            said.json()["message"]
                .as_str()
                .unwrap()
                .contains("log.sqlite")
        );
    }
    let body = json!({"job": "2026/block", "given": {}});
    let said = shop.send("POST", "/api/v1/log/pours", body).await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(std::fs::read(&file).unwrap(), vec![7; 5000]);
}

/// 200.0 g wet and 189.6 g dried are 10.4 g of water in 200: 5.2 % of the wet mass.
#[tokio::test]
async fn the_sand_is_told_from_tests_that_are_kept_together() {
    let shop = Shop::new();
    let books = shop.get("/api/v1/sand").await.json();
    assert_eq!(books[0]["book"], "sand");
    assert_eq!(books[0]["told"], Value::Null);
    assert!(!shop.folder.path().join("sand.toml").exists());
    let change = |key: &str, to: &str| json!({"key": key, "was": null, "to": to});
    let both = json!({"changes": [change("moisture.wet", "200.0 g"),
                                  change("moisture.dry", "189.6 g")]});
    let half = json!({"changes": [change("moisture.wet", "200.0 g")]});
    let said = shop.send("PUT", "/api/v1/sand/sand", half).await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(!shop.folder.path().join("sand.toml").exists());
    let said = shop.send("PUT", "/api/v1/sand/sand", both.clone()).await;
    assert_eq!(said.status, StatusCode::OK, "{}", said.json());
    let told = said.json()["told"].to_string();
    assert!(told.contains("5.2"), "{told}");
    let file = shop.folder.path().join("sand.toml");
    let text = std::fs::read_to_string(&file).unwrap();
    assert!(
        text.contains("# Sieving and drying make dust"),
        "notes stay"
    );
    // Late: somebody else has typed the same test.
    let said = shop.send("PUT", "/api/v1/sand/sand", both).await;
    assert_eq!(said.status, StatusCode::OK, "the same is no conflict");
    let late = json!({"changes": [change("moisture.wet", "210.0 g")]});
    let said = shop.send("PUT", "/api/v1/sand/sand", late).await;
    assert_eq!(said.status, StatusCode::CONFLICT);
    // A handful does not gain by drying.
    let wrong = json!({"key": "moisture.dry", "was": "189.6 g", "to": "201 g"});
    let said = shop
        .send("PUT", "/api/v1/sand/sand", json!({"changes": [wrong]}))
        .await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(std::fs::read_to_string(&file).unwrap(), text);
    let heap = json!({"changes": [{"key": "mass", "was": "90 kg", "to": "120 kg"}]});
    let said = shop.send("PUT", "/api/v1/sand/heap", heap).await;
    assert_eq!(said.status, StatusCode::OK, "{}", said.json());
    assert!(
        !said.json()["told"]["figures"]
            .as_array()
            .unwrap()
            .is_empty()
    );
    let said = shop
        .send("PUT", "/api/v1/sand/other", json!({"changes": []}))
        .await;
    assert_eq!(said.status, StatusCode::NOT_FOUND);
}

/// Castings thick and thin, timed beside each other, tell the contact apart from the sand; taken
/// into the shop's file it is gone by, and what rests on too little is not taken.
#[tokio::test]
async fn the_contact_that_timed_castings_teach_is_taken_into_the_shop() {
    let shop = Shop::new();
    let root = shop.folder.path();
    std::fs::write(root.join("shop.toml"), job::folder::STARTER_SHOP).unwrap();
    for (name, thick) in [("thin", 4), ("thick", 60)] {
        std::fs::create_dir_all(root.join(name)).unwrap();
        let text = format!(
            "name = \"{name}\"\n[part]\nup = \"+z\"\n[metal]\nalloy = \"A356\"\n[[solid]]\nkind = \"box\"\n\
             size = [\"120 mm\", \"90 mm\", \"{thick} mm\"]\n"
        );
        std::fs::write(root.join(name).join("job.toml"), text).unwrap();
    }
    for (name, minutes) in [("thin", "1.2 min"), ("thick", "14 min")] {
        for day in 1..=4 {
            let given = json!({"poured": format!("2026-11-0{day}"), "freezing": minutes});
            let body = json!({"job": name, "given": given});
            let said = shop.send("POST", "/api/v1/log/pours", body).await;
            assert_eq!(said.status, StatusCode::OK, "{}", said.json());
        }
        let log = shop.get("/api/v1/log").await.json();
        let figures = log["learned"]["figures"].as_array().unwrap();
        let names: Vec<&str> = figures
            .iter()
            .map(|one| one["name"].as_str().unwrap())
            .collect();
        assert!(
            names.contains(&"contact of metal and sand, over the book's"),
            "{names:?}"
        );
    }
    let log = shop.get("/api/v1/log").await.json();
    let offered = log["suggested"].as_array().unwrap();
    assert!(offered.iter().any(|one| one["value"] == "contact"), "{log}");
    let accept = json!({"name": "contact"});
    let said = shop.send("POST", "/api/v1/log/learned", accept).await;
    assert_eq!(said.status, StatusCode::OK, "{}", said.json());
    let text = std::fs::read_to_string(root.join("shop.toml")).unwrap();
    assert!(
        text.contains("[learned.contact]") && text.contains("by pours 1, 2"),
        "{text}"
    );
    let said = shop
        .send("POST", "/api/v1/log/learned", json!({"name": "luck"}))
        .await;
    assert_eq!(said.status, StatusCode::NOT_FOUND);
}
