//! A case as a file: what was seen, what was written down, and what the plan had found.

use serde::Deserialize;

use crate::diagnosis::sight::{Castings, Found, Kind, Look, Place, Size, Wall, When};

/// What a diagnosis starts from. A labelled case has its cause beside it.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CaseFile {
    /// What is seen.
    pub seen: Seen,
    /// What was written down.
    #[serde(default)]
    pub record: Record,
    /// What the plan had found.
    #[serde(default)]
    pub plan: PlanFound,
    /// The cause, where it is known.
    pub label: Option<Label>,
}

/// What is seen on the castings.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Seen {
    /// The metal.
    pub metal: Option<Kind>,
    /// The look.
    pub look: Vec<Look>,
    /// The place.
    #[serde(default)]
    pub place: Vec<Place>,
    /// How large it is.
    pub size: Option<Size>,
    /// The wall of a hole, or the skin of the fault.
    #[serde(default)]
    pub surface: Vec<Wall>,
    /// When it was seen.
    pub when: Option<When>,
    /// On how many castings.
    pub castings: Option<Castings>,
    /// Whether the same sand shows it with another heat.
    pub other_heat: Option<bool>,
    /// Whether the same heat shows it in another sand.
    pub other_sand: Option<bool>,
    /// Whether sprue or spoon sample show it.
    pub sprue: Option<bool>,
}

/// What was written down, in the units of its keys.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Record {
    /// Moisture of the sand, per cent of wet mass.
    pub moisture_percent: Option<f64>,
    /// The same on good days.
    pub moisture_good_percent: Option<f64>,
    /// Permeability number.
    pub permeability: Option<f64>,
    /// The same on good days.
    pub permeability_good: Option<f64>,
    /// Green compression strength, kPa.
    pub strength_kpa: Option<f64>,
    /// The same on good days.
    pub strength_good_kpa: Option<f64>,
    /// Compactability, per cent.
    pub compactability_percent: Option<f64>,
    /// Loss on burning, per cent of dry mass.
    pub burning_loss_percent: Option<f64>,
    /// How coarse the grain is.
    pub grain: Option<Grain>,
    /// How it was rammed.
    pub ramming: Option<Ramming>,
    /// Hours since water was mixed in.
    pub hours_since_temper: Option<f64>,
    /// Hours for which the closed mould waited.
    pub hours_closed: Option<f64>,
    /// Pours since the heap was renewed.
    pub heap_pours: Option<f64>,
    /// The state of the cores.
    pub core: Option<Core>,
    /// Vents.
    pub vents: Option<Vents>,
    /// Temperature of the metal as it was poured, °C.
    pub pour_temperature_c: Option<f64>,
    /// The same as planned.
    pub pour_temperature_planned_c: Option<f64>,
    /// Time of the pour, s.
    pub pour_time_s: Option<f64>,
    /// The same as planned.
    pub pour_time_planned_s: Option<f64>,
    /// How the pour went.
    pub pour: Option<PourKind>,
    /// Speed at the gate, m/s.
    pub gate_speed_m_s: Option<f64>,
    /// Minutes for which the metal was held liquid.
    pub minutes_molten: Option<f64>,
    /// Whether it was degassed.
    pub degassed: Option<bool>,
    /// Whether it was skimmed.
    pub skimmed: Option<bool>,
    /// The state of the scrap.
    pub scrap: Option<Scrap>,
    /// Feeders.
    pub feeder: Option<Feeder>,
    /// Weights laid on as a share of what the plan asked for.
    pub weights_share: Option<f64>,
    /// Time in the mould as a share of what the plan asked for.
    pub opened_share: Option<f64>,
    /// Contraction built into the pattern, per cent.
    pub allowance_percent: Option<f64>,
    /// Contraction found, per cent.
    pub contraction_percent: Option<f64>,
    /// Relative humidity of the air, per cent.
    pub air_humidity_percent: Option<f64>,
    /// Rain on the heap or the open mould.
    pub rain: Option<bool>,
}

/// What the plan had found.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlanFound {
    /// The findings.
    #[serde(default)]
    pub found: Vec<Found>,
}

/// The cause of a labelled case.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Label {
    /// The id of the cause, or [`NO_CAUSE`].
    pub cause: String,
    /// Where the description was read.
    pub read_in: String,
}

/// The label of a case whose cause cannot be told.
pub const NO_CAUSE: &str = "none";

/// How coarse sand is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Grain {
    /// Fine.
    Fine,
    /// Medium.
    Medium,
    /// Coarse.
    Coarse,
}

/// How sand was rammed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ramming {
    /// Too soft.
    Soft,
    /// As it should be.
    Even,
    /// Too hard.
    Hard,
}

/// The state of the cores.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Core {
    /// Baked through.
    WellBaked,
    /// Baked too short.
    BakedShort,
    /// Damp.
    Damp,
    /// Without a vent.
    Unvented,
    /// No cores.
    None,
}

/// Vents of the mould.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Vents {
    /// None.
    None,
    /// A few.
    Few,
    /// Many.
    Many,
}

/// How a pour went.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PourKind {
    /// Without a break.
    Steady,
    /// Stopped and went on.
    Broken,
    /// Splashed beside or into the sprue.
    Splashed,
    /// The sprue was not kept full.
    Slow,
    /// The metal did not suffice.
    RanShort,
}

/// The state of scrap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Scrap {
    /// Clean.
    Clean,
    /// Dirty, painted or greasy.
    Dirty,
    /// Damp.
    Damp,
}

/// Feeders.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Feeder {
    /// None.
    None,
    /// Smaller than planned or needed.
    Small,
    /// As planned or needed.
    Enough,
}
