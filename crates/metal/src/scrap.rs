//! What a piece of scrap is, by weight in water, magnet, spark, file, colour and origin.
//!
//! Every look is put as a likelihood over the metals that lie in a heap (`data/scrap.toml`, common
//! practice and judgement). The shares say which metal it is likely to be; the next look is the
//! one that parts the two best guesses. No share makes a metal fit for food.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use measure::band::Band;
use measure::matter::{Density, Mass};
use measure::source::Law;
use serde::Deserialize;

use crate::evidence::{self, Outcomes};
use crate::figure::{Figure, FigureError, FigureText};

/// Density from the weight in air and the weight hung in water.
pub const DENSITY_IN_WATER: Law = Law {
    name: "metal::scrap::density_in_water",
    formula: "ρ = ρ_water m_air / (m_air − m_water)",
    range: "no hollows, no bubbles clinging; each reading is half a step of the scale wrong or less",
    sources: &["archimedes"],
};

/// Shares of the metals that a piece may be.
pub const SHARES: Law = Law {
    name: "metal::scrap::shares",
    formula: "P = w Π L / Σ w Π L",
    range: "looks taken as independent; likelihoods are a judgement, densities are from tables",
    sources: &["bayes", "common-practice"],
};

/// Water at room temperature; 0.3 % less at 25 °C than at 4 °C does not show on a kitchen scale.
pub const WATER: Density = Density::from_kg_per_m3(998.0);

/// A look at a piece of scrap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Look {
    /// Held to a magnet.
    Magnet,
    /// Held to a grinding wheel.
    Spark,
    /// The colour of a fresh file mark.
    Colour,
    /// How the file takes it.
    File,
    /// A drop of vinegar on a filed spot.
    Vinegar,
}

impl Look {
    /// All of them, the quickest first.
    pub const ALL: [Look; 5] = [
        Look::Magnet,
        Look::Colour,
        Look::File,
        Look::Vinegar,
        Look::Spark,
    ];

    /// The word it goes by in the table.
    pub fn name(self) -> &'static str {
        match self {
            Look::Magnet => "magnet",
            Look::Spark => "spark",
            Look::Colour => "colour",
            Look::File => "file",
            Look::Vinegar => "vinegar",
        }
    }

    /// What may come of it.
    pub const fn outcomes(self) -> &'static [&'static str] {
        match self {
            Look::Magnet => &["strong", "weak", "none"],
            Look::Spark => &["bursts", "short-red", "few", "glare", "none"],
            Look::Colour => &["white", "blue-grey", "dark-grey", "red", "yellow", "golden"],
            Look::File => &["clogs", "bites", "dust", "skates"],
            Look::Vinegar => &["fizzes", "still"],
        }
    }
}

/// A metal that lies in scrap heaps.
#[derive(Clone, Debug, PartialEq)]
pub struct Kind {
    /// Its trade name.
    pub name: String,
    /// How often it lies in a mixed heap, in parts.
    pub common: f64,
    /// Lead, cadmium and zinc that it may hold.
    pub may_hold: BTreeSet<Poison>,
    /// Between which densities it lies.
    pub density: Figure<Density>,
    looks: BTreeMap<Look, Outcomes>,
}

/// What a metal may give off or hand on to food.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Poison {
    /// Poison in fume, dust and food.
    Lead,
    /// Poison in fume and food.
    Cadmium,
    /// White fume: metal fume fever.
    Zinc,
}

/// A part that scrap is made of, and what such parts are of.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Origin {
    /// The words it goes by, the first one to be shown.
    pub names: Vec<String>,
    likely: BTreeMap<String, f64>,
    /// Lead and cadmium that come with it whatever the metal: solder, paint, plating.
    pub may_hold: BTreeSet<Poison>,
    /// What to mind with it.
    pub caution: String,
    /// Keys of the bibliography.
    pub source: Vec<String>,
}

/// What was seen of one piece.
#[derive(Clone, Debug, Default)]
pub struct Seen {
    /// Between which densities it lies by its weight in water; none where it was not weighed.
    pub density: Option<Band<Density>>,
    /// The outcome of each look that was taken.
    pub looks: BTreeMap<Look, String>,
    /// The part it was.
    pub origin: Option<&'static Origin>,
}

