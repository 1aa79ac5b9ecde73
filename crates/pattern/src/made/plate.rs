//! Several patterns on one board: a match plate with cope halves on top and drag halves below, or
//! a pattern board where the patterns lie on one side of the joint only.

use thiserror::Error;

use super::plain::block;
use crate::boolean::{Body, BooleanError};
use crate::mesh::Mesh;
use crate::shape::ShapeError;

/// What the board has to be like; the sand walls are those of the mould.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateWish {
    /// Patterns on it.
    pub count: usize,
    /// Thickness of the board, mm.
    pub thickness_mm: f64,
    /// Length and width of the board, mm, where it is given: the inside of the flask.
    pub size_mm: Option<[f64; 2]>,
    /// Sand from a pattern to the wall of the flask, mm.
    pub to_wall_mm: f64,
    /// Sand between two patterns, mm: the gates run there.
    pub between_mm: f64,
}

/// A board with its patterns.
#[derive(Clone, Debug)]
pub struct Plate {
    /// Its skin; the middle of the board's thickness lies on the joint.
    pub mesh: Mesh,
    /// Whether it has patterns on both sides.
    pub is_match_plate: bool,
    /// Length and width, mm.
    pub size_mm: [f64; 2],
    /// Middles of the patterns' boxes in the plan, mm, from a corner of the board.
    pub places_mm: Vec<[f64; 2]>,
    /// Whether the patterns are turned a quarter.
    pub is_turned: bool,
}

