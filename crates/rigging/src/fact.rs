//! What is noticed about a mould: plain facts, each with its place and its figure. None of them
//! keeps the mould from being built.

use crate::piece::Piece;

/// Something about a mould that the founder should know; places in mm.
#[derive(Clone, Debug, PartialEq)]
pub enum Fact {
    /// A piece comes nearer to the wall, the top or the bottom of the flask than is wanted; below
    /// nought it goes through.
    ThinWall {
        /// Which piece.
        piece: Piece,
        /// Which side of the flask.
        side: Side,
        /// Sand left.
        sand_mm: f64,
        /// Sand wanted.
        wanted_mm: f64,
    },
    /// Two pieces that must not touch have less sand between them than is wanted.
    ThinSand {
        /// The one.
        piece: Piece,
        /// The other.
        other: Piece,
        /// Where the one lies.
        place_mm: [f64; 2],
        /// Sand between them; below nought they overlap as seen from above.
        sand_mm: f64,
        /// Sand wanted.
        wanted_mm: f64,
    },
    /// Two pieces that must not touch run into each other.
    Touch {
        /// The one.
        piece: Piece,
        /// The other.
        other: Piece,
        /// What they share, mm³.
        shared_mm3: f64,
    },
    /// Two pieces that metal has to run through do not meet.
    Apart {
        /// The one.
        piece: Piece,
        /// The other.
        other: Piece,
        /// Where the one lies.
        place_mm: [f64; 2],
    },
    /// A piece hooks behind sand as it is drawn.
    Hooks {
        /// Which piece.
        piece: Piece,
        /// Where.
        place_mm: [f64; 3],
    },
    /// No gate by the rules reaches a casting.
    NoGate {
        /// The casting, from one.
        casting: usize,
    },
    /// A runner ends sooner after its last gate than is wanted.
    ShortRunOff {
        /// Which runner.
        piece: Piece,
        /// How much is missing.
        missing_mm: f64,
    },
    /// A feeder stands lower than it was sized.
    LowFeeder {
        /// Which feeder.
        piece: Piece,
        /// How much is missing.
        missing_mm: f64,
    },
    /// The joint wanders, though the castings would draw from a flat one at another height.
    FlatElsewhere {
        /// Over the lowest point of the part as it is drawn.
        joint_mm: f64,
    },
    /// A core goes through the wall of the flask with its print.
    LongPrint {
        /// Which core.
        piece: Piece,
        /// How far it goes through the wall.
        through_mm: f64,
        /// The longest print that stays within; none where there is no room for any.
        longest_mm: Option<f64>,
    },
    /// A core is told of by its volume only, so that its body is missing here.
    CoreNotDrawn {
        /// What it is called.
        name: String,
    },
}

/// A side of the flask.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// One of the four walls.
    Wall,
    /// The top of the cope.
    Top,
    /// The bottom of the drag.
    Bottom,
}
