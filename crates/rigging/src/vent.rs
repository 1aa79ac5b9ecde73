//! Vents: holes pricked with a wire from the top of the cope down to a little above the castings,
//! evenly over them.

use crate::bars::round;
use crate::cut::{Cut, Draw};
use crate::error::MouldError;
use crate::given::{Given, Vents};
use crate::lie::Lying;
use crate::piece::Piece;
use crate::plan_view::{Footprint, Point};

/// Sand left between a vent and other metal, mm: a wire wanders by as much.
const CLEAR_MM: f64 = 5.0;

/// All vents as one piece, or nothing where none are wanted or none has room.
pub(crate) fn vents(
    given: &Given,
    castings: &[Lying],
    metal: &[Footprint],
) -> Result<Option<Cut>, MouldError> {
    let Some(vents) = &given.sizes.vents else {
        return Ok(None);
    };
    let (wire, cope) = (vents.wire.as_mm(), given.flask.cope.as_mm());
    let mut holes = Vec::new();
    for lying in castings {
        for point in places(lying, metal, vents) {
            let skin = lying.heights_at(point).last().copied();
            let foot = skin.unwrap_or(0.0).max(0.0) + vents.short.as_mm();
            if foot + wire < cope {
                holes.push((round(point, [foot, cope], [wire, wire]), Draw::Upward));
            }
        }
    }
    if holes.is_empty() {
        return Ok(None);
    }
    let middle = [given.flask.length, given.flask.width].map(|side| side.as_mm() / 2.0);
    Ok(Some(Cut::of(
        Piece::Vents,
        Footprint::round(middle, wire),
        holes,
    )?))
}

/// Places over a casting in rows, as far apart as wanted.
fn places(lying: &Lying, metal: &[Footprint], vents: &Vents) -> Vec<Point> {
    let [low, high] = lying.bounds;
    let spacing = vents.spacing.as_mm().max(2.0 * CLEAR_MM);
    let rows = [0, 1].map(|axis| ((high[axis] - low[axis]) / spacing).round().max(1.0));
    let at = |axis: usize, row: usize| {
        low[axis] + (high[axis] - low[axis]) * (row as f64 + 0.5) / rows[axis]
    };
    let all = (0..rows[0] as usize).flat_map(|x| (0..rows[1] as usize).map(move |y| [x, y]));
    let all = all.map(|[x, y]| [at(0, x), at(1, y)]);
    let is_clear = |point: &Point| {
        let dot = Footprint::round(*point, vents.wire.as_mm());
        metal.iter().all(|other| dot.gap(other) >= CLEAR_MM)
    };
    all.filter(|point| is_clear(point) && !lying.heights_at(*point).is_empty())
        .collect()
}
