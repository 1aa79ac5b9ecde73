//! The joint of a mould: the face at which cope and drag part, from the part out to the flask.
//!
//! The joint is a height over the rectangle of the flask. It must meet the part within the bands of
//! its rim, lie at its level along the walls of the flask, and nowhere be steeper than sand holds.
//! Let U be the highest height that the bands allow at a place, the least over all of them of the
//! band's upper end plus the steepest slope times the way there through sand, and L the lowest,
//! found likewise. If L exceeds U anywhere there is no such joint. Else the level, held between L
//! and U, is one: it is as steep as allowed at most, and flat wherever it can be.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use thiserror::Error;

use super::columns::{Columns, Plot, Span};
use super::frame::DrawFrame;
use super::level::{Band, Level, level};
use super::parting::FLAT;
use super::rim::{RimPlace, rims};
use super::{DrawError, DrawSettings, sound};
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
    /// Lines across the flask at which heights are known, mm; the first and last are its walls.
    pub xs_mm: Vec<f64>,
    /// The same along it.
    pub ys_mm: Vec<f64>,
    /// Height at the crossing of each two lines, x running fastest, mm. Between them the joint is
    /// flat in two triangles.
    pub heights_mm: Vec<f64>,
    /// Rise over run of the steepest place that shows in the sand.
    pub steepest: f64,
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
/// `up`; `steepest` is the rise over run that the sand holds, as a rule [`STEEPEST`].
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
    let frame = sound(mesh, up)?;
    let turned = frame.turned(mesh);
    let plot = plot(&turned, flask, settings.columns)?;
    let columns = Columns::regular(&turned, plot);
    let rims = rims(&turned, &Tree::over(&turned), &columns, settings.play_mm);
    let places: Vec<RimPlace> = rims.into_iter().flatten().collect();
    let bands: Vec<Band> = places.iter().map(|place| place.band).collect();
    let [low, high] = turned.bounds();
    let level = level(&bands, [low[2], high[2]]);
    let hair = FLAT * mesh.diagonal();
    let slope = steepest * BETWEEN_NEIGHBOURS;
    let mut found = Err((0, 0.0));
    for widened in WIDENED {
        let field = Field::of(&columns, &places, level.at_mm, hair, slope, widened);
        found = field.heights(level.at_mm, hair);
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
    let shown = steepest_shown(&columns, &heights);
    lead_through_metal(&columns, &mut heights, level.at_mm);
    Ok(thinned(frame, flask, level, &columns, &heights, shown))
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

/// The lowest and the highest that the joint may lie at each node.
struct Field {
    low: Vec<f64>,
    high: Vec<f64>,
}

impl Field {
    fn of(
        columns: &Columns,
        places: &[RimPlace],
        level_mm: f64,
        hair: f64,
        slope: f64,
        widened: f64,
    ) -> Field {
        let nodes = columns.len();
        let [nx, ny] = columns.count;
        let mut is_open: Vec<bool> = (0..nodes)
            .map(|node| columns.spans(node).is_empty())
            .collect();
        let (mut low, mut high) = (vec![f64::NEG_INFINITY; nodes], vec![f64::INFINITY; nodes]);
        for node in 0..nodes {
            let (i, j) = (node % nx, node / nx);
            if i == 0 || j == 0 || i + 1 == nx || j + 1 == ny {
                (low[node], high[node]) = (level_mm, level_mm);
            }
        }
        for place in places {
            let [from, to] = allowed(&place.band, level_mm, hair, widened);
            is_open[place.dark] = true;
            for node in [place.dark, place.light] {
                let at = columns.place_mm(node);
                let away = (at[0] - place.at_mm[0]).hypot(at[1] - place.at_mm[1]);
                low[node] = low[node].max(from - slope * away);
                high[node] = high[node].min(to + slope * away);
            }
        }
        let mut depth: Vec<f64> = low.iter().map(|low| -low).collect();
        spread(&mut high, &is_open, columns, slope);
        spread(&mut depth, &is_open, columns, slope);
        Field {
            low: depth.iter().map(|depth| -depth).collect(),
            high,
        }
    }

    /// The level held between the bounds; the node where they contradict each other most, and by
    /// how much, if they do.
    fn heights(&self, level_mm: f64, hair: f64) -> Result<Vec<f64>, (usize, f64)> {
        let over = |node: &usize| self.low[*node] - self.high[*node];
        let worst = (0..self.low.len()).max_by(|a, b| over(a).total_cmp(&over(b)));
        match worst {
            Some(node) if over(&node) > hair => Err((node, over(&node))),
            _ => {
                let bounds = self.low.iter().zip(&self.high);
                Ok(bounds
                    .map(|(low, high)| level_mm.min(*high).max(*low))
                    .collect())
            }
        }
    }
}

/// The heights allowed at a place of the rim: all that the play allows where the level is among
/// them, else the tight band, widened so far.
fn allowed(band: &Band, level_mm: f64, hair: f64, widened: f64) -> [f64; 2] {
    let [tight, loose] = [band.tight_mm, band.loose_mm];
    if loose[0] - hair <= level_mm && level_mm <= loose[1] + hair {
        return [loose[0].min(level_mm), loose[1].max(level_mm)];
    }
    [0, 1].map(|end| tight[end] + widened * (loose[end] - tight[end]))
}

/// Lowers each value to the least of the others plus the slope times the way there through open
/// nodes, by Dijkstra's algorithm.
fn spread(values: &mut [f64], is_open: &[bool], columns: &Columns, slope: f64) {
    let [nx, ny] = columns.count;
    let known = (0..values.len()).filter(|&node| values[node].is_finite());
    let mut next: BinaryHeap<Reverse<(i64, usize)>> = known
        .map(|node| Reverse((in_order(values[node]), node)))
        .collect();
    while let Some(Reverse((value, node))) = next.pop() {
        if value > in_order(values[node]) {
            continue;
        }
        let (i, j) = (node % nx, node / nx);
        for (di, dj) in AROUND {
            let (Some(a), Some(b)) = (i.checked_add_signed(di), j.checked_add_signed(dj)) else {
                continue;
            };
            if a >= nx || b >= ny || !is_open[a + nx * b] {
                continue;
            }
            let way = columns.size_mm * (di as f64).hypot(dj as f64);
            let reached = values[node] + slope * way;
            if reached < values[a + nx * b] {
                values[a + nx * b] = reached;
                next.push(Reverse((in_order(reached), a + nx * b)));
            }
        }
    }
}

const AROUND: [(isize, isize); 8] = [
    (-1, -1),
    (0, -1),
    (1, -1),
    (-1, 0),
    (1, 0),
    (-1, 1),
    (0, 1),
    (1, 1),
];

/// A whole number that stands in the same order as the value.
fn in_order(value: f64) -> i64 {
    let bits = value.to_bits() as i64;
    bits ^ (((bits >> 63) as u64) >> 1) as i64
}

/// Rise over run of the steepest step between two empty columns.
fn steepest_shown(columns: &Columns, heights: &[f64]) -> f64 {
    let is_light = |node: &usize| columns.spans(*node).is_empty();
    let steps = (0..columns.len()).filter(is_light).flat_map(|node| {
        let lights = columns.beside(node).filter(is_light);
        lights.map(move |other| (heights[node] - heights[other]).abs())
    });
    steps.fold(0.0, f64::max) / columns.size_mm
}

/// Within the part the joint runs through metal, so that the sand under a hollow stays with the
/// drag and the sand in a hollow above with the cope. Where it has to leave its level for that, it
/// does so one node early, within the wall of the hollow.
fn lead_through_metal(columns: &Columns, heights: &mut [f64], level_mm: f64) {
    let nx = columns.count[0];
    let is_light = |node: usize| columns.spans(node).is_empty();
    let is_inner = |node: &usize| !is_light(*node) && !columns.beside(*node).any(is_light);
    let inner: Vec<usize> = (0..columns.len()).filter(is_inner).collect();
    let mut nearest = heights.to_vec();
    for &node in &inner {
        nearest[node] = into_metal(columns.spans(node), level_mm);
    }
    for &node in &inner {
        let around = AROUND.map(|(di, dj)| {
            let other = (node as isize + di + dj * nx as isize) as usize;
            if is_light(other) {
                level_mm
            } else {
                nearest[other]
            }
        });
        let furthest = around
            .into_iter()
            .fold(nearest[node], |far: f64, near: f64| {
                if (near - level_mm).abs() > (far - level_mm).abs() {
                    near
                } else {
                    far
                }
            });
        heights[node] = into_metal(columns.spans(node), furthest);
    }
}

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
    steepest: f64,
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
    let mut heights_mm = Vec::with_capacity(xs_mm.len() * ys_mm.len());
    for (row, &y) in ys_mm.iter().enumerate() {
        for (file, &x) in xs_mm.iter().enumerate() {
            let wall = row == 0 || file == 0 || row + 1 == ys_mm.len() || file + 1 == xs_mm.len();
            heights_mm.push(match wall {
                true => level.at_mm,
                false => heights[node(0, x).min(nx - 1) + nx * node(1, y).min(ny - 1)],
            });
        }
    }
    Joint {
        frame,
        flask,
        level,
        xs_mm,
        ys_mm,
        heights_mm,
        steepest,
    }
}

fn place([x, y, z]: Vector) -> String {
    format!("{x:.0}, {y:.0}, {z:.0} mm")
}
