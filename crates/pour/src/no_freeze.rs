//! Why a mould was not followed.

use solver::run::SolveError;
use thiserror::Error;

use crate::meshing::MeshingError;

/// Why a mould was not followed.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FreezeError {
    /// It cannot be cut.
    #[error(transparent)]
    Meshing(#[from] MeshingError),
    /// Poured colder than it begins to freeze.
    #[error(
        "{alloy} at {start_c:.0} °C when the mould is full has begun to freeze, at {liquidus_c:.0} °C: \
         pour it hotter"
    )]
    TooCold {
        /// The alloy.
        alloy: String,
        /// Temperature at the start, °C.
        start_c: f64,
        /// Where freezing begins, °C.
        liquidus_c: f64,
    },
    /// Start temperatures of another mould.
    #[error("start temperatures are given for {given} cells, and the mould has {cells}")]
    Starts {
        /// How many there are.
        given: usize,
        /// How many there should be.
        cells: usize,
    },
    /// A figure of the sand or the contact that is none.
    #[error(
        "sand and contact need figures above nought: conductivity {w_mk} W/mK, heat capacity {j_m3k} \
         J/m³K, contact {contact_w_m2k} W/m²K"
    )]
    Figures {
        /// Conductivity.
        w_mk: f64,
        /// Heat capacity.
        j_m3k: f64,
        /// Contact.
        contact_w_m2k: f64,
    },
    /// The solver says no.
    #[error("the heat of this mould could not be followed: {0}")]
    Solve(#[from] SolveError),
    /// It would not freeze.
    #[error(
        "after {:.0} min {unfrozen} cells are still not solid, many times longer than a mould like \
         this should take: look at the sand around the heaviest place, or whether the flask holds \
         enough of it", after_s / 60.0
    )]
    NotFrozen {
        /// When it was given up, s.
        after_s: f64,
        /// Cells left.
        unfrozen: usize,
    },
}
