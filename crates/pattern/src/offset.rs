//! A solid grown or shrunk by a distance, all over.
//!
//! The skin of the result is where the distance to the old skin is the one asked for. That field
//! of distances is looked at on a lattice, and the new skin is drawn through it: flats come out
//! true, and sharp edges are cut off by about a third of a side of the lattice. What is told as
//! the error is measured on the result.

use rayon::prelude::*;
use thiserror::Error;

use crate::boolean::{Body, BooleanError};
use crate::distance::{is_inside, nearest};
use crate::mesh::Mesh;
use crate::rays;
use crate::tree::Tree;
use crate::vector::{Vector, add, dot, norm, scale, sub};

/// A solid grown or shrunk.
#[derive(Clone, Debug)]
pub struct Offset {
    /// Its skin in millimetres, closed and wound outward.
    pub mesh: Mesh,
    /// What it holds, mm³.
    pub volume_mm3: f64,
    /// Farthest that the middle of any facet lies from where it should.
    pub error_mm: f64,
    /// The narrowest gap or hole that growing has closed, if any.
    pub closed_gap: Option<Narrow>,
}

/// A narrow place of a solid or of the room beside it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Narrow {
    /// A place on the skin.
    pub place_mm: Vector,
    /// From there straight across.
    pub width_mm: f64,
}

/// Why a solid was not grown or shrunk.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum OffsetError {
    /// A distance or an error that is no length.
    #[error(
        "{by_mm} mm to within {error_mm} mm is no offset; give finite lengths, the error not \
             zero"
    )]
    NoLength {
        /// The distance asked for.
        by_mm: f64,
        /// The error asked for.
        error_mm: f64,
    },
    /// A lattice for this error would not fit.
    #[error("to within {error_mm} mm is too fine for a part of this size; allow {finest_mm:.3} mm")]
    TooFine {
        /// The error asked for.
        error_mm: f64,
        /// The smallest that can be asked for.
        finest_mm: f64,
    },
    /// Shrinking leaves nothing of a wall.
    #[error(
        "shrinking by {by_mm} mm eats the wall of {:.2} mm at ({:.1}, {:.1}, {:.1}) mm; shrink by \
         less than half of that wall, or make it thicker",
        wall.width_mm, wall.place_mm[0], wall.place_mm[1], wall.place_mm[2]
    )]
    WallEaten {
        /// How much was to go on each side.
        by_mm: f64,
        /// The thinnest wall.
        wall: Narrow,
    },
    /// Shrinking leaves nothing at all.
    #[error("shrinking by {by_mm} mm leaves nothing; shrink by less")]
    NothingLeft {
        /// How much was to go on each side.
        by_mm: f64,
    },
    /// The skin could not be drawn.
    #[error("the part cannot be grown or shrunk: {0}")]
    Boolean(#[from] BooleanError),
}

/// Most places of a lattice that are looked at. Twice as many take twice the time, some seconds,
/// and up to half a gigabyte; with half as many a part of 300 mm is known to no better than 2 mm.
const MOST_PLACES: f64 = 4e6;

/// Side of the lattice as a multiple of the error: an edge cut off by a third of a side is then
/// well within it. With a larger one sharp edges break the promise, a smaller one costs its cube.
const STEP_PER_ERROR: f64 = 2.0;

/// Sides of the lattice along a block of places that are settled by one look: far from the skin
/// one is enough for all. Smaller blocks take more looks, larger ones settle fewer places.
const BLOCK: f64 = 3.0;

/// Cosine between the outward directions of two faces from which they are the sides of one wall:
/// half a right angle less a third off from back to back. A blunt edge is not a wall, though both
/// its faces meet; a wall with draft of any sensible angle is one.
const BACK_TO_BACK: f64 = -0.866;

/// Most looks along each side of a facet for a narrow place.
const MOST_LOOKS: f64 = 16.0;

