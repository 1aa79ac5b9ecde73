//! The core box: a block in two halves with the room of the core between them.
//!
//! A half lets the core go if nothing of the half lies between the core and the way that the half
//! is lifted. Along each way tried the core is cut into upright columns; what of the block would be
//! caught over or under the core is summed for the joint at which it is least; of the ways that
//! catch nothing the one with the shallowest halves wins.

use crate::boolean::Body;
use crate::cores::CoreError;
use crate::draw::columns::{Columns, Plot, Span};
use crate::draw::frame::DrawFrame;
use crate::mesh::Mesh;
use crate::vector::{Vector, cross, norm};

/// What the box is to be like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoxSettings {
    /// Wall around the core, mm.
    pub wall_mm: f64,
    /// Holes for dowels through opposite corners of both halves, mm across; nought for none.
    pub dowel_mm: f64,
}

/// A box in two halves, each as it is printed: standing on its back, its joint on top.
#[derive(Clone, Debug)]
pub struct CoreBox {
    /// The way the upper half is lifted, of length one, in the axes of the core.
    pub up: Vector,
    /// Lower half and upper half in the axes of the core, closed and wound outward.
    pub halves: [Mesh; 2],
    /// What each half holds, mm³.
    pub volumes_mm3: [f64; 2],
    /// Sides of the box that are open, because a print ends there: sand is rammed in through them.
    pub open_sides: usize,
    /// Room of the core that the halves catch by less than they yield, mm³.
    pub caught_mm3: f64,
}

/// Columns along the longer side of a core: half a hundred core walls, a few hundredths of a
/// second for each way.
const COLUMNS: usize = 120;

/// Share of the core that may be caught: what a column at the rim of a round core shows of its own
/// width. A true ledge of a tenth of the core's width holds ten times as much.
const CAUGHT: f64 = 0.005;

/// How squarely a print has to end on a side of the box for that side to be left open.
const SQUARE: f64 = 0.98;

/// The box of a core, closed and wound outward, whose prints point along `prints`.
///
/// # Errors
///
/// A core that no two halves let go, or solids that cannot be cut.
pub fn core_box(
    core: &Mesh,
    prints: &[Vector],
    settings: BoxSettings,
) -> Result<CoreBox, CoreError> {
    let solid = Body::of(core)?;
    let best = best_parted(core, prints, CAUGHT * solid.volume_mm3())?;
    let frame = best.frame;
    let turned = frame.turned(core);
    let (around, open_sides) = outside(&turned, frame, prints, settings.wall_mm);
    let room = Body::of(&turned)?;
    let mut halves = Vec::new();
    for around in halves_of(around, best.joint_mm) {
        let mut half = block(around)?.without(&room)?;
        for hole in dowels(around, settings)? {
            half = half.without(&hole)?;
        }
        halves.push(half);
    }
    let volumes_mm3 = [halves[0].volume_mm3(), halves[1].volume_mm3()];
    let back = |half: &Body| {
        let mesh = half.mesh();
        let points = mesh.points.iter().map(|&point| frame.part_from_draw(point));
        Mesh {
            points: points.collect(),
            triangles: mesh.triangles,
        }
    };
    Ok(CoreBox {
        up: frame.up,
        halves: [back(&halves[0]), back(&halves[1])],
        volumes_mm3,
        open_sides,
        caught_mm3: best.caught_mm3,
    })
}

/// Of the ways by which no more than so much is caught the one with the shallowest halves, which
/// part from the core with the least scraping.
fn best_parted(core: &Mesh, prints: &[Vector], most_mm3: f64) -> Result<Parted, CoreError> {
    let parted: Vec<Parted> = ways(prints)
        .into_iter()
        .filter_map(|up| Parted::along(core, up))
        .collect();
    let caught = parted.iter().map(|parted| parted.caught_mm3);
    let held_mm3 = caught.fold(f64::INFINITY, f64::min);
    let free = parted
        .into_iter()
        .filter(|parted| parted.caught_mm3 <= most_mm3);
    let [low, high] = core.bounds();
    free.min_by(|a, b| a.height_mm.total_cmp(&b.height_mm))
        .ok_or(CoreError::NoBox {
            held_mm3,
            centre_mm: [0, 1, 2].map(|axis| (low[axis] + high[axis]) / 2.0),
        })
}

/// Ways to lift the upper half: the axes, across each print, and along it.
fn ways(prints: &[Vector]) -> Vec<Vector> {
    let axes = [[0.0, 0.0, 1.0], [0.0, 1.0, 0.0], [1.0, 0.0, 0.0]];
    let mut ways = axes.to_vec();
    for &print in prints.iter().filter(|print| norm(**print) > 0.0) {
        let across = axes.map(|axis| cross(print, axis));
        ways.extend(across.into_iter().filter(|way| norm(*way) > 0.1));
        ways.push(print);
    }
    for (at, &one) in prints.iter().enumerate() {
        let others = prints[at + 1..].iter().map(|&other| cross(one, other));
        ways.extend(others.filter(|way| norm(*way) > 0.1));
    }
    ways
}

