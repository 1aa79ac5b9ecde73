//! Speeds, traps, basin, sprue pressure and reach against what physics demands.

use measure::flow::{Duration, Flow, Speed};
use measure::heat::{HeatPerMass, SpecificHeat, Temperature, TemperatureDifference};
use measure::length::{Area, Length};
use measure::matter::{Density, Mass};
use mould::gating::aspiration::{StraightSprue, jet_area, lowest_pressure, sprue_pressure};
use mould::gating::basin::{basin_lasts, ladle_lasts, lip_flow, lip_metal};
use mould::gating::fill_rules::{cube_root_time, heavy_iron_time};
use mould::gating::gate_speed::{
    METALS, critical_speed, drop_height, gate_speed, limits_of, surface_of,
};
use mould::gating::pour_time::iron_pour_time;
use mould::gating::reach::{RunningMetal, iron_fluidity, least_wall, misrun_chance, wall_reach};
use mould::gating::slag_trap::{FIRST_SHARE, SHORTEST, first_metal, run_off};
use mould::gating::sprue::{area_of, fall_for, sprue_top};
use proptest::prelude::{prop_assert, proptest};

fn mm(amount: f64) -> Length {
    Length::from_mm(amount)
}

fn aluminium(superheat_k: f64) -> RunningMetal {
    RunningMetal {
        liquid: Density::from_g_per_cm3(2.4),
        latent: HeatPerMass::from_kj_per_kg(430.0),
        liquid_heat: SpecificHeat::from_j_per_kg_k(1150.0),
        superheat: TemperatureDifference::from_kelvin(superheat_k),
        above_sand: TemperatureDifference::from_kelvin(594.0),
        speed: Speed::from_m_per_s(0.4),
        frozen_at_stop: 0.35,
        film_w_per_m2_k: 400.0,
    }
}

#[test]
fn the_critical_speed_is_that_of_a_fall_of_a_drop_height() {
    // v = √(2 g h) of the drop; numbers of aluminium with its skin.
    let liquid = Density::from_g_per_cm3(2.4);
    let height = drop_height(0.9, liquid);
    assert!(
        (height.as_mm() - 12.3676).abs() < 0.001,
        "{}",
        height.as_mm()
    );
    let speed = critical_speed(0.9, liquid);
    assert!((speed.as_m_per_s() - 0.4926).abs() < 0.0001);
    assert!((fall_for(speed) / height - 1.0).abs() < 1e-12);
}

#[test]
fn the_limits_of_the_critical_school_follow_from_the_surfaces() {
    for metal in METALS {
        let surface = surface_of(metal).unwrap();
        let liquid = Density::from_kg_per_m3(surface.kg_per_m3);
        let [low, _, high] = surface
            .tension_n_per_m
            .map(|n| critical_speed(n, liquid).as_m_per_s());
        let of_school = limits_of(metal)
            .into_iter()
            .find(|row| row.school == "critical speed");
        let limit = of_school.unwrap().m_per_s;
        assert!(
            limit > low - 0.02 && limit < high + 0.02,
            "{metal}: {low} {limit} {high}"
        );
    }
}

#[test]
fn a_straight_sprue_draws_air_where_a_tapered_one_just_does_not() {
    let liquid = Density::from_g_per_cm3(2.4);
    let (basin, total) = (mm(40.0), mm(160.0));
    let foot = mm(16.0);
    let flow = lip_flow(area_of(foot), 1.0, total);
    let top = sprue_top(foot, basin, total);
    assert!(
        sprue_pressure(liquid, basin, area_of(top), flow)
            .as_pa()
            .abs()
            < 1e-9
    );
    let sprue = |top| StraightSprue {
        top,
        foot,
        basin,
        height: total - basin,
    };
    assert!(lowest_pressure(liquid, &sprue(foot), flow).as_pa() < -1000.0);
    // Straight sides stand outside the curve of the stream all the way down.
    assert!(lowest_pressure(liquid, &sprue(top), flow).as_pa() > -1e-9);
    let jet = jet_area(area_of(top), basin, total - basin);
    assert!((jet / area_of(foot) - 1.0).abs() < 1e-12);
}

#[test]
fn the_lip_pours_the_mould_in_the_time_of_the_choke() {
    let liquid = Density::from_g_per_cm3(7.95);
    let flow = lip_flow(Area::from_mm2(125.0), 0.8, mm(100.0));
    let time = Duration::from_s(4.0);
    let poured = lip_metal(flow, liquid, time);
    assert!((ladle_lasts(poured, liquid, flow) / time - 1.0).abs() < 1e-12);
    assert!((poured.as_kg() - 7950.0 * 125e-6 * 0.8 * 1.400_475 * 4.0).abs() < 1e-4);
}

