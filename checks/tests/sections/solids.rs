//! Plain solids as closed meshes, outward wound.

use std::f64::consts::{PI, TAU};

use pattern::mesh::Mesh;

/// Facets round a solid of revolution: the polygon holds a thousandth less than the circle.
const ROUND: usize = 96;

/// A block of these sides.
pub fn block([a, b, c]: [f64; 3]) -> Mesh {
    let corner = |i: usize| {
        [
            (i & 1) as f64 * a,
            (i >> 1 & 1) as f64 * b,
            (i >> 2) as f64 * c,
        ]
    };
    let sides = [
        [0, 2, 3, 1],
        [4, 5, 7, 6],
        [0, 1, 5, 4],
        [2, 6, 7, 3],
        [0, 4, 6, 2],
        [1, 3, 7, 5],
    ];
    Mesh {
        points: (0..8).map(corner).collect(),
        triangles: sides
            .iter()
            .flat_map(|&[a, b, c, d]| [[a, b, c], [a, c, d]])
            .collect(),
    }
}

/// An upright cylinder.
pub fn cylinder(diameter: f64, height: f64) -> Mesh {
    let radius = diameter / 2.0;
    revolved(&[[0.0, 0.0], [radius, 0.0], [radius, height], [0.0, height]])
}

/// A round plate with a round boss in the middle of its upper face.
pub fn plate_with_boss(plate: f64, thickness: f64, boss: f64, height: f64) -> Mesh {
    let (rim, side, top) = (plate / 2.0, boss / 2.0, thickness + height);
    revolved(&[
        [0.0, 0.0],
        [rim, 0.0],
        [rim, thickness],
        [side, thickness],
        [side, top],
        [0.0, top],
    ])
}

/// A ball.
pub fn ball(diameter: f64) -> Mesh {
    let radius = diameter / 2.0;
    let rings = ROUND / 2;
    let profile: Vec<[f64; 2]> = (0..=rings)
        .map(|ring| match ring {
            0 => [0.0, -radius],
            last if last == rings => [0.0, radius],
            _ => {
                let angle = PI * ring as f64 / rings as f64;
                [radius * angle.sin(), -radius * angle.cos()]
            }
        })
        .collect();
    revolved(&profile)
}

/// A hollow ball: the skin of the hollow stands in that of the ball, wound the other way.
pub fn shell(diameter: f64, wall: f64) -> Mesh {
    let (mut skin, hollow) = (ball(diameter), ball(diameter - 2.0 * wall));
    let first = skin.points.len() as u32;
    skin.points.extend(hollow.points);
    let inward = hollow.triangles.iter();
    skin.triangles
        .extend(inward.map(|[a, b, c]| [first + a, first + c, first + b]));
    skin
}

/// The solid turned by 37° about the direction (1, 2, 3): no face stays along the cells.
pub fn turned(solid: &Mesh) -> Mesh {
    let axis = [1.0, 2.0, 3.0].map(|part: f64| part / 14f64.sqrt());
    let (sin, cos) = 37f64.to_radians().sin_cos();
    let turn = |p: [f64; 3]| {
        let along: f64 = (0..3).map(|i| axis[i] * p[i]).sum();
        [0, 1, 2].map(|i| {
            let (j, k) = ((i + 1) % 3, (i + 2) % 3);
            let across = axis[j] * p[k] - axis[k] * p[j];
            p[i] * cos + across * sin + axis[i] * along * (1.0 - cos)
        })
    };
    Mesh {
        points: solid.points.iter().copied().map(turn).collect(),
        triangles: solid.triangles.clone(),
    }
}

/// Turns a profile of (radius, height), from the axis below to the axis above, round the axis.
fn revolved(profile: &[[f64; 2]]) -> Mesh {
    let [bottom, ring @ .., top] = profile else {
        return Mesh::default();
    };
    let mut points = vec![[0.0, 0.0, bottom[1]], [0.0, 0.0, top[1]]];
    for &[radius, height] in ring {
        for step in 0..ROUND {
            let angle = TAU * step as f64 / ROUND as f64;
            points.push([radius * angle.cos(), radius * angle.sin(), height]);
        }
    }
    let at = |row: usize, step: usize| (2 + row * ROUND + step % ROUND) as u32;
    let last = ring.len() - 1;
    let mut triangles = Vec::new();
    for step in 0..ROUND {
        triangles.push([0, at(0, step + 1), at(0, step)]);
        triangles.push([1, at(last, step), at(last, step + 1)]);
        for row in 0..last {
            let (a, b) = (at(row, step), at(row, step + 1));
            let (c, d) = (at(row + 1, step + 1), at(row + 1, step));
            triangles.push([a, b, c]);
            triangles.push([a, c, d]);
        }
    }
    Mesh { points, triangles }
}