/// A core parted along one way.
struct Parted {
    frame: DrawFrame,
    joint_mm: f64,
    caught_mm3: f64,
    height_mm: f64,
}

impl Parted {
    fn along(core: &Mesh, up: Vector) -> Option<Parted> {
        let frame = DrawFrame::drawing_along(up)?;
        let turned = frame.turned(core);
        let columns = Columns::staggered(&turned, Plot::of_part(&turned, COLUMNS));
        let all = || (0..columns.len()).map(|column| columns.spans(column));
        // What is caught grows by a column for each end on the wrong side of the joint, and so is
        // least at the middle one of all ends.
        let mut ends: Vec<f64> = all().filter_map(ends_of).flatten().collect();
        ends.sort_by(f64::total_cmp);
        let joint_mm = *ends.get(ends.len() / 2)?;
        let caught: f64 = all().map(|spans| caught(spans, joint_mm)).sum();
        let [low, high] = turned.bounds();
        Some(Parted {
            height_mm: high[2] - low[2],
            frame,
            joint_mm,
            caught_mm3: caught * columns.size_mm * columns.size_mm,
        })
    }
}

fn ends_of(spans: &[Span]) -> Option<[f64; 2]> {
    Some([spans.first()?.from_mm, spans.last()?.to_mm])
}

/// Length of a column on which the block is caught: between stretches of core, and between the
/// joint and a core that lies wholly on one side of it.
fn caught(spans: &[Span], joint_mm: f64) -> f64 {
    let Some([from, to]) = ends_of(spans) else {
        return 0.0;
    };
    let between = spans.windows(2).map(|two| two[1].from_mm - two[0].to_mm);
    between.sum::<f64>() + (from - joint_mm).max(0.0) + (joint_mm - to).max(0.0)
}

/// The outside of the box in the frame, and how many sides a print ends on.
fn outside(
    turned: &Mesh,
    frame: DrawFrame,
    prints: &[Vector],
    wall_mm: f64,
) -> ([Vector; 2], usize) {
    let [mut low, mut high] = turned.bounds();
    let ends_on = |axis: usize, way: f64| {
        let looks = |print: &Vector| way * frame.draw_from_part(*print)[axis] > SQUARE;
        axis < 2 && prints.iter().any(looks)
    };
    let mut open = 0;
    for axis in 0..3 {
        for (way, side) in [(-1.0, &mut low), (1.0, &mut high)] {
            match ends_on(axis, way) {
                true => open += 1,
                false => side[axis] += way * wall_mm,
            }
        }
    }
    ([low, high], open)
}

fn halves_of([low, high]: [Vector; 2], joint_mm: f64) -> [[Vector; 2]; 2] {
    let level = |corner: Vector| [corner[0], corner[1], joint_mm];
    [[low, level(high)], [level(low), high]]
}

/// Upright holes through two opposite corners of a half, in the middle of the wall.
fn dowels(around: [Vector; 2], settings: BoxSettings) -> Result<Vec<Body>, CoreError> {
    let [low, high] = around;
    let radius = settings.dowel_mm / 2.0;
    let aside = settings.wall_mm / 2.0;
    if radius <= 0.0 || radius >= aside {
        return Ok(Vec::new());
    }
    let corners = [
        [low[0] + aside, low[1] + aside],
        [high[0] - aside, high[1] - aside],
    ];
    let hole = |corner: [f64; 2]| prism(corner, radius, [low[2] - aside, high[2] + aside]);
    corners.into_iter().map(hole).collect()
}

/// Sides of a round hole; a printed dowel hole needs no more.
const SIDES: u32 = 32;

fn prism([x, y]: [f64; 2], radius: f64, [from, to]: [f64; 2]) -> Result<Body, CoreError> {
    let turn = |side: u32| std::f64::consts::TAU * f64::from(side) / f64::from(SIDES);
    let ring = |z: f64| {
        (0..SIDES).map(move |side| {
            let (sine, cosine) = turn(side).sin_cos();
            [x + radius * cosine, y + radius * sine, z]
        })
    };
    let corners: Vec<Vector> = ring(from).chain(ring(to)).collect();
    Ok(Body::around(&corners)?)
}

/// An upright block.
fn block([low, high]: [Vector; 2]) -> Result<Body, CoreError> {
    let corner = |i: u8| [0, 1, 2].map(|axis| [low, high][usize::from(i >> axis & 1)][axis]);
    let corners: Vec<Vector> = (0..8).map(corner).collect();
    Ok(Body::around(&corners)?)
}
