//! Fume and poison: what must never go into the pot, what needs care, and what food forbids.

use std::sync::LazyLock;

use serde::Deserialize;

/// Something in a heap that hurts people.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hazard {
    /// The word it goes by.
    pub mark: String,
    /// How much it weighs.
    pub level: HazardLevel,
    /// What it is and does.
    pub words: String,
    /// What to do.
    pub advice: String,
    /// Keys of the bibliography.
    pub source: Vec<String>,
}

/// Whether it may go into the pot at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HazardLevel {
    /// Not in this pot.
    Stop,
    /// With care.
    Caution,
}

/// Marks that forbid a heap for anything that touches food.
const NOT_FOR_FOOD: [&str; 5] = ["lead", "cadmium", "beryllium", "painted", "unknown-scrap"];

/// What a charge with these marks needs minded, stops first; `for_food` makes whatever may hold
/// lead or cadmium a stop. Marks that are not in the table are passed over.
pub fn hazards(marks: &[&str], for_food: bool) -> Vec<(HazardLevel, &'static Hazard)> {
    let mut found: Vec<_> = all()
        .iter()
        .filter(|hazard| marks.contains(&hazard.mark.as_str()))
        .map(|hazard| {
            let forbidden = for_food && NOT_FOR_FOOD.contains(&hazard.mark.as_str());
            let level = match forbidden {
                true => HazardLevel::Stop,
                false => hazard.level,
            };
            (level, hazard)
        })
        .collect();
    found.sort_by_key(|(level, _)| *level);
    found
}

/// The hazard that goes by this word.
pub fn hazard(mark: &str) -> Option<&'static Hazard> {
    all().iter().find(|hazard| hazard.mark == mark)
}

/// Every hazard of the table.
pub fn all() -> &'static [Hazard] {
    &TABLE
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/fumes.toml");

/// Reads a table of hazards.
pub fn read(text: &str) -> Result<Vec<Hazard>, toml::de::Error> {
    let typed: TableText = toml::from_str(text)?;
    Ok(typed.hazard)
}

static TABLE: LazyLock<Vec<Hazard>> = LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    hazard: Vec<Hazard>,
}
