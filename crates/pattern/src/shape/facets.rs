//! The skins of plain solids, standing on the origin along z.
//!
//! A round becomes a polygon of the same *area*, its corners a little outside of the true circle
//! and its flats a little inside: whatever stands or turns on it then has its true volume, and the
//! skin is off by less than the chord error below.

use std::f64::consts::{PI, TAU};

use crate::mesh::Mesh;
use crate::shape::Form;
use crate::solid::measure;

/// How far the middle of a flat may lie from the true circle, mm: finer than sand shows.
const CHORD_ERROR_MM: f64 = 0.02;

/// Fewest and most flats round a circle. With fewer the skin of a small boss is off by more than a
/// third of a per cent; a ball of 128 flats has 16,000 facets, and more of them grow by the square.
const FLATS: std::ops::RangeInclusive<usize> = 32..=128;

/// The skin of a form, wound outward.
pub(super) fn of(form: &Form) -> Mesh {
    match *form {
        Form::Block { size } => block(size.map(|side| side.as_mm())),
        Form::Cylinder { diameter, length } => {
            let (r, h) = (diameter.as_mm() / 2.0, length.as_mm());
            spun(&[[0.0, 0.0], [r, 0.0], [r, h], [0.0, h]], r, false)
        }
        Form::Tube {
            diameter,
            bore,
            length,
        } => {
            let (r, b, h) = (diameter.as_mm() / 2.0, bore.as_mm() / 2.0, length.as_mm());
            spun(&[[b, 0.0], [r, 0.0], [r, h], [b, h]], r, true)
        }
        Form::Cone {
            diameter,
            top,
            length,
        } => {
            let (r, t, h) = (diameter.as_mm() / 2.0, top.as_mm() / 2.0, length.as_mm());
            let outline = [[0.0, 0.0], [r, 0.0], [t, h], [0.0, h]];
            let ends = if t > 0.0 { 4 } else { 3 };
            spun(&outline[..ends], r.max(t), false)
        }
        Form::Ball { diameter } => ellipsoid([diameter.as_mm(); 3]),
        Form::Ellipsoid { size } => ellipsoid(size.map(|side| side.as_mm())),
        Form::Ring {
            diameter,
            thickness,
        } => ring(diameter.as_mm() / 2.0, thickness.as_mm() / 2.0),
    }
}

fn block([x, y, z]: [f64; 3]) -> Mesh {
    let corner = |i: u32| {
        let bit = |place: u32| f64::from(i >> place & 1);
        [(bit(0) - 0.5) * x, (bit(1) - 0.5) * y, bit(2) * z]
    };
    let sides = [
        [0, 2, 3, 1],
        [4, 5, 7, 6],
        [0, 1, 5, 4],
        [2, 6, 7, 3],
        [0, 4, 6, 2],
        [1, 3, 7, 5],
    ];
    let halves = |&[a, b, c, d]: &[u32; 4]| [[a, b, c], [a, c, d]];
    Mesh {
        points: (0..8).map(corner).collect(),
        triangles: sides.iter().flat_map(halves).collect(),
    }
}

/// A ball of one, drawn out; scaled so that its facets hold what the true one holds.
fn ellipsoid(size: [f64; 3]) -> Mesh {
    let radius = size.into_iter().fold(0.0, f64::max) / 2.0;
    let steps = flats(radius) / 2;
    let outline: Vec<[f64; 2]> = (0..=steps)
        .map(|step| match step {
            0 => [0.0, -1.0],
            step if step == steps => [0.0, 1.0],
            step => {
                let (sin, cos) = (PI * step as f64 / steps as f64).sin_cos();
                [sin, -cos]
            }
        })
        .collect();
    let mut ball = spun_of(&outline, flats(radius), false);
    let own = measure(&ball, &vec![0; ball.triangles.len()], 1).volume_mm3;
    let grown = (4.0 / 3.0 * PI / own).cbrt();
    for point in &mut ball.points {
        *point = [0, 1, 2].map(|axis| point[axis] * grown * size[axis] / 2.0);
    }
    ball
}

fn ring(outside: f64, bar: f64) -> Mesh {
    let (middle, steps) = (outside - bar, flats(bar));
    let bar = bar * of_same_area(steps);
    let outline: Vec<[f64; 2]> = (0..steps)
        .map(|step| {
            let (sin, cos) = (TAU * step as f64 / steps as f64).sin_cos();
            [middle + bar * cos, bar * sin]
        })
        .collect();
    spun(&outline, outside, true)
}

/// Flats round a circle of this radius, a multiple of four so that it lies alike on both axes.
fn flats(radius_mm: f64) -> usize {
    let half_angle = (1.0 - CHORD_ERROR_MM / radius_mm).max(0.0).acos();
    let wanted = (PI / half_angle).ceil() as usize;
    wanted
        .clamp(*FLATS.start(), *FLATS.end())
        .next_multiple_of(4)
}

/// How much further out than the circle the corners of a polygon of its area lie.
fn of_same_area(flats: usize) -> f64 {
    let angle = TAU / flats as f64;
    (angle / angle.sin()).sqrt()
}

/// An outline of radius and height, from the foot outward and up, spun about the axis.
fn spun(outline: &[[f64; 2]], radius: f64, is_loop: bool) -> Mesh {
    spun_of(outline, flats(radius), is_loop)
}

fn spun_of(outline: &[[f64; 2]], flats: usize, is_loop: bool) -> Mesh {
    let mut mesh = Mesh::default();
    let out = of_same_area(flats);
    let mut rows = Vec::with_capacity(outline.len());
    for &[radius, height] in outline {
        let first = mesh.points.len() as u32;
        if radius == 0.0 {
            rows.push(Row {
                first,
                is_pole: true,
            });
            mesh.points.push([0.0, 0.0, height]);
            continue;
        }
        rows.push(Row {
            first,
            is_pole: false,
        });
        for flat in 0..flats {
            let (sin, cos) = (TAU * flat as f64 / flats as f64).sin_cos();
            mesh.points
                .push([radius * out * cos, radius * out * sin, height]);
        }
    }
    let closing = is_loop.then_some((rows.len() - 1, 0));
    let steps = (1..rows.len()).map(|row| (row - 1, row)).chain(closing);
    for (from, to) in steps {
        belt(&mut mesh, rows[from], rows[to], flats as u32);
    }
    mesh
}

/// The points of one place of the outline: one on the axis, or one for each flat.
#[derive(Clone, Copy)]
struct Row {
    first: u32,
    is_pole: bool,
}

/// The facets between two rows.
fn belt(mesh: &mut Mesh, low: Row, high: Row, flats: u32) {
    for flat in 0..flats {
        let next = (flat + 1) % flats;
        let at = |row: Row, flat: u32| row.first + if row.is_pole { 0 } else { flat };
        if !low.is_pole {
            mesh.triangles
                .push([at(low, flat), at(low, next), at(high, next)]);
        }
        if !high.is_pole {
            mesh.triangles
                .push([at(low, flat), at(high, next), at(high, flat)]);
        }
    }
}
