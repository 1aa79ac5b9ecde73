//! What people type, and what it means.
#![allow(clippy::panic)] // a helper of the tests below says which text failed

use measure::flow::Duration;
use measure::heat::{Temperature, TemperatureDifference};
use measure::length::{Area, Length, Volume};
use measure::matter::{Density, Mass};
use measure::share::{Contraction, Share};
use measure::text::{System, TextError, Typed, Written, rounded, show, show_in};
use proptest::prelude::{any, prop_assert, proptest};

fn read<Q: Written>(text: &str) -> Q {
    match text.parse::<Typed<Q>>() {
        Ok(typed) => typed.value,
        Err(error) => panic!("{text}: {error}"),
    }
}

fn near(value: f64, wanted: f64) {
    assert!(
        (value - wanted).abs() <= 1e-9 * wanted.abs().max(1.0),
        "{value} is not {wanted}"
    );
}

#[test]
fn lengths_in_all_their_spellings() {
    for (text, mm) in [
        ("3/16\"", 4.7625),
        ("1 1/2 in", 38.1),
        ("1-1/2in", 38.1),
        ("1½ in", 38.1),
        ("½\"", 12.7),
        ("125mm", 125.0),
        ("0,8 cm", 8.0),
        ("4' 6\"", 1371.6),
        ("4 ft 6 in", 1371.6),
        ("4ft6in", 1371.6),
        ("250 um", 0.25),
        ("1,234.5 mm", 1234.5),
        ("1.234,5 mm", 1234.5),
        ("1,234,567 um", 1234.567),
        ("  12 MM ", 12.0),
        ("0,125 in", 3.175),
    ] {
        near(read::<Length>(text).as_mm(), mm);
    }
}

/// 4 lb 6 oz = 1.984 kg and 900 °F = 482 °C are the table's own figures; 950 °F is 510 °C.
#[test]
fn masses_temperatures_and_the_rest() {
    near(read::<Mass>("4 lb 6 oz").as_kg(), 4.375 * 0.453_592_37);
    near(read::<Mass>("0,8 kg").as_kg(), 0.8);
    near(read::<Mass>("4lb6oz").as_kg(), 4.375 * 0.453_592_37);
    near(read::<Temperature>("950F").as_celsius(), 510.0);
    near(read::<Temperature>("900 °F").as_celsius(), 4340.0 / 9.0);
    near(read::<Temperature>("-40 C").as_fahrenheit(), -40.0);
    near(read::<TemperatureDifference>("108 F").as_kelvin(), 60.0);
    near(read::<Volume>("500 cm3").as_litre(), 0.5);
    near(read::<Volume>("2 cu in").as_in3(), 2.0);
    near(read::<Area>("1 sq in").as_mm2(), 645.16);
    near(
        read::<Density>("100 lb/ft3").as_kg_per_m3(),
        1_601.846_337_396_014,
    );
    near(read::<Duration>("1 min 30 s").as_s(), 90.0);
}

#[test]
fn what_is_refused_says_what_to_do() {
    let refused = |text: &str| {
        text.parse::<Typed<Length>>()
            .map(|typed| typed.value)
            .unwrap_err()
    };
    assert!(matches!(refused(""), TextError::Empty { .. }));
    assert!(matches!(refused("12"), TextError::NoUnit { .. }));
    assert!(matches!(refused("12 kg"), TextError::UnknownUnit { .. }));
    assert!(matches!(refused("twelve mm"), TextError::NoNumber { .. }));
    assert!(matches!(refused("1,234 mm"), TextError::TwoReadings { .. }));
    assert!(matches!(refused("3/0 mm"), TextError::Impossible { .. }));
    assert!(matches!(refused("-3 mm"), TextError::Impossible { .. }));
    assert!(
        refused("12 kg")
            .to_string()
            .contains("mm, cm, m, um, in, ft")
    );
    assert!(
        "8 %"
            .parse::<Share>()
            .unwrap_err()
            .to_string()
            .contains("of what")
    );
    assert!("140 %".parse::<Contraction>().is_err());
}

