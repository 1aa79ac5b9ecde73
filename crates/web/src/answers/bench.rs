//! What the sand bench is asked, and what comes of it.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::Json;
use axum::extract::{Path, State};
use bench::given::Given;
use bench::tested::{drying, recipe, water};
use bench::told::Told;
use bench::trouble::BenchError;
use job::folder::shop_above;
use job::shop::Shop;
use job::words::said::Said;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::answers::remarks::weight;
use crate::answers::typed_lines::OneChoice;
use crate::answers::worked;
use crate::errors::WebError;
use crate::folder::ShopFolder;

/// Something that the bench is asked.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct AskOffered {
    /// By which it is asked.
    pub name: String,
    /// What it is.
    pub heading: String,
    /// What may be told to it.
    pub keys: Vec<KeyOffered>,
    /// The mixes among which one has to be chosen; empty where none has.
    pub mixes: Vec<OneChoice>,
}

/// Something that may be told.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct KeyOffered {
    /// The key, as on the command line.
    pub key: String,
    /// What it is called.
    pub label: String,
    /// How it is typed.
    pub example: String,
}

/// What is told to it.
#[derive(Clone, Debug, Default, Deserialize, ToSchema)]
pub struct AskGiven {
    /// The mix, where one has to be chosen.
    pub mix: Option<String>,
    /// Figures by their keys, as typed.
    pub given: BTreeMap<String, String>,
}

/// What came of it.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ToldAnswer {
    /// The line on top.
    pub head: String,
    /// Figures.
    pub figures: Vec<ToldFigure>,
    /// What to do, one after the other.
    pub steps: Vec<String>,
    /// What to mind.
    pub lines: Vec<ToldLine>,
}

/// A figure.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ToldFigure {
    /// What it is.
    pub name: String,
    /// The likely value with its unit.
    pub value: String,
    /// The range.
    pub band: Option<String>,
    /// In the other system of units, or in scoops.
    pub other: Option<String>,
}

/// Something to mind.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct ToldLine {
    /// The weight in a word of the shop's language.
    pub weight: String,
    /// What it is.
    pub words: String,
}

/// An ask of the bench.
struct Ask {
    name: &'static str,
    heading: &'static str,
    keys: &'static [&'static str],
}

/// What the drying of a heap is asked on the page: the rest is for those who type commands.
const DRY_KEYS: [&str; 11] = [
    "tub", "now", "wanted", "air", "humidity", "wind", "sun", "area", "layer", "weighed", "after",
];

/// What a batch is weighed out by.
const RECIPE_KEYS: [&str; 4] = ["dry_sand", "mix", "flasks", "moisture"];

const ASKS: [Ask; 4] = [
    Ask {
        name: "water",
        heading: "page-ask-water",
        keys: &water::KEYS,
    },
    Ask {
        name: "dry",
        heading: "page-ask-dry",
        keys: &DRY_KEYS,
    },
    Ask {
        name: "stand",
        heading: "page-ask-stand",
        keys: &["now", "least", "air", "humidity", "wind", "sun"],
    },
    Ask {
        name: RECIPE,
        heading: "page-ask-recipe",
        keys: &RECIPE_KEYS,
    },
];

const RECIPE: &str = "recipe";

/// What the bench can be asked.
#[utoipa::path(get, path = "/api/v1/bench", responses((status = 200, body = Vec<AskOffered>)))]
pub async fn asks(State(shop): State<Arc<ShopFolder>>) -> Result<Json<Vec<AskOffered>>, WebError> {
    let (own, _) = shop_above(shop.root())?;
    let mixes = |ask: &Ask| match ask.name {
        RECIPE => mixes(&own),
        _ => Vec::new(),
    };
    let offered = ASKS.iter().map(|ask| AskOffered {
        name: ask.name.to_owned(),
        heading: own.words.word(ask.heading),
        keys: ask.keys.iter().map(|key| offered(key, &own)).collect(),
        mixes: mixes(ask),
    });
    Ok(Json(offered.collect()))
}

