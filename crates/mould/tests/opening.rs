//! Three marks on the clock, the crust of burnt sand, and what they have to agree with.

#![allow(clippy::expect_used, reason = "a helper that fails fails its test")]

use measure::flow::Duration;
use measure::heat::{HeatDrawing, HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::Length;
use measure::matter::{Density, Mass};
use mould::cooling::{Poured, cooling};
use mould::freezing::{FreezingHeat, freezing_time, mould_constant};
use mould::heat_soak::{burnt_depth, soak_depth};
use mould::opening::{HAND, Marks, marks, opening_row, opening_rows};
use proptest::prelude::{prop_assert, proptest};

/// Grey iron in 40 kg of sand.
fn iron(mass_kg: f64, modulus_mm: f64) -> Poured {
    Poured {
        modulus: Length::from_mm(modulus_mm),
        mass: Mass::from_kg(mass_kg),
        density: Density::from_g_per_cm3(6.9),
        latent: HeatPerMass::from_kj_per_kg(230.0),
        liquid_heat: SpecificHeat::from_j_per_kg_k(870.0),
        solid_heat: SpecificHeat::from_j_per_kg_k(650.0),
        superheat: TemperatureDifference::from_kelvin(150.0),
        solidus: Temperature::from_celsius(1130.0),
        sand: HeatDrawing::from_w_rts_per_m2_k(1080.0),
        sand_mass: Mass::from_kg(40.0),
    }
}

/// Modulus of a ball of grey iron, a third of its radius.
fn ball_modulus_mm(mass_kg: f64) -> f64 {
    (mass_kg / 6.9e-6 * 3.0 / (4.0 * std::f64::consts::PI)).cbrt() / 3.0
}

fn marks_of(poured: &Poured, family: &str) -> Marks {
    marks(poured, opening_row(family).expect("a family of the table")).expect("cold in time")
}

fn freezes(poured: &Poured) -> Duration {
    let constant = mould_constant(&FreezingHeat {
        density: poured.density,
        latent: poured.latent,
        liquid_heat: poured.liquid_heat,
        superheat: poured.superheat,
        solidus: poured.solidus,
        sand: poured.sand,
    });
    freezing_time(constant, poured.modulus)
}

#[test]
fn a_flat_casting_freezes_when_the_law_of_the_modulus_says() {
    for modulus_mm in [1.0, 5.0, 25.0] {
        let flat = Poured {
            mass: Mass::from_kg(1e6),
            sand_mass: Mass::from_kg(1e8),
            superheat: TemperatureDifference::ZERO,
            ..iron(1.0, modulus_mm)
        };
        let followed = cooling(
            &flat,
            flat.solidus - TemperatureDifference::from_kelvin(1.0),
        );
        let ratio = followed.frozen.expect("frozen") / freezes(&flat);
        assert!((ratio - 1.0).abs() < 0.05, "{modulus_mm} mm: {ratio}");
    }
}

#[test]
fn small_iron_may_be_opened_in_a_quarter_of_an_hour_and_chunky_iron_within_the_hours() {
    // What one thread of founders keeps to: 15 to 20 min small, 60 to 90 min chunky, and 3 h to be
    // below 480 °C for certain.
    let small = marks_of(&iron(1.5, 4.0), "iron").open.as_min();
    assert!((8.0..=25.0).contains(&small), "{small}");
    let chunky = marks_of(&iron(4.0, 12.0), "iron").open.as_min();
    assert!((40.0..=180.0).contains(&chunky), "{chunky}");
}

#[test]
fn iron_is_opened_below_the_habit_of_480_degrees() {
    let row = opening_row("iron").expect("iron");
    assert!(row.open <= Temperature::from_celsius(480.0));
    let poured = iron(4.0, 8.0);
    let marks = marks_of(&poured, "iron");
    let followed = cooling(&poured, HAND);
    let at = |mark: Duration| followed.casting.iter().find(|(time, _)| *time >= mark);
    let (_, opened) = at(marks.open).expect("followed so far");
    assert!(*opened <= Temperature::from_celsius(480.5), "{opened:?}");
    let (_, handled) = at(marks.handle).expect("followed so far");
    assert!(*handled <= HAND + TemperatureDifference::from_kelvin(0.5));
}

#[test]
fn uneven_iron_stays_in_its_sand_for_the_longer_habit() {
    // The thread's long habit is three hours; a wheel of 4 kg with a hub of 8 mm modulus.
    let row = opening_row("iron").expect("iron");
    let wheel = Poured {
        sand: HeatDrawing::from_w_rts_per_m2_k(900.0),
        ..iron(5.5, 7.7)
    };
    let [even, uneven] = [row.clone(), row.for_uneven()]
        .map(|row| marks(&wheel, &row).expect("cold in time").open.as_min());
    assert!(uneven > 1.5 * even, "{even} {uneven}");
    assert!((90.0..=180.0).contains(&uneven), "{uneven}");
    let bronze = opening_row("copper").expect("bronze");
    assert_eq!(bronze.for_uneven(), *bronze);
}

#[test]
fn every_family_waits_until_it_is_frozen_and_opens_below_its_red() {
    assert_eq!(opening_rows().len(), 5);
    for row in opening_rows() {
        assert!(row.leave > row.open && row.open > HAND, "{}", row.name);
        assert!(row.open <= Temperature::from_celsius(480.0), "{}", row.name);
    }
}

#[test]
fn sand_is_burnt_as_deep_as_a_held_face_soaks_it() {
    // A face that stays at its solidus for ten minutes, being far from frozen.
    let held = Poured {
        mass: Mass::from_kg(1e6),
        sand_mass: Mass::from_kg(1e8),
        superheat: TemperatureDifference::ZERO,
        ..iron(1.0, 400.0)
    };
    let mark = Temperature::from_celsius(600.0);
    let followed = cooling(&held, held.solidus);
    let (time, _) = *followed.casting.last().expect("followed");
    let ratio = followed.sand_over(mark) / soak_depth(held.solidus, mark, held.sand, time);
    assert!((ratio - 1.0).abs() < 0.1, "{ratio} after {time:?}");
}

#[test]
fn what_is_no_amount_ends_all_the_same() {
    for modulus_mm in [0.0, f64::NAN, 1e-12, 1e12] {
        let followed = cooling(&iron(4.0, modulus_mm), HAND);
        assert!(!followed.casting.is_empty());
    }
    let without_sand = Poured {
        sand_mass: Mass::ZERO,
        ..iron(4.0, 5.0)
    };
    assert!(cooling(&without_sand, HAND).frozen.is_some());
}

proptest! {
    #[test]
    fn marks_stand_in_order_thick_after_thin_dry_after_wet(
        mass_kg in 0.1f64..10.0,
        share_of_ball in 0.1f64..1.0,
        thicker in 1.0f64..2.0,
        sand in 700.0f64..1500.0,
        thirstier in 1.0f64..1.6,
    ) {
        let thirst = HeatDrawing::from_w_rts_per_m2_k;
        // No body of so much metal has a greater modulus than the ball.
        let most_mm = ball_modulus_mm(mass_kg);
        let thicker = thicker.min(1.0 / share_of_ball);
        let poured = Poured { sand: thirst(sand), ..iron(mass_kg, most_mm * share_of_ball) };
        let now = marks_of(&poured, "iron");
        prop_assert!(Duration::ZERO < now.leave);
        prop_assert!(now.leave <= now.open && now.open <= now.handle);
        let modulus = poured.modulus * thicker;
        let thick = marks_of(&Poured { modulus, ..poured }, "iron");
        prop_assert!(thick.leave >= now.leave * 0.999 && thick.open >= now.open * 0.999);
        prop_assert!(thick.handle >= now.handle * 0.999);
        let wet = marks_of(&Poured { sand: thirst(sand * thirstier), ..poured }, "iron");
        prop_assert!(wet.leave <= now.leave * 1.001 && wet.open <= now.open * 1.001);
        prop_assert!(wet.handle <= now.handle * 1.001);
        let mark = Temperature::from_celsius(600.0);
        let thin = burnt_depth(&poured, mark);
        let thick = burnt_depth(&Poured { modulus, ..poured }, mark);
        prop_assert!(thick >= thin * 0.98, "{thin:?} {thick:?}");
    }
}
