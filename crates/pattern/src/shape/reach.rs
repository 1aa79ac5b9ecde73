//! How far a point lies from a plain solid: which of the solids of a part meet at a place.

use super::{Form, Shape};
use crate::vector::{Vector, dot, norm, sub};

impl Shape {
    /// Distance in mm from a point to the shape, nought inside it, near enough to tell which
    /// shapes meet at a place: exact for all but a cone, where it is a little long, and an
    /// ellipsoid, where it is a little short. A shape whose axis points nowhere is infinitely far.
    pub fn distance_mm(&self, point: Vector) -> f64 {
        let Some(own) = self.directions() else {
            return f64::INFINITY;
        };
        let from_foot = sub(point, self.at.map(|along| along.as_mm()));
        self.form.distance_mm(own.map(|axis| dot(axis, from_foot)))
    }
}

impl Form {
    /// The same in its own directions, from the middle of its foot, or from its middle.
    fn distance_mm(&self, at: Vector) -> f64 {
        let [x, y, z] = at;
        let round = x.hypot(y);
        match *self {
            Form::Block { size } => {
                let [a, b, c] = size.map(|side| side.as_mm());
                norm([
                    (x.abs() - a / 2.0).max(0.0),
                    (y.abs() - b / 2.0).max(0.0),
                    beyond(z, 0.0, c),
                ])
            }
            Form::Cylinder { diameter, length } => {
                beyond(round, 0.0, diameter.as_mm() / 2.0).hypot(beyond(z, 0.0, length.as_mm()))
            }
            Form::Tube {
                diameter,
                bore,
                length,
            } => beyond(round, bore.as_mm() / 2.0, diameter.as_mm() / 2.0).hypot(beyond(
                z,
                0.0,
                length.as_mm(),
            )),
            Form::Cone {
                diameter,
                top,
                length,
            } => {
                let (foot, top, length) = (diameter.as_mm(), top.as_mm(), length.as_mm());
                let up = (z / length).clamp(0.0, 1.0);
                let radius = (foot + (top - foot) * up) / 2.0;
                beyond(round, 0.0, radius).hypot(beyond(z, 0.0, length))
            }
            Form::Ball { diameter } => (norm(at) - diameter.as_mm() / 2.0).max(0.0),
            Form::Ellipsoid { size } => {
                let half = size.map(|side| side.as_mm() / 2.0);
                let shortest = half.into_iter().fold(f64::INFINITY, f64::min);
                let scaled = norm([x / half[0], y / half[1], z / half[2]]);
                ((scaled - 1.0) * shortest).max(0.0)
            }
            Form::Ring {
                diameter,
                thickness,
            } => {
                let bar = thickness.as_mm() / 2.0;
                let middle = diameter.as_mm() / 2.0 - bar;
                ((round - middle).hypot(z) - bar).max(0.0)
            }
        }
    }
}

/// How far a coordinate lies beyond two limits.
fn beyond(at: f64, low: f64, high: f64) -> f64 {
    (low - at).max(at - high).max(0.0)
}
