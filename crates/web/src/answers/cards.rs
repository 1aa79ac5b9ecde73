//! What a phone has to know before any job is opened: words, jobs, the ten points, the tests, and
//! mixes weighed out beforehand, so that it can go without the server.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::Json;
use axum::extract::State;
use bench::tested::heap_reading::{FELT, asked};
use bench::tested::readings::TESTS;
use job::dryness::DryPoint;
use job::folder::shop_above;
use job::shop::Shop;
use job::words::Language;
use measure::text::System;
use serde::Serialize;
use shoplog::diagnosis::sight::LOOKS;
use utoipa::ToSchema;

use crate::answers::diagnosis::chosen;
use crate::answers::jobs::{ListedJob, listed};
use crate::answers::mixes::{MixAnswer, mixes};
use crate::answers::phone_words::WORDS;
use crate::answers::typed_lines::OneChoice;
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;
use crate::page::bench_build;

/// Everything but the plans.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct CardsAnswer {
    /// Code of the language.
    pub language: String,
    /// The words of the bench card, by their ids.
    pub words: BTreeMap<&'static str, String>,
    /// By which the page knows whether it is of the program that answers.
    pub build: String,
    /// The jobs.
    pub jobs: Vec<ListedJob>,
    /// Units that stand first: whether those of the inch do.
    pub inch: bool,
    /// The ten points, in the order in which one walks past them.
    pub dry: Vec<OneChoice>,
    /// The tests of the sand.
    pub tests: Vec<TestAnswer>,
    /// The mixes, each weighed out for several amounts of sand.
    pub mixes: Vec<MixAnswer>,
    /// What is seen on a casting that is not sound.
    pub looks: Vec<OneChoice>,
}

/// A test of the sand.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct TestAnswer {
    /// The word by which it is kept.
    pub name: String,
    /// What it is called.
    pub shown: String,
    /// How it is done.
    pub how: String,
    /// Unit of what it comes to; empty where it has none.
    pub unit: String,
    /// What is read off, one after the other; nothing where a hand feels it.
    pub asked: Vec<AskedAnswer>,
    /// Words among which one is chosen, where a hand feels it.
    pub felt: Vec<OneChoice>,
}

/// One thing that is read off.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct AskedAnswer {
    /// Its key.
    pub key: String,
    /// What it is called.
    pub shown: String,
    /// Its units, the shop's own first.
    pub units: Vec<String>,
}

/// Everything but the plans.
#[utoipa::path(get, path = "/api/v1/cards", responses((status = 200, body = CardsAnswer)))]
pub async fn cards(State(shop): State<Arc<ShopFolder>>) -> Result<Json<CardsAnswer>, WebError> {
    worked(shop, |shop| {
        let (own, _) = shop_above(shop.root())?;
        let words = own.words;
        let jobs = shop.jobs().into_iter().map(|way| listed(shop, way, words));
        let dry = DryPoint::ALL.map(|point| choice(point.name(), words.say(&point.words())));
        Ok(Json(CardsAnswer {
            language: words.code().to_owned(),
            words: WORDS.map(|id| (id, words.word(id))).into(),
            build: bench_build(),
            jobs: jobs.collect(),
            inch: own.units == System::Inch,
            dry: dry.to_vec(),
            tests: tests(&own),
            mixes: mixes(&own)?,
            looks: chosen(LOOKS, "sight-look-", words),
        }))
    })
    .await
}

fn tests(shop: &Shop) -> Vec<TestAnswer> {
    let words = shop.words;
    let tests = TESTS.iter().map(|test| {
        let keys = asked(test);
        let asked = keys.iter().map(|typed| AskedAnswer {
            key: typed.key.to_owned(),
            shown: words.word(typed.label),
            units: in_order(typed.units, shop.units),
        });
        TestAnswer {
            name: test.name.to_owned(),
            shown: words.word(shown_as(test.name)),
            how: words.word(test.how),
            unit: test.unit.to_owned(),
            asked: asked.collect(),
            felt: felt(keys.is_empty(), words),
        }
    });
    tests.collect()
}

fn felt(by_hand: bool, words: Language) -> Vec<OneChoice> {
    match by_hand {
        true => FELT.map(|(felt, id)| choice(felt, words.word(id))).to_vec(),
        false => Vec::new(),
    }
}

/// What a test is called on the phone.
fn shown_as(test: &str) -> &'static str {
    match test {
        "squeeze" => "phone-test-squeeze",
        "drop" => "phone-test-drop",
        "dent" => "phone-test-dent",
        "bottle" => "phone-test-bottle",
        "cylinder" => "phone-test-cylinder",
        "bar" => "phone-test-bar",
        "disc" => "phone-test-disc",
        "compactability" => "phone-test-compactability",
        _ => "phone-test-moisture",
    }
}

/// The units of the shop's own system first: those of the inch stand last in the list.
fn in_order(units: &[&str], system: System) -> Vec<String> {
    const OF_THE_INCH: [&str; 4] = ["in", "oz", "lb", "fl oz"];
    let is_own = |unit: &&&str| OF_THE_INCH.contains(unit) == (system == System::Inch);
    let own = units.iter().filter(is_own);
    let other = units.iter().filter(|unit| !is_own(unit));
    own.chain(other).map(|unit| (*unit).to_owned()).collect()
}

fn choice(value: &str, shown: String) -> OneChoice {
    OneChoice {
        value: value.to_owned(),
        shown,
    }
}
