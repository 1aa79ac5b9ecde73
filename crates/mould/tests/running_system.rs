//! The ring of mass, time and choke.

use measure::band::Band;
use measure::flow::Duration;
use measure::length::Length;
use measure::matter::{Density, Mass};
use mould::gating::running_system::{Demand, RunningSystem, running_system};
use proptest::prelude::{prop_assert, proptest};

fn rigged(kg: f64, wall_mm: f64, freezes_s: f64, head_mm: f64) -> RunningSystem {
    running_system(&Demand {
        count: 1.0,
        casting: Band::exact(Mass::from_kg(kg)),
        feeder: Band::exact(Mass::ZERO),
        liquid: Band::exact(Density::from_g_per_cm3(2.4)),
        wall: Length::from_mm(wall_mm),
        wall_freezes: Duration::from_s(freezes_s),
        pour_height: Length::from_mm(head_mm),
        head: Length::from_mm(head_mm),
        ratio: [1.0, 2.0, 2.0],
        runner: Length::from_mm(150.0),
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
