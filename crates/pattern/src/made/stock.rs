//! Metal left on the faces that the job names, for the file, the lathe or the mill.
//!
//! A face moves out along its own normal, a round hole grows inward; how much is asked of
//! [`crate::machining_stock`]. What is named and is not there is an error, never passed over: a
//! face without stock is scrap after the first cut.

use std::fmt;
use std::str::FromStr;

use thiserror::Error;

use super::bore::{Bore, bores};
use super::raise::raised;
use super::volume_mm3;
use crate::boolean::BooleanError;
use crate::mesh::Mesh;
use crate::vector::{Vector, add, bounds_of, dot, norm, scale, sub};

/// Stock wanted on one face, or on all holes of one diameter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stock {
    /// Where.
    pub on: Face,
    /// How much, square to the face, mm.
    pub depth_mm: f64,
}

/// A face as the founder names it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Face {
    /// The outermost flat faces that look this way.
    Outermost(Vector),
    /// The flat faces in a plane.
    Plane {
        /// A place in it, mm.
        point: Vector,
        /// The way they look.
        normal: Vector,
    },
    /// Round holes of this diameter, mm.
    Bore(f64),
}

/// A part with stock on it.
#[derive(Clone, Debug)]
pub struct Stocked {
    /// Its skin.
    pub mesh: Mesh,
    /// What was found and left on, in the order asked for.
    pub left_on: Vec<LeftOn>,
}

/// Stock left on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeftOn {
    /// As asked for.
    pub stock: Stock,
    /// Area of the faces, mm².
    pub area_mm2: f64,
    /// Flat levels or holes found: one face, or so many bores.
    pub places: usize,
    /// Metal added, mm³.
    pub added_mm3: f64,
}

/// Why no stock was left on.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum StockError {
    /// A depth that nobody machines off.
    #[error("{depth_mm} mm of stock on {on} is none: take above 0 to {MOST_MM} mm")]
    Depth {
        /// Where.
        on: Face,
        /// How much was asked for.
        depth_mm: f64,
    },
    /// A direction of no length.
    #[error("{on} looks nowhere: give a direction with a length")]
    NoDirection {
        /// Where.
        on: Face,
    },
    /// Nothing flat looks that way.
    #[error(
        "no flat face looks along {on}; the part ends there at ({:.1}, {:.1}, {:.1}) mm: name a \
         face that is flat, or a plane by point and normal",
        place_mm[0], place_mm[1], place_mm[2]
    )]
    NothingFlat {
        /// What was named.
        on: Face,
        /// Where the part ends that way.
        place_mm: Vector,
    },
    /// Nothing lies in the plane.
    #[error(
        "no face lies in {on}; the nearest that looks that way lies {off_mm:.2} mm off, at \
         ({:.1}, {:.1}, {:.1}) mm", place_mm[0], place_mm[1], place_mm[2]
    )]
    NotInPlane {
        /// What was named.
        on: Face,
        /// How far off the nearest lies.
        off_mm: f64,
        /// A corner of it.
        place_mm: Vector,
    },
    /// No hole of that size.
    #[error("there is no round hole of {diameter_mm} mm; there is: {known}")]
    NoBore {
        /// What was named.
        diameter_mm: f64,
        /// The holes there are.
        known: String,
    },
    /// Stock as deep as the hole.
    #[error(
        "{depth_mm} mm of stock closes the hole of {diameter_mm:.2} mm at ({:.1}, {:.1}, {:.1}) \
         mm: cast it solid, or leave on less than a third of it", place_mm[0], place_mm[1],
        place_mm[2]
    )]
    ClosesBore {
        /// How much was asked for.
        depth_mm: f64,
        /// The hole.
        diameter_mm: f64,
        /// The middle of it.
        place_mm: Vector,
    },
    /// The solid could not be joined.
    #[error("stock on {on}: {error}")]
    Join {
        /// Where.
        on: Face,
        /// Why.
        error: BooleanError,
    },
    /// A word for no face.
    #[error(
        "\"{typed}\" names no face: write top, bottom, +x, -x, +y, -y, +z, -z, or bore D22 for all \
         round holes of 22 mm"
    )]
    Unknown {
        /// What was typed.
        typed: String,
    },
}

/// Most stock: a hand's breadth; more is a slip of the unit.
pub const MOST_MM: f64 = 50.0;

/// How far a facet may lean and still lie in a flat face: what rounding leaves on small facets of
/// a file. Twice as much and the last ring of a ball is a face, a tenth and small faces are lost.
const FLAT_DEGREES: f64 = 0.5;

