//! Draught by a real taper of the walls about the joint.
//!
//! Metal is only ever added. A skirt hangs on every crest, the edge in which a wall begins at its
//! end farthest from the joint, and spreads by the draught wanted until it comes to rest on metal
//! or on the joint; the pattern is the part and all skirts together. A skirt that hangs over the
//! edge of what it rests on goes on beside it, so that a boss flush with the side of its plate
//! draws as well as one in its middle. Where the other side of the joint spreads farther, a skirt
//! begins farther out, so that both halves meet. What is less steep than the draught wanted
//! stays as it is, and so does a rounding below a wall but for what the skirt covers.
//!
//! Where two walls face each other and there is no room for both skirts, they spread less, only
//! there, and it is told.

mod crest;
mod hem;
mod room;
mod shade;
mod skirt;
mod split;
mod upright;
mod walls;

use measure::length::Length;
use thiserror::Error;

use self::crest::{crests, cut_fine};
use self::hem::Hems;
use self::room::fit;
use self::shade::shade;
use self::skirt::{Skirt, skirts};
use self::split::split_at;
use self::walls::walls;
use super::volume_mm3;
use crate::boolean::{Body, BooleanError, NEEDLE_MM};
use crate::draft::{DraftError, Side, Skin, by_skin, wanted};
use crate::mesh::{Edges, Mesh};
use crate::tree::Tree;
use crate::vector::Vector;

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

/// A place without room for the draught wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tight {
    /// Where, mm.
    pub place_mm: Vector,
    /// From the wall there to what stands across, mm, before any draught.
    pub gap_mm: f64,
    /// Draught wanted, degrees.
    pub wanted_degrees: f64,
    /// Draught that was given there, degrees.
    pub has_degrees: f64,
}

/// A part with draught on its walls.
#[derive(Clone, Debug)]
pub struct Tapered {
    /// Its skin.
    pub mesh: Mesh,
    /// The walls, the largest first; those that draw neither way are as they were.
    pub walls: Vec<Wall>,
    /// The tightest place of each wall without room for all of its draught.
    pub tight: Vec<Tight>,
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
    /// The skin was not closed.
    #[error(
        "the skin is open at ({:.1}, {:.1}, {:.1}) mm: mend the mesh first",
        place_mm[0], place_mm[1], place_mm[2]
    )]
    Open {
        /// Where.
        place_mm: Vector,
    },
    /// The skirts could not be joined to the part.
    #[error("the draught could not be joined to the part: {0}")]
    Join(#[from] BooleanError),
}

impl TaperError {
    /// The same with its place told in another frame.
    #[must_use]
    pub fn told_at(mut self, frame: impl Fn(Vector) -> Vector) -> TaperError {
        match &mut self {
            TaperError::TooDeep { place_mm, .. } | TaperError::Open { place_mm } => {
                *place_mm = frame(*place_mm);
            }
            TaperError::Angle { .. } | TaperError::Join(_) => {}
        }
        self
    }
}

/// More than any rule asks for; the cone of a funnel is drawn, not tapered.
pub const MOST_DEGREES: f64 = 10.0;

/// Height of the joint over a place of the plan, mm.
pub type Heights<'a> = &'a (dyn Fn([f64; 2]) -> f64 + Sync);

/// The mesh with draught on the walls that want it, about a flat joint at `joint_mm` along z.
///
/// # Errors
///
/// No angle, a wall deeper than the rules go, or a skin that is open.
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
    let (mut split, over_mm) = split_at(mesh, joint);
    let walls = walls(&split, &over_mm, draught)?;
    let tree = Tree::over(&split);
    let crests = crests(&split, &walls);
    let crests = cut_fine(&mut split, crests, joint);
    let mut skirts = skirts(&split, &tree, &walls, &crests, joint);
    let tight = fit(&split, &tree, &walls, &mut skirts);
    let tapered = with_skirts(mesh, &split, &skirts)?;
    let mut told: Vec<Wall> = walls.patches.iter().map(|patch| patch.wall).collect();
    told.sort_by(|a, b| b.area_mm2.total_cmp(&a.area_mm2));
    Ok(Tapered {
        before_mm3: volume_mm3(mesh),
        after_mm3: volume_mm3(&tapered),
        mesh: tapered,
        walls: told,
        tight,
    })
}

/// The part and its skirts as one.
fn with_skirts(mesh: &Mesh, split: &Mesh, skirts: &[Skirt]) -> Result<Mesh, BooleanError> {
    if skirts.is_empty() {
        return Ok(mesh.clone());
    }
    let mut body = Body::of(mesh)?;
    let whole = Hems::of(split, skirts.iter().filter(|skirt| !skirt.leaks()));
    if !whole.triangles.is_empty() {
        body = body.with(&Body::rebuilt(&whole)?)?;
    }
    for way in [1.0, -1.0] {
        let leaks = |skirt: &&Skirt| skirt.leaks() && skirt.crest.way == way;
        let leaking = Hems::of(split, skirts.iter().filter(leaks));
        if !leaking.triangles.is_empty() {
            let shade = shade(mesh, way, &leaking)?;
            body = body.with(&Body::rebuilt(&leaking)?.without(&shade)?)?;
        }
    }
    Ok(body.tidied(NEEDLE_MM)?.mesh())
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
