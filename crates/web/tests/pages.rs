//! Every address, asked without a network: what it answers, what it refuses, what stays as it was.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use axum::body::Body;
use axum::http::{Request, StatusCode};
use serde_json::{Value, json};
use shop::{JOB, Shop, example_mesh, host, row};

#[tokio::test]
async fn jobs_are_listed_and_the_sheet_stands_in_the_order_of_the_day() {
    let shop = Shop::new();
    let jobs = shop.get("/api/v1/jobs").await.json();
    assert_eq!(jobs[0]["job"], "2026/block");
    assert_eq!(jobs[0]["name"], "Block");
    let sheet = shop.get("/api/v1/jobs/2026%2Fblock/sheet").await.json();
    let blocks = sheet["blocks"].as_array().unwrap().iter();
    let ids: Vec<&str> = blocks.map(|block| block["id"].as_str().unwrap()).collect();
    let day = ["metal", "sand", "pattern", "mould", "weights", "pour"];
    let day: Vec<String> = day.iter().map(|part| format!("block-{part}")).collect();
    assert_eq!(ids, day);
    assert!(
        row(&sheet, "charge")["value"]
            .as_str()
            .unwrap()
            .contains("kg")
    );
    assert!(!sheet["red_lines"].as_array().unwrap().is_empty());
}

#[tokio::test]
async fn a_change_is_written_where_it_stands_and_the_figures_follow() {
    let shop = Shop::new();
    let before = shop.get("/api/v1/jobs/2026%2Fblock/sheet").await.json();
    let said = shop
        .change(json!({"key": "metal.alloy", "was": "A356", "to": "gunmetal"}))
        .await;
    assert_eq!(said.status, StatusCode::OK);
    let after = said.json();
    assert_ne!(
        row(&before, "charge")["value"],
        row(&after, "charge")["value"]
    );
    assert_eq!(shop.job_file(), JOB.replace("A356", "gunmetal"));
    // A key that did not stand there goes into a table of its own and out of it again.
    let said = shop
        .change(json!({"key": "mould.pour_height", "was": null, "to": "105 mm"}))
        .await;
    assert_eq!(said.status, StatusCode::OK);
    assert!(shop.job_file().contains("pour_height = \"105 mm\""));
    let said = shop
        .change(json!({"key": "mould.pour_height", "was": "105 mm", "to": null}))
        .await;
    assert_eq!(said.status, StatusCode::OK);
    assert!(!shop.job_file().contains("pour_height"));
    assert!(shop.job_file().contains("# as drawn"));
}

#[tokio::test]
async fn two_who_change_the_same_thing_are_asked_and_nothing_is_lost() {
    let shop = Shop::new();
    let mine = json!({"key": "metal.alloy", "was": "A356", "to": "gunmetal"});
    let theirs = json!({"key": "metal.alloy", "was": "A356", "to": "silicon bronze"});
    let other = json!({"key": "part.count", "was": null, "to": 2});
    assert_eq!(shop.change(theirs).await.status, StatusCode::OK);
    let said = shop.change(mine).await;
    assert_eq!(said.status, StatusCode::CONFLICT);
    assert_eq!(said.json()["now"], "silicon bronze");
    assert!(shop.job_file().contains("silicon bronze"));
    // Something else in the same file is no conflict.
    assert_eq!(shop.change(other).await.status, StatusCode::OK);
    assert!(shop.job_file().contains("silicon bronze") && shop.job_file().contains("count = 2"));
}

