//! Plastic of a print, against a box in a box and a ball in a ball.

use std::f64::consts::PI;

use measure::length::Length;
use measure::matter::Density;
use pattern::made::filament::{PrintAdvice, Printing, advice, filament};
use pattern::shape::Form;

use crate::solids::{block, close, mesh, shape};

const PLASTIC: Printing = Printing {
    density: Density::from_kg_per_m3(1240.0),
    wall_mm: 2.0,
    infill: 0.25,
    layer_mm: 0.2,
};

#[test]
fn walls_and_infill_are_weighed() {
    let cube = mesh(&[block([0.0; 3], [40.0, 40.0, 40.0])]);
    let found = filament(&cube, &PLASTIC).unwrap();
    let inner = 36.0_f64.powi(3);
    close(found.within_mm3, inner, 1e-2);
    close(found.walls_mm3, 64_000.0 - inner, 1e-2);
    let grams = (64_000.0 - inner + 0.25 * inner) * 1.24e-3;
    close(found.mass.as_kg() * 1000.0, grams, 1e-2);
    let diameter = Length::from_mm(60.0);
    let ball = mesh(&[shape(Form::Ball { diameter }, [0.0; 3], false)]);
    let found = filament(&ball, &PLASTIC).unwrap();
    close(found.within_mm3, 4.0 / 3.0 * PI * 28.0_f64.powi(3), 1e-2);
}

#[test]
fn solid_prints_weigh_as_their_volume_and_thin_ones_are_all_wall() {
    let cube = mesh(&[block([0.0; 3], [40.0, 40.0, 40.0])]);
    let solid = Printing {
        infill: 1.0,
        ..PLASTIC
    };
    close(
        filament(&cube, &solid).unwrap().mass.as_kg(),
        64e-6 * 1240.0,
        1e-9,
    );
    let sheet = mesh(&[block([0.0; 3], [40.0, 40.0, 3.0])]);
    close(filament(&sheet, &PLASTIC).unwrap().walls_mm3, 4800.0, 1e-9);
    for (wall_mm, infill) in [(0.0, 0.2), (f64::NAN, 0.2), (2.0, -0.1), (2.0, f64::NAN)] {
        let wrong = Printing {
            wall_mm,
            infill,
            ..PLASTIC
        };
        assert!(filament(&cube, &wrong).is_err());
    }
}

#[test]
fn what_the_rammer_would_break_is_told() {
    assert_eq!(advice(&PLASTIC), [PrintAdvice::RubAlongDraw]);
    let light = Printing {
        wall_mm: 0.8,
        infill: 0.1,
        layer_mm: 0.3,
        ..PLASTIC
    };
    let told = advice(&light);
    assert_eq!(told.len(), 4);
    assert!(matches!(
        told[0],
        PrintAdvice::ThinWalls { has_mm: 0.8, .. }
    ));
    assert!(matches!(told[1], PrintAdvice::LightInfill { has: 0.1, .. }));
    assert!(matches!(
        told[2],
        PrintAdvice::CoarseLayers { has_mm: 0.3, .. }
    ));
}
