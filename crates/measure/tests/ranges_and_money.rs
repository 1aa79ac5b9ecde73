//! Figures with a margin, and money, as people type them.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::flow::Duration;
use measure::heat::Temperature;
use measure::length::{Length, Volume};
use measure::matter::{Density, Mass, Pressure};
use measure::money::{Money, MoneyError, Price};
use measure::text::Written;
use measure::text::ranged::Ranged;
use proptest::prelude::{prop_assert, proptest};

fn near(value: f64, wanted: f64) {
    assert!(
        (value - wanted).abs() <= 1e-9 * wanted.abs().max(1.0),
        "{value} is not {wanted}"
    );
}

fn ends<Q: Written>(text: &str) -> [f64; 3] {
    let band = text.parse::<Ranged<Q>>().unwrap().band;
    [band.low().si(), band.likely().si(), band.high().si()]
}

fn all_near(got: [f64; 3], wanted: [f64; 3]) {
    got.iter()
        .zip(wanted)
        .for_each(|(got, wanted)| near(*got, wanted));
}

#[test]
fn ranges_in_all_their_spellings() {
    for text in [
        "3 to 5 mm",
        "3 mm to 5 mm",
        "3..5 mm",
        "3–5 mm",
        "4 mm ± 1 mm",
        "4 ± 1 mm",
        "4 mm +/- 1 mm",
        "4 mm ± 25 %",
        "3 to 5 mm, likely 4",
        "0.3 cm to 5 mm",
    ] {
        all_near(ends::<Length>(text), [0.003, 0.004, 0.005]);
    }
    all_near(ends::<Length>("4 mm"), [0.004; 3]);
    all_near(
        ends::<Length>("1/8 to 3/16 in"),
        [0.003_175, 0.003_968_75, 0.004_762_5],
    );
    all_near(ends::<Volume>("10 to 12 cm3"), [1e-5, 1.1e-5, 1.2e-5]);
    all_near(
        ends::<Density>("2.4 to 2.6 g/cm3"),
        [2400.0, 2500.0, 2600.0],
    );
    all_near(ends::<Density>("2.5 g/cm3 ± 0.1"), [2400.0, 2500.0, 2600.0]);
    all_near(
        ends::<Mass>("4 to 6 lb 4 oz"),
        [4.0, 5.125, 6.25].map(|lb| lb * 0.453_592_37),
    );
    all_near(ends::<Duration>("1 to 2 min"), [60.0, 90.0, 120.0]);
    // A margin of a temperature is a difference, and zero of the scale is no floor.
    all_near(
        ends::<Temperature>("710 C ± 10 C"),
        [973.15, 983.15, 993.15],
    );
    all_near(ends::<Temperature>("1310 F ± 18"), [973.15, 983.15, 993.15]);
    // A per cent is of the degrees typed, whichever the scale, as IEC 60584-1 has it for
    // thermocouples (0.0075 |t| in °C, from memory).
    all_near(ends::<Temperature>("20 C ± 2 %"), [292.75, 293.15, 293.55]);
    all_near(
        ends::<Temperature>("-20 C ± 10 %"),
        [251.15, 253.15, 255.15],
    );
    all_near(ends::<Temperature>("300 K ± 1 %"), [297.0, 300.0, 303.0]);
    all_near(
        ends::<Temperature>("212 F ± 10 %"),
        [361.372_222, 373.15, 384.927_778],
    );
    // Less than none of a mass there is not.
    all_near(ends::<Mass>("1 kg ± 2 kg"), [0.0, 1.0, 3.0]);
}

#[test]
fn kitchen_measures_and_pressures() {
    near(ends::<Volume>("1.5 cups")[1], 1.5 * 236.588_236_5e-6);
    near(ends::<Volume>("2 tsp")[1], 2.0 * 4.928_921_593_75e-6);
    near(ends::<Volume>("1 imp pt")[1], 568.261_25e-6);
    near(ends::<Pressure>("350 kPa")[1], 350e3);
    near(ends::<Pressure>("10 cmH2O")[1], 980.665);
}

#[test]
fn what_cannot_be_a_range_is_refused() {
    for text in [
        "3 to mm",
        "to 5 mm",
        "3 to 5",
        "± 2 mm",
        "3 mm ± 2 kg",
        "3 kg to 5 mm",
        "",
    ] {
        assert!(text.parse::<Ranged<Length>>().is_err(), "{text}");
    }
}

#[test]
fn money_in_any_currency() {
    for (text, amount, currency) in [
        ("12.50 EUR", 12.5, "EUR"),
        ("$3", 3.0, "$"),
        ("KSh 850", 850.0, "KSh"),
        ("0,80 €", 0.8, "€"),
        ("1,250.00 USD", 1250.0, "USD"),
    ] {
        let money: Money = text.parse().unwrap();
        near(money.amount, amount);
        assert_eq!(money.currency, currency);
    }
    let price = Price::read::<Mass>("$1.10/lb").unwrap();
    near(price.of(Mass::from_kg(1.0)).amount, 1.1 / 0.453_592_37);
    let price = Price::read::<Duration>("KSh 300 per hour").unwrap();
    near(price.of(Duration::from_min(30.0)).amount, 150.0);
    assert_eq!(price.of(Duration::from_min(30.0)).to_string(), "150.00 KSh");
    for text in ["12", "EUR", "-3 EUR", "12 %", ""] {
        assert!(text.parse::<Money>().is_err(), "{text}");
    }
    assert!(Price::read::<Mass>("3 EUR").is_err());
    assert!(Price::read::<Mass>("3 EUR/mm").is_err());
    let (euro, dollar): (Money, Money) = ("3 EUR".parse().unwrap(), "3 USD".parse().unwrap());
    assert!(matches!(
        euro.plus(&dollar),
        Err(MoneyError::TwoCurrencies { .. })
    ));
    near(euro.plus(&euro).unwrap().amount, 6.0);
}

proptest! {
    /// A range holds its ends, and its likely value lies between them.
    #[test]
    fn any_range_is_in_order(a in 0.0_f64..1e4, b in 0.0_f64..1e4) {
        let [low, likely, high] = ends::<Length>(&format!("{a} to {b} mm"));
        prop_assert!(low <= likely && likely <= high);
        prop_assert!((low - a.min(b) * 1e-3).abs() < 1e-9 && (high - a.max(b) * 1e-3).abs() < 1e-9);
    }

    #[test]
    fn any_text_is_a_range_or_refused(text in "\\PC{0,24}") {
        if let Ok(ranged) = text.parse::<Ranged<Length>>() {
            prop_assert!(ranged.band.low() <= ranged.band.high());
        }
        let _ = text.parse::<Money>();
    }
}
