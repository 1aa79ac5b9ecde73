//! A job as it is typed in `job.toml`: everything optional that has a sensible answer, each figure
//! in the words in which it was written.

use measure::flow::Duration;
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use measure::share::{Contraction, Share};
use measure::text::Typed;
use measure::text::ranged::Ranged;
use serde::Deserialize;
use toml::Spanned;

use crate::place_text::{Along, Axis, FeederPlace, OnJoint, Turn};

use crate::charge::wish::ChargeFile;
use crate::making::wish::PatternFile;
use crate::pour_card::PourFile;

/// The whole file.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JobFile {
    /// What the job is called.
    pub name: String,
    /// Day of the pour, as it is to be printed.
    pub date: Option<String>,
    /// What is to be cast.
    pub part: Spanned<PartFile>,
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
    /// The pattern that is made.
    #[serde(default)]
    pub pattern: PatternFile,
    /// Cores, one table each.
    #[serde(default)]
    pub core: Vec<CoreFile>,
    /// Chills in the mould.
    #[serde(default)]
    pub chill: Vec<ChillFile>,
    /// Solids that make the part, one table each, in their order.
    #[serde(default)]
    pub solid: Vec<Spanned<SolidFile>>,
}

/// `[part]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PartFile {
    /// File of the mesh, beside the job.
    pub mesh: Option<Spanned<String>>,
    /// Unit of the mesh where its format does not say.
    pub unit: Option<Spanned<String>>,
    /// What the pattern or an original weighs.
    pub weighed: Option<Spanned<WeighedFile>>,
    /// What it weighs in water.
    pub displaced: Option<Spanned<DisplacedFile>>,
    /// Its sizes, where it is not drawn.
    pub sizes: Option<Spanned<SizesFile>>,
    /// Castings in one mould.
    pub count: Option<usize>,
    /// The way up in the mould: "+z" keeps the mesh as it stands.
    pub up: Option<String>,
    /// What the casting has to serve for.
    pub serves: Option<Serves>,
    /// What the mesh is of, as far as its size goes.
    pub from: Option<PatternFrom>,
    /// Whether faces of the casting are machined.
    #[serde(default)]
    pub machined: bool,
    /// Whether the pattern is rapped well before it is drawn.
    #[serde(default)]
    pub rapped: bool,
    /// Height of the layers of a pattern that is printed.
    pub printed: Option<Typed<Length>>,
    /// What of the part does not draw, in the founder's words: "side port".
    #[serde(default)]
    pub cannot_draw: Vec<String>,
    /// Contraction of the metal that the working pattern is cast in, where it is itself cast.
    pub pattern_contraction: Option<Contraction>,
}

/// What the pattern is made from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
pub enum PatternFrom {
    /// The part as it is wanted: the pattern is made larger than it.
    #[default]
    #[serde(rename = "part")]
    Part,
    /// A worn original, which may be moulded as it is.
    #[serde(rename = "worn original")]
    WornOriginal,
}

/// `[part.weighed]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WeighedFile {
    /// On the scale.
    pub mass: Ranged<Mass>,
    /// What it is made of: "pine", "PLA", or an alloy.
    pub of: Option<String>,
    /// Its density, where that is known better.
    pub density: Option<Ranged<Density>>,
}

/// `[part.displaced]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DisplacedFile {
    /// Water pushed out: what the scale under the bucket rises by.
    pub pushed_out: Option<Ranged<Mass>>,
    /// Weight in air.
    pub in_air: Option<Ranged<Mass>>,
    /// Weight hanging in water.
    pub in_water: Option<Ranged<Mass>>,
}

/// `[part.sizes]`, as the part lies in the mould.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SizesFile {
    /// Length.
    pub length: Typed<Length>,
    /// Width.
    pub width: Typed<Length>,
    /// Height.
    pub height: Typed<Length>,
    /// The thickest section: the largest ball that goes into it.
    pub thickest: Typed<Length>,
    /// The thinnest wall.
    pub thinnest: Typed<Length>,
    /// What it looks like, in one of the words of the built-in table.
    pub shape: Option<String>,
}

