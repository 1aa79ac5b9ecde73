//! Iron, hydrogen, zinc, losses and treatments: what they answer.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::flow::Duration;
use measure::heat::Temperature;
use measure::length::{Area, Length};
use measure::matter::{Density, Mass, Pressure};
use metal::alloy::Family;
use metal::furnace::Furnace;
use metal::hydrogen::{
    ATMOSPHERE, Fire, GasRisk, Measured, density_index, dissolved, from_permeation, solubility,
    vapour_in_air, vapour_over,
};
use metal::iron::{
    ChillRisk, EUTECTIC, behaves_as, carbon_equivalent, composition_factor, effect_left, grey_wall,
    half_life, inoculant, inoculant_dose, sections, wall_from_wedge, wanted_equivalent,
};
use metal::loss::{clean_loss, form, forms, holding, melt_loss};
use metal::treatment::{NOT_WORTH_IT, all, dose, for_family, named};
use metal::zinc::{CARRIED_OFF_M_PER_S, Pot, flare, lost, vapour, vapour_over_brass};
use proptest::prelude::{prop_assert, proptest};

fn near(value: f64, wanted: f64, within: f64) {
    let off = (value - wanted).abs() / wanted.abs();
    assert!(off <= within, "{value} is not {wanted}");
}

fn celsius(degrees: f64) -> Temperature {
    Temperature::from_celsius(degrees)
}

#[test]
fn the_tables_are_read_whole() {
    assert!(metal::iron::read(metal::iron::BUILT_IN).is_ok());
    assert!(metal::loss::read(metal::loss::BUILT_IN).is_ok());
    assert!(metal::treatment::read(metal::treatment::BUILT_IN).is_ok());
    assert!(metal::iron::read("[[section]]\nwall = \"thin\"").is_err());
    assert!(metal::loss::read("[[form]]\nname = \"rust\"").is_err());
    assert!(metal::treatment::read("[[treatment]]\nname = \"potato\"").is_err());
    assert!(
        sections()
            .windows(2)
            .all(|pair| pair[0].wall < pair[1].wall)
    );
    let hardest = |row: &metal::iron::Section| row.carbon_equivalent.band.likely();
    assert!(
        sections()
            .windows(2)
            .all(|pair| hardest(&pair[0]) > hardest(&pair[1]))
    );
}

#[test]
fn a_common_iron_has_a_carbon_equivalent_of_four_point_two() {
    near(carbon_equivalent(0.034, 0.023, 0.001), 0.042, 1e-12);
    near(composition_factor(0.034, 0.023, 0.001), 0.04025, 1e-12);
}

#[test]
fn a_wall_of_seven_millimetres_wants_four_point_one_to_four_point_four() {
    let wanted = wanted_equivalent(Length::from_mm(7.0)).unwrap();
    near(wanted.low(), 0.041, 1e-9);
    near(wanted.high(), 0.044, 1e-9);
    assert!(
        wanted.low() < wanted.high(),
        "never one figure without a range"
    );
}

#[test]
fn the_bracket_takes_twelve_to_twenty_five_grams_of_inoculant() {
    let iron = Mass::from_kg(6.2);
    let grams = inoculant_dose().map(|share| inoculant(iron, share).as_g());
    assert!((12.0..12.5).contains(&grams.low()) && (24.5..25.0).contains(&grams.high()));
}

#[test]
fn thin_scrolls_chill_and_bosses_do_not() {
    let grey = grey_wall(0.041, 1.0).unwrap();
    let risk = |mm| ChillRisk::of(Length::from_mm(mm), grey);
    assert_eq!(risk(3.0), ChillRisk::High);
    assert_eq!(risk(8.0), ChillRisk::Doubtful);
    assert_eq!(risk(25.0), ChillRisk::Low);
    let faded = grey_wall(0.041, 0.0).unwrap();
    near(faded / grey, 1.5, 1e-12);
    assert!(grey_wall(EUTECTIC, 1.0).unwrap() < grey);
}

#[test]
fn a_wedge_reading_says_what_the_iron_behaves_as() {
    let grey = wall_from_wedge(Length::from_mm(3.5), 2.0);
    near(grey.as_mm(), 7.0, 1e-12);
    near(behaves_as(grey).unwrap(), 0.0425, 1e-9);
    let coarse = wall_from_wedge(Length::from_mm(8.0), 2.0);
    assert!(behaves_as(coarse) < behaves_as(grey));
}

