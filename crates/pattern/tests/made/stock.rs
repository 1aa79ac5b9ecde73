//! Stock on faces and in bores, against area times depth.

use std::f64::consts::PI;

use measure::length::Length;
use pattern::made::stock::{Face, Stock, StockError, with_stock};
use pattern::shape::{Form, build};

use crate::solids::{away, block, close, cylinder, example, mesh, shape, volume};

fn on(face: &str, depth_mm: f64) -> Stock {
    Stock {
        on: face.parse().unwrap(),
        depth_mm,
    }
}

#[test]
fn stock_on_a_face_is_area_times_depth() {
    let part = mesh(&[block([0.0; 3], [40.0, 30.0, 20.0])]);
    for (face, area) in [
        ("top", 1200.0),
        ("-x", 600.0),
        ("+y", 800.0),
        ("bottom", 1200.0),
    ] {
        let stocked = with_stock(&part, &[on(face, 2.5)]).unwrap();
        close(volume(&stocked.mesh), 24_000.0 + 2.5 * area, 1e-9);
        close(stocked.left_on[0].area_mm2, area, 1e-9);
        close(stocked.left_on[0].added_mm3, 2.5 * area, 1e-9);
    }
    let two = with_stock(&part, &[on("top", 2.0), on("+x", 1.0)]).unwrap();
    close(volume(&two.mesh), 41.0 * 30.0 * 22.0, 1e-9);
}

#[test]
fn only_the_outermost_level_is_raised_and_a_plane_takes_any() {
    let step = mesh(&[
        block([0.0; 3], [40.0, 30.0, 20.0]),
        block([0.0, 0.0, 20.0], [10.0, 30.0, 5.0]),
    ]);
    let top = with_stock(&step, &[on("top", 1.0)]).unwrap();
    close(volume(&top.mesh), 24_000.0 + 1500.0 + 300.0, 1e-9);
    let plane = Face::Plane {
        point: [0.0, 0.0, 20.0],
        normal: [0.0, 0.0, 2.0],
    };
    let wanted = Stock {
        on: plane,
        depth_mm: 1.0,
    };
    let ledge = with_stock(&step, &[wanted]).unwrap();
    close(volume(&ledge.mesh), 25_500.0 + 900.0, 1e-9);
}

#[test]
fn stock_in_a_bore_is_a_tube() {
    let plate = mesh(&[
        block([0.0; 3], [80.0, 40.0, 12.0]),
        away(cylinder([-20.0, 0.0, -1.0], 22.0, 20.0)),
        away(cylinder([20.0, 0.0, -1.0], 22.0, 20.0)),
        away(cylinder([0.0, 0.0, -1.0], 8.0, 20.0)),
    ]);
    let stocked = with_stock(&plate, &[on("bore D22", 2.0)]).unwrap();
    let tube = PI * (11.0_f64.powi(2) - 9.0_f64.powi(2)) * 12.0;
    assert_eq!(stocked.left_on[0].places, 2);
    // The bores are polygons of the true area, moved by their corners: off by their mitre.
    close(volume(&stocked.mesh) - volume(&plate), 2.0 * tube, 5e-3);
    let error = with_stock(&plate, &[on("bore D25", 2.0)]).unwrap_err();
    assert!(matches!(error, StockError::NoBore { .. }), "{error}");
    assert!(error.to_string().contains("8.0 mm, 22.0 mm"), "{error}");
    let error = with_stock(&plate, &[on("bore D8", 3.0)]).unwrap_err();
    assert!(matches!(error, StockError::ClosesBore { .. }), "{error}");
}

#[test]
fn a_lying_bore_is_found_and_a_round_bar_is_none() {
    let lying = build(&[
        block([0.0, 0.0, 0.0], [60.0, 40.0, 40.0]),
        pattern::shape::Shape {
            axis: [1.0, 0.0, 0.0],
            ..away(cylinder([-40.0, 0.0, 20.0], 16.0, 80.0))
        },
    ]);
    let lying = lying.unwrap().looked.mesh;
    let stocked = with_stock(&lying, &[on("bore D16", 1.0)]).unwrap();
    close(
        stocked.left_on[0].added_mm3,
        PI * (64.0 - 49.0) * 60.0,
        5e-3,
    );
    let bar = mesh(&[cylinder([0.0; 3], 16.0, 30.0)]);
    assert!(with_stock(&bar, &[on("bore D16", 1.0)]).is_err());
}

#[test]
fn what_is_not_flat_or_not_there_is_told_with_its_place() {
    let diameter = Length::from_mm(40.0);
    let ball = mesh(&[shape(Form::Ball { diameter }, [0.0, 0.0, 7.0], false)]);
    let error = with_stock(&ball, &[on("top", 1.0)]).unwrap_err();
    let StockError::NothingFlat { place_mm, .. } = error else {
        unreachable!("{error}");
    };
    assert!((place_mm[2] - 27.0).abs() < 0.1, "{place_mm:?}");
    let part = mesh(&[block([0.0; 3], [40.0, 30.0, 20.0])]);
    let plane = Face::Plane {
        point: [0.0, 0.0, 15.0],
        normal: [0.0, 0.0, 1.0],
    };
    let error = with_stock(
        &part,
        &[Stock {
            on: plane,
            depth_mm: 1.0,
        }],
    )
    .unwrap_err();
    assert!(error.to_string().contains("5.00 mm off"), "{error}");
    for depth_mm in [0.0, -1.0, f64::NAN, 80.0] {
        let stock = Stock {
            on: plane,
            depth_mm,
        };
        assert!(matches!(
            with_stock(&part, &[stock]),
            Err(StockError::Depth { .. })
        ));
    }
    assert!("front".parse::<Face>().is_err());
    assert!("bore D-3".parse::<Face>().is_err());
}

#[test]
fn a_mesh_of_a_file_takes_stock_too() {
    let ring = example("flanged_ring.stl");
    let stocked = with_stock(&ring, &[on("top", 1.5)]).unwrap();
    let left = stocked.left_on[0];
    close(
        volume(&stocked.mesh),
        volume(&ring) + 1.5 * left.area_mm2,
        1e-9,
    );
}
