//! Fuel, lining, carry, spoon: what they answer, and what has to hold whatever is typed.

#![allow(clippy::unwrap_used, reason = "a helper that fails fails its test")]

use measure::band::Band;
use measure::flow::{Duration, MassRate};
use measure::heat::{
    Heat, HeatDrawing, HeatPerMass, Power, SpecificHeat, Temperature, TemperatureDifference,
};
use measure::length::{Area, Length};
use measure::matter::{Density, Mass};
use metal::alloy::Family;
use metal::alloys::named;
use metal::crucible::{
    Crucible, Shape, WORKING_FILL, brim_volume, held, least_yield, lifted, most_casting,
};
use metal::fuel::{
    Fuel, burner_power, flue_share, fuel_band, fuel_mass, furnace_balance, heating_time, known,
};
use metal::furnace::{Furnace, practice};
use metal::lining::{lining_heat, next_heat};
use metal::melt::{Melting, heat_to_melt};
use metal::spoon::{Setting, SpoonError, cues, spoon_temperature};
use metal::superheat_path::{Filled, before_carry, carry_drop, lift_out, soak_drop};
use proptest::prelude::{prop_assert, proptest};

const SHOP: Temperature = Temperature::from_celsius(20.0);

fn near(value: f64, wanted: f64, within: f64) {
    let off = (value - wanted).abs() / wanted.abs();
    assert!(off <= within, "{value} is not {wanted}");
}

fn celsius(degrees: f64) -> Temperature {
    Temperature::from_celsius(degrees)
}

/// A crucible of this mark at working fill, neither the slowest nor the fastest to cool.
fn filled(mark: f64, alloy: &str) -> Filled {
    let (alloy, brim) = (named(alloy).unwrap(), brim_volume(mark));
    let metal = held(brim, WORKING_FILL, alloy.density_liquid.band.likely());
    Filled::of(alloy, brim, metal)[1]
}

fn gunmetal(mark: f64) -> Filled {
    filled(mark, "gunmetal")
}

#[test]
fn twenty_pounds_of_bronze_take_a_quarter_pound_of_propane_for_the_metal_alone() {
    let btu = |lb: f64| lb * 1.055_055_852_62;
    let heat = Heat::from_kj(btu(4_712.0));
    let value = HeatPerMass::from_kj_per_kg(20_000.0 * 2.326);
    near(fuel_mass(heat, 1.0, value).as_lb(), 0.24, 0.02);
    let lining = lining_heat(
        Mass::from_lb(80.0),
        SpecificHeat::from_j_per_kg_k(0.22 * 4186.8),
        celsius((2000.0 - 32.0) / 1.8),
        celsius((100.0 - 32.0) / 1.8),
        1.0,
    );
    near(lining.as_kj(), btu(33_440.0), 1e-4);
    let real = furnace_balance(heat, lining * 0.5, 0.46);
    let real = fuel_mass(real, 1.0, value).as_lb();
    assert!(real > 6.0 * 0.24 && real < 12.0 * 0.24, "{real} lb");
}

#[test]
fn the_table_holds_every_fuel_and_agrees_with_the_sum_of_burning() {
    for fuel in Fuel::ALL {
        assert_eq!(Fuel::named(fuel.word()), Some(fuel));
        let row = known(fuel).unwrap();
        let each_air = row.heating_value.band.likely().as_kj_per_kg() / row.air.band.likely();
        assert!(
            (2_500.0..3_500.0).contains(&each_air),
            "{fuel:?}: {each_air}"
        );
    }
    near(known(Fuel::Propane).unwrap().air.band.likely(), 15.7, 0.01);
}

