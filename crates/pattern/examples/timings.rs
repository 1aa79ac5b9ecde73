//! Times reading, measuring, rays and filling on one mesh file, for `benches/compare.py`.
//!
//! ```sh
//! timings MESH RAYS CELL
//! ```
//!
//! `RAYS` holds six little-endian numbers of double precision a ray, where it starts and where it
//! goes; `CELL` is the side of a cell. Prints a line for each: what, seconds, and the answer.

#![allow(clippy::print_stdout, reason = "the times are what it is run for")]

use std::error::Error;
use std::time::Instant;

use pattern::cells::Cells;
use pattern::look::look;
use pattern::mesh::Mesh;
use pattern::rays::first_met_each;
use pattern::read::read;
use pattern::solid::measure;
use pattern::tree::Tree;
use pattern::unit::Unit;
use pattern::weld::equal_points;

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [path, rays, cell] = arguments.as_slice() else {
        return Err("give a mesh file, a file of rays and the side of a cell".into());
    };
    let mesh = timed("read", || {
        let bytes = std::fs::read(path)?;
        let mesh = equal_points(&read(path, &bytes)?);
        Ok((mesh.triangles.len() as f64, mesh))
    })?;
    timed("measure", || {
        let solid = measure(&mesh, &vec![0; mesh.triangles.len()], 1);
        Ok((solid.volume_mm3, ()))
    })?;
    let tree = timed("tree", || {
        let tree = Tree::over(&mesh);
        tree.wide();
        Ok((tree.order.len() as f64, tree))
    })?;
    let rays = rays_of(&std::fs::read(rays)?);
    timed("rays", || Ok((hits(&mesh, &tree, &rays) as f64, ())))?;
    let one = rayon::ThreadPoolBuilder::new().num_threads(1).build()?;
    let alone = || Ok((one.install(|| hits(&mesh, &tree, &rays)) as f64, ()));
    timed("rays on one core", alone)?;
    let cell: f64 = cell.parse()?;
    timed("fill", || {
        let cells = Cells::fill(&mesh, cell);
        let [x, y, z] = cells.count;
        let full = (0..x * y * z).filter(|&index| cells.is_solid(index));
        Ok((full.count() as f64, ()))
    })?;
    timed("look", || {
        let looked = look(path, &std::fs::read(path)?, Some(Unit::Millimetre))?;
        Ok((looked.solid.volume_mm3, ()))
    })?;
    Ok(())
}

type Ray = ([f64; 3], [f64; 3]);

fn timed<T>(
    what: &str,
    work: impl FnOnce() -> Result<(f64, T), Box<dyn Error>>,
) -> Result<T, Box<dyn Error>> {
    let start = Instant::now();
    let (answer, result) = work()?;
    println!("{what}\t{}\t{answer}", start.elapsed().as_secs_f64());
    Ok(result)
}

fn hits(mesh: &Mesh, tree: &Tree, rays: &[Ray]) -> usize {
    first_met_each(mesh, tree, rays).iter().flatten().count()
}

fn rays_of(bytes: &[u8]) -> Vec<Ray> {
    let number = |at: &[u8]| f64::from_le_bytes(at.try_into().unwrap_or_default());
    let numbers: Vec<f64> = bytes.chunks_exact(8).map(number).collect();
    let ray = |six: &[f64]| ([six[0], six[1], six[2]], [six[3], six[4], six[5]]);
    numbers.chunks_exact(6).map(ray).collect()
}
