//! The joint of a mould: the face at which cope and drag part, from the part out to the flask.
//!
//! The joint is a height over the rectangle of the flask. It must meet the part within the bands of
//! its rim, lie at its level along the walls of the flask, and nowhere be steeper than sand holds.
//! Let U be the highest height that the bands allow at a place, the least over all of them of the
//! band's upper end plus the steepest slope times the way there through sand, and L the lowest,
//! found likewise. If L exceeds U anywhere there is no such joint. Else the level, held between L
//! and U, is one: it is as steep as allowed at most, and flat wherever it can be.

mod field;
pub mod heights;

use thiserror::Error;

use self::field::{AROUND, Field};
use self::heights::Heights;
use super::columns::{Columns, Plot, Span};
use super::frame::DrawFrame;
use super::level::{Band, Level, level, level_at};
use super::parting::FLAT;
use super::rim::{RimPlace, rims};
use super::{DrawError, DrawSettings, sound};
use crate::boolean::FILM_MM;
use crate::mesh::Mesh;
use crate::tree::Tree;
use crate::vector::Vector;

/// The inside of a closed flask, in the draw: lowest and highest corner, mm.
pub type FlaskBox = [Vector; 2];

/// A joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Joint {
    /// How the part lies in the draw, and so in the flask.
    pub frame: DrawFrame,
    /// The inside of the flask.
    pub flask: FlaskBox,
    /// The level of the joint along the walls of the flask, and wherever else it can lie so.
    pub level: Level,
    /// Its height over the inside of the flask, whose walls are the ends.
    pub heights: Heights,
    /// Lowest and highest place that shows in the sand, mm.
    pub shown_mm: [f64; 2],
    /// Rise over run of the steepest place that shows in the sand.
    pub steepest: f64,
    /// Where that is, in the draw, mm.
    pub steepest_at_mm: Vector,
}

/// Why there is no joint.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum JointError {
    /// The part cannot be looked at.
    #[error(transparent)]
    Draw(#[from] DrawError),
    /// The part does not lie within the flask.
    #[error(
        "the part reaches out of the flask at {} as it is drawn: take a larger flask", place(*.at_mm)
    )]
    OutOfFlask {
        /// A corner of the part's box, in the draw, mm.
        at_mm: Vector,
    },
    /// The sand would have to stand too steep.
    #[error(
        "the joint has {rise_mm:.0} mm too much to rise at {} for sand that holds {steepest:.2} in \
         1: turn the part, make the wall there thicker or the flask wider",
        place(*.at_mm)
    )]
    TooSteep {
        /// The place, in the part's axes, mm.
        at_mm: Vector,
        /// Height that is left over, mm.
        rise_mm: f64,
        /// Rise over run that was allowed.
        steepest: f64,
    },
}

/// Steepest slope of a joint, rise over run: 60° from level, the taper of a stepped board (common
/// practice, no source). Steeper, the faces of cope and drag shear each other as they close; at 45°
/// and less many a bracket finds no joint.
pub const STEEPEST: f64 = 1.73;

/// A slope held to along the eight directions of a grid is exceeded between them: by one over the
/// cosine of half the angle between two of them, 22.5°.
const BETWEEN_NEIGHBOURS: f64 = 0.923_879_532_511_286_8;

/// How far the bands are widened by the play, from not at all to wholly, until a joint is found.
const WIDENED: [f64; 4] = [0.0, 0.25, 0.5, 1.0];

/// The joint of a closed mesh, outward wound and in mm, in a flask, when the cope is lifted along
/// `up`, at the level that suits the part best; `steepest` is the rise over run that the sand
/// holds, as a rule [`STEEPEST`].
///
/// # Errors
///
/// A part that cannot be looked at or lies not within the flask; no joint within the slope.
pub fn joint(
    mesh: &Mesh,
    up: Vector,
    flask: FlaskBox,
    steepest: f64,
    settings: &DrawSettings,
) -> Result<Joint, JointError> {
    led_out(mesh, up, flask, None, steepest, settings)
}

