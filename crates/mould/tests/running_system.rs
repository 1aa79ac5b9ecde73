//! The ring of mass, time and choke.

use measure::band::Band;
use measure::flow::Duration;
use measure::length::Length;
use measure::matter::{Density, Mass};
use mould::gating::choke::discharge;
use mould::gating::pour_time::Limit;
use mould::gating::running_system::{Demand, RunningSystem, basin_over, running_system};
use mould::gating::sprue::area_of;
use proptest::prelude::{prop_assert, proptest};

/// Aluminium.
fn rigged(kg: f64, wall_mm: f64, freezes_s: f64, head_mm: f64) -> RunningSystem {
    rigged_in(2.4, kg, wall_mm, freezes_s, head_mm)
}

fn rigged_in(density: f64, kg: f64, wall_mm: f64, freezes_s: f64, head_mm: f64) -> RunningSystem {
    running_system(&Demand {
        count: 1.0,
        casting: Band::exact(Mass::from_kg(kg)),
        feeder: Band::exact(Mass::ZERO),
        liquid: Band::exact(Density::from_g_per_cm3(density)),
        wall: Length::from_mm(wall_mm),
        wall_freezes: Duration::from_s(freezes_s),
        pour_height: Length::from_mm(head_mm),
        head: Length::from_mm(head_mm),
        ratio: [1.0, 2.0, 2.0],
        runner: Length::from_mm(150.0),
        discharge: discharge(),
    })
}

#[test]
fn half_the_head_wants_a_choke_wider_by_the_root_of_two() {
    let area = |head| {
        rigged(50.0, 12.0, 600.0, head).choke.likely()
            / rigged(50.0, 12.0, 600.0, 400.0).choke.likely()
    };
    // The shorter sprue pours a little less, hence not to the last per cent.
    assert!((area(200.0) - 2f64.sqrt()).abs() < 0.02, "{}", area(200.0));
}

#[test]
fn a_wall_that_no_sprue_fills_is_told_and_does_not_run_away() {
    let thin = rigged(0.05, 0.4, 0.15, 100.0);
    assert!(!thin.in_time);
    assert!(thin.poured.high().as_kg() < 2.0, "{:?}", thin.poured);
    assert!(rigged(0.05, 6.0, 20.0, 100.0).in_time);
}

#[test]
fn the_thin_wall_waits_for_castings_and_feeders_alone() {
    // A wall that freezes in 4 s has to be full 2 s after the gates begin to run.
    let hurried = rigged(2.0, 4.0, 4.0, 200.0);
    assert_eq!(hurried.fill.high_because, Limit::ThinWall);
    let pace = hurried.poured.likely() / hurried.fill.band.likely().as_s();
    let full_after = Mass::from_kg(2.0) / pace;
    assert!((full_after - 2.0).abs() < 1e-6, "{full_after}");
}

#[test]
fn a_mould_asks_for_metal_by_its_room_and_not_by_its_weight() {
    let room_l = 0.7;
    let (light, iron) = (
        rigged_in(2.4, room_l * 2.4, 6.0, 600.0, 150.0),
        rigged_in(6.9, room_l * 6.9, 6.0, 600.0, 150.0),
    );
    let same = |light: f64, iron: f64| (light / iron - 1.0).abs() < 1e-6;
    assert!(same(
        light.fill.band.likely().as_s(),
        iron.fill.band.likely().as_s()
    ));
    assert!(same(
        light.choke.likely().as_mm2(),
        iron.choke.likely().as_mm2()
    ));
}

#[test]
fn basin_and_slag_trap_are_counted_in_what_is_poured() {
    let iron = rigged_in(6.9, 4.0, 7.0, 600.0, 100.0);
    let trap = iron.past_last_gate * iron.runner_and_gates[0];
    let share = Density::from_g_per_cm3(6.9) * trap / iron.poured.likely();
    assert!((share - 0.05).abs() < 1e-3, "{share}");
    let basin = basin_over(iron.sprue_top.likely(), Length::from_mm(100.0));
    let in_basin = area_of(basin.across) * basin.depth;
    assert!(iron.mass.likely() > Density::from_g_per_cm3(6.9) * (trap + in_basin));
    // A low pour leaves room for a shallow basin only.
    let low = basin_over(Length::from_mm(20.0), Length::from_mm(60.0));
    assert_eq!(low.depth, Length::from_mm(30.0));
}

proptest! {
    #[test]
    fn the_ring_always_comes_to_rest(
        kg in 0.001f64..200.0,
        wall in 0.2f64..60.0,
        freezes in 0.01f64..2000.0,
        head in 30.0f64..1000.0,
    ) {
        let running = rigged(kg, wall, freezes, head);
        let poured = running.poured;
        prop_assert!(poured.low().as_kg() > kg);
        prop_assert!(poured.high().as_kg() < 20.0 * kg + 60.0, "{poured:?}");
        prop_assert!(running.choke.low() <= running.choke.high());
        prop_assert!(running.sprue_top.likely() >= running.sprue_foot.likely());
    }
}
