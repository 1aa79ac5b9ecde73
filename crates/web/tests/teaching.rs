//! A class, the pupil's sheet and the glossary, as the page asks for them.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use axum::http::StatusCode;
use job::folder::open;
use job::lesson::lesson;
use job::work_out::work_out;
use serde_json::{Value, json};
use shop::Shop;

const JOB: &str = "/api/v1/jobs/2026%2Fblock";

fn words(terms: &Value) -> Vec<&str> {
    let terms = terms.as_array().unwrap().iter();
    terms.map(|term| term["word"].as_str().unwrap()).collect()
}

/// What a pupil gets is the lesson of the plan without its answers.
#[tokio::test]
async fn a_job_is_told_as_a_lesson_without_its_answers() {
    let shop = Shop::new();
    let told = shop.get(&format!("{JOB}/lesson")).await.json();
    let opened = open(&shop.folder.path().join("2026/block")).unwrap();
    let plan = work_out(&opened.job, &opened.shop, &opened.part);
    let wanted = lesson(&plan).unwrap();
    let tasks = told["tasks"].as_array().unwrap();
    assert_eq!(tasks.len(), wanted.tasks.len());
    assert!(tasks.len() > 4);
    let text = told.to_string();
    let is_given = |answer: &str| {
        let numbers = wanted.tasks.iter().flat_map(|task| &task.numbers);
        numbers
            .into_iter()
            .any(|one| one.given.as_deref() == Some(answer))
    };
    for task in wanted.tasks.iter().filter(|task| !is_given(&task.answer)) {
        assert!(
            !text.contains(&format!("\"{}\"", task.answer)),
            "{}",
            task.answer
        );
    }
    // A number from further up is told by its task.
    assert!(
        text.contains("your answer 1") || text.contains("your answer 2"),
        "{text}"
    );
    for (way, kind) in [
        ("lesson.pdf", "%PDF-"),
        ("lesson.pdf?answers=true", "%PDF-"),
    ] {
        let paper = shop.get(&format!("{JOB}/{way}")).await;
        assert_eq!(paper.status, StatusCode::OK);
        assert!(paper.body.starts_with(kind.as_bytes()), "{way}");
    }
    let [pupil, teacher] =
        [false, true].map(|answers| format!("{JOB}/lesson.pdf?answers={answers}"));
    assert_ne!(shop.get(&pupil).await.body, shop.get(&teacher).await.body);
}

/// One casting to a mould, so as many moulds as pupils; what no class can be is refused.
#[tokio::test]
async fn a_class_is_planned_from_a_job() {
    let shop = Shop::new();
    let told = shop.get(&format!("{JOB}/class?pupils=6&flasks=3")).await;
    assert_eq!(told.status, StatusCode::OK, "{}", told.json());
    let told = told.json();
    let figures = told["figures"].as_array().unwrap();
    let of = |name: &str| {
        let figure = figures.iter().find(|figure| figure["name"] == name);
        figure.unwrap()["value"].as_str().unwrap().to_owned()
    };
    assert_eq!(of("moulds"), "6");
    assert_eq!(of("groups at once"), "3");
    assert!(told["steps"].as_array().unwrap().len() > 4);
    let paper = shop
        .get(&format!("{JOB}/class.pdf?pupils=6&letter=true"))
        .await;
    assert!(paper.body.starts_with(b"%PDF-"));
    for wrong in ["pupils=0", "pupils=6&adults=1", "pupils=6&minutes=5"] {
        let said = shop.get(&format!("{JOB}/class?{wrong}")).await;
        assert_eq!(said.status, StatusCode::UNPROCESSABLE_ENTITY, "{wrong}");
        assert!(!said.json()["message"].as_str().unwrap().is_empty());
    }
    let said = shop.get(&format!("{JOB}/class?pupils=many")).await;
    assert_eq!(said.status, StatusCode::BAD_REQUEST);
}

#[tokio::test]
async fn words_of_the_trade_are_sought_and_told_beside_figures() {
    let shop = Shop::new();
    let all = shop.get("/api/v1/glossary").await.json();
    assert_eq!(words(&all).len(), job::glossary::TERMS.len());
    // In the order of the words as they are shown.
    let (first, last) = (words(&all)[0], words(&all)[words(&all).len() - 1]);
    assert_eq!((first, last), ("allowance", "yield"));
    let at = |word: &str| words(&all).iter().position(|one| *one == word);
    assert!(at("choke") < at("pouring basin") && at("liquidus") < at("loss on burning"));
    let choke = shop.get("/api/v1/glossary?word=choke").await.json();
    assert_eq!(words(&choke), ["choke"]);
    assert!(!choke[0]["source"].as_str().unwrap().is_empty());
    // In another language too, without its accent.
    let found = shop.get("/api/v1/glossary?word=masselotte").await.json();
    assert_eq!(words(&found), ["feeder"]);
    assert_eq!(
        shop.get("/api/v1/glossary?word=zzz").await.json(),
        json!([])
    );
    let why = shop.get(&format!("{JOB}/why/choke%20area")).await.json();
    assert!(words(&why["terms"]).contains(&"choke"), "{why}");
    let of_sheet = shop.get(&format!("{JOB}/glossary")).await.json();
    for word in ["flask", "sprue"] {
        assert!(words(&of_sheet).contains(&word), "{word}: {of_sheet}");
    }
    assert!(words(&of_sheet).len() < words(&all).len());
}