/// The same at a level that is given: the height, in the draw, at which the halves of the flask
/// meet.
///
/// # Errors
///
/// Those of [`joint`].
pub fn joint_at(
    mesh: &Mesh,
    up: Vector,
    flask: FlaskBox,
    level_mm: f64,
    steepest: f64,
    settings: &DrawSettings,
) -> Result<Joint, JointError> {
    led_out(mesh, up, flask, Some(level_mm), steepest, settings)
}

fn led_out(
    mesh: &Mesh,
    up: Vector,
    flask: FlaskBox,
    level_mm: Option<f64>,
    steepest: f64,
    settings: &DrawSettings,
) -> Result<Joint, JointError> {
    let frame = sound(mesh, up)?;
    let turned = frame.turned(mesh);
    let plot = plot(&turned, flask, settings.columns)?;
    let columns = Columns::regular(&turned, plot);
    let rims = rims(&turned, &Tree::over(&turned), &columns, settings.play_mm);
    let rims = rims.into_iter().filter(|rim| !is_pinhole(rim));
    let places: Vec<RimPlace> = rims.flatten().collect();
    let bands: Vec<Band> = places.iter().map(|place| place.band).collect();
    let [low, high] = turned.bounds();
    let ends_mm = [low[2], high[2]];
    let level = match level_mm {
        Some(at_mm) => level_at(&bands, ends_mm, at_mm),
        None => level(&bands, ends_mm),
    };
    let hair = FLAT * mesh.diagonal();
    let slope = steepest * BETWEEN_NEIGHBOURS;
    let mut found = Err((0, 0.0));
    for widened in WIDENED {
        let field = Field::of(&columns, &places, level.at_mm, hair, slope, widened);
        found = field.heights(level.at_mm, settings.play_mm);
        if found.is_ok() {
            break;
        }
    }
    let mut heights = found.map_err(|(node, rise_mm)| {
        let [x, y] = columns.place_mm(node);
        JointError::TooSteep {
            at_mm: frame.part_from_draw([x, y, level.at_mm]),
            rise_mm,
            steepest,
        }
    })?;
    let steepest = steepest_shown(&columns, &heights);
    let shown_mm = ends_shown(&columns, &heights);
    lead_through_metal(&columns, &mut heights, level.at_mm);
    if heights.iter().any(|height| *height != level.at_mm) {
        keep_off_faces(&columns, &mut heights);
    }
    let joint = thinned(frame, flask, level, &columns, &heights);
    Ok(Joint {
        shown_mm,
        steepest: steepest.0,
        steepest_at_mm: steepest.1,
        ..joint
    })
}

impl Joint {
    /// Height of the joint over a place of the flask, mm; beyond its walls that at the wall.
    pub fn height_mm(&self, at: [f64; 2]) -> f64 {
        self.heights.at_mm(at)
    }
}

/// Nodes over the whole flask, the first ones on its walls.
fn plot(turned: &Mesh, [from, to]: FlaskBox, columns: usize) -> Result<Plot, JointError> {
    let [low, high] = turned.bounds();
    for axis in 0..3 {
        if low[axis] <= from[axis] {
            return Err(JointError::OutOfFlask { at_mm: low });
        }
        if high[axis] >= to[axis] {
            return Err(JointError::OutOfFlask { at_mm: high });
        }
    }
    let longer = (high[0] - low[0]).max(high[1] - low[1]);
    let wall = [
        low[0] - from[0],
        to[0] - high[0],
        low[1] - from[1],
        to[1] - high[1],
    ];
    let thinnest = wall.into_iter().fold(f64::INFINITY, f64::min);
    // Three nodes at least in the sand beside the part.
    let size_mm = (longer / columns.max(1) as f64).min(thinnest / 3.0);
    let count = [0, 1].map(|axis| ((to[axis] - from[axis]) / size_mm).floor() as usize + 1);
    if count[0].saturating_mul(count[1]) > MOST_NODES {
        return Err(JointError::OutOfFlask { at_mm: high });
    }
    Ok(Plot {
        origin_mm: [0, 1].map(|axis| from[axis] - size_mm / 2.0),
        size_mm,
        count,
    })
}

