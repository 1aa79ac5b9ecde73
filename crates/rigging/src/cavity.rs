//! The mould as one: what the metal fills, and the sand that is left of cope and drag.

use measure::length::Volume;
use pattern::boolean::Body;

use crate::bars::block;
use crate::cut::Cut;
use crate::error::MouldError;
use crate::face::Face;
use crate::given::Given;
use crate::lie::Lying;
use crate::piece::Piece;

/// Metal, sand and cores within the flask.
pub(crate) struct Filled {
    /// Metal.
    pub(crate) metal: Body,
    /// Sand above the joint.
    pub(crate) cope: Body,
    /// Sand below it.
    pub(crate) drag: Body,
    /// Metal above the top of the cope, in the basin.
    pub(crate) above_cope: Volume,
    /// Sum of all parts less the inside of the flask, over the inside of the flask.
    pub(crate) off_by: f64,
}

/// Takes castings, rigging, vents and cores out of the two blocks of sand.
pub(crate) fn fill(
    given: &Given,
    face: &Face,
    castings: &[Lying],
    rigging: &[Cut],
    vents: Option<&Cut>,
) -> Result<Filled, MouldError> {
    let cores = castings.iter().flat_map(|lying| &lying.cores);
    let cores: Vec<Body> = cores.map(|core| core.body.clone()).collect();
    let metal_bodies = castings.iter().map(|lying| &lying.body);
    let rigging_bodies = rigging.iter().map(|cut| &cut.body);
    let poured = together(metal_bodies.chain(rigging_bodies), &Piece::Cavity)?;
    let poured = without_all(poured, &cores, &Piece::Cavity)?;
    let inside = body(&inside(given), &Piece::Cavity)?;
    let wrong = |error| MouldError::Join {
        piece: Piece::Cavity,
        error,
    };
    let metal = poured.common_with(&inside).map_err(wrong)?;
    let above_cope = Volume::from_mm3((poured.volume_mm3() - metal.volume_mm3()).max(0.0));
    let air: Vec<Body> = vents.map(|cut| cut.body.clone()).into_iter().collect();
    let [drag_block, cope_block] = face.blocks.clone();
    let sand_of = |block: Body, piece: Piece| {
        let left = without_all(block, std::slice::from_ref(&metal), &piece)?;
        let left = without_all(left, &cores, &piece)?;
        without_all(left, &air, &piece)
    };
    let drag = sand_of(drag_block, Piece::Drag)?;
    let cope = sand_of(cope_block, Piece::Cope)?;
    let parts = [&metal, &drag, &cope].into_iter().chain(&cores).chain(&air);
    let sum: f64 = parts.map(Body::volume_mm3).sum();
    let whole = given.flask.volume().as_mm3();
    Ok(Filled {
        metal,
        cope,
        drag,
        above_cope,
        off_by: (sum - whole) / whole,
    })
}

fn inside(given: &Given) -> pattern::mesh::Mesh {
    let flask = &given.flask;
    let (x, y) = (flask.length.as_mm(), flask.width.as_mm());
    block([0.0, 0.0, -flask.drag.as_mm()], [x, y, flask.cope.as_mm()])
}

fn body(mesh: &pattern::mesh::Mesh, piece: &Piece) -> Result<Body, MouldError> {
    Body::of(mesh).map_err(|error| MouldError::Join {
        piece: piece.clone(),
        error,
    })
}

fn together<'a>(bodies: impl Iterator<Item = &'a Body>, piece: &Piece) -> Result<Body, MouldError> {
    let mut whole: Option<Body> = None;
    for body in bodies {
        whole = Some(match whole {
            None => body.clone(),
            Some(whole) => whole.with(body).map_err(|error| MouldError::Join {
                piece: piece.clone(),
                error,
            })?,
        });
    }
    let piece = piece.clone();
    let error = pattern::shape::ShapeError::None;
    whole.ok_or(MouldError::Shape { piece, error })
}

fn without_all(from: Body, taken: &[Body], piece: &Piece) -> Result<Body, MouldError> {
    taken.iter().try_fold(from, |left, taken| {
        left.without(taken).map_err(|error| MouldError::Join {
            piece: piece.clone(),
            error,
        })
    })
}
