//! A ball with waves on it, of as many facets as wanted.

use std::f64::consts::{PI, TAU};

use pattern::mesh::Mesh;

/// So many facets round and so many rows from pole to pole, 100 mm across.
pub fn ball(round: usize, rows: usize) -> Mesh {
    let point = |row: usize, column: usize| {
        let (tilt, turn) = (
            PI * row as f64 / rows as f64,
            TAU * column as f64 / round as f64,
        );
        let wave = (7.0 * tilt).sin() * (9.0 * turn).cos() * tilt.sin();
        let radius = 50.0 * (1.0 + 0.05 * wave);
        let flat = radius * tilt.sin();
        [flat * turn.cos(), flat * turn.sin(), radius * tilt.cos()]
    };
    let at = |row: usize, column: usize| match row {
        0 => 0,
        row if row == rows => 1,
        row => (2 + (row - 1) * round + column % round) as u32,
    };
    let mut mesh = Mesh {
        points: vec![point(0, 0), point(rows, 0)],
        triangles: Vec::new(),
    };
    mesh.points
        .extend((1..rows).flat_map(|row| (0..round).map(move |column| point(row, column))));
    for (row, column) in (0..rows).flat_map(|row| (0..round).map(move |column| (row, column))) {
        let (a, d) = (at(row, column), at(row, column + 1));
        let (b, c) = (at(row + 1, column), at(row + 1, column + 1));
        mesh.triangles.extend(
            [[a, b, c], [a, c, d]]
                .into_iter()
                .filter(|t| t[0] != t[2] && t[1] != t[2]),
        );
    }
    mesh
}
