//! How long a plan takes once its mesh has been read: sections, figures, choices; and from solids
//! as they are typed, their building included.

use std::f64::consts::{PI, TAU};
use std::path::Path;

use criterion::{Criterion, criterion_group, criterion_main};
use job::file_fault::read;
use job::folder::STARTER_SHOP;
use job::job::Job;
use job::part::Part;
use job::shop::{Shop, ShopFile};
use job::work_out::work_out;
use measure::length::Length;
use pattern::look::look;
use pattern::mesh::Mesh;
use pattern::shape::{Form, Shape, build};
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
    let rim = wheel();
    group.bench_function("hand-wheel of 12 solids, built and planned", |b| {
        b.iter(|| {
            let built = build(&rim).ok().map(Part::Solids);
            built.map(|part| work_out(&job, &shop, &part))
        });
    });
    group.finish();
}

fn shop() -> Option<Shop> {
    read::<ShopFile>("shop.toml", STARTER_SHOP)
        .ok()?
        .meant()
        .ok()
}

fn pump() -> Option<Part> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/meshes");
    let bytes = std::fs::read(folder.join("pump_housing.stl")).ok()?;
    look("pump.stl", &bytes, None).ok().map(Part::Mesh)
}

/// A ring, a hub with its bore, eight spokes and a knob: 12 solids.
fn wheel() -> Vec<Shape> {
    let mm = Length::from_mm;
    let at = |form, z: f64, axis| Shape {
        form,
        at: [0.0, 0.0, z].map(mm),
        axis,
        turn_degrees: 0.0,
        is_taken_away: false,
    };
    let round = |diameter, length| Form::Cylinder {
        diameter: mm(diameter),
        length: mm(length),
    };
    let rim = Form::Ring {
        diameter: mm(260.0),
        thickness: mm(26.0),
    };
    let knob = Form::Ball { diameter: mm(40.0) };
    let up = [0.0, 0.0, 1.0];
    let mut wheel = vec![at(rim, 0.0, up), at(round(60.0, 45.0), -22.5, up)];
    let spokes = (0..8).map(|spoke| (f64::from(spoke) * TAU / 8.0).sin_cos());
    wheel.extend(spokes.map(|(sin, cos)| at(round(16.0, 117.0), 0.0, [cos, sin, 0.0])));
    wheel.push(Shape {
        at: [mm(117.0), mm(0.0), mm(20.0)],
        ..at(knob, 0.0, up)
    });
    wheel.push(Shape {
        is_taken_away: true,
        ..at(round(22.0, 60.0), -30.0, up)
    });
    wheel
}

/// A bumpy ball of 120 mm, flattened.
fn boulder() -> Option<Part> {
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
    look("boulder.stl", &write_stl(&mesh), None)
        .ok()
        .map(Part::Mesh)
}

criterion_group!(benches, plans);
criterion_main!(benches);
