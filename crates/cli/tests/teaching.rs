//! What is for teaching: the lessons of a class, and the words of the trade.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

mod shop;

use shop::Shop;

#[test]
fn a_class_gets_its_plan_beside_the_pupils_sheet() {
    let shop = Shop::with_its_file();
    let example = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/paperweights");
    let asked = [
        "lesson",
        example,
        "--out",
        "class",
        "--pupils",
        "24",
        "--sessions",
        "3",
    ];
    std::fs::create_dir(shop.path().join("class")).unwrap();
    let said = shop.run(&asked);
    said.ends_with(0)
        .says("for 24 pupils")
        .says("lesson 1, 0 to 10 min")
        .says("the grown-ups pour")
        .says("2 m from metal");
    for file in ["pupil-sheet.pdf", "pupil-answers.pdf", "class-plan.pdf"] {
        let written = std::fs::read(shop.path().join("class").join(file)).unwrap();
        assert!(written.starts_with(b"%PDF"), "{file}");
    }
    let alone = [&asked[..], &["--adults", "1"]].concat();
    shop.run(&alone)
        .ends_with(2)
        .talks("a second one at the fire");
    let none = ["lesson", example, "--out", "class", "--pupils", "0"];
    shop.run(&none).ends_with(64).talks("pupils from 1 to 200");
}

#[test]
fn a_word_of_the_trade_is_explained_from_any_language() {
    let shop = Shop::with_its_file();
    for word in ["feeder", "riser", "Masselotte", "mazarota"] {
        shop.run(&["glossary", word])
            .ends_with(0)
            .says("feeder: A body of metal that freezes last");
    }
    let json = shop.run(&["glossary", "--json"]).ends_with(0).json();
    let all = json.as_array().unwrap();
    assert!(all.len() > 80, "{}", all.len());
    for term in all {
        let said = |key: &str| term[key].as_str().unwrap();
        assert!(
            said("meaning").ends_with('.') && !said("source").is_empty(),
            "{term}"
        );
    }
    shop.run(&["glossary", "quark"])
        .ends_with(64)
        .talks("is not in the glossary");
}
