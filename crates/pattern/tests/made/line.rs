//! The groove along the joint, and the table for the height gauge.

use pattern::made::line::{DEPTH_MM, LineError, WIDTH_MM, engraved, flat_line, stations};

use crate::solids::{away, block, close, cylinder, example, mesh, volume};

#[test]
fn the_groove_is_its_section_times_its_length() {
    let plain = mesh(&[block([0.0; 3], [60.0, 40.0, 30.0])]);
    let bored = mesh(&[
        block([0.0; 3], [60.0, 40.0, 30.0]),
        away(cylinder([0.0, 0.0, -1.0], 20.0, 32.0)),
    ]);
    for part in [plain, bored, example("pump_housing.stl")] {
        let [low, high] = part.bounds();
        let level = low[2] + 0.47 * (high[2] - low[2]);
        let lines = flat_line(&part, level).unwrap();
        let made = engraved(&part, &lines).unwrap();
        close(made.taken_mm3, WIDTH_MM * DEPTH_MM * made.length_mm, 0.1);
        close(volume(&part) - volume(&made.mesh), made.taken_mm3, 1e-6);
    }
}

#[test]
fn a_square_groove_is_known_exactly() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 30.0])]);
    let made = engraved(&part, &flat_line(&part, 15.0).unwrap()).unwrap();
    let ring = 60.0 * 40.0 - (60.0 - 2.0 * DEPTH_MM) * (40.0 - 2.0 * DEPTH_MM);
    close(made.taken_mm3, ring * WIDTH_MM, 1e-9);
    close(made.length_mm, 200.0, 1e-9);
}

#[test]
fn stations_stand_even_and_tell_heights_and_slopes() {
    // A line that rises by 10 mm over one side of 50 mm and falls again.
    let line = vec![
        [0.0, 0.0, 5.0],
        [50.0, 0.0, 15.0],
        [50.0, 50.0, 15.0],
        [0.0, 50.0, 5.0],
    ];
    let told = stations(std::slice::from_ref(&line), 5.0, 10.0);
    let length = 2.0 * 50.0_f64.hypot(10.0) + 100.0;
    assert_eq!(told.len(), (length / 10.0).round() as usize);
    let rise = (10.0_f64 / 50.0).atan().to_degrees();
    close(told[0].slope_degrees, rise, 1e-9);
    assert!(told.iter().all(|s| s.slope_degrees.abs() <= rise + 1e-9));
    assert!(told.iter().any(|s| s.slope_degrees < 0.0));
    assert!(told.iter().all(|s| (0.0..=10.0).contains(&s.height_mm)));
    let gap = told[1].along_mm - told[0].along_mm;
    close(gap, length / told.len() as f64, 1e-9);
}

#[test]
fn a_joint_beside_the_pattern_has_no_line() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 30.0])]);
    for level in [0.0, 30.0, 45.0, f64::NAN] {
        assert!(matches!(
            flat_line(&part, level),
            Err(LineError::NoLine { .. })
        ));
    }
    let error = engraved(&part, &[vec![[0.0; 3], [1.0, 0.0, 0.0]]]).unwrap_err();
    assert_eq!(error, LineError::NotRound { number: 1 });
}