/// Why there is no board.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum PlateError {
    /// No pattern, or more than anybody moulds.
    #[error("{count} patterns on a board: take 1 to {MOST}")]
    Count {
        /// As given.
        count: usize,
    },
    /// A length that is none.
    #[error("{what} of {mm} mm is none: take {range}")]
    Length {
        /// Which.
        what: &'static str,
        /// As given.
        mm: f64,
        /// What is taken.
        range: &'static str,
    },
    /// The board is too small for so many.
    #[error(
        "the board takes {fits} of {count} patterns with {to_wall_mm:.0} mm of sand at the walls \
         and {between_mm:.0} mm between: a board of {:.0} x {:.0} mm takes them all", wanted_mm[0],
        wanted_mm[1]
    )]
    NoRoom {
        /// Patterns asked for.
        count: usize,
        /// Patterns that fit.
        fits: usize,
        /// Sand at the walls.
        to_wall_mm: f64,
        /// Sand between.
        between_mm: f64,
        /// Length and width wanted.
        wanted_mm: [f64; 2],
    },
    /// The board could not be made.
    #[error("board: {0}")]
    Shape(#[from] ShapeError),
    /// The solids could not be joined.
    #[error("board: {0}")]
    Join(#[from] BooleanError),
}

/// More patterns on one board are a mistyped number.
const MOST: usize = 64;

/// The board of a pattern with a flat joint at `joint_mm`.
///
/// # Errors
///
/// Lengths that are none, or a board too small.
pub fn plate(pattern: &Mesh, joint_mm: f64, wish: &PlateWish) -> Result<Plate, PlateError> {
    check(wish)?;
    let [low, high] = pattern.bounds();
    let layout = laid_out([high[0] - low[0], high[1] - low[1]], wish)?;
    let own = match layout.is_turned {
        true => turned(pattern),
        false => pattern.clone(),
    };
    let [own_low, own_high] = own.bounds();
    let middle = [0, 1].map(|axis| (own_low[axis] + own_high[axis]) / 2.0);
    let half = wish.thickness_mm / 2.0;
    let [above, below] = Body::of(&own)?.cut_by_plane([0.0, 0.0, 1.0], joint_mm)?;
    let [length, width] = layout.size_mm;
    let corner = [0.0, 0.0, joint_mm - half];
    let mut board = Body::of(&block(corner, [length, width, joint_mm + half])?)?;
    for [x, y] in &layout.places_mm {
        for (part, up) in [(&above, half), (&below, -half)] {
            if is_there(part) {
                let moved = part.mesh().moved([x - middle[0], y - middle[1], up]);
                board = board.with(&Body::of(&moved)?)?;
            }
        }
    }
    Ok(Plate {
        mesh: board.mesh(),
        is_match_plate: is_there(&above) && is_there(&below),
        size_mm: layout.size_mm,
        places_mm: layout.places_mm,
        is_turned: layout.is_turned,
    })
}

/// Less than this, mm³, is a film on the joint.
const FILM_MM3: f64 = 1e-3;

fn is_there(part: &Body) -> bool {
    part.volume_mm3() > FILM_MM3
}

fn check(wish: &PlateWish) -> Result<(), PlateError> {
    if !(1..=MOST).contains(&wish.count) {
        return Err(PlateError::Count { count: wish.count });
    }
    let [length, width] = wish.size_mm.unwrap_or([LEAST_SIDE_MM; 2]);
    let lengths = [
        ("a thickness", wish.thickness_mm, 2.0..=100.0, "2 to 100 mm"),
        ("a sand wall", wish.to_wall_mm, 0.0..=500.0, "0 to 500 mm"),
        (
            "sand between patterns",
            wish.between_mm,
            0.0..=500.0,
            "0 to 500 mm",
        ),
        ("a length", length, LEAST_SIDE_MM..=5000.0, "20 mm to 5 m"),
        ("a width", width, LEAST_SIDE_MM..=5000.0, "20 mm to 5 m"),
    ];
    for (what, mm, taken, range) in lengths {
        if !taken.contains(&mm) {
            return Err(PlateError::Length { what, mm, range });
        }
    }
    Ok(())
}

/// Least side of a board, mm.
const LEAST_SIDE_MM: f64 = 20.0;

struct Laid {
    size_mm: [f64; 2],
    places_mm: Vec<[f64; 2]>,
    is_turned: bool,
}

/// Rows and columns of patterns: on a given board as they fit, else on the smallest board.
fn laid_out(plan: [f64; 2], wish: &PlateWish) -> Result<Laid, PlateError> {
    let side = |each: f64, count: usize| {
        count as f64 * (each + wish.between_mm) - wish.between_mm + 2.0 * wish.to_wall_mm
    };
    let grids = (1..=wish.count).flat_map(|columns| {
        let rows = wish.count.div_ceil(columns);
        [false, true].map(|is_turned| {
            let each = if is_turned { [plan[1], plan[0]] } else { plan };
            let size = [side(each[0], columns), side(each[1], rows)];
            (columns, rows, is_turned, each, size)
        })
    });
    // The smallest first; of boards alike the squarer, as a flask is.
    let worth = |size: [f64; 2]| size[0] * size[1] + (size[0] - size[1]).powi(2) / 4.0;
    let mut grids: Vec<_> = grids.collect();
    grids.sort_by(|a, b| worth(a.4).total_cmp(&worth(b.4)));
    let fits = |size: [f64; 2]| match wish.size_mm {
        Some(board) => size[0] <= board[0] + 1e-9 && size[1] <= board[1] + 1e-9,
        None => true,
    };
    let Some(&(columns, _, is_turned, each, least)) = grids.iter().find(|grid| fits(grid.4)) else {
        return Err(no_room(plan, wish, grids[0].4));
    };
    let size_mm = wish.size_mm.unwrap_or(least);
    let place = |number: usize| {
        let at = [number % columns, number / columns];
        [0, 1].map(|axis| {
            let start = (size_mm[axis] - least[axis]) / 2.0 + wish.to_wall_mm;
            start + at[axis] as f64 * (each[axis] + wish.between_mm) + each[axis] / 2.0
        })
    };
    Ok(Laid {
        size_mm,
        places_mm: (0..wish.count).map(place).collect(),
        is_turned,
    })
}

fn no_room(plan: [f64; 2], wish: &PlateWish, wanted_mm: [f64; 2]) -> PlateError {
    let board = wish.size_mm.unwrap_or(wanted_mm);
    let along = |board: f64, each: f64| {
        let room = board - 2.0 * wish.to_wall_mm + wish.between_mm;
        (room / (each + wish.between_mm)).floor().max(0.0) as usize
    };
    let fits = |plan: [f64; 2]| along(board[0], plan[0]) * along(board[1], plan[1]);
    PlateError::NoRoom {
        count: wish.count,
        fits: fits(plan).max(fits([plan[1], plan[0]])),
        to_wall_mm: wish.to_wall_mm,
        between_mm: wish.between_mm,
        wanted_mm,
    }
}

/// A quarter turn about z.
fn turned(mesh: &Mesh) -> Mesh {
    Mesh {
        points: mesh.points.iter().map(|&[x, y, z]| [-y, x, z]).collect(),
        triangles: mesh.triangles.clone(),
    }
}
