//! Tolerance, machining stock and draught: tables that are whole, steady and keep to their rules.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::length::Length;
use measure::source::source;
use pattern::cast_metal::CastMetal;
use pattern::draft::{Judged, Side, Skin, angle, by_height, by_skin, jobbing, judge, wanted};
use pattern::machining_stock::{
    FaceUp, Faces, Feature, StockError, StockGrade, older_rule, raw_size, required, usual_grades,
};
use pattern::tolerance::{Grade, Moulding, ToleranceError, grades, linear, wall_grade};
use proptest::prelude::{Just, prop_assert, prop_oneof, proptest};

fn mm(amount: f64) -> Length {
    Length::from_mm(amount)
}

fn grade(number: u8) -> Grade {
    Grade::new(number).unwrap()
}

fn stock_grade(letter: &str) -> StockGrade {
    letter.parse().unwrap()
}

#[test]
fn sizes_and_grades_of_the_standard() {
    let band = |size, number| linear(mm(size), grade(number)).unwrap().value.as_mm();
    assert_eq!(band(125.0, 13), 10.0);
    assert_eq!(band(10.0, 12), 4.2);
    assert_eq!(band(10.1, 12), 4.4);
    assert_eq!(band(400.0, 16), 25.0);
    assert_eq!(band(2500.0, 7), 2.6);
}

#[test]
fn a_row_from_memory_says_so() {
    let of = |size, number| linear(mm(size), grade(number)).unwrap().source;
    assert_eq!(of(500.0, 13), "iso-8062-3-pages");
    assert_eq!(of(500.0, 14), "iso-8062-3-memory");
    assert_eq!(of(700.0, 10), "iso-8062-3-memory");
    for key in ["iso-8062-3-pages", "iso-8062-3-memory"] {
        assert!(source(key).is_some());
    }
}

#[test]
fn what_the_standard_does_not_have_is_refused() {
    let of = |size, number| linear(mm(size), grade(number));
    assert!(matches!(
        of(8.0, 13),
        Err(ToleranceError::NotAtThisSize { .. })
    ));
    assert!(matches!(
        of(800.0, 4),
        Err(ToleranceError::NotAtThisSize { .. })
    ));
    assert!(matches!(
        of(2501.0, 10),
        Err(ToleranceError::TooLarge { .. })
    ));
    assert!(Grade::new(0).is_err() && Grade::new(17).is_err());
    assert!(wall_grade(grade(16)).is_err());
    assert_eq!(wall_grade(grade(12)).unwrap(), grade(13));
}

#[test]
fn hand_moulding_holds_finer_grades_on_small_sizes() {
    let of = |metal, size| {
        let grades = grades(Moulding::ClayBonded, metal, mm(size)).unwrap();
        (grades.fine.number(), grades.coarse.number())
    };
    assert_eq!(of(CastMetal::Aluminium, 140.0), (11, 13));
    assert_eq!(of(CastMetal::Bronze, 140.0), (13, 15));
    assert_eq!(of(CastMetal::Bronze, 25.0), (12, 14));
    assert_eq!(of(CastMetal::Bronze, 16.0), (11, 13));
    assert_eq!(of(CastMetal::Bronze, 10.0), (10, 12));
    assert!(linear(mm(12.0), grade(13)).is_err());
    // Whatever grade is named, the table has its figure; only between 10 and 16 mm it stops short.
    for metal in CastMetal::ALL {
        for moulding in [Moulding::ClayBonded, Moulding::ChemicallyBonded] {
            for size in [5.0, 20.0, 140.0, 900.0, 2400.0] {
                let named = grades(moulding, metal, mm(size)).unwrap();
                assert!(source(&named.source).is_some());
                for one in [named.fine, named.coarse] {
                    assert!(linear(mm(size), one).is_ok(), "{metal} {size} {one}");
                }
            }
        }
    }
}

