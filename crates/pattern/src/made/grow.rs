//! The part made larger by what the metal contracts, along each axis by a share of its own.
//!
//! The shares differ where cores hold the metal back one way, or where rapping makes up for it
//! sideways; which share belongs to which way is settled by [`crate::contraction`].

use thiserror::Error;

use crate::mesh::Mesh;

/// Why nothing was grown.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum GrowError {
    /// A share that no metal contracts by.
    #[error(
        "a contraction of {:.2} % along {axis} is none: take −1 to 5 %, a share of the part's size",
        share * 100.0
    )]
    NoContraction {
        /// The axis: x, y or z.
        axis: char,
        /// The share asked for.
        share: f64,
    },
}

/// The shares that are taken, as for castings measured: [`crate::contraction::from_castings`].
const SHARES: std::ops::RangeInclusive<f64> = -0.01..=0.05;

/// The mesh grown about the origin: every place moves to (1 + share) times its coordinate. Law:
/// [`crate::contraction::PATTERN_LENGTH`] along each axis.
///
/// # Errors
///
/// A share that no metal contracts by.
pub fn grown(mesh: &Mesh, shares: [f64; 3]) -> Result<Mesh, GrowError> {
    for (share, axis) in shares.into_iter().zip(['x', 'y', 'z']) {
        if !SHARES.contains(&share) {
            return Err(GrowError::NoContraction { axis, share });
        }
    }
    let larger = |point: &[f64; 3]| [0, 1, 2].map(|axis| point[axis] * (1.0 + shares[axis]));
    Ok(Mesh {
        points: mesh.points.iter().map(larger).collect(),
        triangles: mesh.triangles.clone(),
    })
}
