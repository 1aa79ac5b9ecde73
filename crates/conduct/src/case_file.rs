//! What a file may say, as typed: every length in millimetres, all else in units its key names.

use std::collections::BTreeMap;

use serde::Deserialize;

/// A file.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CaseFile {
    /// What it is.
    pub title: String,
    /// More about it, where its answer is from.
    #[serde(default)]
    pub about: String,
    /// The box.
    #[serde(rename = "box")]
    pub grid: BoxFile,
    /// Materials by name.
    pub materials: BTreeMap<String, MaterialFile>,
    /// Surroundings inside the box by name, such as air.
    #[serde(default)]
    pub voids: BTreeMap<String, ConditionFile>,
    /// What is put into the box, one after the other.
    pub fill: Vec<FillFile>,
    /// What the sides of the box meet; a side that is not named is insulated.
    #[serde(default)]
    pub faces: FacesFile,
    /// Conductance where unlike materials touch.
    #[serde(default)]
    pub contact: Vec<ContactFile>,
    /// How it is run.
    pub run: RunFile,
    /// Places whose temperature is told.
    #[serde(default)]
    pub probe: Vec<ProbeFile>,
    /// Lines along which a front is told.
    #[serde(default)]
    pub front: Vec<FrontFile>,
    /// What should come out.
    #[serde(default)]
    pub expect: Vec<ExpectFile>,
}

/// The cells along each axis, in pieces from the low end on.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoxFile {
    /// Along x.
    pub x: Vec<PieceFile>,
    /// Along y.
    pub y: Vec<PieceFile>,
    /// Along z.
    pub z: Vec<PieceFile>,
    /// Sides beyond which the case goes on as its mirror image.
    #[serde(default)]
    pub mirrored: Vec<SideFile>,
}

/// A side of the box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SideFile {
    /// At the low end of x.
    XLow,
    /// At the high end of x.
    XHigh,
    /// At the low end of y.
    YLow,
    /// At the high end of y.
    YHigh,
    /// At the low end of z.
    ZLow,
    /// At the high end of z.
    ZHigh,
}

/// Cells up to somewhere.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PieceFile {
    /// Where they end, from the low end of the box.
    pub to_mm: f64,
    /// How many.
    pub cells: usize,
    /// How many times as wide each is as the one before it.
    #[serde(default = "even")]
    pub widening: f64,
}

/// A material in one of three ways: `plain`; `solid`, `liquid` and how it freezes; or `table`.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MaterialFile {
    /// One that does not change.
    pub plain: Option<PhaseFile>,
    /// Below its freezing range.
    pub solid: Option<PhaseFile>,
    /// Above its freezing range.
    pub liquid: Option<PhaseFile>,
    /// Latent heat by volume.
    pub latent_j_m3: Option<f64>,
    /// Lower end of its freezing range.
    pub solidus_c: Option<f64>,
    /// Upper end of its freezing range; left out, it freezes at the solidus.
    pub liquidus_c: Option<f64>,
    /// Its whole table.
    pub table: Option<Vec<KnotFile>>,
}

/// Heat capacity and conductivity.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PhaseFile {
    /// Heat capacity by volume.
    pub j_m3k: f64,
    /// Conductivity.
    pub w_mk: f64,
}

/// A line of a table.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KnotFile {
    /// Temperature.
    pub celsius: f64,
    /// Heat content by volume.
    pub j_m3: f64,
    /// Conductivity.
    pub w_mk: f64,
    /// Solid share.
    #[serde(default = "even")]
    pub solid: f64,
}

/// How a face stands to what lies outside: `held_c`, `flux_w_m2`, or `w_m2k` with `surroundings_c`
/// and perhaps `emissivity`; nothing of it for an insulated face.
#[derive(Debug, Clone, Copy, Default, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ConditionFile {
    /// Temperature at which the face is held.
    pub held_c: Option<f64>,
    /// Heat that comes in.
    pub flux_w_m2: Option<f64>,
    /// Coefficient of convection.
    pub w_m2k: Option<f64>,
    /// Temperature of the surroundings.
    pub surroundings_c: Option<f64>,
    /// Emissivity.
    pub emissivity: Option<f64>,
}