#[test]
fn a_face_under_the_cope_gets_more_than_one_in_the_drag() {
    for size in [30.0, 50.0, 90.0, 125.0, 200.0, 300.0, 500.0, 900.0] {
        for letter in ["G", "H", "J"] {
            let of = |face| required(mm(size), stock_grade(letter), face).unwrap().value;
            assert!(of(FaceUp::Cope) > of(FaceUp::DragOrSide), "{size} {letter}");
        }
    }
    let none = required(mm(90.0), stock_grade("K"), FaceUp::Cope);
    assert_eq!(none.unwrap_err(), StockError::NoCoarser);
}

#[test]
fn stock_of_the_standard_with_the_older_rule_beside_it() {
    let of = |size, letter| {
        let stock = required(mm(size), stock_grade(letter), FaceUp::DragOrSide).unwrap();
        assert!(source(&stock.source).is_some());
        stock.value.as_mm()
    };
    assert_eq!(
        (of(125.0, "F"), of(125.0, "H"), of(125.0, "K")),
        (1.5, 3.0, 6.0)
    );
    assert_eq!((of(40.0, "A"), of(1000.0, "K")), (0.1, 14.0));
    assert!(required(mm(1001.0), stock_grade("F"), FaceUp::DragOrSide).is_err());
    assert!("I".parse::<StockGrade>().is_err());
    let usual = usual_grades(CastMetal::Bronze).unwrap();
    assert_eq!(usual, [stock_grade("F"), stock_grade("H")]);
    assert!(
        CastMetal::ALL
            .into_iter()
            .all(|metal| usual_grades(metal).is_some())
    );
    let older = older_rule(CastMetal::GreyIron).unwrap();
    assert!((older.value.low().as_mm() - 1.5875).abs() < 1e-9);
    assert!((older.value.high().as_mm() - 3.175).abs() < 1e-9);
    assert!(source(&older.source).is_some() && older_rule(CastMetal::Aluminium).is_none());
}

#[test]
fn raw_sizes_outside_and_inside() {
    let raw = |faces, feature| raw_size(mm(100.0), mm(2.0), mm(4.4), faces, feature).as_mm();
    assert!((raw(Faces::Both, Feature::Outside) - 106.2).abs() < 1e-9);
    assert!((raw(Faces::One, Feature::Outside) - 104.2).abs() < 1e-9);
    assert!((raw(Faces::Both, Feature::Inside) - 93.8).abs() < 1e-9);
}

#[test]
fn a_wall_of_sixty_asks_for_the_table_and_two_degrees_pass() {
    let depth = mm(60.0);
    for side in [Side::Outside, Side::Inside] {
        let asked = wanted(depth, Skin::Printed, side).unwrap();
        assert!(asked >= jobbing(depth).value);
        assert!(asked >= depth * by_skin(depth, Skin::Wood, side).unwrap().value);
        let of_degrees = |degrees: f64| depth * degrees.to_radians().tan();
        let judged = |degrees| judge(of_degrees(degrees), depth, Skin::Printed, side).unwrap();
        assert_eq!(judged(2.0), Judged::Enough);
        assert_eq!(judged(0.0), Judged::TooLittle);
    }
    let tight = judge(mm(1.1), depth, Skin::Wood, Side::Outside).unwrap();
    assert_eq!(tight, Judged::Tight);
}

#[test]
fn the_jobbing_table_is_given_back_and_runs_on() {
    let rows = [
        (1.0, 0.030),
        (2.0, 0.042),
        (3.0, 0.052),
        (4.0, 0.060),
        (5.0, 0.068),
        (10.0, 0.096),
    ];
    for (depth, draft) in rows {
        let asked = jobbing(Length::from_inch(depth));
        assert!((asked.value.as_inch() - draft).abs() < 1e-12, "{depth}");
        assert!(source(&asked.source).is_some());
        // The root law fits the table within 1.5 per cent.
        assert!((0.030 * depth.sqrt() / draft - 1.0).abs() < 0.015);
    }
    assert_eq!(jobbing(mm(5.0)).value, jobbing(mm(25.4)).value);
    let far = jobbing(Length::from_inch(40.0)).value.as_inch();
    assert!((far - 0.192).abs() < 1e-9);
}