/// Most nodes of a joint: two thousand along each side of the flask. A part that needs more stands
/// less than a thousandth of the flask off its wall.
const MOST_NODES: usize = 4_000_000;

/// Whether a rim goes around a hole too small for sand to stand in.
fn is_pinhole(rim: &[RimPlace]) -> bool {
    let next = rim.iter().cycle().skip(1);
    let twice = rim.iter().zip(next).map(|(one, other)| {
        let ([x, y], [u, v]) = (one.at_mm, other.at_mm);
        x * v - y * u
    });
    let area = twice.sum::<f64>() / 2.0;
    area < 0.0 && -area < PINHOLE_MM2
}

/// Holes that show less room than this from above, mm², are passed over: a finger of sand two
/// millimetres thick breaks with the draw (common practice, no source). With none passed over a
/// glimpse through a slanting hole, one column wide, stops the whole joint.
const PINHOLE_MM2: f64 = 4.0;

/// Lowest and highest of the empty columns.
fn ends_shown(columns: &Columns, heights: &[f64]) -> [f64; 2] {
    let shown = (0..columns.len()).filter(|&node| columns.spans(node).is_empty());
    shown.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], node| {
        [low.min(heights[node]), high.max(heights[node])]
    })
}

/// Rise over run of the steepest step between two empty columns, and where it is.
fn steepest_shown(columns: &Columns, heights: &[f64]) -> (f64, Vector) {
    let is_light = |node: &usize| columns.spans(*node).is_empty();
    let mut found = (0.0, 0);
    for node in (0..columns.len()).filter(is_light) {
        for other in columns.beside(node).filter(is_light) {
            let slope = (heights[node] - heights[other]).abs() / columns.size_mm;
            if slope > found.0 {
                found = (slope, node);
            }
        }
    }
    let (slope, node) = found;
    let [x, y] = columns.place_mm(node);
    (slope, [x, y, heights[node]])
}

/// Within the part the joint runs through metal, so that the sand under a hollow stays with the
/// drag and the sand in a hollow above with the cope. Where it has to leave its level for that, it
/// does so one node early, within the wall of the hollow.
fn lead_through_metal(columns: &Columns, heights: &mut [f64], level_mm: f64) {
    let nx = columns.count[0];
    let is_light = |node: usize| columns.spans(node).is_empty();
    let is_rim = |node: usize| !is_light(node) && columns.beside(node).any(is_light);
    let around =
        |node: usize| AROUND.map(|(di, dj)| (node as isize + di + dj * nx as isize) as usize);
    let (mut inner, mut corners) = (Vec::new(), Vec::new());
    for node in (0..columns.len()).filter(|&node| !is_light(node) && !is_rim(node)) {
        match around(node).into_iter().any(is_light) {
            true => corners.push(node),
            false => inner.push(node),
        }
    }
    // A node behind the corner of a wall shares a square with sand as its neighbours on the rim do,
    // and goes with them: the wall would else be cut like a comb.
    for &corner in &corners {
        let rim: Vec<usize> = columns
            .beside(corner)
            .filter(|&node| is_rim(node))
            .collect();
        let sum: f64 = rim.iter().map(|&node| heights[node]).sum();
        heights[corner] = sum / rim.len() as f64;
    }
    let mut nearest = heights.to_vec();
    for &node in &inner {
        nearest[node] = into_metal(columns.spans(node), level_mm);
    }
    for &node in &inner {
        let furthest = around(node).into_iter().map(|other| nearest[other]).fold(
            nearest[node],
            |far: f64, near: f64| {
                if (near - level_mm).abs() > (far - level_mm).abs() {
                    near
                } else {
                    far
                }
            },
        );
        heights[node] = into_metal(columns.spans(node), furthest);
    }
}

