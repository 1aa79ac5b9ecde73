//! What the checks of the whole repository stand on: the rows of published examples, how an answer
//! is compared with one, and a walk over the repository's own files.

pub mod check;
pub mod deviation;
pub mod repository;
