//! Fingerprints: one number for much, by which it is known again.

use pattern::mesh::Mesh;

use crate::job::Job;
use crate::part::Part;
use crate::shop::Shop;

/// FNV-1a, 64 bits: any change in the bytes changes it, but for chance.
pub fn mixed(bytes: impl IntoIterator<Item = u8>) -> u64 {
    bytes
        .into_iter()
        .fold(0xcbf2_9ce4_8422_2325, |mixed, byte| {
            (mixed ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
        })
}

/// The fingerprint of a job in its shop with its part, and of this version of the program: all that
/// a mould and its freezing follow from. What the job is called and when it is poured do not count.
pub fn fingerprint(job: &Job, shop: &Shop, part: &Part) -> String {
    let skin = part.looked().map_or(0, |looked| of_mesh(&looked.mesh));
    fingerprint_of(job, shop, skin)
}

/// As [`fingerprint`], where the fingerprint of the part's skin is known already; nought for a part
/// without one.
pub fn fingerprint_of(job: &Job, shop: &Shop, skin: u64) -> String {
    let unnamed = Job {
        name: String::new(),
        date: None,
        ..job.clone()
    };
    let typed = format!("{} {unnamed:?} {shop:?}", env!("CARGO_PKG_VERSION"));
    let bytes = typed.bytes().chain(skin.to_le_bytes());
    format!("{:016x}", mixed(bytes))
}

/// The fingerprint of a mesh.
pub fn of_mesh(mesh: &Mesh) -> u64 {
    let points = mesh.points.iter().flatten();
    let corners = mesh.triangles.iter().flatten();
    let points = points.flat_map(|mm| mm.to_le_bytes());
    mixed(points.chain(corners.flat_map(|corner| corner.to_le_bytes())))
}
