//! Facing sand: how much goes on a pattern in a layer of one thickness.

use std::f64::consts::PI;

use measure::length::{Area, Length, Volume};
use measure::source::Law;

/// Volume of an even layer.
pub const FACING: Law = Law {
    name: "mould::facing::facing",
    formula: "V = A t + (π / 4) E t² + (π / 6) c t³",
    range: "outward right-angled edges of length E and corners c rounded over by the layer; hollow \
            edges take less than this",
    sources: &["steiner-parallel-bodies"],
};

/// The face of a pattern as far as sand is laid on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// Area that gets sand.
    pub area: Area,
    /// Length of its outward edges, all together.
    pub edges: Length,
    /// Its outward corners.
    pub corners: f64,
}

impl Face {
    /// All six sides of a block, half of it in the cope.
    pub fn around_block(sides: [Length; 3]) -> Face {
        let [a, b, c] = sides;
        Face {
            area: (a * b + b * c + c * a) * 2.0,
            edges: (a + b + c) * 4.0,
            corners: 8.0,
        }
    }

    /// Five sides of a block that lies with its first two sides on the joint.
    pub fn below_joint(sides: [Length; 3]) -> Face {
        let [a, b, c] = sides;
        Face {
            area: a * b + (b * c + c * a) * 2.0,
            edges: (a + b) * 2.0 + c * 4.0,
            corners: 4.0,
        }
    }
}

/// Volume of a layer. Law: [`FACING`].
pub fn facing(face: &Face, thickness: Length) -> Volume {
    let square = thickness * thickness;
    face.area * thickness
        + square * face.edges * (PI / 4.0)
        + square * thickness * (PI / 6.0 * face.corners)
}
