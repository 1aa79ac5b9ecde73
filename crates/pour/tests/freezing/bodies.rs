//! Moulds put together by hand from plain bodies, without any rigging.

use measure::length::{Length, Volume};
use measure::matter::Mass;
use pattern::boolean::Body;
use pattern::mesh::Mesh;
use pattern::shape::{Form, Shape};
use rigging::mould::Mould;
use rigging::piece::{Piece, Solid};

/// A body in a flask that reaches from nought to these sides, the joint at half height.
pub fn mould(body: Form, middle_mm: [f64; 3], flask_mm: [f64; 3]) -> Mould {
    let skin = skin(body, middle_mm);
    let [x, y, z] = flask_mm;
    let half = |from: f64, to: f64| {
        let size = [x, y, to - from].map(Length::from_mm);
        skin_of_block(size, [x / 2.0, y / 2.0, (from + to) / 2.0])
    };
    let volume_mm3 = volume_mm3(&skin);
    Mould {
        castings: vec![solid(Piece::Casting(1), &skin, volume_mm3)],
        rigging: Vec::new(),
        vents: None,
        cores: Vec::new(),
        cavity: solid(Piece::Cavity, &skin, volume_mm3),
        cope: solid(Piece::Cope, &half(z / 2.0, z), 0.0),
        drag: solid(Piece::Drag, &half(0.0, z / 2.0), 0.0),
        above_cope: Volume::ZERO,
        off_by: 0.0,
        joint: None,
        facts: Vec::new(),
    }
}

/// Blocks by low and high corner, each a piece, joined into one body of metal; castings first.
pub fn joined(blocks: &[(Piece, [[f64; 3]; 2])], flask_mm: [f64; 3]) -> Mould {
    let skin_of = |[low, high]: [[f64; 3]; 2]| {
        let size = [0, 1, 2].map(|axis| high[axis] - low[axis]);
        let middle = [0, 1, 2].map(|axis| (high[axis] + low[axis]) / 2.0);
        skin(block(size), middle)
    };
    let skins: Vec<(Piece, Mesh)> = blocks
        .iter()
        .map(|(piece, corners)| (piece.clone(), skin_of(*corners)))
        .collect();
    let body = |mesh: &Mesh| Body::of(mesh).expect("a block");
    let whole = skins
        .iter()
        .skip(1)
        .fold(body(&skins[0].1), |whole, (_, mesh)| {
            whole.with(&body(mesh)).expect("they join")
        });
    let mut mould = mould(block([1.0; 3]), [10.0; 3], flask_mm);
    mould.cavity = solid(Piece::Cavity, &whole.mesh(), whole.volume_mm3());
    let solids = skins
        .iter()
        .map(|(piece, mesh)| solid(piece.clone(), mesh, volume_mm3(mesh)));
    let is_casting = |solid: &Solid| matches!(solid.piece, Piece::Casting(_));
    (mould.castings, mould.rigging) = solids.partition(is_casting);
    mould
}

/// A block by its sides, mm.
pub fn block(sides_mm: [f64; 3]) -> Form {
    Form::Block {
        size: sides_mm.map(Length::from_mm),
    }
}

fn skin_of_block(size: [Length; 3], middle_mm: [f64; 3]) -> Mesh {
    skin(Form::Block { size }, middle_mm)
}

fn skin(form: Form, middle_mm: [f64; 3]) -> Mesh {
    let shape = Shape {
        form,
        at: middle_mm.map(Length::from_mm),
        axis: [0.0, 0.0, 1.0],
        turn_degrees: 0.0,
        is_taken_away: false,
    };
    let mut mesh = shape.skin(1).expect("a plain body");
    // Whatever a form counts from, its middle comes to where it is wanted.
    let [low, high] = mesh.bounds();
    for point in &mut mesh.points {
        for axis in 0..3 {
            point[axis] += middle_mm[axis] - (low[axis] + high[axis]) / 2.0;
        }
    }
    mesh
}

fn solid(piece: Piece, mesh: &Mesh, volume_mm3: f64) -> Solid {
    Solid {
        piece,
        mesh: mesh.clone(),
        volume: Volume::from_mm3(volume_mm3),
        mass: Mass::ZERO,
    }
}

/// By the theorem of Gauss over the facets.
fn volume_mm3(mesh: &Mesh) -> f64 {
    let of = |triangle: &[u32; 3]| {
        let [a, b, c] = triangle.map(|point| mesh.points[point as usize]);
        a[0] * (b[1] * c[2] - b[2] * c[1])
            + a[1] * (b[2] * c[0] - b[0] * c[2])
            + a[2] * (b[0] * c[1] - b[1] * c[0])
    };
    mesh.triangles.iter().map(of).sum::<f64>() / 6.0
}
