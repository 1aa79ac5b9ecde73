//! `sand.toml`: a sand as it was tested, one table for each test.

use std::collections::BTreeMap;

use measure::length::Length;
use measure::length::Volume;
use measure::matter::Mass;
use measure::text::Typed;
use serde::Deserialize;

/// Name of the file in the shop's folder.
pub const SAND_FILE: &str = "sand.toml";

/// The commented file that a new sand starts with.
pub const STARTER: &str = include_str!("../../data/sand.toml");

/// A sand as typed.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SandFile {
    /// What it is called.
    pub name: String,
    /// Form of the grains, looked at through a glass.
    pub shape: Option<Shape>,
    /// What stayed on the sieves.
    pub sieving: Option<SievingRecord>,
    /// A handful weighed wet and dry.
    pub moisture: Option<MoistureRecord>,
    /// The layers in a jar.
    pub jar: Option<JarRecord>,
    /// What washed away.
    pub wash: Option<WashRecord>,
    /// What burnt away.
    pub burning: Option<BurningRecord>,
    /// A tin of known volume, rammed full.
    pub tin: Option<TinRecord>,
    /// Pucks of bonded sand that stood in known air.
    #[serde(default)]
    pub puck: Vec<PuckRecord>,
}

/// Form of the grains.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shape {
    /// Like beads.
    Rounded,
    /// Worn edges.
    SubAngular,
    /// Sharp edges.
    Angular,
    /// Grains stuck together.
    Compound,
}

/// A sieving.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SievingRecord {
    /// What was put on top, washed and dried.
    pub sample: Option<Typed<Mass>>,
    /// What stayed, by the number of the sieve.
    pub kept: BTreeMap<String, Typed<Mass>>,
    /// What fell through.
    pub pan: Typed<Mass>,
}

/// A handful weighed twice.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MoistureRecord {
    /// As taken.
    pub wet: Typed<Mass>,
    /// Dried until it stays.
    pub dry: Typed<Mass>,
    /// What the scale tells apart.
    pub step: Option<Typed<Mass>>,
}

/// Layers in a jar.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JarRecord {
    /// Height of the fine layer.
    pub fine: Typed<Length>,
    /// Height of all that settled.
    pub all: Typed<Length>,
}

/// A wash.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WashRecord {
    /// Dried, before.
    pub dried: Typed<Mass>,
    /// Washed clear and dried.
    pub washed: Typed<Mass>,
}

/// A burning.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BurningRecord {
    /// Dried, before.
    pub dry: Typed<Mass>,
    /// Burnt until it stays.
    pub burnt: Typed<Mass>,
}

/// A tin rammed full.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TinRecord {
    /// What it holds.
    pub volume: Typed<Volume>,
    /// The sand in it, struck off.
    pub holds: Typed<Mass>,
    /// Moisture of that sand, "4.5 % of wet mass".
    pub moisture: String,
}

/// A puck.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PuckRecord {
    /// Relative humidity of the air it stood in, "40 %".
    pub humidity: String,
    /// What it weighed dry.
    pub dry: Typed<Mass>,
    /// What it weighed when it had come to rest.
    pub rest: Typed<Mass>,
}
