//! A job as it is typed in `job.toml`: everything optional that has a sensible answer, each figure
//! in the words in which it was written.

use measure::length::{Area, Length, Volume};
use measure::matter::Mass;
use measure::share::{Contraction, Share};
use measure::text::Typed;
use serde::Deserialize;

use crate::pour_card::PourFile;
use crate::charge::wish::ChargeFile;

/// The whole file.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JobFile {
    /// What the job is called.
    pub name: String,
    /// Day of the pour, as it is to be printed.
    pub date: Option<String>,
    /// What is to be cast.
    pub part: PartFile,
    /// In what.
    pub metal: MetalFile,
    /// In what mould.
    #[serde(default)]
    pub mould: MouldFile,
    /// How it is melted.
    #[serde(default)]
    pub melt: MeltFile,
    /// What the pour card says beside the figures.
    #[serde(default)]
    pub pour: PourFile,
    /// What is made up from the shop's own heaps.
    pub charge: Option<ChargeFile>,
    /// Cores, one table each.
    #[serde(default)]
    pub core: Vec<CoreFile>,
}

/// `[part]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PartFile {
    /// File of the mesh, beside the job.
    pub mesh: String,
    /// Unit of the mesh where its format does not say.
    pub unit: Option<String>,
    /// Castings in one mould.
    pub count: Option<usize>,
    /// The way up in the mould: "+z" keeps the mesh as it stands.
    pub up: Option<String>,
    /// What the casting has to serve for.
    pub serves: Option<Serves>,
}

/// What a casting has to serve for, as far as a wrong answer hurts people.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Serves {
    /// To look at.
    Ornament,
    /// In a machine.
    Machine,
    /// It holds food or drink.
    Food,
    /// It holds pressure.
    Pressure,
    /// It lifts, or holds a person.
    Lifting,
    /// It stops something.
    Brake,
}

/// `[metal]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MetalFile {
    /// Name of the alloy.
    pub alloy: String,
    /// The shop's own contraction, from castings measured.
    pub contraction: Option<Contraction>,
    /// Carbon equivalent of grey iron, where it is known.
    pub carbon_equivalent: Option<Share>,
}

/// `[mould]`
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MouldFile {
    /// One of the shop's flasks, by name.
    pub flask: Option<String>,
    /// From the joint up to the level kept in the basin.
    pub pour_height: Option<Typed<Length>>,
    /// Height of the joint above the lowest point of the part.
    pub joint: Option<Typed<Length>>,
    /// The test that showed the mould to be firm, in the founder's words.
    pub firm: Option<String>,
}

/// `[melt]`
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeltFile {
    /// Melt loss weighed in this shop.
    pub loss: Option<Share>,
    /// Metal kept for the ingot mould.
    pub pig: Option<Share>,
    /// Whether the charge is thin, painted or oily scrap.
    #[serde(default)]
    pub dirty_scrap: bool,
}

/// `[[core]]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CoreFile {
    /// What it is called.
    pub name: String,
    /// Core sand that the metal surrounds.
    pub volume: Typed<Volume>,
    /// How it sits.
    pub sits: Option<Sits>,
    /// The whole core on the scale, with its prints.
    pub mass: Option<Typed<Mass>>,
    /// Diameter of a round print.
    pub print: Option<Typed<Length>>,
    /// Mouth of a print that is not round.
    pub print_area: Option<Typed<Area>>,
    /// Depth of the print.
    pub print_depth: Option<Typed<Length>>,
    /// Pins or chaplets that hold it.
    pub pins: Option<u32>,
}

/// How a core sits in the mould.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Sits {
    /// From a print in the cope.
    Hung,
    /// Across the cavity on two prints.
    Bridged,
    /// On one base print in the drag.
    Standing,
    /// In the metal, on chaplets or pins.
    Chaplets,
}