/// How far a corner may lie off its plane, mm, finer than any machined face.
const LEVEL_MM: f64 = 0.02;

/// Least share of the box's side that a face covers to be one: a thousandth. The flat on the pole
/// of a ball is smaller, a boss of 3 mm on a plate of 80 mm larger.
const LEAST_SHARE: f64 = 0.001;

/// How far a hole may differ from the diameter named: 1 %, at least a tenth of a millimetre. Holes
/// are drawn on round sizes, and a polygon of 32 flats is off by half a per cent.
const SAME_BORE: f64 = 0.01;

/// A part with stock left on, face after face.
///
/// # Errors
///
/// A face that is not there, or more stock than it takes.
pub fn with_stock(mesh: &Mesh, wanted: &[Stock]) -> Result<Stocked, StockError> {
    let mut mesh = mesh.clone();
    let mut left_on = Vec::with_capacity(wanted.len());
    for &stock in wanted {
        let Stock { on, depth_mm } = stock;
        if !(depth_mm > 0.0 && depth_mm <= MOST_MM) {
            return Err(StockError::Depth { on, depth_mm });
        }
        let before_mm3 = volume_mm3(&mesh);
        let wrong = |error| StockError::Join { on, error };
        let (next, area_mm2, places) = match on {
            Face::Bore(diameter_mm) => {
                let bores = bores_of(&mesh, diameter_mm, depth_mm)?;
                let area_mm2 = bores.iter().map(|bore| area(&mesh, &bore.facets)).sum();
                let places = bores.len();
                (
                    narrowed(&mesh, &bores, depth_mm).map_err(wrong)?,
                    area_mm2,
                    places,
                )
            }
            Face::Outermost(way) | Face::Plane { normal: way, .. } => {
                let unit = unit(way).ok_or(StockError::NoDirection { on })?;
                let facets = face(&mesh, on, unit)?;
                let mut patch = vec![false; mesh.triangles.len()];
                facets.iter().for_each(|&f| patch[f as usize] = true);
                let out = scale(unit, depth_mm);
                let next = raised(&mesh, &patch, |_, point| add(point, out)).map_err(wrong)?;
                (next, area(&mesh, &facets), 1)
            }
        };
        mesh = next;
        left_on.push(LeftOn {
            stock,
            area_mm2,
            places,
            added_mm3: volume_mm3(&mesh) - before_mm3,
        });
    }
    Ok(Stocked { mesh, left_on })
}

fn area(mesh: &Mesh, facets: &[u32]) -> f64 {
    let of = |&facet: &u32| norm(mesh.normal(facet as usize)) / 2.0;
    facets.iter().map(of).sum()
}

fn unit(way: Vector) -> Option<Vector> {
    let length = norm(way);
    (length.is_finite() && length > 0.0).then(|| scale(way, 1.0 / length))
}

/// The facets of a flat face.
fn face(mesh: &Mesh, on: Face, unit: Vector) -> Result<Vec<u32>, StockError> {
    let least = FLAT_DEGREES.to_radians().cos();
    let looks_so = |facet: &u32| {
        let normal = mesh.normal(*facet as usize);
        dot(normal, unit) > least * norm(normal)
    };
    let height = |facet: u32| dot(mesh.corners(facet as usize)[0], unit);
    let mut facing: Vec<u32> = (0..mesh.triangles.len() as u32).filter(looks_so).collect();
    facing.sort_by(|&a, &b| height(b).total_cmp(&height(a)).then(a.cmp(&b)));
    let in_level = |level: f64| {
        let within = |&facet: &u32| {
            let corners = mesh.corners(facet as usize);
            corners
                .iter()
                .all(|&corner| (dot(corner, unit) - level).abs() <= LEVEL_MM)
        };
        facing.iter().copied().filter(within).collect::<Vec<u32>>()
    };
    if let Face::Plane { point, .. } = on {
        let level = dot(point, unit);
        let found = in_level(level);
        let nearest = facing.iter().min_by(|&&a, &&b| {
            (height(a) - level)
                .abs()
                .total_cmp(&(height(b) - level).abs())
        });
        return match (found.is_empty(), nearest) {
            (false, _) => Ok(found),
            (true, Some(&facet)) => Err(StockError::NotInPlane {
                on,
                off_mm: (height(facet) - level).abs(),
                place_mm: mesh.corners(facet as usize)[0],
            }),
            (true, None) => Err(nothing_flat(mesh, on, unit)),
        };
    }
    let least_mm2 = LEAST_SHARE * side_of_box(mesh, unit);
    let mut at = 0;
    while at < facing.len() {
        let level = height(facing[at]);
        let found = in_level(level);
        if area(mesh, &found) >= least_mm2 {
            return Ok(found);
        }
        at += 1;
        while at < facing.len() && level - height(facing[at]) <= LEVEL_MM {
            at += 1;
        }
    }
    Err(nothing_flat(mesh, on, unit))
}

