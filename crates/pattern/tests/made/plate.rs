//! Patterns on a board.

use pattern::made::plate::{PlateError, PlateWish, plate};

use crate::solids::{block, close, cylinder, example, mesh, volume};

const WISH: PlateWish = PlateWish {
    count: 4,
    thickness_mm: 12.0,
    size_mm: None,
    to_wall_mm: 25.0,
    between_mm: 20.0,
};

#[test]
fn a_match_plate_holds_board_and_all_halves() {
    let part = mesh(&[
        block([0.0; 3], [60.0, 40.0, 20.0]),
        cylinder([0.0, 0.0, 20.0], 30.0, 12.0),
    ]);
    let made = plate(&part, 8.0, &WISH).unwrap();
    assert!(made.is_match_plate && made.places_mm.len() == 4);
    let [length, width] = made.size_mm;
    close(
        volume(&made.mesh),
        length * width * 12.0 + 4.0 * volume(&part),
        1e-9,
    );
    // The walls of sand are kept, to the edge and to each other.
    let half = if made.is_turned {
        [20.0, 30.0]
    } else {
        [30.0, 20.0]
    };
    for (number, a) in made.places_mm.iter().enumerate() {
        for axis in 0..2 {
            assert!(a[axis] - half[axis] >= 25.0 - 1e-9);
            assert!(made.size_mm[axis] - a[axis] - half[axis] >= 25.0 - 1e-9);
        }
        for b in &made.places_mm[..number] {
            let gap = [0, 1].map(|axis| (a[axis] - b[axis]).abs() - 2.0 * half[axis]);
            assert!(gap[0].max(gap[1]) >= 20.0 - 1e-9, "{gap:?}");
        }
    }
    let [low, high] = made.mesh.bounds();
    close(high[2] - low[2], 32.0 + 12.0, 1e-9);
}

#[test]
fn flat_backed_patterns_make_a_pattern_board() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 20.0])]);
    let made = plate(&part, 0.0, &PlateWish { count: 2, ..WISH }).unwrap();
    assert!(!made.is_match_plate);
    let [length, width] = made.size_mm;
    close(volume(&made.mesh), length * width * 12.0 + 96_000.0, 1e-9);
}

#[test]
fn a_board_too_small_says_what_fits() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 20.0])]);
    let small = PlateWish {
        size_mm: Some([200.0, 120.0]),
        ..WISH
    };
    let error = plate(&part, 8.0, &small).unwrap_err();
    assert!(
        matches!(
            error,
            PlateError::NoRoom {
                count: 4,
                fits: 2,
                ..
            }
        ),
        "{error}"
    );
    let large = PlateWish {
        size_mm: Some([260.0, 220.0]),
        ..WISH
    };
    assert_eq!(plate(&part, 8.0, &large).unwrap().size_mm, [260.0, 220.0]);
    assert!(matches!(
        plate(&part, 8.0, &PlateWish { count: 0, ..WISH }),
        Err(PlateError::Count { .. })
    ));
    let thin = PlateWish {
        thickness_mm: f64::NAN,
        ..WISH
    };
    assert!(matches!(
        plate(&part, 8.0, &thin),
        Err(PlateError::Length { .. })
    ));
}

#[test]
fn a_mesh_of_a_file_is_mounted() {
    let part = example("pump_housing.stl");
    let [low, high] = part.bounds();
    let joint = low[2] + 0.3 * (high[2] - low[2]);
    let made = plate(&part, joint, &PlateWish { count: 2, ..WISH }).unwrap();
    let [length, width] = made.size_mm;
    close(
        volume(&made.mesh),
        length * width * 12.0 + 2.0 * volume(&part),
        1e-6,
    );
}