#[test]
fn the_two_iron_rules_take_the_same_wall_and_fluidity() {
    let (wall, fluidity) = (mm(20.0), Length::from_inch(34.0));
    let at =
        |rule: fn(Mass, Length, Length) -> Duration, kg| rule(Mass::from_kg(kg), wall, fluidity);
    let root = at(iron_pour_time, 512.0) / at(iron_pour_time, 64.0);
    let cube = at(heavy_iron_time, 512.0) / at(heavy_iron_time, 64.0);
    assert!((root - 8f64.sqrt()).abs() < 1e-9 && (cube - 2.0).abs() < 1e-9);
}

#[test]
fn a_plate_far_from_the_gate_is_worse_than_one_near_it() {
    let reach = wall_reach(mm(3.0), &aluminium(90.0));
    let risk = |path| misrun_chance(mm(path), reach, 3.0);
    assert!(risk(150.0) > risk(30.0));
    assert!((misrun_chance(reach, reach, 3.0) - 0.5).abs() < 1e-12);
    assert!((misrun_chance(reach * 3.0, reach, 3.0) - 0.9).abs() < 1e-12);
    assert!((misrun_chance(reach / 3.0, reach, 3.0) - 0.1).abs() < 1e-12);
}

#[test]
fn hotter_and_richer_iron_runs_farther() {
    let at = |c, celsius| iron_fluidity(c, 0.02, 0.001, Temperature::from_celsius(celsius));
    assert!(at(0.034, 1400.0) > at(0.034, 1350.0));
    assert!(at(0.035, 1350.0) > at(0.034, 1350.0));
    assert_eq!(at(0.0, 1000.0), Length::ZERO);
}

proptest! {
    #[test]
    fn twice_the_gate_is_half_the_speed(litre in 0.01f64..5.0, area in 10.0f64..5000.0) {
        let flow = Flow::from_litre_per_s(litre);
        let at = |mm2| gate_speed(flow, Area::from_mm2(mm2)).as_m_per_s();
        prop_assert!((at(2.0 * area) * 2.0 / at(area) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn fifty_degrees_more_always_lower_the_risk(
        superheat in 0.0f64..300.0,
        path in 5.0f64..1000.0,
        wall in 1.0f64..20.0,
        off in 1.2f64..6.0,
    ) {
        let risk = |more| {
            let reach = wall_reach(mm(wall), &aluminium(superheat + more));
            misrun_chance(mm(path), reach, off)
        };
        prop_assert!(risk(50.0) < risk(0.0));
    }

    #[test]
    fn the_least_wall_just_reaches(path in 5.0f64..1000.0, superheat in 0.0f64..300.0) {
        let metal = aluminium(superheat);
        let wall = least_wall(mm(path), &metal);
        prop_assert!((wall_reach(wall, &metal) / mm(path) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn the_run_off_holds_the_first_twentieth(kg in 0.05f64..100.0, area in 50.0f64..5000.0) {
        let liquid = Density::from_g_per_cm3(2.4);
        let runner = Area::from_mm2(area);
        let length = run_off(first_metal(Mass::from_kg(kg), liquid, FIRST_SHARE), runner);
        let held: Mass = liquid * (runner * length);
        prop_assert!(held.as_kg() >= 0.05 * kg * (1.0 - 1e-12) && length >= SHORTEST);
    }

    #[test]
    fn a_deeper_basin_lasts_longer_but_never_for_ever(
        spare in 1.0f64..99.0, basin in 500.0f64..20_000.0,
    ) {
        let lasts = |spare_mm| basin_lasts(
            Area::from_mm2(basin), Area::from_mm2(120.0), 0.8, mm(100.0), mm(spare_mm),
        ).as_s();
        prop_assert!(lasts(spare + 1.0) > lasts(spare) && lasts(spare).is_finite());
    }

    #[test]
    fn the_cube_root_rule_grows_slower_than_the_mass(kg in 0.1f64..400.0) {
        let at = |kg| cube_root_time(Mass::from_kg(kg), 1.85).as_s();
        prop_assert!((at(8.0 * kg) / at(kg) - 2.0).abs() < 1e-9);
    }
}