/// The six sides.
#[derive(Debug, Clone, Copy, Default, PartialEq, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct FacesFile {
    /// Side at the low end of x.
    pub x_low: ConditionFile,
    /// Side at the high end of x.
    pub x_high: ConditionFile,
    /// Side at the low end of y.
    pub y_low: ConditionFile,
    /// Side at the high end of y.
    pub y_high: ConditionFile,
    /// Side at the low end of z.
    pub z_low: ConditionFile,
    /// Side at the high end of z.
    pub z_high: ConditionFile,
}

/// A filling: cells whose middle lies in the shape, or in the whole box where there is none.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FillFile {
    /// A material or a void.
    pub with: String,
    /// Temperature it starts from; a void has none.
    pub start_c: Option<f64>,
    /// Low and high corner of a block.
    pub block_mm: Option<[[f64; 3]; 2]>,
    /// A ball.
    pub ball_mm: Option<BallFile>,
    /// A cylinder through the whole box.
    pub cylinder_mm: Option<CylinderFile>,
    /// Take what lies outside the shape instead.
    #[serde(default)]
    pub outside: bool,
}

/// A ball.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BallFile {
    /// Its middle.
    pub centre: [f64; 3],
    /// Its radius.
    pub radius: f64,
}

/// A cylinder.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CylinderFile {
    /// The axis it lies along.
    pub along: AxisFile,
    /// A point on its middle line.
    pub centre: [f64; 3],
    /// Its radius.
    pub radius: f64,
}

/// An axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum AxisFile {
    /// First.
    X,
    /// Second.
    Y,
    /// Third.
    Z,
}

/// Conductance between two materials.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ContactFile {
    /// The two.
    pub between: [String; 2],
    /// Conductance.
    pub w_m2k: f64,
}

/// How a case is run.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RunFile {
    /// Which scheme; left out, that which suits the number of cells.
    pub mode: Option<ModeFile>,
    /// Ends at a time.
    pub until_s: Option<f64>,
    /// Ends when all is solid, at a time at the latest.
    pub until_solid_s: Option<f64>,
    /// Moments at which probes and fronts are told, beside the end.
    #[serde(default)]
    pub moments_s: Vec<f64>,
    /// Longest step.
    pub longest_step_s: Option<f64>,
    /// Whether half a cell beside what freezes counts less in the first moments of contact.
    #[serde(default)]
    pub early_contact: bool,
    /// Most memory it may take.
    pub most_gib: Option<f64>,
}

/// Which scheme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum ModeFile {
    /// Stages where heat is quick, one step elsewhere.
    Multirate,
    /// Plain explicit steps in double precision.
    Reference,
}

/// A place whose temperature is told, straight between the middles of cells.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ProbeFile {
    /// What it is called.
    pub name: String,
    /// Where it is.
    pub at_mm: [f64; 3],
}

/// A line along an axis through a point; told is how much of a material is solid along it or, with
/// `celsius`, where along the axis that temperature is first passed.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FrontFile {
    /// What it is called.
    pub name: String,
    /// Its axis.
    pub along: AxisFile,
    /// A point it goes through.
    pub through_mm: [f64; 3],
    /// The material that freezes.
    pub material: Option<String>,
    /// A temperature to look for.
    pub celsius: Option<f64>,
}

/// What should come out: of a `probe`, of a `front`, or a `figure`.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExpectFile {
    /// Name of a probe, whose temperature is expected, °C.
    pub probe: Option<String>,
    /// Name of a front, whose place is expected, mm.
    pub front: Option<String>,
    /// A figure of the whole: `last_freeze_s` or `through_j`.
    pub figure: Option<FigureFile>,
    /// At which moment, for a probe or a front; left out, at the end.
    pub at_s: Option<f64>,
    /// What is expected.
    pub is: f64,
    /// How far off it may be.
    pub within: f64,
}

/// A figure of the whole run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FigureFile {
    /// When the last cell was solid through, s.
    LastFreezeS,
    /// Heat that came in through all faces, J.
    ThroughJ,
}

fn even() -> f64 {
    1.0
}