#[test]
fn five_kilograms_of_aluminium_over_propane() {
    let heat = Band::exact(Heat::from_kj(5.0 * 1110.0));
    let gas = practice(Furnace::FuelCrucible, Family::Aluminium).unwrap();
    let efficiency = gas.efficiency.as_ref().unwrap().band;
    let fuel = fuel_band(
        &heat,
        &efficiency,
        &known(Fuel::Propane).unwrap().heating_value.band,
    );
    near(fuel.likely().as_kg(), 5.0 * 1110.0 / 0.13 / 46_350.0, 1e-9);
    assert!(fuel.low().as_kg() > 0.6 && fuel.high().as_kg() < 1.8);
    let power = burner_power(
        MassRate::from_kg_per_h(1.8),
        HeatPerMass::from_kj_per_kg(46_350.0),
    );
    near(power.as_kw(), 23.2, 0.01);
    let time = heating_time(Heat::from_kj(5.0 * 1110.0 / 0.13), power);
    near(time.as_min(), 30.7, 0.01);
}

#[test]
fn half_the_propane_leaves_by_the_flue_at_bronze_heat() {
    let value = HeatPerMass::from_kj_per_kg(46_350.0);
    let flue = |heat| flue_share(15.7, 0.0, celsius(heat), SHOP, value);
    near(flue(1200.0), 0.51, 0.01);
    assert!(flue(800.0) < flue(1200.0));
    assert!(flue_share(15.7, 1.5, celsius(1200.0), SHOP, value) > 1.0);
}

#[test]
fn the_next_heat_is_cheaper_because_the_lining_is_hot() {
    let lining = Heat::from_kj(17_000.0);
    let first = furnace_balance(Heat::from_kj(5_000.0), lining, 0.5);
    let next = furnace_balance(Heat::from_kj(5_000.0), next_heat(lining, 0.65), 0.5);
    assert!(next < first * 0.6);
    assert_eq!(next_heat(lining, 0.0), lining);
}

#[test]
fn a_minute_costs_a_small_crucible_more() {
    let minute = Duration::from_s(60.0);
    let drop = |mark| carry_drop(&gunmetal(mark), celsius(1200.0), SHOP, minute).as_kelvin();
    assert!(drop(6.0) > drop(20.0) * 1.2, "{} {}", drop(6.0), drop(20.0));
    assert!((40.0..250.0).contains(&drop(6.0)), "{}", drop(6.0));
    let aluminium = filled(6.0, "aluminium");
    let cool = carry_drop(&aluminium, celsius(750.0), SHOP, minute).as_kelvin();
    assert!((20.0..100.0).contains(&cool), "{cool}");
    assert!(cool < drop(6.0));
}

#[test]
fn a_short_carry_is_the_heat_lost_over_the_heat_held() {
    let pot = gunmetal(6.0);
    let second = Duration::from_s(1.0);
    let (hot, cold) = (1473.15_f64, 293.15_f64);
    let off = |glow: f64, t: f64| {
        5.670_374_419e-8 * glow * (t.powi(4) - cold.powi(4)) + 15.0 * (t - cold)
    };
    let hinders = pot.thickness.as_m() / 20.0 + 1.0 / 5000.0;
    let (mut low, mut high) = (cold, hot);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        match off(0.7, middle) < (hot - middle) / hinders {
            true => low = middle,
            false => high = middle,
        }
    }
    let lost = pot.mouth.as_m2() * off(pot.mouth_glow, hot) + pot.wall.as_m2() * off(0.7, low);
    let store = pot.metal.as_kg() * 480.0 + pot.crucible.as_kg() * 1150.0;
    let drop = carry_drop(&pot, celsius(1200.0), SHOP, second).as_kelvin();
    near(drop, lost / store, 0.01);
    assert!(low < hot - 50.0, "{low}");
}

#[test]
fn the_way_back_gives_the_heat_to_lift_out_at() {
    let pot = gunmetal(6.0);
    let time = Duration::from_s(45.0);
    let lifted_at = before_carry(&pot, celsius(1150.0), SHOP, time);
    let left = lifted_at - carry_drop(&pot, lifted_at, SHOP, time);
    near(left.as_celsius(), 1150.0, 1e-4);
    let sum = lift_out(
        celsius(1150.0),
        TemperatureDifference::from_kelvin(80.0),
        TemperatureDifference::from_kelvin(25.0),
    );
    near(sum.as_celsius(), 1255.0, 1e-12);
}

