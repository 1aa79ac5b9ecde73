//! How long a part takes from bytes to a measured solid.

use std::hint::black_box;
use std::path::Path;

use criterion::{Criterion, criterion_group, criterion_main};
use pattern::look::look;
use pattern::stl::write_stl;

use crate::bumpy::ball;

mod bumpy;

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
