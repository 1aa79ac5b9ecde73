//! Core prints on a pattern.

use std::f64::consts::PI;

use pattern::made::prints::{Print, PrintError, Section, with_prints};

use crate::solids::{block, close, mesh, volume};

fn print(at_mm: [f64; 3], axis: [f64; 3], section: Section) -> Print {
    Print {
        at_mm,
        axis,
        length_mm: 20.0,
        section,
    }
}

#[test]
fn prints_add_their_own_volume() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 30.0])]);
    let prints = [
        print([30.0, 0.0, 15.0], [1.0, 0.0, 0.0], Section::Round(16.0)),
        print([-30.0, 0.0, 15.0], [-1.0, 0.0, 0.0], Section::Round(16.0)),
        print(
            [0.0, 0.0, 30.0],
            [0.0, 0.0, 1.0],
            Section::Tapered([20.0, 16.0]),
        ),
        print(
            [0.0, 20.0, 15.0],
            [0.0, 2.0, 0.0],
            Section::Square([10.0, 8.0]),
        ),
    ];
    let made = with_prints(&part, &prints).unwrap();
    let round = PI * 64.0 * 20.0;
    let cone = PI * 20.0 / 3.0 * (100.0 + 80.0 + 64.0);
    for (added, wanted) in made.added_mm3.iter().zip([round, round, cone, 1600.0]) {
        close(*added, wanted, 1e-6);
    }
    close(
        volume(&made.mesh),
        72_000.0 + 2.0 * round + cone + 1600.0,
        1e-6,
    );
}

#[test]
fn a_print_apart_or_within_is_told() {
    let part = mesh(&[block([0.0; 3], [60.0, 40.0, 30.0])]);
    let apart = print([40.0, 0.0, 15.0], [1.0, 0.0, 0.0], Section::Round(16.0));
    let error = with_prints(&part, &[apart]).unwrap_err();
    assert!(
        matches!(error, PrintError::Apart { number: 1, .. }),
        "{error}"
    );
    let within = print([30.0, 0.0, 15.0], [-1.0, 0.0, 0.0], Section::Round(16.0));
    let error = with_prints(&part, &[within]).unwrap_err();
    assert!(
        matches!(error, PrintError::Within { number: 1, .. }),
        "{error}"
    );
    let none = print([30.0, 0.0, 15.0], [0.0; 3], Section::Round(16.0));
    assert!(matches!(
        with_prints(&part, &[none]),
        Err(PrintError::Shape { number: 1, .. })
    ));
}
