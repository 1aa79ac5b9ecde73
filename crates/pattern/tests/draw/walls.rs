//! Walls of metal and sand of known thickness, and inside corners of known length.

use pattern::draw::walls::{Least, Walls, walls};
use pattern::mesh::Mesh;

use crate::parts::{ball, bar, block, less, part};

const LEAST: Least = Least {
    metal_mm: 4.0,
    sand_mm: 5.0,
    corner_degrees: 30.0,
};

fn measured(mesh: &Mesh) -> Walls {
    walls(mesh, &LEAST)
}

#[test]
fn a_plate_is_as_thick_as_it_is() {
    let mesh = part(&[block([0.0; 3], [80.0, 50.0, 3.0])]);
    let found = measured(&mesh);
    let top = (0..mesh.triangles.len()).filter(|&facet| mesh.normal(facet)[2] > 1.0);
    for facet in top {
        assert!((found.metal_mm[facet].unwrap() - 3.0).abs() < 1e-3);
    }
    assert!(found.sand_mm.iter().all(Option::is_none));
    // Its two faces; the edges of the plate lie between them and are thick the long way.
    assert_eq!(found.thin_metal.len(), 2, "{:?}", found.thin_metal);
    for face in &found.thin_metal {
        assert!((face.area_mm2 - 4000.0).abs() < 1e-6 && (face.least_mm - 3.0).abs() < 1e-3);
    }
    assert!(found.corners.is_empty(), "{:?}", found.corners);
}

#[test]
fn ribs_close_together_leave_a_thin_wall_of_sand() {
    let mesh = part(&[
        block([0.0; 3], [80.0, 50.0, 10.0]),
        block([-5.0, 0.0, 9.0], [6.0, 50.0, 21.0]),
        block([5.0, 0.0, 9.0], [6.0, 50.0, 21.0]),
    ]);
    let found = measured(&mesh);
    // From −2 to 2: 4 mm of sand between two faces of 50 × 20.
    assert_eq!(found.thin_sand.len(), 2, "{:?}", found.thin_sand);
    for face in &found.thin_sand {
        assert!((face.area_mm2 - 1000.0).abs() < 1e-6 && (face.least_mm - 4.0).abs() < 1e-3);
        assert!((face.centre_mm[0].abs() - 2.0).abs() < 1e-9, "{face:?}");
    }
    assert!(found.thin_metal.is_empty(), "{:?}", found.thin_metal);
    // Each rib stands square on the plate along both its sides.
    assert_eq!(found.corners.len(), 4, "{:?}", found.corners);
    for corner in &found.corners {
        assert!((corner.length_mm - 50.0).abs() < 1e-6, "{corner:?}");
        assert!((corner.turn_degrees - 90.0).abs() < 1e-6, "{corner:?}");
        assert!((corner.centre_mm[2] - 10.0).abs() < 1e-9, "{corner:?}");
    }
}

#[test]
fn round_skins_have_no_corners_and_are_as_thick_as_their_diameter() {
    let ball = part(&[ball([0.0; 3], 40.0)]);
    let found = measured(&ball);
    assert!(found.corners.is_empty() && found.thin_metal.is_empty());
    let thick = found
        .metal_mm
        .iter()
        .flatten()
        .fold(0.0f64, |most, mm| most.max(*mm));
    assert!((thick - 40.0).abs() < 0.3, "{thick}");
    // A bore of 3 mm: its own skin looks back at itself through 3 mm of sand.
    let bored = part(&[
        block([0.0; 3], [30.0, 30.0, 20.0]),
        less(bar([0.0, 0.0, -5.0], [0.0, 0.0, 1.0], 3.0, 40.0)),
    ]);
    let found = measured(&bored);
    assert_eq!(found.thin_sand.len(), 1, "{:?}", found.thin_sand);
    assert!(
        (found.thin_sand[0].least_mm - 3.0).abs() < 0.05,
        "{:?}",
        found.thin_sand
    );
    // The flats of the bore turn by little each.
    assert!(found.corners.is_empty(), "{:?}", found.corners);
}
