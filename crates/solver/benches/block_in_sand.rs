//! How long a block with a feeder in a cube of sand takes to freeze through, by the scheme for use.

#[path = "../tests/block/mod.rs"]
mod block;

use std::hint::black_box;

use block::block_in_sand;
use criterion::{Criterion, criterion_group, criterion_main};
use solver::run::{End, Wish, solve};

criterion_group!(benches, at_4_mm, at_2_mm);
criterion_main!(benches);

fn at_4_mm(criterion: &mut Criterion) {
    time(criterion, "64 cells an edge", 64, Some(2.0));
}

fn at_2_mm(criterion: &mut Criterion) {
    time(criterion, "128 cells an edge", 128, None);
}

fn time(criterion: &mut Criterion, name: &str, edge: usize, longest_step_s: Option<f64>) {
    let case = block_in_sand(edge);
    let wish = Wish {
        longest_step_s,
        ..Wish::until(End::Solid { latest_s: 4000.0 })
    };
    let mut group = criterion.benchmark_group("block in sand");
    group.sample_size(10);
    group.bench_function(name, |bencher| {
        bencher.iter(|| solve(black_box(&case), &wish, &mut |_| true));
    });
    group.finish();
}