#[tokio::test]
async fn what_cannot_be_is_refused_in_words_and_the_file_stays() {
    let shop = Shop::new();
    let wrong = [
        json!({"key": "metal.alloy", "was": "A356", "to": "cheese"}),
        json!({"key": "mould.pour_height", "was": null, "to": "tall"}),
        json!({"key": "part.count", "was": null, "to": 0}),
        json!({"key": "part.machined", "was": null, "to": "perhaps"}),
        json!({"key": "melt.loss", "was": null, "to": "5 %"}),
    ];
    for change in wrong {
        let said = shop.change(change.clone()).await;
        assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY, "{change}");
        assert!(!said.json()["message"].as_str().unwrap().is_empty());
        assert_eq!(shop.job_file(), JOB, "{change}");
    }
    let said = shop
        .change(json!({"key": "part.mesh", "was": null, "to": "/etc/passwd"}))
        .await;
    assert_eq!(said.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn every_figure_is_asked_why() {
    let shop = Shop::new();
    let sheet = shop.get("/api/v1/jobs/2026%2Fblock/sheet").await.json();
    let blocks = sheet["blocks"].as_array().unwrap().iter();
    let rows = blocks.flat_map(|block| block["rows"].as_array().unwrap());
    let figures: Vec<&str> = rows.filter_map(|row| row["figure"].as_str()).collect();
    assert!(figures.len() > 8, "{figures:?}");
    for figure in figures {
        let way = format!(
            "/api/v1/jobs/2026%2Fblock/why/{}",
            figure.replace(' ', "%20")
        );
        let why = shop.get(&way).await.json();
        assert!(!why["formula"].as_str().unwrap().is_empty(), "{figure}");
        assert!(!why["sources"].as_array().unwrap().is_empty(), "{figure}");
    }
    let said = shop.get("/api/v1/jobs/2026%2Fblock/why/luck").await;
    assert_eq!(said.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn the_mould_comes_as_a_drawing_as_paper_and_as_solids() {
    let shop = Shop::new();
    let drawing = shop.get("/api/v1/jobs/2026%2Fblock/drawing").await.json();
    assert!(drawing["svg"].as_str().unwrap().contains("<svg"));
    assert_eq!(drawing["unbuilt"], Value::Null);
    let paper = shop
        .get("/api/v1/jobs/2026%2Fblock/sheet.pdf?letter=true")
        .await;
    assert_eq!(paper.kind, "application/pdf");
    assert!(paper.body.starts_with(b"%PDF-"));
    let solids = shop.get("/api/v1/jobs/2026%2Fblock/solids").await.body;
    let length = u32::from_le_bytes(solids[..4].try_into().unwrap()) as usize;
    let head: Value = serde_json::from_slice(&solids[4..4 + length]).unwrap();
    let pieces = head["pieces"].as_array().unwrap();
    let bytes: u64 = pieces
        .iter()
        .map(|piece| 12 * (piece["points"].as_u64().unwrap() + piece["facets"].as_u64().unwrap()))
        .sum();
    assert_eq!(solids.len() as u64, 4 + length as u64 + bytes);
    let kinds: Vec<&str> = pieces
        .iter()
        .map(|piece| piece["kind"].as_str().unwrap())
        .collect();
    for kind in ["casting", "rigging", "cope", "drag"] {
        assert!(kinds.contains(&kind), "{kinds:?}");
    }
}

#[tokio::test]
async fn a_mesh_makes_a_job_and_one_without_a_unit_is_asked_for_it() {
    let shop = Shop::new();
    let new = |name: &str, file: &str, mesh: Vec<u8>| {
        let way = format!("/api/v1/jobs?name={name}&file={file}&alloy=aluminium");
        Request::post(way)
            .header("host", host())
            .body(Body::from(mesh))
            .unwrap()
    };
    let mesh = std::fs::read(example_mesh()).unwrap();
    let said = shop
        .ask(new("Door%20block%20%231", "block.stl", mesh.clone()))
        .await;
    assert_eq!(said.status, StatusCode::OK);
    assert_eq!(said.json()["job"], "door-block-1");
    let sheet = shop.get("/api/v1/jobs/door-block-1/sheet").await.json();
    let units = sheet["unsettled"]["units"].as_array().unwrap();
    assert!(
        units.iter().any(|choice| choice["unit"] == "in"),
        "{units:?}"
    );
    let again = shop.ask(new("door-block-1", "block.stl", mesh)).await;
    assert_eq!(again.status, StatusCode::CONFLICT);
    let broken = shop
        .ask(new("broken", "block.stl", b"solid nothing".to_vec()))
        .await;
    assert_eq!(broken.status, StatusCode::UNPROCESSABLE_ENTITY);
    let strange = shop
        .ask(new("strange", "..%2F..%2Fx.txt", Vec::new()))
        .await;
    assert_eq!(strange.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(!shop.folder.path().join("broken").exists());
}

#[tokio::test]
async fn ways_out_of_the_folder_lead_nowhere() {
    let shop = Shop::new();
    let outside = shop.folder.path().parent().unwrap().join("job.toml");
    for way in [
        "..",
        "%2F",
        "2026%2F..%2F..",
        "..%2F..%2Fetc",
        "2026",
        "%00",
        "2026%2Fblock%2F..",
    ] {
        let said = shop.get(&format!("/api/v1/jobs/{way}/sheet")).await;
        assert!(said.status.is_client_error(), "{way}: {}", said.status);
    }
    assert!(!outside.exists());
    std::os::unix::fs::symlink("/", shop.folder.path().join("link")).unwrap();
    assert_eq!(
        shop.get("/api/v1/jobs/link/sheet").await.status,
        StatusCode::NOT_FOUND
    );
}

#[tokio::test]
async fn other_sites_and_strange_names_are_kept_out() {
    let shop = Shop::new();
    let strange = Request::get("/api/v1/jobs").header("host", "evil.example:7350");
    let said = shop.ask(strange.body(Body::empty()).unwrap()).await;
    assert_eq!(
        said.status,
        StatusCode::FORBIDDEN,
        "a name that was made to point here"
    );
    let nameless = shop
        .ask(Request::get("/").body(Body::empty()).unwrap())
        .await;
    assert_eq!(nameless.status, StatusCode::FORBIDDEN);
    for (head, value) in [
        ("origin", "https://evil.example"),
        ("origin", "null"),
        ("sec-fetch-site", "cross-site"),
    ] {
        let change = Request::put("/api/v1/jobs/2026%2Fblock/typed")
            .header("host", host())
            .header("content-type", "application/json")
            .header(head, value)
            .body(Body::from(r#"{"key":"name","was":"Block","to":"Taken"}"#))
            .unwrap();
        assert_eq!(
            shop.ask(change).await.status,
            StatusCode::FORBIDDEN,
            "{head}: {value}"
        );
    }
    assert_eq!(shop.job_file(), JOB);
    let read = Request::get("/api/v1/jobs")
        .header("host", host())
        .header("sec-fetch-site", "cross-site")
        .header("sec-fetch-mode", "no-cors");
    let said = shop.ask(read.body(Body::empty()).unwrap()).await;
    assert_eq!(said.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn too_much_is_refused_and_a_page_says_what_it_may_load() {
    let shop = Shop::new();
    let long = "x".repeat(100_000);
    let said = shop
        .change(json!({"key": "name", "was": "Block", "to": long}))
        .await;
    assert_eq!(said.status, StatusCode::PAYLOAD_TOO_LARGE);
    let page = shop.get("/job/2026%2Fblock").await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.kind.starts_with("text/html"));
    assert!(page.policy.contains("default-src 'self'") && page.policy.contains("frame-ancestors"));
    assert_eq!(
        shop.get("/no/such.file").await.status,
        StatusCode::NOT_FOUND
    );
    assert_eq!(
        shop.get("/api/v1/nothing").await.status,
        StatusCode::NOT_FOUND
    );
}

/// Everything that is routed is described, and words of the page stand in every language.
#[tokio::test]
async fn the_addresses_are_described() {
    let shop = Shop::new();
    let described = shop.get("/api/v1/openapi.json").await.json();
    let ways = described["paths"].as_object().unwrap();
    for way in [
        "/api/v1/jobs",
        "/api/v1/jobs/{job}/sheet",
        "/api/v1/jobs/{job}/why/{figure}",
    ] {
        assert!(ways.contains_key(way), "{way}");
    }
    let words = shop.get("/api/v1/words").await.json();
    let all = words["words"].as_object().unwrap();
    assert!(all.len() > 20);
    for (id, words) in all {
        assert_ne!(words.as_str().unwrap(), id, "has no words");
    }
}

/// An advice that names a line of a sheet leads there; one that names a key of a file says which.
#[tokio::test]
async fn an_advice_leads_to_the_line_that_it_names() {
    let shop = Shop::new();
    // A shop that says nothing but its flask.
    let own = "[[flask]]\nname = \"A\"\nlength = \"400 mm\"\nwidth = \"300 mm\"\ncope = \"120 mm\"\n\
               drag = \"120 mm\"\n";
    std::fs::write(shop.folder.path().join("shop.toml"), own).unwrap();
    let sheet = shop.get("/api/v1/jobs/2026%2Fblock/sheet").await.json();
    let remarks = sheet["remarks"]
        .as_array()
        .unwrap_or_else(|| panic!("{sheet}"));
    let of = |part: &str| {
        let found = remarks
            .iter()
            .find(|one| one["advice"].as_str().unwrap().contains(part));
        found.unwrap_or_else(|| panic!("{part}: {remarks:?}"))
    };
    let own = of("your own contraction");
    let lead = json!([{"key": "metal.contraction", "label": "your own contraction", "on": "job"}]);
    assert_eq!(own["leads"], lead);
    assert_eq!(of("sand in the heap")["leads"][0]["on"], "sand");
    let crucible = of("[[crucible]]");
    assert!(crucible["advice"].as_str().unwrap().contains("shop.toml"));
    assert_eq!(crucible["leads"], json!([]));
    // No phone is let in here.
    let phone = shop.get("/api/v1/jobs/2026%2Fblock/phone").await.json();
    assert_eq!(phone, json!({"address": null, "squares": null}));
}
