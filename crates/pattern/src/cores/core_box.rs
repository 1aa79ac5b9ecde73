//! The core box: a block in two halves with the room of the core between them.
//!
//! Which way the halves are lifted, and where they part, is found in `box_joint.rs`.

use crate::boolean::Body;
use crate::cores::CoreError;
use crate::cores::box_joint::parted;
use crate::draw::frame::DrawFrame;
use crate::made::joint::Joint;
use crate::mesh::Mesh;
use crate::vector::Vector;

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
    /// Whether the joint steps along the core instead of lying flat.
    pub is_stepped: bool,
    /// Room of the core that the halves catch by less than they yield, mm³.
    pub caught_mm3: f64,
}

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
    let best = parted(core, prints)?;
    let frame = best.frame;
    let turned = frame.turned(core);
    let (around, open_sides) = outside(&turned, frame, prints, settings.wall_mm);
    let mut whole = block(around)?.without(&Body::of(&turned)?)?;
    for hole in dowels(around, settings)? {
        whole = whole.without(&hole)?;
    }
    let halves = best.joint.parted(&whole)?;
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
        is_stepped: matches!(best.joint, Joint::Blocks { .. }),
        caught_mm3: best.caught_mm3,
    })
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

/// Upright holes through two opposite corners of the box, in the middle of the wall.
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
