//! Planned trials: which batches to make, and what their results say.
//!
//! ```
//! use trials::verdict::{Good, Measured, verdict};
//!
//! let batch = |mix, response| Measured { mix, day: 0, response };
//! let batches = [batch(0, 41.0), batch(0, 44.0), batch(1, 43.0), batch(1, 46.0)];
//! let found = verdict(&batches, Good::High, 0.5)?;
//! assert_eq!(found.leading, 1);
//! assert_eq!(found.winner, None, "two batches of each do not show it");
//! # Ok::<(), trials::verdict::VerdictError>(())
//! ```
//!
//! Knows no trade: a mix is a row of shares, a setting a number, a response a number in whatever
//! unit it was measured. Nothing here depends on anything but what is handed in; where lots are
//! drawn, the seed is handed in too.
//!
//! The statistics are those of the textbooks. Where a choice was made among them, the file says
//! which; the tests hold them to published data sets or, where none was found, to general
//! libraries.

pub mod alias;
pub mod belief;
pub mod best;
pub mod chance;
pub mod chart;
pub mod choice;
pub mod conjugate;
pub mod desirability;
pub mod exact;
pub mod fit;
pub mod gauge;
pub mod lattice;
pub mod map;
pub mod model;
pub mod next;
pub mod optimal;
pub mod parts;
pub mod plan;
pub mod rank;
pub mod region;
pub mod repeats;
pub mod settings;
pub mod shares;
pub mod summit;
pub mod verdict;
pub mod vertices;
