//! The core box: a block in two halves with the room of the core between them, and with slides in
//! them where no two halves let the core go.
//!
//! Which way the halves are lifted, and where they part, is found in `box_joint.rs`; the slides in
//! `box_slides.rs`.

use crate::boolean::Body;
use crate::cores::CoreError;
use crate::cores::box_joint::{Parted, Parting, parted};
use crate::cores::box_slides::{Freed, Slide, Sought, Uncut};
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
    /// Room of the core that the halves catch by less than they yield, mm³; nought where slides
    /// free them.
    pub caught_mm3: f64,
    /// Slides, which are drawn out before the halves are lifted, in that order and in the axes of
    /// the core; none where two halves let the core go.
    pub slides: Vec<Slide>,
}

/// How squarely a print has to end on a side of the box for that side to be left open.
const SQUARE: f64 = 0.98;

/// Ways of lifting the halves for which slides are looked for: those that hold least.
const WITH_SLIDES: usize = 3;

/// The box of a core, closed and wound outward, whose prints point along `prints`.
///
/// # Errors
///
/// A core that no two halves let go, not even with slides in them, or solids that cannot be cut.
pub fn core_box(
    core: &Mesh,
    prints: &[Vector],
    settings: BoxSettings,
) -> Result<CoreBox, CoreError> {
    let (held, mut why) = match parted(core, prints)? {
        Parting::Free(parted) => return Cut::of(core, prints, settings, &parted)?.in_halves(),
        Parting::Held { least, why } => (least, why),
    };
    for parted in held.iter().take(WITH_SLIDES) {
        let cut = Cut::of(core, prints, settings, parted)?;
        match cut.uncut().freed()? {
            Sought::Found(freed) => return cut.made(*freed),
            Sought::None => {}
            Sought::TooFine => why = unsought(why),
        }
    }
    Err(why)
}

/// The same refusal, where slides could not be looked for.
fn unsought(why: CoreError) -> CoreError {
    match why {
        CoreError::NoBox {
            held_mm3,
            centre_mm,
            ..
        } => CoreError::NoBox {
            held_mm3,
            centre_mm,
            slides_sought: false,
        },
        other => other,
    }
}

/// A box about to be cut, standing as its upper half is lifted.
struct Cut<'a> {
    parted: &'a Parted,
    core: Mesh,
    /// The block without the room of the core.
    block: Body,
    /// The dowels through it.
    rods: Vec<Body>,
    open_sides: usize,
}

impl Cut<'_> {
    fn of<'a>(
        core: &Mesh,
        prints: &[Vector],
        settings: BoxSettings,
        parted: &'a Parted,
    ) -> Result<Cut<'a>, CoreError> {
        let core = parted.frame.turned(core);
        let (around, open_sides) = outside(&core, parted.frame, prints, settings.wall_mm);
        Ok(Cut {
            parted,
            block: block(around)?.without(&Body::of(&core)?)?,
            rods: dowels(around, settings)?,
            core,
            open_sides,
        })
    }

    fn in_halves(&self) -> Result<CoreBox, CoreError> {
        let halves = self.parted.joint.parted(&self.block)?;
        self.made(Freed {
            halves,
            slides: Vec::new(),
        })
    }

    fn uncut(&self) -> Uncut<'_> {
        Uncut {
            core: &self.core,
            block: &self.block,
            rods: &self.rods,
            joint: &self.parted.joint,
            most_mm3: self.parted.most_mm3,
        }
    }

    /// The box as it is drilled, in the axes of the core.
    fn made(&self, Freed { halves, slides }: Freed) -> Result<CoreBox, CoreError> {
        let frame = self.parted.frame;
        let [mut lower, mut upper] = halves;
        for rod in &self.rods {
            (lower, upper) = (lower.without(rod)?, upper.without(rod)?);
        }
        let back = |mesh: Mesh| Mesh {
            points: mesh
                .points
                .iter()
                .map(|&point| frame.part_from_draw(point))
                .collect(),
            triangles: mesh.triangles,
        };
        let caught_mm3 = match slides.is_empty() {
            true => self.parted.caught_mm3,
            false => 0.0,
        };
        let slide = |slide: Slide| Slide {
            mesh: back(slide.mesh),
            way: frame.part_from_draw(slide.way),
            ..slide
        };
        Ok(CoreBox {
            up: frame.up,
            volumes_mm3: [lower.volume_mm3(), upper.volume_mm3()],
            halves: [back(lower.mesh()), back(upper.mesh())],
            open_sides: self.open_sides,
            is_stepped: matches!(self.parted.joint, Joint::Blocks { .. }),
            caught_mm3,
            slides: slides.into_iter().map(slide).collect(),
        })
    }
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
