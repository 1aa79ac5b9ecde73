//! How long a part takes from bytes to a measured solid.

use std::f64::consts::{PI, TAU};
use std::hint::black_box;
use std::path::Path;

use criterion::{Criterion, criterion_group, criterion_main};
use pattern::look::look;
use pattern::mesh::Mesh;
use pattern::stl::write_stl;

criterion_group!(benches, bumpy_ball, pump_housing);
criterion_main!(benches);

fn bumpy_ball(criterion: &mut Criterion) {
    let bytes = write_stl(&ball(500, 200));
    let mut group = criterion.benchmark_group("look");
    group.sample_size(10);
    group.bench_function("bumpy ball of 199,000 facets", |bencher| {
        bencher.iter(|| look("ball.stl", black_box(&bytes), None));
    });
    group.finish();
}

fn pump_housing(criterion: &mut Criterion) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/meshes/pump_housing.stl");
    let bytes = std::fs::read(path).unwrap_or_default();
    criterion.bench_function("look/pump housing of 14,220 facets", |bencher| {
        bencher.iter(|| look("pump_housing.stl", black_box(&bytes), None));
    });
}

fn ball(round: usize, rows: usize) -> Mesh {
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