/// 1/8 in per foot is 1.042 %, 1 in 75 is 1.333 %, 5/32 in per foot 1.302 %.
#[test]
fn contraction_as_the_trade_says_it() {
    for (text, per_cent) in [
        ("1/8 per ft", 100.0 / 96.0),
        ("5/32 per ft", 500.0 / 384.0),
        ("1 in 75", 100.0 / 75.0),
        ("1,3 %", 1.3),
        ("3/16 in/ft", 1.5625),
    ] {
        near(text.parse::<Contraction>().unwrap().ratio * 100.0, per_cent);
    }
    assert_eq!(
        "1 in 75".parse::<Contraction>().unwrap().given_back(),
        "1 in 75 (1.33 %)"
    );
    let share: Share = "4.1 % of wet mass".parse().unwrap();
    near(share.ratio, 0.041);
    assert_eq!(share.of, "wet mass");
}

#[test]
fn given_back_as_typed_with_the_other_system_beside() {
    let given = |text: &str| text.parse::<Typed<Length>>().unwrap().given_back();
    assert_eq!(given("3/16\""), "3/16\" (4.76 mm)");
    assert_eq!(given("300 mm"), "300 mm (11.8 in)");
    assert_eq!(
        "4 lb 6 oz".parse::<Typed<Mass>>().unwrap().given_back(),
        "4 lb 6 oz (1.98 kg)"
    );
    assert_eq!(
        "950F".parse::<Typed<Temperature>>().unwrap().given_back(),
        "950F (510 C)"
    );
    assert_eq!(
        "12 s".parse::<Typed<Duration>>().unwrap().given_back(),
        "12 s"
    );
}

#[test]
fn numbers_are_rounded_to_figures() {
    assert_eq!(rounded(1234.6, 3), "1230");
    assert_eq!(rounded(0.012345, 3), "0.0123");
    assert_eq!(rounded(2.0, 3), "2");
    assert_eq!(rounded(99.96, 3), "100");
    assert_eq!(show(Mass::from_g(240.4), System::Metric).unwrap(), "240 g");
}

fn there_and_back<Q: Written>(amount: f64) -> bool {
    Q::UNITS.iter().all(|unit| {
        let meant = Q::from_si(amount * unit.si + unit.offset);
        let back: Q = read(&show_in(meant, unit, 12));
        (back.si() - meant.si()).abs() <= 1e-9 * meant.si().abs().max(unit.si)
    })
}

proptest! {
    #[test]
    fn text_and_back(amount in 0.001f64..100_000.0) {
        prop_assert!(there_and_back::<Length>(amount));
        prop_assert!(there_and_back::<Area>(amount));
        prop_assert!(there_and_back::<Volume>(amount));
        prop_assert!(there_and_back::<Mass>(amount));
        prop_assert!(there_and_back::<Density>(amount));
        prop_assert!(there_and_back::<Duration>(amount));
        prop_assert!(there_and_back::<Temperature>(amount));
        prop_assert!(there_and_back::<TemperatureDifference>(amount));
    }

    #[test]
    fn fractions_and_back(whole in 0u32..40, top in 1u32..64, bottom in 1u32..65) {
        let meant = f64::from(whole) + f64::from(top) / f64::from(bottom);
        let read: Length = read(&format!("{whole} {top}/{bottom} in"));
        prop_assert!((read.as_inch() - meant).abs() < 1e-12 * meant.max(1.0));
    }

    #[test]
    fn any_text_is_answered(text in any::<String>()) {
        let _ = text.parse::<Typed<Length>>();
        let _ = text.parse::<Typed<Temperature>>();
        let _ = text.parse::<Share>();
        let _ = text.parse::<Contraction>();
    }
}
