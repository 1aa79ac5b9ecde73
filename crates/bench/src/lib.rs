//! The sand bench: what a heap is, and what its batches teach.
//!
//! Here the laws of `sand` and the statistics of `trials` meet the founder's own files: a heap as
//! it was tested, an experiment as it was planned, batches as they came out. Files are read and
//! written for this room by the job folder; nothing here opens one.
//!
//! ```
//! use bench::experiment::design::planned;
//! use bench::experiment::file::{ExperimentFile, STARTER};
//!
//! let typed: ExperimentFile = job::file_fault::read("experiment.toml", STARTER)?;
//! let plan = planned(&typed.meant()?)?;
//! assert_eq!(plan.batches.len(), 9);
//! assert!(plan.teaches.degrees > 0, "batches to spare, to know the noise by");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod book;
pub mod class;
pub mod experiment;
pub mod given;
pub mod svg;
pub mod tested;
pub mod told;
pub mod trouble;
