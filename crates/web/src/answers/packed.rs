//! Raw numbers behind a head, little-endian, straight into the memory of a graphics card.

use pattern::mesh::Mesh;
use serde::Serialize;

/// Four bytes with the length of the head, and the head as JSON, filled with blanks to a whole four
/// bytes.
pub fn head(head: &impl Serialize) -> Vec<u8> {
    let mut head = serde_json::to_vec(head).unwrap_or_default();
    head.resize(head.len().next_multiple_of(4), b' ');
    let mut bytes = (head.len() as u32).to_le_bytes().to_vec();
    bytes.extend(head);
    bytes
}

/// Points as 32-bit floats, mm, then facets as 32-bit numbers of points.
pub fn skin(bytes: &mut Vec<u8>, mesh: &Mesh) {
    for point in &mesh.points {
        bytes.extend(point.iter().flat_map(|mm| (*mm as f32).to_le_bytes()));
    }
    for facet in &mesh.triangles {
        bytes.extend(facet.iter().flat_map(|corner| corner.to_le_bytes()));
    }
}

/// 32-bit floats.
pub fn floats(bytes: &mut Vec<u8>, floats: &[f32]) {
    bytes.extend(floats.iter().flat_map(|value| value.to_le_bytes()));
}
