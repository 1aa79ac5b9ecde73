//! Where the heat of a run begun on the page is followed: on a graphics card where that is faster,
//! as in the terminal, else on the processor.

use gpu::card::{Card, Elsewhere, Wished, chosen};
use job::words::Language;
use job::words::said::Said;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::runs::Report;

/// Where heat is to be followed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize, Serialize, ToSchema)]
#[serde(rename_all = "lowercase")]
pub enum HeatOn {
    /// On whichever is faster.
    #[default]
    Faster,
    /// On the processor.
    Cpu,
    /// On a graphics card, be it only software in the place of one.
    Gpu,
}

/// What follows the heat of a box of so many cells; the run tells which it is.
///
/// # Errors
///
/// A card that was asked for by name and is not there, or cannot be opened.
pub fn card_for(
    on: HeatOn,
    cells: f64,
    words: Language,
    report: &Report<'_>,
) -> Result<Option<Card>, String> {
    let wished = match on {
        HeatOn::Faster => Wished::Faster,
        HeatOn::Cpu => Wished::Processor,
        HeatOn::Gpu => Wished::Card,
    };
    let card = chosen(wished, cells as usize).map_err(|error| error.to_string())?;
    let said = match &card {
        Some(card) => Said::new("freeze-on-card").with("card", card.name().to_owned()),
        None => Said::new("freeze-on-processor"),
    };
    report.tells(words.say(&said));
    Ok(card)
}
