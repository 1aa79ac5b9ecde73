//! The pour card on paper: one side, large type, ticks for everything that has to be dry.

use job::dryness::DryPoint;
use job::pour_card::{CardTurn, PourCard};
use serde::Serialize;

use crate::data::Paper;
use crate::typeset::{self, CARD};
use crate::{SheetError, words};

/// What the template reads.
#[derive(Serialize)]
struct Given {
    paper: &'static str,
    size_pt: f64,
    made_by: String,
    alloy: String,
    date: Option<String>,
    stop_word: String,
    dry: Vec<String>,
    crew: Vec<String>,
    path: Option<String>,
    heads: Vec<String>,
    turns: Vec<[String; 7]>,
    drop: String,
    next_heat: Vec<String>,
    rules: Vec<String>,
}

/// Heads of the order of moulds.
const HEADS: [&str; 7] = [
    "",
    "mould",
    "on the cope",
    "metal by then",
    "not below",
    "takes",
    "fill in",
];

/// What everybody hears before the furnace is opened. Common practice of the trade; local rules
/// come first.
const RULES: [&str; 6] = [
    "Leather boots with the trousers over them, face shield, leather apron, no synthetics.",
    "Onlookers stay 2 m away and behind the pourer. Nobody crosses the path.",
    "Pour steadily with the basin full. A mould once begun is filled, or given up for good.",
    "What is left, and metal that has grown too cold, goes into the hot ingot moulds at once.",
    "Metal on the floor: dry sand over it, never water. Step back, do not run.",
    "A burn: cool water on the skin for 20 min, away from the metal, and call for help.",
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
    let said = |text: &str| card.words.of(text);
    let all = |texts: &[&str]| texts.iter().map(|text| said(text)).collect();
    Given {
        paper: paper.name(),
        size_pt,
        made_by: format!("oddside {}", env!("CARGO_PKG_VERSION")),
        alloy: said(&card.alloy),
        date: card.date.clone(),
        stop_word: card.stop_word.clone(),
        dry: DryPoint::ALL.map(|point| said(point.words())).to_vec(),
        crew: card.crew.clone(),
        path: card.path.clone(),
        heads: all(&HEADS),
        turns: card.turns.iter().enumerate().map(row).collect(),
        drop: card.drop_each.clone(),
        next_heat: card.next_heat.clone(),
        rules: all(&RULES),
    }
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
