//! A part built from plain solids: blocks, rounds, cones, balls, added and taken away.
//!
//! Each shape stands on the middle of its foot and grows along its axis; a ball, an ellipsoid and a
//! ring have their middle where they are placed. Shapes act in the order in which they are listed:
//! one that takes away takes from all that stands by then. What comes out is looked at and measured
//! like the mesh of any file.

use measure::length::Length;
use thiserror::Error;

use crate::boolean::{Body, BooleanError};
use crate::look::{Looked, look_over};
use crate::mesh::{Mesh, Soup};
use crate::unit::Unit;
use crate::vector::{Vector, add, cross, norm, scale};

mod facets;
mod reach;

/// A plain solid in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// What it is.
    pub form: Form,
    /// Middle of its foot; of a ball, an ellipsoid or a ring its middle.
    pub at: [Length; 3],
    /// The way it grows; need not be of any length.
    pub axis: Vector,
    /// Turn about its own axis, in degrees.
    pub turn_degrees: f64,
    /// Whether it is taken away rather than added.
    pub is_taken_away: bool,
}

/// A plain solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Form {
    /// Two sides of the foot, and the height.
    Block {
        /// Across, across, along the axis.
        size: [Length; 3],
    },
    /// A round bar or a disc.
    Cylinder {
        /// Across.
        diameter: Length,
        /// Along the axis.
        length: Length,
    },
    /// A round bar with a bore.
    Tube {
        /// Across, outside.
        diameter: Length,
        /// Across, inside.
        bore: Length,
        /// Along the axis.
        length: Length,
    },
    /// A cone, or the foot of one.
    Cone {
        /// Across at the foot.
        diameter: Length,
        /// Across at the top, nought for a point.
        top: Length,
        /// Along the axis.
        length: Length,
    },
    /// A ball.
    Ball {
        /// Across.
        diameter: Length,
    },
    /// A ball drawn out or pressed flat.
    Ellipsoid {
        /// Across, across, along the axis.
        size: [Length; 3],
    },
    /// A round bar bent to a ring.
    Ring {
        /// Across the whole ring, outside.
        diameter: Length,
        /// Of the bar.
        thickness: Length,
    },
}

/// A part built, and what was noticed on the way.
#[derive(Clone, Debug)]
pub struct Built {
    /// The part, looked at like any mesh.
    pub looked: Looked,
    /// What was noticed.
    pub facts: Vec<ShapeFact>,
    /// Shapes it was built from, in their order.
    pub shapes: Vec<Shape>,
}

/// Something about the shapes that the founder should know.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShapeFact {
    /// The shapes do not all touch.
    Apart {
        /// Separate bodies they make.
        bodies: usize,
    },
    /// A shape lies wholly in what stands already.
    AddsNothing {
        /// Which, counted from one.
        number: usize,
    },
    /// A shape takes away where nothing stands.
    TakesNothing {
        /// Which, counted from one.
        number: usize,
    },
}

/// Why shapes make no part; `number` counts from one.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum ShapeError {
    /// None were given.
    #[error("no solid is given")]
    None,
    /// More than anybody types.
    #[error(
        "{count} solids are more than the {MOST_SHAPES} that are taken; draw the part as a mesh"
    )]
    TooMany {
        /// How many.
        count: usize,
    },
    /// A size that no solid has.
    #[error("solid {number}: its {which} has to be from 0.1 mm to 10 m")]
    Size {
        /// Which shape.
        number: usize,
        /// Which of its sizes.
        which: &'static str,
    },
    /// A place further off than any part reaches.
    #[error("solid {number}: its place lies further off than 10 m")]
    Place {
        /// Which shape.
        number: usize,
    },
    /// A bore as wide as the tube.
    #[error("solid {number}: the bore has to be smaller than the outside")]
    Bore {
        /// Which shape.
        number: usize,
    },
    /// A bar too thick for its ring.
    #[error("solid {number}: the bar of a ring has to be thinner than half of its outside")]
    Bar {
        /// Which shape.
        number: usize,
    },
    /// An axis without a direction.
    #[error("solid {number}: its axis points nowhere")]
    Axis {
        /// Which shape.
        number: usize,
    },
    /// Nothing stands yet to take away from.
    #[error("solid {number}: it takes away before anything stands; put what is added first")]
    TakesFirst {
        /// Which shape.
        number: usize,
    },
    /// Everything is gone.
    #[error("solid {number}: it takes everything away that stands by then")]
    NothingLeft {
        /// Which shape.
        number: usize,
    },
    /// The shapes could not be joined.
    #[error("solid {number} and those before it: {error}")]
    Join {
        /// Which shape.
        number: usize,
        /// Why.
        error: BooleanError,
    },
}

/// More shapes than this are a drawing.
pub const MOST_SHAPES: usize = 500;

/// Smallest and largest size, mm: from a scratch to a bridge bearing.
const SIZES_MM: std::ops::RangeInclusive<f64> = 0.1..=10_000.0;

/// Share of the volume below which a shape has changed nothing: rounding, no metal.
const NOTHING: f64 = 1e-9;

