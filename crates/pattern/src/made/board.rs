//! The oddside: a dummy cope half in which the pattern lies while the drag is rammed over it.
//!
//! It is the block above the joint less the pattern, closed by a base: turned over, its upper face
//! is the joint of the finished mould, and the drag rammed on it parts there without cutting. What
//! is made is held to that: oddside, pattern and drag fill their box, nothing twice, and the
//! oddside lets go of the pattern.

use thiserror::Error;

use super::joint::Joint;
use super::plain::{block, skin};
use super::volume_mm3;
use crate::boolean::{Body, BooleanError};
use crate::distance::nearest;
use crate::draw::joint::STEEPEST;
use crate::draw::undercut::undercuts;
use crate::draw::{DrawError, DrawSettings};
use crate::mesh::Mesh;
use crate::shape::ShapeError;
use crate::tree::Tree;
use crate::vector::{Vector, add, dot, norm, scale};

/// What the oddside has to be like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoardWish {
    /// Lowest and highest corner of the board in the plan, mm: the inside of the flask.
    pub plan_mm: [[f64; 2]; 2],
    /// Floor left over the highest place of the pattern, mm.
    pub base_mm: f64,
}

/// An oddside.
#[derive(Clone, Debug)]
pub struct Oddside {
    /// Its skin, where it stands over the joint; turn it over to print and to use it.
    pub mesh: Mesh,
    /// The drag that is rammed on it, down to as much below the pattern as the floor.
    pub drag: Mesh,
    /// How well the three fill their box.
    pub fill: Fill,
    /// Height over all, mm.
    pub height_mm: f64,
}

/// How oddside, pattern and drag fill the box around them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// Share of the box that is left empty.
    pub gap: f64,
    /// Share of the box that is filled twice.
    pub overlap: f64,
    /// Area on which oddside and drag meet, mm²: the joint beside the pattern.
    pub joint_mm2: f64,
}

