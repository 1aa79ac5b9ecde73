//! Plan and section of a mould drawn from its solids.

use pattern::mesh::Mesh;
use pattern::silhouette::silhouette;
use pattern::slice::outlines;
use rigging::mould::Mould;
use rigging::piece::{Piece, Solid};

use crate::joint_drawn::joint_drawn;
use crate::plan::{DrawnPiece, MouldDrawing, PieceKind};

/// The drawing of the same flask with everything where the mould has it; the section goes through
/// the middle of the first casting.
pub fn drawn(flask: &MouldDrawing, mould: &Mould) -> MouldDrawing {
    let middle = mould.castings.first().map_or(0.0, |first| {
        let [low, high] = first.mesh.bounds();
        // A hair aside, so that the cut does not run along edges drawn on round numbers.
        (low[1] + high[1]) / 2.0 + 1.7e-6 * (high[1] - low[1])
    });
    let castings = || mould.castings.iter().map(|solid| &solid.mesh);
    let pieces = mould.rigging.iter().chain(&mould.cores);
    MouldDrawing {
        outline: castings()
            .flat_map(|mesh| silhouette(mesh).outlines)
            .collect(),
        section: castings().flat_map(|mesh| cut(mesh, middle)).collect(),
        pieces: pieces.filter_map(|solid| piece(solid, middle)).collect(),
        joint: joint_drawn(mould, middle),
        ..flask.clone()
    }
}

fn piece(solid: &Solid, middle: f64) -> Option<DrawnPiece> {
    let kind = match solid.piece {
        Piece::Basin | Piece::Sprue | Piece::Well => PieceKind::Sprue,
        Piece::Runner(_) => PieceKind::Runner,
        Piece::Gate(_) => PieceKind::Gate,
        Piece::Feeder(_) => PieceKind::Feeder,
        Piece::Core(_) => PieceKind::Core,
        Piece::Casting(_) | Piece::Vents | Piece::Cavity | Piece::Cope | Piece::Drag => {
            return None;
        }
    };
    let cut = cut(&solid.mesh, middle);
    let beside = match cut.is_empty() {
        true => silhouette(&from_the_front(&solid.mesh)).outlines,
        false => Vec::new(),
    };
    Some(DrawnPiece {
        kind,
        plan: silhouette(&solid.mesh).outlines,
        cut,
        beside,
    })
}

/// The cut at a place across the flask, x and z.
fn cut(mesh: &Mesh, across: f64) -> Vec<Vec<[f64; 2]>> {
    let swapped = |outline: Vec<[f64; 2]>| outline.into_iter().map(|[z, x]| [x, z]).collect();
    outlines(mesh, 1, across).into_iter().map(swapped).collect()
}

/// The mesh turned so that its front is seen from above: x stays, z becomes y.
fn from_the_front(mesh: &Mesh) -> Mesh {
    Mesh {
        points: mesh.points.iter().map(|&[x, y, z]| [x, z, -y]).collect(),
        triangles: mesh.triangles.clone(),
    }
}
