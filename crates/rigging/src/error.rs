//! Why there is no mould to be had.

use pattern::boolean::BooleanError;
use pattern::draw::joint::JointError;
use pattern::shape::ShapeError;
use thiserror::Error;

use crate::piece::Piece;

/// Why no mould is built.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum MouldError {
    /// Castings and rigging leave no sand between them.
    #[error(
        "{count} casting(s) of {each_mm:.0?} mm with runner and sprue leave no sand between them \
         in a flask of {inside_mm:.0?} mm; take a larger flask or fewer castings"
    )]
    NoRoom {
        /// Castings.
        count: usize,
        /// Box of one of them, along the flask and across it.
        each_mm: [f64; 2],
        /// Inside of the flask.
        inside_mm: [f64; 2],
    },
    /// The basin reaches down to the runner.
    #[error(
        "the basin reaches down to {basin_mm:.0} mm above the joint and the runner up to \
         {runner_mm:.0} mm: no height is left for a sprue; pour from higher, \
         with a deeper cope or a larger pour_height"
    )]
    NoFall {
        /// Foot of the basin above the joint.
        basin_mm: f64,
        /// Top of the runner above the joint.
        runner_mm: f64,
    },
    /// A section that the casting does not have.
    #[error("feeder at section {number}: the casting has {sections} section(s)")]
    NoSection {
        /// Which was asked for, from one.
        number: usize,
        /// How many there are.
        sections: usize,
    },
    /// A feeder asked for where none was sized.
    #[error("feeder at {place_mm:.0?} mm: no feeder was sized for this casting, as it wants none")]
    NoFeeder {
        /// Where it was wanted.
        place_mm: [f64; 2],
    },
    /// A place outside the flask.
    #[error("{piece} at {place_mm:.0?} mm lies outside of the flask, {inside_mm:.0?} mm inside")]
    Outside {
        /// What.
        piece: Piece,
        /// Where it was wanted.
        place_mm: [f64; 2],
        /// Inside of the flask.
        inside_mm: [f64; 2],
    },
    /// No joint that sand holds; places in the mould, of the first casting.
    #[error("{error}")]
    Parting {
        /// What is wrong.
        error: JointError,
        /// Where a flat joint would do, mm above the joint there is.
        flat_at_mm: Option<f64>,
    },
    /// A size that no solid has.
    #[error("{piece}: {error}")]
    Shape {
        /// What.
        piece: Piece,
        /// What is wrong.
        error: ShapeError,
    },
    /// Solids that could not be joined.
    #[error("{piece}: {error}")]
    Join {
        /// What was being joined.
        piece: Piece,
        /// What is wrong.
        error: BooleanError,
    },
}
