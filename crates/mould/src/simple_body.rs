//! Simple bodies and their modulus: what a founder sees in a section before any mesh is drawn.
//!
//! A face that is joined to the rest of the casting, to a feeder or to its neck does not cool and
//! is left out.

use measure::length::Length;
use measure::source::Law;

/// Modulus of a simple body: volume over the surface that cools.
pub const SIMPLE_MODULUS: Law = Law {
    name: "mould::simple_body::simple_modulus",
    formula: "M = V / A: block 1/M = i/a + j/b + k/c, plate a/2, cube a/6, ball D/6, \
              round 1/M = 4/(D − d) + n/H",
    range: "faces that cool alike; a joined face is left out; a core in a narrow bore soon stops \
            drinking, then the bore is no cooling face either",
    sources: &["chvorinov-1940", "wlodawer-1966"],
};

/// A simple body with the faces that cool.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SimpleBody {
    /// A block, three sides each with how many of its two faces cool; a plate and a bar are blocks
    /// whose other sides are long.
    Block([Side; 3]),
    /// A ball.
    Ball {
        /// Diameter.
        diameter: Length,
    },
    /// A round bar, a disc or a tube.
    Round {
        /// Outside diameter.
        diameter: Length,
        /// The bore, where there is one.
        bore: Option<Bore>,
        /// Along its axis.
        height: Side,
    },
}

/// One dimension of a body and its two faces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Side {
    /// From face to face; nothing where the body is long in this direction, so that the faces do
    /// not count.
    pub across: Option<Length>,
    /// How many of the two faces cool.
    pub cooling: u8,
}

/// The bore of a tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bore {
    /// Diameter.
    pub diameter: Length,
    /// Whether the core in it still drinks heat.
    pub cools: bool,
}

impl Side {
    /// A side with both faces cooling.
    pub fn open(across: Length) -> Side {
        Side {
            across: Some(across),
            cooling: 2,
        }
    }

    /// A direction in which the body is long.
    pub const LONG: Side = Side {
        across: None,
        cooling: 0,
    };

    /// Cooling surface for each volume that its faces give, 1/m.
    fn cooling_per_m(self) -> f64 {
        self.across
            .map_or(0.0, |across| f64::from(self.cooling) / across.as_m())
    }
}

/// The modulus, or nothing where no face cools. Law: [`SIMPLE_MODULUS`].
pub fn simple_modulus(body: &SimpleBody) -> Option<Length> {
    let per_m = match body {
        SimpleBody::Block(sides) => sides.iter().map(|side| side.cooling_per_m()).sum(),
        SimpleBody::Ball { diameter } => 6.0 / diameter.as_m(),
        SimpleBody::Round {
            diameter,
            bore,
            height,
        } => shell_per_m(diameter.as_m(), *bore) + height.cooling_per_m(),
    };
    (per_m > 0.0 && f64::is_finite(per_m)).then(|| Length::from_m(1.0 / per_m))
}

/// Cooling surface of the round faces for each volume, 1/m.
fn shell_per_m(outside: f64, bore: Option<Bore>) -> f64 {
    let Some(bore) = bore else {
        return 4.0 / outside;
    };
    let inside = bore.diameter.as_m();
    let cooled = match bore.cools {
        true => outside + inside,
        false => outside,
    };
    4.0 * cooled / (outside * outside - inside * inside)
}
