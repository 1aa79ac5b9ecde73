//! Draught by a real taper of the walls about the joint.
//!
//! Metal is only ever added: a wall keeps its place where it lies farthest from the joint and moves
//! out by (H − h) tan α at a depth h, H being the greatest depth of the wall. Walls that cross the
//! joint are split there and take the greater depth of the two sides, so that both halves meet. A
//! wall that only the cope or only the drag can draw, as in a pocket, is drawn from its own far
//! end, wherever the joint lies. What is less steep than the draught wanted stays as it is, and a
//! rounding below a wall moves with the wall.

mod shift;
mod split;
mod walls;

use measure::length::Length;
use thiserror::Error;

use self::shift::shifts;
use self::split::split_at;
use self::walls::walls;
use super::volume_mm3;
use crate::crossings;
use crate::draft::{DraftError, Side, Skin, by_skin, wanted};
use crate::mesh::{Edges, Mesh};
use crate::tree::Tree;
use crate::vector::{Vector, add, dot, norm, scale, sub};

/// How much draught is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Draught {
    /// The same angle on every wall, degrees.
    Degrees(f64),
    /// By the depth of each wall and what the pattern is made of: [`crate::draft::WANTED`]; on
    /// walls shallower than an inch, where a length says little, [`crate::draft::BY_SKIN`] alone.
    ByDepth(Skin),
}

/// Which half of the mould a wall can leave.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Draws {
    /// Nothing lies above or below: it parts where the joint crosses it.
    BothWays,
    /// With the cope: metal lies below.
    Up,
    /// With the drag: metal lies above.
    Down,
    /// With neither: metal lies above and below.
    Neither,
}

/// A wall: a smooth patch of facets steeper than the draught wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wall {
    /// A place on it, mm.
    pub place_mm: Vector,
    /// Its area, mm².
    pub area_mm2: f64,
    /// Its greatest depth, mm: from the joint, or from its own nearer end.
    pub depth_mm: f64,
    /// Whether sand stands around it or within it.
    pub side: Side,
    /// How it leaves the sand.
    pub draws: Draws,
    /// Draught it had, degrees, on the mean.
    pub had_degrees: f64,
    /// Draught it has now, degrees, on the mean.
    pub has_degrees: f64,
}

/// A part with draught on its walls.
#[derive(Clone, Debug)]
pub struct Tapered {
    /// Its skin.
    pub mesh: Mesh,
    /// The walls, the largest first; those that draw neither way are as they were.
    pub walls: Vec<Wall>,
    /// What it held before, mm³.
    pub before_mm3: f64,
    /// What it holds now, mm³.
    pub after_mm3: f64,
}

/// Why no taper was given.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum TaperError {
    /// An angle that is no draught.
    #[error("{degrees} degrees is no draught: take above 0 to {MOST_DEGREES}")]
    Angle {
        /// What was asked for.
        degrees: f64,
    },
    /// A wall deeper than the rules go.
    #[error("the wall at ({:.1}, {:.1}, {:.1}) mm: {error}", place_mm[0], place_mm[1], place_mm[2])]
    TooDeep {
        /// A place on the wall.
        place_mm: Vector,
        /// What the rule says.
        error: DraftError,
    },
    /// The tapered skin passes through itself.
    #[error(
        "the draught makes walls meet at ({:.1}, {:.1}, {:.1}) mm: there is no room for it there; \
         ask for less, round or fill that place, or put the joint elsewhere",
        place_mm[0], place_mm[1], place_mm[2]
    )]
    NoRoom {
        /// Where.
        place_mm: Vector,
    },
    /// The skin was not closed.
    #[error(
        "the skin is open at ({:.1}, {:.1}, {:.1}) mm: mend the mesh first",
        place_mm[0], place_mm[1], place_mm[2]
    )]
    Open {
        /// Where.
        place_mm: Vector,
    },
}

/// More than any rule asks for; the cone of a funnel is drawn, not tapered.
pub const MOST_DEGREES: f64 = 10.0;

/// Height of the joint over a place of the plan, mm.
pub type Heights<'a> = &'a (dyn Fn([f64; 2]) -> f64 + Sync);