#[test]
fn printed_patterns_take_the_column_of_wood() {
    for depth in [10.0, 40.0, 90.0, 150.0, 700.0] {
        for side in [Side::Outside, Side::Inside] {
            let of = |skin| by_skin(mm(depth), skin, side).unwrap();
            assert_eq!(of(Skin::Printed), of(Skin::Wood));
            assert!(of(Skin::Wood).value >= of(Skin::MetalOrPlastic).value);
        }
    }
    assert!(wanted(mm(801.0), Skin::Wood, Side::Inside).is_err());
}

#[test]
fn the_standard_counts_on_by_height() {
    let of = |height, moulding| by_height(mm(height), moulding).value.as_mm();
    assert_eq!(of(30.0, Moulding::ClayBonded), 1.0);
    assert_eq!(of(60.0, Moulding::ClayBonded), 2.0);
    assert_eq!(of(180.0, Moulding::ChemicallyBonded), 2.5);
    assert_eq!(of(251.0, Moulding::ClayBonded), 4.5);
    assert_eq!(of(400.0, Moulding::ClayBonded), 4.5);
    assert_eq!(of(401.0, Moulding::ClayBonded), 5.5);
    assert!((angle(mm(2.0), mm(60.0)) - 1.909).abs() < 0.001);
}

proptest! {
    #[test]
    fn a_larger_size_or_a_coarser_grade_never_has_less(
        size in 1.0f64..1500.0, more in 0.0f64..500.0, number in 10u8..14,
    ) {
        let of = |size, number| linear(mm(size), grade(number)).map(|band| band.value);
        if let (Ok(small), Ok(large)) = (of(size, number), of(size + more, number)) {
            prop_assert!(small <= large);
        }
        if let (Ok(fine), Ok(coarse)) = (of(size, number), of(size, number + 1)) {
            prop_assert!(fine < coarse);
        }
        let letters = ["A", "C", "F", "H", "K"];
        let stock = |size: f64, letter| {
            required(mm(size.min(1000.0)), stock_grade(letter), FaceUp::DragOrSide).unwrap().value
        };
        for pair in letters.windows(2) {
            prop_assert!(stock(size, pair[0]) <= stock(size, pair[1]));
            prop_assert!(stock(size, pair[0]) <= stock(size + more, pair[0]));
        }
    }

    #[test]
    fn what_is_machined_off_is_there_at_the_worst(
        size in 5.0f64..400.0, stock in 0.0f64..10.0, tolerance in 0.0f64..10.0,
    ) {
        let raw = |feature| {
            raw_size(mm(size), mm(stock), mm(tolerance), Faces::Both, feature).as_mm()
        };
        let least = raw(Feature::Outside) - tolerance / 2.0 - 2.0 * stock;
        let most = raw(Feature::Inside) + tolerance / 2.0 + 2.0 * stock;
        prop_assert!((least - size).abs() < 1e-9 && (most - size).abs() < 1e-9);
    }

    #[test]
    fn draught_grows_with_depth_and_its_angle_falls(
        depth in 26.0f64..700.0, more in 0.1f64..90.0,
        skin in prop_oneof![Just(Skin::Wood), Just(Skin::MetalOrPlastic), Just(Skin::Printed)],
    ) {
        let (near, far) = (mm(depth), mm(depth + more));
        prop_assert!(jobbing(near).value < jobbing(far).value);
        prop_assert!(angle(jobbing(near).value, near) > angle(jobbing(far).value, far));
        let taper = |depth| by_skin(depth, skin, Side::Inside).unwrap().value;
        prop_assert!(taper(near) >= taper(far));
        prop_assert!(taper(near) >= by_skin(near, skin, Side::Outside).unwrap().value);
        let asked = wanted(near, skin, Side::Inside).unwrap();
        prop_assert!(judge(asked, near, skin, Side::Inside).unwrap() == Judged::Enough);
    }
}
