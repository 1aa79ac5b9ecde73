//! What the metal does, from the first drop to the open mould: how it fills and how it freezes.
//!
//! - [`cells`]: the mould as a box of cells, one stuff a cell.
//! - [`fill`]: the filling at a glance.

pub mod cells;
pub mod fill;