#[test]
fn an_inoculation_fades_by_halves() {
    let half = half_life().likely();
    near(effect_left(Duration::ZERO, half), 1.0, 1e-12);
    near(effect_left(half, half), 0.5, 1e-12);
    near(effect_left(half * 2.0, half), 0.25, 1e-12);
}

#[test]
fn hydrogen_formulas_stand_side_by_side_and_disagree() {
    let at = celsius(700.0);
    let amounts: Vec<f64> = Measured::ALL
        .iter()
        .map(|who| solubility(at, *who))
        .collect();
    for (amount, printed) in amounts.iter().zip([0.88, 0.91, 1.02, 0.63]) {
        near(*amount, printed, 0.01);
    }
    let most = amounts.iter().copied().fold(0.0, f64::max);
    let least = amounts.iter().copied().fold(f64::INFINITY, f64::min);
    assert!((1.6..1.8).contains(&(most / least)));
    let measured = from_permeation(2.7e-5, 0.001365, Density::from_g_per_cm3(2.36));
    near(measured, 0.85, 0.03);
}

#[test]
fn holding_twenty_minutes_risks_more_than_five() {
    let damp = vapour_in_air(celsius(28.0), 0.85);
    let (_, over_gas) = vapour_over(damp, Fire::Gas);
    let pace = Duration::from_min(30.0);
    let after = |minutes| {
        let full = solubility(celsius(740.0), Measured::Assessed);
        dissolved(full, over_gas, Duration::from_min(minutes), pace)
    };
    assert!(after(20.0) > 2.0 * after(5.0));
    assert!(GasRisk::of(after(20.0)) > GasRisk::of(after(5.0)));
    let (least, most) = vapour_over(damp, Fire::Electric);
    assert_eq!(least, most);
}

#[test]
fn the_two_cups_give_the_published_index() {
    let index = |air, vacuum| {
        density_index(
            Density::from_g_per_cm3(air),
            Density::from_g_per_cm3(vacuum),
        )
    };
    near(index(2.693, 2.385), 0.1144, 1e-3);
    near(index(2.709, 2.687), 0.0081, 5e-3);
}

#[test]
fn zinc_boils_where_it_boils_and_brass_above() {
    near(vapour(celsius(907.0)).as_pa(), 101_325.0, 0.02);
    let yellow = flare(0.37).unwrap().as_celsius();
    let cartridge = flare(0.30).unwrap().as_celsius();
    let red = flare(0.15).unwrap().as_celsius();
    assert!((1060.0..1120.0).contains(&yellow), "{yellow}");
    assert!(yellow < cartridge && cartridge < red, "{cartridge} {red}");
    assert_eq!(flare(0.01), None);
    near(
        vapour_over_brass(1.0, celsius(907.0)) / vapour(celsius(907.0)),
        1.0,
        1e-12,
    );
}

#[test]
fn yellow_brass_in_a_small_pot_loses_grams_not_kilograms() {
    let pot = Pot {
        zinc: 0.37,
        at: celsius(1030.0),
        surface: Area::from_m2(0.0079),
    };
    let ten = |pace| lost(&pot, Duration::from_min(10.0), pace).as_g();
    assert!(ten(CARRIED_OFF_M_PER_S[0]) > 1.0);
    assert!(ten(CARRIED_OFF_M_PER_S[2]) < 60.0);
}

#[test]
fn cans_lose_up_to_half_and_clean_ingot_a_few_per_cent() {
    let (clean, sources) = clean_loss(Furnace::FuelCrucible, Family::Aluminium).unwrap();
    assert!(!sources.is_empty());
    let of = |word: &str, clean: f64, end: fn(&measure::band::Band<f64>) -> f64| {
        melt_loss(
            clean,
            end(&form(word).unwrap().loss.band),
            0.0,
            Duration::ZERO,
        )
    };
    near(
        of("cans", clean.high(), measure::band::Band::high),
        0.5,
        1e-9,
    );
    assert!(of("ingot", clean.high(), measure::band::Band::high) < 0.07);
    let likely: Vec<f64> = forms().iter().map(|form| form.loss.band.likely()).collect();
    assert!(likely.is_sorted(), "the cleanest first");
    assert!(form("rust").is_none());
}

