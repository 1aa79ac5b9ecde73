//! Basin, sprue and well: the way of the metal from the ladle down to the runner.

use measure::length::Length;
use mould::gating::slag_trap::sprue_well;
use mould::gating::sprue::{area_of, diameter_of};

use crate::bars::{OVERLAP_MM, ROUND_SLOPE, round};
use crate::cut::{Cut, Draw};
use crate::error::MouldError;
use crate::given::{Given, Half};
use crate::piece::Piece;
use crate::plan_view::{Footprint, Point};

/// Heights of the way down, mm above the joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Levels {
    /// Rim of the basin.
    pub(crate) rim_mm: f64,
    /// Foot of the basin and head of the sprue.
    pub(crate) head_mm: f64,
    /// Foot of the sprue: the top of the runner.
    pub(crate) foot_mm: f64,
    /// Bottom of the well.
    pub(crate) bottom_mm: f64,
}

/// Sand that has to be left under the well, mm: less than two fingers of it washes out (common
/// practice, no source).
const UNDER_THE_WELL_MM: f64 = 15.0;

/// Sand between the basin and the wall of the flask, mm: the least that can be rammed.
const BASIN_TO_WALL_MM: f64 = 10.0;

/// Least fall, mm: a shorter sprue is a hole.
const LEAST_FALL_MM: f64 = 5.0;

/// The heights for a runner of this depth.
///
/// The basin stands with its rim at the level poured to, and no lower than the top of the cope,
/// through which it has to be reached.
pub(crate) fn levels(given: &Given, runner_depth_mm: f64) -> Result<Levels, MouldError> {
    let sizes = &given.sizes;
    let rim_mm = sizes.pour_height.max(given.flask.cope).as_mm();
    let head_mm = rim_mm - sizes.basin.depth.as_mm();
    let foot_mm = match sizes.runner_half {
        Half::Cope => runner_depth_mm,
        Half::Drag => 0.0,
    };
    if head_mm < foot_mm + LEAST_FALL_MM {
        return Err(MouldError::NoFall {
            basin_mm: head_mm,
            runner_mm: foot_mm,
        });
    }
    let well = sprue_well(area_of(sizes.sprue_foot), Length::from_mm(runner_depth_mm));
    let deepest_mm = UNDER_THE_WELL_MM - given.flask.drag.as_mm();
    let least_mm = foot_mm - runner_depth_mm - OVERLAP_MM;
    let bottom_mm = (foot_mm - well.depth.as_mm()).max(deepest_mm).min(least_mm);
    Ok(Levels {
        rim_mm,
        head_mm,
        foot_mm,
        bottom_mm,
    })
}

/// Width of the well half way down.
pub(crate) fn well_across_mm(given: &Given) -> f64 {
    let foot = area_of(given.sizes.sprue_foot);
    // The area of the well does not ask for the depth of the runner.
    diameter_of(sprue_well(foot, Length::ZERO).area).as_mm()
}

/// Basin, sprue and well around a middle.
pub(crate) fn downhill(
    given: &Given,
    levels: &Levels,
    middle: Point,
) -> Result<[Cut; 3], MouldError> {
    Ok([
        basin(given, levels, middle)?,
        sprue(given, levels, middle)?,
        well(given, levels, middle)?,
    ])
}

fn basin(given: &Given, levels: &Levels, middle: Point) -> Result<Cut, MouldError> {
    let across = given.sizes.basin.across.as_mm();
    let lean = ROUND_SLOPE * (levels.rim_mm - levels.head_mm);
    let least = given.sizes.sprue_top.as_mm() + 2.0 * OVERLAP_MM;
    let widths = [(across - lean).max(least), (across + lean).max(least)];
    // Where the wall of the flask is near, the sprue stands at the edge of the basin.
    let aside = ((widths[0] - least) / 2.0).max(0.0);
    let inside = [given.flask.length, given.flask.width].map(|side| side.as_mm());
    let middle = [0, 1].map(|axis| {
        let room = widths[1] / 2.0 + BASIN_TO_WALL_MM;
        let clear = middle[axis].min(inside[axis] - room).max(room);
        clear.clamp(middle[axis] - aside, middle[axis] + aside)
    });
    let cup = round(middle, [levels.head_mm, levels.rim_mm], widths);
    let covers = Footprint::round(middle, widths[1]);
    Cut::of(Piece::Basin, covers, vec![(cup, Draw::Upward)])
}

/// A cone cut off, which reaches a little into basin and well along its own taper.
fn sprue(given: &Given, levels: &Levels, middle: Point) -> Result<Cut, MouldError> {
    let (top, foot) = (
        given.sizes.sprue_top.as_mm(),
        given.sizes.sprue_foot.as_mm(),
    );
    let taper = (top - foot) / (levels.head_mm - levels.foot_mm);
    let widths = [foot - taper * OVERLAP_MM, top + taper * OVERLAP_MM];
    let heights = [levels.foot_mm - OVERLAP_MM, levels.head_mm + OVERLAP_MM];
    let cone = round(middle, heights, widths);
    Cut::of(
        Piece::Sprue,
        Footprint::round(middle, top),
        vec![(cone, Draw::Upward)],
    )
}

/// A round that goes through the joint, drawn out of it to either side.
fn well(given: &Given, levels: &Levels, middle: Point) -> Result<Cut, MouldError> {
    let across = well_across_mm(given);
    let narrower = |height: f64| across - 2.0 * ROUND_SLOPE * height.abs();
    let widths = [narrower(levels.bottom_mm), across];
    let in_drag = round(middle, [levels.bottom_mm, 0.0], widths);
    let mut shapes = vec![(in_drag, Draw::FromJoint)];
    if levels.foot_mm > 0.0 {
        let heights = [-OVERLAP_MM, levels.foot_mm];
        let widths = [across - OVERLAP_MM, narrower(levels.foot_mm) - OVERLAP_MM];
        shapes.push((round(middle, heights, widths), Draw::FromJoint));
    }
    Cut::of(Piece::Well, Footprint::round(middle, across), shapes)
}
