//! The pattern that is made, held to volumes known from geometry.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod bed;
mod board;
mod filament;
mod growing;
mod halves;
mod line;
mod loose;
mod plate;
mod prints;
mod solids;
mod stock;
mod taper;
