//! A block with a feeder in a cube of sand: plate 192 x 128 x 32 mm, feeder 64 x 64 x 80 mm on it,
//! cube of 256 mm, insulated. Round figures of an aluminium alloy and of silica sand, made up.
//! `examples/conduction/p1-*.toml` hold the same case.

pub mod materials;

use materials::metal;
use solver::case::Case;
use solver::grid::Grid;
use solver::material::{Material, Phase};

/// The case with cells along an edge of the cube.
pub fn block_in_sand(edge: usize) -> Case {
    let sand = Material::plain(
        "sand",
        Phase {
            j_m3k: 1.7e6,
            w_mk: 0.6,
        },
    );
    let mut case = Case::filled(Grid::uniform([edge; 3], 0.256 / edge as f64), sand, 25.0);
    case.materials.push(metal());
    for cell in 0..case.grid.cells() {
        let [x, y, z] = case.grid.centre(case.grid.place(cell)).map(|m| m * 1e3);
        let within = |at: f64, low: f64, high: f64| at > low && at < high;
        let plate = within(x, 32.0, 224.0) && within(y, 64.0, 192.0) && within(z, 64.0, 96.0);
        let feeder = within(x, 96.0, 160.0) && within(y, 96.0, 160.0) && within(z, 96.0, 176.0);
        if plate || feeder {
            case.cells[cell] = 1;
            case.start_c[cell] = 700.0;
        }
    }
    case
}
