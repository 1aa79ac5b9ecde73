//! Charge, crucible, melt, mass, shrinkage and pouring temperature: what they answer.

use std::f64::consts::PI;

use measure::band::Band;
use measure::heat::{Temperature, TemperatureDifference};
use measure::length::{Length, Volume};
use measure::matter::{Density, Mass};
use metal::alloys::{all, named};
use metal::casting_mass::{casting_mass, pattern_mass, with_button};
use metal::charge::{Charge, ChargeError};
use metal::crucible::{Crucible, brim_volume, smallest_that_holds};
use metal::melt::{fuel_heat, heat_band};
use metal::pouring_temperature::{Section, pouring_band, superheat};
use metal::shrinkage::{feed_demand, feed_volume, solid_side, solid_volume};
use proptest::prelude::{prop_assert, proptest};

fn near(value: f64, wanted: f64, within: f64) {
    let off = (value - wanted).abs() / wanted.abs();
    assert!(off <= within, "{value} is not {wanted}");
}

fn kilograms(low: f64, likely: f64, high: f64) -> Band<Mass> {
    Band::new(
        Mass::from_kg(low),
        Mass::from_kg(likely),
        Mass::from_kg(high),
    )
}

#[test]
fn a_vice_jaw_in_gunmetal_weighs_what_it_should() {
    let gunmetal = named("gunmetal").unwrap();
    let jaw = Volume::from_cm3(12.5 * 4.7 * 2.05 + 2.0 * PI / 4.0 * 2.4 * 2.4);
    let mass = Band::exact(jaw).with(&gunmetal.density_solid.band, casting_mass);
    near(mass.likely().as_kg(), 1.14, 0.02);
}

#[test]
fn a_pattern_of_the_metal_itself_weighs_the_casting() {
    let density = Density::from_g_per_cm3(2.67);
    let mass = pattern_mass(Mass::from_g(300.0), density, density);
    near(mass.as_g(), 300.0, 1e-12);
    near(with_button(mass, 0.1).as_g(), 330.0, 1e-12);
}

#[test]
fn thin_walls_are_poured_hot_and_bosses_cool() {
    let aluminium = named("aluminium").unwrap();
    let at = |mm| pouring_band(aluminium, Length::from_mm(mm));
    assert_eq!(at(0.5), at(3.0));
    assert_eq!(at(3.0), aluminium.pouring_light.band);
    assert_eq!(at(10.0), at(40.0));
    assert_eq!(at(40.0), aluminium.pouring_heavy.band);
    near(at(6.5).likely().as_celsius(), 712.5, 1e-9);
    assert_eq!(Section::of(Length::from_mm(2.0)), Section::Light);
    assert_eq!(Section::of(Length::from_mm(6.0)), Section::Between);
    assert_eq!(Section::of(Length::from_mm(12.0)), Section::Heavy);
}

#[test]
fn superheat_is_counted_from_the_liquidus() {
    let of = |pouring, liquidus| {
        let celsius = Temperature::from_celsius;
        superheat(celsius(pouring), celsius(liquidus)).as_kelvin()
    };
    near(of(700.0, 614.0), 86.0, 1e-9);
    assert!(of(600.0, 614.0) < 0.0);
}

#[test]
fn feeders_answer_for_liquid_and_freezing_not_for_the_solid() {
    let demand = feed_demand(0.052, 0.000_131, TemperatureDifference::from_kelvin(100.0));
    near(demand, 0.0651, 1e-9);
    let cold = feed_demand(0.052, 0.000_131, TemperatureDifference::from_kelvin(-20.0));
    near(cold, 0.052, 1e-12);
    near(
        feed_volume(Volume::from_cm3(200.0), demand).as_cm3(),
        13.02,
        1e-9,
    );
}

#[test]
fn metal_that_grows_asks_for_no_feed() {
    assert_eq!(feed_volume(Volume::from_cm3(200.0), -0.01), Volume::ZERO);
}

#[test]
fn a_cube_without_a_feeder_comes_out_smaller() {
    near(
        solid_volume(Volume::from_mm3(125_000.0), 0.04, 0.06).as_mm3(),
        112_800.0,
        1e-9,
    );
    let side = solid_side(Length::from_mm(50.0), 0.04, 0.06).as_mm();
    near(side.powi(3), 112_800.0, 1e-9);
}

#[test]
fn a_charge_covers_the_pour_the_pig_and_the_loss() {
    let loss = Band::new(0.04, 0.05, 0.06);
    let charge = Charge::for_pour(kilograms(1.8, 2.0, 2.2), 0.1, loss).unwrap();
    near(charge.charged.likely().as_kg(), 2.2 / 0.95, 1e-12);
    near(charge.charged.high().as_kg(), 2.42 / 0.94, 1e-12);
    let out = charge.poured.likely() + charge.pig.likely() + charge.lost.likely();
    near(out.as_kg(), charge.charged.likely().as_kg(), 1e-12);
}

