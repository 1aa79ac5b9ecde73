//! The hole in the face of the joint for the screw or spike by which a pattern is rapped and drawn.

use thiserror::Error;

use super::joint::Joint;
use super::pins::{Room, clear_mm, nearest_to, places};
use super::plain::{along, rod, skin};
use crate::boolean::{Body, BooleanError};
use crate::mesh::Mesh;
use crate::shape::ShapeError;
use crate::solid::measure;
use crate::tree::Tree;
use crate::vector::{Vector, add, norm, scale, sub};

/// Which half of the pattern is lifted, and so which way its hole goes from the joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lifted {
    /// What lies in the drag: the hole goes down from the joint.
    Drag,
    /// What lies in the cope: the hole goes up from the joint.
    Cope,
}

/// A pattern or half of one with its hole.
#[derive(Clone, Debug)]
pub struct WithLift {
    /// Its skin.
    pub mesh: Mesh,
    /// Where the hole opens.
    pub place_mm: Vector,
    /// Across.
    pub diameter_mm: f64,
    /// How deep.
    pub depth_mm: f64,
    /// How far, level, from over the centre of mass: the pattern swings when it is far.
    pub off_centre_mm: f64,
}

/// Why there is no hole.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum LiftError {
    /// A size that is no hole for a screw.
    #[error("a hole of {diameter_mm} mm takes no lifting screw: take 3 to 20 mm")]
    Diameter {
        /// As given.
        diameter_mm: f64,
    },
    /// Nowhere wall enough.
    #[error(
        "a lifting hole of {diameter_mm} mm, {depth_mm} mm deep, finds no room in the face of the \
         joint: take a thinner screw, or glue a block on"
    )]
    NoRoom {
        /// Across.
        diameter_mm: f64,
        /// How deep.
        depth_mm: f64,
    },
    /// The hole could not be made.
    #[error("lifting hole: {0}")]
    Shape(#[from] ShapeError),
    /// The solid could not be cut.
    #[error("lifting hole: {0}")]
    Join(#[from] BooleanError),
}

/// Depth of the hole in diameters: a screw holds in plastic from about three on (common practice,
/// no source).
const DEPTH: f64 = 3.0;

/// Screws that lift a pattern, mm.
const SCREWS_MM: std::ops::RangeInclusive<f64> = 3.0..=20.0;

/// The half with a hole as near as can be to over its centre of mass; `taken` are places of pins,
/// from which it keeps away.
///
/// # Errors
///
/// No room for the hole.
pub fn with_lifting_hole(
    half: &Mesh,
    joint: &Joint,
    lifted: Lifted,
    diameter_mm: f64,
    taken: &[Vector],
) -> Result<WithLift, LiftError> {
    if !SCREWS_MM.contains(&diameter_mm) {
        return Err(LiftError::Diameter { diameter_mm });
    }
    let depth_mm = DEPTH * diameter_mm;
    let clear_mm = clear_mm(diameter_mm);
    let (way, reach_mm) = match lifted {
        Lifted::Drag => (-1.0, [depth_mm, 0.0]),
        Lifted::Cope => (1.0, [0.0, depth_mm]),
    };
    let room = Room {
        axis: 2,
        reach_mm,
        clear_mm,
        from_mm: clear_mm + 0.01,
    };
    let tree = Tree::over(half);
    let surface = joint.surface();
    let mut free = places(half, &tree, half.bounds(), room, |at| surface.height_mm(at));
    free.retain(|place| {
        let is_skin = add(*place, scale(along(2, way), 0.01));
        let far = taken
            .iter()
            .all(|pin| norm(sub(*pin, *place)) >= 2.0 * clear_mm);
        far && crate::distance::is_inside(half, &tree, is_skin)
    });
    let centre = measure(half, &vec![0; half.triangles.len()], 1).centre_mm;
    let level = |place: Vector| [place[0], place[1], 0.0];
    let flat: Vec<Vector> = free.iter().map(|place| level(*place)).collect();
    let none = LiftError::NoRoom {
        diameter_mm,
        depth_mm,
    };
    let chosen = nearest_to(&flat, level(centre)).ok_or(none.clone())?;
    let place_mm = free
        .into_iter()
        .find(|place| level(*place) == chosen)
        .ok_or(none.clone())?;
    let from = add(place_mm, scale(along(2, -way), 1.0));
    let hole = Body::of(&rod(from, along(2, way), diameter_mm, depth_mm + 1.0)?)?;
    Ok(WithLift {
        mesh: skin(&Body::of(half)?.without(&hole)?).ok_or(none)?,
        place_mm,
        diameter_mm,
        depth_mm,
        off_centre_mm: norm(sub(level(centre), level(place_mm))),
    })
}