/// The mesh with draught on the walls that want it, about a flat joint at `joint_mm` along z.
///
/// # Errors
///
/// No angle, a wall deeper than the rules go, or a place without room for the taper.
pub fn tapered(mesh: &Mesh, joint_mm: f64, draught: Draught) -> Result<Tapered, TaperError> {
    tapered_about(mesh, &|_| joint_mm, draught)
}

/// The same about a joint that wanders: its height is asked for over places of the plan.
///
/// # Errors
///
/// As for [`tapered`].
pub fn tapered_about(
    mesh: &Mesh,
    joint: Heights<'_>,
    draught: Draught,
) -> Result<Tapered, TaperError> {
    if let Draught::Degrees(degrees) = draught
        && !(degrees > 0.0 && degrees <= MOST_DEGREES)
    {
        return Err(TaperError::Angle { degrees });
    }
    if let Some(side) = Edges::of(mesh).open().first() {
        let place_mm = mesh.points[side.low as usize];
        return Err(TaperError::Open { place_mm });
    }
    let (split, over_mm) = split_at(mesh, joint);
    let walls = walls(&split, &over_mm, draught)?;
    let moves = shifts(&split, &walls, &over_mm);
    let points = split.points.iter().zip(&moves);
    let tapered = Mesh {
        points: points
            .map(|(&point, &[x, y])| add(point, [x, y, 0.0]))
            .collect(),
        triangles: split.triangles.clone(),
    };
    if let Some(place_mm) = turned_over(&split, &tapered).or_else(|| crossing(&tapered)) {
        return Err(TaperError::NoRoom { place_mm });
    }
    let mut told: Vec<Wall> = walls.patches.iter().map(|patch| patch.wall).collect();
    told.sort_by(|a, b| b.area_mm2.total_cmp(&a.area_mm2));
    Ok(Tapered {
        before_mm3: volume_mm3(mesh),
        after_mm3: volume_mm3(&tapered),
        mesh: tapered,
        walls: told,
    })
}

/// A facet that large, mm², turned over is a fold; smaller ones are needles along an edge, whose
/// side is a matter of rounding.
const FOLD_MM2: f64 = 0.01;

/// A place where the skin has folded back on itself: a flat between two walls, eaten up by both.
fn turned_over(before: &Mesh, after: &Mesh) -> Option<Vector> {
    let turned = |facet: &usize| {
        let [old, new] = [before, after].map(|mesh| mesh.normal(*facet));
        dot(old, new) < 0.0 && norm(new) > 2.0 * FOLD_MM2
    };
    let facet = (0..after.triangles.len()).find(turned)?;
    let (old, new) = (before.corners(facet), after.corners(facet));
    let side = |corners: [Vector; 3], i: usize| sub(corners[(i + 1) % 3], corners[i]);
    // The side that has changed its direction lies where the walls have met.
    let met = (0..3).find(|&i| dot(side(old, i), side(new, i)) < 0.0);
    let (a, b) = (new[met.unwrap_or(0)], new[(met.unwrap_or(0) + 1) % 3]);
    Some(scale(add(a, b), 0.5))
}

/// A place where the skin passes through itself.
fn crossing(mesh: &Mesh) -> Option<Vector> {
    let found = crossings::find(mesh, &Tree::over(mesh));
    match !found.facets.is_empty() || found.was_given_up {
        true => Some(found.place.unwrap_or_default()),
        false => None,
    }
}

/// Tangent of the draught wanted on a wall of a depth.
fn tangent(draught: Draught, depth_mm: f64, side: Side) -> Result<f64, DraftError> {
    match draught {
        Draught::Degrees(degrees) => Ok(degrees.to_radians().tan()),
        Draught::ByDepth(skin) => {
            let depth = Length::from_mm(depth_mm);
            match depth < Length::from_inch(1.0) {
                true => Ok(by_skin(depth, skin, side)?.value),
                false => Ok(wanted(depth, skin, side)? / depth),
            }
        }
    }
}

/// Steepest that a facet may stand and still be no wall, degrees: the angle asked for, or the
/// largest of the tables.
fn wall_degrees(draught: Draught) -> f64 {
    match draught {
        Draught::Degrees(degrees) => degrees,
        Draught::ByDepth(_) => 3.0,
    }
}
