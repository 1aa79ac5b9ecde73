//! Blocks and rods, for what is cut out of a pattern and what is put on it.

use measure::length::Length;

use crate::boolean::Body;
use crate::mesh::Mesh;
use crate::shape::{Form, Shape, ShapeError};
use crate::vector::{Vector, sub};

/// A block between its lowest and its highest corner.
pub(super) fn block(low: Vector, high: Vector) -> Result<Mesh, ShapeError> {
    let size = sub(high, low);
    let at = [(low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0, low[2]];
    standing(
        Form::Block {
            size: size.map(Length::from_mm),
        },
        at,
        [0.0, 0.0, 1.0],
    )
}

/// A rod from a place along a direction.
pub(super) fn rod(
    from: Vector,
    way: Vector,
    diameter_mm: f64,
    length_mm: f64,
) -> Result<Mesh, ShapeError> {
    let form = Form::Cylinder {
        diameter: Length::from_mm(diameter_mm),
        length: Length::from_mm(length_mm),
    };
    standing(form, from, way)
}

/// A plain solid on the middle of its foot.
pub(super) fn standing(form: Form, at: Vector, axis: Vector) -> Result<Mesh, ShapeError> {
    let shape = Shape {
        form,
        at: at.map(Length::from_mm),
        axis,
        turn_degrees: 0.0,
        is_taken_away: false,
    };
    shape.skin(1)
}

/// A direction of length one along an axis.
pub(super) fn along(axis: usize, way: f64) -> Vector {
    let mut direction = [0.0; 3];
    direction[axis] = way;
    direction
}

/// What a body holds as one closed skin; nothing where it holds nothing.
pub(super) fn skin(body: &Body) -> Option<Mesh> {
    (!body.is_empty()).then(|| body.mesh())
}
