//! Plain solids for the tests, and meshes of the examples.

use measure::length::Length;
use pattern::boolean::Body;
use pattern::draw::joint::heights::Heights;
use pattern::look::look;
use pattern::mesh::Mesh;
use pattern::shape::{Form, Shape, build};
use pattern::unit::Unit;

/// A plain solid along z on a foot at a place.
pub fn shape(form: Form, at: [f64; 3], is_taken_away: bool) -> Shape {
    Shape {
        form,
        at: at.map(Length::from_mm),
        axis: [0.0, 0.0, 1.0],
        turn_degrees: 0.0,
        is_taken_away,
    }
}

/// A block with the middle of its foot at a place.
pub fn block(at: [f64; 3], size: [f64; 3]) -> Shape {
    let size = size.map(Length::from_mm);
    shape(Form::Block { size }, at, false)
}

/// A cylinder with the middle of its foot at a place.
pub fn cylinder(at: [f64; 3], diameter: f64, length: f64) -> Shape {
    let (diameter, length) = (Length::from_mm(diameter), Length::from_mm(length));
    shape(Form::Cylinder { diameter, length }, at, false)
}

/// The same taken away.
pub fn away(shape: Shape) -> Shape {
    Shape {
        is_taken_away: true,
        ..shape
    }
}

/// The mesh of shapes joined.
pub fn mesh(shapes: &[Shape]) -> Mesh {
    build(shapes).unwrap().looked.mesh
}

/// A mesh of the examples, mended.
pub fn example(name: &str) -> Mesh {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/meshes/");
    let bytes = std::fs::read(format!("{folder}{name}")).unwrap();
    let unit = name.contains("inches").then_some(Unit::Inch);
    look(name, &bytes, unit).unwrap().mesh
}

/// The volume by another way than the code under test: that of the library which joins solids,
/// which also refuses a skin that does not close.
pub fn volume(mesh: &Mesh) -> f64 {
    Body::of(mesh).unwrap().volume_mm3()
}

/// Asserts that two figures agree to a share.
pub fn close(found: f64, wanted: f64, share: f64) {
    let off = (found - wanted).abs();
    assert!(off <= share * wanted.abs(), "{found} is not {wanted}");
}

/// A joint that steps from 10 mm to 20 mm over the middle of a plan reaching so far either way.
pub fn step_from_10_to_20([x, y]: [f64; 2]) -> Heights {
    Heights {
        xs_mm: vec![-x, 0.0, 0.0, x],
        ys_mm: vec![-y, y],
        nodes_mm: [10.0, 10.0, 20.0, 20.0].repeat(2),
    }
}
