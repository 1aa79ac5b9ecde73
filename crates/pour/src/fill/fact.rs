//! What is noticed while a mould fills, as plain facts; places in mm in the mould's coordinates.

use super::air::Pocket;
use super::network::part_full::PartFull;

/// Something noticed.
#[derive(Clone, Debug, PartialEq)]
pub enum Fact {
    /// Hollow that the metal does not fill.
    Unfilled {
        /// How much, mm³.
        volume_mm3: f64,
        /// Its lowest place.
        place_mm: [f64; 3],
        /// Whether it lies above the level in the basin; else no gate leads to it.
        above_basin: bool,
    },
    /// A channel that does not run full while the gates run free.
    PartFull(PartFull),
    /// Air without a way out.
    ShutIn(Pocket),
    /// A place where two fronts meet.
    Meeting(Meeting),
    /// A place at which metal has frozen too far to run on.
    Misrun(Misrun),
    /// The thinnest wall that the longest way of the metal would still have run through.
    LeastWall(LeastWall),
}

/// Two fronts that meet, as around a core or between two gates: a cold shut where they are cold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meeting {
    /// The middle of the seam.
    pub place_mm: [f64; 3],
    /// Lowest and highest corner of the seam.
    pub bounds_mm: [[f64; 3]; 2],
    /// When they meet first, s.
    pub at_s: f64,
    /// Temperature of the coldest metal at the seam, °C.
    pub coldest_c: f64,
    /// Its solid share.
    pub solid: f64,
    /// How far it is below the liquidus, as a part of the freezing range, nought to one.
    pub deficit: f64,
}

/// Metal that has frozen too far to run on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Misrun {
    /// Where it stops first.
    pub place_mm: [f64; 3],
    /// When, s.
    pub at_s: f64,
    /// Hollow that is reached by such metal only, mm³.
    pub volume_mm3: f64,
    /// The largest solid share with which metal would come to it.
    pub solid: f64,
}

/// The thinnest wall that still runs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeastWall {
    /// Its thickness, mm.
    pub wall_mm: f64,
    /// The longest way from a gate, mm.
    pub way_mm: f64,
    /// How long the metal is on it, s.
    pub takes_s: f64,
    /// Where it ends.
    pub place_mm: [f64; 3],
}
