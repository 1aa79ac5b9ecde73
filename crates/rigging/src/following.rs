//! Gates that follow a joint which leaves its level on their way to the casting.

use pattern::boolean::Body;
use pattern::mesh::Mesh;
use pattern::rays;
use pattern::tree::Tree;

use crate::bars::{OVERLAP_MM, SLOPE};
use crate::error::MouldError;
use crate::face::Face;
use crate::gate::Gate;
use crate::lie::Lying;
use crate::piece::Piece;
use crate::plan_view::{Point, along, way_to};

/// A casting looked at along the joint.
pub(crate) struct AlongJoint<'a> {
    face: &'a Face,
    mesh: &'a Mesh,
    tree: Tree,
}

/// Places along a gate are this far apart, mm: as fine as sand is cut.
const STEP_MM: f64 = 1.0;

impl<'a> AlongJoint<'a> {
    /// Of one casting.
    pub(crate) fn of(lying: &'a Lying, face: &'a Face) -> AlongJoint<'a> {
        AlongJoint {
            face,
            mesh: &lying.mesh,
            tree: Tree::over(&lying.mesh),
        }
    }

    /// How far along a half line a gate meets the casting, and how far it leaves it again, when
    /// its middle lies so far above the joint.
    pub(crate) fn met(&self, from: Point, way: Point, above_mm: f64) -> Option<[f64; 2]> {
        let [low, high] = self.mesh.bounds();
        let ends = [low, high].map(|corner| {
            (0..2)
                .map(|axis| (corner[axis] - from[axis]) * way[axis])
                .sum::<f64>()
        });
        let (start, end) = (ends[0].min(ends[1]).max(0.0), ends[0].max(ends[1]));
        let steps = ((end - start) / STEP_MM).ceil().max(0.0) as usize;
        let at = |step: usize| start + step as f64 * STEP_MM;
        let has_metal = |step: &usize| self.has_metal(along(from, way, at(*step)), above_mm);
        let enters = (0..=steps).find(has_metal)?;
        let leaves = (enters..=steps).find(|step| !has_metal(step));
        Some([at(enters), leaves.map_or(end, at)])
    }

    fn has_metal(&self, [x, y]: Point, above_mm: f64) -> bool {
        let height = self.face.height_mm([x, y]) + above_mm;
        // A hair aside, so that the line runs along no edge drawn on round numbers.
        let hits = rays::along(self.mesh, &self.tree, 2, [x + 1.7e-5, y + 2.3e-5, 0.0]);
        hits.iter().filter(|hit| hit.at < height).count() % 2 == 1
    }
}

/// The gate as it is cut along the joint: everywhere as thick as wanted below it, or above it.
pub(crate) fn cut(gate: &Gate, piece: &Piece, face: &Face) -> Result<Mesh, MouldError> {
    let wrong = |error| MouldError::Join {
        piece: piece.clone(),
        error,
    };
    let through = Body::of(&through_the_joint(gate, face)).map_err(wrong)?;
    let own = through.common_with(face.block(gate.half)).map_err(wrong)?;
    Ok(own.mesh())
}

/// A bar that reaches past the joint at its furthest, its sides leaning as those of any gate.
fn through_the_joint(gate: &Gate, face: &Face) -> Mesh {
    let (way, length) = way_to(gate.from, gate.to);
    let aside = [-way[1], way[0]];
    let steps = (length / STEP_MM).ceil().max(1.0) as usize;
    let side = gate.half.way();
    let foot_mm = face.furthest_mm(gate.half.other()) - side * OVERLAP_MM;
    let lean = SLOPE * gate.thick_mm / 2.0;
    let narrow = (gate.width_mm / 2.0 - lean).max(0.1);
    let mut mesh = Mesh::default();
    for step in 0..=steps {
        let on = along(gate.from, way, length * step as f64 / steps as f64);
        let joint_mm = face.height_mm(on);
        let wide = gate.width_mm / 2.0 + lean + SLOPE * (joint_mm - foot_mm).abs();
        let tip_mm = joint_mm + side * gate.thick_mm;
        let corners = [
            (-wide, foot_mm),
            (wide, foot_mm),
            (narrow, tip_mm),
            (-narrow, tip_mm),
        ];
        mesh.points.extend(corners.map(|(off, height)| {
            let [x, y] = along(on, aside, off);
            [x, y, height]
        }));
    }
    mesh.triangles = skin(steps as u32, side > 0.0);
    mesh
}

/// Facets around rings of four corners, so many steps long.
fn skin(steps: u32, is_upside_down: bool) -> Vec<[u32; 3]> {
    let last = 4 * steps;
    let mut triangles = vec![
        [0, 1, 2],
        [0, 2, 3],
        [last, last + 2, last + 1],
        [last, last + 3, last + 2],
    ];
    for step in 0..steps {
        for corner in 0..4 {
            let [a, b] = [corner, (corner + 1) % 4].map(|corner| 4 * step + corner);
            triangles.extend([[a, a + 4, b + 4], [a, b + 4, b]]);
        }
    }
    if is_upside_down {
        for triangle in &mut triangles {
            triangle.swap(1, 2);
        }
    }
    triangles
}
