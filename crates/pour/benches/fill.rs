//! How long a glance at the filling of half a million cells takes.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use pour::fill::glance;

use crate::housing::{gating, housing, metal, sand};

mod housing;

criterion_group!(benches, half_a_million);
criterion_main!(benches);

fn half_a_million(criterion: &mut Criterion) {
    let cells = housing();
    let (gating, metal, sand) = (gating(), metal(), sand());
    let hollow = cells.metal.iter().filter(|share| **share > 0.0).count();
    let mut group = criterion.benchmark_group("fill");
    group.sample_size(10);
    group.bench_function(
        format!("glance at a housing of {hollow} cells"),
        |bencher| {
            bencher.iter(|| glance(black_box(&cells), black_box(&gating), &metal, &sand));
        },
    );
    group.finish();
}
