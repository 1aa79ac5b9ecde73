//! Every text has its words in every language, with the same things put into it, and no words are
//! left over.

mod every_remark;
mod messages;

use std::collections::BTreeSet;

use every_remark::every_remark;
use job::words::Language;
use metal::alloy::Caution;
use metal::charge_makeup::element::Element;

use messages::{FOLDERS, Messages, of, of_file, quoted_after, referred_to, source};

#[test]
fn each_language_answers_to_the_same_ids_and_asks_for_the_same() {
    let british = of("en-GB");
    assert!(british.len() > 100);
    for folder in FOLDERS {
        let other = of(folder);
        for (id, asked) in &british {
            assert_eq!(other.get(id), Some(asked), "{folder}: {id}");
        }
        for id in other.keys() {
            assert!(british.contains_key(id), "{folder}: {id} is in no British");
        }
    }
}

#[test]
fn every_remark_has_words_and_advice_that_take_all_it_gives() {
    let british = of("en-GB");
    for remark in every_remark() {
        let given: BTreeSet<String> = remark
            .words
            .given()
            .iter()
            .map(|(name, _)| (*name).to_owned())
            .collect();
        let asked = |id: &str| british.get(id).cloned().unwrap_or_default();
        let in_words = asked(remark.words.id());
        let used: BTreeSet<String> = in_words
            .union(&asked(remark.advice.id()))
            .cloned()
            .collect();
        assert_eq!(used, given, "{}", remark.words.id());
        for language in Language::ALL {
            for said in [&remark.words, &remark.advice] {
                let shown = language.say(said);
                assert_ne!(shown, said.id(), "no words in {language:?}");
                assert!(!shown.contains('{'), "{language:?}: {shown}");
            }
        }
    }
}

#[test]
fn every_message_of_a_remark_is_made_by_some_fact() {
    let made: BTreeSet<String> = every_remark()
        .iter()
        .map(|remark| remark.words.id().to_owned())
        .collect();
    let file = of_file("en-GB", "remarks.ftl");
    let words: BTreeSet<String> = file
        .keys()
        .filter(|id| !id.contains('.'))
        .cloned()
        .collect();
    assert_eq!(made, words);
}

#[test]
fn every_id_in_the_source_has_its_message() {
    let (british, source) = (of("en-GB"), source());
    let openings = [
        "Said::new(",
        "Remark::stop(",
        "Remark::caution(",
        "Remark::note(",
    ];
    let ids = openings.map(|opening| quoted_after(&source, opening));
    let ids: Vec<&str> = ids.concat();
    assert!(ids.len() > 50);
    // One is missing on purpose, to show what a missing one looks like.
    for id in ids.iter().filter(|id| !id.starts_with("no_such_message")) {
        assert!(british.contains_key(*id), "{id}");
    }
}

#[test]
fn no_message_is_left_over() {
    let (source, referred_to) = (source(), referred_to());
    let used = |id: &str| {
        source.contains(&format!("\"{id}\"")) || referred_to.contains(id) || of_a_family(id)
    };
    let british: Messages = of("en-GB");
    for id in british.keys().filter(|id| !id.contains('.')) {
        assert!(used(id), "{id} is used nowhere");
    }
}

/// Ids that are put together from the name of a thing: each has to be one of its things.
fn of_a_family(id: &str) -> bool {
    match id.split_once('-') {
        Some(("element", symbol)) => symbol == "CE" || Element::read(symbol).is_ok(),
        _ => false,
    }
}

#[test]
fn fume_and_poison_read_as_in_their_table() {
    for caution in [
        Caution::ZincFume,
        Caution::Lead,
        Caution::MagnesiumScrap,
        Caution::UnknownScrap,
    ] {
        let remark = job::remark::Remark::from(job::remark::of_metal::MetalFact::Metal(caution));
        let row = metal::fume::hazard(&remark.code.replace('_', "-"));
        let file = remark.file();
        let said = row.map(|row| (row.words.as_str(), row.advice.as_str()));
        assert_eq!(Some((file.words.as_str(), file.advice.as_str())), said);
    }
}
