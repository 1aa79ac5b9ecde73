//! How patterns draw: undercuts, ways, joints and draught, against analytic solids and an
//! independent count of rays.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod balls;
mod draught;
mod joint;
mod maps;
mod parts;
mod rays;
mod search;
mod symmetry;
mod undercut;
mod walls;
