//! What to do about sand that is held: a loose piece of the pattern, a drawback, a core, or another
//! way of drawing the part.

use super::columns::Columns;
use super::frame::DrawFrame;
use super::trapped::Held;
use super::undercut::Undercuts;
use super::way::Way;
use crate::vector::Vector;

/// What frees the pattern.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Remedy {
    /// A piece of the pattern that stays in the sand and is then drawn sideways.
    LoosePiece,
    /// A piece of sand made apart that fills the room.
    Core,
    /// A block of the mould itself, backed by a plate, that is drawn back sideways.
    Drawback,
    /// Another way of drawing the part, in which nothing is held.
    TurnThePart,
}

/// Why that remedy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// The room opens to one side and is shallower than it is high.
    OpensSideways,
    /// It opens to one side, but is too long for a piece that a hand lifts through the mould.
    OpensSidewaysLong,
    /// It opens to one side, but is deeper than it is high: a finger of sand that would break.
    DeeperThanHigh,
    /// It runs through the part from side to side.
    RunsThrough,
    /// It opens to the side, but no single straight move frees all of it: a groove around a pulley.
    NoSingleMove,
    /// It opens to no side at all.
    Closed,
    /// Drawn another way the part holds nothing.
    ClearWhenTurned,
}

/// A remedy with its reason.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Advice {
    /// What to do.
    pub remedy: Remedy,
    /// Why.
    pub why: Why,
    /// The straight way by which the sand, or the piece, comes free, in the part's axes; for a part
    /// to be turned, the way to lift the cope.
    pub opening: Option<Vector>,
}

/// Ways tried around the draw, besides those along and across the room itself.
const WAYS: usize = 16;

/// Places of a region that are asked whether they come free.
const PLACES: usize = 240;

/// Share of the places that must come free; the rest may scrape, being within a column of a wall.
/// At one half of a percent less a groove beside a rounded corner would not open, much below a
/// region that hooks behind a small boss would be said to come free.
const FREE: f64 = 0.97;

/// Longest room that a loose piece is advised for, mm: what is longer is drawn back as a block of
/// sand (common practice, no source).
const LONGEST_PIECE_MM: f64 = 100.0;

/// Advises to turn the part instead, if one of some other ways of drawing it holds nothing.
pub fn turn_if_clear(found: &mut Undercuts, ways: &[Way]) {
    let Some(clear) = ways.iter().find(|way| way.trapped_mm3 == 0.0) else {
        return;
    };
    for region in &mut found.regions {
        region.advice = Advice {
            remedy: Remedy::TurnThePart,
            why: Why::ClearWhenTurned,
            opening: Some(clear.up),
        };
    }
}

/// Advice on one region, given by the numbers of its gaps.
pub(super) fn advise(held: &Held, whole: &Columns, frame: &DrawFrame, gaps: &[usize]) -> Advice {
    let places = places(held, gaps);
    let ways = ways(held, gaps);
    let free: Vec<f64> = ways
        .iter()
        .map(|&way| share_free(whole, &places, way))
        .collect();
    // The ways lie in pairs, each followed by its opposite.
    let opposite = |way: usize| free[way ^ 1];
    let opens = |way: &usize| free[*way] >= FREE;
    let sideways = (0..ways.len()).filter(|way| opens(way) && opposite(*way) < FREE);
    let depth_mm = |way: usize| extent(&places, ways[way]);
    let shallowest = sideways.min_by(|&a, &b| depth_mm(a).total_cmp(&depth_mm(b)));
    if let Some(way) = shallowest {
        let [x, y] = ways[way];
        let opening = Some(frame.part_from_draw([x, y, 0.0]));
        let long_mm = extent(&places, [-y, x]);
        let (remedy, why) = match () {
            () if depth_mm(way) > height(held, gaps) => (Remedy::Core, Why::DeeperThanHigh),
            () if long_mm > LONGEST_PIECE_MM => (Remedy::Drawback, Why::OpensSidewaysLong),
            () => (Remedy::LoosePiece, Why::OpensSideways),
        };
        return Advice {
            remedy,
            why,
            opening,
        };
    }
    let through = (0..ways.len()).find(|way| opens(way));
    let opening = through.map(|way| frame.part_from_draw([ways[way][0], ways[way][1], 0.0]));
    let why = match opening {
        Some(_) => Why::RunsThrough,
        None if free.iter().any(|&share| share > 1.0 - FREE) => Why::NoSingleMove,
        None => Why::Closed,
    };
    Advice {
        remedy: Remedy::Core,
        why,
        opening,
    }
}

