//! Draught put on the walls of a pattern, and where its places lie in the drawing.

use pattern::made::joint::Joint;
use pattern::made::taper::{Draught, Draws, TaperError, Tight, Wall, tapered_about};
use pattern::mesh::Mesh;

use super::MakingError;
use super::wish::PatternWish;
use crate::turning::Turning;

/// A pattern with draught on its walls, how many got some, and the area of those that draw neither
/// way; or as it was, and why.
pub(super) struct Drafted {
    pub(super) mesh: Mesh,
    pub(super) walls: (usize, f64),
    pub(super) tight: Vec<Tight>,
    pub(super) failed: Option<TaperError>,
}

impl Drafted {
    fn as_it_was(turned: &Mesh, failed: Option<TaperError>) -> Drafted {
        Drafted {
            mesh: turned.clone(),
            walls: (0, 0.0),
            tight: Vec::new(),
            failed,
        }
    }
}

/// Puts draught on the walls; `drawn` gives the place in the drawing of one in the mould. Where a
/// wall is deeper than the rules go, and the job does not say how much draught it has to be, the
/// walls stay as they were drawn.
pub(super) fn drafted(
    turned: &Mesh,
    joint: &Joint,
    wish: &PatternWish,
    drawn: &dyn Fn([f64; 3]) -> [f64; 3],
) -> Result<Drafted, MakingError> {
    let draught = match wish.draught_degrees {
        Some(0.0) => return Ok(Drafted::as_it_was(turned, None)),
        Some(degrees) => Draught::Degrees(degrees),
        None => Draught::ByDepth(wish.skin),
    };
    let made = match tapered_about(turned, &joint.heights(), draught) {
        Ok(made) => made,
        Err(error) if wish.draught_degrees.is_none() => {
            return Ok(Drafted::as_it_was(turned, Some(error.told_at(drawn))));
        }
        Err(error) => return Err(error.told_at(drawn).into()),
    };
    let mut tight = made.tight;
    tight
        .iter_mut()
        .for_each(|one| one.place_mm = drawn(one.place_mm));
    let lacks = |tight: &Tight| tight.has_degrees / tight.wanted_degrees;
    tight.sort_by(|a, b| lacks(a).total_cmp(&lacks(b)));
    let (held, drafted): (Vec<&Wall>, Vec<&Wall>) = made
        .walls
        .iter()
        .partition(|wall| wall.draws == Draws::Neither);
    let held_mm2 = held.iter().map(|wall| wall.area_mm2).sum();
    Ok(Drafted {
        walls: (drafted.len(), held_mm2),
        mesh: made.mesh,
        tight,
        failed: None,
    })
}

/// Where a place of the pattern, as it lies in the mould, is in the drawing.
pub(super) fn drawn_place(turning: &Turning, contraction: [f64; 3], place: [f64; 3]) -> [f64; 3] {
    let large = turning.drawn(place);
    [0, 1, 2].map(|axis| large[axis] / (1.0 + contraction[axis]))
}
