//! Loose pins that hold a loose piece to its body while it is rammed up: two rods pushed in from
//! outside, through the piece and into the body, and pulled out once the sand is firm around it.

use super::halves::{PinWish, Pins};
use super::loose::{LooseError, LoosePiece};
use super::pins::{PIN_DEPTH, Room, clear_mm, diameters, farthest_apart, places};
use super::plain::rod;
use crate::boolean::Body;
use crate::draw::frame::DrawFrame;
use crate::rays::along;
use crate::tree::Tree;
use crate::vector::scale;

/// Pins closer together than so many diameters do not keep a piece from turning.
const APART: f64 = 2.0;

/// Over the outside of the piece by this much, mm, so that a hole opens there.
const OVER_MM: f64 = 1.0;

/// Drills a piece and its body for two pins along the way on which the piece is moved. The piece
/// is told which; where none find room both stay as they are. The body comes back.
pub(super) fn pinned(
    piece: &mut LoosePiece,
    body: &Body,
    wish: &PinWish,
) -> Result<Body, LooseError> {
    let Some(pins) = placed(piece, body, wish)? else {
        return Ok(body.clone());
    };
    let outward = scale(piece.inward, -1.0);
    let depth = pins.depth_mm;
    let mut drilled = Body::of(&piece.mesh)?;
    let mut rest = body.clone();
    for place in pins.places_mm {
        let tight = rod(place, piece.inward, pins.diameter_mm, depth)?;
        let wide = rod(place, outward, pins.hole_mm, pins.wide_mm)?;
        rest = rest.without(&Body::of(&tight)?)?;
        drilled = drilled.without(&Body::of(&wide)?)?;
    }
    piece.mesh = drilled.mesh();
    piece.pins = Some(pins);
    Ok(rest)
}

/// The two places farthest apart on the cut with room around them, for the thickest rod that has
/// some.
fn placed(piece: &LoosePiece, body: &Body, wish: &PinWish) -> Result<Option<Pins>, LooseError> {
    let outward = scale(piece.inward, -1.0);
    let Some(frame) = DrawFrame::drawing_along(outward) else {
        return Ok(None);
    };
    let own = frame.turned(&piece.mesh);
    let whole = frame.turned(&Body::of(&piece.mesh)?.with(body)?.mesh());
    let (own_tree, tree) = (Tree::over(&own), Tree::over(&whole));
    let bounds = own.bounds();
    for diameter_mm in diameters(piece.mesh.diagonal(), wish.diameter_mm) {
        let hole_mm = diameter_mm + wish.clearance_mm;
        let depth_mm = PIN_DEPTH * diameter_mm;
        let room = Room {
            axis: 2,
            reach_mm: [depth_mm, diameter_mm],
            clear_mm: clear_mm(hole_mm),
            from_mm: 0.0,
        };
        // The cut is where the piece begins.
        let found = places(&whole, &tree, bounds, room, |[x, y]| {
            along(&own, &own_tree, 2, [x, y, 0.0])
                .first()
                .map(|hit| hit.at)
        });
        if let Some(ends) = farthest_apart(&found, APART * diameter_mm) {
            return Ok(Some(Pins {
                places_mm: ends.map(|place| frame.part_from_draw(place)),
                diameter_mm,
                hole_mm,
                depth_mm,
                wide_mm: piece.mesh.diagonal() + OVER_MM,
            }));
        }
    }
    Ok(None)
}
