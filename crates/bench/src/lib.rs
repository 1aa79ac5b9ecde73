//! The sand bench: what a heap is, and what its batches teach.
//!
//! Here the laws of `sand` and the statistics of `trials` meet the founder's own files: a heap as
//! it was tested, an experiment as it was planned, batches as they came out. Files are read and
//! written for this room by the job folder; nothing here opens one.