/// Whether a metal may go into something that touches food. There is no "yes".
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ForFood {
    /// Never: lead or cadmium is possible.
    Never(String),
    /// Nothing speaks against it that a founder can see; only an analysis says more.
    Unproven,
}

/// The next look to take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NextLook {
    /// Weigh it in air and in water.
    Weigh,
    /// Look at it.
    At(Look),
}

/// Density from the weights in air and in water. Law: [`DENSITY_IN_WATER`].
pub fn density_in_water(air: Mass, water: Mass, liquid: Density) -> Density {
    liquid * (air / (air - water))
}

/// The density with the margin that the step of the scale leaves: each reading may be half a step
/// off, so that the difference of the two is off by up to a whole one. Nothing where the piece is
/// too small for the scale.
pub fn weighed(air: Mass, water: Mass, step: Mass) -> Option<Band<Density>> {
    let half = step * 0.5;
    let low = density_in_water(air + half, water - half, WATER);
    let high = density_in_water(air - half, water + half, WATER);
    let sinks = air - half > water + half && water > half;
    sinks.then(|| Band::new(low, density_in_water(air, water, WATER), high))
}

/// Every metal of the table.
pub fn kinds() -> &'static [Kind] {
    &TABLE.0
}

/// Every origin of the table.
pub fn origins() -> &'static [Origin] {
    &TABLE.1
}

/// The origin that goes by this word.
pub fn origin(word: &str) -> Option<&'static Origin> {
    let wanted = word.trim().to_lowercase();
    let goes_by = |origin: &&Origin| origin.names.contains(&wanted);
    origins().iter().find(goes_by)
}

/// The share of each metal of the table, in its order. Law: [`SHARES`].
pub fn shares(seen: &Seen) -> Vec<f64> {
    let weighed: Vec<f64> = kinds().iter().map(|kind| weight(kind, seen)).collect();
    evidence::shares(&weighed)
}

/// The two likeliest metals, the likelier first, by their place in the table.
pub fn best_two(shares: &[f64]) -> Option<(usize, usize)> {
    let mut places: Vec<usize> = (0..shares.len()).collect();
    places.sort_by(|a, b| shares[*b].total_cmp(&shares[*a]));
    match places[..] {
        [first, second, ..] => Some((first, second)),
        _ => None,
    }
}

/// The look not yet taken that best parts the two likeliest metals.
pub fn next_look(seen: &Seen) -> Option<NextLook> {
    let (one, other) = best_two(&shares(seen))?;
    let (one, other) = (kinds().get(one)?, kinds().get(other)?);
    let untaken = Look::ALL
        .iter()
        .filter(|look| !seen.looks.contains_key(look));
    let looks = untaken.map(|look| (parts(*look, one, other), NextLook::At(*look)));
    let weighing = (by_weight(one, other), NextLook::Weigh);
    let weighing = seen.density.is_none().then_some(weighing);
    let best = looks.chain(weighing).max_by(|a, b| a.0.total_cmp(&b.0))?;
    (best.0 > WORTH_LOOKING).then_some(best.1)
}

/// Whether it may go into something that touches food: never where lead or cadmium is possible.
pub fn for_food(seen: &Seen, painted: bool) -> ForFood {
    if painted {
        return ForFood::Never("paint and plating hold lead and cadmium".to_owned());
    }
    let Some(origin) = seen.origin else {
        return ForFood::Never("nobody knows where it comes from".to_owned());
    };
    if is_poison(&origin.may_hold) {
        return ForFood::Never(format!("{}: {}", origin.names[0], origin.caution));
    }
    let possible = |(kind, share): &(&Kind, f64)| *share > POSSIBLE && is_poison(&kind.may_hold);
    let all = kinds().iter().zip(shares(seen));
    match { all }.find(possible) {
        Some((kind, _)) => ForFood::Never(format!("it may be {}, which may hold lead", kind.name)),
        None => ForFood::Unproven,
    }
}

/// Share from which a metal counts as possible: one piece in a hundred is one pot in a hundred.
pub const POSSIBLE: f64 = 0.01;