/// Why there is no oddside.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum BoardError {
    /// Nothing of the pattern lies above the joint.
    #[error(
        "nothing of the pattern lies above the joint: ram the drag on any flat board, it needs no \
         oddside"
    )]
    NothingAbove,
    /// A floor that breaks.
    #[error("a floor of {base_mm} mm is none: take 2 to 100 mm")]
    Base {
        /// As given.
        base_mm: f64,
    },
    /// The pattern reaches over the board.
    #[error(
        "the pattern comes within {wall_mm:.1} mm of the edge of the board: leave {LEAST_WALL_MM} \
         mm or more, on a board of at least {:.0} x {:.0} mm", wanted_mm[0], wanted_mm[1]
    )]
    TooNarrow {
        /// What is left; negative where the pattern sticks out.
        wall_mm: f64,
        /// Board wanted, along x and y.
        wanted_mm: [f64; 2],
    },
    /// The oddside would hold the pattern.
    #[error(
        "the oddside would hold the pattern at ({:.1}, {:.1}, {:.1}) mm: {volume_mm3:.0} mm³ of \
         the pattern lie over it; move the joint, or fill that place on the pattern with a \
         core print", place_mm[0], place_mm[1], place_mm[2]
    )]
    Undercut {
        /// The middle of what is held.
        place_mm: Vector,
        /// Its room.
        volume_mm3: f64,
    },
    /// The three do not fill their box.
    #[error(
        "oddside, pattern and drag leave {:.2} % of their box empty and fill {:.2} % twice: the \
         two blocks of the joint do not meet", gap * 100.0, overlap * 100.0
    )]
    DoesNotFill {
        /// Share left empty.
        gap: f64,
        /// Share filled twice.
        overlap: f64,
    },
    /// The draw could not be looked at.
    #[error("oddside: {0}")]
    Draw(#[from] DrawError),
    /// The block could not be made.
    #[error("oddside: {0}")]
    Shape(#[from] ShapeError),
    /// The solids could not be cut.
    #[error("oddside: {0}")]
    Join(#[from] BooleanError),
}

/// Least wall between pattern and the edge of the board, mm: a printed one of five lines and some
/// infill, and room for the mark.
const LEAST_WALL_MM: f64 = 5.0;

/// Largest share of the box that may be empty or filled twice.
const MOST_OFF: f64 = 1e-3;

/// The oddside of a pattern.
///
/// # Errors
///
/// A pattern that needs none, is held, or reaches over the board.
pub fn oddside(pattern: &Mesh, joint: &Joint, wish: &BoardWish) -> Result<Oddside, BoardError> {
    let base_mm = wish.base_mm;
    if !(2.0..=100.0).contains(&base_mm) {
        return Err(BoardError::Base { base_mm });
    }
    wide_enough(pattern, wish)?;
    let [low, high] = pattern.bounds();
    let [from, to] = wish.plan_mm;
    let (floor, roof) = (low[2] - base_mm, high[2] + base_mm);
    let whole = Body::of(&block([from[0], from[1], floor], [to[0], to[1], roof])?)?;
    let [below, above] = joint.parted(&whole)?;
    let solid = Body::of(pattern)?;
    if above.common_with(&solid)?.volume_mm3() <= 1e-9 * solid.volume_mm3() {
        return Err(BoardError::NothingAbove);
    }
    let drag = below.without(&solid)?;
    let board = without_lips(above.without(&solid)?, pattern, joint)?;
    let fill = filled(&whole, &board, &drag, &solid)?;
    if fill.gap > MOST_OFF || fill.overlap > MOST_OFF {
        return Err(BoardError::DoesNotFill {
            gap: fill.gap,
            overlap: fill.overlap,
        });
    }
    let bare = board.mesh();
    draws(&bare)?;
    let marked = marked(&board, wish)?;
    let mesh = skin(&marked).ok_or(BooleanError::Failed)?;
    let [lowest, highest] = bare.bounds();
    Ok(Oddside {
        mesh,
        drag: drag.mesh(),
        fill,
        height_mm: highest[2] - lowest[2],
    })
}

fn wide_enough(pattern: &Mesh, wish: &BoardWish) -> Result<(), BoardError> {
    let ([low, high], [from, to]) = (pattern.bounds(), wish.plan_mm);
    let walls = [0, 1].map(|axis| (low[axis] - from[axis]).min(to[axis] - high[axis]));
    let wall_mm = walls[0].min(walls[1]);
    match wall_mm >= LEAST_WALL_MM {
        true => Ok(()),
        false => Err(BoardError::TooNarrow {
            wall_mm,
            wanted_mm: [0, 1].map(|axis| high[axis] - low[axis] + 2.0 * LEAST_WALL_MM),
        }),
    }
}

/// Volumes by what the solids have in common.
fn filled(whole: &Body, board: &Body, drag: &Body, solid: &Body) -> Result<Fill, BoardError> {
    let all = whole.volume_mm3();
    let pairs = [(board, solid), (drag, solid), (board, drag)];
    let mut twice = 0.0;
    for (one, other) in pairs {
        twice += one.common_with(other)?.volume_mm3();
    }
    let inside = solid.common_with(whole)?.volume_mm3();
    let filled = board.volume_mm3() + drag.volume_mm3() + inside - twice;
    Ok(Fill {
        gap: (1.0 - filled / all).abs(),
        overlap: twice / all,
        joint_mm2: in_touch(&cut_small(board)?, &drag.mesh(), &solid.mesh()),
    })
}

/// Skins nearer than this, mm, lie on each other.
const TOUCHING_MM: f64 = 1e-3;

/// Facets along the longer side of a board by which its touch is measured: with a third of it the
/// facets that touch in part count for a hundredth of the joint.
const ACROSS: f64 = 100.0;

/// The skin of a body with its facets cut small: each is then in touch as a whole or not at all.
fn cut_small(body: &Body) -> Result<Mesh, BooleanError> {
    let side_mm = body.mesh().diagonal() / ACROSS;
    Ok(body.with_sides_up_to(side_mm)?.mesh())
}

/// Area of the facets of one skin that lie on another which looks the other way, and not on the
/// pattern: the joint passes over its faces by a hair.
fn in_touch(one: &Mesh, other: &Mesh, pattern: &Mesh) -> f64 {
    let (tree, of_pattern) = (Tree::over(other), Tree::over(pattern));
    let touches = |facet: &usize| {
        let [a, b, c] = one.corners(*facet);
        let middle = scale(add(add(a, b), c), 1.0 / 3.0);
        if nearest(pattern, &of_pattern, middle, TOUCHING_MM).is_some() {
            return false;
        }
        let met = nearest(other, &tree, middle, TOUCHING_MM);
        met.is_some_and(|met| {
            let (own, its) = (one.normal(*facet), other.normal(met.facet as usize));
            dot(own, its) < -0.99 * norm(own) * norm(its)
        })
    };
    let facets = (0..one.triangles.len()).filter(touches);
    facets.map(|facet| norm(one.normal(facet)) / 2.0).sum()
}

/// Columns by which a joint that wanders may miss the line on the pattern.
const MISSED: f64 = 2.0;

/// The board without the lips under the pattern's edge. A joint that wanders is found on columns of
/// the pattern and as steep as sand holds; by so much it may pass under the edge, and the board
/// would reach under the pattern there. The drag fills what is cut away.
fn without_lips(board: Body, pattern: &Mesh, joint: &Joint) -> Result<Body, BooleanError> {
    if matches!(joint, Joint::Flat(_)) {
        return Ok(board);
    }
    let [low, high] = pattern.bounds();
    let longer = (high[0] - low[0]).max(high[1] - low[1]);
    let column_mm = longer / DrawSettings::suiting(pattern).columns as f64;
    let down = [0.0, 0.0, -MISSED * STEEPEST * column_mm];
    let lowered = Mesh {
        points: pattern
            .points
            .iter()
            .map(|&point| add(point, down))
            .collect(),
        triangles: pattern.triangles.clone(),
    };
    board.without(&Body::of(&lowered)?)
}

/// Whether the board lets go of the pattern, rapped as usual.
fn draws(board: &Mesh) -> Result<(), BoardError> {
    let found = undercuts(board, [0.0, 0.0, 1.0], &DrawSettings::suiting(board))?;
    match found.regions.first() {
        Some(held) if held.volume_mm3 > HELD * volume_mm3(board) => Err(BoardError::Undercut {
            place_mm: held.centre_mm,
            volume_mm3: held.volume_mm3,
        }),
        _ => Ok(()),
    }
}

/// Share of the board that may lie over the pattern's skin: what the columns by which it is
/// looked for leave of an upright wall that leans by rounding.
const HELD: f64 = 1e-5;

/// Width and depth of a mark, mm.
const MARK_MM: [f64; 2] = [2.0, 1.0];

/// Upright grooves in the middle of three sides and two on the fourth, by which flask and board
/// are put together the same way each time.
fn marked(board: &Body, wish: &BoardWish) -> Result<Body, BoardError> {
    let [from, to] = wish.plan_mm;
    let middle = [0, 1].map(|axis| (from[axis] + to[axis]) / 2.0);
    let [wide, deep] = MARK_MM;
    let places = [
        [from[0], middle[1]],
        [to[0], middle[1]],
        [middle[0], to[1]],
        [middle[0] - 2.0 * wide, from[1]],
        [middle[0] + 2.0 * wide, from[1]],
    ];
    let [low, high] = board.mesh().bounds();
    let mut marked = board.clone();
    for (number, [x, y]) in places.into_iter().enumerate() {
        let [along_x, along_y] = match number < 2 {
            true => [deep, wide / 2.0],
            false => [wide / 2.0, deep],
        };
        let mark = block(
            [x - along_x, y - along_y, low[2] - 1.0],
            [x + along_x, y + along_y, high[2] + 1.0],
        )?;
        marked = marked.without(&Body::of(&mark)?)?;
    }
    Ok(marked)
}
