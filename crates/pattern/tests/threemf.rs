//! 3MF archives: units, placements, and archives that mean harm.

#![allow(
    clippy::unwrap_used,
    reason = "a test that cannot get at its part must fail"
)]

mod shapes;

use pattern::look::{Looked, Verdict, look};
use pattern::read::{Trouble, read};
use pattern::unit::{Unit, UnitBasis};
use shapes::{block, object, threemf, zip};

fn cube(id: u32) -> String {
    object(id, &block([0.0; 3], [2.0; 3]))
}

fn looked(bytes: &[u8]) -> Looked {
    look("part.3mf", bytes, None).unwrap()
}

fn trouble(bytes: &[u8]) -> Trouble {
    read("part.3mf", bytes).unwrap_err().trouble
}

#[test]
fn the_declared_unit_is_believed_and_an_asked_one_wins() {
    let bytes = threemf("inch", &cube(1), "<item objectid=\"1\"/>");
    let found = looked(&bytes);
    assert_eq!(
        (found.unit, found.basis),
        (Some(Unit::Inch), UnitBasis::Declared)
    );
    assert!((found.solid.volume_mm3 / 8.0 - 25.4f64.powi(3)).abs() < 1e-6);
    let asked = look("part.3mf", &bytes, Some(Unit::Centimetre)).unwrap();
    assert!((asked.solid.volume_mm3 - 8000.0).abs() < 1e-9);
    assert_eq!(asked.basis, UnitBasis::Asked);
    assert!(matches!(
        trouble(&threemf("cubit", &cube(1), "<item objectid=\"1\"/>")),
        Trouble::Attribute {
            attribute: "unit",
            ..
        }
    ));
}

#[test]
fn items_and_components_are_placed_scaled_and_mirrored() {
    let pair = "<object id=\"2\"><components>\
                <component objectid=\"1\" transform=\"10 0 0 0 10 0 0 0 10 0 0 0\"/>\
                <component objectid=\"1\" transform=\"-10 0 0 0 10 0 0 0 10 -5 0 0\"/>\
                </components></object>";
    let items = "<item objectid=\"2\" transform=\"1 0 0 0 1 0 0 0 1 100 0 0\"/>";
    let found = looked(&threemf("millimeter", &(cube(1) + pair), items));
    assert_eq!(
        (found.verdict, found.pieces, found.solid.bodies),
        (Verdict::Accepted, 2, 2)
    );
    assert!((found.solid.volume_mm3 - 16_000.0).abs() < 1e-6);
    assert_eq!(
        found.solid.bounds_mm,
        [[75.0, 0.0, 0.0], [120.0, 20.0, 20.0]]
    );
    assert!(
        found
            .faults
            .iter()
            .any(|fault| fault.code() == "multi_body")
    );
}

#[test]
fn a_coordinate_that_is_no_number_is_refused_not_taken_as_zero() {
    let broken = cube(1).replacen("x=\"2\"", "x=\"2,0\"", 1);
    let found = trouble(&threemf("inch", &broken, "<item objectid=\"1\"/>"));
    assert_eq!(
        found,
        Trouble::Attribute {
            attribute: "x",
            text: "2,0".to_owned()
        }
    );
    let broken = cube(1).replacen("v1=\"0\"", "v1=\"99\"", 1);
    let found = trouble(&threemf("inch", &broken, "<item objectid=\"1\"/>"));
    assert_eq!(
        found,
        Trouble::NoSuchPoint {
            index: 99,
            points: 8
        }
    );
}

#[test]
fn rings_depth_and_floods_of_components_are_refused() {
    let made_of = |id: u32, of: u32, times: usize| {
        let components = format!("<component objectid=\"{of}\"/>").repeat(times);
        format!("<object id=\"{id}\"><components>{components}</components></object>")
    };
    let ring = made_of(1, 2, 1) + &made_of(2, 3, 1) + &made_of(3, 1, 1);
    let item = "<item objectid=\"1\"/>";
    assert_eq!(
        trouble(&threemf("inch", &ring, item)),
        Trouble::ComponentRing { id: 1 }
    );
    let deep: String = (1..60).map(|id| made_of(id, id + 1, 1)).collect();
    let deep = deep + &cube(60);
    assert!(matches!(
        trouble(&threemf("inch", &deep, item)),
        Trouble::NestedTooDeep { .. }
    ));
    let flood: String = (1..9).map(|id| made_of(id, id + 1, 20)).collect();
    let flood = flood + &cube(9);
    assert!(matches!(
        trouble(&threemf("inch", &flood, item)),
        Trouble::TooManyPlaced { .. }
    ));
    assert_eq!(
        trouble(&threemf("inch", "", item)),
        Trouble::NoSuchObject { id: 1 }
    );
}

#[test]
fn bombs_lies_and_names_that_lead_out_are_refused() {
    let huge = vec![b' '; 300 << 20];
    let bomb = zip(&[("3D/3dmodel.model", huge.clone(), None)]);
    assert!(bomb.len() < 4 << 20);
    assert!(matches!(trouble(&bomb), Trouble::TooLarge { .. }));
    let liar = zip(&[("3D/3dmodel.model", huge, Some(1000))]);
    assert_eq!(trouble(&liar), Trouble::PartLies);
    for name in [
        "../3D/3dmodel.model",
        "/3D/3dmodel.model",
        "3D\\x.model",
        "C:x.model",
    ] {
        assert_eq!(
            trouble(&zip(&[(name, Vec::new(), None)])),
            Trouble::PathLeadsOut,
            "{name}"
        );
    }
    assert!(matches!(trouble(&zip(&[])), Trouble::PartMissing));
    let bytes = threemf("inch", &cube(1), "<item objectid=\"1\"/>");
    for length in 2..bytes.len() {
        assert!(read("part.3mf", &bytes[..length]).is_err());
    }
}

#[test]
fn entities_and_shapes_without_facets_are_refused() {
    let model = b"<!DOCTYPE x [<!ENTITY a \"aaaa\">]><model></model>".to_vec();
    let found = trouble(&zip(&[("3D/3dmodel.model", model, None)]));
    assert!(matches!(found, Trouble::Xml { .. }));
    let lattice = cube(1).replace("</mesh>", "<b:beamlattice/></mesh>");
    let found = trouble(&threemf("inch", &lattice, "<item objectid=\"1\"/>"));
    assert_eq!(found, Trouble::NotFacets { id: 1 });
}
