//! Draught of walls against the tables of the rules, and no alarm on round flanks.

use pattern::draft::{Side, Skin};
use pattern::draw::draught::{Draught, draught};
use pattern::draw::{DrawError, DrawSettings};
use pattern::mesh::Mesh;

use crate::parts::{ball, bar, block, cone, less, part, ring};

const Z: [f64; 3] = [0.0, 0.0, 1.0];

fn at(mesh: &Mesh, level_mm: f64) -> Draught {
    draught(mesh, Z, level_mm, Skin::Wood, &DrawSettings::suiting(mesh)).unwrap()
}

#[test]
fn an_upright_wall_of_60_mm_is_asked_for_what_the_rules_ask() {
    let found = at(&part(&[block([0.0; 3], [100.0, 80.0, 60.0])]), 0.0);
    assert_eq!(found.patches.len(), 4);
    for wall in &found.patches {
        assert!(
            (wall.depth_mm - 60.0).abs() < 1e-9 && wall.side == Side::Outside,
            "{wall:?}"
        );
        assert!(wall.present_degrees.abs() < 1e-9, "{wall:?}");
        // The jobbing foundry's page: 0.030 in × √(60/25.4) = 1.17 mm, 1.12°; the textbooks' table
        // for wood: 1.0° for 50 to 100 mm (from memory).
        assert!((wall.wanted_degrees - 1.12).abs() < 0.03, "{wall:?}");
    }
    assert!(
        (found.patches[0].area_mm2 - 6000.0).abs() < 1e-6,
        "{:?}",
        found.patches[0]
    );
}

#[test]
fn a_wall_that_leans_two_degrees_passes_and_the_other_way_fails_by_more() {
    let lean = 60.0 * 2f64.to_radians().tan();
    let good = at(
        &part(&[cone([0.0; 3], Z, 100.0, 100.0 - 2.0 * lean, 60.0)]),
        0.0,
    );
    assert_eq!(good.patches.len(), 1);
    assert!(
        (good.patches[0].present_degrees - 2.0).abs() < 0.01,
        "{:?}",
        good.patches
    );
    assert_eq!(good.patches[0].missing_degrees(), 0.0);
    let bad = at(
        &part(&[cone([0.0; 3], Z, 100.0, 100.0 + 2.0 * lean, 60.0)]),
        0.0,
    );
    assert!(
        (bad.patches[0].present_degrees + 2.0).abs() < 0.01,
        "{:?}",
        bad.patches
    );
    assert!(bad.patches[0].missing_degrees() > 3.0);
    // Drawn downward from its wide end it leans the right way.
    let drag = at(
        &part(&[cone([0.0; 3], Z, 100.0 - 2.0 * lean, 100.0, 60.0)]),
        60.0,
    );
    assert!(
        (drag.patches[0].present_degrees - 2.0).abs() < 0.01,
        "{:?}",
        drag.patches
    );
}

#[test]
fn a_bore_is_an_inside_face() {
    let mesh = part(&[
        block([0.0; 3], [60.0, 60.0, 30.0]),
        less(bar([0.0, 0.0, -5.0], Z, 30.0, 50.0)),
    ]);
    let found = at(&mesh, 0.0);
    let inside: Vec<_> = found
        .patches
        .iter()
        .filter(|wall| wall.side == Side::Inside)
        .collect();
    assert_eq!((found.patches.len(), inside.len()), (5, 1));
    // Sand that stands in a bore is gripped: the table for wood asks 2.5° for 25 to 50 mm inside.
    assert!((inside[0].wanted_degrees - 2.5).abs() < 0.01, "{inside:?}");
}

#[test]
fn round_flanks_and_fillets_raise_no_alarm() {
    assert!(at(&part(&[ball([0.0; 3], 80.0)]), 0.0).patches.is_empty());
    let round = at(&part(&[ring([0.0; 3], Z, 90.0, 20.0)]), 0.0);
    assert!(round.patches.is_empty(), "{:?}", round.patches);
    // A bar on its side has walls at its ends only.
    let lying = at(&part(&[bar([0.0; 3], [1.0, 0.0, 0.0], 40.0, 90.0)]), 0.0);
    assert!(
        lying
            .patches
            .iter()
            .all(|wall| (wall.centre_mm[0] - 45.0).abs() > 44.0),
        "{lying:?}"
    );
    // An upright pin with a round end: the pin is a wall, the end is none.
    let pin = part(&[bar([0.0; 3], Z, 20.0, 40.0), ball([0.0, 0.0, 40.0], 20.0)]);
    let found = at(&pin, 0.0);
    assert_eq!(found.patches.len(), 1, "{:?}", found.patches);
    assert!(found.patches[0].present_degrees.abs() < 0.1);
}

#[test]
fn a_draw_beyond_the_tables_is_refused() {
    let mesh = part(&[block([0.0; 3], [100.0, 80.0, 900.0])]);
    let settings = DrawSettings::suiting(&mesh);
    assert!(draught(&mesh, Z, 0.0, Skin::Wood, &settings).is_err());
    let nowhere = draught(&mesh, [0.0; 3], 0.0, Skin::Wood, &settings);
    assert_eq!(nowhere, Err(DrawError::NoDirection { up: [0.0; 3] }.into()));
}
