//! Parts with known undercuts, joints and walls, and the example meshes.

use std::path::PathBuf;

use measure::length::Length;
use pattern::look::{Verdict, look};
use pattern::mesh::Mesh;
use pattern::shape::{Form, Shape, build};
use pattern::unit::Unit;
use toml::Table;

/// A block standing on the middle of its foot.
pub fn block(at: [f64; 3], size: [f64; 3]) -> Shape {
    let size = size.map(Length::from_mm);
    shape(Form::Block { size }, at, [0.0, 0.0, 1.0])
}

/// A round bar from its foot along an axis.
pub fn bar(at: [f64; 3], axis: [f64; 3], diameter: f64, length: f64) -> Shape {
    let [diameter, length] = [diameter, length].map(Length::from_mm);
    shape(Form::Cylinder { diameter, length }, at, axis)
}

/// The foot of a cone from its foot along an axis.
pub fn cone(at: [f64; 3], axis: [f64; 3], foot: f64, top: f64, length: f64) -> Shape {
    let [diameter, top, length] = [foot, top, length].map(Length::from_mm);
    let form = Form::Cone {
        diameter,
        top,
        length,
    };
    shape(form, at, axis)
}

/// A ball around its middle.
pub fn ball(at: [f64; 3], diameter: f64) -> Shape {
    let diameter = Length::from_mm(diameter);
    shape(Form::Ball { diameter }, at, [0.0, 0.0, 1.0])
}

/// A ring around its middle.
pub fn ring(at: [f64; 3], axis: [f64; 3], diameter: f64, thickness: f64) -> Shape {
    let [diameter, thickness] = [diameter, thickness].map(Length::from_mm);
    let form = Form::Ring {
        diameter,
        thickness,
    };
    shape(form, at, axis)
}

/// The same shape, taken away.
pub fn less(shape: Shape) -> Shape {
    Shape {
        is_taken_away: true,
        ..shape
    }
}

/// The part that shapes make in their order.
pub fn part(shapes: &[Shape]) -> Mesh {
    build(shapes).unwrap().looked.mesh
}

/// The part turned by some degrees about an axis of its box.
pub fn turned(mesh: &Mesh, axis: usize, degrees: f64) -> Mesh {
    let (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
    let (sin, cos) = degrees.to_radians().sin_cos();
    let mut mesh = mesh.clone();
    for point in &mut mesh.points {
        let (x, y) = (point[u], point[v]);
        (point[u], point[v]) = (x * cos - y * sin, x * sin + y * cos);
    }
    mesh
}

/// A mug standing on z = 0: 80 across, 90 high, walls of 4, a round handle on its side.
pub fn mug() -> Mesh {
    part(&[
        bar([0.0; 3], [0.0, 0.0, 1.0], 80.0, 90.0),
        ring([42.0, 0.0, 45.0], [0.0, 1.0, 0.0], 60.0, 11.0),
        less(bar([0.0, 0.0, 5.0], [0.0, 0.0, 1.0], 72.0, 90.0)),
    ])
}

/// A block of 100 × 60 × 40 with a slot along it: 12 wide at the mouth, 30 wide below.
pub fn tee_slot() -> Mesh {
    part(&[
        block([0.0; 3], [100.0, 60.0, 40.0]),
        less(block([0.0, 0.0, 30.0], [110.0, 12.0, 20.0])),
        less(block([0.0, 0.0, 20.0], [110.0, 30.0, 10.0])),
    ])
}

fn shape(form: Form, at: [f64; 3], axis: [f64; 3]) -> Shape {
    Shape {
        form,
        at: at.map(Length::from_mm),
        axis,
        turn_degrees: 0.0,
        is_taken_away: false,
    }
}

/// The example meshes that are sound as they stand, in mm, with their names.
pub fn sound_examples() -> Vec<(String, Mesh)> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../examples/meshes");
    let text = std::fs::read_to_string(folder.join("reference.toml")).unwrap();
    let references: Table = toml::from_str(&text).unwrap();
    let mut sound = Vec::new();
    for (name, reference) in &references {
        let unit = Unit::parse(reference["unit"].as_str().unwrap()).unwrap();
        let bytes = std::fs::read(folder.join(name)).unwrap();
        let looked = look(name, &bytes, Some(unit)).unwrap();
        if reference["closed"].as_bool() == Some(true) && looked.verdict == Verdict::Accepted {
            sound.push((name.clone(), looked.mesh));
        }
    }
    assert!(sound.len() >= 8, "only {} sound meshes", sound.len());
    sound
}
