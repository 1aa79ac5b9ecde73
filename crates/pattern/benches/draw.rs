//! How long the search for a way of drawing takes, and a look at the undercuts of one way.

use std::hint::black_box;
use std::path::Path;

use criterion::{Criterion, criterion_group, criterion_main};
use pattern::draw::DrawSettings;
use pattern::draw::search::ways;
use pattern::draw::undercut::undercuts;
use pattern::look::look;
use pattern::mesh::Mesh;

use crate::bumpy::ball;

mod bumpy;

criterion_group!(benches, bumpy_ball, pump_housing);
criterion_main!(benches);

fn bumpy_ball(criterion: &mut Criterion) {
    time(criterion, "bumpy ball of 199,000 facets", &ball(500, 200));
}

fn pump_housing(criterion: &mut Criterion) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/meshes/pump_housing.stl");
    let bytes = std::fs::read(path).unwrap_or_default();
    if let Ok(looked) = look("pump_housing.stl", &bytes, None) {
        time(criterion, "pump housing of 14,220 facets", &looked.mesh);
    }
}

fn time(criterion: &mut Criterion, name: &str, mesh: &Mesh) {
    let settings = DrawSettings::suiting(mesh);
    let mut group = criterion.benchmark_group(name);
    group.sample_size(10);
    group.bench_function("ways", |bencher| {
        bencher.iter(|| ways(black_box(mesh), None, &settings, 3));
    });
    group.bench_function("undercuts", |bencher| {
        bencher.iter(|| undercuts(black_box(mesh), [1.0, 0.2, 0.1], &settings));
    });
    group.finish();
}
