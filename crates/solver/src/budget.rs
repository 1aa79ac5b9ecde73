//! What a case would take before it is begun: cells, memory, steps, time.

use thiserror::Error;

use crate::run::Mode;

/// What a case would take, roughly.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// All cells of the box.
    pub cells: usize,
    /// Memory of the run, bytes.
    pub bytes: f64,
}

/// A case that is too large.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error(
    "{cells} cells would take {:.1} GiB of memory and at most {:.1} GiB are allowed: with cells \
     {:.2} times as wide they fit, and the run takes about {:.0} times less",
    bytes / GIB, most_bytes / GIB, wider(*bytes, *most_bytes),
    wider(*bytes, *most_bytes).powi(5)
)]
pub struct TooLarge {
    /// All cells of the box.
    pub cells: usize,
    /// Memory it would take.
    pub bytes: f64,
    /// Memory that is allowed.
    pub most_bytes: f64,
}

const GIB: f64 = 1024.0 * 1024.0 * 1024.0;

/// Most memory of a run where nobody says otherwise: half of what a small machine of our days has.
pub const MOST_BYTES: f64 = 4.0 * GIB;

/// Bytes a cell of the case itself: its filling and its start.
const OF_THE_CASE: f64 = 5.0;

/// Bytes a cell of the reference: five numbers a cell and, for three links, 48 each.
const OF_THE_REFERENCE: f64 = 5.0 * 8.0 + 3.0 * 48.0;

/// Bytes a cell of the scheme for use, where a tenth of the box freezes: two temperatures, 64 bytes
/// for each cell that goes in stages, and faces. A box that freezes throughout takes four times
/// that. The last moment takes the place of lists that are no longer needed.
const OF_THE_MULTIRATE: f64 = 19.0;

/// Bytes a cell of a moment that is kept.
const OF_A_MOMENT: f64 = 8.0;

/// What a box of so many cells would take, with so many moments kept beside the last.
pub fn estimate(cells: usize, mode: Mode, moments: usize) -> Estimate {
    let of_mode = match mode {
        Mode::Reference => OF_THE_REFERENCE,
        Mode::Multirate => OF_THE_MULTIRATE,
    };
    let last = match mode {
        Mode::Reference => 1.0,
        Mode::Multirate => 0.0,
    };
    let kept = OF_A_MOMENT * (moments as f64 + last);
    let bytes = cells as f64 * (OF_THE_CASE + of_mode + kept);
    Estimate { cells, bytes }
}

/// Refuses a number of cells that would take too much memory; cells are numbered in 32 bits.
pub fn within(
    cells: usize,
    mode: Mode,
    moments: usize,
    most_bytes: f64,
) -> Result<Estimate, TooLarge> {
    let estimate = estimate(cells, mode, moments);
    match estimate.bytes <= most_bytes && cells < u32::MAX as usize / 2 {
        true => Ok(estimate),
        false => Err(TooLarge {
            cells,
            bytes: estimate.bytes,
            most_bytes,
        }),
    }
}

/// How much wider cells have to be for the memory: it goes with their third power.
fn wider(bytes: f64, most_bytes: f64) -> f64 {
    (bytes / most_bytes).cbrt()
}

/// Longest run that is begun, h: two days at a bench. A slip of the pen in a width or an end comes
/// to years, what somebody means to months ends within days on a coarser box.
pub const MOST_HOURS: f64 = 48.0;

/// Cells that the reference takes through a step in a second on one core of a plain machine,
/// measured with a busy machine of 2026: an order of size, not a promise.
const REFERENCE_CELLS_A_SECOND: f64 = 5e7;

/// The same for a step of a slow cell and for a stage of a quick one.
const MULTIRATE_CELLS_A_SECOND: f64 = 4e8;

/// Stages to a step, as many as a metal in a poor conductor has.
const STAGES: f64 = 15.0;

/// How long a run would take, h, with so many steps over `cells`, of which `quick` go in stages.
pub fn hours(mode: Mode, steps: f64, cells: usize, quick: usize) -> f64 {
    let seconds = match mode {
        Mode::Reference => steps * cells as f64 / REFERENCE_CELLS_A_SECOND,
        Mode::Multirate => {
            steps * (cells as f64 + STAGES * quick as f64) / MULTIRATE_CELLS_A_SECOND
        }
    };
    seconds / 3600.0
}
