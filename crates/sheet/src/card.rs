//! The pour card on paper: one side, large type, ticks for everything that has to be dry.

use std::collections::BTreeMap;

use job::dryness::DryPoint;
use job::plan::alloy_label;
use job::pour_card::{CardTurn, PourCard};
use job::words::Language;
use job::words::said::Said;
use serde::Serialize;

use crate::data::Paper;
use crate::typeset::{self, CARD};
use crate::{SheetError, words};

/// What the template reads.
#[derive(Serialize)]
struct Given {
    paper: &'static str,
    lang: &'static str,
    words: BTreeMap<&'static str, String>,
    size_pt: f64,
    title: String,
    date: Option<String>,
    stop_word: String,
    dry: Vec<String>,
    crew: Vec<String>,
    path: Option<String>,
    heads: Vec<String>,
    turns: Vec<[String; 7]>,
    loses: String,
    next_heat: Option<String>,
    rules: Vec<String>,
    foot: String,
}

/// The template's own words.
const WORDS: [&str; 8] = [
    "card-aloud",
    "card-crew",
    "card-dry",
    "card-order",
    "card-path",
    "card-stop-told",
    "card-stop-word",
    "date",
];

/// Heads of the order of moulds, after the number of the turn.
const HEADS: [&str; 6] = [
    "card-mould",
    "card-on-the-cope",
    "card-metal-by-then",
    "card-not-below",
    "card-takes",
    "card-fill-in",
];

/// What everybody hears before the furnace is opened. Common practice of the trade; local rules
/// come first.
const RULES: [&str; 6] = [
    "rule-clothes",
    "rule-onlookers",
    "rule-steady",
    "rule-rest",
    "rule-floor",
    "rule-burn",
];

/// Sizes of the type from large to small: what is read from three steps away down to what is still
/// read at arm's length.
const SIZES_PT: [f64; 4] = [14.0, 12.5, 11.0, 10.0];

/// The card as a PDF of exactly one page.
///
/// # Errors
///
/// [`SheetError::TooMuch`] where more moulds are named than one side holds.
pub fn card(card: &PourCard, paper: Paper) -> Result<Vec<u8>, SheetError> {
    let mut pages = 0;
    for size_pt in SIZES_PT {
        let mut value = serde_json::to_value(given(card, paper, size_pt))?;
        words::clean(&mut value);
        let document = typeset::lay_out(CARD, &value, Vec::new())?;
        pages = document.pages().len();
        if pages <= 1 {
            return typeset::write(&document, "pour card");
        }
    }
    Err(SheetError::TooMuch { pages })
}

fn given(card: &PourCard, paper: Paper, size_pt: f64) -> Given {
    let language = card.words;
    let next_heat = Some(card.next_heat.join(", ")).filter(|moulds| !moulds.is_empty());
    let next_heat = next_heat.map(|moulds| Said::new("card-next-heat").with("moulds", moulds));
    let title = Said::new("paper-title")
        .with("paper", Said::new("card-title"))
        .with("job", alloy_label(&card.alloy));
    let loses = Said::new("card-loses").with("drop", card.drop_each.as_str());
    let [unread, foot] = language.each(["unread", "card-foot"]);
    let made_by = format!("oddside {}", env!("CARGO_PKG_VERSION"));
    Given {
        paper: paper.name(),
        lang: language.code(),
        words: words::of_template(language, &WORDS),
        size_pt,
        title: language.say(&title),
        date: card.date.clone(),
        stop_word: card.stop_word.clone(),
        dry: DryPoint::ALL
            .map(|point| language.say(&point.words()))
            .to_vec(),
        crew: card.crew.clone(),
        path: card.path.clone(),
        heads: heads(language),
        turns: card.turns.iter().enumerate().map(row).collect(),
        loses: language.say(&loses),
        next_heat: next_heat.map(|said| language.say(&said)),
        rules: language.each(RULES).to_vec(),
        foot: format!("{made_by}. {foot} {unread}"),
    }
}

fn heads(language: Language) -> Vec<String> {
    let mut heads = vec![String::new()];
    heads.extend(language.each(HEADS));
    heads
}

fn row((at, turn): (usize, &CardTurn)) -> [String; 7] {
    [
        (at + 1).to_string(),
        turn.name.clone(),
        turn.irons.clone(),
        turn.at.clone(),
        turn.not_below.clone(),
        turn.poured.clone(),
        turn.seconds.clone(),
    ]
}
