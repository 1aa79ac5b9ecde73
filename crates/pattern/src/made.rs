//! The pattern that is made: from the mesh of a part to solids that can be printed or milled, and
//! rammed up.
//!
//! The steps in their order: [`stock`] leaves metal on faces that are machined, [`grow`] makes
//! everything larger by the contraction, [`taper`] gives the walls their draught, [`core_prints`]
//! fills the hollows of cores and puts on what will hold them, or [`prints`] what is given by hand.
//! Then [`halves`] parts it along the [`joint`] or [`mod@line`] engraves the joint on it, [`loose`]
//! cuts off what stays in the sand, [`lifting`] drills the hole by which it is drawn, and [`bed`]
//! cuts what is larger than the printer; [`board`] makes the oddside it lies in and [`plate`]
//! mounts several on a board; [`filament`] tells what a print weighs and how it stands the rammer.
//! All lengths are millimetres, z is the way the cope is lifted.

pub mod bed;
pub mod board;
mod bore;
pub mod core_prints;
pub mod filament;
pub mod grow;
pub mod halves;
pub mod joint;
pub mod ledge;
pub mod lifting;
pub mod line;
pub mod loose;
mod loose_pins;
mod pins;
mod plain;
pub mod plate;
pub mod prints;
mod raise;
pub mod stock;
pub mod taper;

use crate::mesh::Mesh;
use crate::solid::measure;

/// What a closed mesh wound outward holds, mm³.
pub fn volume_mm3(mesh: &Mesh) -> f64 {
    measure(mesh, &vec![0; mesh.triangles.len()], 1).volume_mm3
}
