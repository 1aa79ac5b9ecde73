//! Why nothing can be seen of a filling.

use mould::gating::gate_speed::METALS;
use thiserror::Error;

use super::network::NetworkError;

/// Why nothing can be seen.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FillError {
    /// The running system.
    #[error(transparent)]
    Network(#[from] NetworkError),
    /// A box that does not hold together.
    #[error(
        "the box of cells has {cells} cells, but {stuff} fillings, {metal} shares of metal and \
         {running} marks of the running system: make them alike"
    )]
    Box {
        /// Cells by its counts.
        cells: usize,
        /// Fillings listed.
        stuff: usize,
        /// Shares listed.
        metal: usize,
        /// Marks listed.
        running: usize,
    },
    /// Cells without a size.
    #[error("cells of {size_mm} mm: their edge has to be a length above 0 mm")]
    Size {
        /// The edge.
        size_mm: f64,
    },
    /// A metal of which no gate speeds are known.
    #[error("gate speeds are known for {}, not for \"{kind}\"", METALS.join(", "))]
    Kind {
        /// As it was called.
        kind: String,
    },
    /// A metal, a temperature or a sand that cannot be.
    #[error(
        "the metal needs a sound table and a density, the sand a temperature and figures above \
         nought for what it draws and what passes to it, and metal stops at a solid share between \
         nought and one"
    )]
    Figures,
    /// Metal that is not liquid when it is poured.
    #[error(
        "the metal is poured at {poured_c:.0} °C and is liquid from {liquidus_c:.0} °C on: pour it \
         hotter"
    )]
    Cold {
        /// As poured, °C.
        poured_c: f64,
        /// Where the first of it freezes, °C.
        liquidus_c: f64,
    },
    /// No hollow.
    #[error("the mould has no hollow for metal to run into")]
    NoHollow,
    /// Gates and outlets that do not go together.
    #[error("the running system has {outlets} outlets, but {gates} gates are placed: place each")]
    Gates {
        /// Outlets of the network.
        outlets: usize,
        /// Gates placed.
        gates: usize,
    },
    /// A gate in the sand.
    #[error(
        "gate {number} at {} ends {away_mm:.1} mm away from any hollow: lead it into the casting",
        at(place_mm)
    )]
    GateInSand {
        /// Counted from one.
        number: usize,
        /// Where it was placed, mm.
        place_mm: [f64; 3],
        /// How far off the nearest hollow lies, mm.
        away_mm: f64,
    },
}

/// A place as it stands in messages.
fn at([x, y, z]: &[f64; 3]) -> String {
    format!("({x:.1}, {y:.1}, {z:.1}) mm")
}
