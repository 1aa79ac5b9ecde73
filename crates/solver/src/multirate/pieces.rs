//! Work in pieces of whole planes, side by side.

use rayon::iter::{IndexedParallelIterator, IntoParallelIterator, ParallelIterator};

use crate::case::Case;
use crate::multirate::split::Kind;

/// Slow and quick cells of each plane.
pub fn work(case: &Case, kinds: &[Kind]) -> (Vec<usize>, Vec<usize>) {
    let [along, rows, planes] = case.grid.counts();
    let (mut slow, mut quick) = (vec![0; planes], vec![0; planes]);
    for (plane, kinds) in kinds.chunks(along * rows).enumerate() {
        for kind in kinds {
            match kind {
                Kind::Even | Kind::Mixed => slow[plane] += 1,
                Kind::Quick => quick[plane] += 1,
                Kind::Void => {}
            }
        }
    }
    (slow, quick)
}

/// Does some work for each piece, side by side where there are several.
pub fn each<Piece: Send, Answer: Send>(
    mut pieces: Vec<Piece>,
    work: impl Fn(Piece) -> Answer + Sync + Send,
) -> Vec<Answer> {
    match pieces.len() {
        1 => pieces.pop().map(work).into_iter().collect(),
        _ => pieces.into_par_iter().with_max_len(1).map(work).collect(),
    }
}