/// Builds a part from shapes in their order.
///
/// # Errors
///
/// A shape that is none, or shapes of which nothing is left.
pub fn build(shapes: &[Shape]) -> Result<Built, ShapeError> {
    if shapes.len() > MOST_SHAPES {
        let count = shapes.len();
        return Err(ShapeError::TooMany { count });
    }
    let mut facts = Vec::new();
    let mut standing: Option<Body> = None;
    for (shape, number) in shapes.iter().zip(1..) {
        let wrong = |error| ShapeError::Join { number, error };
        let body = Body::of(&shape.skin(number)?).map_err(wrong)?;
        let next = match (&standing, shape.is_taken_away) {
            (None, true) => return Err(ShapeError::TakesFirst { number }),
            (None, false) => body,
            (Some(before), true) => before.without(&body).map_err(wrong)?,
            (Some(before), false) => before.with(&body).map_err(wrong)?,
        };
        if next.is_empty() {
            return Err(ShapeError::NothingLeft { number });
        }
        let before_mm3 = standing.as_ref().map_or(0.0, Body::volume_mm3);
        let changed_mm3 = (next.volume_mm3() - before_mm3).abs();
        if changed_mm3 <= NOTHING * next.volume_mm3() {
            facts.push(match shape.is_taken_away {
                true => ShapeFact::TakesNothing { number },
                false => ShapeFact::AddsNothing { number },
            });
        }
        standing = Some(next);
    }
    let looked = looked_at(standing.ok_or(ShapeError::None)?.mesh());
    let bodies = looked.solid.bodies;
    if bodies > 1 {
        facts.push(ShapeFact::Apart { bodies });
    }
    Ok(Built {
        looked,
        facts,
        shapes: shapes.to_vec(),
    })
}

fn looked_at(mesh: Mesh) -> Looked {
    let soup = Soup {
        format: None,
        declared_unit: None,
        points: mesh.points,
        triangles: mesh.triangles,
        pieces: 1,
    };
    look_over(soup, Some(Unit::Millimetre))
}

impl Shape {
    /// Its skin in its place, mm, closed and wound outward; `number` is told where it is none.
    ///
    /// # Errors
    ///
    /// Sizes, a place or an axis that no solid has.
    pub fn skin(&self, number: usize) -> Result<Mesh, ShapeError> {
        self.form.check(number)?;
        let at = self.at.map(|along| along.as_mm());
        if !at.iter().all(|along| along.abs() <= *SIZES_MM.end()) {
            return Err(ShapeError::Place { number });
        }
        let [u, v, w] = self.directions().ok_or(ShapeError::Axis { number })?;
        let mut mesh = facets::of(&self.form);
        for point in &mut mesh.points {
            let across = add(scale(u, point[0]), scale(v, point[1]));
            *point = add(at, add(across, scale(w, point[2])));
        }
        Ok(mesh)
    }

    /// Where its own three directions point. The first lies level unless the axis is upright, when
    /// it is that of x; whole quarters of a turn are exact, so that faces meant to meet do.
    fn directions(&self) -> Option<[Vector; 3]> {
        let length = norm(self.axis);
        if !(length.is_finite() && length > 0.0 && self.turn_degrees.is_finite()) {
            return None;
        }
        let w = scale(self.axis, 1.0 / length);
        let level = cross([0.0, 0.0, 1.0], w);
        let u = match norm(level) {
            size if size > 1e-12 => scale(level, 1.0 / size),
            _ => [1.0, 0.0, 0.0],
        };
        let v = cross(w, u);
        let quarters = self.turn_degrees / 90.0;
        let (sin, cos) = match quarters.round() == quarters {
            true => [(0.0, 1.0), (1.0, 0.0), (0.0, -1.0), (-1.0, 0.0)]
                [quarters.rem_euclid(4.0) as usize % 4],
            false => self.turn_degrees.to_radians().sin_cos(),
        };
        Some([
            add(scale(u, cos), scale(v, sin)),
            add(scale(v, cos), scale(u, -sin)),
            w,
        ])
    }
}

impl Form {
    fn check(&self, number: usize) -> Result<(), ShapeError> {
        for (which, size) in self.sizes() {
            if !SIZES_MM.contains(&size.as_mm()) {
                return Err(ShapeError::Size { number, which });
            }
        }
        match self {
            Form::Tube { diameter, bore, .. } if bore >= diameter => {
                Err(ShapeError::Bore { number })
            }
            Form::Ring {
                diameter,
                thickness,
            } if *thickness * 2.0 >= *diameter => Err(ShapeError::Bar { number }),
            _ => Ok(()),
        }
    }

    /// The sizes that have to be above nought; the top of a cone may be nought.
    fn sizes(&self) -> Vec<(&'static str, Length)> {
        match *self {
            Form::Block { size } | Form::Ellipsoid { size } => {
                size.map(|side| ("size", side)).to_vec()
            }
            Form::Cylinder { diameter, length } => {
                vec![("diameter", diameter), ("length", length)]
            }
            Form::Tube {
                diameter,
                bore,
                length,
            } => vec![("diameter", diameter), ("bore", bore), ("length", length)],
            Form::Cone {
                diameter,
                top,
                length,
            } => {
                let mut sizes = vec![("diameter", diameter), ("length", length)];
                sizes.extend((top > Length::ZERO).then_some(("top", top)));
                sizes
            }
            Form::Ball { diameter } => vec![("diameter", diameter)],
            Form::Ring {
                diameter,
                thickness,
            } => vec![("diameter", diameter), ("thickness", thickness)],
        }
    }
}
