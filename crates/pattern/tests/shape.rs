//! Parts built from plain solids: their volumes against the exact ones, however they are turned,
//! scaled and put in order; and what cannot be built.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use std::f64::consts::PI;

use measure::length::Length;
use pattern::look::Verdict;
use pattern::shape::{Form, Shape, ShapeError, ShapeFact, build};
use proptest::prelude::{Just, Strategy, prop_oneof, proptest};
use proptest::test_runner::Config;

fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

fn placed(form: Form, at: [f64; 3]) -> Shape {
    Shape {
        form,
        at: at.map(mm),
        axis: [0.0, 0.0, 1.0],
        turn_degrees: 0.0,
        is_taken_away: false,
    }
}

fn block(at: [f64; 3], size: [f64; 3]) -> Shape {
    placed(Form::Block { size: size.map(mm) }, at)
}

fn round(at: [f64; 3], diameter: f64, length: f64) -> Shape {
    let (diameter, length) = (mm(diameter), mm(length));
    placed(Form::Cylinder { diameter, length }, at)
}

fn away(shape: Shape) -> Shape {
    Shape {
        is_taken_away: true,
        ..shape
    }
}

#[track_caller]
fn volume(shapes: &[Shape]) -> f64 {
    let looked = build(shapes).unwrap().looked;
    let sound = matches!(looked.verdict, Verdict::Accepted | Verdict::Healed);
    assert!(sound, "{:?} {:?}", looked.verdict, looked.faults);
    looked.solid.volume_mm3
}

#[track_caller]
fn holds(form: Form, exact_mm3: f64) {
    let found = volume(&[placed(form, [10.0, -20.0, 5.0])]);
    let off = found / exact_mm3 - 1.0;
    assert!(off.abs() < 1e-6, "{form:?}: {found} mm³, off by {off}");
}

#[test]
fn every_form_holds_what_the_true_solid_holds() {
    let (diameter, length) = (mm(48.0), mm(31.0));
    let size = [30.0, 50.0, 20.0];
    holds(
        Form::Block { size: size.map(mm) },
        size.iter().product::<f64>(),
    );
    holds(Form::Cylinder { diameter, length }, PI * 24.0 * 24.0 * 31.0);
    let bore = mm(30.0);
    holds(
        Form::Tube {
            diameter,
            bore,
            length,
        },
        PI * (24.0 * 24.0 - 15.0 * 15.0) * 31.0,
    );
    let top = mm(20.0);
    let frustum = PI / 3.0 * 31.0 * (24.0 * 24.0 + 24.0 * 10.0 + 10.0 * 10.0);
    holds(
        Form::Cone {
            diameter,
            top,
            length,
        },
        frustum,
    );
    let top = Length::ZERO;
    holds(
        Form::Cone {
            diameter,
            top,
            length,
        },
        PI / 3.0 * 31.0 * 24.0 * 24.0,
    );
    holds(Form::Ball { diameter }, 4.0 / 3.0 * PI * 24f64.powi(3));
    holds(
        Form::Ellipsoid { size: size.map(mm) },
        PI / 6.0 * size.iter().product::<f64>(),
    );
    let thickness = mm(9.0);
    holds(
        Form::Ring {
            diameter,
            thickness,
        },
        2.0 * PI * PI * 19.5 * 4.5 * 4.5,
    );
}

/// Skins come out a little small: a chord is shorter than its arc.
#[test]
fn the_skin_of_a_ball_is_true_to_a_third_of_a_per_cent() {
    for across in [6.0, 60.0, 600.0] {
        let diameter = mm(across);
        let looked = build(&[placed(Form::Ball { diameter }, [0.0; 3])]).unwrap();
        let off = looked.looked.solid.area_mm2 / (PI * across * across) - 1.0;
        assert!(off.abs() < 0.0033, "{across}: {off}");
    }
}

/// Two bars of one diameter crossing at right angles share 2/3 d³.
#[test]
fn crossing_bars_are_not_counted_twice() {
    let (d, l) = (20.0, 100.0);
    let upright = round([0.0, 0.0, -50.0], d, l);
    let across = Shape {
        axis: [1.0, 0.0, 0.0],
        ..round([-50.0, 0.0, 0.0], d, l)
    };
    let exact = 2.0 * PI * 100.0 * l - 2.0 / 3.0 * d.powi(3);
    let off = volume(&[upright, across]) / exact - 1.0;
    assert!(off.abs() < 0.002, "{off}");
}

#[test]
fn a_boss_that_stands_on_its_plate_is_one_body() {
    let plate = block([0.0; 3], [125.0, 47.0, 20.5]);
    let boss = round([31.25, 0.0, 20.5], 24.0, 10.0);
    let built = build(&[plate, boss]).unwrap();
    assert_eq!(built.looked.solid.bodies, 1);
    assert!(built.facts.is_empty(), "{:?}", built.facts);
}

#[test]
fn a_bore_leaves_no_lid() {
    let plate = block([0.0; 3], [60.0, 60.0, 10.0]);
    let bore = away(round([0.0; 3], 20.0, 10.0));
    let exact = 36_000.0 - PI * 1000.0;
    assert!((volume(&[plate, bore]) / exact - 1.0).abs() < 1e-6);
}

