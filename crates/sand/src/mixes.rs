//! Whole mixes as data: parts on a hundred of dry sand, what to do, and where practice differs.
//!
//! A mix is a start for a test batch. Its parts name the binders of [`crate::recipe`], whose
//! sources stand side by side there: where the mix lies outside all of them, that is told.

use std::sync::LazyLock;

use serde::Deserialize;

use crate::recipe::{Poured, Use, named};

/// A mix.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mix {
    /// The word by which it is typed.
    pub name: String,
    /// What it is for.
    #[serde(rename = "for")]
    pub used_for: Use,
    /// Key of the bibliography for the mix as a whole.
    pub source: String,
    /// Water on a hundred of dry sand, poured in besides what the parts bring.
    pub water_added: Option<f64>,
    /// All water, per cent of the wet mix, instead.
    pub water_of_mix: Option<f64>,
    /// What goes in.
    #[serde(rename = "part", default)]
    pub parts: Vec<MixPart>,
    /// What to do, in order, by the keys of what is told.
    pub steps: Vec<String>,
    /// What to mind, by the keys of what is told.
    pub cautions: Vec<String>,
}

impl Mix {
    /// Whether it holds clay that has to be worked in under pressure.
    pub fn mulled(&self) -> bool {
        self.steps.iter().any(|step| step == "mull")
    }
}

/// Something that goes into a mix.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MixPart {
    /// What it is called, and typed.
    pub name: String,
    /// The binder of the recipes that it is, where it is one.
    pub binder: Option<String>,
    /// Parts on a hundred of dry sand, as it is weighed.
    pub parts: f64,
    /// Water in it, per cent of it as weighed.
    #[serde(default)]
    pub water: f64,
}

/// How an amount stands to what the sources say of its binder.
#[derive(Clone, Debug, PartialEq)]
pub enum Standing {
    /// Within them; they reach from the least to the most, shares of the dry sand.
    Within([f64; 2]),
    /// Outside every one of them.
    Outside([f64; 2]),
}

/// Every mix, in the order in which they are offered.
pub fn all() -> &'static [Mix] {
    &MIXES
}

/// The mix of a name.
pub fn of_name(name: &str) -> Option<&'static Mix> {
    all().iter().find(|mix| mix.name == name.trim())
}

/// How so much of a part on dry sand stands to the sources of its binder for a metal; none where
/// it is no binder, or none speaks of this use.
pub fn standing(part: &MixPart, used_for: Use, metal: Poured, share: f64) -> Option<Standing> {
    let binder = named(part.binder.as_deref()?).ok()?;
    let said = binder.said(used_for, metal).ok()?;
    let ends = [said.share.low(), said.share.high()];
    let holds = |share: f64| share >= ends[0] - 1e-9 && share <= ends[1] + 1e-9;
    Some(match holds(share) {
        true => Standing::Within(ends),
        false => Standing::Outside(ends),
    })
}

/// The built-in files with their names.
pub const BUILT_IN: [(&str, &str); 6] = [
    (
        "sugar-clay.toml",
        include_str!("../data/mixes/sugar-clay.toml"),
    ),
    (
        "bentonite.toml",
        include_str!("../data/mixes/bentonite.toml"),
    ),
    ("natural.toml", include_str!("../data/mixes/natural.toml")),
    ("oil-core.toml", include_str!("../data/mixes/oil-core.toml")),
    (
        "silicate-core.toml",
        include_str!("../data/mixes/silicate-core.toml"),
    ),
    (
        "flour-core.toml",
        include_str!("../data/mixes/flour-core.toml"),
    ),
];

/// Reads one mix.
///
/// # Errors
///
/// Where the text is no mix.
pub fn read(text: &str) -> Result<Mix, toml::de::Error> {
    toml::from_str(text)
}

static MIXES: LazyLock<Vec<Mix>> = LazyLock::new(|| {
    let texts = BUILT_IN.iter();
    texts.filter_map(|(_, text)| read(text).ok()).collect()
});
