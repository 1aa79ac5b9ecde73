//! A sand as it was tested: its card, its water, its mixes, and its readings from day to day.

pub mod card;
pub mod clock;
pub mod drying;
pub mod facing;
pub mod gauge;
pub mod heap_reading;
pub mod mulling;
pub mod pucks;
pub mod readings;
pub mod recipe;
pub mod sand_file;
pub mod sizes;
pub mod watch;
pub mod water;
