//! Bars and rounds with draught, the shapes that rigging is cut in.

use measure::length::Length;
use pattern::mesh::Mesh;
use pattern::shape::{Form, Shape, ShapeError};

use crate::plan_view::{Point, along, way_to};

/// Slope of the sides of runners, gates and necks, mm in each mm of depth: ten degrees (common
/// practice, no source). Upright sides tear the edge of the sand; much flatter ones make a runner
/// that has more skin than metal.
pub(crate) const SLOPE: f64 = 0.176;

/// Slope of the sides of feeders, wells and basins: three degrees, as a turned pattern draws
/// (common practice, no source).
pub(crate) const ROUND_SLOPE: f64 = 0.052;

/// How far pieces of one body of metal reach into each other, mm: faces that only touch leave it
/// to rounding whether they are joined.
pub(crate) const OVERLAP_MM: f64 = 1.0;

/// A bar along a line of the joint, its ends square, wider at one height than at the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Bar {
    /// Where its foot begins.
    pub(crate) from: Point,
    /// Where its foot ends.
    pub(crate) to: Point,
    /// Half way up.
    pub(crate) width_mm: f64,
    /// Height of the wide side, from which it is drawn.
    pub(crate) foot_mm: f64,
    /// Height of the narrow side.
    pub(crate) tip_mm: f64,
    /// Slope of its sides.
    pub(crate) slope: f64,
}

impl Bar {
    /// Its skin.
    pub(crate) fn mesh(&self) -> Mesh {
        let (way, length) = way_to(self.from, self.to);
        let aside = [-way[1], way[0]];
        let lean = (self.tip_mm - self.foot_mm).abs() * self.slope;
        let row = |height: f64, inset: f64, half: f64| {
            let ends = [(inset, -half), (length - inset, -half)];
            let back = [(length - inset, half), (inset, half)];
            ends.into_iter().chain(back).map(move |(on, off)| {
                let [x, y] = along(along(self.from, way, on), aside, off);
                [x, y, height]
            })
        };
        let wide = (self.width_mm + lean) / 2.0;
        let narrow = ((self.width_mm - lean) / 2.0).max(0.1);
        let inset = lean.min(0.45 * length);
        let foot = row(self.foot_mm, 0.0, wide);
        let tip = row(self.tip_mm, inset, narrow);
        let mut mesh = Mesh {
            points: foot.chain(tip).collect(),
            triangles: Vec::new(),
        };
        let sides = [
            [0, 3, 2, 1],
            [4, 5, 6, 7],
            [0, 1, 5, 4],
            [1, 2, 6, 5],
            [2, 3, 7, 6],
            [3, 0, 4, 7],
        ];
        for [a, b, c, d] in sides {
            let facets = match self.tip_mm > self.foot_mm {
                true => [[a, b, c], [a, c, d]],
                false => [[a, c, b], [a, d, c]],
            };
            mesh.triangles.extend(facets);
        }
        mesh
    }
}

/// An upright round, of one diameter below and another above.
pub(crate) fn round(
    middle: Point,
    [low_mm, high_mm]: [f64; 2],
    [below_mm, above_mm]: [f64; 2],
) -> Result<Mesh, ShapeError> {
    let [x, y] = middle.map(Length::from_mm);
    Shape {
        form: Form::Cone {
            diameter: Length::from_mm(below_mm),
            top: Length::from_mm(above_mm),
            length: Length::from_mm(high_mm - low_mm),
        },
        at: [x, y, Length::from_mm(low_mm)],
        axis: [0.0, 0.0, 1.0],
        turn_degrees: 0.0,
        is_taken_away: false,
    }
    .skin(1)
}

/// A block between two corners.
pub(crate) fn block(low: [f64; 3], high: [f64; 3]) -> Mesh {
    let middle = (low[1] + high[1]) / 2.0;
    Bar {
        from: [low[0], middle],
        to: [high[0], middle],
        width_mm: high[1] - low[1],
        foot_mm: low[2],
        tip_mm: high[2],
        slope: 0.0,
    }
    .mesh()
}
