//! What binds sand, and how much of it the sources say: ranges, side by side, never one number.
//!
//! A recipe starts a test batch and no more. What one clay does says nothing of another: dug clay
//! has its own rows and is never given those of bentonite.

use std::fmt;
use std::sync::LazyLock;

use measure::band::Band;
use measure::matter::Mass;
use measure::source::Law;
use serde::Deserialize;
use thiserror::Error;

/// Binder on the sand, by what it is, what it is for, and the metal.
pub const DOSE: Law = Law {
    name: "sand::recipe::dose",
    formula: "b = table (binder, use, metal)",
    range: "of the dry sand by mass; a start for a test batch",
    sources: &[
        "shop-handbook-figures",
        "foundry-sand-guide",
        "dug-clay-green-sand",
    ],
};

/// Water that a clay takes at the moisture it moulds at.
pub const WATER_FOR_CLAY: Law = Law {
    name: "sand::recipe::water_for_clay",
    formula: "m_water = r m_clay",
    range: "live clay alone; water that other parts bring counts in",
    sources: &["shop-handbook-figures"],
};

/// What a binder is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Clay, which binds while it is wet.
    Clay,
    /// Sugar, starch and the like, which bind once they are dried or baked.
    Organic,
    /// Oil that hardens in the oven.
    Oil,
    /// Liquid silicate, which carbon dioxide or air hardens.
    Silicate,
}

/// What the bonded sand is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Use {
    /// The mould.
    Mould,
    /// Cores.
    Core,
}

/// The metal, as far as recipes tell metals apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Poured {
    /// Aluminium, bronze, brass, zinc.
    NonFerrous,
    /// Grey iron.
    Iron,
}

/// A binder with all that the sources say of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Binder {
    /// The word by which it is typed.
    pub name: String,
    /// What it is called in full.
    pub title: String,
    /// What it is.
    pub kind: Kind,
    /// Amounts, the preferred one of each use first.
    pub doses: Vec<Dose>,
    /// Water, the preferred figure first.
    pub waters: Vec<Water>,
    /// What to mind with it.
    pub cautions: Vec<String>,
}

/// How much of a binder one source takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Dose {
    /// What for.
    pub used_for: Use,
    /// For which metal; any where nothing is said.
    pub metal: Option<Poured>,
    /// Share of the dry sand by mass.
    pub share: Band<f64>,
    /// Key of the bibliography.
    pub source: String,
    /// What the source says of it; empty where it says nothing.
    pub note: String,
}

/// How much water one source takes with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Water {
    /// Counted how.
    pub basis: WaterBasis,
    /// The share.
    pub share: Band<f64>,
    /// Key of the bibliography.
    pub source: String,
}

/// What a share of water is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WaterBasis {
    /// Of the clay by mass.
    OfClay,
    /// Of the wet sand by mass.
    OfWetSand,
}

/// All that the sources say of a binder for a use and a metal.
#[derive(Clone, Debug, PartialEq)]
pub struct Said<'a> {
    /// From the least to the most, likely as the first source has it.
    pub share: Band<f64>,
    /// Every amount, as listed.
    pub doses: Vec<&'a Dose>,
    /// The source that takes least.
    pub least: &'a Dose,
    /// The source that takes most.
    pub most: &'a Dose,
}

/// Why there is no recipe.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum RecipeError {
    /// No binder goes by this name.
    #[error("\"{name}\" is no binder here; there is: {known}")]
    NoSuchBinder {
        /// The name typed.
        name: String,
        /// The names there are.
        known: String,
    },
    /// No source names an amount for this use.
    #[error("no source here has an amount of {title} for {used_for}: make small test batches")]
    NotForThis {
        /// The binder.
        title: String,
        /// What for.
        used_for: Use,
    },
}

impl fmt::Display for Use {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        let word = match self {
            Use::Mould => "moulds",
            Use::Core => "cores",
        };
        write!(to, "{word}")
    }
}

impl Binder {
    /// What the sources say for a use and a metal. Law: [`DOSE`].
    pub fn said(&self, used_for: Use, metal: Poured) -> Result<Said<'_>, RecipeError> {
        let fits =
            |dose: &&Dose| dose.used_for == used_for && dose.metal.is_none_or(|own| own == metal);
        let doses: Vec<&Dose> = self.doses.iter().filter(fits).collect();
        let by = |a: &&Dose, b: &&Dose| a.share.likely().total_cmp(&b.share.likely());
        let least = doses.iter().copied().min_by(by);
        let most = doses.iter().copied().max_by(by);
        match (doses.first(), least, most) {
            (Some(first), Some(least), Some(most)) => {
                let share = doses
                    .iter()
                    .fold(first.share, |band, one| band.or(&one.share));
                Ok(Said {
                    share,
                    doses,
                    least,
                    most,
                })
            }
            _ => Err(RecipeError::NotForThis {
                title: self.title.clone(),
                used_for,
            }),
        }
    }
}

