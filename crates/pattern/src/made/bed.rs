//! A solid cut into pieces that fit the bed of a printer, with holes for dowels to join them again.

use thiserror::Error;

use super::pins::{PIN_DEPTH, Room, clear_mm, diameters, farthest_apart, nearest_to, places};
use super::plain::{along, rod};
use crate::boolean::{Body, BooleanError};
use crate::mesh::Mesh;
use crate::shape::ShapeError;
use crate::tree::Tree;
use crate::vector::{Vector, add, norm, scale};

/// The room a printer has, and the dowels at hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bed {
    /// Along x, y and z, mm.
    pub size_mm: [f64; 3],
    /// Diameter of the dowels, mm; left out, by the size of the solid.
    pub dowel_mm: Option<f64>,
    /// How much wider than the dowel its holes are, mm.
    pub clearance_mm: f64,
}

/// A solid in pieces.
#[derive(Clone, Debug)]
pub struct OnBed {
    /// The pieces, from the lowest corner on along x, then y, then z.
    pub pieces: Vec<BedPiece>,
    /// The dowels that join them.
    pub dowels: Vec<Dowel>,
    /// Cuts on which no dowel found room: these are glued flat on flat.
    pub without_dowel: Vec<Vector>,
}

/// One piece.
#[derive(Clone, Debug)]
pub struct BedPiece {
    /// Its skin, where it stands in the solid.
    pub mesh: Mesh,
    /// Its place among the pieces along x, y and z, counted from nought.
    pub place: [usize; 3],
    /// Whether it is turned a quarter about z to fit.
    pub is_turned: bool,
}

/// A dowel across a cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dowel {
    /// Its middle.
    pub place_mm: Vector,
    /// The axis along which it runs, 0 to 2.
    pub axis: usize,
    /// Across.
    pub diameter_mm: f64,
    /// How deep its hole goes into each piece.
    pub depth_mm: f64,
}

