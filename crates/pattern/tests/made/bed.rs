//! Pieces for a printer: each fits, together they are the whole.

use std::f64::consts::PI;

use pattern::made::bed::{Bed, BedError, on_bed};

use crate::solids::{block, close, example, mesh, volume};

fn bed(size_mm: [f64; 3]) -> Bed {
    Bed {
        size_mm,
        dowel_mm: Some(4.0),
        clearance_mm: 0.2,
    }
}

#[test]
fn pieces_fit_the_bed_and_add_up_but_for_their_dowel_holes() {
    let part = mesh(&[block([0.0; 3], [300.0, 120.0, 50.0])]);
    let made = on_bed(&part, &bed([110.0, 100.0, 200.0])).unwrap();
    assert_eq!(made.pieces.len(), 6);
    for piece in &made.pieces {
        let [low, high] = piece.mesh.bounds();
        let size = [0, 1, 2].map(|axis| high[axis] - low[axis]);
        assert!(
            size[0] <= 110.0 && size[1] <= 100.0 && size[2] <= 200.0,
            "{size:?}"
        );
    }
    // Seven cuts between neighbours, two dowels each.
    assert_eq!(made.dowels.len(), 14);
    assert!(made.without_dowel.is_empty());
    let holes: f64 = made
        .dowels
        .iter()
        .map(|d| PI / 4.0 * 4.2 * 4.2 * 2.0 * d.depth_mm)
        .sum();
    let sum: f64 = made.pieces.iter().map(|piece| volume(&piece.mesh)).sum();
    close(sum, 300.0 * 120.0 * 50.0 - holes, 1e-6);
}

#[test]
fn what_fits_is_left_whole_and_turned_where_that_helps() {
    let part = mesh(&[block([0.0; 3], [180.0, 90.0, 40.0])]);
    let made = on_bed(&part, &bed([100.0, 200.0, 100.0])).unwrap();
    assert_eq!(made.pieces.len(), 1);
    assert!(made.pieces[0].is_turned && made.dowels.is_empty());
    close(volume(&made.pieces[0].mesh), volume(&part), 1e-12);
}

#[test]
fn a_mesh_of_a_file_is_cut_too() {
    let part = example("pump_housing.stl");
    let [low, high] = part.bounds();
    let half = [0, 1, 2].map(|axis| ((high[axis] - low[axis]) * 0.6).max(30.0));
    let made = on_bed(&part, &bed(half)).unwrap();
    assert!(made.pieces.len() > 1);
    let holes: f64 = made
        .dowels
        .iter()
        .map(|d| PI / 4.0 * 4.2 * 4.2 * 2.0 * d.depth_mm)
        .sum();
    let sum: f64 = made.pieces.iter().map(|piece| volume(&piece.mesh)).sum();
    close(sum, volume(&part) - holes, 1e-6);
}

#[test]
fn a_bed_that_takes_nothing_is_refused() {
    let part = mesh(&[block([0.0; 3], [900.0, 900.0, 40.0])]);
    for size in [
        [10.0, 200.0, 200.0],
        [f64::NAN, 200.0, 200.0],
        [f64::INFINITY, 200.0, 200.0],
    ] {
        let error = on_bed(&part, &bed(size)).unwrap_err();
        assert!(matches!(error, BedError::Size { .. }), "{error}");
    }
    let error = on_bed(&part, &bed([50.0, 50.0, 50.0])).unwrap_err();
    assert!(
        matches!(error, BedError::TooMany { pieces: 324 }),
        "{error}"
    );
}
