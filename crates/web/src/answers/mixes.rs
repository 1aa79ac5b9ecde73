//! Mixes weighed out beforehand for several amounts of sand, as a table on the wall would have
//! them: a phone at the heap then needs no server, and no law stands in the browser.

use bench::given::Given;
use bench::tested::recipe::{self, KEYS};
use bench::told::Told;
use job::remark::Level;
use job::shop::Shop;
use measure::text::System;
use serde::Serialize;
use utoipa::ToSchema;

use crate::errors::WebError;

/// A mix.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct MixAnswer {
    /// The word by which it is asked for.
    pub name: String,
    /// What it is.
    pub shown: String,
    /// What to do, one after the other.
    pub steps: Vec<String>,
    /// What to mind.
    pub cautions: Vec<String>,
    /// Weighed out, the smallest batch first.
    pub batches: Vec<BatchAnswer>,
}

/// A mix weighed out for so much dry sand.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct BatchAnswer {
    /// Dry sand in it, as people write it.
    pub sand: String,
    /// What to weigh out, in order.
    pub parts: Vec<WeighedPart>,
}

/// Something to weigh out.
#[derive(Clone, Debug, Serialize, ToSchema)]
pub struct WeighedPart {
    /// What it is.
    pub name: String,
    /// How much, with its unit.
    pub mass: String,
    /// The same in scoops of the shop's own, or in the other units.
    pub other: Option<String>,
    /// Where the log keeps it: sand, clay, binder or water.
    pub column: String,
}

/// The amounts for which every mix is weighed out: what a shovel and a mixer of one founder takes.
const AMOUNTS: [&str; 8] = [
    "1 kg", "2 kg", "5 kg", "10 kg", "15 kg", "20 kg", "30 kg", "50 kg",
];
const AMOUNTS_IN_POUNDS: [&str; 8] = [
    "2 lb", "5 lb", "10 lb", "20 lb", "30 lb", "40 lb", "60 lb", "100 lb",
];

/// Clays among the parts of mixes; whatever else is put to the sand binds it otherwise.
const CLAYS: [&str; 2] = ["bentonite", "dug-clay"];

/// Every mix of the books, weighed out with dry sand.
///
/// # Errors
///
/// What the bench says no to.
pub fn mixes(shop: &Shop) -> Result<Vec<MixAnswer>, WebError> {
    let listed = recipe::list();
    let names = listed.figures.iter().map(|figure| {
        let name = shop.words.say(&figure.label());
        (name, figure.shown(shop.words, shop.units).likely)
    });
    names.map(|(name, shown)| mix(shop, name, shown)).collect()
}

fn mix(shop: &Shop, name: String, shown: String) -> Result<MixAnswer, WebError> {
    let amounts = match shop.units {
        System::Metric => AMOUNTS,
        System::Inch => AMOUNTS_IN_POUNDS,
    };
    let words = shop.words;
    let mut mix = MixAnswer {
        name,
        shown,
        steps: Vec::new(),
        cautions: Vec::new(),
        batches: Vec::new(),
    };
    for amount in amounts {
        let told = weighed(shop, &mix.name, amount)?;
        if mix.batches.is_empty() {
            let minded = told.lines.iter().filter(|line| line.level < Level::Note);
            mix.cautions = minded.map(|line| words.say(&line.words)).collect();
            mix.steps = told.steps.iter().map(|step| words.say(step)).collect();
        }
        mix.batches.push(BatchAnswer {
            sand: amount.to_owned(),
            parts: parts(shop, &told),
        });
    }
    Ok(mix)
}

fn weighed(shop: &Shop, mix: &str, sand: &str) -> Result<Told, WebError> {
    let pairs = [
        format!("dry_sand={sand}"),
        "moisture=0 % of wet mass".to_owned(),
    ];
    let given = Given::read(&pairs, &KEYS, &shop.scoops);
    let told = given
        .map_err(Into::into)
        .and_then(|given| recipe::recipe(mix, &given, shop));
    told.map_err(|error| WebError::Refused {
        message: error.to_string(),
        hint: None,
    })
}

fn parts(shop: &Shop, told: &Told) -> Vec<WeighedPart> {
    let weighed = told.figures.iter().filter(|figure| figure.weighed_out);
    let parts = weighed.map(|figure| {
        let shown = figure.shown(shop.words, shop.units);
        let beside = figure.beside.as_ref().map(|said| shop.words.say(said));
        let label = figure.label();
        let column = match figure.id {
            "bench-sand" => "sand",
            "bench-water-to-add" => "water",
            _ if CLAYS.contains(&shop.words.say(&label).as_str()) => "clay",
            _ => "binder",
        };
        WeighedPart {
            name: shop.words.say(&label),
            mass: shown.likely,
            other: beside.or(shown.other),
            column: column.to_owned(),
        }
    });
    parts.collect()
}