fn nothing_flat(mesh: &Mesh, on: Face, unit: Vector) -> StockError {
    let along = |point: &Vector| dot(*point, unit);
    let ends = mesh
        .points
        .iter()
        .max_by(|a, b| along(a).total_cmp(&along(b)));
    StockError::NothingFlat {
        on,
        place_mm: ends.copied().unwrap_or_default(),
    }
}

/// The side of the box around the part as seen along a direction.
fn side_of_box(mesh: &Mesh, unit: Vector) -> f64 {
    let [low, high] = bounds_of(mesh.points.iter().copied()).unwrap_or_default();
    let [x, y, z] = sub(high, low);
    (unit[0].abs() * y * z) + (unit[1].abs() * z * x) + (unit[2].abs() * x * y)
}

fn bores_of(mesh: &Mesh, diameter_mm: f64, depth_mm: f64) -> Result<Vec<Bore>, StockError> {
    let off = (SAME_BORE * diameter_mm).max(0.1);
    let (meant, others): (Vec<Bore>, Vec<Bore>) = bores(mesh)
        .into_iter()
        .partition(|bore| (bore.diameter_mm - diameter_mm).abs() <= off);
    if meant.is_empty() {
        let mut sizes: Vec<f64> = others.iter().map(|bore| bore.diameter_mm).collect();
        sizes.sort_by(f64::total_cmp);
        let mut known: Vec<String> = sizes.iter().map(|size| format!("{size:.1} mm")).collect();
        known.dedup();
        let known = match known.is_empty() {
            true => "none".to_owned(),
            false => known.join(", "),
        };
        return Err(StockError::NoBore { diameter_mm, known });
    }
    match meant.iter().find(|bore| depth_mm >= bore.diameter_mm / 3.0) {
        Some(bore) => Err(StockError::ClosesBore {
            depth_mm,
            diameter_mm: bore.diameter_mm,
            place_mm: bore.centre,
        }),
        None => Ok(meant),
    }
}

/// The holes made narrower.
fn narrowed(mesh: &Mesh, bores: &[Bore], depth_mm: f64) -> Result<Mesh, BooleanError> {
    let mut patch = vec![false; mesh.triangles.len()];
    let mut hole_of = vec![0; mesh.triangles.len()];
    for (number, bore) in bores.iter().enumerate() {
        for &facet in &bore.facets {
            patch[facet as usize] = true;
            hole_of[facet as usize] = number;
        }
    }
    raised(mesh, &patch, |facet, point| {
        let bore = &bores[hole_of[facet]];
        let from_centre = sub(point, bore.centre);
        let along = scale(bore.axis, dot(from_centre, bore.axis));
        let out = sub(from_centre, along);
        sub(point, scale(out, depth_mm / norm(out)))
    })
}

impl fmt::Display for Face {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Face::Outermost([x, y, z]) => write!(to, "direction ({x}, {y}, {z})"),
            Face::Plane { point, normal } => {
                let ([x, y, z], [a, b, c]) = (point, normal);
                write!(
                    to,
                    "the plane through ({x}, {y}, {z}) mm with normal ({a}, {b}, {c})"
                )
            }
            Face::Bore(diameter) => write!(to, "bore D{diameter}"),
        }
    }
}

impl FromStr for Face {
    type Err = StockError;

    fn from_str(typed: &str) -> Result<Face, StockError> {
        let unknown = || StockError::Unknown {
            typed: typed.to_owned(),
        };
        let outermost = |axis: usize, way: f64| {
            let mut direction = [0.0; 3];
            direction[axis] = way;
            Ok(Face::Outermost(direction))
        };
        match typed.trim().to_lowercase().as_str() {
            "top" | "+z" => outermost(2, 1.0),
            "bottom" | "-z" => outermost(2, -1.0),
            "+x" => outermost(0, 1.0),
            "-x" => outermost(0, -1.0),
            "+y" => outermost(1, 1.0),
            "-y" => outermost(1, -1.0),
            other => {
                let size = other.strip_prefix("bore d").ok_or_else(unknown)?;
                let diameter: f64 = size.trim().parse().map_err(|_| unknown())?;
                match diameter.is_finite() && diameter > 0.0 {
                    true => Ok(Face::Bore(diameter)),
                    false => Err(unknown()),
                }
            }
        }
    }
}