/// Why nothing was cut.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum BedError {
    /// A bed that takes nothing.
    #[error("a bed of {} x {} x {} mm prints nothing: give what your printer takes, from 30 mm on",
            size_mm[0], size_mm[1], size_mm[2])]
    Size {
        /// As given.
        size_mm: [f64; 3],
    },
    /// More pieces than anybody glues.
    #[error(
        "{pieces} pieces are more than the {MOST_PIECES} that are cut: print larger, or mill it"
    )]
    TooMany {
        /// How many it would take.
        pieces: usize,
    },
    /// A dowel hole could not be made.
    #[error("dowel hole: {0}")]
    Shape(#[from] ShapeError),
    /// The solid could not be cut.
    #[error("the solid cannot be cut: {0}")]
    Join(#[from] BooleanError),
}

/// More pieces than this are a mistyped bed.
const MOST_PIECES: usize = 64;

/// Least side of a bed, mm.
const LEAST_BED_MM: f64 = 30.0;

/// The solid in as few even pieces as fit the bed.
///
/// # Errors
///
/// A bed too small, or a solid that cannot be cut.
pub fn on_bed(mesh: &Mesh, bed: &Bed) -> Result<OnBed, BedError> {
    let size_mm = bed.size_mm;
    if !size_mm
        .iter()
        .all(|side| *side >= LEAST_BED_MM && side.is_finite())
    {
        return Err(BedError::Size { size_mm });
    }
    let (counts, is_turned) = counts(mesh, size_mm);
    let pieces = counts.iter().product();
    if pieces > MOST_PIECES {
        return Err(BedError::TooMany { pieces });
    }
    let mut cells = cut(mesh, counts)?;
    let (dowels, without_dowel) = dowels(mesh, counts, bed, &cells);
    for dowel in &dowels {
        let hole = hole(dowel, bed.clearance_mm)?;
        for (_, body) in &mut cells {
            *body = body.without(&hole)?;
        }
    }
    let pieces = cells.into_iter().map(|(place, body)| BedPiece {
        mesh: body.mesh(),
        place,
        is_turned,
    });
    Ok(OnBed {
        pieces: pieces.collect(),
        dowels,
        without_dowel,
    })
}

/// A solid may be larger than the bed by so much, mm, without a cut: rounding.
const SLACK_MM: f64 = 1e-6;

/// Pieces along each axis, and whether they are turned a quarter: the way that takes fewer.
fn counts(mesh: &Mesh, bed: [f64; 3]) -> ([usize; 3], bool) {
    let [low, high] = mesh.bounds();
    let of = |bed: [f64; 3]| {
        [0, 1, 2].map(|axis| {
            let pieces = ((high[axis] - low[axis] - SLACK_MM) / bed[axis]).ceil();
            pieces.max(1.0) as usize
        })
    };
    let (as_it_is, turned) = (of(bed), of([bed[1], bed[0], bed[2]]));
    match turned.iter().product::<usize>() < as_it_is.iter().product::<usize>() {
        true => (turned, true),
        false => (as_it_is, false),
    }
}

/// Where the solid is cut along an axis.
fn cut_at(bounds: [Vector; 2], counts: [usize; 3], axis: usize, number: usize) -> f64 {
    let [low, high] = bounds;
    low[axis] + (high[axis] - low[axis]) * number as f64 / counts[axis] as f64
}

type Cells = Vec<([usize; 3], Body)>;

fn cut(mesh: &Mesh, counts: [usize; 3]) -> Result<Cells, BedError> {
    let bounds = mesh.bounds();
    let mut cells = vec![([0; 3], Body::of(mesh)?)];
    for axis in (0..3).rev() {
        let mut next = Vec::new();
        for (place, mut rest) in cells {
            for number in 1..counts[axis] {
                let at = cut_at(bounds, counts, axis, number);
                let [ahead, behind] = rest.cut_by_plane(along(axis, 1.0), at)?;
                next.push((numbered(place, axis, number - 1), behind));
                rest = ahead;
            }
            next.push((numbered(place, axis, counts[axis] - 1), rest));
        }
        cells = next;
    }
    cells.retain(|(_, body)| !body.is_empty());
    cells.sort_by_key(|(place, _)| [place[2], place[1], place[0]]);
    Ok(cells)
}

fn numbered(mut place: [usize; 3], axis: usize, number: usize) -> [usize; 3] {
    place[axis] = number;
    place
}

/// Dowels on every cut between two pieces: two where they find room, else one.
fn dowels(mesh: &Mesh, counts: [usize; 3], bed: &Bed, cells: &Cells) -> (Vec<Dowel>, Vec<Vector>) {
    let bounds = mesh.bounds();
    let tree = Tree::over(mesh);
    let (mut found, mut without) = (Vec::new(), Vec::new());
    for (place, _) in cells {
        for axis in (0..3).filter(|&axis| place[axis] > 0) {
            let before = numbered(*place, axis, place[axis] - 1);
            if !cells.iter().any(|(other, _)| *other == before) {
                continue;
            }
            let corner = |more: usize| {
                [0, 1, 2].map(|axis| cut_at(bounds, counts, axis, place[axis] + more))
            };
            let cell = [corner(0), corner(1)];
            let level = cell[0][axis];
            let own = across(mesh, &tree, cell, axis, level, bed, &found);
            if own.is_empty() {
                let mut middle = scale(add(cell[0], cell[1]), 0.5);
                middle[axis] = level;
                without.push(middle);
            }
            found.extend(own);
        }
    }
    (found, without)
}

/// Dowels closer together than so many diameters are one too many.
const APART: f64 = 3.0;

fn across(
    mesh: &Mesh,
    tree: &Tree,
    cell: [Vector; 2],
    axis: usize,
    level: f64,
    bed: &Bed,
    taken: &[Dowel],
) -> Vec<Dowel> {
    for diameter_mm in diameters(mesh.diagonal(), bed.dowel_mm) {
        let depth_mm = PIN_DEPTH * diameter_mm;
        let room = Room {
            axis,
            reach_mm: [depth_mm, depth_mm],
            clear_mm: clear_mm(diameter_mm + bed.clearance_mm),
            from_mm: 0.0,
        };
        let mut free = places(mesh, tree, cell, room, |_| Some(level));
        free.retain(|&place_mm| {
            let own = Dowel {
                place_mm,
                axis,
                diameter_mm,
                depth_mm,
            };
            taken
                .iter()
                .all(|other| apart_mm(&own, other) >= 2.0 * room.clear_mm)
        });
        let middle = scale(add(cell[0], cell[1]), 0.5);
        let chosen = match farthest_apart(&free, APART * diameter_mm) {
            Some(pair) => pair.to_vec(),
            None => nearest_to(&free, middle).into_iter().collect(),
        };
        if !chosen.is_empty() {
            let dowel = |place_mm| Dowel {
                place_mm,
                axis,
                diameter_mm,
                depth_mm,
            };
            return chosen.into_iter().map(dowel).collect();
        }
    }
    Vec::new()
}

/// Least distance between the middle lines of two dowels that run along axes.
fn apart_mm(a: &Dowel, b: &Dowel) -> f64 {
    let reach = |dowel: &Dowel, axis: usize| {
        let half = if dowel.axis == axis {
            dowel.depth_mm
        } else {
            0.0
        };
        [dowel.place_mm[axis] - half, dowel.place_mm[axis] + half]
    };
    let gaps = [0, 1, 2].map(|axis| {
        let ([a_low, a_high], [b_low, b_high]) = (reach(a, axis), reach(b, axis));
        (b_low - a_high).max(a_low - b_high).max(0.0)
    });
    norm(gaps)
}

fn hole(dowel: &Dowel, clearance_mm: f64) -> Result<Body, BedError> {
    let way = along(dowel.axis, 1.0);
    let from = add(dowel.place_mm, scale(way, -dowel.depth_mm));
    let across = dowel.diameter_mm + clearance_mm;
    Ok(Body::of(&rod(from, way, across, 2.0 * dowel.depth_mm)?)?)
}
