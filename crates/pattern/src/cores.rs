//! Cores as solids: the body that fills a hollow, the prints that hold it, the box in which it is
//! made, and the way of its breath.
//!
//! A hollow is sand that neither half of the mould can be lifted from
//! ([`undercut`](crate::draw::undercut)). Its core is as large as the hollow, flush with the skin
//! that a string drawn tight around the part would have ([`body`](mod@body)); of the rooms under
//! that skin it fills the one in which its sand lies. Where the hollow opens the core goes on into
//! the sand of the mould as a print ([`print`](mod@print)). The box is a block in two halves with
//! the room of the core between them ([`core_box`](mod@core_box)), parted flat where that lets the
//! core go, along a step where it does not, and with slides ([`box_slides`]) where neither does.
//! The vent runs from each print along the middle of the core ([`vent`](mod@vent)).

pub mod body;
mod box_joint;
pub mod box_slides;
pub mod core_box;
pub mod print;
pub mod vent;

use thiserror::Error;

use crate::boolean::BooleanError;
use crate::draw::DrawError;
use crate::vector::Vector;

/// Why there is no core.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum CoreError {
    /// A hollow that opens nowhere: nothing can hold the core, and nobody gets the sand out.
    #[error(
        "the hollow around {} opens nowhere: a core in it has no print and its sand stays inside; \
         open it with a hole for a print, or make the part in two", place(*.centre_mm)
    )]
    NoPrint {
        /// Middle of the hollow, mm in the part's axes.
        centre_mm: Vector,
    },
    /// A print without length.
    #[error("a print of {length_mm} mm holds nothing: give it a length above nought")]
    NoLength {
        /// What was given, mm.
        length_mm: f64,
    },
    /// A core that no box of two halves lets go.
    #[error(
        "no core box of two halves lets this core go{}: {:.1} cm³ are held around {}; make the core \
         in two pieces and glue them", slides(*.slides_sought), .held_mm3 / 1000.0, place(*.centre_mm)
    )]
    NoBox {
        /// Room of the core that stays held, mm³.
        held_mm3: f64,
        /// Its middle, mm in the part's axes.
        centre_mm: Vector,
        /// Whether slides were looked for; not where the core is too finely cut.
        slides_sought: bool,
    },
    /// The part, or a direction.
    #[error(transparent)]
    Draw(#[from] DrawError),
    /// The solids.
    #[error("the core could not be cut out: {0}")]
    Boolean(#[from] BooleanError),
}

fn slides(sought: bool) -> &'static str {
    match sought {
        true => ", nor one with slides",
        false => ", and it is too finely cut for slides to be looked for",
    }
}

fn place([x, y, z]: Vector) -> String {
    format!("{x:.0}, {y:.0}, {z:.0} mm")
}
