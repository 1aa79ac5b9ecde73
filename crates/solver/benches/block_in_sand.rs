//! How long a block with a feeder in a cube of sand takes to freeze through, by the scheme for use.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use solver::case::Case;
use solver::grid::Grid;
use solver::material::{Freezes, Material, Phase};
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

/// The case of `tests/block_in_sand.rs` and of `examples/conduction/p1-*.toml`.
fn block_in_sand(edge: usize) -> Case {
    let solid = Phase {
        j_m3k: 2.7e6,
        w_mk: 150.0,
    };
    let liquid = Phase {
        j_m3k: 2.7e6,
        w_mk: 90.0,
    };
    let (solidus_c, liquidus_c) = (555.0, 615.0);
    let freezes = Freezes {
        solid,
        liquid,
        latent_j_m3: 9.725e8,
        solidus_c,
        liquidus_c,
    };
    let sand = Material::plain(
        "sand",
        Phase {
            j_m3k: 1.7e6,
            w_mk: 0.6,
        },
    );
    let mut case = Case::filled(Grid::uniform([edge; 3], 0.256 / edge as f64), sand, 25.0);
    case.materials.push(Material::freezing("metal", freezes));
    for cell in 0..case.grid.cells() {
        let at_mm = case.grid.centre(case.grid.place(cell)).map(|m| m * 1e3);
        let within = |low: [f64; 3], high: [f64; 3]| {
            (0..3).all(|axis| at_mm[axis] > low[axis] && at_mm[axis] < high[axis])
        };
        let plate = within([32.0, 64.0, 64.0], [224.0, 192.0, 96.0]);
        let feeder = within([96.0, 96.0, 96.0], [160.0, 160.0, 176.0]);
        if plate || feeder {
            case.cells[cell] = 1;
            case.start_c[cell] = 700.0;
        }
    }
    case
}
