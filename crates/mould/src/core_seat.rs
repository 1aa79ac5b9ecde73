//! How a core sits in the mould, and how hard the metal lifts it there.
//!
//! Metal presses on whatever face it reaches. A core it surrounds wholly is lifted by the metal it
//! displaces. A core that hangs from the cope has no metal over its print, so that nothing presses
//! it down there and the lift is larger; a core that stands on a base print has none under it, so
//! that the lift is smaller, until metal creeps under and lifts it all at once.

use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Force, Mass, Pressure};
use measure::source::Law;

/// Force on the cope print of a hung core.
pub const HUNG_CORE: Law = Law {
    name: "mould::core_seat::hung_core",
    formula: "F = g (ρ (V + A h) − m)",
    range: "metal at rest; V drowned, A the mouth of the print in the cope, h the head over it",
    sources: &["hydrostatics"],
};

/// Lift of a core that stands on a base print.
pub const STANDING_CORE: Law = Law {
    name: "mould::core_seat::standing_core",
    formula: "F = g (ρ (V + A p) − m) with metal under the print, F_sealed = g (ρ (V − A h) − m)",
    range: "metal at rest; plan for metal under the print: a thousandth of an inch lets it in",
    sources: &["hydrostatics"],
};

/// Force on each print of a core that bridges the cavity.
pub const BRIDGED_CORE: Law = Law {
    name: "mould::core_seat::bridged_core",
    formula: "f = g (ρ V − m) / n",
    range: "the core lies across, its drowned part midway between the prints",
    sources: &["core-pipe-problem", "hydrostatics"],
};

/// How a core sits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Seat {
    /// From a print in the cope.
    Hung {
        /// Mouth of the print.
        mouth: Area,
        /// From the mouth up to the level in the basin.
        head: Length,
    },
    /// Across the cavity on two prints, held down by the cope.
    Bridged,
    /// On one base print in the drag.
    Standing {
        /// Mouth of the print.
        mouth: Area,
        /// Depth of the print.
        depth: Length,
    },
    /// Wholly in the metal, on chaplets.
    Chaplets,
}

/// A core in its metal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drowned {
    /// The part that metal surrounds, without prints.
    pub volume: Volume,
    /// The whole core with its prints.
    pub mass: Mass,
    /// Density of the liquid metal.
    pub liquid: Density,
}

impl Seat {
    /// The lift to plan for, whichever way metal creeps; below nought the core lies by itself.
    pub fn lift(&self, core: &Drowned) -> Force {
        match *self {
            Seat::Hung { mouth, head } => hung_core(core, mouth, head),
            Seat::Standing { mouth, depth } => standing_core(core, mouth, depth),
            Seat::Bridged | Seat::Chaplets => float(core),
        }
    }
}

/// Lift of what metal surrounds on all sides, less the weight of the core.
pub fn float(core: &Drowned) -> Force {
    (core.liquid * core.volume - core.mass).weight()
}

/// Lift of what metal surrounds, the core itself taken as weightless.
pub fn displaced(core: &Drowned) -> Force {
    (core.liquid * core.volume).weight()
}

/// Pull on the cope print of a hung core. Law: [`HUNG_CORE`].
pub fn hung_core(core: &Drowned, mouth: Area, head: Length) -> Force {
    float(core) + Pressure::under(core.liquid, head) * mouth
}

/// Lift of a standing core once metal is under its print. Law: [`STANDING_CORE`].
pub fn standing_core(core: &Drowned, mouth: Area, depth: Length) -> Force {
    float(core) + (core.liquid * (mouth * depth)).weight()
}

/// Lift of a standing core as long as its print seals; below nought it is pressed down. Law:
/// [`STANDING_CORE`].
pub fn sealed_core(core: &Drowned, mouth: Area, head: Length) -> Force {
    float(core) - Pressure::under(core.liquid, head) * mouth
}

/// Force on each of the prints of a bridged core. Law: [`BRIDGED_CORE`].
pub fn bridged_core(core: &Drowned, prints: f64) -> Force {
    float(core) / prints
}
