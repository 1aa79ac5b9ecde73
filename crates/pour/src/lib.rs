//! What the metal does, from the first drop to the open mould: how it fills and how it freezes.
//!
//! - [`cells`]: the mould as a box of cells, one stuff a cell; [`meshing`]: how it is cut.
//! - [`chill`]: cold metal in its face.
//! - [`fill`]: the filling at a glance.
//! - [`tables`], [`contact`]: metal and sand as the solver wants them; [`case`]: the mould as a
//!   case; [`start`]: how hot it is when the mould is full.
//! - [`solved`]: one mould followed until it is solid, or one of two like sides of it
//!   ([`halves`]); [`freeze`]: on two grids, with its errors; [`frozen`]: when each piece is;
//!   [`pace`]: how long it may take; [`no_freeze`]: why nothing was followed.
//! - [`feeding`], [`pipe`], [`criteria`]: what is cut off, what runs empty, what stays spongy.
//! - [`levers`]: what is worth turning; [`held`]: what is cold while the last place is just solid.
//! - [`opening`]: when it is cold enough; [`hot_sand`]: how much sand got how hot.
//! - [`section`], [`vti`]: the drawing and the fields; [`vti_read`]: a field read back;
//!   [`contour`]: lines of equal value.

pub mod case;
pub mod cells;
pub mod chill;
pub mod contact;
pub mod contour;
pub mod criteria;
pub mod feeding;
pub mod fill;
pub mod freeze;
pub mod frozen;
pub mod halves;
pub mod held;
pub mod hot_sand;
pub mod levers;
pub mod meshing;
pub mod no_freeze;
pub mod opening;
pub mod pace;
pub mod pipe;
pub mod section;
pub mod solved;
pub mod start;
pub mod tables;
pub mod vti;
pub mod vti_read;