/// Grows a closed solid by `by_mm`, or shrinks it if that is negative, with a skin that is to lie
/// within `error_mm` of the true one. Edges that point away from the new skin become round.
///
/// # Errors
///
/// Lengths that are none, an error too fine for the size, a wall that shrinking would eat, or a
/// skin that does not close.
pub fn offset(mesh: &Mesh, by_mm: f64, error_mm: f64) -> Result<Offset, OffsetError> {
    if !(by_mm.is_finite() && error_mm.is_finite() && error_mm > 0.0) {
        return Err(OffsetError::NoLength { by_mm, error_mm });
    }
    let whole = Body::of(mesh)?;
    if by_mm == 0.0 {
        let volume_mm3 = whole.volume_mm3();
        return Ok(Offset {
            mesh: mesh.clone(),
            volume_mm3,
            error_mm: 0.0,
            closed_gap: None,
        });
    }
    let bounds = room_for(mesh, by_mm, error_mm);
    let finest_mm = finest_error_mm(bounds);
    if error_mm < finest_mm {
        return Err(OffsetError::TooFine {
            error_mm,
            finest_mm,
        });
    }
    let tree = Tree::over(mesh);
    let narrow = narrowest(mesh, &tree, by_mm);
    if let Some(wall) = narrow.filter(|_| by_mm < 0.0) {
        return Err(OffsetError::WallEaten {
            by_mm: -by_mm,
            wall,
        });
    }
    let field = Field::over(mesh, &tree, bounds, STEP_PER_ERROR * error_mm);
    let depth = |place: Vector| by_mm + field.depth_against(place, -by_mm);
    let body = Body::of_field(depth, bounds, STEP_PER_ERROR * error_mm, error_mm / 10.0)?;
    if body.is_empty() {
        return Err(OffsetError::NothingLeft { by_mm: -by_mm });
    }
    let result = body.mesh();
    Ok(Offset {
        error_mm: largest_error(&result, mesh, &tree, by_mm.abs()),
        volume_mm3: body.volume_mm3(),
        mesh: result,
        closed_gap: narrow,
    })
}

fn room_for(mesh: &Mesh, by_mm: f64, error_mm: f64) -> [Vector; 2] {
    let [low, high] = mesh.bounds();
    let margin = by_mm.max(0.0) + 2.0 * STEP_PER_ERROR * error_mm;
    [low.map(|x| x - margin), high.map(|x| x + margin)]
}

/// The lattice holds two places for every cube with its side.
fn finest_error_mm([low, high]: [Vector; 2]) -> f64 {
    let room: f64 = (0..3).map(|i| high[i] - low[i]).product();
    (2.0 * room / MOST_PLACES).cbrt() / STEP_PER_ERROR
}

/// Depths below the skin, settled block by block where that is enough.
struct Field<'a> {
    mesh: &'a Mesh,
    tree: &'a Tree,
    low: Vector,
    side: f64,
    counts: [usize; 3],
    /// Depth of the middle of each block below the skin, negative outside.
    middles: Vec<f64>,
}

impl Field<'_> {
    fn over<'a>(mesh: &'a Mesh, tree: &'a Tree, bounds: [Vector; 2], step: f64) -> Field<'a> {
        let [low, high] = bounds;
        let side = BLOCK * step;
        let counts = [0, 1, 2].map(|i| ((high[i] - low[i]) / side).ceil().max(1.0) as usize);
        let mut field = Field {
            mesh,
            tree,
            low,
            side,
            counts,
            middles: Vec::new(),
        };
        field.middles = (0..counts.iter().product())
            .into_par_iter()
            .map(|block| {
                let middle = field.middle(block);
                let distance = nearest(mesh, tree, middle, f64::MAX).map_or(0.0, |n| n.distance);
                if is_inside(mesh, tree, middle) {
                    distance
                } else {
                    -distance
                }
            })
            .collect();
        field
    }

    fn middle(&self, block: usize) -> Vector {
        let [nx, ny, _] = self.counts;
        let middle = |at: usize, i: usize| self.low[i] + self.side * (at as f64 + 0.5);
        [
            middle(block % nx, 0),
            middle(block / nx % ny, 1),
            middle(block / (nx * ny), 2),
        ]
    }

    /// Depth of a place below the skin, exact where it can be within a step of `level`; elsewhere
    /// the depth of the middle of its block, which lies on the same side of `level`.
    fn depth_against(&self, place: Vector, level: f64) -> f64 {
        let at = |i: usize| {
            let block = ((place[i] - self.low[i]) / self.side).max(0.0) as usize;
            block.min(self.counts[i] - 1)
        };
        let block = at(0) + self.counts[0] * (at(1) + self.counts[1] * at(2));
        let known = self.middles[block];
        let away = norm(sub(place, self.middle(block)));
        if (known - level).abs() > away + self.side / BLOCK {
            return known;
        }
        let found = nearest(self.mesh, self.tree, place, known.abs() + away);
        let distance = found.map_or(known.abs(), |n| n.distance);
        let is_in_metal = if known.abs() > away {
            known > 0.0
        } else {
            is_inside(self.mesh, self.tree, place)
        };
        if is_in_metal { distance } else { -distance }
    }
}

