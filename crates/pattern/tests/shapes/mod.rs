//! Meshes built from nothing, and small archives around them, for the tests.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]
#![allow(dead_code, reason = "each test file uses some of them")]

use std::io::Write;

use flate2::write::DeflateEncoder;
use flate2::{Compression, Crc};
use pattern::mesh::Mesh;

/// A box with two facets a side, one corner at `at`.
pub fn block(at: [f64; 3], size: [f64; 3]) -> Mesh {
    let corner =
        |i: usize| [0, 1, 2].map(|axis| at[axis] + size[axis] * f64::from((i >> axis & 1) as u32));
    let sides = [
        [0, 2, 3, 1],
        [4, 5, 7, 6],
        [0, 1, 5, 4],
        [2, 6, 7, 3],
        [0, 4, 6, 2],
        [1, 3, 7, 5],
    ];
    let triangles = sides
        .iter()
        .flat_map(|&[a, b, c, d]| [[a, b, c], [a, c, d]])
        .collect();
    Mesh {
        points: (0..8).map(corner).collect(),
        triangles,
    }
}

/// A cube of `side` with `n` by `n` squares of two facets on each side, points unshared.
pub fn fine_cube(side: f64, n: usize) -> Mesh {
    let mut mesh = Mesh::default();
    let step = side / n as f64;
    for (axis, far) in (0..3).flat_map(|axis| [(axis, false), (axis, true)]) {
        for (i, j) in (0..n).flat_map(|i| (0..n).map(move |j| (i, j))) {
            let point = |di: usize, dj: usize| {
                let mut p = [0.0; 3];
                p[axis] = if far { side } else { 0.0 };
                p[(axis + 1) % 3] = step * (i + di) as f64;
                p[(axis + 2) % 3] = step * (j + dj) as f64;
                p
            };
            let first = mesh.points.len() as u32;
            mesh.points
                .extend([point(0, 0), point(1, 0), point(1, 1), point(0, 1)]);
            let [b, d] = if far { [1, 3] } else { [3, 1] };
            mesh.triangles.push([first, first + b, first + 2]);
            mesh.triangles.push([first, first + 2, first + d]);
        }
    }
    mesh
}

/// A ball, `n` facets round and `n / 2` from pole to pole, with bumps of `bump` of its radius.
pub fn ball(radius: f64, n: usize, bump: f64) -> Mesh {
    let rows = n / 2;
    let mut mesh = Mesh::default();
    mesh.points.push([0.0, 0.0, radius]);
    for i in 1..rows {
        let tilt = std::f64::consts::PI * i as f64 / rows as f64;
        for j in 0..n {
            let turn = std::f64::consts::TAU * j as f64 / n as f64;
            let wave = (5.0 * tilt).sin() * (7.0 * turn).cos() * tilt.sin();
            let r = radius * (1.0 + bump * wave);
            let flat = r * tilt.sin();
            mesh.points
                .push([flat * turn.cos(), flat * turn.sin(), r * tilt.cos()]);
        }
    }
    mesh.points.push([0.0, 0.0, -radius]);
    let last = mesh.points.len() as u32 - 1;
    let at = |i: usize, j: usize| (1 + (i - 1) * n + j % n) as u32;
    for j in 0..n {
        mesh.triangles.push([0, at(1, j), at(1, j + 1)]);
        mesh.triangles
            .push([last, at(rows - 1, j + 1), at(rows - 1, j)]);
        for i in 1..rows - 1 {
            let (a, b, c, d) = (at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1));
            mesh.triangles.extend([[a, b, c], [a, c, d]]);
        }
    }
    mesh
}

/// Two meshes in one.
pub fn both(a: &Mesh, b: &Mesh) -> Mesh {
    let mut all = a.clone();
    let first = a.points.len() as u32;
    all.points.extend(&b.points);
    all.triangles
        .extend(b.triangles.iter().map(|t| t.map(|point| point + first)));
    all
}

/// Every facet turned.
pub fn inside_out(mesh: &Mesh) -> Mesh {
    let triangles = mesh.triangles.iter().map(|&[a, b, c]| [a, c, b]).collect();
    Mesh {
        points: mesh.points.clone(),
        triangles,
    }
}

/// Text STL of a mesh with a chosen line end.
pub fn stl_text(mesh: &Mesh, line_end: &str) -> String {
    let mut lines = vec!["solid part".to_owned()];
    for facet in 0..mesh.triangles.len() {
        lines.push("facet normal 0 0 0".to_owned());
        lines.push("outer loop".to_owned());
        for [x, y, z] in mesh.corners(facet) {
            lines.push(format!("vertex {x:e} {y:e} {z:e}"));
        }
        lines.push("endloop".to_owned());
        lines.push("endfacet".to_owned());
    }
    lines.push("endsolid part".to_owned());
    lines.join(line_end) + line_end
}

/// A zip archive of packed parts; sizes are as claimed, not as they are.
pub fn zip(parts: &[(&str, Vec<u8>, Option<u32>)]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut directory = Vec::new();
    for (name, data, claimed) in parts {
        let mut packer = DeflateEncoder::new(Vec::new(), Compression::fast());
        packer.write_all(data).unwrap();
        let packed = packer.finish().unwrap();
        let mut crc = Crc::new();
        crc.update(data);
        let offset = bytes.len() as u32;
        let mut shared = Vec::new();
        shared.extend([20, 0, 0, 0, 8, 0, 0, 0, 0, 0]);
        shared.extend(crc.sum().to_le_bytes());
        shared.extend((packed.len() as u32).to_le_bytes());
        shared.extend(claimed.unwrap_or(data.len() as u32).to_le_bytes());
        shared.extend((name.len() as u16).to_le_bytes());
        shared.extend([0, 0]);
        bytes.extend(b"PK\x03\x04");
        bytes.extend(&shared);
        bytes.extend(name.as_bytes());
        bytes.extend(&packed);
        directory.extend(b"PK\x01\x02\x14\x00");
        directory.extend(&shared);
        directory.extend([0; 10]);
        directory.extend(offset.to_le_bytes());
        directory.extend(name.as_bytes());
    }
    let start = bytes.len() as u32;
    bytes.extend(&directory);
    bytes.extend(b"PK\x05\x06\0\0\0\0");
    bytes.extend((parts.len() as u16).to_le_bytes());
    bytes.extend((parts.len() as u16).to_le_bytes());
    bytes.extend((directory.len() as u32).to_le_bytes());
    bytes.extend(start.to_le_bytes());
    bytes.extend([0, 0]);
    bytes
}

/// A 3MF archive around resources and build items.
pub fn threemf(unit: &str, resources: &str, items: &str) -> Vec<u8> {
    let model = format!(
        "<?xml version=\"1.0\"?><model unit=\"{unit}\"><resources>{resources}</resources>\
         <build>{items}</build></model>"
    );
    zip(&[("3D/3dmodel.model", model.into_bytes(), None)])
}

/// The 3MF text of an object given by facets.
pub fn object(id: u32, mesh: &Mesh) -> String {
    let vertex = |[x, y, z]: &[f64; 3]| format!("<vertex x=\"{x}\" y=\"{y}\" z=\"{z}\"/>");
    let triangle = |[a, b, c]: &[u32; 3]| format!("<triangle v1=\"{a}\" v2=\"{b}\" v3=\"{c}\"/>");
    let points: String = mesh.points.iter().map(vertex).collect();
    let facets: String = mesh.triangles.iter().map(triangle).collect();
    format!(
        "<object id=\"{id}\" type=\"model\"><mesh><vertices>{points}</vertices>\
         <triangles>{facets}</triangles></mesh></object>"
    )
}