#[test]
fn the_running_system_takes_some_tens_of_kelvin() {
    let drop = soak_drop(
        Mass::from_kg(4.2),
        SpecificHeat::from_j_per_kg_k(480.0),
        celsius(1150.0),
        SHOP,
        Area::from_cm2(200.0),
        HeatDrawing::from_w_rts_per_m2_k(1100.0),
        Duration::from_s(4.0),
    );
    near(drop.as_kelvin(), 27.8, 0.01);
}

#[test]
fn a_crucible_is_about_as_large_as_they_are_sold() {
    let shape = Shape::of(Crucible::marked("A6", 6.0).brim);
    assert!(
        (95.0..120.0).contains(&shape.inside.as_mm()),
        "{:?}",
        shape.inside
    );
    assert!(shape.outside > shape.inside);
    near(
        shape.furnace_bore().as_mm(),
        shape.outside.as_mm() + 128.0,
        1e-9,
    );
    let brim = Crucible::marked("A6", 6.0).brim;
    assert!(lifted(Mass::from_kg(5.0), brim).as_kg() > 5.5);
}

#[test]
fn an_a12_pours_three_flasks_of_paperweights_only_from_63_per_cent_yield() {
    let liquid = Density::from_g_per_cm3(2.38);
    let held = held(Crucible::marked("A12", 12.0).brim, WORKING_FILL, liquid);
    near(held.as_kg(), 4.37, 0.005);
    let yields = least_yield(Mass::from_kg(3.0 * 0.85), 0.08, held);
    near(yields, 0.63, 0.005);
    near(most_casting(held, yields, 0.08).as_kg(), 2.55, 1e-9);
}

fn settings() -> [Setting; 2] {
    let at = |seconds, degrees| Setting {
        time: Duration::from_s(seconds),
        temperature: celsius(degrees),
    };
    [at(18.0, 680.0), at(26.0, 760.0)]
}

#[test]
fn a_spoon_set_at_two_heats_tells_a_third_within_thirty_kelvin() {
    let watch = Duration::from_s(1.0);
    let read = spoon_temperature(settings(), Duration::from_s(22.0), watch).unwrap();
    near(read.likely().as_celsius(), 720.0, 1e-9);
    near((read.high() - read.likely()).as_kelvin(), 30.0, 1e-9);
    let careless = Duration::from_s(3.0);
    let wide = spoon_temperature(settings(), Duration::from_s(22.0), careless).unwrap();
    assert!((wide.high() - wide.likely()).as_kelvin() > 30.0);
    let swapped = [settings()[1], settings()[0]];
    assert_eq!(
        spoon_temperature(swapped, Duration::from_s(22.0), watch),
        Ok(read)
    );
}

#[test]
fn a_spoon_is_not_believed_far_from_its_settings() {
    let watch = Duration::from_s(1.0);
    let read = |seconds| spoon_temperature(settings(), Duration::from_s(seconds), watch);
    assert!(read(27.9).is_ok());
    assert_eq!(read(40.0), Err(SpoonError::TooFar { seconds: 40.0 }));
    assert_eq!(read(5.0), Err(SpoonError::TooFar { seconds: 5.0 }));
    let [one, _] = settings();
    let same = spoon_temperature([one, one], Duration::from_s(20.0), watch);
    assert_eq!(same, Err(SpoonError::NotSet));
}

#[test]
fn every_metal_has_a_cue_card_from_cool_to_hot() {
    let families = [
        Family::Aluminium,
        Family::Copper,
        Family::Zinc,
        Family::Iron,
        Family::Tin,
    ];
    for family in families {
        let card: Vec<_> = cues(family).collect();
        assert!(card.len() >= 2, "{family:?}");
        for cue in card {
            let width = cue.between.band.high() - cue.between.band.low();
            assert!(width.as_kelvin() >= 50.0, "{}", cue.seen);
        }
    }
}

