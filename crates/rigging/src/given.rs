//! What the mould is built from: one casting, how many, the flask, and the sizes of the rigging.

use measure::length::{Area, Length};
use measure::matter::Density;
use mould::flask::{Clearance, Flask, Layout};
use mould::gating::running_system::Basin;
use pattern::mesh::Mesh;

/// Everything that has to be known before anything is placed.
#[derive(Clone, Debug)]
pub struct Given {
    /// The flask.
    pub flask: Flask,
    /// How many rows of castings lie in it, and which way round.
    pub layout: Layout,
    /// Castings in the flask.
    pub count: usize,
    /// Sand wanted around them.
    pub sand: Clearance,
    /// One casting.
    pub casting: Casting,
    /// Sizes of the rigging.
    pub sizes: Sizes,
    /// How the halves of the mould part.
    pub parting: Parting,
    /// What metal, sand and cores weigh.
    pub densities: Densities,
}

/// One casting, as large as the cavity that it leaves.
#[derive(Clone, Debug)]
pub struct Casting {
    /// Its skin, mm, closed and wound outward, the joint at height nought.
    pub mesh: Mesh,
    /// Its sections, the heaviest first, in the coordinates of the mesh.
    pub sections: Vec<Heavy>,
    /// Its cores, in the coordinates of the mesh.
    pub cores: Vec<Core>,
}

/// A section of a casting as far as feeders and gates ask for it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heavy {
    /// Its heaviest place, mm.
    pub place_mm: [f64; 3],
    /// Modulus there.
    pub modulus: Length,
    /// Diameter of the largest ball inside it.
    pub inscribed: Length,
}

/// Sizes of the rigging, each from its law.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sizes {
    /// From the joint to the level in the basin.
    pub pour_height: Length,
    /// Diameter of the sprue where it leaves the basin.
    pub sprue_top: Length,
    /// Diameter of the sprue at its foot: the choke.
    pub sprue_foot: Length,
    /// The basin.
    pub basin: Basin,
    /// All runners together.
    pub runners: Area,
    /// All gates together.
    pub gates: Area,
    /// Runner past the last gate.
    pub past_last_gate: Length,
    /// Half of the mould in which the runners lie.
    pub runner_half: Half,
    /// The feeder of one casting, where it has one.
    pub feeder: Option<FeederSize>,
    /// Vents, where there are any.
    pub vents: Option<Vents>,
}

/// A feeder by its sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FeederSize {
    /// Diameter.
    pub diameter: Length,
    /// Height.
    pub height: Length,
    /// Side of its neck.
    pub neck: Length,
}

/// Vents pricked evenly over the castings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vents {
    /// How far they stand from each other.
    pub spacing: Length,
    /// Thickness of the wire.
    pub wire: Length,
    /// How far above the casting they stop.
    pub short: Length,
}

/// Half of a mould.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Half {
    /// Above the joint.
    Cope,
    /// Below the joint.
    Drag,
}

/// A core, its prints included.
#[derive(Clone, Debug)]
pub struct Core {
    /// What it is called.
    pub name: String,
    /// Its skin, mm, closed and wound outward.
    pub mesh: Mesh,
}

/// How the halves of a mould part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Parting {
    /// At height nought everywhere, whether a casting draws so or not.
    Flat,
    /// At height nought where the castings draw so, else along their parting lines, and at height
    /// nought along walls and runners.
    AlongTheLine,
}

/// What things weigh.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Densities {
    /// Liquid metal.
    pub metal: Density,
    /// Rammed sand.
    pub sand: Density,
    /// Core sand.
    pub core: Density,
}

impl Half {
    /// Which way from the joint it lies: +1 up, −1 down.
    pub fn way(self) -> f64 {
        match self {
            Half::Cope => 1.0,
            Half::Drag => -1.0,
        }
    }

    /// The other one.
    pub fn other(self) -> Half {
        match self {
            Half::Cope => Half::Drag,
            Half::Drag => Half::Cope,
        }
    }
}
