//! The part turned so that it is drawn along z: up is the way of the cope, down that of the drag.

use crate::mesh::Mesh;
use crate::vector::{Vector, add, cross, dot, norm, scale, sub};

/// Three directions at right angles, in the part's own axes, right-handed and of length one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawFrame {
    /// What becomes x.
    pub across: Vector,
    /// What becomes y.
    pub along: Vector,
    /// What becomes z: the way the cope is lifted.
    pub up: Vector,
}

impl DrawFrame {
    /// The frame of a draw; none for a direction of no length. A draw along z leaves the part as it
    /// lies.
    pub fn drawing_along(up: Vector) -> Option<DrawFrame> {
        let length = norm(up);
        if !length.is_finite() || length <= f64::MIN_POSITIVE {
            return None;
        }
        let up = scale(up, 1.0 / length);
        let aside = match up[0].abs() < 0.9 {
            true => [1.0, 0.0, 0.0],
            false => [0.0, 1.0, 0.0],
        };
        let across = sub(aside, scale(up, dot(aside, up)));
        let across = scale(across, 1.0 / norm(across));
        Some(DrawFrame {
            across,
            along: cross(up, across),
            up,
        })
    }

    /// A point of the part as it lies in the draw.
    pub fn draw_from_part(&self, point: Vector) -> Vector {
        [self.across, self.along, self.up].map(|axis| dot(axis, point))
    }

    /// A point of the draw as it lies in the part.
    pub fn part_from_draw(&self, point: Vector) -> Vector {
        let flat = add(scale(self.across, point[0]), scale(self.along, point[1]));
        add(flat, scale(self.up, point[2]))
    }

    /// The part turned into the draw.
    pub fn turned(&self, mesh: &Mesh) -> Mesh {
        let mut turned = mesh.clone();
        self.turn(mesh, &mut turned);
        turned
    }

    /// The same into a copy of the part that is there already.
    pub fn turn(&self, mesh: &Mesh, copy: &mut Mesh) {
        for (to, from) in copy.points.iter_mut().zip(&mesh.points) {
            *to = self.draw_from_part(*from);
        }
    }
}