#[test]
fn impossible_shares_are_refused() {
    let poured = kilograms(1.0, 1.0, 1.0);
    let all_lost = Charge::for_pour(poured, 0.1, Band::exact(1.0));
    assert_eq!(all_lost, Err(ChargeError::Loss { per_cent: 100.0 }));
    let no_number = Charge::for_pour(poured, 0.1, Band::exact(f64::NAN));
    assert!(no_number.is_err());
    let minus = Charge::for_pour(poured, -0.1, Band::exact(0.05));
    assert_eq!(minus, Err(ChargeError::Pig { per_cent: -10.0 }));
}

#[test]
fn the_vice_jaws_need_the_larger_crucible() {
    let gunmetal = named("gunmetal").unwrap();
    let liquid = gunmetal.density_liquid.band;
    let shop = [Crucible::marked("A6", 6.0), Crucible::marked("A4", 4.0)];
    near(brim_volume(1.0).as_litre(), 0.191, 0.003);
    near(shop[1].holds(&liquid).likely().as_kg(), 4.9, 0.01);
    let taken = smallest_that_holds(&shop, &kilograms(4.3, 4.7, 5.2), &liquid);
    assert_eq!(taken.map(|crucible| crucible.name.as_str()), Some("A6"));
    let small = smallest_that_holds(&shop, &kilograms(2.0, 2.2, 2.4), &liquid);
    assert_eq!(small.map(|crucible| crucible.name.as_str()), Some("A4"));
    assert_eq!(
        smallest_that_holds(&shop, &kilograms(7.0, 8.0, 9.0), &liquid),
        None
    );
}

#[test]
fn aluminium_takes_about_what_the_tables_say() {
    let aluminium = named("pure aluminium").unwrap();
    let heat = heat_band(
        aluminium,
        &kilograms(1.0, 1.0, 1.0),
        Temperature::from_celsius(25.0),
        &Band::exact(Temperature::from_celsius(700.0)),
    );
    near(heat.likely().as_kj(), 1110.0, 0.02);
    let fuel = fuel_heat(heat.likely(), 0.07);
    near(fuel.as_kwh(), 4.4, 0.03);
}

#[test]
fn copper_and_iron_take_about_what_practice_says() {
    let heat = |name: &str, to: f64| {
        let from = Temperature::from_celsius(20.0);
        let to = Band::exact(Temperature::from_celsius(to));
        heat_band(named(name).unwrap(), &kilograms(1.0, 1.0, 1.0), from, &to)
    };
    let gunmetal = heat("gunmetal", 1150.0).likely().as_kj();
    assert!((650.0..=750.0).contains(&gunmetal), "{gunmetal}");
    let iron = heat("iron", 1450.0).likely().as_kj();
    assert!((1350.0..=1420.0).contains(&iron), "{iron}");
}

#[test]
fn every_alloy_gives_its_heats_in_order() {
    for alloy in all() {
        let heat = heat_band(
            alloy,
            &kilograms(0.9, 1.0, 1.1),
            Temperature::from_celsius(20.0),
            &alloy.pouring_light.band,
        );
        assert!(
            heat.low() < heat.likely() && heat.likely() < heat.high(),
            "{}",
            alloy.name
        );
    }
}

proptest! {
    #[test]
    fn widening_the_loss_never_narrows_the_charge(
        poured in 0.1f64..50.0, pig in 0.0f64..0.3, loss in 0.01f64..0.2, wider in 0.0f64..0.1,
    ) {
        let poured = kilograms(poured * 0.9, poured, poured * 1.1);
        let of = |by: f64| {
            let loss = Band::new((loss - by).max(0.0), loss, loss + by);
            Charge::for_pour(poured, pig, loss).unwrap().charged
        };
        let (narrow, wide) = (of(0.0), of(wider));
        prop_assert!(wide.low() <= narrow.low() && narrow.high() <= wide.high());
    }

    #[test]
    fn heavier_sections_are_never_poured_hotter(thin in 0.5f64..30.0, more in 0.0f64..30.0) {
        for alloy in all() {
            let light = pouring_band(alloy, Length::from_mm(thin));
            let heavy = pouring_band(alloy, Length::from_mm(thin + more));
            prop_assert!(heavy.low() <= light.low() && heavy.high() <= light.high());
        }
    }

    #[test]
    fn mass_goes_with_the_volume(litres in 0.01f64..20.0, times in 0.1f64..10.0) {
        let density = Density::from_g_per_cm3(7.15);
        let once = casting_mass(Volume::from_litre(litres), density).as_kg();
        let scaled = casting_mass(Volume::from_litre(litres * times), density).as_kg();
        prop_assert!((scaled - once * times).abs() <= 1e-12 * scaled);
    }
}
