//! What the metal does, from the first drop to the open mould: how it fills and how it freezes.
//!
//! - [`fill`]: the filling at a glance.
//! - [`cells`]: the mould as a box of cells, one stuff a cell; [`meshing`]: how it is cut.
//! - [`tables`], [`contact`]: metal and sand as the solver wants them; [`case`]: the mould as a
//!   case.
//! - [`freeze`]: when each place freezes, with its errors; [`pace`]: how long it may take.

pub mod case;
pub mod cells;
pub mod contact;
pub mod fill;
pub mod freeze;
pub mod meshing;
pub mod pace;
pub mod tables;
