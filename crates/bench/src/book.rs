//! The book of a heap: what it holds, what a pour does to it, and how a tired one is brought back.

pub mod file;
pub mod heat;
pub mod pour;
pub mod rescue;
pub mod state;
