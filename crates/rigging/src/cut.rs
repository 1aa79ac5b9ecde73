//! A piece of rigging as it is cut: its shapes, each with the way in which it leaves the sand.

use pattern::boolean::Body;
use pattern::mesh::Mesh;
use pattern::shape::ShapeError;
use pattern::vector::{Vector, norm, scale};

use crate::error::MouldError;
use crate::face::Face;
use crate::piece::Piece;
use crate::plan_view::{Footprint, Point};

/// A piece of rigging in its place.
#[derive(Clone)]
pub(crate) struct Cut {
    /// Which.
    pub(crate) piece: Piece,
    /// Its shapes, each drawn by itself.
    pub(crate) shapes: Vec<(Mesh, Draw)>,
    /// All of them as one body.
    pub(crate) body: Body,
    /// What it covers on the joint.
    pub(crate) covers: Footprint,
    /// Lowest and highest point.
    pub(crate) heights_mm: [f64; 2],
}

/// The way in which a shape leaves the sand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Draw {
    /// Out of the joint: up out of the drag, down out of the cope.
    FromJoint,
    /// Up, through the top of the cope.
    Upward,
}

impl Cut {
    /// A piece of shapes that reach into each other.
    pub(crate) fn of(
        piece: Piece,
        covers: Footprint,
        shapes: Vec<(Result<Mesh, ShapeError>, Draw)>,
    ) -> Result<Cut, MouldError> {
        let mut kept = Vec::with_capacity(shapes.len());
        let mut body: Option<Body> = None;
        let mut heights_mm = [f64::INFINITY, f64::NEG_INFINITY];
        for (mesh, draw) in shapes {
            let mesh = mesh.map_err(|error| MouldError::Shape {
                piece: piece.clone(),
                error,
            })?;
            let wrong = |error| MouldError::Join {
                piece: piece.clone(),
                error,
            };
            let [low, high] = mesh.bounds();
            heights_mm = [heights_mm[0].min(low[2]), heights_mm[1].max(high[2])];
            let shape = Body::of(&mesh).map_err(wrong)?;
            body = Some(match body {
                Some(body) => body.with(&shape).map_err(wrong)?,
                None => shape,
            });
            kept.push((mesh, draw));
        }
        let nothing = ShapeError::None;
        let none = || MouldError::Shape {
            piece: piece.clone(),
            error: nothing,
        };
        let body = body.ok_or_else(none)?;
        Ok(Cut {
            piece,
            shapes: kept,
            body,
            covers,
            heights_mm,
        })
    }

    /// Sand between it and something that covers this much of the joint between two heights: as
    /// seen from above, or upright where one lies over the other.
    pub(crate) fn gap(&self, covers: &Footprint, [low, high]: [f64; 2]) -> f64 {
        let upright = (low - self.heights_mm[1]).max(self.heights_mm[0] - high);
        self.covers.gap(covers).max(upright)
    }

    /// A place where a shape hooks behind sand as it is drawn.
    pub(crate) fn hooks_at(&self, face: &Face) -> Option<Vector> {
        let joint = |at: Point| face.height_mm(at);
        self.shapes
            .iter()
            .find_map(|(mesh, draw)| hook(mesh, *draw, joint))
    }
}

/// A facet leaning over further than this, as the sine of its angle, hooks: below it is rounding.
const LEANS: f64 = 1e-6;

/// Facets nearer to the joint than this, mm, lie in it: what is cut along a joint of many facets is
/// rounded by as much.
const IN_THE_JOINT_MM: f64 = 1e-3;

/// The middle of the first facet that hooks. In the drag, and all the way up where a shape goes
/// out through the top, no side may face up; in the cope, where it goes out through the joint, none
/// may face down. The faces that lie in the joint and at the top hold no sand.
fn hook(mesh: &Mesh, draw: Draw, joint: impl Fn(Point) -> f64) -> Option<Vector> {
    let [_, high] = mesh.bounds();
    let is_at_the_top = |corners: [Vector; 3]| {
        corners
            .iter()
            .all(|corner| (corner[2] - high[2]).abs() < 1e-9)
    };
    (0..mesh.triangles.len()).find_map(|facet| {
        let corners = mesh.corners(facet);
        let normal = mesh.normal(facet);
        let faces_up = normal[2] / norm(normal);
        let [a, b, c] = corners;
        let middle = scale([0, 1, 2].map(|axis| a[axis] + b[axis] + c[axis]), 1.0 / 3.0);
        let over_joint = middle[2] - joint([middle[0], middle[1]]);
        let hooks = match draw {
            Draw::FromJoint if over_joint.abs() < IN_THE_JOINT_MM => false,
            Draw::FromJoint if over_joint > 0.0 => faces_up < -LEANS,
            _ => faces_up > LEANS && !is_at_the_top(corners),
        };
        hooks.then_some(middle)
    })
}

#[cfg(test)]
mod tests {
    use pattern::mesh::Mesh;

    use super::{Draw, hook};
    use crate::bars::round;

    #[test]
    fn what_widens_away_from_the_way_out_hooks() {
        let cone = |heights, widths| round([0.0, 0.0], heights, widths).unwrap_or_default();
        // In the cope: narrower upward leaves through the joint, wider upward through the top.
        let narrower = cone([0.0, 50.0], [40.0, 30.0]);
        let wider = cone([0.0, 50.0], [30.0, 40.0]);
        let hook = |mesh: &Mesh, draw| hook(mesh, draw, |_| 0.0);
        assert_eq!(hook(&narrower, Draw::FromJoint), None);
        assert_eq!(hook(&wider, Draw::Upward), None);
        assert!(hook(&narrower, Draw::Upward).is_some_and(|at| at[2] > 0.0));
        assert!(hook(&wider, Draw::FromJoint).is_some_and(|at| at[2] > 0.0));
        // In the drag everything leaves upward.
        let below = cone([-50.0, 0.0], [40.0, 30.0]);
        assert!(hook(&below, Draw::FromJoint).is_some());
        assert_eq!(
            hook(&cone([-50.0, 0.0], [30.0, 40.0]), Draw::FromJoint),
            None
        );
    }
}