/// Where the joint all but lies on a face of the part, it keeps off it by a hair, in the sand: it
/// would else run into the metal and out again by rounding, and either half of a pattern would keep
/// films.
fn keep_off_faces(columns: &Columns, heights: &mut [f64]) {
    for (node, height) in heights.iter_mut().enumerate() {
        let at_mm = *height;
        for span in columns.spans(node) {
            if (span.to_mm - at_mm).abs() <= FILM_MM {
                *height = span.to_mm + HAIR_MM;
            } else if (span.from_mm - at_mm).abs() <= FILM_MM {
                *height = span.from_mm - HAIR_MM;
            }
        }
    }
}

/// A hair, mm: a thousand times what rounding moves a place by, less than counts as off a level.
const HAIR_MM: f64 = 5e-7;

/// The height in metal nearest to one.
fn into_metal(spans: &[Span], height: f64) -> f64 {
    let nearest = |span: &Span| height.clamp(span.from_mm, span.to_mm);
    let all = spans.iter().map(nearest);
    let best = all.min_by(|a, b| (a - height).abs().total_cmp(&(b - height).abs()));
    best.unwrap_or(height)
}

/// Keeps the lines between which the joint is not flat, and the walls of the flask.
fn thinned(
    frame: DrawFrame,
    flask: FlaskBox,
    level: Level,
    columns: &Columns,
    heights: &[f64],
) -> Joint {
    let [nx, ny] = columns.count;
    let is_off = |node: usize| heights[node] != level.at_mm;
    let off_x: Vec<usize> = (0..nx)
        .filter(|&i| (0..ny).any(|j| is_off(i + nx * j)))
        .collect();
    let off_y: Vec<usize> = (0..ny)
        .filter(|&j| (0..nx).any(|i| is_off(i + nx * j)))
        .collect();
    let lines = |off: &[usize]| match (off.first(), off.last()) {
        (Some(&first), Some(&last)) => (first.saturating_sub(1)..=last + 1).collect(),
        _ => Vec::new(),
    };
    let (kept_x, kept_y): (Vec<usize>, Vec<usize>) = (lines(&off_x), lines(&off_y));
    let places = |axis: usize, kept: &[usize]| {
        let inner = kept
            .iter()
            .map(|&line| flask[0][axis] + line as f64 * columns.size_mm);
        let hair = 1e-3 * columns.size_mm;
        let inner = inner.filter(|&at| at > flask[0][axis] + hair && at < flask[1][axis] - hair);
        let walls = [flask[0][axis], flask[1][axis]];
        [&walls[..1], &inner.collect::<Vec<f64>>(), &walls[1..]].concat()
    };
    let (xs_mm, ys_mm) = (places(0, &kept_x), places(1, &kept_y));
    let node = |axis: usize, at: f64| ((at - flask[0][axis]) / columns.size_mm).round() as usize;
    let mut nodes_mm = Vec::with_capacity(xs_mm.len() * ys_mm.len());
    for (row, &y) in ys_mm.iter().enumerate() {
        for (file, &x) in xs_mm.iter().enumerate() {
            let wall = row == 0 || file == 0 || row + 1 == ys_mm.len() || file + 1 == xs_mm.len();
            nodes_mm.push(match wall {
                true => level.at_mm,
                false => heights[node(0, x).min(nx - 1) + nx * node(1, y).min(ny - 1)],
            });
        }
    }
    Joint {
        frame,
        flask,
        level,
        heights: Heights {
            xs_mm,
            ys_mm,
            nodes_mm,
        },
        shown_mm: [level.at_mm; 2],
        steepest: 0.0,
        steepest_at_mm: [0.0; 3],
    }
}

fn place([x, y, z]: Vector) -> String {
    format!("{x:.0}, {y:.0}, {z:.0} mm")
}
