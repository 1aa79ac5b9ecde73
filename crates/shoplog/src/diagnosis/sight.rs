//! The words for what is seen on a casting, as `docs/diagnose-cases.md` explains them.

use serde::Deserialize;

/// The looks as they are typed.
pub const LOOKS: &[&str] = &[
    "round-holes",
    "many-small-holes",
    "ragged-hole",
    "sponge",
    "sink",
    "seam",
    "unfilled",
    "broken-edge",
    "drained",
    "fin",
    "veins",
    "bulge",
    "lump",
    "crack",
    "rough",
    "sand-keyed",
    "sand-in-metal",
    "dross-in-metal",
    "scab",
    "groove",
    "drag-marks",
    "offset",
    "wall-uneven",
    "wrong-size",
    "hard-edge",
];

/// The places as they are typed.
pub const PLACES: &[&str] = &[
    "cope-face",
    "drag-face",
    "side-wall",
    "joint",
    "at-gate",
    "opposite-gate",
    "far-from-gate",
    "heavy-section",
    "thin-section",
    "inner-corner",
    "edge",
    "at-core",
    "at-insert",
    "under-feeder",
    "large-flat",
    "low-down",
    "between-arms",
    "everywhere",
    "inside",
];

/// The walls as they are typed.
pub const WALLS: &[&str] = &[
    "smooth",
    "shiny",
    "dendritic",
    "oxidised",
    "bright",
    "sand-lined",
    "dross-lined",
    "round-edged",
    "sharp-edged",
    "rough",
];

/// The sizes as they are typed.
pub const HOW_LARGE: &[&str] = &["small", "medium", "large"];

/// When it was seen, as it is typed.
pub const WHENS: &[&str] = &["knock-out", "cleaning", "machining", "sawing", "use"];

/// On how many castings of the pour, as it is typed.
pub const CASTINGS: &[&str] = &["one", "some", "all"];

/// The kinds of metal as they are typed.
pub const METALS: &[&str] = &[
    "aluminium",
    "zinc",
    "pewter",
    "brass",
    "bronze",
    "copper",
    "iron",
];

/// What a plan may have found, as it is typed.
pub const FOUNDS: &[&str] = &[
    "hot-spot-there",
    "feeder-short",
    "air-trapped-there",
    "cold-there",
    "gate-fast",
    "lift-over-weights",
    "thin-there",
    "restraint-there",
];

/// What is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Look {
    /// Holes with round walls.
    RoundHoles,
    /// Many fine holes.
    ManySmallHoles,
    /// A hole with torn walls.
    RaggedHole,
    /// Open metal.
    Sponge,
    /// A dip in the skin.
    Sink,
    /// Two streams that met.
    Seam,
    /// Missing metal, edges round.
    Unfilled,
    /// Missing metal, edges sharp.
    BrokenEdge,
    /// A shell, or an empty upper part.
    Drained,
    /// A thin web.
    Fin,
    /// Thin fins in corners or on cored faces.
    Veins,
    /// A swollen face.
    Bulge,
    /// A rough lump.
    Lump,
    /// A crack or tear.
    Crack,
    /// Rough skin.
    Rough,
    /// Sand held by metal.
    SandKeyed,
    /// Grains or clumps inside.
    SandInMetal,
    /// Dross, slag or skins inside.
    DrossInMetal,
    /// Metal over a layer of sand.
    Scab,
    /// A shallow line.
    Groove,
    /// Scores along the draw.
    DragMarks,
    /// Halves that do not meet.
    Offset,
    /// A cored wall thick here and thin there.
    WallUneven,
    /// Sizes off all over.
    WrongSize,
    /// Edges that no file touches.
    HardEdge,
}

/// Where it is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// On top.
    CopeFace,
    /// Below.
    DragFace,
    /// On a side.
    SideWall,
    /// On the joint.
    Joint,
    /// By a gate.
    AtGate,
    /// Where the stream struck.
    OppositeGate,
    /// Where the metal came last.
    FarFromGate,
    /// In a heavy place.
    HeavySection,
    /// In a thin place.
    ThinSection,
    /// In a re-entrant corner.
    InnerCorner,
    /// On an edge.
    Edge,
    /// By a core.
    AtCore,
    /// By a chill, chaplet or cast-in piece.
    AtInsert,
    /// Under a feeder.
    UnderFeeder,
    /// On a large flat.
    LargeFlat,
    /// Deep in the mould.
    LowDown,
    /// Between places that are held apart.
    BetweenArms,
    /// All over.
    Everywhere,
    /// Under the skin.
    Inside,
}

/// The wall of a hole, or the skin of the fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Wall {
    /// Smooth.
    Smooth,
    /// Smooth and shiny.
    Shiny,
    /// Grown with needles and trees.
    Dendritic,
    /// Dark or coloured by heat.
    Oxidised,
    /// A fresh break.
    Bright,
    /// With sand in it.
    SandLined,
    /// With dross or slag in it.
    DrossLined,
    /// With round edges.
    RoundEdged,
    /// With sharp edges.
    SharpEdged,
    /// Rough.
    Rough,
}

/// What a plan had found beforehand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Found {
    /// It freezes last there.
    HotSpotThere,
    /// The feeder does not reach or is too small.
    FeederShort,
    /// Air gathers there.
    AirTrappedThere,
    /// The metal comes cold there.
    ColdThere,
    /// A gate is too fast.
    GateFast,
    /// The lift is more than the weights.
    LiftOverWeights,
    /// The wall is thinner than the metal runs.
    ThinThere,
    /// It is held while it shrinks there.
    RestraintThere,
}

/// How large it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Size {
    /// Under 1 mm.
    Small,
    /// 1 to 5 mm.
    Medium,
    /// Over 5 mm.
    Large,
}

/// When it was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum When {
    /// As the casting left the mould.
    KnockOut,
    /// As it was cleaned.
    Cleaning,
    /// As it was machined.
    Machining,
    /// As it was sawn open.
    Sawing,
    /// In use.
    Use,
}

/// On how many castings of the pour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Castings {
    /// On one.
    One,
    /// On some.
    Some,
    /// On all.
    All,
}

/// The kind of metal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Aluminium and its alloys.
    Aluminium,
    /// Zinc and its alloys.
    Zinc,
    /// Pewter and other tin.
    Pewter,
    /// Brass.
    Brass,
    /// Bronze and gunmetal.
    Bronze,
    /// Copper.
    Copper,
    /// Cast iron.
    Iron,
}