/// Every binder, in the order in which they are offered.
pub fn all() -> &'static [Binder] {
    &BINDERS
}

/// The binder of a name.
pub fn named(name: &str) -> Result<&'static Binder, RecipeError> {
    let found = all().iter().find(|binder| binder.name == name.trim());
    found.ok_or_else(|| {
        let names: Vec<_> = all().iter().map(|binder| binder.name.as_str()).collect();
        RecipeError::NoSuchBinder {
            name: name.to_owned(),
            known: names.join(", "),
        }
    })
}

/// Water for so much clay, `ratio` of it by mass. Law: [`WATER_FOR_CLAY`].
pub fn water_for_clay(clay: Mass, ratio: f64) -> Mass {
    clay * ratio
}

/// The built-in files with their names, in the order in which binders are offered.
pub const BUILT_IN: [(&str, &str); 10] = [
    (
        "sodium-bentonite.toml",
        include_str!("../data/recipes/sodium-bentonite.toml"),
    ),
    (
        "calcium-bentonite.toml",
        include_str!("../data/recipes/calcium-bentonite.toml"),
    ),
    (
        "fireclay.toml",
        include_str!("../data/recipes/fireclay.toml"),
    ),
    (
        "dug-clay.toml",
        include_str!("../data/recipes/dug-clay.toml"),
    ),
    (
        "molasses.toml",
        include_str!("../data/recipes/molasses.toml"),
    ),
    ("sugar.toml", include_str!("../data/recipes/sugar.toml")),
    ("flour.toml", include_str!("../data/recipes/flour.toml")),
    ("dextrin.toml", include_str!("../data/recipes/dextrin.toml")),
    (
        "linseed-oil.toml",
        include_str!("../data/recipes/linseed-oil.toml"),
    ),
    (
        "silicate.toml",
        include_str!("../data/recipes/silicate.toml"),
    ),
];

/// Reads one binder.
pub fn read(text: &str) -> Result<Binder, toml::de::Error> {
    let typed: BinderText = toml::from_str(text)?;
    let dose = |dose: DoseText| Dose {
        used_for: dose.used_for,
        metal: dose.metal,
        share: dose.percent.share(),
        source: dose.source,
        note: dose.note,
    };
    let water = |water: WaterText| Water {
        basis: water.basis,
        share: water.percent.share(),
        source: water.source,
    };
    Ok(Binder {
        name: typed.name,
        title: typed.title,
        kind: typed.kind,
        doses: typed.dose.into_iter().map(dose).collect(),
        waters: typed.water.into_iter().map(water).collect(),
        cautions: typed.cautions,
    })
}

static BINDERS: LazyLock<Vec<Binder>> = LazyLock::new(|| {
    let texts = BUILT_IN.iter();
    texts.filter_map(|(_, text)| read(text).ok()).collect()
});

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct BinderText {
    name: String,
    title: String,
    kind: Kind,
    #[serde(default)]
    cautions: Vec<String>,
    dose: Vec<DoseText>,
    #[serde(default)]
    water: Vec<WaterText>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct DoseText {
    #[serde(rename = "for")]
    used_for: Use,
    metal: Option<Poured>,
    percent: Percent,
    source: String,
    #[serde(default)]
    note: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct WaterText {
    basis: WaterBasis,
    percent: Percent,
    source: String,
}

/// Per cents as they stand in a table: one, two ends, or two ends with the likely one between.
#[derive(Deserialize)]
#[serde(untagged)]
enum Percent {
    One(f64),
    Ends([f64; 2]),
    Likely([f64; 3]),
}

impl Percent {
    fn share(&self) -> Band<f64> {
        let [low, likely, high] = match *self {
            Percent::One(one) => [one, one, one],
            Percent::Ends([low, high]) => [low, (low + high) / 2.0, high],
            Percent::Likely(three) => three,
        };
        Band::new(low / 100.0, likely / 100.0, high / 100.0)
    }
}