/// Places spread over a region, those well inside it if there are enough.
fn places(held: &Held, gaps: &[usize]) -> Vec<Vector> {
    let inside: Vec<usize> = gaps
        .iter()
        .copied()
        .filter(|&gap| held.neighbours(gap) == 4)
        .collect();
    let from = if inside.len() >= 8 {
        inside.as_slice()
    } else {
        gaps
    };
    let every = from.len().div_ceil(PLACES / 3).max(1);
    let chosen = from.iter().step_by(every).map(|&gap| held.gaps[gap]);
    chosen
        .flat_map(|gap| {
            let [x, y] = held.columns.place_mm(gap.column as usize);
            [0.2, 0.5, 0.8].map(|part| [x, y, gap.from_mm + part * (gap.to_mm - gap.from_mm)])
        })
        .collect()
}

/// Directions across the draw, each followed by its opposite: evenly round, and along the two main
/// axes of the region as seen from above.
fn ways(held: &Held, gaps: &[usize]) -> Vec<[f64; 2]> {
    let seen: Vec<[f64; 2]> = gaps
        .iter()
        .map(|&gap| held.columns.place_mm(held.gaps[gap].column as usize))
        .collect();
    let count = seen.len() as f64;
    let mean = [0, 1].map(|axis| seen.iter().map(|place| place[axis]).sum::<f64>() / count);
    let second = |a: usize, b: usize| {
        seen.iter()
            .map(|place| (place[a] - mean[a]) * (place[b] - mean[b]))
            .sum::<f64>()
    };
    let main = 0.5 * (2.0 * second(0, 1)).atan2(second(0, 0) - second(1, 1));
    let quarter = std::f64::consts::FRAC_PI_2;
    let even = (0..WAYS / 2).map(|turn| std::f64::consts::TAU * turn as f64 / WAYS as f64);
    let angles = [main, main + quarter].into_iter().chain(even);
    angles
        .flat_map(|angle| [[angle.cos(), angle.sin()], [-angle.cos(), -angle.sin()]])
        .collect()
}

/// Share of the places from which a straight move leads out of the part without meeting metal.
fn share_free(whole: &Columns, places: &[Vector], way: [f64; 2]) -> f64 {
    let free = places
        .iter()
        .filter(|place| is_free(whole, **place, way))
        .count();
    free as f64 / places.len().max(1) as f64
}

/// Whether a straight move across the draw leads out of the part without meeting metal.
pub(super) fn is_free(whole: &Columns, [x, y, z]: Vector, way: [f64; 2]) -> bool {
    let mut step = 1.0;
    loop {
        let away = step * whole.size_mm;
        let Some(column) = whole.at([x + away * way[0], y + away * way[1]]) else {
            return true;
        };
        if whole
            .spans(column)
            .iter()
            .any(|span| span.from_mm < z && z < span.to_mm)
        {
            return false;
        }
        step += 1.0;
    }
}

/// How far the places reach along a direction, mm.
fn extent(places: &[Vector], way: [f64; 2]) -> f64 {
    let along = places
        .iter()
        .map(|place| place[0] * way[0] + place[1] * way[1]);
    let ends = along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
        (low.min(at), high.max(at))
    });
    (ends.1 - ends.0).max(0.0)
}

/// Height of the tallest gap, mm.
fn height(held: &Held, gaps: &[usize]) -> f64 {
    gaps.iter()
        .map(|&gap| held.gaps[gap].to_mm - held.gaps[gap].from_mm)
        .fold(0.0, f64::max)
}
