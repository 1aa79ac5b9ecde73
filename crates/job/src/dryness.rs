//! The ten points that have to be dry before a pour card is printed, each ticked by its name.

use thiserror::Error;

use crate::words::Language;
use crate::words::said::Said;

/// Something that water must have left before metal comes near it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DryPoint {
    /// The floor under the path and round the mould.
    Floor,
    /// The ladle, or the lip of the crucible it is poured from.
    Ladle,
    /// Tongs and shank.
    Tongs,
    /// Skimmer and every other thing that is dipped.
    Skimmer,
    /// Ingot moulds.
    IngotMoulds,
    /// The crucible.
    Crucible,
    /// The charge.
    Charge,
    /// Flux and additions.
    Flux,
    /// The mould.
    Mould,
    /// The cores.
    Cores,
}

/// Why a card is not printed.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum NotDry {
    /// A name that is none of the ten.
    #[error(
        "\"{0}\" is none of the ten points: look at each and name it, of {names}",
        names = names()
    )]
    Unknown(String),
    /// Points that were not named.
    #[error("no card: not ticked as dry are {}", told(.0))]
    Missing(Vec<DryPoint>),
}

impl DryPoint {
    /// All ten, in the order in which one walks past them.
    pub const ALL: [DryPoint; 10] = [
        DryPoint::Floor,
        DryPoint::Ladle,
        DryPoint::Tongs,
        DryPoint::Skimmer,
        DryPoint::IngotMoulds,
        DryPoint::Crucible,
        DryPoint::Charge,
        DryPoint::Flux,
        DryPoint::Mould,
        DryPoint::Cores,
    ];

    /// The name by which it is ticked.
    pub fn name(self) -> &'static str {
        match self {
            DryPoint::Floor => "floor",
            DryPoint::Ladle => "ladle",
            DryPoint::Tongs => "tongs",
            DryPoint::Skimmer => "skimmer",
            DryPoint::IngotMoulds => "ingot-moulds",
            DryPoint::Crucible => "crucible",
            DryPoint::Charge => "charge",
            DryPoint::Flux => "flux",
            DryPoint::Mould => "mould",
            DryPoint::Cores => "cores",
        }
    }

    /// What has to be seen before it is ticked. Common practice of the trade.
    pub fn words(self) -> Said {
        Said::new(match self {
            DryPoint::Floor => "dry-floor",
            DryPoint::Ladle => "dry-ladle",
            DryPoint::Tongs => "dry-tongs",
            DryPoint::Skimmer => "dry-skimmer",
            DryPoint::IngotMoulds => "dry-ingot-moulds",
            DryPoint::Crucible => "dry-crucible",
            DryPoint::Charge => "dry-charge",
            DryPoint::Flux => "dry-flux",
            DryPoint::Mould => "dry-mould",
            DryPoint::Cores => "dry-cores",
        })
    }
}

/// Whether each of the ten was named; a name twice is no harm.
///
/// # Errors
///
/// Names that are none of the ten, and points that were not named.
pub fn all_dry(named: &[String]) -> Result<(), NotDry> {
    let known = |name: &&String| {
        DryPoint::ALL
            .iter()
            .any(|point| point.name() == name.as_str())
    };
    if let Some(stranger) = named.iter().find(|name| !known(name)) {
        return Err(NotDry::Unknown(stranger.clone()));
    }
    let is_named = |point: &DryPoint| named.iter().any(|name| name == point.name());
    let missing: Vec<DryPoint> = DryPoint::ALL.into_iter().filter(|p| !is_named(p)).collect();
    match missing.is_empty() {
        true => Ok(()),
        false => Err(NotDry::Missing(missing)),
    }
}

fn names() -> String {
    DryPoint::ALL.map(DryPoint::name).join(", ")
}

fn told(missing: &[DryPoint]) -> String {
    let lines = missing.iter().map(|point| {
        format!(
            "\n  {:<13} {}",
            point.name(),
            Language::Uk.say(&point.words())
        )
    });
    lines.collect::<String>()
}
