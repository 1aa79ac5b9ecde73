//! The pattern that is made: from the mesh of a part to solids that can be printed or milled, and
//! rammed up.
//!
//! The steps in their order: [`stock`] leaves metal on faces that are machined, [`grow`] makes
//! everything larger by the contraction, [`taper`] gives the walls their draught. All lengths are
//! millimetres, z is the way the cope is lifted; the joint is a level along z.

mod bore;
pub mod grow;
mod raise;
pub mod stock;
pub mod taper;

use crate::mesh::Mesh;
use crate::solid::measure;

/// What a closed mesh wound outward holds, mm³.
pub fn volume_mm3(mesh: &Mesh) -> f64 {
    measure(mesh, &vec![0; mesh.triangles.len()], 1).volume_mm3
}
