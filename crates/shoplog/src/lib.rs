//! What was poured, how it came out, what that teaches.
//!
//! ```
//! use shoplog::entry::Fresh;
//! use shoplog::log::Log;
//! use shoplog::table::melt::HEATS;
//!
//! let folder = tempfile::tempdir()?;
//! let mut log = Log::open(&folder.path().join("log.sqlite"))?;
//! let heat = Fresh::of(&HEATS).typed(&log, "alloy", "A356")?.typed(&log, "charge", "2.4 kg")?;
//! let added = log.add(&[heat])?;
//! assert_eq!(log.find(&HEATS, "last")?, added[0].id);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod around_pour;
pub mod backup;
pub mod bench_files;
pub mod chart;
pub mod column;
pub mod diagnosis;
pub mod entry;
pub mod error;
pub mod export;
pub mod guard;
pub mod guard_told;
pub mod import;
pub mod learn;
pub mod log;
pub mod photo;
pub mod prefill;
pub mod question;
pub mod salvage;
pub mod sent;
pub mod table;
pub mod then_and_now;
pub mod value;
pub mod written_pour;
