//! Loose pieces of a pattern in words: where they are, how they come out, what holds them.

use pattern::made::ledge::Side;
use pattern::made::loose::{LoosePiece, Stuck};
use pattern::vector::{add, scale};

use super::Making;
use super::told::{cm3, mm};
use crate::cores_told::place;
use crate::draw_told::way_text;
use crate::words::said::Said;

/// What there is to know of the loose pieces, a sentence each.
pub(super) fn lines(making: &Making) -> Vec<Said> {
    let pieces = making.loose.iter().zip(1..);
    pieces
        .flat_map(|(piece, number)| [drawn(piece, number), held(piece, number)])
        .chain(making.stuck.iter().map(stuck))
        .collect()
}

fn drawn(piece: &LoosePiece, number: usize) -> Said {
    let [low, high] = piece.mesh.bounds();
    let id = match piece.side {
        Side::Drag => "making-loose-drag",
        Side::Cope => "making-loose-cope",
    };
    Said::new(id)
        .with("number", number)
        .with("place", place(scale(add(low, high), 0.5)))
        .with("length", mm(piece.move_mm))
        .with("way", way_text(piece.inward))
}

fn held(piece: &LoosePiece, number: usize) -> Said {
    match &piece.pins {
        Some(pins) => Said::new("making-loose-pins")
            .with("number", number)
            .with("rod", mm(pins.diameter_mm))
            .with("depth", mm(pins.depth_mm)),
        None => Said::new("making-loose-no-pins").with("number", number),
    }
}

fn stuck(hollow: &Stuck) -> Said {
    Said::new("making-loose-stuck")
        .with("volume", cm3(hollow.volume_mm3))
        .with("place", place(hollow.centre_mm))
        .with("sand", cm3(hollow.in_the_way_mm3))
}
