//! Where an object of an assembly lies: turned, scaled, moved.

use crate::vector::Vector;

/// A placement: three rows that say where the axes go, and a fourth that moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement(pub [f64; 12]);

impl Placement {
    /// Left as it is.
    pub const HERE: Placement =
        Placement([1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0]);

    /// Where `point` goes.
    pub fn point(self, point: Vector) -> Vector {
        let m = self.0;
        [0, 1, 2].map(|i| point[0] * m[i] + point[1] * m[3 + i] + point[2] * m[6 + i] + m[9 + i])
    }

    /// The placement that does `inner` first, then this one.
    pub fn after(self, inner: Placement) -> Placement {
        let m = inner.0;
        let origin = self.point([0.0; 3]);
        let mut joined = [0.0; 12];
        for row in 0..4 {
            let moved = self.point([m[3 * row], m[3 * row + 1], m[3 * row + 2]]);
            for axis in 0..3 {
                let is_direction = if row < 3 { origin[axis] } else { 0.0 };
                joined[3 * row + axis] = moved[axis] - is_direction;
            }
        }
        Placement(joined)
    }

    /// Whether left and right hand change places, which turns every facet inside out.
    pub fn is_mirrored(self) -> bool {
        let m = self.0;
        let determinant = m[0] * (m[4] * m[8] - m[5] * m[7]) - m[1] * (m[3] * m[8] - m[5] * m[6])
            + m[2] * (m[3] * m[7] - m[4] * m[6]);
        determinant < 0.0
    }
}