/// A look that parts two metals in fewer cases than this tells nothing new.
const WORTH_LOOKING: f64 = 0.2;

/// Pores, rust and rivets: a piece of scrap lies this far beside the density of its metal.
const PORES: f64 = 0.015;

fn is_poison(held: &BTreeSet<Poison>) -> bool {
    held.contains(&Poison::Lead) || held.contains(&Poison::Cadmium)
}

fn weight(kind: &Kind, seen: &Seen) -> f64 {
    let before = match seen.origin {
        Some(origin) => evidence::likelihood(&origin.likely, &kind.name),
        None => kind.common,
    };
    let of_look = |(look, outcome): (&Look, &String)| match kind.looks.get(look) {
        Some(outcomes) => evidence::likelihood(outcomes, outcome),
        None => 1.0,
    };
    let looks: f64 = seen.looks.iter().map(of_look).product();
    before * looks * seen.density.map_or(1.0, |seen| of_density(kind, &seen))
}

/// How likely a density is for a metal: even within its band, falling off outside as a bell whose
/// width is the margin of the weighing and the pores. A metal with a narrow band says more.
fn of_density(kind: &Kind, seen: &Band<Density>) -> f64 {
    let of = &kind.density.band;
    let likely = seen.likely().as_g_per_cm3();
    let half_width = (seen.high() - seen.low()).as_g_per_cm3() / 2.0;
    let width = half_width.max(PORES * likely);
    let (low, high) = (of.low().as_g_per_cm3(), of.high().as_g_per_cm3());
    let beside = (low - likely).max(likely - high).max(0.0) / width;
    (-beside * beside / 2.0).exp() / (high - low + 2.5 * width)
}

fn parts(look: Look, one: &Kind, other: &Kind) -> f64 {
    match (one.looks.get(&look), other.looks.get(&look)) {
        (Some(one), Some(other)) => evidence::apart(one, other),
        _ => 0.0,
    }
}

/// How well weighing in water parts two metals: by the gap of their bands against the pores.
fn by_weight(one: &Kind, other: &Kind) -> f64 {
    let (one, other) = (&one.density.band, &other.density.band);
    let gap = (other.low() - one.high()).max(one.low() - other.high());
    let blur = 2.0 * PORES * one.likely().as_g_per_cm3();
    (gap.as_g_per_cm3() / blur).clamp(0.0, 1.0)
}

/// The text of the built-in table.
pub const BUILT_IN: &str = include_str!("../data/scrap.toml");

/// Why the table of scrap could not be read.
#[derive(Debug, thiserror::Error)]
pub enum TableFault {
    /// Not such a table.
    #[error("scrap.toml: {0}")]
    Table(#[from] toml::de::Error),
    /// One of the figures is wrong.
    #[error("scrap.toml: {0}")]
    Figure(#[from] FigureError),
}

/// Reads a table of metals and origins.
pub fn read(text: &str) -> Result<(Vec<Kind>, Vec<Origin>), TableFault> {
    let typed: TableText = toml::from_str(text)?;
    let kinds = typed.kind.into_iter().map(KindText::meant);
    Ok((kinds.collect::<Result<_, _>>()?, typed.origin))
}

static TABLE: LazyLock<(Vec<Kind>, Vec<Origin>)> =
    LazyLock::new(|| read(BUILT_IN).unwrap_or_default());

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableText {
    kind: Vec<KindText>,
    origin: Vec<Origin>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct KindText {
    name: String,
    common: f64,
    may_hold: BTreeSet<Poison>,
    density: FigureText,
    magnet: Outcomes,
    spark: Outcomes,
    colour: Outcomes,
    file: Outcomes,
    vinegar: Outcomes,
}

impl KindText {
    fn meant(self) -> Result<Kind, FigureError> {
        Ok(Kind {
            name: self.name,
            common: self.common,
            may_hold: self.may_hold,
            density: self.density.quantity_range("density")?,
            looks: BTreeMap::from([
                (Look::Magnet, self.magnet),
                (Look::Spark, self.spark),
                (Look::Colour, self.colour),
                (Look::File, self.file),
                (Look::Vinegar, self.vinegar),
            ]),
        })
    }
}