/// `[[solid]]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SolidFile {
    /// What the founder calls it: "leg", "horn".
    pub name: Option<String>,
    /// What it is.
    pub kind: Kind,
    /// Sides of a box, or of the box around an ellipsoid: across, across, along the axis.
    pub size: Option<[Typed<Length>; 3]>,
    /// Across, outside; of a cone at its foot.
    pub diameter: Option<Typed<Length>>,
    /// Across the top of a cone.
    pub top: Option<Typed<Length>>,
    /// Across, inside a tube.
    pub bore: Option<Typed<Length>>,
    /// Of the bar of a ring.
    pub thickness: Option<Typed<Length>>,
    /// Along the axis.
    pub length: Option<Typed<Length>>,
    /// Middle of its foot; of a ball, an ellipsoid or a ring its middle.
    pub at: Option<[Along; 3]>,
    /// The way it grows; left out, up.
    pub axis: Option<Axis>,
    /// Turn about its own axis.
    pub turn: Option<Turn>,
    /// Whether it is taken away.
    #[serde(default)]
    pub take_away: bool,
}

/// The kinds of solids.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Kind {
    /// Two sides of the foot, and the height.
    #[serde(alias = "block")]
    Box,
    /// A round bar or a disc.
    Cylinder,
    /// A round bar with a bore.
    Tube,
    /// A cone, or the foot of one.
    Cone,
    /// A ball.
    #[serde(alias = "sphere")]
    Ball,
    /// A ball drawn out or pressed flat.
    Ellipsoid,
    /// A round bar bent to a ring.
    Ring,
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
    /// How long it stands from when it is rammed till it is poured.
    pub stands: Option<Typed<Duration>>,
    /// What of the rigging is wanted elsewhere than the rules place it.
    #[serde(default)]
    pub place: PlaceFile,
}

/// `[mould.place]`: places from the front left inside corner of the flask, along it and across.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlaceFile {
    /// Middle of the sprue.
    pub sprue: Option<OnJoint>,
    /// Where gates enter castings.
    pub gates: Option<Vec<OnJoint>>,
    /// Where feeders stand, or which sections they feed.
    pub feeders: Option<Vec<FeederPlace>>,
}

/// `[melt]`
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MeltFile {
    /// Melt loss weighed in this shop.
    pub loss: Option<Share>,
    /// Metal kept for the ingot mould.
    pub pig: Option<Share>,
    /// How the stock comes.
    #[serde(default)]
    pub form: StockForm,
    /// What the scrap of it was, in the words of the table of scrap: "wheel", "tap".
    #[serde(default)]
    pub scrap: Vec<String>,
}

/// The form in which the stock of a charge comes, by the words of the law of the melt loss.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum StockForm {
    /// Ingot, pig, clean returns.
    Ingot,
    /// Castings broken up; where nothing is said.
    #[default]
    Heavy,
    /// Sheet and profile, painted or oily pieces.
    Thin,
    /// Turnings and filings.
    Swarf,
    /// Drink cans.
    Cans,
}

impl StockForm {
    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            StockForm::Ingot => "ingot",
            StockForm::Heavy => "heavy",
            StockForm::Thin => "thin",
            StockForm::Swarf => "swarf",
            StockForm::Cans => "cans",
        }
    }

    /// Whether nobody knows what clings to it.
    pub const fn is_dirty(self) -> bool {
        matches!(self, StockForm::Thin | StockForm::Swarf | StockForm::Cans)
    }
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

/// `[[chill]]`
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChillFile {
    /// Its metal: iron, steel, copper or graphite.
    #[serde(default = "iron")]
    pub of: String,
    /// Along the flask, across it, and upright.
    pub size: [Typed<Length>; 3],
    /// The middle of the face on which it lies, along and across the mould and over the joint.
    pub at: [Along; 3],
    /// On which side of the casting it lies.
    pub lies: ChillSide,
}

fn iron() -> String {
    "iron".to_owned()
}

/// On which side of its casting a chill lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum ChillSide {
    /// Toward the left wall of the flask.
    Left,
    /// Toward the right wall.
    Right,
    /// Toward the front.
    Front,
    /// Toward the back.
    Back,
    /// In the drag, under it.
    Below,
    /// In the cope, over it.
    Above,
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
