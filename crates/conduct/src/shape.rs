//! Which cells a filling takes: those whose middle lies in its shape.

use crate::case_file::{AxisFile, FillFile};

/// A shape, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    /// All of the box.
    Whole,
    /// A block between two corners.
    Block([[f64; 3]; 2]),
    /// A ball.
    Ball([f64; 3], f64),
    /// A cylinder along an axis.
    Cylinder(usize, [f64; 3], f64),
}

impl Shape {
    /// The shape of a filling, unless it has two.
    pub fn of(fill: &FillFile) -> Option<Shape> {
        match (fill.block_mm, fill.ball_mm, fill.cylinder_mm) {
            (None, None, None) => Some(Shape::Whole),
            (Some(corners), None, None) => Some(Shape::Block(corners)),
            (None, Some(ball), None) => Some(Shape::Ball(ball.centre, ball.radius)),
            (None, None, Some(rod)) => {
                Some(Shape::Cylinder(axis(rod.along), rod.centre, rod.radius))
            }
            _ => None,
        }
    }

    /// Whether a point lies within.
    pub fn holds(&self, point_mm: [f64; 3]) -> bool {
        let squares = |axes: &mut dyn Iterator<Item = usize>, centre: &[f64; 3]| {
            axes.map(|axis| (point_mm[axis] - centre[axis]).powi(2))
                .sum::<f64>()
        };
        match self {
            Shape::Whole => true,
            Shape::Block([low, high]) => {
                (0..3).all(|axis| point_mm[axis] >= low[axis] && point_mm[axis] < high[axis])
            }
            Shape::Ball(centre, radius) => squares(&mut (0..3), centre) <= radius * radius,
            Shape::Cylinder(along, centre, radius) => {
                let across = &mut (0..3).filter(|axis| axis != along);
                squares(across, centre) <= radius * radius
            }
        }
    }
}

/// The number of an axis.
pub fn axis(axis: AxisFile) -> usize {
    match axis {
        AxisFile::X => 0,
        AxisFile::Y => 1,
        AxisFile::Z => 2,
    }
}