#[test]
fn every_metal_has_a_loss_in_every_furnace_that_is_known_for_it() {
    for family in [
        Family::Aluminium,
        Family::Copper,
        Family::Zinc,
        Family::Iron,
        Family::Tin,
    ] {
        assert!(holding(family).is_some(), "{family:?}");
        assert!(
            clean_loss(Furnace::ElectricCrucible, family).is_some(),
            "{family:?}"
        );
    }
}

#[test]
fn doses_and_treatments_come_in_their_turn() {
    near(dose(Mass::from_kg(4.0), 0.002).as_g(), 8.0, 1e-12);
    let turns: Vec<u8> = for_family(Family::Copper)
        .iter()
        .map(|row| row.turn)
        .collect();
    assert!(turns.is_sorted() && turns.len() >= 3);
    assert_eq!(named(" Phosphor copper "), named("phosphor copper"));
    assert!(
        all()
            .iter()
            .all(|row| !row.families.is_empty() && !row.how.is_empty())
    );
    assert!(NOT_WORTH_IT.iter().all(|(_, why)| !why.is_empty()));
}

proptest! {
    #[test]
    fn more_silicon_or_phosphorus_never_chills_more(
        carbon in 0.028..0.038, silicon in 0.01..0.028, more in 0.0..0.01, effect in 0.0..1.0
    ) {
        let ce = carbon_equivalent(carbon, silicon, 0.001);
        let richer = carbon_equivalent(carbon, silicon + more, 0.001);
        prop_assert!(grey_wall(richer, effect).unwrap() <= grey_wall(ce, effect).unwrap());
        prop_assert!(grey_wall(ce, effect).unwrap() <= grey_wall(ce, effect * 0.5).unwrap());
    }

    #[test]
    fn thicker_walls_want_no_more_carbon(wall in 1.0..60.0, more in 0.0..20.0) {
        let thin = wanted_equivalent(Length::from_mm(wall)).unwrap();
        let thick = wanted_equivalent(Length::from_mm(wall + more)).unwrap();
        prop_assert!(thick.low() <= thin.low() && thick.high() <= thin.high());
    }

    #[test]
    fn gas_grows_with_damp_heat_and_minutes(
        degrees in 660.0..850.0, humidity in 0.1..0.9, minutes in 1.0..60.0, more in 1.01..1.1
    ) {
        let at = |degrees: f64, humidity: f64, minutes: f64| {
            let full = solubility(celsius(degrees), Measured::Assessed);
            let damp = vapour_in_air(celsius(25.0), humidity);
            dissolved(full, damp, Duration::from_min(minutes), Duration::from_min(30.0))
        };
        let here = at(degrees, humidity, minutes);
        prop_assert!(here > 0.0);
        prop_assert!(at(degrees * more, humidity, minutes) > here);
        prop_assert!(at(degrees, humidity * more, minutes) > here);
        prop_assert!(at(degrees, humidity, minutes * more) > here);
    }

    #[test]
    fn four_times_the_pressure_twice_the_gas(pressure in 10.0..20_000.0) {
        let of = |pressure| {
            let forever = Duration::from_min(1e6);
            dissolved(1.0, Pressure::from_pa(pressure), forever, Duration::from_min(30.0))
        };
        prop_assert!((of(4.0 * pressure) / of(pressure) - 2.0).abs() < 1e-9);
        prop_assert!(of(pressure) <= (pressure / ATMOSPHERE.as_pa()).sqrt() + 1e-12);
    }

    #[test]
    fn more_zinc_and_more_heat_smoke_more(
        zinc in 0.05..0.5, more in 1.001..1.1, degrees in 850.0..1200.0
    ) {
        let here = vapour_over_brass(zinc, celsius(degrees));
        prop_assert!(vapour_over_brass(zinc * more, celsius(degrees)) > here);
        prop_assert!(vapour_over_brass(zinc, celsius(degrees * more)) > here);
    }

    #[test]
    fn losses_add_and_stay_below_all(clean in 0.0..0.2, form in 0.0..0.5, rate in 0.0..0.02,
        minutes in 0.0..600.0) {
        let loss = melt_loss(clean, form, rate, Duration::from_min(minutes));
        prop_assert!((0.0..=0.9).contains(&loss));
        let longer = melt_loss(clean, form, rate, Duration::from_min(minutes + 10.0));
        prop_assert!(longer >= loss);
    }
}
