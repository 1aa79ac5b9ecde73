//! A skin with figures on it as a binary polygon file, for any program that colours a surface by
//! what is written at its points.

use crate::mesh::Mesh;

/// Figures on a skin: a name, and one for each facet.
#[derive(Clone, Debug, PartialEq)]
pub struct Figures {
    /// The name under which they stand in the file, its unit at the end: `metal_mm`.
    pub name: &'static str,
    /// One for each facet; none where there is nothing to say, which is written as not a number.
    pub of_facet: Vec<Option<f64>>,
}

/// The file: every facet with three points of its own, so that what is written at them is the
/// figure of that facet and runs into no other. Coordinates in mm; the same mesh gives the same
/// bytes.
pub fn write_ply(mesh: &Mesh, figures: &[Figures]) -> Vec<u8> {
    let facets = mesh.triangles.len();
    let mut bytes = head(facets, figures).into_bytes();
    for facet in 0..facets {
        for corner in mesh.corners(facet) {
            let of_facet = figures
                .iter()
                .map(|figures| figures.of_facet[facet].unwrap_or(f64::NAN));
            let all = corner.into_iter().chain(of_facet);
            all.for_each(|value| bytes.extend((value as f32).to_le_bytes()));
        }
    }
    for facet in 0..facets as u32 {
        bytes.push(3);
        let corners = [0, 1, 2].map(|corner| (3 * facet + corner).to_le_bytes());
        bytes.extend(corners.as_flattened());
    }
    bytes
}

fn head(facets: usize, figures: &[Figures]) -> String {
    let names = ["x", "y", "z"].into_iter();
    let properties: String = names
        .chain(figures.iter().map(|figures| figures.name))
        .map(|name| format!("property float {name}\n"))
        .collect();
    format!(
        "ply\nformat binary_little_endian 1.0\ncomment lengths in mm\nelement vertex {}\n\
         {properties}element face {facets}\nproperty list uchar uint vertex_indices\nend_header\n",
        3 * facets,
    )
}