#[test]
fn the_sum_by_hand_for_copper_and_tin() {
    let metal = |solid: f64, latent: f64, liquid: f64, melts_at: f64| Melting {
        solid: SpecificHeat::from_j_per_kg_k(solid * 4186.8),
        melts_at: celsius((melts_at - 32.0) / 1.8),
        latent: HeatPerMass::from_kj_per_kg(latent * 2.326),
        liquid: SpecificHeat::from_j_per_kg_k(liquid * 4186.8),
    };
    let (from, to) = (
        celsius((100.0 - 32.0) / 1.8),
        celsius((2000.0 - 32.0) / 1.8),
    );
    let copper = metal(0.0951, 75.6, 0.0951, 1981.0);
    let tin = metal(0.0551, 25.2, 0.0699, 450.0);
    let heat = heat_to_melt(Mass::from_lb(16.0), from, to, &copper)
        + heat_to_melt(Mass::from_lb(4.0), from, to, &tin);
    near(heat.as_kj() / 1.055_055_852_62, 4_712.0, 0.001);
}

proptest! {
    #[test]
    fn longer_and_hotter_always_costs_more(
        mark in 1.0f64..30.0, heat in 900.0f64..1300.0, seconds in 1.0f64..120.0,
        more in 1.0f64..60.0,
    ) {
        let pot = gunmetal(mark);
        let drop = |heat: f64, seconds: f64| {
            carry_drop(&pot, celsius(heat), SHOP, Duration::from_s(seconds)).as_kelvin()
        };
        prop_assert!(drop(heat, seconds) < drop(heat, seconds + more));
        prop_assert!(drop(heat, seconds) < drop(heat + more, seconds));
        prop_assert!(heat - drop(heat, seconds) > 20.0);
    }

    #[test]
    fn a_larger_crucible_never_cools_faster(mark in 1.0f64..40.0, more in 0.5f64..40.0) {
        let minute = Duration::from_s(60.0);
        let drop = |mark| carry_drop(&gunmetal(mark), celsius(1200.0), SHOP, minute);
        prop_assert!(drop(mark + more) < drop(mark));
    }

    #[test]
    fn fuel_goes_with_the_heat(heat in 100.0f64..1e6, efficiency in 0.05f64..0.9) {
        let value = HeatPerMass::from_kj_per_kg(30_000.0);
        let once = fuel_mass(Heat::from_kj(heat), efficiency, value).as_kg();
        let twice = fuel_mass(Heat::from_kj(2.0 * heat), efficiency, value).as_kg();
        prop_assert!((twice - 2.0 * once).abs() <= 1e-12 * twice);
        prop_assert!(fuel_mass(Heat::from_kj(heat), efficiency, value * 1.1).as_kg() < once);
        let time = heating_time(Heat::from_kj(heat), Power::from_kw(20.0)).as_s();
        prop_assert!((time - heat / 20.0).abs() <= 1e-9 * time);
    }

    #[test]
    fn the_margin_of_a_spoon_is_never_under_thirty_kelvin(
        seconds in 17.0f64..28.0, watch in 0.1f64..3.0,
    ) {
        let read = spoon_temperature(
            settings(), Duration::from_s(seconds), Duration::from_s(watch),
        );
        let read = read.unwrap();
        prop_assert!((read.high() - read.low()).as_kelvin() >= 60.0 - 1e-9);
    }

    #[test]
    fn a_crucible_holds_what_its_shape_says(mark in 0.5f64..60.0) {
        let brim = Crucible::marked("", mark).brim;
        let shape = Shape::of(brim);
        let inside = shape.mouth.as_m2() * shape.inside.as_m() * 1.2;
        prop_assert!((inside - brim.as_m3()).abs() <= 1e-9 * inside);
        prop_assert!(shape.height > Length::ZERO && shape.mass.as_kg() > 0.0);
    }
}
