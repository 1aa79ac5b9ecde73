//! Everything that a draw asks of a skin, facet by facet: what draws neither way, how the walls
//! lean, how thick metal and sand are, where corners want a fillet.
//!
//! The facets of a drawing may be as large as its faces, and one figure for a whole face is no map.
//! So they are cut first until they are small beside the part.

use super::balls::balls_mm;
use super::draught::{Draught, DraughtError, draught};
use super::undercut::{Undercuts, undercuts};
use super::walls::{Least, Walls, walls};
use super::{DrawError, DrawSettings};
use crate::boolean::{Body, BooleanError};
use crate::draft::Skin;
use crate::mesh::Mesh;
use crate::vector::{Vector, norm};

/// The maps of a skin; every list has one entry for each facet of `mesh`.
#[derive(Clone, Debug)]
pub struct Maps {
    /// The part, its facets cut small, mm.
    pub mesh: Mesh,
    /// What is held.
    pub undercuts: Undercuts,
    /// The lean of the walls.
    pub draught: Draught,
    /// Metal, sand and corners.
    pub walls: Walls,
    /// Diameter of the largest ball in the metal at each facet, mm.
    pub ball_mm: Vec<Option<f64>>,
}

/// What to look for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sought {
    /// The way the cope is lifted.
    pub up: Vector,
    /// Height of the joint along it, mm from the part's origin.
    pub level_mm: f64,
    /// What the skin of the pattern is like.
    pub skin: Skin,
    /// The least of metal, sand and corners.
    pub least: Least,
}

/// Why there are no maps.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum MapsError {
    /// The draught.
    #[error(transparent)]
    Draught(#[from] DraughtError),
    /// The part cannot be looked at.
    #[error(transparent)]
    Draw(#[from] DrawError),
    /// Its facets could not be cut.
    #[error("the facets of the part cannot be cut small: {0}")]
    Facets(#[from] BooleanError),
}

/// Sides of facets are cut to this share of the part, along the diagonal of its box. Half as
/// long they make four times as many facets; twice as long a rib shows as one stripe.
const SHARE: f64 = 1.0 / 60.0;

/// What stands for one facet on the maps, in the order of its weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Draws neither way.
    Held,
    /// Sand before it is too thin to stand.
    ThinSand,
    /// Metal behind it is thinner than it runs.
    ThinMetal,
    /// Wants more draught.
    ShortOfDraught,
    /// Ends at an inside corner without a fillet.
    SharpCorner,
    /// Nothing is wrong with it.
    Clear,
}

impl Kind {
    /// All of them.
    pub const ALL: [Kind; 6] = [
        Kind::Held,
        Kind::ThinSand,
        Kind::ThinMetal,
        Kind::ShortOfDraught,
        Kind::SharpCorner,
        Kind::Clear,
    ];
}

/// The maps of a closed mesh, outward wound and in mm.
///
/// # Errors
///
/// A part that cannot be looked at, or is drawn deeper than the rules of draught go.
pub fn maps(part: &Mesh, sought: &Sought, settings: &DrawSettings) -> Result<Maps, MapsError> {
    let mesh = Body::of(part)?
        .with_sides_up_to(SHARE * part.diagonal())?
        .mesh();
    Ok(Maps {
        undercuts: undercuts(&mesh, sought.up, settings)?,
        draught: draught(&mesh, sought.up, sought.level_mm, sought.skin, settings)?,
        walls: walls(&mesh, &sought.least),
        ball_mm: balls_mm(&mesh),
        mesh,
    })
}

/// A facet is held if this share of it draws neither way: less is the rim of what does.
const HELD_SHARE: f64 = 0.5;

/// Less than this of missing draught is rounding of the drawing, degrees.
pub const DRAUGHT_PLAY_DEGREES: f64 = 0.1;

impl Maps {
    /// Draught that the wall of a facet has and that it lacks, degrees; none off the walls.
    pub fn draught_degrees(&self, facet: usize) -> Option<[f64; 2]> {
        let patch = &self.draught.patches[self.draught.patch_of[facet]?];
        Some([patch.present_degrees, patch.missing_degrees()])
    }

    /// Share of a facet that draws neither way.
    pub fn held_share(&self, facet: usize) -> f64 {
        let area = norm(self.mesh.normal(facet)) / 2.0;
        match area > 0.0 {
            true => (self.undercuts.facet_mm2[facet] / area).min(1.0),
            false => 0.0,
        }
    }

    /// What weighs most at a facet.
    pub fn kind(&self, facet: usize, least: &Least) -> Kind {
        let is_less = |found: Option<f64>, least: f64| found.is_some_and(|mm| mm < least);
        let lacks = self.draught_degrees(facet).map_or(0.0, |[_, lacks]| lacks);
        match () {
            () if self.held_share(facet) > HELD_SHARE => Kind::Held,
            () if is_less(self.walls.sand_mm[facet], least.sand_mm) => Kind::ThinSand,
            () if is_less(self.walls.metal_mm[facet], least.metal_mm) => Kind::ThinMetal,
            () if lacks > DRAUGHT_PLAY_DEGREES => Kind::ShortOfDraught,
            () if self.walls.turn_degrees[facet] > least.corner_degrees => Kind::SharpCorner,
            () => Kind::Clear,
        }
    }
}