/// Asks the bench.
#[utoipa::path(
    post,
    path = "/api/v1/bench/{ask}",
    params(("ask" = String, Path)),
    request_body = AskGiven,
    responses((status = 200, body = ToldAnswer), (status = 422, body = crate::errors::No))
)]
pub async fn ask(
    State(shop): State<Arc<ShopFolder>>,
    Path(name): Path<String>,
    Json(asked): Json<AskGiven>,
) -> Result<Json<ToldAnswer>, WebError> {
    worked(shop, move |shop| {
        let ask = ASKS.iter().find(|ask| ask.name == name);
        let ask = ask.ok_or_else(|| WebError::NoSuch(format!("the bench knows no \"{name}\"")))?;
        let (own, _) = shop_above(shop.root())?;
        let told = told(ask, &asked, &own).map_err(|error| WebError::Refused {
            message: error.to_string(),
            hint: None,
        })?;
        Ok(Json(told_answer(&told, &own)))
    })
    .await
}

/// How each key is typed.
const EXAMPLES: [(&str, &str); 19] = [
    ("sand", "18 kg"),
    ("wet", "200 g"),
    ("dry", "190 g"),
    ("now", "6 % of wet mass"),
    ("wanted", "4.5 % of wet mass"),
    ("step", "0.1 g"),
    ("tub", "22 kg"),
    ("air", "28 °C"),
    ("humidity", "60 %"),
    ("wind", "2 m/s"),
    ("sun", "500"),
    ("area", "0.5 m2"),
    ("layer", "30 mm"),
    ("weighed", "21.9 kg"),
    ("after", "30 min"),
    ("least", "3 % of wet mass"),
    ("dry_sand", "10 kg"),
    ("mix", "12 kg"),
    ("moisture", "1 % of wet mass"),
];

fn offered(key: &str, shop: &Shop) -> KeyOffered {
    let example = EXAMPLES.iter().find(|(known, _)| *known == key);
    let example = example.map_or_else(
        || shop.flasks.first().map_or("", |flask| flask.name.as_str()),
        |(_, example)| *example,
    );
    KeyOffered {
        key: key.to_owned(),
        label: shop.words.say(&Said::new(format!("bench-given-{key}"))),
        example: example.to_owned(),
    }
}

fn told(ask: &Ask, asked: &AskGiven, shop: &Shop) -> Result<Told, BenchError> {
    let filled = asked
        .given
        .iter()
        .filter(|(_, figure)| !figure.trim().is_empty());
    let pairs: Vec<String> = filled
        .map(|(key, figure)| format!("{key}={figure}"))
        .collect();
    let given = Given::read(&pairs, ask.keys, &shop.scoops)?;
    match ask.name {
        "water" => water::water(&given),
        "dry" => drying::dry(&given),
        "stand" => drying::stand(&given),
        _ => recipe::recipe(asked.mix.as_deref().unwrap_or_default(), &given, shop),
    }
}

/// What came of an ask, in the words and units of a shop.
pub fn told_answer(told: &Told, shop: &Shop) -> ToldAnswer {
    let words = shop.words;
    let figures = told.figures.iter().map(|figure| {
        let shown = figure.shown(words, shop.units);
        let beside = figure.beside.as_ref().map(|said| words.say(said));
        ToldFigure {
            name: words.say(&figure.label()),
            band: words.between(&shown),
            other: beside.or(shown.other),
            value: shown.likely,
        }
    });
    let lines = told.lines.iter().map(|line| ToldLine {
        weight: weight(line.level, words),
        words: words.say(&line.words),
    });
    ToldAnswer {
        head: words.say(&told.head),
        figures: figures.collect(),
        steps: told.steps.iter().map(|step| words.say(step)).collect(),
        lines: lines.collect(),
    }
}

/// The mixes by the words in which they are typed, and as they are called.
fn mixes(shop: &Shop) -> Vec<OneChoice> {
    let listed = recipe::list();
    let figures = listed.figures.iter();
    figures
        .map(|figure| OneChoice {
            value: shop.words.say(&figure.label()),
            shown: figure.shown(shop.words, shop.units).likely,
        })
        .collect()
}
