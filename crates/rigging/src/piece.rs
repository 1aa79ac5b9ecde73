//! The pieces a mould is made of, and what each of them holds.

use std::fmt;

use measure::length::Volume;
use measure::matter::Mass;
use pattern::mesh::Mesh;

/// A piece of a mould; numbers count from one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Piece {
    /// A casting.
    Casting(usize),
    /// The basin over the sprue.
    Basin,
    /// The sprue.
    Sprue,
    /// The well under it.
    Well,
    /// A runner.
    Runner(usize),
    /// A gate.
    Gate(usize),
    /// A feeder with its neck.
    Feeder(usize),
    /// All vents together.
    Vents,
    /// A core, by its name.
    Core(String),
    /// All the metal inside of the flask as one body.
    Cavity,
    /// The sand above the joint.
    Cope,
    /// The sand below the joint.
    Drag,
}

/// A piece as a solid.
#[derive(Clone, Debug)]
pub struct Solid {
    /// Which.
    pub piece: Piece,
    /// Its skin, mm in the mould's coordinates, closed and wound outward.
    pub mesh: Mesh,
    /// What it holds.
    pub volume: Volume,
    /// What it weighs, filled with what belongs into it.
    pub mass: Mass,
}

/// Its name as a file has it: small letters, numbers and hyphens.
impl fmt::Display for Piece {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Piece::Casting(number) => write!(to, "casting-{number}"),
            Piece::Basin => to.write_str("basin"),
            Piece::Sprue => to.write_str("sprue"),
            Piece::Well => to.write_str("well"),
            Piece::Runner(number) => write!(to, "runner-{number}"),
            Piece::Gate(number) => write!(to, "gate-{number}"),
            Piece::Feeder(number) => write!(to, "feeder-{number}"),
            Piece::Vents => to.write_str("vents"),
            Piece::Core(name) => write!(to, "core-{}", plain(name)),
            Piece::Cavity => to.write_str("cavity"),
            Piece::Cope => to.write_str("cope"),
            Piece::Drag => to.write_str("drag"),
        }
    }
}

fn plain(name: &str) -> String {
    let letter = |c: char| if c.is_alphanumeric() { c } else { '-' };
    name.to_lowercase().chars().map(letter).collect()
}