/// The narrowest wall that shrinking, or gap that growing, would leave nothing of.
fn narrowest(mesh: &Mesh, tree: &Tree, by_mm: f64) -> Option<Narrow> {
    let widest = 2.0 * by_mm.abs();
    let of_facets = (0..mesh.triangles.len())
        .into_par_iter()
        .filter_map(|facet| {
            let normal = mesh.normal(facet);
            let outward = scale(normal, 1.0 / norm(normal));
            if !outward[0].is_finite() {
                return None;
            }
            let across = scale(outward, by_mm.signum());
            let looks = looks_on(mesh, facet, widest).into_iter();
            let narrow = looks.filter_map(|place_mm| {
                let (other, width_mm) =
                    rays::first_met(mesh, tree, lifted(place_mm, across), across)?;
                let facing = mesh.normal(other as usize);
                let is_wall = dot(facing, outward) <= BACK_TO_BACK * norm(facing);
                (width_mm < widest && is_wall).then_some(Narrow { place_mm, width_mm })
            });
            narrow.min_by(|a, b| a.width_mm.total_cmp(&b.width_mm))
        });
    let all: Vec<Narrow> = of_facets.collect();
    all.into_iter()
        .min_by(|a, b| a.width_mm.total_cmp(&b.width_mm))
}

/// A place lifted off its facet by less than can be told, so that a line from it does not meet
/// the facet itself.
fn lifted(place: Vector, across: Vector) -> Vector {
    let size = place.iter().fold(1.0, |most: f64, x| most.max(x.abs()));
    add(place, scale(across, 1e-9 * size))
}

/// Places on a facet, no farther apart than twice the width in question unless it is very large.
fn looks_on(mesh: &Mesh, facet: usize, width: f64) -> Vec<Vector> {
    let [a, b, c] = mesh.corners(facet);
    let (ab, ac) = (sub(b, a), sub(c, a));
    let longest = norm(ab).max(norm(ac)).max(norm(sub(c, b)));
    let count = (longest / (2.0 * width)).ceil().clamp(1.0, MOST_LOOKS) as usize;
    let place = |i: usize, j: usize, within: f64| {
        let [u, v] = [i, j].map(|at| (at as f64 + within) / count as f64);
        add(a, add(scale(ab, u), scale(ac, v)))
    };
    let pairs = (0..count).flat_map(|i| (0..count - i).map(move |j| (i, j)));
    pairs
        .flat_map(|(i, j)| {
            let upper = (i + j + 1 < count).then(|| place(i, j, 2.0 / 3.0));
            [Some(place(i, j, 1.0 / 3.0)), upper].into_iter().flatten()
        })
        .collect()
}

fn largest_error(result: &Mesh, mesh: &Mesh, tree: &Tree, wanted: f64) -> f64 {
    let errors = (0..result.triangles.len()).into_par_iter().map(|facet| {
        let [a, b, c] = result.corners(facet);
        let middle = scale(add(add(a, b), c), 1.0 / 3.0);
        let found = nearest(mesh, tree, middle, f64::MAX);
        found.map_or(0.0, |n| (n.distance - wanted).abs())
    });
    errors.reduce(|| 0.0, f64::max)
}
