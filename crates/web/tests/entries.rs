//! Entries as a phone sends them: once in the log however often they come, each judged by itself.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use axum::http::StatusCode;
use serde_json::{Value, json};
use shop::Shop;
use shoplog::log::Log;
use shoplog::table::castings::{CASTINGS, DEFECTS};
use shoplog::table::melt::POURS;
use shoplog::table::sand::SAND_TESTS;
use shoplog::value::Value as Kept;

const WAY: &str = "/api/v1/entries";

fn log(shop: &Shop) -> Log {
    Log::open(&shop.folder.path().join("log.sqlite")).unwrap()
}

fn entry(table: &str, id: u32, says: Value) -> Value {
    json!({
        "table": table,
        "id": format!("{id:032x}"),
        "written": "2026-05-03T12:20:05.123Z",
        "says": says,
    })
}

#[tokio::test]
async fn what_is_sent_twice_is_written_once() {
    let shop = Shop::new();
    let says = json!({"day": "2026-05-03", "test": "cylinder", "value": "61", "unit": "kPa"});
    let lot = json!([entry("sand_tests", 1, says)]);
    let first = shop.send("POST", WAY, lot.clone()).await;
    assert_eq!(first.status, StatusCode::OK);
    let again = shop.send("POST", WAY, lot).await;
    assert_eq!(first.json(), again.json());
    let all = log(&shop).last(&SAND_TESTS, 9).unwrap();
    assert_eq!(all.len(), 1);
    assert_eq!(all[0].written, "2026-05-03T12:20:05.123Z");
}

/// 200 g wet and 190 g dry are 10 g of water: 5 % of the wet mass.
#[tokio::test]
async fn a_reading_is_worked_out_here_and_what_was_read_stays_beside_it() {
    let shop = Shop::new();
    let says = json!({"day": "2026-05-03", "test": "moisture",
                      "read.wet": "200 g", "read.dry": "190 g"});
    let said = shop
        .send("POST", WAY, json!([entry("sand_tests", 1, says)]))
        .await;
    assert_eq!(said.json()[0]["refused"], Value::Null, "{}", said.json());
    let all = log(&shop).last(&SAND_TESTS, 9).unwrap();
    assert_eq!(all[0].values["value"].number(), Some(5.0));
    assert_eq!(all[0].values["unit"], Kept::Text("%".to_owned()));
    assert_eq!(
        all[0].values["note"],
        Kept::Text("dry 190 g; wet 200 g".to_owned())
    );
}

#[tokio::test]
async fn one_that_cannot_be_is_refused_in_words_and_the_others_stand() {
    let shop = Shop::new();
    let day = "2026-05-03";
    let lot = json!([
        entry("sand_tests", 1, json!({"day": day, "test": "cylinder", "value": "much"})),
        entry("sand_tests", 2, json!({"day": day, "test": "cylinder", "value": "60"})),
        entry("sand_tests", 3, json!({"day": day, "test": "luck", "read.wet": "1 g"})),
        entry("castings", 4, json!({"pour": "ffffffffffffffffffffffffffffffff"})),
        entry("photos", 5, json!({"of": "x"})),
        entry("files", 6, json!({"name": "shop.toml", "text": "x"})),
        entry("changes", 7, json!({"what": "x"})),
        {"table": "batches", "id": "short", "written": "2026-05-03T12:20Z", "says": {}},
        {"table": "batches", "id": format!("{:032x}", 9), "written": "yesterday", "says": {}},
    ]);
    let said = shop.send("POST", WAY, lot).await.json();
    let refused: Vec<bool> = said
        .as_array()
        .unwrap()
        .iter()
        .map(|one| one["refused"].is_string())
        .collect();
    assert_eq!(
        refused,
        [true, false, true, true, true, true, true, true, true],
        "{said}"
    );
    assert_eq!(log(&shop).last(&SAND_TESTS, 9).unwrap().len(), 1);
    for wrong in [
        json!({"not": "a list"}),
        json!([{"table": "batches", "more": 1}]),
    ] {
        let said = shop.send("POST", WAY, wrong).await;
        assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
    }
    let many: Vec<Value> = (0..401).map(|id| entry("batches", id, json!({}))).collect();
    let said = shop.send("POST", WAY, Value::Array(many)).await;
    assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY);
}

