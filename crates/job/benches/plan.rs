//! How long a plan takes once its mesh has been read: sections, figures, choices.

use std::f64::consts::{PI, TAU};
use std::path::Path;

use criterion::{Criterion, criterion_group, criterion_main};
use job::file_fault::read;
use job::folder::STARTER_SHOP;
use job::job::Job;
use job::shop::{Shop, ShopFile};
use job::work_out::work_out;
use pattern::look::{Looked, look};
use pattern::mesh::Mesh;
use pattern::stl::write_stl;

fn plans(bench: &mut Criterion) {
    let (Some(shop), Some(pump), Some(boulder)) = (shop(), pump(), boulder()) else {
        return;
    };
    let Ok(job) = Job::quick("bench", "aluminium") else {
        return;
    };
    let mut group = bench.benchmark_group("work_out");
    group.sample_size(20);
    group.bench_function("pump_housing, 14,220 facets", |b| {
        b.iter(|| work_out(&job, &shop, &pump));
    });
    group.bench_function("boulder, 199,080 facets", |b| {
        b.iter(|| work_out(&job, &shop, &boulder));
    });
    group.finish();
}

fn shop() -> Option<Shop> {
    read::<ShopFile>("shop.toml", STARTER_SHOP)
        .ok()?
        .meant()
        .ok()
}

fn pump() -> Option<Looked> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/meshes");
    look(
        "pump.stl",
        &std::fs::read(folder.join("pump_housing.stl")).ok()?,
        None,
    )
    .ok()
}

/// A bumpy ball of 120 mm, flattened.
fn boulder() -> Option<Looked> {
    const RINGS: u32 = 316;
    let point = |ring: u32, spoke: u32| {
        let a = PI * f64::from(ring) / f64::from(RINGS);
        let b = TAU * f64::from(spoke % RINGS) / f64::from(RINGS);
        let r = 60.0 * (1.0 + 0.03 * (9.0 * a).sin() * (7.0 * b).sin());
        [
            r * a.sin() * b.cos(),
            r * a.sin() * b.sin(),
            0.6 * r * a.cos(),
        ]
    };
    let points = (0..=RINGS).flat_map(|ring| (0..RINGS).map(move |spoke| point(ring, spoke)));
    let at = |ring: u32, spoke: u32| ring * RINGS + spoke % RINGS;
    let quads = (0..RINGS).flat_map(|ring| (0..RINGS).map(move |spoke| (ring, spoke)));
    let facets = quads.flat_map(|(i, j)| {
        let [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
        [
            (i > 0).then_some([a, b, d]),
            (i < RINGS - 1).then_some([d, b, c]),
        ]
    });
    let mesh = Mesh {
        points: points.collect(),
        triangles: facets.flatten().collect(),
    };
    look("boulder.stl", &write_stl(&mesh), None).ok()
}

criterion_group!(benches, plans);
criterion_main!(benches);
