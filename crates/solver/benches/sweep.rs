//! How near a sweep over cells of one material comes to the memory's own speed: bytes a second of
//! the sweep, at eight a cell (a temperature read, one written), beside those of a list as long
//! that is scaled in place by as many threads. The fastest of some steps counts, for either: on a
//! shared machine the rest of them tell of other work.

use std::hint::black_box;
use std::time::{Duration, Instant};

use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use rayon::iter::{IndexedParallelIterator, ParallelIterator};
use rayon::slice::ParallelSliceMut;
use solver::case::Case;
use solver::grid::Grid;
use solver::material::{Material, Phase};
use solver::run::{End, Wish, solve};

criterion_group!(benches, sweep);
criterion_main!(benches);

/// Cells along an edge: what the caches of a server hold, and what none holds.
const EDGES: [usize; 2] = [128, 256];

/// Read and written.
const BYTES_A_CELL: u64 = 8;

fn sweep(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("sweep");
    group.sample_size(10);
    for edge in EDGES {
        let cells = edge.pow(3);
        group.throughput(Throughput::Bytes(BYTES_A_CELL * cells as u64));
        group.bench_function(format!("a list scaled in place, {edge}"), |bencher| {
            let mut list = vec![1.0_f32; cells];
            let piece = cells.div_ceil(rayon::current_num_threads());
            bencher.iter_custom(|wanted| {
                let mut fastest = Duration::MAX;
                for _ in 0..wanted.max(FEWEST) {
                    let begun = Instant::now();
                    list.par_chunks_mut(piece)
                        .with_max_len(1)
                        .for_each(|piece| piece.iter_mut().for_each(|number| *number *= 1.000_001));
                    black_box(list[0]);
                    fastest = fastest.min(begun.elapsed());
                }
                fastest.mul_f64(wanted as f64)
            });
        });
        let case = uneven(edge);
        group.bench_function(format!("a step of the cells, {edge}"), |bencher| {
            bencher.iter_custom(|steps| time_steps(&case, steps));
        });
    }
    group.finish();
}

/// A box in which heat passes everywhere, so that no row sleeps.
fn uneven(edge: usize) -> Case {
    let sand = Phase {
        j_m3k: 1.7e6,
        w_mk: 0.6,
    };
    let mut case = Case::filled(
        Grid::uniform([edge; 3], 0.002),
        Material::plain("sand", sand),
        20.0,
    );
    for (cell, celsius) in case.start_c.iter_mut().enumerate() {
        *celsius += (cell % 7) as f32;
    }
    case
}

/// Fewest steps that are timed at a time: a single one says little on a shared machine.
const FEWEST: u64 = 20;

/// Wall time of so many steps like the fastest one; the first is not among them.
fn time_steps(case: &Case, wanted: u64) -> Duration {
    let steps = wanted.max(FEWEST);
    let wish = Wish::until(End::At { s: 1e5 });
    let (mut begun, mut fastest) = (Instant::now(), Duration::MAX);
    let _ = solve(case, &wish, &mut |progress| {
        let done = progress.steps as u64;
        if done > 1 {
            fastest = fastest.min(begun.elapsed());
        }
        begun = Instant::now();
        done <= steps
    });
    fastest.mul_f64(wanted as f64)
}
