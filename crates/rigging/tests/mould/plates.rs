//! Moulds of plain plates, for tests.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::length::{Area, Length};
use measure::matter::{Density, Mass};
use mould::flask::{Clearance, Flask, Load, clearance, flask_to_make};
use mould::gating::running_system::basin_over;
use pattern::mesh::Mesh;
use pattern::shape::{Form, Shape};
use rigging::given::{Casting, Densities, FeederSize, Given, Half, Heavy, Parting, Sizes, Vents};

pub fn mm(length: f64) -> Length {
    Length::from_mm(length)
}

/// Sand around castings of half a kilogram.
pub fn sand() -> Clearance {
    clearance(Mass::from_kg(0.5))
}

/// A block with its corner at the origin, its foot at a height.
pub fn block(size: [f64; 3], foot: f64) -> Mesh {
    Shape {
        form: Form::Block { size: size.map(mm) },
        at: [mm(size[0] / 2.0), mm(size[1] / 2.0), mm(foot)],
        axis: [0.0, 0.0, 1.0],
        turn_degrees: 0.0,
        is_taken_away: false,
    }
    .skin(1)
    .unwrap()
}

/// So many plates of 120 x 80 x 20 mm, half of each below the joint, in a flask made for them,
/// grown by some sand for the runner, with a feeder for their middles.
pub fn plates(count: usize, room: [f64; 2]) -> Given {
    let size = [120.0, 80.0, 20.0];
    let load = Load {
        count,
        plan: [mm(size[0]), mm(size[1])],
        above_joint: mm(10.0),
        below_joint: mm(10.0),
        sprue: mm(25.0),
    };
    let (flask, layout) = flask_to_make(&load, &sand());
    let flask = Flask {
        length: flask.length + mm(room[0]),
        width: flask.width + mm(room[1]),
        cope: mm(75.0),
        ..flask
    };
    let pour_height = flask.cope + mm(25.0);
    Given {
        layout,
        count,
        sand: sand(),
        casting: Casting {
            mesh: block(size, -10.0),
            sections: vec![Heavy {
                place_mm: [60.0, 40.0, 0.0],
                modulus: mm(8.0),
                inscribed: mm(20.0),
            }],
            cores: Vec::new(),
        },
        sizes: Sizes {
            pour_height,
            sprue_top: mm(14.0),
            sprue_foot: mm(10.0),
            basin: basin_over(mm(14.0), pour_height),
            runners: Area::from_mm2(160.0),
            gates: Area::from_mm2(160.0),
            past_last_gate: mm(25.0),
            runner_half: Half::Drag,
            feeder: Some(FeederSize {
                diameter: mm(40.0),
                height: mm(40.0),
                neck: mm(14.0),
            }),
            vents: Some(Vents {
                spacing: mm(30.0),
                wire: mm(2.0),
                short: mm(12.0),
            }),
        },
        parting: Parting::Flat,
        densities: Densities {
            metal: Density::from_kg_per_m3(2400.0),
            sand: Density::from_kg_per_m3(1600.0),
            core: Density::from_kg_per_m3(1500.0),
        },
        flask,
    }
}

/// Where a line straight up from (x, y) passes through a skin, from below, by hand.
pub fn heights(mesh: &Mesh, x: f64, y: f64) -> Vec<f64> {
    let mut found = Vec::new();
    for triangle in &mesh.triangles {
        let [a, b, c] = triangle.map(|point| mesh.points[point as usize]);
        let twice = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
        let u = ((b[0] - x) * (c[1] - y) - (c[0] - x) * (b[1] - y)) / twice;
        let v = ((c[0] - x) * (a[1] - y) - (a[0] - x) * (c[1] - y)) / twice;
        if u > 0.0 && v > 0.0 && u + v < 1.0 {
            found.push(u * a[2] + v * b[2] + (1.0 - u - v) * c[2]);
        }
    }
    found.sort_by(f64::total_cmp);
    found
}