/// What a card offers goes into the log as it is: every figure of the plan, and links between them.
#[tokio::test]
async fn a_pour_filled_from_its_card_stands_whole_in_the_log() {
    let shop = Shop::new();
    let card = shop.get("/api/v1/jobs/2026%2Fblock/card").await.json();
    assert_eq!(card["stopped"], Value::Null);
    let id = |number: u32| format!("{number:032x}");
    let with = |says: &Value, more: &[(&str, String)]| {
        let mut says = says.clone();
        for (key, text) in more {
            says[*key] = json!(text);
        }
        says
    };
    let lot = &card["lot"];
    let mut sent = vec![entry("moulds", 1, lot["mould"].clone())];
    for (at, figure) in lot["planned"].as_array().unwrap().iter().enumerate() {
        let number = 100 + u32::try_from(at).unwrap();
        sent.push(entry("planned", number, with(figure, &[("mould", id(1))])));
    }
    sent.push(entry("heats", 2, lot["heat"].clone()));
    let of_pour = [
        ("mould", id(1)),
        ("heat", id(2)),
        ("poured", "2026-05-03T14:20".to_owned()),
        (
            "temperature",
            card["offered"]["temperature"].as_str().unwrap().to_owned(),
        ),
        ("mass", card["offered"]["mass"].as_str().unwrap().to_owned()),
        ("time", "4.2 s".to_owned()),
        ("how", "steady".to_owned()),
    ];
    sent.push(entry("pours", 3, with(&lot["pour"], &of_pour)));
    let bad = [("pour", id(3)), ("good", "no".to_owned())];
    sent.push(entry("castings", 4, with(&lot["casting"], &bad)));
    sent.push(entry(
        "defects",
        5,
        json!({"casting": id(4), "look": "round-holes sink"}),
    ));
    let said = shop.send("POST", WAY, Value::Array(sent)).await.json();
    for one in said.as_array().unwrap() {
        assert_eq!(one["refused"], Value::Null, "{one}");
    }
    let log = log(&shop);
    let pour = &log.last(&POURS, 1).unwrap()[0];
    let planned = &pour.values["planned_temperature_c"];
    let poured = pour.values["temperature_c"].number().unwrap();
    // People read temperatures to the nearest five degrees.
    assert!(
        (poured - planned.number().unwrap()).abs() <= 2.5,
        "{poured}"
    );
    assert_eq!(pour.values["time_s"].number(), Some(4.2));
    assert_eq!(log.pointing(&CASTINGS, "pour", &id(3)).unwrap().len(), 1);
    assert_eq!(log.pointing(&DEFECTS, "casting", &id(4)).unwrap().len(), 1);
}

#[tokio::test]
async fn a_card_holds_the_pour_in_steps_and_the_ten_points() {
    let shop = Shop::new();
    let card = shop.get("/api/v1/jobs/2026%2Fblock/card").await.json();
    let steps = card["steps"].as_array().unwrap();
    let ids: Vec<&str> = steps
        .iter()
        .map(|step| step["id"].as_str().unwrap())
        .collect();
    let day = [
        "before", "aloud", "melt", "cope", "ready", "fill", "wait", "open",
    ];
    assert_eq!(ids, day);
    let sheet = shop.get("/api/v1/jobs/2026%2Fblock/sheet").await.json();
    let charge = shop::row(&sheet, "charge")["value"].clone();
    assert_eq!(
        steps[2]["figures"][0]["value"], charge,
        "as it stands on the sheet"
    );
    let clock = &steps[5]["clock"];
    assert_eq!(clock["watches"], "filling");
    let ends = ["low_s", "likely_s", "high_s"].map(|end| clock[end].as_f64().unwrap());
    assert!(
        0.0 < ends[0] && ends[0] <= ends[1] && ends[1] <= ends[2],
        "{ends:?}"
    );
    assert_eq!(steps[6]["clock"]["watches"], "opening");
    let cards = shop.get("/api/v1/cards").await.json();
    assert_eq!(cards["dry"].as_array().unwrap().len(), 10);
    assert_eq!(cards["tests"].as_array().unwrap().len(), 9);
    assert!(!cards["build"].as_str().unwrap().is_empty());
    for (id, words) in cards["words"].as_object().unwrap() {
        assert_ne!(words.as_str().unwrap(), id, "has no words");
    }
    for list in ["dry", "looks", "tests"] {
        for one in cards[list].as_array().unwrap() {
            assert!(
                !one["shown"].as_str().unwrap().contains('-') || list != "looks",
                "{one}"
            );
        }
    }
    for mix in cards["mixes"].as_array().unwrap() {
        assert_eq!(mix["batches"].as_array().unwrap().len(), 8, "{mix}");
    }
}

/// A plan that forbids the pour has no steps, and says why.
#[tokio::test]
async fn a_plan_with_a_stop_has_no_steps() {
    let shop = Shop::new();
    // Gunmetal holds lead.
    let job = shop::JOB.replace("A356", "gunmetal");
    let job = job.replace("[metal]", "serves = \"food\"\n[metal]");
    let folder = shop.folder.path().join("2026/block");
    std::fs::write(folder.join("job.toml"), job).unwrap();
    let said = shop.get("/api/v1/jobs/2026%2Fblock/card").await;
    let card = said.json();
    assert!(card["stopped"].is_string(), "{card}");
    assert_eq!(card["steps"].as_array().unwrap().len(), 0);
}