#[test]
fn what_does_nothing_or_does_not_touch_is_told() {
    let plate = block([0.0; 3], [60.0, 60.0, 10.0]);
    let inside = block([0.0, 0.0, 2.0], [6.0, 6.0, 6.0]);
    let beside = block([200.0, 0.0, 0.0], [6.0, 6.0, 6.0]);
    let facts = |shapes: &[Shape]| build(shapes).unwrap().facts;
    assert_eq!(
        facts(&[plate, inside]),
        [ShapeFact::AddsNothing { number: 2 }]
    );
    assert_eq!(
        facts(&[plate, away(beside)]),
        [ShapeFact::TakesNothing { number: 2 }]
    );
    assert_eq!(facts(&[plate, beside]), [ShapeFact::Apart { bodies: 2 }]);
}

#[test]
fn what_cannot_be_built_says_which_solid_and_why() {
    let plate = block([0.0; 3], [60.0, 60.0, 10.0]);
    let refused = |shapes: &[Shape]| build(shapes).unwrap_err();
    assert_eq!(refused(&[]), ShapeError::None);
    assert_eq!(
        refused(&[away(plate)]),
        ShapeError::TakesFirst { number: 1 }
    );
    assert_eq!(
        refused(&[plate, away(plate)]),
        ShapeError::NothingLeft { number: 2 }
    );
    let flat = round([0.0; 3], 20.0, 0.0);
    let which = "length";
    assert_eq!(
        refused(&[plate, flat]),
        ShapeError::Size { number: 2, which }
    );
    let nowhere = Shape {
        axis: [0.0; 3],
        ..plate
    };
    assert_eq!(refused(&[nowhere]), ShapeError::Axis { number: 1 });
    let (diameter, bore, length) = (mm(20.0), mm(20.0), mm(5.0));
    let form = Form::Tube {
        diameter,
        bore,
        length,
    };
    assert_eq!(
        refused(&[placed(form, [0.0; 3])]),
        ShapeError::Bore { number: 1 }
    );
    let thickness = mm(10.0);
    let form = Form::Ring {
        diameter,
        thickness,
    };
    assert_eq!(
        refused(&[placed(form, [0.0; 3])]),
        ShapeError::Bar { number: 1 }
    );
    let far = block([1e9, 0.0, 0.0], [1.0; 3]);
    assert_eq!(refused(&[far]), ShapeError::Place { number: 1 });
}

#[test]
fn the_same_shapes_give_the_same_mesh() {
    let mesh = || {
        build(&lever([0.3, -0.5, 0.8], 17.0, 1.0))
            .unwrap()
            .looked
            .mesh
    };
    assert_eq!(mesh(), mesh());
}

/// A lever along any axis: a tapered arm between two eyes, one of them bored; all of it turned and
/// grown together.
fn lever(axis: [f64; 3], turn_degrees: f64, grown: f64) -> Vec<Shape> {
    let size = [30.0, 14.0, 120.0].map(|side| mm(side * grown));
    let cone = Form::Cone {
        diameter: mm(26.0 * grown),
        top: mm(18.0 * grown),
        length: mm(120.0 * grown),
    };
    let ball = Form::Ball {
        diameter: mm(40.0 * grown),
    };
    let length = (axis.iter().map(|x| x * x).sum::<f64>()).sqrt();
    let end = axis.map(|x| x / length * 120.0 * grown);
    let bore = Form::Cylinder {
        diameter: mm(12.0 * grown),
        length: mm(60.0 * grown),
    };
    let start = axis.map(|x| x / length * -30.0 * grown);
    let along = |form, at| Shape {
        axis,
        turn_degrees,
        ..placed(form, at)
    };
    vec![
        along(Form::Block { size }, [0.0; 3]),
        along(cone, [0.0; 3]),
        along(ball, end),
        along(ball, [0.0; 3]),
        away(along(bore, start)),
    ]
}

fn axis() -> impl Strategy<Value = [f64; 3]> {
    let whole = prop_oneof![
        Just([1.0, 0.0, 0.0]),
        Just([0.0, -1.0, 0.0]),
        Just([0.0, 0.0, -1.0])
    ];
    let any = [-1.0..1.0f64, -1.0..1.0f64, 0.1..1.0f64];
    prop_oneof![whole, any]
}

proptest! {
    #![proptest_config(Config::with_cases(12))]

    #[test]
    fn turning_keeps_the_volume(axis in axis(), turn in 0.0..360.0f64) {
        let upright = volume(&lever([0.0, 0.0, 1.0], 0.0, 1.0));
        let turned = volume(&lever(axis, turn, 1.0));
        // The flats of the bore meet the ball elsewhere when they are turned.
        assert!((turned / upright - 1.0).abs() < 2e-4, "{turned} {upright}");
    }

    #[test]
    fn the_volume_grows_by_the_cube(grown in 0.2..20.0f64) {
        let one = volume(&lever([0.0, 0.0, 1.0], 0.0, 1.0));
        let other = volume(&lever([0.0, 0.0, 1.0], 0.0, grown));
        // The number of flats follows the size.
        assert!((other / (one * grown.powi(3)) - 1.0).abs() < 2e-3, "{other} {one}");
    }

    #[test]
    fn the_order_of_what_is_added_does_not_matter(
        turn in 0.0..90.0f64,
        order in Just(vec![0, 1, 2, 3]).prop_shuffle(),
    ) {
        let shapes = lever([0.2, 0.5, 1.0], turn, 1.0);
        let mut mixed: Vec<Shape> = order.iter().map(|place| shapes[*place]).collect();
        mixed.push(shapes[4]);
        let (plain, mixed) = (volume(&shapes), volume(&mixed));
        assert!((mixed / plain - 1.0).abs() < 1e-9, "{mixed} {plain}");
    }
}
